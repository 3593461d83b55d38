"""What a bake really had in it, in exact sums."""

from fractions import Fraction

from generator.formula.bake_sums import LeftOver, sums_of
from generator.measure.number import Range
from tests.formula.test_bake_day import BOOK, LOAF_NAME, added

LOAF = BOOK[LOAF_NAME]


def left(item: str, grams: int) -> LeftOver:
    line = next(each for each in LOAF.lines if each.item == item)
    return LeftOver(item=item, line=line, grams=Range.exact(grams))


def test_a_bake_without_changes_is_the_formula() -> None:
    sums = sums_of(LOAF, book=BOOK, added=(), left=())
    assert sums.changes == ()
    assert (sums.after.hydration, sums.after.dough_grams) == (LOAF.totals.hydration, LOAF.totals.dough_grams)


def test_additions_of_one_thing_are_one_change() -> None:
    more = (added("bread flour", 10), added("water", 5), added("bread flour", 15))
    sums = sums_of(LOAF, book=BOOK, added=more, left=(left("bread flour", 5),))
    flour, water = sums.changes
    assert (flour.added.mid, flour.times, flour.left.mid) == (25, 2, 5)
    assert flour.used == Range.exact(520)
    assert water.used == Range.exact(305)
    assert sums.after.hydration == Fraction(305 * 100, 520)
    assert sums.after.dough_grams == Range.exact(875)
    assert sums.kept == Range.exact(875)


def test_what_the_formula_has_not_is_dough() -> None:
    sums = sums_of(LOAF, book=BOOK, added=(added("rye flour", 100), added("almonds", 30)), left=())
    assert sums.after.flour == 600
    assert sums.after.dough_grams == Range.exact(980)
    assert [each.line for each in sums.changes] == [None, None]


def test_no_sum_falls_below_nothing() -> None:
    sums = sums_of(LOAF, book=BOOK, added=(), left=(left("water", 900),))
    assert sums.after.dough_grams == Range.exact(550)
    assert sums.after.hydration == 0


def test_what_has_no_weight_is_in_no_sum_and_is_counted() -> None:
    unknown = LeftOver(item="water", line=LOAF.lines[1], grams=None)
    sums = sums_of(LOAF, book=BOOK, added=(added("water", 10),), left=(unknown,))
    (water,) = sums.changes
    assert (water.unweighed, water.used) == (1, None)
    assert sums.after.dough_grams == Range.exact(860)
