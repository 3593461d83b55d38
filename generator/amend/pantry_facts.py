"""One fact of one row of the pantry: a weighing, the words of a pack, what it contains, when it was read."""

import re

from generator.amend.answer import Asked, Refused, Worked
from generator.catalogue.load import KEYS
from generator.catalogue.lookup import fold
from generator.diagnostics.diagnostic import did_you_mean
from generator.source.document import Mapping, Node, Sequence, Text
from generator.source.edits import Edit, Scalar, is_flow, retyped, with_key
from generator.source.lines import Places
from generator.source.quoting import quoted

LISTS = ("contains", "may_contain")
PANTRY = "pantry.yaml"
_LONGEST = 4000
_NOTHING = ("", "none", "nothing", "[]", "-")


def correct_pantry(pantry: Mapping, text: str, asked: Asked) -> Worked | Refused:
    """The value of one key of a row anew; a key that is not there yet is put at the row's end."""
    places = Places(PANTRY, text)
    row = next((each for each in pantry.entries if fold(each[0].value) == fold(asked.what)), None)
    if row is None:
        return _unknown_row(pantry, asked.what)
    key, value = asked.key.strip().casefold().replace(" ", "_"), asked.new.strip()
    if key not in KEYS:
        hint = did_you_mean(key, KEYS) or f"A row may have: {', '.join(KEYS)}."
        return Refused(message=f"a pantry row has no “{asked.key.strip()}”", hint=hint)
    if len(value) > _LONGEST or not value.isprintable() or (not value and key not in LISTS):
        return Refused(message=f"this is no value for “{key}”", hint="Type one line of text.")
    return _changed(row[0], row[1], key, value, places)


def _changed(name: Text, row: Node, key: str, value: str, places: Places) -> Worked | Refused:
    what = f"{' '.join(name.value.split())} {key}"
    node = row.get(key) if isinstance(row, Mapping) else None
    old, new = words_of(node), _shown(key, value)
    if node is not None and old == new:
        return Refused(message=f"{what} is “{old}” already", hint="Nothing was changed.")
    edits = _edits(name, row, node, key, value, places)
    return Worked(edits=edits, what=what, old=old, new=new)


def words_of(node: Node | None) -> str:
    """What a key says, in one line; “not said” where it is not there."""
    if node is None or (isinstance(node, Text) and not node.value.strip() and node.style == "plain"):
        return "not said"
    if isinstance(node, Text):
        return " ".join(node.value.split())
    items = node.items if isinstance(node, Sequence) else ()
    return ", ".join(words_of(each) for each in items) or "none"


def _edits(
    name: Text, row: Node, node: Node | None, key: str, value: str, places: Places
) -> tuple[Edit, ...]:
    if not isinstance(row, Mapping) or not row.entries:
        return _first_key(name, row, key, value, places)
    flow = is_flow(row, places)
    if node is None:
        return with_key(row, key, _typed(key, value, flow=flow), places, column=1)
    if isinstance(node, Text):
        if not node.value.strip() and node.style == "plain":
            return _filled(row, key, value, places, flow=flow)
        if key not in LISTS:
            return (retyped(Scalar(text=node, flow=flow), value),)
        return ((node.span, _typed(key, value, flow=flow)),)
    if isinstance(node, Sequence) and node.items and not is_flow(node, places) and _items(value):
        indent = " " * (node.span.column - 1)
        lines = [f"- {quoted(each)}" for each in _items(value)]
        newline = "\r\n" if "\r\n" in places.text else "\n"
        return ((node.span, f"{newline}{indent}".join(lines)),)
    return ((node.span, _typed(key, value, flow=flow)),)


def _first_key(name: Text, row: Node, key: str, value: str, places: Places) -> tuple[Edit, ...]:
    """A row that says nothing yet, or only `{}`."""
    if isinstance(row, Mapping) and is_flow(row, places):
        return with_key(row, key, _typed(key, value, flow=True), places, column=1)
    inner = Mapping(entries=(), span=name.span)
    return with_key(inner, key, _typed(key, value, flow=False), places, column=name.span.column + 2)


def _filled(row: Mapping, key: str, value: str, places: Places, *, flow: bool) -> tuple[Edit, ...]:
    """A key with nothing behind it: the value goes behind its colon."""
    at = row.key(key)
    if at is None:
        raise ValueError("the key is there")
    after = places.index_of(at.span.end_line, at.span.end_column)
    colon = re.compile(r"\s*:").match(places.text, after)
    end = colon.end() if colon else after
    line, column = places.line_and_column(end)
    span = type(at.span)(path=places.path, line=line, column=column, end_line=line, end_column=column)
    return ((span, f" {_typed(key, value, flow=flow)}"),)


def _items(value: str) -> list[str]:
    if value.casefold() in _NOTHING:
        return []
    return [each for each in (part.strip() for part in value.strip("[]").split(",")) if each]


def _typed(key: str, value: str, *, flow: bool) -> str:
    if key in LISTS:
        return "[" + ", ".join(quoted(each, flow=True) for each in _items(value)) + "]"
    return quoted(value, flow=flow)


def _shown(key: str, value: str) -> str:
    return ", ".join(_items(value)) or "none" if key in LISTS else " ".join(value.split())


def _unknown_row(pantry: Mapping, what: str) -> Refused:
    names = {fold(each.value): each.value for each, _ in pantry.entries}
    near = did_you_mean(fold(what), names)
    return Refused(
        message=f"the pantry has no row called “{what}”",
        hint=near or f"Add it to {PANTRY}, and record it: tinleaf correct --pantry --as-it-stands --why “…”.",
    )
