"""A temperature is the same pair of numbers whichever scale stands first, and is printed to its own precision."""

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from generator.diagnostics.span import whole_file
from generator.formula.model import Heat
from generator.measure.temperature import read_temperature, to_celsius, to_fahrenheit
from generator.present.heats import heat_words
from tests.lots import lots

LAW = settings(max_examples=lots(200), deadline=None)
KINDS = st.sampled_from(["oven", "core", "other"])
SCALES = st.sampled_from(["F", "C"])
DIALS = st.sampled_from(["nearest 5", "dial"])


def _heat(degrees: int, scale: str, kind: str) -> Heat:
    read = read_temperature(f"{degrees} {scale}")
    assert read is not None
    return Heat(kind=kind, temperature=read, span=whole_file("x.md"))


def _number(words: str) -> Fraction:
    return Fraction(words.split(" ")[0].replace("−", "-"))


@LAW
@given(st.integers(30, 280), SCALES, KINDS, DIALS)
def test_fahrenheit_first_and_celsius_first_print_the_same_two(
    degrees: int, scale: str, kind: str, dial: str
) -> None:
    heat = _heat(degrees, scale, kind)
    in_f = heat_words(heat, oven_c=dial, first="F")  # type: ignore[arg-type]
    in_c = heat_words(heat, oven_c=dial, first="C")  # type: ignore[arg-type]
    assert in_f == tuple(reversed(in_c))
    assert heat_words(heat, oven_c=dial) == (in_f if scale == "F" else in_c)  # type: ignore[arg-type]


@LAW
@given(st.integers(30, 280), SCALES, KINDS)
def test_the_stated_number_reads_back_and_the_other_within_half_a_step(
    degrees: int, scale: str, kind: str
) -> None:
    stated, other = heat_words(_heat(degrees, scale, kind), oven_c="nearest 5")
    convert = to_celsius if scale == "F" else to_fahrenheit
    half = Fraction(5, 2) if kind == "oven" else Fraction(1, 2)
    assert _number(stated) == degrees
    assert abs(_number(other) - convert(Fraction(degrees))) <= half
