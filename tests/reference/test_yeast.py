"""Yeast conversions and limits against published figures."""

from fractions import Fraction

import pytest

from generator.formula.yeast import YeastRatios, cinnamon_note, converted, hot_liquid_note, sugar_note
from generator.formula.yeast_exchange import half_step_error
from generator.measure.number import Range
from generator.measure.temperature import read_temperature
from generator.measure.unit import POUND

F = Fraction


def grams(amount: str, frm: str, to: str, ratios: YeastRatios | None = None) -> float:
    result = converted(Range.exact(F(amount)), frm, to, ratios or YeastRatios())  # type: ignore[arg-type]
    assert result is not None
    assert result.is_exact
    return float(result.low)


# A textbook of baking: fresh : active dry : instant = 100 : 40 : 33 by weight.
def test_twenty_grams_of_fresh_yeast() -> None:
    assert grams("20", "fresh", "active dry") == 8.0
    assert grams("20", "fresh", "instant") == pytest.approx(6.6, abs=0.01)


# The same ratio; by "three times as much" it is 21, which agrees to the gram.
def test_seven_grams_of_instant_yeast() -> None:
    fresh = grams("7", "instant", "fresh")
    assert fresh == pytest.approx(21.2, abs=0.05)
    assert round(fresh) == 21


# From memory: instant is 0.75 to 0.8 of active dry. Another ratio than the textbook's, so a setting.
def test_nine_grams_of_active_dry_by_another_ratio() -> None:
    assert grams("9", "active dry", "instant", YeastRatios(active_dry=F(40), instant=F(30))) == 6.75


# From memory: W. Gisslen, 100 : 50 : 35 to 40.
def test_other_books_ratio_can_be_set() -> None:
    ratios = YeastRatios(active_dry=F(50), instant=F(35))
    assert grams("20", "fresh", "active dry", ratios) == 10
    assert grams("20", "fresh", "instant", ratios) == 7


# An older home rule: an envelope of 1/4 oz for 2/3 oz of compressed yeast is 2.67 : 1.
def test_an_envelope_for_compressed_yeast() -> None:
    ounce = POUND / 16
    ratios = YeastRatios(active_dry=F(1, 4) * ounce, fresh=F(2, 3) * ounce)
    assert grams("7", "active dry", "fresh", ratios) == pytest.approx(7 * 2.67, abs=0.05)


# A. Gardiner and S. Wilson, The Inquisitive Cook (1998): yeast dies at 130 to 140 °F (55 to 60 °C); active dry
# yeast is rehydrated at 105 to 115 °F; yeast mixed with dry flour takes 120 to 130 °F, whose upper end is the limit.
@pytest.mark.parametrize(
    ("text", "dies"),
    [("140 F", True), ("60 C", True), ("105-115 F", False), ("95 F", False), ("70-80 F", False)],
)
def test_the_temperatures_at_which_yeast_dies(text: str, dies: bool) -> None:
    temperature = read_temperature(text)
    assert temperature is not None
    assert (hot_liquid_note(temperature) is not None) is dies


# Wright, Bice and Fogelberg, Cereal Chemistry 31 (1954) 100-112, as cited: to 1 g of yeast 0.05 g of cinnamon
# changes gassing by +102, 0.5 g by +46 and 1.0 g by -30, in the source's own units.
@pytest.mark.parametrize(("cinnamon", "change"), [("0.05", 102), ("0.5", 46), ("1.0", -30)])
def test_cinnamon_is_noted_where_gassing_falls(cinnamon: str, change: int) -> None:
    assert (cinnamon_note(F(cinnamon), F(1)) is not None) is (change < 0)


# 1 tsp of 2.6 g (USDA SR28 02010) in 360 g of flour is 0.72 %; beside a packet of yeast it is no cause for a note.
def test_a_teaspoon_of_cinnamon_in_a_loaf() -> None:
    assert float(F("2.6") / 360 * 100) == pytest.approx(0.722, abs=0.005)
    assert cinnamon_note(F("2.6"), F(7)) is None


# Common practice: osmotolerant yeast above 10 % of sugar on flour.
def test_twelve_percent_of_sugar_is_above_the_threshold() -> None:
    note = sugar_note(F(12))
    assert note is not None
    assert note.kind == "sweet dough"


# Half a step of a scale on what lies on it (arithmetic): 3 g in steps of 1 g, then of tenths; 7 g; half a gram.
@pytest.mark.parametrize(
    ("amount", "step", "percent"),
    [("3", "1", 16.7), ("3", "0.1", 1.7), ("7", "1", 7.1), ("0.5", "1", 100)],
)
def test_what_a_scale_makes_of_little(amount: str, step: str, percent: float) -> None:
    assert float(half_step_error(F(amount), step=F(step))) == pytest.approx(percent, abs=0.05)
