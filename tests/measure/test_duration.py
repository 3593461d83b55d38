"""Times as written."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.measure.duration import Duration, read_clock, read_duration
from generator.measure.number import Range

F = Fraction


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("5 min", 5, 5),
        ("5min", 5, 5),
        ("5 min.", 5, 5),
        ("1 minute", 1, 1),
        ("1 h", 60, 60),
        ("1 h 30 min", 90, 90),
        ("1h30min", 90, 90),
        ("1 hour and 30 minutes", 90, 90),
        ("1 1/2 hours", 90, 90),
        ("half an hour", 30, 30),
        ("an hour", 60, 60),
        ("90 minutes", 90, 90),
        ("12-15 min", 12, 15),
        ("12 to 15 mins", 12, 15),
        ("1-2 h", 60, 120),
        ("45 min to 1 h", 45, 60),
        ("1 h - 1 h 30 min", 60, 90),
        ("30 s", F(1, 2), F(1, 2)),
        ("2 days", 2880, 2880),
        ("1 day 12 h", 2160, 2160),
        ("4-6 weeks", 40320, 60480),
    ],
)
def test_a_written_time_in_minutes(text: str, low: Fraction, high: Fraction) -> None:
    assert read_duration(text) == Duration(minutes=Range(F(low), F(high)))


@pytest.mark.parametrize(
    "text",
    [
        "",
        "5",
        "overnight",
        "1 h 30",
        "30 min 1 h",
        "5 min 5 min",
        "1 h to 45 min",
        "about 5 min",
        "5 min or so",
        "5 mn",
        "1/0 h",
        "18:40",
        "-5 min",
        "1 h" * 1000,
    ],
)
def test_anything_else_is_no_time(text: str) -> None:
    assert read_duration(text) is None


@pytest.mark.parametrize(
    ("text", "seconds"),
    [("0:00", 0), ("0:05", 5), ("1:25", 85), ("18:40", 1120), ("1:02:03", 3723), ("100:00:00", 360000)],
)
def test_a_place_on_a_film_in_seconds(text: str, seconds: int) -> None:
    assert read_clock(text) == seconds


@pytest.mark.parametrize(
    "text",
    [
        "",
        "5",
        "0:60",
        "60:00",
        "1:60:00",
        "1:2:03",
        "1:00:0",
        "-1:00",
        "1:00:00:00",
        "a:bc",
        "١:٢٣",
        "0:00\n1",
    ],
)
def test_anything_else_is_no_place_on_a_film(text: str) -> None:
    assert read_clock(text) is None


@given(st.integers(0, 59), st.integers(0, 59), st.integers(1, 99))
def test_reading_a_written_clock_gives_it_back(minutes: int, seconds: int, hours: int) -> None:
    assert read_clock(f"{minutes}:{seconds:02d}") == 60 * minutes + seconds
    assert read_clock(f"{hours}:{minutes:02d}:{seconds:02d}") == 3600 * hours + 60 * minutes + seconds


@given(st.integers(0, 99), st.integers(0, 99))
def test_reading_a_written_time_gives_it_back(hours: int, minutes: int) -> None:
    assert read_duration(f"{hours} h {minutes} min") == Duration(minutes=Range.exact(60 * hours + minutes))
