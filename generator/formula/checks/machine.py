"""What a recipe says of a machine, without a dough cycle, or of a dough's temperature, without flour."""

from collections.abc import Iterator, Mapping
from fractions import Fraction

from generator.diagnostics.diagnostic import Diagnostic
from generator.diagnostics.span import whole_file
from generator.formula.equipment import mixing_of
from generator.formula.machine import dough_cycle, dry_grams
from generator.formula.machine_kind import PANS, plainest
from generator.formula.model import Formula
from generator.formula.shelf import Shelf
from generator.formula.written import WrittenRecipe


def check(
    formula: Formula, written: WrittenRecipe, shelf: Shelf, book: Mapping[str, Formula]
) -> Iterator[Diagnostic]:
    """A setting that nothing comes of is told: a machine for a dough that is not kneaded. So is a pan of the recipe's
    own that its flour does not fit."""
    about = formula.about
    if about.machine is not None and dough_cycle(formula) is None and mixing_of(formula) is None:
        message = "the machine is told of, and the method neither kneads nor has a way called “dough cycle”"
        hint = "Add “## Method: dough cycle” with its steps, or delete `machine`."
        yield _warning("M010", "machine", message, hint, written)
    elif about.machine is not None and about.machine.pan is not None:
        yield from _pan(formula, about.machine.pan, written)
    if about.dough_temperature is not None and not formula.totals.flour:
        message = "a temperature of the dough is wanted, and there is no flour in the parts that count"
        hint = "Delete `dough_temperature`."
        yield _warning("M011", "dough_temperature", message, hint, written)


def _pan(formula: Formula, name: str, written: WrittenRecipe) -> Iterator[Diagnostic]:
    pan = next(each for each in PANS if each.name == name)
    dry = dry_grams(formula)
    if not dry or pan.dry.low <= dry <= pan.dry.high:
        return
    much = "more" if dry > pan.dry.high else "less"
    low, high = int(pan.dry.low), int(pan.dry.high)
    message = f"{_plain(dry)} g of flour and grain is {much} than a {name} pan takes: {low} to {high} g"
    times = float(plainest(pan.factor(dry)))
    hint = f"Make {times:.3g} times the recipe, or name the pan that it is for. Source: common practice."
    yield _warning("M012", "machine", message, hint, written)


def _warning(code: str, key: str, message: str, hint: str, written: WrittenRecipe) -> Diagnostic:
    span = written.spans.get(key, whole_file(written.path))
    return Diagnostic(code=code, message=message, span=span, hint=hint)


def _plain(grams: Fraction) -> str:
    return f"{float(grams):.1f}".removesuffix(".0")
