"""Recipes understood in memory, through the same stages as a folder."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from generator.catalogue.load import built_in, read_pantry
from generator.diagnostics.diagnostic import Diagnostic, Diagnostics, has_errors
from generator.diagnostics.span import Span
from generator.formula.book import understand_all
from generator.formula.intake.recipe import read_recipe
from generator.formula.line import read_line
from generator.formula.lines import understand_line
from generator.formula.model import Formula, Line, Written
from generator.formula.shelf import Shelf
from generator.formula.written import WrittenLine, WrittenPart, WrittenRecipe
from generator.measure.number import Range
from generator.measure.unit import SPOONS
from generator.source.read import read_document, read_mapping

F = Fraction


def shelf(pantry: str = "", *, cup: str = "us", flour_cup: str = "spooned", egg: str = "large") -> Shelf:
    """The catalogue with a pantry written as in pantry.yaml, which must be free of errors."""
    spoons = SPOONS[cup]
    mapping = read_mapping("pantry.yaml", pantry.encode())[0] if pantry else None
    stocked, found = read_pantry(mapping, catalogue=built_in(), spoons=spoons)
    assert not has_errors(found), found
    return Shelf(catalogue=built_in(), pantry=stocked, spoons=spoons, flour_cup=flour_cup, egg=egg)


def place(start: int, end: int) -> Span:
    return Span(path="recipes/x.md", line=1, column=start + 1, end_line=1, end_column=end + 1)


def written(text: str) -> Written:
    """A line that must be free of diagnostics."""
    line, found = read_line(text, place, spoons=SPOONS["us"])
    assert found == (), found
    return line


def weigh(text: str, *, on: Shelf | None = None, agree: bool = True) -> tuple[Line, tuple[Diagnostic, ...]]:
    """One line of a nameless part, looked up and weighed."""
    on = on or shelf()
    read, found = read_line(text, place, spoons=on.spoons)
    more = list(found)
    line = WrittenLine(
        written=read,
        recipe=None,
        pantry=None,
        optional=False,
        alternatives=(),
        note="",
        agree=agree,
        discard=None,
        span=read.span,
    )
    part = WrittenPart(name="", span=read.span, counts=True, preferment=None, lines=(line,))
    return understand_line(line, part, shelf=on, book={}, found=more), tuple(more)


def grams(text: str, *, on: Shelf | None = None) -> tuple[Fraction, Fraction] | None:
    """Lowest and highest grams of a line that must be free of errors."""
    line, found = weigh(text, on=on)
    assert not has_errors(found), found
    return (line.grams.low, line.grams.high) if line.grams else None


def codes(diagnostics: Diagnostics) -> list[str]:
    return [each.code for each in diagnostics]


@dataclass(frozen=True, slots=True, kw_only=True)
class Baked:
    """What became of some recipes: the formulas without errors, and every diagnostic."""

    formulas: Mapping[str, Formula]
    diagnostics: Diagnostics

    @property
    def codes(self) -> list[str]:
        return codes(self.diagnostics)

    def only(self) -> Formula:
        """The one formula there is."""
        (formula,) = self.formulas.values()
        return formula


def bake(on: Shelf | None = None, **recipes: str) -> Baked:
    """Recipes by name (underscores for hyphens), each the text of its file."""
    on = on or shelf()
    found: list[Diagnostic] = []
    read: dict[str, WrittenRecipe] = {}
    faulty: list[str] = []
    for key, text in recipes.items():
        name = key.replace("_", "-")
        document, wrong = read_document(f"recipes/{name}.md", text.encode(), "recipe")
        if document is not None:
            read[name], more = read_recipe(document, spoons=on.spoons)
            wrong = (*wrong, *more)
        found.extend(wrong)
        if has_errors(wrong):
            faulty.append(name)
    book = understand_all(read, faulty=faulty, shelf=on)
    return Baked(formulas=book.formulas, diagnostics=(*found, *book.diagnostics))


def recipe(formula: str, method: str = "", *, more: str = "", body: str = "") -> str:
    """The text of a recipe file: the lines under `formula:`, the text under `## Method`."""
    lines = "\n".join(f"  {line}" for line in formula.strip("\n").splitlines())
    steps = f"\n## Method\n{method}\n" if method else ""
    return f"---\ntitle: A test bake\n{more}formula:\n{lines}\n---\n{body}{steps}"


def formula_of(text: str, *, on: Shelf | None = None) -> Formula:
    """The formula of one recipe that must be free of errors."""
    baked = bake(on, bake=text)
    assert not has_errors(baked.diagnostics), baked.diagnostics
    return baked.only()


def exact(value: Fraction | int | str) -> Range:
    return Range.exact(Fraction(value))


def pair(amount: Range | None) -> tuple[float, float]:
    assert amount is not None
    return float(amount.low), float(amount.high)
