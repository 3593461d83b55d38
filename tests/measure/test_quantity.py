"""A number with its unit at the head of a line."""

import time
from fractions import Fraction

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from generator.measure.duration import read_clock, read_duration
from generator.measure.length import read_length, read_tin
from generator.measure.number import Range, looks_garbled, read_number
from generator.measure.quantity import read_quantity
from generator.measure.temperature import read_temperature
from generator.measure.unit import SPOONS, nearest_units, unit_named

US = SPOONS["us"]
F = Fraction


def shown(text: str) -> tuple[str, str, str] | None:
    """Amount, unit and what the reader leaves of the text."""
    found = read_quantity(text, spoons=US)
    if found is None:
        return None
    quantity, end = found
    assert quantity.text == text[:end]
    amount = quantity.amount
    number = str(amount.low) if amount.is_exact else f"{amount.low}..{amount.high}"
    return number, quantity.unit.name if quantity.unit else "", text[end:]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("430 g bread flour", ("430", "g", " bread flour")),
        ("430g bread flour", ("430", "g", " bread flour")),
        ("430\u00a0g flour", ("430", "g", " flour")),
        ("2¼ tsp (1 packet / 7 g) instant yeast", ("9/4", "tsp", " (1 packet / 7 g) instant yeast")),
        ("1-1/2 cups lukewarm milk", ("3/2", "cup", " lukewarm milk")),
        ("1–1½ cups warm water", ("1..3/2", "cup", " warm water")),
        ("20-25 g honey", ("20..25", "g", " honey")),
        ("115g/8 tbsp/1 stick butter", ("115", "g", "/8 tbsp/1 stick butter")),
        ("½ stick (55 g) butter", ("1/2", "stick", " (55 g) butter")),
        ("1 lb. 4 oz. bread flour (567 g)", ("5/4", "lb", " bread flour (567 g)")),
        ("¾ cup + 2 tbsp water (207 g)", ("7/8", "cup", " water (207 g)")),
        ("1 cup plus 2 tbsp milk", ("9/8", "cup", " milk")),
        ("1 tbsp 1 tsp oil", ("4/3", "tbsp", " oil")),
        ("500 g 00 flour", ("500", "g", " 00 flour")),
        ("1 cup 2% milk", ("1", "cup", " 2% milk")),
        ("1,000 g flour", ("1000", "g", " flour")),
        ("1 T sugar", ("1", "tbsp", " sugar")),
        ("1 t salt", ("1", "tsp", " salt")),
        ("1 c. flour", ("1", "cup", " flour")),
        ("2 fl. oz. milk", ("2", "fl oz", " milk")),
        ("half a nutmeg, grated", ("1/2", "", " nutmeg, grated")),
        ("A pinch of saffron", ("1", "pinch", " of saffron")),
        ("a cup of water", ("1", "cup", " of water")),
        ("1 heaping tablespoon cocoa", ("1", "tbsp", " cocoa")),
        ("scant ½ cup buttermilk", ("1/2", "cup", " buttermilk")),
        ("2 large cloves garlic", ("2", "clove", " garlic")),
        ("2 large eggs", ("2", "", " large eggs")),
        ("1 clove-studded onion", ("1", "", " clove-studded onion")),
        ("1 can't", ("1", "", " can't")),
        ("3 gala apples", ("3", "", " gala apples")),
        ("2 egg yolks", ("2", "", " egg yolks")),
        ("3 cloves", ("3", "clove", "")),
        ("1 8-oz block cream cheese", ("8", "oz", " cream cheese")),
        ("2 14-oz cans pumpkin", ("28", "oz", " pumpkin")),
        ("8-oz block cream cheese", ("8", "oz", " block cream cheese")),
        ("1 (14 oz) can milk", ("1", "", " (14 oz) can milk")),
        ("1 c, level", ("1", "cup", ", level")),
        ("10 g of bread flour", ("10", "g", " of bread flour")),
        ("4 cups (1 L) water", ("4", "cup", " (1 L) water")),
    ],
)
def test_the_head_of_a_line(text: str, expected: tuple[str, str, str]) -> None:
    assert shown(text) == expected


@pytest.mark.parametrize(
    ("text", "amount", "unit"),
    [
        ("1 lb 450 g flour", "1", "lb"),
        ("1 cup 240 ml milk", "1", "cup"),
        ("4 oz 1 lb flour", "4", "oz"),
        ("1 cup + 50 g milk", "1", "cup"),
        ("1 tbsp 4 tsp oil", "1", "tbsp"),
    ],
)
def test_two_measures_of_the_same_amount_are_not_added(text: str, amount: str, unit: str) -> None:
    found = shown(text)
    assert found is not None
    assert found[:2] == (amount, unit)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "flour",
        "Salt, to taste",
        "2% milk",
        "430gramz flour",
        "350°F",
        '9" tin',
        "12:30",
        "a few nuts",
        "a nutmeg",
        "1/0 cup",
        "2² cups",
        "٣ cups",
        "25-20 g honey",
        "half-and-half",
    ],
)
def test_a_line_without_a_quantity_gives_none(text: str) -> None:
    assert shown(text) is None


def test_reading_starts_where_it_is_told() -> None:
    text = "½ stick (55 g) butter"
    found = read_quantity(text, spoons=US, start=9)
    assert found is not None
    assert (found[0].text, text[found[1] :]) == ("55 g", ") butter")


def test_grams_only_of_mass_and_millilitres_only_of_volume() -> None:
    mass, volume, count = (read_quantity(text, spoons=US) for text in ("1 lb x", "1-2 cups x", "2 eggs"))
    assert mass is not None
    assert volume is not None
    assert count is not None
    assert (mass[0].grams(), mass[0].millilitres()) == (Range.exact(F("453.59237")), None)
    assert (volume[0].grams(), volume[0].millilitres()) == (
        None,
        Range(F("236.5882365"), F("473.176473")),
    )
    assert (count[0].grams(), count[0].millilitres()) == (None, None)


@given(
    st.fractions(min_value=0, max_value=999, max_denominator=16),
    st.sampled_from(["g", "kg", "ml", "tsp", "tbsp", "cups", "oz", "lb", "sticks", "sprigs", "fl oz"]),
    st.sampled_from(["us", "metric", "imperial", "australian"]),
)
def test_reading_a_written_quantity_gives_it_back(amount: Fraction, word: str, country: str) -> None:
    text = f"{amount} {word}"
    found = read_quantity(f"{text} of x", spoons=SPOONS[country])
    assert found is not None
    assert (found[0].amount, found[0].text) == (Range.exact(amount), text)
    assert found[0].unit == unit_named(word, spoons=SPOONS[country])


KITCHEN = st.text(
    alphabet=st.sampled_from(" 0123456789½⅔/⁄.,-–:+xX×°FCgcptTohalfinm²٣Kſİı\u00a0\n\"'()%"), max_size=40
)


def read_everything(text: str) -> None:
    read_number(text, words=True)
    read_quantity(text, spoons=US)
    read_quantity(text, spoons=US, start=len(text) + 1)
    looks_garbled(text)
    unit_named(text, spoons=US)
    nearest_units(text)
    read_temperature(text)
    read_duration(text)
    read_clock(text)
    read_length(text)
    read_tin(text)


@given(st.text() | KITCHEN)
@example("fİve eggs")
@example("cylİnder 17 x 12 cm")
@example("1/0")
@example("gas 1/0")
@example("\ud800")
@example("¹⁄₂ cup")
def test_no_text_raises(text: str) -> None:
    read_everything(text)


@pytest.mark.parametrize(
    "block",
    ["1", "1 ", "1/", "1,", "1-", "½", " ", "a ", "1 g + ", "0:", "gas ", "round ", "9 x ", "\u0661", "f"],
)
def test_ten_megabytes_of_anything_are_read_in_a_moment(block: str) -> None:
    text = block * (10_000_000 // len(block))
    start = time.process_time()
    read_everything(text)
    assert time.process_time() - start < 10
