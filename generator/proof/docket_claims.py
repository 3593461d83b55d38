"""What the lines, the times and the figures of a recipe claim, in the order in which outputs have them."""

from collections.abc import Iterable, Iterator

from generator.present.views import LineView, PartView, RecipeView, TimesView
from generator.proof.claim import AMOUNT, DECLARATION, Claim, claim
from generator.proof.context import spoken
from generator.wording.speech import gettext, say, shown

Claims = tuple[Claim, ...]


def docket_claims(
    view: RecipeView, *, percents: bool = False, sums: bool = True, together: bool = False
) -> Iterator[Claim]:
    """Every part with its weight, every line with both measures, its choices, and its percent on a docket.

    `sums`: a part's weight stands beside its title. `together`: that of the only part stands below its lines.
    """
    for part in view.parts:
        yield from _part(part, sums=sums)
        for line in part.lines:
            yield from line_claims(line)
            if percents:
                yield from claim(f"the percentage of {line.item}", f"{line.percent}")
        if together and part.weight and not part.title:
            yield from claim("the weight of the whole", f"{gettext('Together')} {part.weight}")


def _part(part: PartView, *, sums: bool) -> Claims:
    what = f"the part “{part.title}”"
    words = f"{part.title} {part.weight}" if sums else part.title
    return claim(what, words, group="ingredients") if part.title else ()


def line_claims(line: LineView) -> Iterator[Claim]:
    """A line's amounts with its item are one claim, in either order of the measures."""
    what = f"the line of {line.item}"
    yield from claim(what, *_worded(line), group="ingredients")
    if line.optional:
        yield from claim(f"that {line.item} is optional", gettext("optional"), group="ingredients")
    if line.note:
        yield from claim(f"the note on {line.item}", line.note, loose=True, group="ingredients")
    for choice in line.choices:
        yield from claim(
            f"the choice beside {line.item}", shown("or %(choice)s", choice=choice), group="ingredients"
        )


def _worded(line: LineView) -> Iterator[str]:
    first, second = line.amount.first, line.amount.second
    item = f"{line.item} {line.preparation}".strip()
    beside = " ".join(f"{each.label} {each.words}" for each in line.beside)
    yield f"{first} {second} {item}"
    yield f"{first} {second} {beside} {item}"
    yield f"{first} {second} {line.item} {beside} {line.preparation}"
    yield f"{second} {first} {item}"
    # A pinch of salt, and salt to taste.
    told = f"{first} {second}".strip()
    yield f"{told} of {item}"
    yield f"{line.item} {told} {line.preparation}"


def picture_claims(view: RecipeView) -> Iterator[Claim]:
    """The same on a picture, which sets the other measure below the item where it has no room beside it."""
    for part in view.parts:
        yield from _part(part, sums=True)
        for line in part.lines:
            first, second = line.amount.first, line.amount.second
            words = f"{line.item} {line.preparation} {gettext('optional') if line.optional else ''}"
            yield from claim(
                f"the line of {line.item}", f"{first} {second} {words}", f"{first} {words} {second}"
            )
            for choice in line.choices:
                yield from claim(f"the choice beside {line.item}", shown("or %(choice)s", choice=choice))


def page_times(view: RecipeView) -> Iterator[Claim]:
    for each in view.times:
        what = _of(each)
        yield from claim(
            f"the whole time{what}", shown("Time, %(way)s: %(total)s", way=each.way, total=each.total)
        )
        yield from _stages(each)
        for segment in each.segments:
            yield from claim(f"a stage{what}", f"{gettext(segment.kind)} {segment.words}")


def card_times(view: RecipeView) -> Iterator[Claim]:
    for each in view.times:
        yield from claim(f"the whole time{_of(each)}", f"{each.way} {gettext('total')} {each.total}")
        yield from _stages(each)


def _stages(each: TimesView) -> Iterator[Claim]:
    for name, words in (("hands-on", each.hands_on), ("waiting", each.waiting), ("baking", each.baking)):
        if words:
            yield from claim(f"the {name} time{_of(each)}", f"{gettext(name)} {words}")


def text_times(view: RecipeView, *, lead: str) -> Iterator[Claim]:
    """One line for each way: "Time, by hand: 2 h (hands-on 20 min, baking 40 min)"."""
    titles = {way.name: way.title for way in view.ways}
    for each in view.times:
        stages = (("hands-on", each.hands_on), ("waiting", each.waiting), ("baking", each.baking))
        told = " ".join(f"{gettext(name)} {words}" for name, words in stages if words)
        if each.total:
            words = f"{lead} {titles.get(each.way, each.way)} {each.total} {told}"
            yield from claim(f"the time{_of(each)}", words, group="times")


def sheet_times(view: RecipeView) -> Iterator[Claim]:
    """A row of a table for each way."""
    for each in view.times:
        stages = [words or gettext("none") for words in (each.hands_on, each.waiting, each.baking)]
        words = " ".join([each.way or gettext("as the method says"), *stages, each.total])
        yield from claim(f"the time{_of(each)}", words)


def _of(each: TimesView) -> str:
    return f" of “{each.way}”" if each.way else ""


def fact_claims(view: RecipeView) -> Iterator[Claim]:
    for fact in view.facts:
        yield from claim(f"the figure “{fact.label}”", f"{fact.label} {fact.words}", loose=True)


def measured_claims(view: RecipeView) -> Iterator[Claim]:
    """Which cups, spoons, eggs and roundings are meant."""
    for fact in view.measured:
        what, words = f"how it is measured: {fact.label}", f"{fact.label} {fact.words}"
        yield from claim(what, words, spoken(words), loose=True, group="measures")


def head_claims(view: RecipeView, *, labels: bool = True) -> Iterator[Claim]:
    """What is made, for how many, in which tin."""
    told = (("Makes", view.makes), ("Portions", view.portions), ("Tin", view.tin))
    for label, words in told:
        if words:
            says = f"{gettext(label)} {words}" if labels else words
            yield from claim(f"what it says of “{label}”", says, loose=True, group="makes")


def revision_claims(view: RecipeView) -> Iterator[Claim]:
    """The number and the day by which a reader knows an old copy."""
    day = view.updated_day or view.published_day
    yield from claim(
        "the revision",
        f"{shown('Revision %(number)s', number=view.revision)} {day}",
        kind="words",
        loose=True,
    )


def correction_claims(view: RecipeView) -> Iterator[Claim]:
    for each in view.corrections:
        what = f"the correction of {each.day}"
        yield from claim(what, f"{each.day} {each.change}", loose=True, group="corrections")
        film = say("The film still shows {what}", what=each.film) if each.film else ""
        yield from claim(f"what the film shows since {each.day}", film, loose=True, group="corrections")


def since_claims(view: RecipeView) -> Iterator[Claim]:
    """What changed since each earlier revision; a change of allergens is a declaration."""
    for since in view.since:
        what = f"what changed since revision {since.number}"
        words = " ".join(
            [shown("Since revision %(number)s", number=since.number), *since.alarms, *since.changes]
        )
        yield from claim(what, words, kind=DECLARATION if since.alarms else AMOUNT, loose=True)


def aside_claims(view: RecipeView) -> Iterator[Claim]:
    """What some outputs say beside all else, each with the words before it, for a figure alone explains nothing."""
    if view.keeps:
        ways = f"{gettext('Keeping')} {view.keeps}", say("Keeps: {time}", time=spoken(view.keeps))
        yield from claim("how it keeps", *ways, needed=False)
    for link in view.links:
        if link.paid:
            yield from claim("a paid link", f"{gettext('paid link')} {link.title}", needed=False)


def oven_claims(view: RecipeView) -> Iterator[Claim]:
    """Each oven of the method for other ovens: as a card tells it, or as the text under a film does."""
    for oven in view.ovens:
        gas = say("gas mark {number}", number=oven.gas) if oven.gas else ""
        card = shown(
            "Oven %(written)s: without a fan %(plain)s, with a fan %(fan)s, gas mark %(gas)s."
            if gas
            else "Oven %(written)s: without a fan %(plain)s, with a fan %(fan)s.",
            written=oven.written,
            plain=oven.plain,
            fan=oven.fan,
            gas=oven.gas,
        )
        with_fan = say("{degrees} with a fan", degrees=oven.fan)
        without = say("{degrees} without a fan", degrees=oven.plain)
        told = (say("{oven} is {words}", oven=oven.written, words=each) for each in (with_fan, without))
        ways = (card, *(f"{each}, {gas}" for each in told))
        yield from claim(f"{oven.written} in other ovens", *ways, loose=True, group="ovens")


def film_claims(view: RecipeView) -> Iterator[Claim]:
    """What the films still show, and their chapters."""
    for video in view.films_on_site:
        for remark in video.film_remarks:
            yield from claim("what the film still shows", remark, loose=True)
        for chapter in video.chapters:
            words = f"{chapter.stamp} {chapter.title}"
            yield from claim(f"the chapter at {chapter.stamp}", words, loose=True, group="chapters")


def caution_claims(cautions: Iterable[str]) -> Iterator[Claim]:
    for words in cautions:
        yield from claim("a caution", words, kind=DECLARATION, loose=True, group="cautions")
