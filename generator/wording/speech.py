"""Saying a text in the language of the publication. `speaking` and `speak` are the only ones that choose it."""

from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cache
from pathlib import Path
from types import MappingProxyType

from generator.wording.spelling import american

CATALOGUES = Path(__file__).resolve().parent / "catalogues"

AMERICAN = ("en", "en-us")
NOTATION = "en-US"
"""The language of recipe files and of what speaks to the maker."""

Key = tuple[str, str]
"""A context, which is "" for most, and the English text."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Voice:
    """A language as it is spoken. `catalogue` is the name of its file, "" for English.

    `form` gives the place of a plural among `forms`; `locale` is the name by which CLDR knows the language.
    """

    tag: str = "en-US"
    catalogue: str = ""
    locale: str = "en_US"
    is_american: bool = True
    words: Mapping[Key, tuple[str, ...]] = field(default_factory=lambda: MappingProxyType({}))
    form: Callable[[int | Fraction], int] = lambda count: 0 if count == 1 else 1


_ENGLISH = Voice()
_VOICE: ContextVar[Voice] = ContextVar("voice", default=_ENGLISH)


def languages() -> tuple[str, ...]:
    """The languages there are words in: English, and one for each catalogue, as tags of BCP 47."""
    found = (path.stem.replace("_", "-") for path in CATALOGUES.glob("*.po"))
    return tuple(sorted({"en", *found}))


def has_words(tag: str) -> bool:
    """Whether a publication in this language speaks it: English, or a language with a catalogue."""
    return tag.replace("_", "-").partition("-")[0].casefold() == "en" or bool(_catalogue_of(tag))


@contextmanager
def speaking(tag: str) -> Iterator[None]:
    """All that is said inside is said in this language; in English where there are no words of it."""
    before = _VOICE.set(voice_of(tag))
    try:
        yield
    finally:
        _VOICE.reset(before)


def speak(tag: str) -> None:
    """From here on, as `speaking`: for a command, which works on one publication."""
    _VOICE.set(voice_of(tag))


def voice() -> Voice:
    """The language that is spoken now."""
    return _VOICE.get()


def say(text: str, **values: object) -> str:
    """The text, with the values in the places `{name}`."""
    said = _said("", text)
    return said.format(**values) if values else said


def say_of(context: str, text: str, **values: object) -> str:
    """As `say`, for a text that other languages say differently from place to place: `context` tells which it is."""
    said = _said(context, text)
    return said.format(**values) if values else said


def say_many(one: str, many: str, count: int | Fraction, **values: object) -> str:
    """The text for so many things; `{count}` may stand in it."""
    spoken = voice()
    forms = spoken.words.get(("", one)) or (one, many)
    return forms[min(spoken.form(count), len(forms) - 1)].format(count=count, **values)


def later(text: str) -> str:
    """Marks a text of a table, which is said where it is used."""
    return text


def _said(context: str, text: str) -> str:
    spoken = voice()
    if spoken.words:
        return spoken.words[context, text][0] if (context, text) in spoken.words else text
    return american(text) if spoken.is_american else text


def gettext(text: str) -> str:
    """For templates: `_("…")`."""
    return _said("", text)


def shown(text: str, **values: object) -> str:
    """What a template shows of a text of its own, with the values in the places `%(name)s`."""
    return _said("", text) % values


def ngettext(one: str, many: str, count: int) -> str:
    """For templates: a text for so many things, whose values the template engine puts in."""
    spoken = voice()
    forms = spoken.words.get(("", one)) or (one, many)
    return forms[min(spoken.form(count), len(forms) - 1)]


def pgettext(context: str, text: str) -> str:
    """For templates: a text told from an equal one by its context."""
    return _said(context, text)


def npgettext(context: str, one: str, many: str, count: int) -> str:
    """For templates: both."""
    spoken = voice()
    forms = spoken.words.get((context, one)) or (one, many)
    return forms[min(spoken.form(count), len(forms) - 1)]


@cache
def voice_of(tag: str) -> Voice:
    """The voice of a language tag; English with this tag where no catalogue has words of it."""
    name = _catalogue_of(tag)
    if not name:
        return Voice(tag=tag, is_american=tag.replace("_", "-").casefold() in AMERICAN)
    # Only here, so that an English make never loads the library.
    from generator.wording.catalogue import form_of, locale_of, read_catalogue

    locale = locale_of(tag, name)
    return Voice(
        tag=tag,
        catalogue=name,
        locale=locale,
        is_american=False,
        words=read_catalogue(CATALOGUES / f"{name}.po"),
        form=form_of(locale),
    )


def _catalogue_of(tag: str) -> str:
    """The most exact catalogue for a tag: `de_AT` before `de` for `de-AT`; "" where there is none."""
    there = {path.stem.casefold(): path.stem for path in CATALOGUES.glob("*.po")}
    parts = tag.casefold().replace("-", "_").split("_")
    names = ("_".join(parts[:end]) for end in range(len(parts), 0, -1))
    return next((there[name] for name in names if name in there), "")
