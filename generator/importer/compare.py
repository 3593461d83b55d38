"""Whether a formula that comes in resembles one that is there already, and in what it differs."""

from collections.abc import Mapping
from fractions import Fraction

from generator.formula.model import Formula
from generator.formula.shelf import Shelf
from generator.importer.line.ingredient import understood
from generator.importer.model import ReadLine

LIKE = Fraction(3, 4)
"""So much of both lists must be the same ingredients."""
_MOST = 3

Amounts = Mapping[str, Fraction | None]


def resembles(lines: tuple[ReadLine, ...], book: Mapping[str, Formula], shelf: Shelf) -> str:
    """“looks like your Rosemary braid with 30 g less bread flour”, or "" where nothing is like it."""
    mine = _amounts_of(lines, shelf)
    best: tuple[Fraction, int, Formula, Amounts] | None = None
    for formula in book.values():
        theirs = _amounts(formula)
        both = len(mine.keys() & theirs.keys())
        share = Fraction(both, len(mine.keys() | theirs.keys()) or 1)
        same = sum(mine[key] == theirs[key] for key in mine.keys() & theirs.keys())
        if share >= LIKE and both >= 3 and (best is None or (share, same) > best[:2]):
            best = share, same, formula, theirs
    return _told(mine, best[3], best[2].about.title) if best else ""


def _amounts_of(lines: tuple[ReadLine, ...], shelf: Shelf) -> Amounts:
    found: dict[str, Fraction | None] = {}
    for line in lines:
        ware = shelf.ware(line.written.item)[0] if line.known else None
        if ware is not None:
            grams = understood(line.written, shelf=shelf, agree=line.agree)[0].grams
            _add(found, ware.ingredient.name, grams.mid if grams else None)
    return found


def _amounts(formula: Formula) -> Amounts:
    found: dict[str, Fraction | None] = {}
    for line in formula.lines:
        name = line.ware.ingredient.name if line.ware else line.item
        _add(found, name, line.grams.mid if line.grams else None)
    return found


def _add(found: dict[str, Fraction | None], name: str, grams: Fraction | None) -> None:
    before = found.get(name)
    found[name] = (
        before + grams if before is not None and grams is not None else (grams if name not in found else None)
    )


def _told(mine: Amounts, theirs: Amounts, title: str) -> str:
    differences = [*_changed(mine, theirs)]
    differences += [f"without {name}" for name in theirs if name not in mine]
    differences += [f"with {name} added" for name in mine if name not in theirs]
    if not differences:
        return f"looks like your {title}, with the same amounts"
    more = len(differences) - _MOST
    told = ", ".join(differences[:_MOST]) + (f" and {more} more differences" if more > 0 else "")
    return f"looks like your {title}, {told}"


def _changed(mine: Amounts, theirs: Amounts) -> list[str]:
    told = []
    for name, grams in mine.items():
        other = theirs.get(name)
        # Within 2 %, or a gram, it is the rounding of what was printed.
        if grams is None or other is None or abs(grams - other) <= max(other / 50, Fraction(1)):
            continue
        word = "less" if grams < other else "more"
        told.append(f"with {float(abs(grams - other)):.3g} g {word} {name}")
    return told
