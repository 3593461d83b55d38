"""Finds where plain text still states the amount that was corrected: no reference makes it follow by itself."""

import re
from collections.abc import Iterable, Iterator

from generator.amend.answer import Former
from generator.diagnostics.diagnostic import Diagnostic
from generator.diagnostics.span import Span
from generator.measure.duration import read_duration
from generator.measure.quantity import read_quantity
from generator.measure.temperature import read_temperature
from generator.measure.unit import Kind, Spoons
from generator.source.document import Document, Node, Text
from generator.source.document import Mapping as Keys
from generator.source.edits import scalars
from generator.source.lines import Places

MOST_TOLD = 12
SPOKEN_KEYS = ("lead", "photo_text", "makes", "portions", "tin", "keeps")
_NUMBER = re.compile(
    r"(?<![0-9.,/])(?:[0-9]|[½¼¾⅓⅔⅛⅜⅝⅞]|(?<![A-Za-z])(?:an?|one|two|three|four|five|six|half)\s)", re.I
)
_BRACES = re.compile(r"\{[^{}]*\}")
_TIME = re.compile(r"[0-9][0-9 ./½¼¾⅓⅔–-]*\s?(?:h|hours?|hrs?|min(?:ute)?s?|days?|weeks?)\b", re.I)
_HEAT = re.compile(r"[0-9]{2,3}\s?(?:°|º|degrees?)?\s?[FC]\b")
_REACH = 40


def stated_in_body(
    path: str, text: str, start: int, former: Iterable[Former], *, spoons: Spoons
) -> Iterator[Diagnostic]:
    """Each place of a Markdown text from index `start` on that states a former amount; braces are passed over."""
    places = Places(path, text)
    former = tuple(former)
    blanked = text[:start] + _BRACES.sub(_blank, text[start:])
    for line in range(places.line_of(start), places.line_count() + 1):
        first = places.starts[line - 1]
        words = blanked[first : first + len(places.line_text(line))]
        for begin, end in _hits(words, former, spoons):
            yield _still(path, line, begin, words[begin:end])


def _blank(found: "re.Match[str]") -> str:
    return "".join(each if each in "\r\n" else " " for each in found[0])


def stated_in_keys(
    path: str, text: str, nodes: Iterable[Node], former: Iterable[Former], *, spoons: Spoons
) -> Iterator[Diagnostic]:
    """The same for texts of keys."""
    places, former = Places(path, text), tuple(former)
    for node in nodes:
        for each in scalars(node, places):
            hits = _hits(each.text.value, former, spoons)
            for begin, end in hits:
                span = each.text.at(begin, end)
                yield _still(path, span.line, span.column - 1, each.text.value[begin:end])


def spoken_keys(front: Keys) -> tuple[Node, ...]:
    """The keys of a page that hold prose."""
    return tuple(node for key in SPOKEN_KEYS if (node := front.get(key)) is not None)


def notes_of_lines(document: Document) -> tuple[Node, ...]:
    """`note:` of ingredient lines."""
    found: list[Node] = []

    def walk(node: Node) -> None:
        if isinstance(node, Text):
            return
        if isinstance(node, Keys):
            note = node.get("note")
            found.extend([note] if note is not None else [])
            for _, value in node.entries:
                walk(value)
            return
        for item in node.items:
            walk(item)

    formula = document.front.get("formula")
    if formula is not None:
        walk(formula)
    return tuple(found)


def _hits(words: str, former: tuple[Former, ...], spoons: Spoons) -> Iterator[tuple[int, int]]:
    last = 0
    for found in _NUMBER.finditer(words):
        at = found.start()
        if at < last:
            continue
        end = max((_end(words, at, each, spoons) for each in former), default=0)
        if end > at:
            last = end
            yield at, end


def _end(words: str, at: int, former: Former, spoons: Spoons) -> int:
    """Where the former amount ends that begins at `at`; 0 where none begins there."""
    if former.kind is Kind.TIME:
        found = _TIME.match(words, at)
        read = read_duration(found[0]) if found else None
        return found.end() if found and read and read.minutes == former.amount else 0
    if former.kind is not None:
        quantity = read_quantity(words, spoons=spoons, start=at)
        if quantity is None or quantity[0].unit is None or quantity[0].unit.kind is not former.kind:
            return 0
        amount = quantity[0].amount.scaled(quantity[0].unit.factor)
        return at + len(words[at : quantity[1]].rstrip(" .")) if amount == former.amount else 0
    return _letters(words, at, former.words)


def _letters(words: str, at: int, old: str) -> int:
    """The same text, or the same temperature in another spelling."""
    piece = words[at : at + len(old)]
    after = words[at + len(old) : at + len(old) + 1]
    if piece.casefold() == old.casefold() and len(old) > 2 and not after.isalnum():
        return at + len(old)
    heat = _HEAT.match(words, at)
    stated = read_temperature(heat[0]) if heat else None
    return heat.end() if heat and stated is not None and stated == read_temperature(old) else 0


def _still(path: str, line: int, begin: int, words: str) -> Diagnostic:
    span = Span(
        path=path, line=line, column=begin + 1, end_line=line, end_column=begin + 1 + max(len(words), 1)
    )
    return Diagnostic(
        code="C010",
        message=f"plain text still says “{words[:_REACH]}”",
        span=span,
        hint="See whether it is the amount that was corrected; a reference in braces would follow by itself.",
    )


def told(found: Iterable[Diagnostic]) -> tuple[Diagnostic, ...]:
    """The first of them, in the order of files and lines; never so many that nobody reads them."""
    return tuple(sorted(dict.fromkeys(found), key=lambda each: each.span))[:MOST_TOLD]
