"""What is said in which language, and what it costs to speak English."""

import subprocess
import sys
from datetime import date
from fractions import Fraction
from pathlib import Path

import pytest

from generator.wording.forms import all_of, any_of, day_words, number, percent, short_day
from generator.wording.speech import (
    gettext,
    has_words,
    languages,
    ngettext,
    say,
    say_many,
    say_of,
    shown,
    speak,
    speaking,
    voice,
)

DAY = date(2026, 9, 20)


def test_english_is_the_text_itself() -> None:
    assert say("{weight} g", weight="1.5") == "1.5 g"
    assert say("what no catalogue knows") == "what no catalogue knows"
    assert (day_words(DAY), short_day(DAY), number("1.5")) == ("September 20, 2026", "Sep 20, 2026", "1.5")


@pytest.mark.parametrize("tag", ["en-GB", "en-ZA", "fr", "nds-DE"])
def test_what_is_no_american_english_has_the_day_first(tag: str) -> None:
    with speaking(tag):
        assert (day_words(DAY), short_day(DAY)) == ("20 September 2026", "20 Sep 2026")
        assert number("1.5") == "1.5"


@pytest.mark.parametrize("tag", ["de", "de-DE", "de-CH", "DE-at"])
def test_a_country_of_a_language_speaks_it(tag: str) -> None:
    with speaking(tag):
        assert say("flour is raw") == "Mehl ist roh"
        assert day_words(DAY) == "20. September 2026"
    assert say("flour is raw") == "flour is raw"


def test_numbers_lists_and_counts_in_german() -> None:
    with speaking("de"):
        assert (number("1.5"), percent("62.5")) == ("1,5", "62,5\u00a0%")
        assert (all_of("abc"), any_of("ab"), all_of(())) == ("a, b und c", "a oder b", "")
        assert short_day(DAY) == "20.09.2026"
        assert say_of("allergen", "milk") == "Milch"
        one, many = "{count} batch of {weight}", "{count} batches of {weight}"
        assert say_many(one, many, 1, weight="2 g") == "1 Ansatz von 2 g"
        assert say_many(one, many, 2, weight="2 g") == "2 Ansätze von 2 g"
        assert say_many(one, many, Fraction(3, 2), weight="2 g") == "3/2 Ansätze von 2 g"


def test_templates_say_the_same() -> None:
    with speaking("de"):
        assert gettext("Makes") != "Makes"
        assert ngettext("no such %(num)s", "no such %(num)s", 2) == "no such %(num)s"
        assert shown("or %(choice)s", choice="Hafer") == "oder Hafer"


def test_values_are_never_read_as_places() -> None:
    assert say("new: {what}", what="{odd} %(odd)s") == "new: {odd} %(odd)s"


def test_a_language_is_left_as_it_was_found() -> None:
    speak("en-GB")
    with speaking("de"), pytest.raises(ValueError, match="on purpose"), speaking("fr"):
        raise ValueError("on purpose")
    assert voice().tag == "en-GB"


def test_the_languages_are_english_and_the_catalogues() -> None:
    assert set(languages()) >= {"de", "en"}
    assert has_words("en-IE")
    assert has_words("de-LI")
    assert not has_words("fr")


def test_english_loads_no_library(project: Path) -> None:
    code = "import sys, generator.pipeline, generator.render.site.page; sys.exit('babel' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], cwd=project, check=False).returncode == 0
