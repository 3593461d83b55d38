"""Catalogues and CLDR data: the only module that knows Babel. Loaded only for another language than English.

CLDR is the Unicode Common Locale Data Repository, https://cldr.unicode.org; Babel carries its data.
"""

from collections.abc import Callable, Mapping
from datetime import date
from decimal import Decimal
from fractions import Fraction
from functools import cache
from pathlib import Path
from types import MappingProxyType

from babel import Locale, UnknownLocaleError
from babel.dates import format_date
from babel.lists import format_list
from babel.messages.pofile import read_po

CATEGORIES = ("zero", "one", "two", "few", "many", "other")
"""The plural categories of CLDR, in the order of the forms in a catalogue."""

Words = Mapping[tuple[str, str], tuple[str, ...]]


@cache
def read_catalogue(path: Path) -> Words:
    """Context and English text -> what is said for it, one text for each plural form. Doubtful ones are left out."""
    with path.open("rb") as file:
        catalogue = read_po(file)
    found: dict[tuple[str, str], tuple[str, ...]] = {}
    for message in catalogue:
        if not message.id or message.fuzzy:
            continue
        key = message.id[0] if isinstance(message.id, tuple | list) else message.id
        forms = message.string if isinstance(message.string, tuple | list) else (message.string,)
        said = tuple(each or "" for each in forms)
        if all(said):
            found[message.context or "", key] = said
    return MappingProxyType(found)


def locale_of(tag: str, catalogue: str) -> str:
    """The name of the locale of CLDR for a tag: the country's own where CLDR has it."""
    for name in (tag.replace("-", "_"), catalogue):
        try:
            return str(Locale.parse(name))
        except (UnknownLocaleError, ValueError):
            continue
    return catalogue


def form_of(locale: str) -> Callable[[int | Fraction], int]:
    """The place of a count's plural form among those of the language, by the rules of CLDR.

    https://www.unicode.org/cldr/charts/latest/supplemental/language_plural_rules.html
    """
    rule = Locale.parse(locale).plural_form
    known = [each for each in CATEGORIES if each in {*rule.tags, "other"}]

    def form(count: int | Fraction) -> int:
        exact = Fraction(count)
        whole = exact.denominator == 1
        return known.index(rule(int(exact) if whole else Decimal(str(round(float(exact), 3)))))

    return form


def long_day(day: date, locale: str) -> str:
    return format_date(day, "long", locale=locale)


def short_day(day: date, locale: str) -> str:
    return format_date(day, "medium", locale=locale)


def month_name(month: int, locale: str) -> str:
    return str(Locale.parse(locale).months["stand-alone"]["wide"][month])


def joined(words: tuple[str, ...], style: str, locale: str) -> str:
    """`style` is "standard" (and) or "or"."""
    return format_list(words, style="or" if style == "or" else "standard", locale=locale)


def decimal_mark(locale: str) -> str:
    return str(Locale.parse(locale).number_symbols["latn"]["decimal"])


def percent_pattern(locale: str) -> str:
    """Where the number stands to the sign, as in "{} %"."""
    pattern = str(Locale.parse(locale).percent_formats[None].pattern)
    number = "#,##0"
    return pattern.replace(number, "{}") if number in pattern else "{}%"
