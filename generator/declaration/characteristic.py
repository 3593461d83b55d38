"""The share of an ingredient that the name of the food speaks of: "butter shortbread", butter 33 %.

Regulation (EU) 1169/2011, Article 22 and Annex VIII; Commission Notice 2017/C 393/05. The share is that of the weight
as used in the finished food where its weight is known (what is baked has lost moisture: Annex VIII, from memory),
else in all that goes into the bowl. Above 100 % it is told as grams for 100 g of the food. What pictures or words
beside the name speak of cannot be told from a formula, and is the maker's to add.

It is asked of what is sold packed in advance, and of neither a gift nor what is packed where it is sold (unless a
state has a rule of its own). So the maker is told the shares, and the printed list is without them.
"""

from collections.abc import Iterable, Mapping
from fractions import Fraction

from generator.catalogue.names import fold, number_forms
from generator.declaration.entries import WEIGHED, Entry, entries, raw_grams
from generator.declaration.regions import Region, region_named
from generator.formula.model import Formula


def shares(formula: Formula, *, book: Mapping[str, Formula], region: str) -> tuple[str, ...]:
    """ "salted butter 33 %", heaviest first; nothing where the region asks for no shares, or nothing is weighed."""
    rules = region_named(region)
    if not rules.shares_of_named:
        return ()
    found = entries(formula, book=book, region=rules)
    finished = formula.totals.finished_grams
    base = finished.mid if finished is not None and finished.mid > 0 else raw_grams(found)
    title = _words((formula.about.title,))
    named = (
        each for each in found if each.place == WEIGHED and not each.water and _is_named(each, title, rules)
    )
    return tuple(f"{each.names[0]}{_share(each.grams / base)}" for each in named) if base > 0 else ()


def _share(part: Fraction) -> str:
    percent = part * 100
    if percent > 100:
        return f" ({_rounded(percent)} g per 100 g)"
    return f" {_rounded(percent)} %" if percent >= 1 else " <1 %"


def _rounded(value: Fraction) -> int:
    return int(value + Fraction(1, 2))


def _is_named(entry: Entry, title: frozenset[str], rules: Region) -> bool:
    telling = _words(entry.names) - rules.names_nothing
    return any(form in title for word in telling for form in number_forms(word))


def _words(names: Iterable[str]) -> frozenset[str]:
    return frozenset(word for each in names for word in fold(each).split())
