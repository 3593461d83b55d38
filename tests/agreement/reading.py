"""Reads every output back, each from its own bytes, with nothing of ours but the knowledge of where things stand.

All spaces, soft hyphens and ligatures are set aside (`plain`): where a line of a narrow card ends says nothing.
"""

import json
import re
import unicodedata
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from html.parser import HTMLParser
from io import BytesIO
from typing import Any

from pypdf import PdfReader

_INVISIBLE = re.compile("[\\s\u00ad\u200b\u2060\ufeff]")
FRACTIONS = "¼½¾⅓⅔⅛⅜⅝⅞"
_APART = "¦"
"""Stands between entries of a list and before what follows on a line: neighbours make no number together."""
_LIGATURES = str.maketrans({each: unicodedata.normalize("NFKC", each) for each in "ﬀﬁﬂﬃﬄﬅﬆ"})
_FURNITURE = re.compile(r"\s*(?:\d+\.|.*side \d+ of \d+|Revision \d.*|.* bench sheet)\s*")
"""What stands at the foot and the head of a side, and the numbers of a list, which a PDF holds apart."""


def plain(text: str) -> str:
    return _INVISIBLE.sub("", text.translate(_LIGATURES))


def standing(words: str) -> str:
    """A pattern of plain words where they are not the tail or the head of a longer number or range."""
    before = rf"(?<![\d–{FRACTIONS}])(?<!\d\.)" if words[:1].isnumeric() else ""
    after = rf"(?![\d–{FRACTIONS}]|\.\d)" if words[-1:].isnumeric() else ""
    return before + re.escape(words) + after


def holds(text: str, words: str) -> bool:
    """Whether plain words stand in a plain text."""
    return not words or re.search(standing(words), text) is not None


@dataclass(frozen=True, slots=True, kw_only=True)
class Output:
    """One output as read, all texts plain.

    `rows` is one text a line of the formula; None where the lines are not told apart, and then they stand in
    `docket` in their order. `times` is one text a way.

    `claims` names what this output is there to show: rows, steps, times, iso times, label.
    """

    name: str
    claims: frozenset[str]
    rows: tuple[str, ...] | None
    docket: str
    steps: str
    times: tuple[str, ...]
    declared: str
    sequence: tuple[str, ...] | None = None


@dataclass
class Element:
    """An element of a page with its classes, and all words inside it."""

    name: str
    attributes: Mapping[str, str]
    words: list[str] = field(default_factory=list)

    @property
    def text(self) -> str:
        return plain("".join(self.words))


class _Page(HTMLParser):
    """Every element of a page in the order of their beginnings."""

    _EMPTY = frozenset(
        {"meta", "link", "img", "input", "br", "hr", "rect", "path", "circle", "col", "source"}
    )

    def __init__(self, content: str) -> None:
        super().__init__()
        self.elements: list[Element] = []
        self.open: list[Element] = []
        self.feed(content)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        element = Element(tag, {name: value or "" for name, value in attrs})
        self.elements.append(element)
        if tag not in self._EMPTY:
            self.open.append(element)
        if tag == "li" or {"second", "percent"} & set(element.attributes.get("class", "").split()):
            self.handle_data(_APART)

    def handle_endtag(self, tag: str) -> None:
        if any(each.name == tag for each in self.open):
            while self.open.pop().name != tag:
                pass

    def handle_data(self, data: str) -> None:
        for element in self.open:
            element.words.append(data)

    def classed(self, *classes: str) -> Iterator[Element]:
        return (
            each for each in self.elements if set(classes) & set(each.attributes.get("class", "").split())
        )


def read_page(content: bytes) -> Output:
    """The docket's lines one by one; the method with the needs beside each step; the strips; the label."""
    page = _Page(content.decode())
    labels = [each for each in page.elements if each.name == "label"]
    whole = next(each for each in page.elements if each.name == "main").text
    return Output(
        name="page",
        claims=frozenset({"rows", "steps", "needs", "times", "label"}),
        rows=tuple(each.text for each in labels),
        docket="",
        steps=_without(next(page.classed("method")).text, page.classed("ovens")),
        times=tuple(each.text for each in page.classed("times")),
        declared=whole,
        sequence=tuple(each for told in page.classed("sequence") for each in told.text.split(_APART)[1:]),
    )


def _without(text: str, asides: Iterable[Element]) -> str:
    """The method without the table of other ovens, whose temperatures are those of no step."""
    for each in asides:
        text = text.replace(each.text, "")
    return text


def read_structured_data(content: bytes) -> Output:
    """The Recipe of the JSON-LD in a page."""
    page = _Page(content.decode())
    scripts = (each for each in page.elements if each.attributes.get("type") == "application/ld+json")
    nodes = [node for each in scripts for node in _nodes(json.loads("".join(each.words)))]
    recipe = next(node for node in nodes if node.get("@type") == "Recipe")
    steps = [
        node["text"] for node in _nodes(recipe["recipeInstructions"]) if node.get("@type") == "HowToStep"
    ]
    times = {key: recipe.get(key, "") for key in ("prepTime", "cookTime", "totalTime")}
    return Output(
        name="JSON-LD",
        claims=frozenset({"rows", "steps", "iso times"}),
        rows=tuple(plain(each) for each in recipe["recipeIngredient"]),
        docket="",
        steps=plain(" ".join(steps)),
        times=(json.dumps(times),),
        declared="",
    )


def _nodes(value: Any) -> Iterator[Mapping[str, Any]]:
    if isinstance(value, dict):
        yield value
        for each in value.values():
            yield from _nodes(each)
    elif isinstance(value, list):
        for each in value:
            yield from _nodes(each)


def read_description(text: str) -> Output:
    """The block under the video. What it had to leave out it does not claim."""
    blocks = text.split("\n\n")
    first = next((at for at, each in enumerate(blocks) if each.startswith("INGREDIENTS")), None)
    lines = _ingredient_lines(blocks[first:]) if first is not None else ()
    method = text.find("\nMETHOD")
    timed = [line for line in text.splitlines() if line.startswith("Time")]
    kept = {"rows": first is not None, "steps": method >= 0, "times": bool(timed), "label": True}
    return Output(
        name="description",
        claims=frozenset(each for each, told in kept.items() if told),
        rows=tuple(plain(line) for line in lines),
        docket="",
        steps=plain(text[method:]) if method >= 0 else "",
        times=tuple(plain(line) for line in timed),
        declared=plain(text),
    )


def _ingredient_lines(blocks: list[str]) -> Iterator[str]:
    """The lines of the first block after its heading, and of each block that a part's title begins."""
    for number, block in enumerate(blocks):
        head, *lines = block.splitlines()
        if number and (not head.endswith(":") or not lines or head.startswith("METHOD")):
            return
        yield from (line for line in lines if not line.endswith(":"))


def read_sheet(content: bytes, *, name: str, claims: frozenset[str]) -> Output:
    """A card or a bench sheet from its PDF, side after side without what repeats on each."""
    sides = [page.extract_text() for page in PdfReader(BytesIO(content)).pages]
    kept = (line for side in sides for line in side.splitlines() if not _FURNITURE.fullmatch(line))
    whole = "\n".join(kept)
    docket = whole[whole.index("Weigh out") :]
    method, timed = _after(docket, "\nMethod"), _before(_after(docket, "\nTime\n"), "\nMethod")
    return Output(
        name=name,
        claims=claims,
        rows=None,
        docket=plain(_before(_before(docket, "\nMethod"), "\nTime\n")),
        steps=plain(method),
        times=tuple(plain(each) for each in re.split(r"(?=\btotal\b)", timed)[1:]),
        declared=plain(method),
    )


def read_tags(content: bytes) -> Output:
    """A sheet of gift tags: what is in the bake, and nothing of its method."""
    text = "\n".join(page.extract_text() for page in PdfReader(BytesIO(content)).pages)
    told = plain(text)
    return Output(
        name="tags",
        claims=frozenset({"label"}),
        rows=None,
        docket="",
        steps="",
        times=(),
        declared=told,
    )


def _before(text: str, mark: str) -> str:
    return text[: text.index(mark)] if mark in text else text


def _after(text: str, mark: str) -> str:
    return text[text.index(mark) :] if mark in text else ""
