"""Entries into a bake record: the named stretch is changed, every other byte and comment stays.

`entered` changes the text of a record; it never writes. What comes out is read back and compared with what was
meant, so that a record in an odd form is refused and never spoilt.
"""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Literal

from generator.diagnostics.span import Span
from generator.source.document import Mapping, Node, Sequence, Text
from generator.source.lines import Places
from generator.source.quoting import quoted
from generator.source.read import read_mapping
from generator.source.write import replace_spans

How = Literal["set", "add", "more", "drop"]
Fields = tuple[tuple[str, str], ...]
_STOPS = (".", "!", "?", "…", ";", ":")


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """What goes under a key: `set` puts one text in, `add` one more item of a list, `more` lengthens a text;
    `drop` takes the last such item out of a list again, and its key with the only one.

    An item is a text, or keys and their texts in order ("what", "amount", "when").
    """

    key: str
    how: How
    text: str = ""
    fields: Fields = ()


def entered(text: str, entries: Iterable[Entry]) -> str | None:
    """The text of a record with every entry in it; None where its form does not allow that to be done safely."""
    for entry in entries:
        changed = _one(text, entry)
        if changed is None or _values(changed) != _meant(text, entry):
            return None
        text = changed
    return text


def _one(text: str, entry: Entry) -> str | None:
    keys = _keys(text)
    if keys is None or not keys.entries or _is_flow(text, keys.span):
        return None
    node, key = keys.get(entry.key), keys.key(entry.key)
    editor = _Editor(places=Places("", text), keys=keys)
    if entry.how == "drop":
        return editor.less(key, node, entry) if key is not None and isinstance(node, Sequence) else None
    if node is None or key is None:
        return editor.new_key(entry)
    if isinstance(node, Text) and not node.value.strip():
        return editor.fill(key, entry)
    if entry.how == "add":
        return editor.one_more(node, entry)
    return editor.change(node, entry) if isinstance(node, Text) else None


@dataclass(frozen=True, slots=True, kw_only=True)
class _Editor:
    """The text of a record with its keys."""

    places: Places
    keys: Mapping

    def new_key(self, entry: Entry) -> str:
        """The key on a line of its own: below the comment that asks for it, else below the last key."""
        line = self._prompt(entry.key) or max(value.span.end_line for _, value in self._entries())
        indent = " " * (self.keys.entries[0][0].span.column - 1)
        if entry.how != "add":
            return self._below(line, f"{indent}{entry.key}: {quoted(entry.text)}")
        if not entry.fields:
            return self._below(line, f"{indent}{entry.key}: [{_item(entry)}]")
        return self._below(line, f"{indent}{entry.key}:", f"{indent}  - {_item(entry)}")

    def fill(self, key: Text, entry: Entry) -> str:
        """A key that stands there without anything behind it."""
        line = key.span.line
        if entry.how == "add":
            return self._below(line, f"{' ' * (key.span.column - 1)}  - {_item(entry)}")
        colon = self.places.line_text(line).index(":", key.span.end_column - 1) + 1
        at = Span(path="", line=line, column=colon + 1, end_line=line, end_column=colon + 1)
        return replace_spans(self.places.text, [(at, f" {quoted(entry.text)}")])

    def one_more(self, node: Node, entry: Entry) -> str | None:
        """An item at the end of a list; a value that stands alone becomes the first item of one."""
        if not isinstance(node, Sequence):
            return self._as_list(node, entry)
        if _is_flow(self.places.text, node.span, opens="["):
            at = _after(node.items[-1].span) if node.items else _before(node.span, skip=1)
            joint = ", " if node.items else ""
            return replace_spans(self.places.text, [(at, f"{joint}{_item(entry)}")])
        last = node.items[-1].span
        dash = re.match(r"\s*(?=-(?:\s|$))", self.places.line_text(last.line))
        return self._below(last.end_line, f"{dash[0]}- {_item(entry)}") if dash else None

    def less(self, key: Text, node: Sequence, entry: Entry) -> str | None:
        """The lines of the last such item are gone.

        None for a list on one line, without such an item, or with somebody's remark on a line that would go.
        """
        alike = [each.span for each in node.items if _plain(each) == _said(entry)]
        if not alike or _is_flow(self.places.text, node.span, opens="["):
            return None
        first, last = alike[-1].line, alike[-1].end_line
        end = len(self._text(last)) + 1
        remarks = [self._text(last)[alike[-1].end_column - 1 :]]
        if len(node.items) == 1:
            first = key.span.line
            remarks += [self._text(first)[key.span.end_column :], *map(self._text, range(first + 1, last))]
        if first == 1 or any(map(str.strip, remarks)):
            return None
        start = len(self._text(first - 1)) + 1
        gone = Span(path="", line=first - 1, column=start, end_line=last, end_column=end)
        return replace_spans(self.places.text, [(gone, "")])

    def _as_list(self, node: Node, entry: Entry) -> str | None:
        if node.span.line != node.span.end_line:
            return None
        ends = [(_before(node.span), "["), (_after(node.span), f", {_item(entry)}]")]
        return replace_spans(self.places.text, ends)

    def change(self, node: Text, entry: Entry) -> str:
        """The text replaced; or lengthened, where one of several lines gets one more."""
        if entry.how == "set":
            return replace_spans(self.places.text, [(node.span, quoted(entry.text))])
        if node.span.line == node.span.end_line and node.style in ("plain", "single", "double"):
            return replace_spans(self.places.text, [(node.span, quoted(longer(node.value, entry.text)))])
        last = self.places.line_text(node.span.end_line)
        return self._below(
            node.span.end_line, f"{last[: len(last) - len(last.lstrip())]}{' '.join(entry.text.split())}"
        )

    def _below(self, line: int, *lines: str) -> str:
        """New lines after line `line`, ended as that one is."""
        end = len(self.places.line_text(line)) + 1
        at = Span(path="", line=line, column=end, end_line=line, end_column=end)
        newline = "\r\n" if "\r\n" in self.places.text else "\n"
        return replace_spans(self.places.text, [(at, "".join(f"{newline}{each}" for each in lines))])

    def _prompt(self, key: str) -> int:
        """The last line of the comment that begins with the key's name; 0 where there is none between two keys."""
        inside = {
            line for _, value in self._entries() for line in range(value.span.line, value.span.end_line + 1)
        }
        for line in range(1, self.places.line_count() + 1):
            if re.match(rf"#\s{{0,3}}{key}:", self.places.line_text(line)) and line not in inside:
                while line < self.places.line_count() and re.match(r"#\s{3,}", self._text(line + 1)):
                    line += 1
                return line
        return 0

    def _text(self, line: int) -> str:
        return self.places.line_text(line)

    def _entries(self) -> Iterator[tuple[Text, Node]]:
        """Each key with its value; a value that is not there stands where its key does."""
        for key, value in self.keys.entries:
            blank = isinstance(value, Text) and not value.value.strip()
            yield key, key if blank else value


def longer(text: str, more: str) -> str:
    """Two notes as one."""
    first, second = " ".join(text.split()), " ".join(more.split())
    return f"{first}{' ' if first.endswith(_STOPS) else '; '}{second}"


def _item(entry: Entry) -> str:
    if not entry.fields:
        return quoted(entry.text, flow=True)
    return f"{{{', '.join(f'{key}: {quoted(value, flow=True)}' for key, value in entry.fields)}}}"


def _is_flow(text: str, span: Span, *, opens: str = "{") -> bool:
    places = Places("", text)
    return text.startswith(opens, places.index_of(span.line, span.column))


def _after(span: Span) -> Span:
    return Span(
        path="",
        line=span.end_line,
        column=span.end_column,
        end_line=span.end_line,
        end_column=span.end_column,
    )


def _before(span: Span, *, skip: int = 0) -> Span:
    column = span.column + skip
    return Span(path="", line=span.line, column=column, end_line=span.line, end_column=column)


def _keys(text: str) -> Mapping | None:
    return read_mapping("", text.encode())[0]


def _values(text: str) -> dict[str, object] | None:
    """What the text says, without places; how white space is laid out says nothing."""
    keys = _keys(text)
    return {key.value: _plain(value) for key, value in keys.entries} if keys else None


def _plain(node: Node) -> object:
    if isinstance(node, Text):
        return " ".join(node.value.split())
    if isinstance(node, Sequence):
        return [_plain(each) for each in node.items]
    return {key.value: _plain(value) for key, value in node.entries}


def _meant(text: str, entry: Entry) -> dict[str, object] | None:
    """What the text should say once the entry is in it."""
    values = _values(text)
    if values is None:
        return None
    old = values.get(entry.key, "")
    new = " ".join(entry.text.split())
    if entry.how == "add":
        before = old if isinstance(old, list) else [old] if old else []
        return {**values, entry.key: [*before, _said(entry)]}
    if entry.how == "drop" and isinstance(old, list):
        at = len(old) - 1 - old[::-1].index(_said(entry))
        rest = [*old[:at], *old[at + 1 :]]
        others = {key: value for key, value in values.items() if key != entry.key}
        return {**values, entry.key: rest} if rest else others
    if entry.how == "more" and isinstance(old, str) and old:
        return {**values, entry.key: longer(old, new) if _is_one_line(text, entry) else f"{old} {new}"}
    return {**values, entry.key: new}


def _said(entry: Entry) -> object:
    """The item of an entry as `_plain` has it."""
    return {key: " ".join(value.split()) for key, value in entry.fields} or " ".join(entry.text.split())


def _is_one_line(text: str, entry: Entry) -> bool:
    keys = _keys(text)
    node = keys.get(entry.key) if keys else None
    return isinstance(node, Text) and node.span.line == node.span.end_line
