"""Each reader takes what the contract allows, and says what is wrong with the rest."""

from collections.abc import Callable
from datetime import UTC, date, datetime, timedelta, timezone
from fractions import Fraction
from typing import Any

import pytest

from generator.diagnostics.diagnostic import Diagnostics
from generator.source import fields
from generator.source.document import Mapping, Node
from generator.source.read import read_mapping
from generator.source.site import read_settings

Reader = Callable[[Node | None], tuple[Any, Diagnostics]]


def _keys(text: str) -> Mapping:
    keys, found = read_mapping("site.yaml", text.encode())
    assert keys is not None
    assert found == ()
    return keys


def _value(text: str) -> Node | None:
    return _keys(f"k: {text}\n").get("k")


GOOD: list[tuple[Reader, str, object]] = [
    (fields.text_of, " a b ", "a b"),
    (fields.text_of, "12:30", "12:30"),
    (fields.texts_of, "one", ("one",)),
    (fields.texts_of, "[a, 2, no]", ("a", "2", "no")),
    (fields.texts_of, "[]", ()),
    (fields.date_of, "2024-02-29", date(2024, 2, 29)),
    (
        fields.moment_of,
        "2026-09-12T15:00-05:00",
        datetime(2026, 9, 12, 15, tzinfo=timezone(timedelta(hours=-5))),
    ),
    (fields.moment_of, "2026-09-12t15:00:30.25z", datetime(2026, 9, 12, 15, 0, 30, tzinfo=UTC)),
    (fields.yes_no_of, "no", False),
    (fields.yes_no_of, "True", True),
    (fields.whole_of, "007", 7),
    (fields.percent_of, "12 %", Fraction(3, 25)),
    (fields.percent_of, "12.5%", Fraction(1, 8)),
    (fields.percent_of, "0 %", Fraction(0)),
    (lambda node: fields.choice_of(node, ("nearest 5", "dial")), "Nearest  5", "nearest 5"),
    (fields.address_of, "https://shop.example/tin?a=1#b", "https://shop.example/tin?a=1#b"),
    (fields.address_of, "mailto:kitchen@example.org", "mailto:kitchen@example.org"),
    (fields.address_of, "media/a.jpg", "media/a.jpg"),
]


@pytest.mark.parametrize(("reader", "text", "expected"), GOOD)
def test_what_is_taken(reader: Reader, text: str, expected: object) -> None:
    assert reader(_value(text)) == (expected, ())


READERS: tuple[Reader, ...] = (
    fields.text_of,
    fields.texts_of,
    fields.date_of,
    fields.moment_of,
    fields.yes_no_of,
    fields.whole_of,
    fields.percent_of,
    lambda node: fields.choice_of(node, ("a",)),
    fields.address_of,
)


@pytest.mark.parametrize("reader", READERS)
def test_absent_and_blank_are_no_mistake(reader: Reader) -> None:
    assert reader(None) == (None, ())
    assert reader(_value("")) == (None, ())
    assert reader(_value('" "')) == (None, ())


@pytest.mark.parametrize("reader", READERS)
def test_keys_where_a_value_is_expected_are_told(reader: Reader) -> None:
    value, found = reader(_value("{a: b}"))
    assert value is None
    assert [each.message for each in found] == ["one text is expected here, not keys and values"]


_NO_LINK = "“javascript:alert(1)” is not an address that a page may link to"
BAD: list[tuple[Reader, str, str, str]] = [
    (fields.date_of, "12 September 2026", "S063", "“12 September 2026” is not a date"),
    (fields.date_of, "2026-02-29", "S063", "the calendar has no 2026-02-29"),
    (fields.date_of, "٢٠٢٦-01-01", "S063", "“٢٠٢٦-01-01” is not a date"),
    (fields.moment_of, "2026-09-12", "S064", "“2026-09-12” is not a date and time with a zone"),
    (fields.moment_of, "2026-09-12T25:00Z", "S064", "there is no such moment as 2026-09-12T25:00Z"),
    (fields.moment_of, "2026-09-12T15:00+99:00", "S064", "there is no such moment as 2026-09-12T15:00+99:00"),
    (fields.yes_no_of, "maybe", "S065", "“maybe” is neither yes nor no"),
    (fields.whole_of, "-1", "S066", "“-1” is not a whole number"),
    (fields.whole_of, "9" * 50, "S066", f"“{'9' * 39}…” is not a whole number"),
    (fields.percent_of, "12", "S067", "“12” is not a percentage"),
    (fields.percent_of, "101 %", "S067", "“101 %” is not a percentage"),
    (lambda node: fields.choice_of(node, ("a4",)), "a5", "S068", "“a5” is not one of the choices here"),
    (fields.address_of, "data:,hi", "S069", "“data:,hi” is not an address that a page may link to"),
    (fields.address_of, "javascript:alert(1)", "S069", _NO_LINK),
    (fields.address_of, "https://", "S069", "this address has no site"),
    (fields.address_of, "http://[::1", "S069", "this address has no site"),
    (fields.address_of, "//shop.example", "S069", "an address here does not begin with a slash"),
    (fields.address_of, "../a.jpg", "S069", "this path leads out of the content folder"),
    (fields.address_of, "https://a.example/b c", "S069", "an address has no spaces, quotes or brackets"),
]  # fmt: skip


@pytest.mark.parametrize(("reader", "text", "code", "message"), BAD)
def test_what_is_refused(reader: Reader, text: str, code: str, message: str) -> None:
    value, found = reader(_value(text))
    assert value is None
    assert [(each.code, each.message) for each in found] == [(code, message)]
    assert found[0].hint


def test_an_unknown_key_is_told_with_the_nearest_known_one() -> None:
    found = fields.check_keys(_keys("Bakes off: 12 %\n"), ("title", "bakes_off"), what="a recipe")
    assert [(each.code, each.message, each.hint) for each in found] == [
        ("S060", "a recipe has no key “Bakes off”", "Did you mean “bakes_off”?")
    ]


def test_a_needed_key_is_missing_when_it_is_blank() -> None:
    found = fields.check_keys(
        _keys("lead: a\ntitle:\n"), ("title", "lead"), what="a recipe", needed=("title",)
    )
    assert [(each.code, each.message, each.span.line) for each in found] == [
        ("S061", "a recipe needs the key “title”", 2)
    ]


def test_settings_have_the_defaults_of_the_contract_and_the_makers_choices() -> None:
    needed = "title: A\nmaker: B\nurl: https://kitchen.example/bakes\n"
    chosen = "region: eu\npack_age: 90\nzone: America/Chicago\nkitchen_handles: [milk, tree nuts]\n"
    settings, found = read_settings(_keys(needed + chosen), "site.yaml", regions=("US", "EU"))
    assert found == ()
    assert (settings.url, settings.region, settings.pack_age) == ("https://kitchen.example/bakes/", "EU", 90)
    assert (settings.zone, settings.kitchen_handles) == ("America/Chicago", ("milk", "tree nuts"))
    assert (settings.language, settings.paper, settings.first, settings.cup) == (
        "en-US",
        "letter",
        "weight",
        "us",
    )
    assert (settings.flour_cup, settings.egg, settings.oven_c) == ("spooned", "large", "nearest 5")
    assert settings.description_limit == 5000


@pytest.mark.parametrize(
    "url", ["https://a.example/?q=1", "https://a.example/#b", "kitchen/", "mailto:a@b.example"]
)
def test_the_address_of_the_site_is_absolute_and_plain(url: str) -> None:
    _, found = read_settings(_keys(f"title: A\nmaker: B\nurl: {url}\n"), "site.yaml", regions=("US", "EU"))
    assert [each.code for each in found] == ["S070"]


@pytest.mark.parametrize("zone", ["America", "../etc/passwd", "America/Chicgo", "/UTC", "a\u0301"])
def test_a_zone_that_is_none_is_refused(zone: str) -> None:
    _, found = read_settings(
        _keys(f"title: A\nmaker: B\nurl: https://a.example\nzone: {zone}\n"),
        "site.yaml",
        regions=("US", "EU"),
    )
    assert [each.code for each in found] == ["S071"]
