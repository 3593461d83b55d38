"""How an amount is written: the same number and unit in the hands of different writers."""

from collections.abc import Callable
from fractions import Fraction
from random import Random

from tests.importer.corpus.truth import Line

SIGNS = {
    Fraction(1, 4): "¼",
    Fraction(1, 2): "½",
    Fraction(3, 4): "¾",
    Fraction(1, 3): "⅓",
    Fraction(2, 3): "⅔",
    Fraction(1, 8): "⅛",
}
Writer = Callable[[Fraction], str]
Measure = tuple[Fraction, Fraction, str]


def glyphs(value: Fraction) -> str:
    whole, part = divmod(value, 1)
    if part in SIGNS:
        return f"{whole or ''}{SIGNS[part]}"
    return decimal(value)


def slashes(value: Fraction) -> str:
    whole, part = divmod(value, 1)
    if not part or part.denominator > 8:
        return decimal(value)
    return f"{whole} {part}" if whole else str(part)


def hyphens(value: Fraction) -> str:
    return slashes(value).replace(" ", "-")


def decimal(value: Fraction) -> str:
    return f"{float(value):.4g}"


SHORT = {"cup": "cups", "tbsp": "tbsp", "tsp": "tsp", "clove": "cloves", "pinch": "pinch"}
LONG = {
    "g": "grams",
    "ml": "milliliters",
    "cup": "cups",
    "tbsp": "tablespoons",
    "tsp": "teaspoons",
    "clove": "cloves",
    "pinch": "pinch",
}
TIGHT = {"g": "g", "ml": "ml", **SHORT}
GERMAN = {"g": "g", "ml": "ml", "cup": "cups", "tbsp": "EL", "tsp": "TL", "clove": "Zehen", "pinch": "Prise"}


def measure(one: Measure, write: Writer, units: dict[str, str], *, tight: bool = False) -> str:
    low, high, unit = one
    number = write(low) if low == high else f"{write(low)}–{write(high)}"
    word = units.get(unit, unit)
    if unit == "cup" and high <= 1:
        word = "cup"
    if unit in ("tbsp", "tsp") and high <= 1 and word.endswith("s"):
        word = word[:-1]
    gap = "" if (tight and unit in ("g", "ml")) or not unit else " "
    return f"{number}{gap}{word}"


def amount(
    line: Line, write: Writer, units: dict[str, str], *, tight: bool = False, slash: bool = False
) -> str:
    """The measures of a line, the second in brackets or after a slash."""
    told = [measure(each, write, units, tight=tight) for each in line.measures]
    if not told:
        return ""
    if len(told) == 1:
        return told[0]
    return "/".join(told) if slash else f"{told[0]} ({', '.join(told[1:])})"


def sentence(
    line: Line, write: Writer = glyphs, units: dict[str, str] | None = None, *, tight: bool = False
) -> str:
    """The line in the usual order; a line that can be written in one way alone is written so."""
    if line.text:
        return line.text
    units = SHORT if units is None else units
    size = f"{line.size} " if line.size else ""
    cut = f", {line.preparation}" if line.preparation else ""
    return f"{amount(line, write, units, tight=tight)} {size}{line.item}{cut}".strip()


def pick(random: Random) -> Writer:
    return random.choice((glyphs, slashes, hyphens, glyphs))
