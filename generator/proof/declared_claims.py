"""What the declaration claims: the list, what is contained, what may be, what is not known yet."""

from collections.abc import Iterable, Iterator

from generator.present.views import LabelView, RecipeView, Run
from generator.proof.claim import DECLARATION, WORDS, Claim, claim
from generator.wording.speech import later, say, shown


def told(runs: Iterable[Run]) -> str:
    return "".join(run.text for run in runs)


def label_claims(label: LabelView, *, listed: bool = True, advice: bool = True) -> Iterator[Claim]:
    """`listed`: the list of ingredients is there. Wherever these stand, they must be there whole."""
    if listed and label.ingredients:
        yield from _declared("the list of ingredients", f"{label.heading} {told(label.ingredients)}")
    yield from _declared("that the label is not finished", label.unfinished)
    yield from _declared("what it contains", told(label.contains_line))
    yield from _declared("what it may contain", told(label.may_line))
    yield from _declared("what else the kitchen handles", label.kitchen_line, group="kitchen")
    if advice:
        yield from claim("the advice to ask", label.advice, kind=WORDS, loose=True, group="advice")


def described_label(view: RecipeView) -> Iterator[Claim]:
    """In the text under a film: the line of what is contained or else the list, and what no line of a region says."""
    label = view.label
    yield from label_claims(label, listed=not label.contains_line)
    for lead, names in (
        (later("Also in it: {allergens}."), label.also_in),
        (later("May also contain: {allergens}."), label.also_may),
    ):
        if names:
            words = say(lead, allergens=", ".join(names)).removesuffix(".")
            what = lead.partition(":")[0].lower()
            yield from _declared(f"what it says of “{what}”", words)


def carried_claims(view: RecipeView) -> Iterator[Claim]:
    """Which line carries what, on the page of the recipe."""
    for part in view.parts:
        for line in part.lines:
            if not (line.allergens or line.may_contain or line.unknown):
                continue
            words = [line.item, *line.allergens]
            words += (
                [shown("may contain %(allergens)s", allergens=" ".join(line.may_contain))]
                if line.may_contain
                else []
            )
            words += [shown("not known: %(reasons)s", reasons=" ".join(line.unknown))] if line.unknown else []
            yield from claim(f"what {line.item} carries", " ".join(words), kind=DECLARATION)


def _declared(what: str, *ways: str, group: str = "allergens") -> tuple[Claim, ...]:
    return claim(what, *ways, kind=DECLARATION, loose=True, group=group)
