"""Reads printed documents back: from the bytes by another library, and from the boxes that were laid out."""

import subprocess
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import Any

import pypdfium2 as pdfium
from PIL import Image
from pypdf import PdfReader
from pypdf.generic import DictionaryObject, IndirectObject

from generator.present.views import RecipeView
from generator.render.paper_words import all_ways

# What this reader puts for a hyphen at the end of a line.
_BROKEN = dict.fromkeys(map(ord, "\u0002\ufffe\u00ad"), "-")
# CSS pixels in a point and in a millimetre.
POINT = 96 / 72
MM = 96 / 25.4


def squeezed(text: str) -> str:
    """The text without spaces, so that a line's end cannot matter."""
    return "".join(text.split())


@cache
def text_of(content: bytes) -> str:
    """All that is printed, without spaces."""
    return "".join(pages_of(content))


@cache
def pages_of(content: bytes) -> tuple[str, ...]:
    """The same page by page. The other reader of PDFs takes thirty times as long for the same letters."""
    document = pdfium.PdfDocument(content)
    texts = [page.get_textpage().get_text_range() for page in document]
    return tuple(squeezed(text.translate(_BROKEN)) for text in texts)


def words_of(view: RecipeView) -> list[str]:
    """Every word that a sheet about the method must not lose: amounts, items, sentences, titles."""
    words = [view.title, view.maker, f"Revision {view.revision}", view.updated_day]
    for part in view.parts:
        words.append(part.title)
        for line in part.lines:
            words += [
                line.amount.weight,
                line.amount.volume,
                line.item,
                line.preparation,
                line.note,
                *line.choices,
            ]
    for way in all_ways(view):
        words.append(way.title)
        for section in way.sections:
            words += [section.title, *(block.words.plain for block in section.blocks)]
    return [*words, *view.cautions]


def label_words(view: RecipeView) -> list[str]:
    label = view.label
    lines = [label.ingredients, label.contains_line, label.may_line]
    told = ["".join(run.text for run in line) for line in lines]
    return [*told, label.kitchen_line, label.unfinished]


def lost(words: list[str], content: bytes) -> list[str]:
    """The words that cannot be read back from a document."""
    text = text_of(content)
    return [word for word in words if squeezed(word) not in text]


def root_of(content: bytes) -> Any:
    return PdfReader(BytesIO(content)).root_object


def structure_of(content: bytes) -> list[DictionaryObject]:
    """Every element of the tags in the order in which they are read."""
    return list(_elements(root_of(content)["/StructTreeRoot"]["/K"]))


def _elements(node: Any) -> Iterator[DictionaryObject]:
    if isinstance(node, IndirectObject):
        node = node.get_object()
    if isinstance(node, list):
        for each in node:
            yield from _elements(each)
    elif isinstance(node, DictionaryObject) and "/S" in node:
        yield node
        yield from _elements(node.get("/K", []))


@dataclass(frozen=True, slots=True, kw_only=True)
class Text:
    """A line of text where it lies on its page, in CSS pixels; `low` is the baseline, `high` the x-height."""

    page: int
    text: str
    left: float
    right: float
    high: float
    low: float
    size: float
    family: str

    def overlaps(self, other: "Text") -> bool:
        across = min(self.right, other.right) - max(self.left, other.left)
        down = min(self.low, other.low) - max(self.high, other.high)
        return across > 0.5 and down > 0.5


def texts_of(document: Any) -> list[Text]:
    """Every line of text of a laid-out document, heads and feet included."""
    return [
        text
        for number, page in enumerate(document.pages)
        for box in page._page_box.descendants(placeholders=True)
        if type(box).__name__ == "TextBox" and box.text.strip()
        for text in [_text(number, box)]
    ]


def _text(page: int, box: Any) -> Text:
    size = float(box.style["font_size"])
    low = box.position_y + box.baseline
    return Text(
        page=page,
        text=box.text,
        left=box.position_x,
        right=box.position_x + box.width,
        high=low - size * 0.45,
        low=low,
        size=size,
        family=box.style["font_family"][0],
    )


def overprinted(texts: list[Text]) -> Iterator[tuple[str, str]]:
    """Pairs of lines that lie on each other."""
    for at, one in enumerate(texts):
        for other in texts[at + 1 :]:
            if one.page == other.page and one.overlaps(other):
                yield one.text, other.text


def picture(content: bytes, folder: Path, *, page: int = 1, dpi: int = 300) -> Image.Image:
    """A page as a printer at `dpi` would put it on paper."""
    path = folder / "page.pdf"
    path.write_bytes(content)
    command = ["pdftoppm", "-r", str(dpi), "-f", str(page), "-l", str(page), "-png", "-singlefile", str(path)]
    subprocess.run([*command, str(folder / "page")], check=True, timeout=60)
    with Image.open(folder / "page.png") as image:
        return image.convert("L")
