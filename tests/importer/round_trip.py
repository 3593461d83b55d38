"""Our own page and block under the video, brought back in, beside the formula that they were made from."""

from fractions import Fraction

from generator.asked.incoming import arrive, kitchen_of
from generator.catalogue.names import fold, number_forms
from generator.formula.assemble import understand
from generator.formula.intake.recipe import read_recipe
from generator.formula.model import Formula, Line
from generator.importer.model import Brought
from generator.source.read import read_document
from tests.demo import checked

PRINTED = Fraction(3, 100)
"""What is printed is rounded: to a gram above ten, to a tenth below, spoons to an eighth."""


def brought_back(name: str, data: str) -> Brought:
    kitchen = kitchen_of(checked())
    (recipe,) = arrive(name, data.encode(), kitchen).recipes
    return recipe


def differences(name: str, brought: Brought) -> list[str]:
    """What the formula of the text that came back has otherwise than the recipe it was printed from."""
    ours = checked().setting.book[name]
    if brought.wrong:
        return [f"not accepted: {each.message}" for each in brought.wrong]
    theirs = _understood(brought)
    mine, other = _lines(ours), _lines(theirs)
    found = [
        f"{key}: {_told(mine.get(key))} became {_told(other.get(key))}"
        for key in {**mine, **other}
        if not _same(mine.get(key), other.get(key))
    ]
    return found + _order(ours, theirs)


def _understood(brought: Brought) -> Formula:
    document, _ = read_document("recipes/x.md", brought.text.encode(), "recipe")
    assert document is not None
    written, _ = read_recipe(document, spoons=checked().shelf.spoons)
    return understand(written, shelf=checked().shelf, book=dict(checked().setting.book))[0]


def _order(ours: Formula, theirs: Formula) -> list[str]:
    first, second = ([fold(line.item) for line in each.lines] for each in (ours, theirs))
    return (
        []
        if [min(number_forms(each)) for each in first] == [min(number_forms(each)) for each in second]
        else ["another order"]
    )


def _lines(formula: Formula) -> dict[str, Line]:
    found: dict[str, Line] = {}
    for line in formula.lines:
        key = f"{fold(line.part)}/{min(number_forms(fold(line.item)))}"
        found[key if key not in found else f"{key} again"] = line
    return found


def _same(one: Line | None, other: Line | None) -> bool:
    if one is None or other is None:
        return False
    return (
        one.optional == other.optional
        and _as_much(one, other)
        and fold(one.written.preparation) == fold(other.written.preparation)
    )


def _as_much(one: Line, other: Line) -> bool:
    if one.grams is None or other.grams is None:
        return one.grams is other.grams
    near = max(one.grams.mid * PRINTED, Fraction(51, 100) if one.grams.mid < 10 else Fraction(1, 2))
    return abs(one.grams.low - other.grams.low) <= near and abs(one.grams.high - other.grams.high) <= near


def _told(line: Line | None) -> str:
    if line is None:
        return "nothing"
    grams = f"{float(line.grams.low):g}-{float(line.grams.high):g} g" if line.grams else "no weight"
    return f"{grams} {line.item}, {line.written.preparation}{' (optional)' if line.optional else ''}"
