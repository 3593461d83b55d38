"""Data for programs, value by value: recipe.json against the numbers of the recipe."""

import json
from collections.abc import Iterator, Mapping
from fractions import Fraction
from itertools import islice

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.diagnostics.span import Span

_MOST = 8


def data_faults(path: str, content: bytes, meant: Mapping[str, object], *, remedy: str) -> Diagnostics:
    """Every value that differs, the first few of them. ValueError: no JSON."""
    text = content.decode("utf-8")
    said = json.loads(text)
    wrong = tuple(islice(_differences(said, meant, ()), _MOST))
    lines = _lines(said, text) if wrong else {}
    found = []
    for place, one, other in wrong:
        line = lines.get(place, 1)
        message = f"{_name(place)} is {one}, in the recipe {other}"
        span = Span(path=path, line=line, column=1, end_line=line, end_column=2)
        found.append(Diagnostic(code="A005", message=message, span=span, hint=remedy))
    return tuple(found)


Place = tuple[str | int, ...]


def _differences(said: object, meant: object, place: Place) -> Iterator[tuple[Place, str, str]]:
    if isinstance(meant, Mapping):
        if not isinstance(said, dict):
            yield place, _shown(said), "a group of values"
            return
        for key in (*meant, *(each for each in said if each not in meant)):
            if key not in said or key not in meant:
                one, other = (_shown(each[key]) if key in each else "not there" for each in (said, meant))
                yield (*place, key), one, other
            else:
                yield from _differences(said[key], meant[key], (*place, key))
    elif isinstance(meant, list | tuple):
        if not isinstance(said, list) or len(said) != len(meant):
            yield place, _shown(said), _shown(list(meant))
            return
        for number, (one_item, other_item) in enumerate(zip(said, meant, strict=True)):
            yield from _differences(one_item, other_item, (*place, number))
    elif not _same(said, meant):
        yield place, _shown(said), _shown(meant)


def _same(said: object, meant: object) -> bool:
    if isinstance(meant, Fraction):
        meant = float(meant)
    if isinstance(said, bool) or isinstance(meant, bool) or said is None or meant is None:
        return said is meant
    return said == meant


def _shown(value: object) -> str:
    if isinstance(value, Fraction):
        value = float(value)
    words = json.dumps(value, ensure_ascii=False, default=str)
    return words if len(words) <= 80 else f"{words[:79]}…"


def _name(place: Place) -> str:
    """ "parts[0].lines[3].grams"."""
    told = "".join(f"[{each}]" if isinstance(each, int) else f".{each}" for each in place)
    return told.removeprefix(".") or "the whole"


def _lines(value: object, text: str) -> Mapping[Place, int]:
    """The line of each value, where the text is laid out as we lay it out; nothing else can be known simply."""
    if json.dumps(value, ensure_ascii=False, indent=1) != text.rstrip("\n"):
        return {}
    lines: dict[Place, int] = {}
    _number(value, (), 1, lines)
    return lines


def _number(value: object, place: Place, line: int, lines: dict[Place, int]) -> int:
    """Notes the line of a value; the line that its last one stands on comes back."""
    lines[place] = line
    inner: list[tuple[str | int, object]] = []
    if isinstance(value, dict):
        inner = list(value.items())
    elif isinstance(value, list):
        inner = list(enumerate(value))
    if not inner:
        return line
    for key, each in inner:
        line = _number(each, (*place, key), line + 1, lines)
    return line + 1
