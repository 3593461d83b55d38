"""The words of a PDF, side after side, as the file itself has them.

What repeats on every side (the running title, the number of the side) and the numbers of lists, which a PDF holds
apart from their lines, are set aside: a sentence that goes on overleaf is one sentence.
"""

import re
from typing import TYPE_CHECKING

from generator.proof.built_text import BuiltText, Piece
from generator.proof.leftward import has_leftward, in_reading_order
from generator.wording.speech import gettext

if TYPE_CHECKING:
    from pypdfium2 import PdfDocument, PdfPage

# A range may be broken after its dash.
_GOES_ON = re.compile(r"[\d¼½¾⅐-⅞][–-]\s*$")


def read_pdf(path: str, content: bytes, *, running: str, turns: tuple[int, ...] = (0,)) -> BuiltText:
    """`running` is the line that repeats at the foot of each side, such as its revision. ValueError: no PDF.

    Words that stand across a side are read in their order only when it is turned: `turns`, in degrees, has it read
    once in each way, one after another.
    """
    # Loaded where a PDF is read, since most commands read none.
    import pypdfium2

    try:
        document = pypdfium2.PdfDocument(content)
    except pypdfium2.PdfiumError as error:
        raise ValueError(str(error)) from None
    try:
        sides = [_side(_turned(document, number, turn)) for turn in turns for number in range(len(document))]
    finally:
        document.close()
    furniture = _furniture()
    pieces = [
        Piece(words=line.rstrip() if _GOES_ON.search(line) else f"{line}\n", side=number)
        for number, side in enumerate(sides, start=1)
        for at, line in enumerate(side.splitlines())
        if not (furniture.fullmatch(line) or (line.strip() == running and at))
    ]
    laid = tuple(pieces)
    return BuiltText(path=path, lay=lambda: laid)


def _furniture() -> re.Pattern[str]:
    """What repeats on each side, in the language that is spoken.

    The number of a list's entry stands by itself and has a blank behind it; the end of a sentence ("gas mark 4.")
    not.
    """
    side = (
        re.escape(gettext("side {page} of {pages}"))
        .replace(r"\{page\}", r"\d+")
        .replace(r"\{pages\}", r"\d+")
    )
    heads = (re.escape(gettext(each)) for each in ("bench sheet", "formula sheet"))
    return re.compile(rf"\s*(?:\d+\. |.*{side}|{'|'.join(f'.* {head}' for head in heads)})\s*")


def _turned(document: "PdfDocument", number: int, turn: int) -> "PdfPage":
    page = document[number]
    if page.get_rotation() != turn:
        page.set_rotation(turn)
        page.close()
        # The words are laid out by how the page lay when it was opened.
        page = document[number]
    return page


def _side(page: "PdfPage") -> str:
    text = page.get_textpage()
    try:
        told = str(text.get_text_range())
        return in_reading_order(text) if has_leftward(told) else told
    finally:
        text.close()
        page.close()
