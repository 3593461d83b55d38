"""Numbers as a home baker writes them."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.measure.number import VULGAR, Range, looks_garbled, read_number, total

F = Fraction
wholes = st.integers(min_value=0, max_value=10**12 - 1)
proper = st.integers(2, 99).flatmap(lambda bottom: st.tuples(st.integers(1, bottom - 1), st.just(bottom)))
exact = st.fractions(min_value=0, max_value=1000, max_denominator=64)
ranges = st.tuples(exact, exact).map(lambda ends: Range(min(ends), max(ends)))


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("2", F(2)),
        ("1/2", F(1, 2)),
        ("1 1/2", F(3, 2)),
        ("1-1/2", F(3, 2)),
        ("2-2/3", F(8, 3)),
        ("½", F(1, 2)),
        ("1½", F(3, 2)),
        ("1 ½", F(3, 2)),
        ("1\u00a0½", F(3, 2)),
        ("1-½", F(3, 2)),
        ("1⁄2", F(1, 2)),
        ("1 1⁄2", F(3, 2)),
        ("1.5", F(3, 2)),
        ("0.5", F(1, 2)),
        (".5", F(1, 2)),
        ("1,000", F(1000)),
        ("1,250.5", F(2501, 2)),
        ("12,345,678", F(12345678)),
        ("1,5", F(3, 2)),
        ("0,125", F(1, 8)),
        ("1000,5", F(2001, 2)),
        ("00", F(0)),
        ("half", F(1, 2)),
        ("Half a", F(1, 2)),
        ("half an", F(1, 2)),
        ("one", F(1)),
        ("Twelve", F(12)),
        ("a dozen", F(12)),
        ("half a dozen", F(6)),
        ("11/2", F(11, 2)),
        ("123456789012", F(123456789012)),
    ],
)
def test_an_exact_number_is_read_to_its_end(text: str, value: Fraction) -> None:
    assert read_number(text) == (Range.exact(value), len(text))


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("20-25", F(20), F(25)),
        ("20 - 25", F(20), F(25)),
        ("1–1½", F(1), F(3, 2)),
        ("1-1 1/2", F(1), F(3, 2)),
        ("1-1-1/2", F(1), F(3, 2)),
        ("1-1/2-2", F(3, 2), F(2)),
        ("20 to 25", F(20), F(25)),
        ("one to two", F(1), F(2)),
        ("1/2-3/4", F(1, 2), F(3, 4)),
        ("1-3/2", F(1), F(3, 2)),
        ("1,000-1,200", F(1000), F(1200)),
    ],
)
def test_a_range_is_read_to_its_end(text: str, low: Fraction, high: Fraction) -> None:
    assert read_number(text) == (Range(low, high), len(text))


@pytest.mark.parametrize(("text", "end"), [("25-20", 2), ("20-20", 2), ("2-inch", 1), ("2 to the", 1)])
def test_a_range_that_does_not_rise_is_only_its_first_number(text: str, end: int) -> None:
    assert read_number(text) == (Range.exact(int(text[:end])), end)


@pytest.mark.parametrize(
    "text",
    [
        "",
        " 2",
        "flour",
        "-2",
        "1/0",
        "1 1/0",
        "0/0",
        "1/2/3",
        "1.5.2",
        "1,000,5",
        "1,2345",
        "2²",
        "²",
        "٣",
        "1٣",
        "1½½",
        "½2",
        "二",
        "1234567890123",
        "1/1234567890123",
        "0." + "1" * 13,
        "NaN",
        "inf",
        "half and half",
        "half & half",
        "half-and-half",
        "half fat milk",
        "five spice powder",
        "one-bowl",
        "once",
        "fİve eggs",
        "ſix eggs",
    ],
)
def test_what_is_no_number_gives_none(text: str) -> None:
    assert read_number(text) is None


@pytest.mark.parametrize("text", ["a cup", "an egg"])
def test_an_article_is_a_number_only_where_the_caller_says_so(text: str) -> None:
    assert read_number(text) is None
    found = read_number(text, words=True)
    assert found is not None
    assert found[0] == Range.exact(1)


@pytest.mark.parametrize("text", ["a few nuts", "a little milk", "a bit more"])
def test_a_few_is_not_one(text: str) -> None:
    assert read_number(text, words=True) is None


def test_reading_starts_where_it_is_told() -> None:
    assert read_number("about 20-25 g", 6) == (Range(F(20), F(25)), 11)
    assert read_number("2", 5) is None


@pytest.mark.parametrize("text", ["11/2", "31/4 cups", "21⁄2 tsp", "add 11/2 cups", "1 3/2", "1 2/2 cups"])
def test_a_fraction_that_lost_its_space_looks_garbled(text: str) -> None:
    assert looks_garbled(text)


@pytest.mark.parametrize(
    "text", ["1 1/2", "1/2", "3/2", "10/12", "1-1/2", "9/12/2026", "100/65/2/1", "115g/8 tbsp", "½", ""]
)
def test_an_ordinary_fraction_does_not_look_garbled(text: str) -> None:
    assert not looks_garbled(text)


def test_a_range_never_runs_downwards() -> None:
    with pytest.raises(ValueError, match="from low to high"):
        Range(F(2), F(1))


def test_half_of_a_range_leaves_the_other_half() -> None:
    whole = Range(F(20), F(25))
    assert whole.minus(whole.scaled(F(1, 2))) == Range(F(10), F(25, 2))


def test_a_range_taken_from_an_exact_amount_still_runs_upwards() -> None:
    assert Range.exact(100).minus(Range(F(20), F(25))) == Range(F(75), F(80))


def test_a_negative_factor_still_runs_upwards() -> None:
    assert Range(F(1), F(2)).scaled(F(-1)) == Range(F(-2), F(-1))


def test_the_sum_of_nothing_is_zero() -> None:
    assert total([]) == Range.exact(0)


@given(st.lists(ranges, max_size=6))
def test_a_sum_is_the_sum_of_its_ends(parts: list[Range]) -> None:
    result = total(parts)
    assert (result.low, result.high) == (sum(p.low for p in parts), sum(p.high for p in parts))
    assert result.mid == sum(part.mid for part in parts)


@given(ranges, st.fractions(min_value=F(1, 50), max_value=50, max_denominator=50))
def test_scaling_there_and_back_is_identity(amount: Range, factor: Fraction) -> None:
    assert amount.scaled(factor).scaled(1 / factor) == amount


@given(ranges)
def test_nothing_is_left_of_an_amount_taken_from_itself(amount: Range) -> None:
    assert amount.minus(amount) == Range.exact(0)


@given(wholes, proper, st.sampled_from(["{w} {t}/{b}", "{w}-{t}/{b}", "{w} {t}⁄{b}", "{w}\u202f{t}/{b}"]))
def test_reading_a_written_mixed_number_gives_it_back(
    whole: int, part: tuple[int, int], pattern: str
) -> None:
    text = pattern.format(w=whole, t=part[0], b=part[1])
    assert read_number(text) == (Range.exact(whole + F(*part)), len(text))


@given(wholes, st.sampled_from(sorted(VULGAR)))
def test_reading_a_written_fraction_sign_gives_it_back(whole: int, sign: str) -> None:
    assert read_number(f"{whole}{sign}") == (Range.exact(whole + VULGAR[sign]), len(f"{whole}{sign}"))


@given(st.integers(1, 999), st.integers(0, 999))
def test_thousands_and_decimal_point_do_not_meet(thousands: int, rest: int) -> None:
    assert read_number(f"{thousands},{rest:03d}") == (
        Range.exact(1000 * thousands + rest),
        len(f"{thousands},{rest:03d}"),
    )


@given(wholes, wholes, st.sampled_from(["-", "–", " to ", " – "]))
def test_reading_a_written_range_gives_it_back(low: int, high: int, between: str) -> None:
    text = f"{low}{between}{high}"
    found = read_number(text)
    if low < high:
        assert found == (Range(F(low), F(high)), len(text))
    else:
        assert found == (Range.exact(low), len(str(low)))
