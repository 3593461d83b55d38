"""What outputs of running text say alike: an ingredient's line, a correction, the times of a way, as plain words."""

from generator.present.views import CorrectionView, LineView, RecipeView, TimesView
from generator.wording.speech import say


def ingredient_words(line: LineView) -> str:
    """`430 g (3⅓ cups) bread flour, sifted (optional), or 400 g spelt flour – note`.

    The cups of other countries, where the site shows them, stand in square brackets.
    """
    words = _measured(line)
    words += "".join(f" [{cup.label}: {cup.words}]" for cup in line.beside)
    words += f", {line.preparation}" if line.preparation else ""
    words = say("{line} (optional)", line=words) if line.optional else words
    words += "".join(say(", or {line}", line=choice) for choice in line.choices)
    return words + (f" – {line.note}" if line.note else "")


def correction_words(each: CorrectionView) -> str:
    """What changed, why, and what the film still shows, as sentences."""
    film = say("The film still shows {what}", what=each.film) if each.film else ""
    return " ".join(sentence(words) for words in (each.sentence, film) if words.strip())


def times_words(each: TimesView) -> str:
    """`2 h 20 min (hands-on 12 min, waiting 2 h, baking 20 min)`; "" where nothing is timed."""
    stages = (
        (say("hands-on"), each.hands_on),
        (say("waiting"), each.waiting),
        (say("baking"), each.baking),
    )
    told = ", ".join(f"{label} {words}" for label, words in stages if words)
    return f"{each.total} ({told})" if each.total and told else each.total


def way_title(view: RecipeView, name: str) -> str:
    """The title of the way with this name; the name itself where there is no such way."""
    return next(
        (way.title for way in view.ways if name.casefold() in (way.name.casefold(), way.title.casefold())),
        name,
    )


def choice_words(view: RecipeView) -> str:
    """That one way is enough; "" where there is nothing to choose."""
    return say("choose one of {number} ways", number=len(view.ways)) if len(view.ways) > 1 else ""


def sentence(text: str) -> str:
    """The words with an end: a full stop where they have none."""
    words = text.strip()
    return f"{words}." if words and words[-1] not in ".!?…" else words


def _measured(line: LineView) -> str:
    """An amount in figures stands before the item, "a pinch" before it too, "to taste" after it."""
    first, second = line.amount.first, line.amount.second
    told = f"{first} ({second})" if first and second else first or second
    if not told:
        return line.item
    if told[0].isnumeric():
        return f"{told} {line.item}"
    return (
        say("{amount} of {item}", amount=told, item=line.item)
        if told.startswith(("a ", "a\u00a0"))
        else f"{line.item}, {told}"
    )
