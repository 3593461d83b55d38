"""Laid-out pages, several on a sheet: drawn where they lie, and still read as what they are.

In: a ground, which is a laid-out document with one page for each sheet, and for each of its pages what lies on it.
Out: a document that prints as any other. A page that is imposed keeps its tags, so that headings, tables and lists
stay such; one that lies there again is drawn and not told again.
"""

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Any

from generator.render.paper import PaperFault

_MM = 96 / 25.4
Matrix = tuple[float, float, float, float]
# The two ways in which a page lies on a sheet besides upright: its head to the right, and to the left.
UPRIGHT: Matrix = (1, 0, 0, 1)
HEAD_RIGHT: Matrix = (0, 1, -1, 0)
HEAD_LEFT: Matrix = (0, -1, 1, 0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """A page of a laid-out document; `left` and `top` are those of the room it takes, in millimetres of the sheet.

    `again` is whether the same page lies in the document before.
    """

    page: Any
    left: float
    top: float
    lies: Matrix = UPRIGHT
    again: bool = False


def impose(ground: Any, sheets: Sequence[Sequence[Placed]]) -> Any:
    """The document of the ground's pages with what lies on each. Raises PaperFault where their numbers differ."""
    if len(ground.pages) != len(sheets):
        raise PaperFault(f"{len(sheets)} sheets took {len(ground.pages)} pages")
    return ground.copy([_Sheet(page, placed) for page, placed in zip(ground.pages, sheets, strict=True)])


class _Sheet:
    """What the engine's writer asks of a page: its measures, what it leads to, its boxes for the tags, its ink."""

    def __init__(self, ground: Any, placed: Sequence[Placed]) -> None:
        self._ground, self._placed = ground, placed
        self.width, self.height, self.bleed = ground.width, ground.height, ground.bleed
        self.links: list[Any] = []
        self.anchors: dict[str, Any] = {}
        self.forms: dict[Any, Any] = {None: []}
        self.bookmarks = [mark for each in placed if not each.again for mark in _bookmarks(each)]
        told = [each.page._page_box for each in placed if not each.again]
        self._page_box = ground._page_box.copy_with_children([*ground._page_box.children, *told])

    def paint(self, stream: Any, scale: float = 1) -> None:
        self._ground.paint(stream, scale)
        for each in self._placed:
            a, b, c, d = each.lies
            x, y = _corner(each)
            with stream.stacked(), _told_once(stream, again=each.again):
                stream.transform(a=a, b=b, c=c, d=d, e=x * scale, f=y * scale)
                each.page.paint(stream, scale)


def _corner(placed: Placed) -> tuple[float, float]:
    """Where the page's own left upper corner comes to lie, in CSS pixels."""
    left, top = placed.left * _MM, placed.top * _MM
    if placed.lies == HEAD_RIGHT:
        return left + placed.page.height, top
    if placed.lies == HEAD_LEFT:
        return left, top + placed.page.width
    return left, top


def _bookmarks(placed: Placed) -> Iterator[tuple[int, str, tuple[float, float], str]]:
    """The title of a page, where it lies."""
    a, b, c, d = placed.lies
    left, top = _corner(placed)
    for level, label, (x, y), state in placed.page.bookmarks:
        if level == 1:
            yield level, label, (left + a * x + c * y, top + b * x + d * y), state


@contextmanager
def _told_once(stream: Any, *, again: bool) -> Iterator[None]:
    """What lies there again is ornament to whoever listens: it is drawn without tags."""
    if not again:
        yield
        return
    with stream.artifact():
        tags, stream._tags = stream._tags, None
        try:
            yield
        finally:
            stream._tags = tags
