"""Where and how something is typed into a maker's file: what stands around it stays as it is.

Every function gives stretches with their new text for `write.replace_spans`. Nothing here knows what the words mean.
"""

import re
from collections.abc import Iterator
from collections.abc import Sequence as Several
from dataclasses import dataclass

from generator.diagnostics.span import Span
from generator.source.document import Mapping, Node, Sequence, Text
from generator.source.lines import LINE_END, Places
from generator.source.quoting import quoted

Edit = tuple[Span, str]
Pairs = Several[tuple[str, str]]
_DASH = re.compile(r"(?P<before> *)-(?P<gap> +)\S")
_USUAL = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Scalar:
    """A text with where it stands: `flow` where brackets or braces surround it, so that a comma would end it."""

    text: Text
    flow: bool


def scalars(node: Node, places: Places, *, flow: bool = False) -> Iterator[Scalar]:
    """Every text below a node, keys left out."""
    if isinstance(node, Text):
        yield Scalar(text=node, flow=flow)
        return
    inner = flow or is_flow(node, places)
    children = node.items if isinstance(node, Sequence) else [value for _, value in node.entries]
    for each in children:
        yield from scalars(each, places, flow=inner)


def is_flow(node: Node, places: Places) -> bool:
    return not isinstance(node, Text) and _source(node.span, places)[:1] in ("[", "{")


def _source(span: Span, places: Places) -> str:
    start = places.index_of(span.line, span.column)
    return places.text[start : places.index_of(span.end_line, span.end_column)]


def source_of(span: Span, text: str) -> str:
    """What stands in a stretch of a file, letter for letter."""
    return _source(span, Places("", text))


def stretch(scalar: Text, start: int, end: int, places: Places) -> Span | None:
    """Where characters `start` to `end` of a text stand; None where that cannot be told for certain."""
    if scalar.inset is not None:
        first = places.index_of(scalar.span.line, scalar.span.column) + scalar.inset
        return _span(places, first + start, first + end)
    source, words = _source(scalar.span, places), scalar.value[start:end]
    if not words or source.count(words) != 1 or scalar.value.count(words) != 1:
        return None
    first = places.index_of(scalar.span.line, scalar.span.column) + source.index(words)
    return _span(places, first, first + len(words))


def _span(places: Places, start: int, end: int) -> Span:
    """From index to index, also where both are the same."""
    line, column = places.line_and_column(start)
    end_line, end_column = places.line_and_column(end)
    return Span(path=places.path, line=line, column=column, end_line=end_line, end_column=end_column)


def retyped(scalar: Scalar, words: str) -> Edit:
    """The whole text anew, quoted as it was where it was quoted."""
    line = " ".join(words.split())
    if scalar.text.style == "single":
        doubled = line.replace("'", "''")
        return scalar.text.span, f"'{doubled}'"
    if scalar.text.style == "double":
        escaped = line.replace("\\", "\\\\").replace('"', '\\"')
        return scalar.text.span, f'"{escaped}"'
    return scalar.text.span, quoted(line, flow=scalar.flow)


def with_key(mapping: Mapping, key: str, value: str, places: Places, *, column: int) -> tuple[Edit, ...]:
    """`key: value` after the last key of a mapping; `value` is typed as it is.

    `column` is where keys go in a mapping that has none yet.
    """
    if is_flow(mapping, places):
        last = mapping.entries[-1][1] if mapping.entries else None
        at = _after(last.span) if last else _inside(mapping.span)
        return ((at, f"{', ' if last else ''}{key}: {value}"),)
    first = mapping.entries[0][0].span.column if mapping.entries else column
    return (below(_last_line(mapping), [f"{' ' * (first - 1)}{key}: {value}"], places),)


def _last_line(mapping: Mapping) -> int:
    """The last line of what a mapping says; a value that is not there stands where its key does."""
    return max((_end_of(key, value) for key, value in mapping.entries), default=mapping.span.line)


def _end_of(key: Text, value: Node) -> int:
    blank = isinstance(value, Text) and not value.value.strip() and value.style == "plain"
    return key.span.end_line if blank else value.span.end_line


def with_entry(front: Mapping, key: str, pairs: Pairs, places: Places) -> tuple[Edit, ...] | None:
    """One more entry at the end of the list under a key of the front matter, which gets the key where it lacks it.

    None where something else than a list stands there.
    """
    value, at = front.get(key), front.key(key)
    if value is None or at is None:
        return _with_list(front, key, pairs, places)
    if isinstance(value, Text):
        if value.value.strip() not in ("", "~", "null"):
            return None
        return _begun(at, value, pairs, places, _layout(front, places))
    if not isinstance(value, Sequence):
        return None
    if is_flow(value, places):
        joint, place = (", ", _after(value.items[-1].span)) if value.items else ("", _inside(value.span))
        return ((place, f"{joint}{_braced(pairs)}"),)
    return _one_more(value, pairs, places)


def _with_list(front: Mapping, key: str, pairs: Pairs, places: Places) -> tuple[Edit, ...]:
    if is_flow(front, places):
        return with_key(front, key, f"[{_braced(pairs)}]", places, column=1)
    indent = " " * (front.entries[0][0].span.column - 1)
    lines = [f"{indent}{key}:", *_entry(pairs, indent + " " * _layout(front, places))]
    return (below(_last_line(front), lines, places),)


def _begun(key: Text, value: Text, pairs: Pairs, places: Places, step: int) -> tuple[Edit, ...]:
    """A key without a list yet; a word that stands for nothing goes."""
    indent = " " * (key.span.column - 1 + step)
    word = ((value.span, ""),) if value.value.strip() else ()
    return (*word, below(key.span.end_line, _entry(pairs, indent), places))


def _one_more(value: Sequence, pairs: Pairs, places: Places) -> tuple[Edit, ...] | None:
    last = value.items[-1]
    dash = _DASH.match(places.line_text(last.span.line))
    if dash is None:
        return None
    flow = is_flow(last, places)
    gap = dash["gap"] if isinstance(last, Mapping) else " "
    lines = [f"{dash['before']}-{gap}{_braced(pairs)}"] if flow else _entry(pairs, dash["before"], gap=gap)
    return (below(last.span.end_line, lines, places),)


def _layout(front: Mapping, places: Places) -> int:
    """By how much the dashes of a list stand further in than their key, in the maker's own lists."""
    for key, value in _block_lists(front, places):
        return max(value.span.column - key.span.column, 0)
    return _USUAL


def _block_lists(mapping: Mapping, places: Places) -> Iterator[tuple[Text, Sequence]]:
    for key, value in mapping.entries:
        if isinstance(value, Sequence) and value.items and not is_flow(value, places):
            yield key, value
        elif isinstance(value, Mapping):
            yield from _block_lists(value, places)


def _entry(pairs: Pairs, indent: str, *, gap: str = " ") -> list[str]:
    heads = (f"{indent}-{gap}", *[f"{indent} {' ' * len(gap)}"] * (len(pairs) - 1))
    return [f"{head}{key}: {quoted(words)}" for head, (key, words) in zip(heads, pairs, strict=True)]


def _braced(pairs: Pairs) -> str:
    return "{" + ", ".join(f"{key}: {quoted(words, flow=True)}" for key, words in pairs) + "}"


def below(line: int, lines: Several[str], places: Places) -> Edit:
    """New lines below line `line`, which end as that one does; what followed stays below them."""
    end = len(places.line_text(line)) + 1
    at = Span(path=places.path, line=line, column=end, end_line=line, end_column=end)
    newline = line_end(line, places)
    return at, "".join(f"{newline}{each}" for each in lines)


def line_end(line: int, places: Places) -> str:
    """How a line of the file ends, else how the first one does."""
    found = LINE_END.match(places.text, places.index_of(line, 1) + len(places.line_text(line)))
    found = found or LINE_END.search(places.text)
    return found[0] if found else "\n"


def without_entry(front: Mapping, key: str, places: Places) -> tuple[Edit, ...] | None:
    """The last entry of the list under a key taken out, and the key with the last that it had; None if that fails."""
    value, at = front.get(key), front.key(key)
    if not isinstance(value, Sequence) or not value.items or at is None or is_flow(front, places):
        return None
    if len(value.items) == 1:
        return (_lines_out(at.span.line, value.span.end_line, places),)
    last, before = value.items[-1], value.items[-2]
    if is_flow(value, places):
        return ((_after(before.span).until(_after(last.span)), ""),)
    return (_lines_out(last.span.line, last.span.end_line, places),)


def _lines_out(first: int, last: int, places: Places) -> Edit:
    """Whole lines, with the line end before them: a front matter never begins with them."""
    end = len(places.line_text(first - 1)) + 1
    span = Span(
        path=places.path,
        line=first - 1,
        column=end,
        end_line=last,
        end_column=len(places.line_text(last)) + 1,
    )
    return span, ""


def _after(span: Span) -> Span:
    return Span(
        path=span.path,
        line=span.end_line,
        column=span.end_column,
        end_line=span.end_line,
        end_column=span.end_column,
    )


def _inside(span: Span) -> Span:
    """Behind the bracket or brace that opens."""
    return Span(
        path=span.path, line=span.line, column=span.column + 1, end_line=span.line, end_column=span.column + 1
    )
