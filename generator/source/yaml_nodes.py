"""YAML without its surprises: events become located nodes, every scalar stays text.

A safe loader keeps the last of two equal keys, reads `12:30` as 750 and `no` as false, and follows aliases
until memory ends. So nothing is loaded here: the parser's events are read one by one, on a stack of our own
(the library's own composer recurses and would end the process on deep nesting).
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field

import yaml

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.diagnostics.span import Span
from generator.source.document import Mapping, Node, Sequence, Style, Text
from generator.source.lines import Places
from generator.source.yaml_faults import explain

DEEPEST = 60
_LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_STYLES: dict[str | None, Style] = {"'": "single", '"': "double", "|": "literal", ">": "folded"}
_RUN_ON = re.compile(r"[\r\n][ \t]*(-\s)")
_SWALLOWED = re.compile(r"[ \t]+(#[^\s#][^\r\n]*)")


class _Stop(Exception):
    """Reading cannot go on; the diagnostic is already noted."""


@dataclass(slots=True)
class _Open:
    """A list or mapping that is not closed yet."""

    start: int
    is_mapping: bool
    children: list[Node] = field(default_factory=list)
    end: int = 0


def read_yaml(places: Places, start: int, end: int) -> tuple[Node | None, Diagnostics]:
    """The node that the YAML between two indexes of a file stands for; None where there is none.

    None also where the YAML is broken; then there is an error.
    """
    reader = _Reader(places=places, start=start, source=places.text[start:end])
    try:
        reader.run()
    except _Stop:
        return None, tuple(reader.found)
    except yaml.MarkedYAMLError as fault:
        reader.found.append(explain(fault, places, start, reader.source))
        return None, tuple(reader.found)
    except yaml.YAMLError:
        reader.note("S022", "this cannot be read", 0, 1, "Write “key: value”, one to a line.")
        return None, tuple(reader.found)
    return reader.root, tuple(reader.found)


class _Reader:
    """One pass over the events of one YAML text."""

    __slots__ = ("ends", "found", "places", "root", "source", "stack", "start")

    def __init__(self, *, places: Places, start: int, source: str) -> None:
        self.places, self.start, self.source = places, start, source
        self.found: list[Diagnostic] = []
        self.stack: list[_Open] = []
        self.root: Node | None = None
        self.ends = 0

    def run(self) -> None:
        documents = 0
        for event in yaml.parse(self.source, Loader=_LOADER):
            if isinstance(event, yaml.DocumentStartEvent):
                documents += 1
                self._check_document(event, documents)
            elif isinstance(event, yaml.DocumentEndEvent) and event.explicit:
                self._refuse_second(_starts(event), _ends(event))
            elif isinstance(event, yaml.NodeEvent):
                self._refuse_properties(event)
                self._take(event)
            elif isinstance(event, yaml.CollectionEndEvent):
                self._close(event)

    def note(self, code: str, message: str, start: int, end: int, hint: str) -> None:
        """Notes a finding at two indexes of the YAML text."""
        self.found.append(Diagnostic(code=code, message=message, span=self._span(start, end), hint=hint))

    def _span(self, start: int, end: int) -> Span:
        return self.places.span(self.start + start, self.start + end)

    def _check_document(self, event: yaml.DocumentStartEvent, documents: int) -> None:
        if event.version or event.tags:
            self.note(
                "S013",
                "a line that starts with % is an instruction, not content",
                _starts(event),
                _starts(event) + 1,
                "Delete this line.",
            )
        if documents > 1:
            self._refuse_second(_starts(event), _starts(event) + 3)

    def _refuse_second(self, start: int, end: int) -> None:
        end = min(end, start + 3)
        self.note(
            "S014",
            f"“{self.source[start:end].strip()}” would begin a second document",
            start,
            end,
            "One file holds one: delete this line, or move what follows to a file of its own.",
        )
        raise _Stop

    def _refuse_properties(self, event: yaml.NodeEvent) -> None:
        start = _starts(event)
        if event.anchor is not None:
            sign = "*" if isinstance(event, yaml.AliasEvent) else "&"
            start = self.source.find(sign, start)
            self.note(
                "S011",
                f"“{sign}{event.anchor}” is a YAML shorthand that is not used here",
                start,
                start + len(event.anchor) + 1,
                f"Write the text out; if it really starts with “{sign}”, put it in quotes.",
            )
        tag = getattr(event, "tag", None)
        if tag is not None:
            start = self.source.find("!", _starts(event))
            width = re.match(r"\S+", self.source[start:])
            self.note(
                "S013",
                f"“{width[0] if width else '!'}” is a YAML tag, and tags are not used here",
                start,
                start + (width.end() if width else 1),
                "Delete it; if the text really starts with “!”, put it in quotes.",
            )

    def _take(self, event: yaml.NodeEvent) -> None:
        start = _starts(event)
        if isinstance(event, yaml.ScalarEvent):
            self._add(self._text(event))
        elif isinstance(event, yaml.AliasEvent):
            self._add(Text(value="", span=self._span(start, _ends(event)), inset=None))
        else:
            if len(self.stack) >= DEEPEST:
                self.note("S015", f"this is nested more than {DEEPEST} deep", start, start + 1, _FLATTEN)
                raise _Stop
            self.stack.append(_Open(start=start, is_mapping=isinstance(event, yaml.MappingStartEvent)))

    def _text(self, event: yaml.ScalarEvent) -> Text:
        start, end = _starts(event), _ends(event)
        if event.tag is not None or event.anchor is not None:
            start = _past_properties(self.source, start, end)
        raw = self.source[start:end].rstrip()
        end = start + len(raw)
        self.ends = max(self.ends, end)
        style = _STYLES.get(event.style, "plain")
        if style == "plain":
            self._warn_of_traps(raw, start, end)
        inset = raw.find(event.value) if "\n" not in raw and style not in ("literal", "folded") else -1
        return Text(
            value=event.value,
            span=self._span(start, end),
            style=style,
            inset=inset if inset == (1 if style in ("single", "double") else 0) else None,
        )

    def _warn_of_traps(self, raw: str, start: int, end: int) -> None:
        if run_on := _RUN_ON.search(raw):
            self.note(
                "S024",
                "this line runs on from the one above",
                start + run_on.start(1),
                start + run_on.start(1) + 1,
                "To begin a new list item, give its dash the same indentation as the dash above.",
            )
        if raw and (swallowed := _SWALLOWED.match(self.source, end)):
            text = swallowed[1].rstrip()
            self.note(
                "S026",
                f"“{text}” is read as a comment, so it is left out",
                swallowed.start(1),
                swallowed.start(1) + len(text),
                "Put the whole text in quotes; a comment has a space after its #.",
            )

    def _add(self, node: Node) -> None:
        if self.stack:
            self.stack[-1].children.append(node)
        elif self.root is None:
            self.root = node

    def _close(self, event: yaml.CollectionEndEvent) -> None:
        opened = self.stack.pop()
        if _ends(event) > _starts(event):
            self.ends = max(self.ends, _ends(event))
        span = self._span(opened.start, max(self.ends, opened.start + 1))
        if not opened.is_mapping:
            self._add(Sequence(items=tuple(opened.children), span=span))
            return
        pairs = zip(opened.children[0::2], opened.children[1::2], strict=True)
        self._add(Mapping(entries=tuple(self._entries(pairs)), span=span))

    def _entries(self, pairs: Iterator[tuple[Node, Node]]) -> Iterator[tuple[Text, Node]]:
        seen: dict[str, Text] = {}
        for key, value in pairs:
            fault = _fault_of_key(key, seen)
            if fault:
                self.found.append(fault)
            elif isinstance(key, Text):
                seen[key.value] = key
                yield key, value


def _starts(event: yaml.Event) -> int:
    return event.start_mark.index if event.start_mark is not None else 0


def _ends(event: yaml.Event) -> int:
    return event.end_mark.index if event.end_mark is not None else 0


_FLATTEN = "Nothing in these files needs such depth: look for brackets that are never closed."


def _fault_of_key(key: Node, seen: dict[str, Text]) -> Diagnostic | None:
    if not isinstance(key, Text):
        return Diagnostic(
            code="S016",
            message="a key must be text, not a list or a mapping",
            span=key.span,
            hint="Text that starts with “[” or “{” needs quotes.",
        )
    if key.value == "<<" and not key.quoted:
        return Diagnostic(
            code="S012",
            message="“<<” merges another mapping, which is not done here",
            span=key.span,
            hint="Write the keys out.",
        )
    if key.value in seen:
        return Diagnostic(
            code="S010",
            message=f"“{key.value}” is already given in line {seen[key.value].span.line}",
            span=key.span,
            hint="Keep one of the two, and delete the other.",
        )
    return None


def _past_properties(source: str, start: int, end: int) -> int:
    """The index of a scalar's own first character, past its tag and anchor."""
    match = re.compile(r"(?:[!&]\S*\s+)*").match(source, start, end)
    return match.end() if match else start
