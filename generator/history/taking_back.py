"""Takes corrections of a recipe file back, newest first, to show it as it stood before them.

A correction says what it changed as “PART/ITEM OLD -> NEW”, for a time, a temperature or a key of the front matter as
“KIND OLD -> NEW”. It can only be taken back where the file still says NEW: what cannot be told for certain is
refused in words.
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass

from generator.diagnostics.span import Span
from generator.formula.model import Correction, Formula, Line
from generator.measure.quantity import Quantity, read_quantity
from generator.measure.unit import Spoons
from generator.source.write import replace_spans

_ARROW = re.compile(r"\s*(?:->|→|=>)\s*")
KEYS = ("makes", "portions", "tin", "weighs", "bakes_off", "keeps", "flour", "dough")
_KIND = re.compile(r"(?P<kind>[A-Za-z_]{3,12})\s+(?P<old>\S.*)")


@dataclass(frozen=True, slots=True, kw_only=True)
class Undone:
    """The earlier text, or in `refused` why there is none."""

    text: str = ""
    refused: str = ""


def in_time(corrections: Iterable[Correction]) -> tuple[Correction, ...]:
    """Oldest first; of one day in the order of the file."""
    return tuple(sorted(corrections, key=lambda each: each.on))


def taken_back(text: str, formula: Formula, corrections: Iterable[Correction], *, spoons: Spoons) -> Undone:
    """The file's text without the changes of `corrections`, which are given newest first.

    `formula` is what the text means. The entries under `corrections:` stay in the text.
    """
    amounts: dict[Span, tuple[Line, str]] = {}
    body = text
    for each in corrections:
        sides = _ARROW.split(each.change)
        if len(sides) != 2 or not all(sides):
            return Undone(refused=f"“{each.change}” does not say what stood there before")
        left, new = (side.strip() for side in sides)
        named = _line(left, formula)
        if named is not None:
            line, old = named
            stands = amounts[line.span][1] if line.span in amounts else _amount(line)
            if not _same(stands, new, spoons):
                return Undone(
                    refused=f"{line.item} now says “{stands}”, and not the “{new}” of “{each.change}”"
                )
            amounts[line.span] = (line, old)
            continue
        changed = _in_braces(body, left, new) or _under_a_key(body, left, new)
        if changed is None:
            return Undone(refused=f"the file has no one place that “{each.change}” is about")
        body = changed
    edits = [(line.written.span, _rewritten(line, old)) for line, old in amounts.values()]
    try:
        return Undone(text=replace_spans(body, edits))
    except ValueError:
        return Undone(refused="the lines that were corrected cannot be told apart")


def _line(left: str, formula: Formula) -> tuple[Line, str] | None:
    """The line that a change names, and the amount it had; None where it names none, or more than one."""
    fitting = [
        (line, left[len(name) :].strip())
        for line in formula.lines
        for name in (f"{line.part}/{line.item}", line.item)
        if left.casefold().startswith(f"{name.casefold()} ")
    ]
    if not fitting:
        return None
    # “egg yolk 1” is about the yolk, not about an egg that is “yolk 1”.
    shortest = min(len(old) for _, old in fitting)
    nearest = [each for each in fitting if len(each[1]) == shortest]
    return nearest[0] if len(nearest) == 1 else None


def _amount(line: Line) -> str:
    """The first measure of a line with its size, as it stands there."""
    first = line.written.measures[0].text.strip() if line.written.measures else line.written.words
    return f"{first} {line.written.size}".strip()


def _same(stands: str, new: str, spoons: Spoons) -> bool:
    left, right = (read_quantity(each, spoons=spoons) for each in (stands, new))
    if left is None or right is None:
        return " ".join(stands.split()).casefold() == " ".join(new.split()).casefold()
    return _value(left[0]) == _value(right[0])


def _value(quantity: Quantity) -> object:
    return quantity.grams() or quantity.millilitres() or (quantity.amount, quantity.unit)


def _rewritten(line: Line, old: str) -> str:
    """The line with the amount it had. Its second measure went with the first one and is not known any more."""
    written = line.written
    rest = written.text[written.text.find(written.item) :] if written.item in written.text else written.item
    for other in written.measures[1:]:
        rest = re.sub(rf"\s*\([^()]*{re.escape(other.text.strip())}[^()]*\)", "", rest)
    return f"{old} {rest}"


def _in_braces(text: str, left: str, new: str) -> str | None:
    """The text with `{KIND NEW}` as `{KIND OLD}`, where it stands there once."""
    named = _KIND.fullmatch(left)
    if named is None:
        return None
    kind, now = re.escape(named["kind"]), r"\s+".join(re.escape(each) for each in new.split())
    places = list(re.finditer(rf"\{{\s*{kind}\s+{now}\s*\}}", text, re.IGNORECASE))
    if len(places) != 1:
        return None
    start, end = places[0].span()
    return f"{text[:start]}{{{named['kind']} {named['old']}}}{text[end:]}"


def _under_a_key(text: str, left: str, new: str) -> str | None:
    """The text with `KEY: NEW` of the front matter as `KEY: OLD`, where it stands there once and plain."""
    named = _KIND.fullmatch(left)
    if named is None or named["kind"] not in KEYS:
        return None
    now = r"[ \t]+".join(re.escape(each) for each in new.split())
    places = list(
        re.finditer(rf"^({re.escape(named['kind'])}:[ \t]+){now}(?=[ \t]*\r?$)", text, re.MULTILINE)
    )
    if len(places) != 1:
        return None
    start, end = places[0].span()
    return f"{text[:start]}{places[0][1]}{named['old']}{text[end:]}"
