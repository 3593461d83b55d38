"""Amounts, times and stages as a German reader is told them; all by the functions that tell them in English."""

from collections.abc import Iterator
from fractions import Fraction

import pytest

from generator.diagnostics.span import whole_file
from generator.formula.model import Stage, Timed
from generator.measure.duration import read_duration
from generator.measure.number import Range
from generator.measure.unit import SPOONS
from generator.present.amounts import percent_words, volume_words, weight_words
from generator.present.durations import minutes_words, named_tin
from generator.present.reasons import reason_words
from generator.present.stages import stage_words
from generator.wording.speech import speaking


@pytest.fixture(autouse=True)
def _german() -> Iterator[None]:
    with speaking("de"):
        yield


def span(low: str, high: str = "") -> Range:
    return Range(Fraction(low), Fraction(high or low))


@pytest.mark.parametrize(
    ("minutes", "told"),
    [
        (span("20"), "20 min"),
        (span("12", "15"), "12–15 min"),
        (span("90"), "1 h 30 min"),
        (span("50", "60"), "50 min bis 1 h"),
        (span("2880"), "2 Tage"),
        (span("5/2"), "2,5 min"),
        (span("1/2"), "30 s"),
    ],
)
def test_times(minutes: Range, told: str) -> None:
    assert minutes_words(minutes) == told


def test_amounts() -> None:
    spoons = SPOONS["us"]
    assert weight_words(span("7/2")) == "3,5 g"
    assert percent_words(Fraction("62.2")) == "62,2 %"
    assert volume_words(Range.exact(spoons.cup), spoons) == "1 Tasse"
    assert volume_words(Range.exact(spoons.cup * Fraction(3, 2)), spoons) == "1½ Tassen"
    assert volume_words(Range.exact(spoons.tbsp), spoons) == "1 EL"
    assert volume_words(Range.exact(spoons.tsp / 20), spoons) == "eine Prise"


@pytest.mark.parametrize(
    ("before", "after", "told"),
    [
        ("Zu einem Zopf flechten, ", ", dann bestreichen.", "40 min gehen lassen"),
        ("Zugedeckt gehen lassen, ", ".", "40 min"),
        ("Danach noch etwa ", " warten.", "40 min"),
        ("Fertig. ", "", "40 min gehen lassen."),
    ],
)
def test_a_stage_reads_in_its_sentence(before: str, after: str, told: str) -> None:
    duration = read_duration("40 min")
    assert duration is not None
    stage = Timed(kind="rise", stage=Stage.WAITING, duration=duration, span=whole_file("recipes/x.md"))
    assert stage_words(stage, before=before, after=after) == told


def test_what_is_not_known_is_told_in_german_and_else_left_as_it_is() -> None:
    told = "Malt: say in the pantry what its pack contains."
    assert reason_words(told) == "Malt: Was die Packung enthält, ist im Vorrat noch nicht gesagt."
    assert reason_words("Something else is asked.") == "Something else is asked."


def test_tins_of_known_kinds_have_a_name() -> None:
    assert named_tin("loaf 23 × 13 × 7 cm") == "Kastenform 23 × 13 × 7 cm"
    assert named_tin("Omas alte Form") == "Omas alte Form"
