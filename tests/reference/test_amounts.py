"""Amounts, temperatures and sizes as they are printed, against kitchen practice.

Where no source is named it is common practice: a cook has cups of 1, 3/4, 2/3, 1/2, 1/3 and 1/4, tablespoons, and
teaspoons of 1, 3/4, 1/2, 1/4 and 1/8; an oven dial goes by fives; a scale shows whole grams.
"""

from fractions import Fraction

import pytest

from generator.formula.model import Heat
from generator.measure.number import Range
from generator.measure.temperature import read_temperature
from generator.measure.unit import SPOONS
from generator.present.amounts import (
    count_words,
    percent_words,
    pounds_and_ounces,
    volume_words,
    weight_words,
)
from generator.present.durations import minutes_words
from generator.present.heats import celsius, fahrenheit, heat_mention
from tests.formula.kitchen import exact, place

F = Fraction
US = SPOONS["us"]


def _cups(cups: Fraction | str) -> str:
    return volume_words(exact(F(cups) * US.cup), US)


def _teaspoons(teaspoons: Fraction | str) -> str:
    return volume_words(exact(F(teaspoons) * US.tsp), US)


@pytest.mark.parametrize(
    ("cups", "printed"),
    [
        ("1", "1 cup"),
        ("2", "2 cups"),
        ("3/2", "1½ cups"),
        ("10/3", "3⅓ cups"),
        ("3/4", "¾ cup"),
        ("2/3", "⅔ cup"),
        ("1/2", "½ cup"),
        ("1/3", "⅓ cup"),
        ("1/4", "¼ cup"),
        # Mixes that are exact by the definitions: 1/8 cup is 2 tbsp, 3/8 is 1/4 cup and 2 tbsp, and so on.
        ("1/8", "2 tbsp"),
        ("3/8", "¼ cup + 2 tbsp"),
        ("5/8", "½ cup + 2 tbsp"),
        ("7/8", "¾ cup + 2 tbsp"),
        ("5/16", "¼ cup + 1 tbsp"),
        ("9/8", "1 cup + 2 tbsp"),
        # "1/4 cup, not 4 tbsp": the largest ordinary measure (Cooperative Extension rule).
        ("4/16", "¼ cup"),
        ("1/12", "1 tbsp + 1 tsp"),
        ("1/6", "2 tbsp + 2 tsp"),
    ],
)
def test_cups(cups: str, printed: str) -> None:
    assert _cups(cups) == printed


def test_a_third_of_a_cup_is_five_tablespoons_and_a_teaspoon() -> None:
    assert US.cup / 3 == 5 * US.tbsp + US.tsp


def test_three_quarters_of_a_cup_and_a_half_more() -> None:
    assert _cups(F(3, 4) * F(3, 2)) == "1 cup + 2 tbsp"


def test_teaspoons_and_a_half_more() -> None:
    assert _teaspoons(F(9, 4) * F(3, 2)) == "1 tbsp + ⅜ tsp"


def test_two_thirds_of_a_cup_in_three() -> None:
    # 2/9 cup is 3.556 tbsp, about 3 tbsp + 1 2/3 tsp (published home rule); spoons measure 1 3/4 tsp, within 2.5 %.
    assert _cups(F(2, 9)) == "3 tbsp + 1¾ tsp"


@pytest.mark.parametrize(
    ("teaspoons", "printed"),
    [
        ("1/8", "⅛ tsp"),
        ("1/4", "¼ tsp"),
        ("1/3", "⅜ tsp"),
        ("1/2", "½ tsp"),
        ("3/4", "¾ tsp"),
        ("1", "1 tsp"),
        ("3/2", "1½ tsp"),
        ("9/4", "2¼ tsp"),
        ("3", "1 tbsp"),
        ("6", "2 tbsp"),
        ("1/16", "a pinch"),
    ],
)
def test_teaspoons(teaspoons: str, printed: str) -> None:
    assert _teaspoons(teaspoons) == printed


def test_spoons_are_those_of_the_country() -> None:
    assert volume_words(exact(20), SPOONS["australian"]) == "1 tbsp"
    assert volume_words(exact(15), SPOONS["australian"]) == "3 tsp"
    assert volume_words(exact(15), SPOONS["metric"]) == "1 tbsp"
    assert volume_words(exact(250), SPOONS["metric"]) == "1 cup"


def test_ranges_of_volumes() -> None:
    assert volume_words(Range(US.cup, US.cup * F(3, 2)), US) == "1–1½ cups"
    assert volume_words(Range(US.tsp, US.tbsp), US) == "1 tsp to 1 tbsp"


@pytest.mark.parametrize(
    ("grams", "printed"),
    [
        ("430", "430 g"),
        ("595.24", "595 g"),
        ("11.9", "12 g"),
        ("5.95", "6 g"),
        ("9.94", "9.9 g"),
        ("9.96", "10 g"),
        ("0.3", "0.3 g"),
        ("0.125", "0.13 g"),
        ("1234.5", "1235 g"),
        ("207.01", "207 g"),
    ],
)
def test_weights_as_a_scale_shows_them(grams: str, printed: str) -> None:
    assert weight_words(exact(grams)) == printed


def test_ranges_of_weights() -> None:
    assert weight_words(Range(F(20), F(25))) == "20–25 g"
    assert weight_words(Range(F("20.1"), F("20.2"))) == "20 g"


@pytest.mark.parametrize(("count", "printed"), [("2", "2"), ("3/2", "1½"), ("1/3", "⅓"), ("9/2", "4½")])
def test_counts(count: str, printed: str) -> None:
    assert count_words(exact(count)) == printed


@pytest.mark.parametrize(
    ("percent", "printed"), [("100", "100 %"), ("62.165", "62.2 %"), ("0.284", "0.28 %")]
)
def test_percents(percent: str, printed: str) -> None:
    assert percent_words(F(percent)) == printed


@pytest.mark.parametrize(
    ("grams", "printed"),
    # The pound is 453.59237 g, the ounce its sixteenth (NIST SP 811, Appendix B); never more than there is.
    [("453.59237", "1 lb"), ("566.9904625", "1 lb 4 oz"), ("250", "8.8 oz"), ("812.24", "1 lb 12.6 oz")],
)
def test_pounds_and_ounces(grams: str, printed: str) -> None:
    assert pounds_and_ounces(F(grams)) == printed


def _heat(text: str, kind: str) -> Heat:
    temperature = read_temperature(text)
    assert temperature is not None
    return Heat(kind=kind, temperature=temperature, span=place(0, 1))


@pytest.mark.parametrize(
    ("text", "kind", "in_f", "in_c"),
    [
        # (F - 32) x 5/9 (NIST SP 811, Appendix B), rounded once: to 5 for an oven, to 1 otherwise.
        ("350 F", "oven", 350, 175),
        ("325 F", "oven", 325, 165),
        ("400 F", "oven", 400, 205),
        ("425 F", "oven", 425, 220),
        ("180 C", "oven", 355, 180),
        ("220 C", "oven", 430, 220),
        ("240 F", "other", 240, 116),
        ("150 F", "core", 150, 66),
        ("88 C", "core", 190, 88),
        ("93 C", "core", 199, 93),
        ("-18 C", "other", 0, -18),
        # Gas marks by the charts of British ovens: 250 F and 25 F for each mark.
        ("gas 4", "oven", 350, 175),
        ("gas 6", "oven", 400, 205),
        ("gas 9", "oven", 475, 245),
    ],
)
def test_temperatures(text: str, kind: str, in_f: int, in_c: int) -> None:
    heat = _heat(text, kind)
    assert fahrenheit(heat) == exact(in_f)
    assert celsius(heat, oven_c="nearest 5") == exact(in_c)


@pytest.mark.parametrize(("text", "in_c"), [("350 F", 180), ("400 F", 200), ("325 F", 160), ("gas 4", 180)])
def test_ovens_as_british_dials_print_them(text: str, in_c: int) -> None:
    assert celsius(_heat(text, "oven"), oven_c="dial") == exact(in_c)


@pytest.mark.parametrize(
    ("text", "kind", "printed"),
    [
        ("350 F", "oven", "350 °F (175 °C)"),
        ("180 C fan", "oven", "180 °C fan (355 °F fan)"),
        ("gas 4", "oven", "gas mark 4 (350 °F, 175 °C)"),
        ("350-375 F", "oven", "350–375 °F (175–190 °C)"),
        ("240 F", "other", "240 °F (116 °C)"),
    ],
)
def test_the_stated_scale_stands_first_as_stated(text: str, kind: str, printed: str) -> None:
    assert heat_mention(_heat(text, kind), oven_c="nearest 5").text.replace("\u00a0", " ") == printed


@pytest.mark.parametrize(
    ("low", "high", "printed"),
    [
        ("20", "20", "20 min"),
        ("12", "15", "12–15 min"),
        ("90", "90", "1 h 30 min"),
        ("120", "180", "2–3 h"),
        ("70", "90", "1 h 10 min to 1 h 30 min"),
        ("2880", "2880", "2 days"),
        ("1/2", "1/2", "30 s"),
    ],
)
def test_times(low: str, high: str, printed: str) -> None:
    assert minutes_words(Range(F(low), F(high))) == printed


@pytest.mark.parametrize(("text", "octets"), [("350°F", 6), ("½ cup", 6), ("⅓ cup", 7)])
def test_signs_take_more_bytes_than_letters(text: str, octets: int) -> None:
    # A description's limit counts bytes of UTF-8: the signs that are printed here are worth knowing.
    assert len(text.encode()) == octets
