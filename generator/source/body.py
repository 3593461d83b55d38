"""Splits a recipe's Markdown into its introduction, its ways with their steps, and its chapters."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from itertools import pairwise

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.diagnostics.span import Span
from generator.source.blocks import Block, Item, lines_between, read_blocks
from generator.source.document import Aside, Body, Chapter, Method, Passage, Section, Step
from generator.source.lines import Places
from generator.source.references import Line, find_braces, read_passage

_METHOD = re.compile(r"method\s*(?P<named>:\s*(?P<name>.*))?", re.IGNORECASE)
_NEARLY_A_METHOD = re.compile(r"methods?\b", re.IGNORECASE)
_CAUTION = re.compile(r"(?:caution\s*:|\*\*caution\s*:\s*\*\*|\*\*caution\s*\*\*\s*:)\s*", re.IGNORECASE)
_LOST_CAUTION = re.compile(r"[\s>*_+-]*(?P<word>caution)[*_]*\s*:", re.IGNORECASE)
_SPACELESS = re.compile(r"(#{2,6})[^\s#]")


def read_body(places: Places, start: int) -> tuple[Body, Diagnostics]:
    """The body of a recipe that begins at index `start`, always given, and its mistakes."""
    reader = _Reader(places=places, first_line=places.line_of(start))
    blocks = read_blocks(places, start)
    headings = [index for index, block in enumerate(blocks) if block.kind == "heading" and block.level == 2]
    intro = reader.intro(blocks[: headings[0]] if headings else blocks)
    for index, end in pairwise((*headings, len(blocks))):
        reader.chapter_or_method(blocks[index], blocks[index + 1 : end], _line_after(blocks, end, places))
    reader.check_headings(blocks)
    body = Body(intro=intro, methods=tuple(reader.methods), chapters=tuple(reader.chapters))
    return body, (*reader.found, *_order_of_ways(body.methods))


def check_page(places: Places, start: int) -> Diagnostics:
    """The mistakes of headings in a page that is no recipe."""
    reader = _Reader(places=places, first_line=places.line_of(start))
    reader.check_headings(read_blocks(places, start))
    return tuple(reader.found)


def _line_after(blocks: tuple[Block, ...], index: int, places: Places) -> int:
    return blocks[index].lines[0].line if index < len(blocks) else places.line_count() + 1


def _place(path: str, line: Line) -> Span:
    """A line from its first character that is no blank to its last."""
    text = line.text
    start = line.column + len(text) - len(text.lstrip())
    end = max(line.column + len(text.rstrip()), start + 1)
    return Span(path=path, line=line.line, column=start, end_line=line.line, end_column=end)


@dataclass(slots=True, kw_only=True)
class _Reader:
    places: Places
    first_line: int
    methods: list[Method] = field(default_factory=list)
    chapters: list[Chapter] = field(default_factory=list)
    found: list[Diagnostic] = field(default_factory=list)

    def note(self, code: str, message: str, span: Span, hint: str) -> None:
        self.found.append(Diagnostic(code=code, message=message, span=span, hint=hint))

    def passage(self, lines: Iterable[Line], at: Span) -> Passage:
        passage, found = read_passage(self.places.path, lines, at=at)
        self.found.extend(found)
        return passage

    def intro(self, blocks: tuple[Block, ...]) -> Passage:
        at = self.places.span(
            self.places.starts[self.first_line - 1], self.places.starts[self.first_line - 1]
        )
        if not blocks:
            return self.passage((), at)
        end = blocks[-1].lines[-1].line + 1
        return self.passage(lines_between(self.places, blocks[0].lines[0].line, end), at)

    def chapter_or_method(self, heading: Block, blocks: tuple[Block, ...], end: int) -> None:
        span = _place(self.places.path, heading.lines[0])
        match = _METHOD.fullmatch(heading.title)
        if match is None:
            self._chapter(heading, span, end)
            return
        name = " ".join((match["name"] or "").split())
        if match["named"] and not name:
            hint = "Name the way, as in “## Method: by hand”, or write “## Method” for what is common to all."
            self.note("S040", "this way has no name", span, hint)
        self.methods.append(Method(name=name, span=span, sections=tuple(self._sections(span, blocks))))

    def _chapter(self, heading: Block, span: Span, end: int) -> None:
        if _NEARLY_A_METHOD.match(heading.title):
            hint = "Write “## Method: NAME” for a way, “## Method” for what is common to all."
            self.note("S047", "this heading does not begin a method", span, hint)
        lines = lines_between(self.places, heading.lines[-1].line + 1, end)
        markdown = "\n".join(line.text for line in lines).strip("\n")
        self.chapters.append(Chapter(title=heading.title, markdown=markdown, span=span))
        for braces in find_braces(self.places.path, lines):
            hint = "Write it in plain words here, or put \\{ for a brace that is meant."
            self.note("S046", f"braces mean nothing under “{heading.title}”", braces, hint)

    def _sections(self, span: Span, blocks: tuple[Block, ...]) -> Iterator[Section]:
        title, kept = "", list[Step | Aside]()
        for block in blocks:
            if block.kind == "heading" and block.level == 3:
                if title or kept:
                    yield Section(title=title, span=span, blocks=tuple(kept))
                title, span, kept = block.title, _place(self.places.path, block.lines[0]), []
            else:
                kept.extend(self._pieces(block))
        if title or kept:
            yield Section(title=title, span=span, blocks=tuple(kept))

    def _pieces(self, block: Block) -> Iterator[Step | Aside]:
        if block.kind == "steps":
            yield from self._steps(block)
        elif block.kind == "paragraph" and _CAUTION.match(block.lines[0].text):
            yield self._caution(block.lines)
        else:
            self._look_for_lost_cautions(block.lines)
            at = _place(self.places.path, block.lines[0])
            yield Aside(kind="text", passage=self.passage(block.lines, at))

    def _steps(self, block: Block) -> Iterator[Step | Aside]:
        number = block.first
        for item in block.items:
            rest, cautions = _without_cautions(item)
            if any(line.text.strip() for line in rest) or not cautions:
                self._look_for_lost_cautions(rest)
                at = _place(self.places.path, item.lines[0])
                yield Step(number=number, passage=self.passage(rest, at))
                number += 1
            for lines in cautions:
                yield self._caution(lines)

    def _caution(self, lines: tuple[Line, ...]) -> Aside:
        first = lines[0]
        match = _CAUTION.match(first.text)
        width = match.end() if match else 0
        bare = Line(text=first.text[width:], line=first.line, column=first.column + width)
        at = _place(self.places.path, first)
        return Aside(kind="caution", passage=self.passage((bare, *lines[1:]), at))

    def _look_for_lost_cautions(self, lines: Iterable[Line]) -> None:
        for line in lines:
            if match := _LOST_CAUTION.match(line.text):
                start = line.column + match.start("word")
                end = line.column + match.end()
                span = Span(
                    path=self.places.path,
                    line=line.line,
                    column=start,
                    end_line=line.line,
                    end_column=end,
                )
                hint = "Begin a paragraph of its own with “Caution:”, with a blank line above it."
                self.note("S045", "this caution would not get its box", span, hint)

    def check_headings(self, blocks: tuple[Block, ...]) -> None:
        for block in blocks:
            if block.kind == "heading":
                self._check_heading(block)
            elif block.kind == "paragraph":
                self._look_for_spaceless_headings(block)

    def _check_heading(self, block: Block) -> None:
        span = _place(self.places.path, block.lines[0])
        if not block.title:
            self.note("S048", "this heading is empty", span, "Give it words, or delete it.")
        elif block.level == 1:
            hint = f"The title stands in the front matter; write “## {block.title}” for a part of the page."
            self.note("S044", "a second title", span, hint)

    def _look_for_spaceless_headings(self, block: Block) -> None:
        for line in block.lines:
            if match := _SPACELESS.match(line.text):
                span = _place(self.places.path, line)
                hint = f"Write a space after the signs: “{match[1]} {line.text[len(match[1]) :].strip()}”."
                self.note("S043", "this is printed as text, not as a heading", span, hint)


def _without_cautions(item: Item) -> tuple[tuple[Line, ...], tuple[tuple[Line, ...], ...]]:
    """The lines of a step without its paragraphs that are cautions, and the lines of each of those."""
    by_number = {line.line: line for line in item.lines}
    groups = [tuple(by_number[number] for number in paragraph) for paragraph in item.paragraphs]
    cautions = tuple(group for group in groups if group and _CAUTION.match(group[0].text))
    taken = {line.line for group in cautions for line in group}
    rest = tuple(line for line in item.lines if line.line not in taken)
    return rest, tuple(tuple(_stripped(line) for line in group) for group in cautions)


def _stripped(line: Line) -> Line:
    blank = len(line.text) - len(line.text.lstrip())
    return Line(text=line.text[blank:], line=line.line, column=line.column + blank)


def _order_of_ways(methods: tuple[Method, ...]) -> Iterator[Diagnostic]:
    seen: dict[str, Method] = {}
    for index, method in enumerate(methods):
        folded = method.name.casefold()
        if folded in seen:
            line = seen[folded].span.line
            what = f"the way “{method.name}” is" if method.name else "the common method is"
            yield Diagnostic(
                code="S041",
                message=f"{what} already given in line {line}",
                span=method.span,
                hint="Give each way a name of its own, or put both under one heading.",
            )
        seen.setdefault(folded, method)
        if not method.name and any(later.name for later in methods[index + 1 :]):
            yield Diagnostic(
                code="S042",
                message="the common method stands before a way",
                span=method.span,
                hint="Put “## Method”, which is common to all ways, after every “## Method: NAME”.",
            )
