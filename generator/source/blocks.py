"""The top-level blocks of a Markdown text, by line: all that markdown-it knows of places."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from markdown_it import MarkdownIt
from markdown_it.token import Token

from generator.source.lines import Places
from generator.source.references import Line

# Blocks only: inline rules give no place. Link definitions stay text, so that no line is lost; a table is a
# paragraph here, which keeps its lines as well and cannot be made to cost a thousand cells a line.
_PARSER = MarkdownIt("commonmark").disable(["inline", "text_join", "reference"])
_ITEM = re.compile(r"([ ]{0,3}[0-9]{1,9}[.)])([ \t]*)")


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """An item of a numbered list: its dedented lines, and the numbers of lines that each paragraph takes."""

    lines: tuple[Line, ...]
    paragraphs: tuple[range, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """A top-level block. `level` is 1 to 6 for a heading, else 0; `first` is a list's first number."""

    kind: str
    lines: tuple[Line, ...]
    level: int = 0
    title: str = ""
    first: int = 1
    items: tuple[Item, ...] = ()


def read_blocks(places: Places, start: int) -> tuple[Block, ...]:
    """The blocks of a file's text from index `start`, which must begin a line."""
    text = places.text[start:]
    if not text.strip():
        return ()
    return tuple(_blocks(places, places.line_of(start), _PARSER.parse(text)))


def lines_between(places: Places, first: int, end: int) -> tuple[Line, ...]:
    """The lines numbered `first` to `end` - 1, as they stand."""
    last = min(end, places.line_count() + 1)
    return tuple(Line(text=places.line_text(line), line=line, column=1) for line in range(first, last))


def _blocks(places: Places, offset: int, tokens: list[Token]) -> Iterator[Block]:
    for index, token in enumerate(tokens):
        if token.level or token.map is None or token.nesting < 0:
            continue
        lines = lines_between(places, token.map[0] + offset, token.map[1] + offset)
        if token.type == "heading_open":
            title = " ".join(tokens[index + 1].content.split())
            yield Block(kind="heading", lines=lines, level=int(token.tag[1:]), title=title)
        elif token.type == "ordered_list_open":
            items = tuple(_items(lines, offset, tokens, index + 1))
            yield Block(kind="steps", lines=lines, first=int(token.attrs.get("start", 1)), items=items)
        elif token.type == "paragraph_open":
            yield Block(kind="paragraph", lines=tuple(_dedent(line, 1_000) for line in lines))
        elif not _is_comment(token):
            yield Block(kind="other", lines=lines)


def _is_comment(token: Token) -> bool:
    content = token.content.strip()
    return token.type == "html_block" and content.startswith("<!--") and content.endswith("-->")


def _items(lines: tuple[Line, ...], offset: int, tokens: list[Token], index: int) -> Iterator[Item]:
    """The items of the list whose tokens begin at `index`; `lines` are the whole list's."""
    first = lines[0].line
    while tokens[index].level:
        token = tokens[index]
        index += 1
        if token.type == "list_item_open" and token.level == 1 and token.map is not None:
            start, end = token.map[0] + offset, token.map[1] + offset
            paragraphs = tuple(_paragraphs(offset, tokens, index))
            yield Item(lines=_dedented(lines[start - first : end - first]), paragraphs=paragraphs)


def _paragraphs(offset: int, tokens: list[Token], index: int) -> Iterator[range]:
    while tokens[index].level > 1:
        token = tokens[index]
        index += 1
        if token.type == "paragraph_open" and token.level == 2 and token.map is not None:
            yield range(token.map[0] + offset, token.map[1] + offset)


def _dedented(lines: tuple[Line, ...]) -> tuple[Line, ...]:
    """An item's lines without its number and without the indentation that the number asks for."""
    match = _ITEM.match(lines[0].text)
    if match is None:
        return lines
    gap = len(match[2]) if 1 <= len(match[2]) <= 4 else min(len(match[2]), 1)
    width = len(match[1]) + gap
    first = Line(text=lines[0].text[width:], line=lines[0].line, column=width + 1)
    return (first, *(_dedent(line, len(match[1]) + max(gap, 1)) for line in lines[1:]))


def _dedent(line: Line, most: int) -> Line:
    """Takes up to `most` columns of leading blanks off; a tab reaches to the next fourth column."""
    taken, column = 0, 0
    while taken < len(line.text) and line.text[taken] in " \t" and column < most:
        column += 4 - column % 4 if line.text[taken] == "\t" else 1
        taken += 1
    return Line(text=line.text[taken:], line=line.line, column=line.column + taken)
