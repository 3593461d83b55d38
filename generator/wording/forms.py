"""Days, numbers and lists as the language writes them: English by our own rules, any other by CLDR."""

import unicodedata
from collections.abc import Iterable
from datetime import date
from types import ModuleType

from generator.wording.speech import AMERICAN, voice

_MONTHS = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)


def day_words(on: date | None) -> str:
    """`September 20, 2026` for American readers, `20 September 2026` for others, `20. September 2026` in German."""
    if on is None:
        return ""
    spoken = voice()
    if spoken.catalogue:
        return str(_cldr().long_day(on, spoken.locale))
    return _english(on, _MONTHS[on.month - 1], spoken.tag)


def short_day(on: date | None) -> str:
    """As `day_words`, where there is little room: `Sep 20, 2026`, `20 Sep 2026`, `20.09.2026`."""
    if on is None:
        return ""
    spoken = voice()
    if spoken.catalogue:
        return str(_cldr().short_day(on, spoken.locale))
    return _english(on, _MONTHS[on.month - 1][:3], spoken.tag)


def month(number: int) -> str:
    """The name of a month, 1 to 12."""
    spoken = voice()
    return str(_cldr().month_name(number, spoken.locale)) if spoken.catalogue else _MONTHS[number - 1]


def _english(on: date, month: str, tag: str) -> str:
    if tag.casefold() in AMERICAN:
        return f"{month} {on.day}, {on.year}"
    return f"{on.day} {month} {on.year}"


def number(written: str) -> str:
    """A number that is written with a point, with the decimal mark of the language."""
    spoken = voice()
    return written.replace(".", _cldr().decimal_mark(spoken.locale)) if spoken.catalogue else written


def percent(written: str) -> str:
    """`62.5%`, `62,5 %`: a number that is written with a point, and the sign as the language sets it."""
    spoken = voice()
    if not spoken.catalogue:
        return f"{written}%"
    return str(_cldr().percent_pattern(spoken.locale).replace("{}", number(written)))


def small(words: str) -> str:
    """With small letters inside a sentence: in English only, for elsewhere nouns may have a capital by right."""
    return words if voice().catalogue else words.lower()


def place_of(words: str) -> str:
    """Where words stand in a list: marks on letters do not count, as in dictionaries (DIN 5007-1)."""
    apart = unicodedata.normalize("NFKD", words.casefold())
    return "".join(each for each in apart if not unicodedata.combining(each))


def all_of(words: Iterable[str]) -> str:
    """`a`, `a and b`, `a, b and c`."""
    return _list(tuple(words), "standard", "and")


def any_of(words: Iterable[str]) -> str:
    """`a`, `a or b`, `a, b or c`."""
    return _list(tuple(words), "or", "or")


def _list(words: tuple[str, ...], style: str, last: str) -> str:
    spoken = voice()
    if spoken.catalogue:
        return str(_cldr().joined(words, style, spoken.locale)) if words else ""
    return f" {last} ".join((", ".join(words[:-1]), words[-1]) if len(words) > 1 else words)


def _cldr() -> ModuleType:
    from generator.wording import catalogue

    return catalogue
