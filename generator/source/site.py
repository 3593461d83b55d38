"""Reads `site.yaml` into `Settings`. Every key is checked; one that is wrong keeps its default."""

import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Any
from urllib.parse import urlsplit
from zoneinfo import ZoneInfo, available_timezones

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics, did_you_mean
from generator.diagnostics.span import whole_file
from generator.settings import Settings
from generator.source.document import Mapping, Node
from generator.source.document import Sequence as NodeSequence
from generator.source.fields import (
    address_of,
    check_keys,
    choice_of,
    date_of,
    percent_of,
    text_of,
    texts_of,
    whole_of,
    yes_no_of,
)
from generator.source.machine import read_dough_temperature, read_friction, read_machine
from generator.wording.speech import has_words, languages

EGG_SIZES = ("small", "medium", "large", "extra large", "jumbo")
CUPS = ("us", "metric", "imperial", "australian")
LEAST_SUGAR, MOST_SUGAR = Fraction(5, 100), Fraction(12, 100)
_LANGUAGE = re.compile(r"[A-Za-z]{2,3}(?:-[A-Za-z]{4})?(?:-(?:[A-Za-z]{2}|[0-9]{3}))?(?:-[A-Za-z0-9]{4,8})*")
_THEME = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")

_Reader = Callable[[Node], tuple[Any, Diagnostics]]


def read_settings(
    mapping: Mapping | None, path: str, *, regions: Sequence[str]
) -> tuple[Settings, Diagnostics]:
    """The settings of a publication. `mapping` is None where there is no such file.

    `regions` are those whose rules for labels are known: their files are the only list of them.
    """
    if mapping is None:
        hint = "Write a file site.yaml with title, maker and url; “tinleaf start” lays one."
        return Settings(), (
            Diagnostic(code="S073", message="there is no site.yaml", span=whole_file(path), hint=hint),
        )
    readers = {**READERS, "region": _choice(*regions)}
    found = list(check_keys(mapping, readers, what="site.yaml", needed=("title", "maker", "url")))
    values: dict[str, Any] = {}
    for key, node in mapping.entries:
        if key.value in readers:
            value, faults = readers[key.value](node)
            found += faults
            if value is not None:
                values[key.value] = value
    return replace(Settings(), **values), tuple(found)


def _fault(code: str, node: Node, message: str, hint: str) -> Diagnostic:
    return Diagnostic(code=code, message=message, span=node.span, hint=hint)


def _choice(*choices: str) -> _Reader:
    return lambda node: choice_of(node, choices)


def _days(node: Node) -> tuple[int | None, Diagnostics]:
    return whole_of(node, least=1)


def _yeast_sugar(node: Node) -> tuple[Fraction | None, Diagnostics]:
    """Percent of sugar on flour, from 5 to 12: no figure in use lies outside (common practice)."""
    share, found = percent_of(node)
    if share is None or LEAST_SUGAR <= share <= MOST_SUGAR:
        return None if share is None else share * 100, found
    hint = "Write a percentage from 5 to 12 %, as in yeast_sugar: 10 %."
    return None, (_fault("S067", node, "this is no usual limit of sugar for common yeast", hint),)


def _url(node: Node) -> tuple[str | None, Diagnostics]:
    """The site's own address: absolute, without query and fragment; a slash is put at its end."""
    text, found = address_of(node)
    if text is None:
        return None, found
    parts = urlsplit(text)
    if parts.scheme.lower() not in ("http", "https") or parts.query or parts.fragment or text[-1] in "?#":
        hint = "Write the whole address of the site, as in https://kitchen.example/bakes/."
        return None, (_fault("S070", node, f"“{text[:40]}” is not the address of a site", hint),)
    return text.rstrip("/") + "/", ()


def _zone(node: Node) -> tuple[str | None, Diagnostics]:
    text, found = text_of(node)
    if text is None:
        return None, found
    try:
        ZoneInfo(text)
    except (ValueError, OSError, KeyError):
        names = {name.casefold(): name for name in available_timezones()}
        near = did_you_mean(text.casefold().replace(" ", "_"), names)
        for folded, name in names.items():
            near = near.replace(f"“{folded}”", f"“{name}”")
        hint = near or "Write a name of the IANA list, as in America/Chicago, or UTC."
        return None, (_fault("S071", node, f"there is no time zone “{text[:40]}”", hint),)
    return text, ()


def _language(node: Node) -> tuple[str | None, Diagnostics]:
    """A language tag in the shape of BCP 47."""
    text, found = text_of(node)
    if text is None:
        return None, found
    if not _LANGUAGE.fullmatch(text):
        hint = "Write language and country as in en-US or en-GB."
        return None, (_fault("S072", node, f"“{text[:40]}” is not a language tag", hint),)
    if not has_words(text):
        message = f"there are no words in “{text[:40]}”, so pages keep their English ones"
        hint = f"There are words in: {', '.join(languages())}. Another language is one file, see docs/languages.md."
        return text, (_fault("S076", node, message, hint),)
    return text, ()


def _theme(node: Node) -> tuple[str | None, Diagnostics]:
    text, found = text_of(node)
    if text is not None and not _THEME.fullmatch(text):
        hint = "Write the name of a folder in themes/: small letters, digits and hyphens."
        return None, (_fault("S068", node, f"“{text[:40]}” is not the name of a theme", hint),)
    return text, found


def _cups(node: Node) -> tuple[tuple[str, ...] | None, Diagnostics]:
    """Each cup once; one that is wrong is told at its place and left out."""
    texts, found = texts_of(node)
    if texts is None or found:
        return None, found
    nodes = node.items if isinstance(node, NodeSequence) else (node,)
    read = [choice_of(each, CUPS) for each in nodes]
    cups = dict.fromkeys(cup for cup, _ in read if cup is not None)
    return tuple(cups), tuple(fault for _, faults in read for fault in faults)


READERS: dict[str, _Reader] = {
    "title": text_of,
    "lead": text_of,
    "maker": text_of,
    "url": _url,
    "contact": text_of,
    "language": _language,
    "zone": _zone,
    "paper": _choice("letter", "a4"),
    "first": _choice("weight", "volume"),
    "cup": _choice(*CUPS),
    "cups_beside": _cups,
    "flour_cup": _choice("spooned", "dipped"),
    "egg": _choice(*EGG_SIZES),
    "oven_c": _choice("nearest 5", "dial"),
    "theme": _theme,
    "kitchen_handles": texts_of,
    "pack_age": _days,
    "yeast_sugar": _yeast_sugar,
    "statement": text_of,
    "statement_on": date_of,
    "paid_links": text_of,
    "description_limit": _days,
    "short_limit": _days,
    "compressed": yes_no_of,
    "machine": read_machine,
    "dough_temperature": read_dough_temperature,
    "friction": read_friction,
}
