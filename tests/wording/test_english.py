"""English for readers in the United States and in Britain: the same texts, each spelt as its readers spell."""

import re
from datetime import date

import pytest

from generator.wording.forms import day_words, short_day
from generator.wording.speech import say, say_of, speaking
from tests.wording.kitchens import texts

# Endings and stems in which the two differ, after the Oxford and the Merriam-Webster dictionaries, from memory.
_BRITISH = re.compile(
    r"\b(?:\w{3,}(?:is(?:e[ds]?|ing|ations?)|[aeiou]lled|[aeiou]lling|metres?|litres?)|(?:un)?(?:col|flav|fav|hon|od|"
    r"lab|behavi|neighb)our\w*|mould\w*|grey\w*|centres?|sulph\w+|catalogues?|programmes?|travell\w+|licence|"
    r"practise|whilst|\w+yse[ds]?|soya|gelatine|yoghurt)\b",
    re.IGNORECASE,
)
_AMERICAN = re.compile(
    r"\b(?:\w{3,}(?:iz(?:e[ds]?|ing|ations?)|meters?|liters?)|(?:un)?(?:col|flav|fav|hon|od|lab)ors?|color\w*|"
    r"flavor\w*|mold\w*|gray\w*|centers?|sulf\w+|catalogs?|programs?|yogurt)\b",
    re.IGNORECASE,
)
# Words that only look so.
_BOTH = frozenset(
    {"otherwise", "called", "filled", "rolled", "rolling", "filling", "chilled", "pulled", "milled"}
    | {"promise", "compromised", "mayonnaise"}
)


def spelt(tag: str, pattern: re.Pattern[str]) -> set[str]:
    with speaking(tag):
        said = [say_of(each.context, each.one) for each in texts()]
    found = (
        word.casefold() for text in said for word in pattern.findall(re.sub(r"\{\w*\}|<[^>]*>", " ", text))
    )
    return set(found) - _BOTH


def test_americans_read_no_british_spelling() -> None:
    assert spelt("en-US", _BRITISH) == set()
    assert spelt("en", _BRITISH) == set()


def test_the_british_read_no_american_spelling() -> None:
    assert spelt("en-GB", _AMERICAN) == set()


def test_the_patterns_see_the_difference() -> None:
    assert {"mouldy", "sulphites", "pasteurised", "levelled", "colour"} <= spelt("en-GB", _BRITISH)
    assert {"moldy", "sulfites", "pasteurized", "color"} <= spelt("en-US", _AMERICAN)


@pytest.mark.parametrize(
    ("tag", "words", "short", "spelling"),
    [
        ("en-US", "September 5, 2026", "Sep 5, 2026", "Throw it away if it is moldy."),
        ("en-GB", "5 September 2026", "5 Sep 2026", "Throw it away if it is mouldy."),
        ("en-AU", "5 September 2026", "5 Sep 2026", "Throw it away if it is mouldy."),
    ],
)
def test_days_and_words(tag: str, words: str, short: str, spelling: str) -> None:
    with speaking(tag):
        assert day_words(date(2026, 9, 5)) == words
        assert short_day(date(2026, 9, 5)) == short
        told = say("Dry candied peel fully and keep it airtight and cool. Throw it away if it is mouldy.")
        assert told.endswith(spelling)


def test_what_a_maker_writes_stays_as_it_is_spelt() -> None:
    with speaking("en-US"):
        assert say("The film still shows {what}", what="colour") == "The film still shows colour"
