"""How cards lie on a sheet: as many as it holds, in the middle of it, so that a back lies behind its front."""

from collections.abc import Iterator
from dataclasses import dataclass

from generator.settings import Paper

INCH_MM = 25.4
# US Letter is 8.5 × 11 in; A4 is 210 × 297 mm (ISO 216). Sheets stand upright: their long edge is at the side.
SHEETS_MM: dict[Paper, tuple[float, float]] = {"letter": (8.5 * INCH_MM, 11 * INCH_MM), "a4": (210.0, 297.0)}
# A mark begins this far from the corner of a card, and is this long.
GAP_MM, ARM_MM = 1.5, 4.0
# Where less is left beside the cards, no printer reaches a mark: the cut is told by ticks on the cutting line.
_LEAST_MM = GAP_MM + ARM_MM
# A line of words needs this much.
WORDS_MM = 9.0
# A card of A6 on A4 may lie closer than a hair: sheets are cut to whole millimetres.
_HAIR_MM = 0.1


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """The left upper corner of the room of one card."""

    left: float
    top: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """A hairline of the sheet: its left upper end, how far it goes, and which way."""

    left: float
    top: float
    long: float
    level: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class CardGrid:
    """`width` and `height` are the room of a card on the sheet: a turned card lies with its long side level."""

    paper: Paper
    width: float
    height: float
    turned: bool

    @property
    def columns(self) -> int:
        return int((SHEETS_MM[self.paper][0] + _HAIR_MM) // self.width)

    @property
    def rows(self) -> int:
        return int((SHEETS_MM[self.paper][1] + _HAIR_MM) // self.height)

    @property
    def cards(self) -> int:
        return self.columns * self.rows

    @property
    def corner(self) -> tuple[float, float]:
        width, height = SHEETS_MM[self.paper]
        return (width - self.columns * self.width) / 2, (height - self.rows * self.height) / 2

    @property
    def has_words(self) -> bool:
        """Whether there is room for words above the cards."""
        return self.corner[1] >= WORDS_MM

    def places(self, *, back: bool) -> tuple[Place, ...]:
        """Row by row; at the back each row from the right: the sheet is turned over its long edge."""
        left, top = self.corner
        columns = range(self.columns)
        return tuple(
            Place(left=left + column * self.width, top=top + row * self.height)
            for row in range(self.rows)
            for column in (reversed(columns) if back else columns)
        )

    def marks(self) -> Iterator[Mark]:
        """At both ends of every cut, outside the cards; on the cutting line where the cards take the whole sheet."""
        left, top = self.corner
        right, bottom = left + self.columns * self.width, top + self.rows * self.height
        for column in range(self.columns + 1):
            x = left + column * self.width
            for y in _ends(top, bottom, inner=0 < column < self.columns):
                yield Mark(left=x, top=y, long=ARM_MM, level=False)
        for row in range(self.rows + 1):
            y = top + row * self.height
            for x in _ends(left, right, inner=0 < row < self.rows):
                yield Mark(left=x, top=y, long=ARM_MM, level=True)


def _ends(low: float, high: float, *, inner: bool) -> tuple[float, ...]:
    """Where the marks of one cut begin, which goes from `low` to `high`."""
    if low >= _LEAST_MM:
        return low - GAP_MM - ARM_MM, high + GAP_MM
    return (low, high - ARM_MM) if inner else ()


def card_grid(paper: Paper, *, width: float, height: float) -> CardGrid:
    """The way that holds most cards; where both hold as many, that which leaves more room for marks.

    Measures are those of a card in millimetres. Every card of ours fits a sheet at least once.
    """
    ways = (
        CardGrid(paper=paper, width=width, height=height, turned=False),
        CardGrid(paper=paper, width=height, height=width, turned=True),
    )
    return max(ways, key=lambda each: (each.cards, min(each.corner), not each.turned))
