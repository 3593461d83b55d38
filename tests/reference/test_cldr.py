"""Days, lists, plurals, percent signs and unit words against CLDR, the Unicode Common Locale Data Repository.

Source: https://cldr.unicode.org, as carried by the library Babel, whose version is locked in requirements.lock.
English is worded by our own rules, which are held against the same data.
"""

from datetime import date, timedelta

import pytest
from babel import Locale
from babel.dates import format_date
from babel.lists import format_list
from babel.numbers import format_percent
from babel.units import format_unit

from generator.wording.forms import all_of, any_of, day_words, number, percent, short_day
from generator.wording.speech import say, say_of, speaking, voice

DAYS = [date(2026, 1, 1) + timedelta(days=step) for step in range(0, 365, 9)]


@pytest.mark.parametrize(
    ("tag", "locale"), [("en-US", "en_US"), ("en-GB", "en_GB"), ("de", "de"), ("de-AT", "de_AT")]
)
def test_long_days(tag: str, locale: str) -> None:
    with speaking(tag):
        assert [day_words(each) for each in DAYS] == [
            format_date(each, "long", locale=locale) for each in DAYS
        ]


@pytest.mark.parametrize(("tag", "locale"), [("en-US", "en_US"), ("de", "de")])
def test_short_days(tag: str, locale: str) -> None:
    with speaking(tag):
        assert [short_day(each) for each in DAYS] == [
            format_date(each, "medium", locale=locale) for each in DAYS
        ]


@pytest.mark.parametrize("words", [("a",), ("a", "b"), ("a", "b", "c"), ("a", "b", "c", "d")])
def test_lists_have_no_comma_before_the_last(words: tuple[str, ...]) -> None:
    """British English and German by CLDR; American English has one there by CLDR, ours has none."""
    assert all_of(words) == format_list(words, locale="en_GB")
    assert any_of(words) == format_list(words, style="or", locale="en_GB")
    with speaking("de"):
        assert all_of(words) == format_list(words, locale="de")
        assert any_of(words) == format_list(words, style="or", locale="de")


@pytest.mark.parametrize(("tag", "locale"), [("en-US", "en"), ("en-GB", "en_GB"), ("de", "de")])
def test_plurals(tag: str, locale: str) -> None:
    rule = Locale.parse(locale).plural_form
    with speaking(tag):
        form = voice().form
        assert [form(count) for count in range(1001)] == [
            0 if rule(count) == "one" else 1 for count in range(1001)
        ]


def test_numbers_and_percent() -> None:
    with speaking("de"):
        assert number("1.5") == "1,5"
        assert percent("62.5") == format_percent(0.625, "#,##0.0 %", locale="de").replace(" ", "\u00a0")
        assert say("{number} %", number=number("62.5")) == percent("62.5").replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("text", "unit", "length"),
    [
        ("{weight} g", "mass-gram", "short"),
        ("{number} ml", "volume-milliliter", "short"),
        ("{number} mm", "length-millimeter", "short"),
        ("{number} cm", "length-centimeter", "short"),
        ("{number} tbsp", "volume-tablespoon", "short"),
        ("{number} tsp", "volume-teaspoon", "short"),
        ("{number} cups", "volume-cup", "long"),
        ("{number} days", "duration-day", "long"),
        ("{number} °F", "temperature-fahrenheit", "short"),
        ("{number} °C", "temperature-celsius", "short"),
    ],
)
def test_german_unit_words(text: str, unit: str, length: str) -> None:
    """Without minutes and hours: `min` and `h` are symbols of the SI, where CLDR abbreviates with a full stop."""
    with speaking("de"):
        said = say(text, number="3", weight="3")
    assert said == format_unit(3, unit, length=length, locale="de").replace("\u00a0", " ")  # type: ignore[arg-type]


def test_german_cups_are_singular_up_to_one() -> None:
    with speaking("de"):
        assert say("{number} cup", number="1") == format_unit(1, "volume-cup", length="long", locale="de")


ANNEX_II = {
    # Regulation (EU) No 1169/2011, Annex II, German text ("Verordnung (EU) Nr. 1169/2011, Anhang II"), as published;
    # short for Eier, Fische, Sojabohnen, Sesamsamen, Sulphite, Macadamia- oder Queenslandnüsse.
    "wheat": "Weizen",
    "rye": "Roggen",
    "barley": "Gerste",
    "oats": "Hafer",
    "crustacean": "Krebstiere",
    "egg": "Ei",
    "fish": "Fisch",
    "peanut": "Erdnüsse",
    "soy": "Soja",
    "milk": "Milch",
    "almond": "Mandeln",
    "hazelnut": "Haselnüsse",
    "walnut": "Walnüsse",
    "cashew": "Kaschunüsse",
    "pecan": "Pecannüsse",
    "brazil nut": "Paranüsse",
    "pistachio": "Pistazien",
    "macadamia": "Macadamianüsse",
    "tree nuts": "Schalenfrüchte",
    "celery": "Sellerie",
    "mustard": "Senf",
    "sesame": "Sesam",
    "sulphites": "Sulfite",
    "lupin": "Lupinen",
    "mollusc": "Weichtiere",
}


@pytest.mark.parametrize("region", ["EU", "UK"])
def test_the_names_of_annex_ii_in_german(region: str) -> None:
    from generator.declaration.regions import region_named

    rules = region_named(region)
    with speaking("de"):
        assert {each: rules.word(each) for each in ANNEX_II} == ANNEX_II
        assert all(say_of("allergen", each) != each for each in ANNEX_II)
    assert rules.word("wheat") == "wheat"
