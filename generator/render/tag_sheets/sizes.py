"""The sizes of tags that a maker may ask for, and how many of each a sheet holds.

A size has a front and a second side: the back of a plain tag, the inside of a folded one. Second sides are printed
on a page of their own, in the order of columns that a sheet turned over its long edge shows.
"""

from dataclasses import dataclass

from generator.settings import Paper
from generator.wording.speech import later

INCH_MM = 25.4
# US Letter is 8.5 × 11 in; A4 is 210 × 297 mm (ISO 216).
PAPERS_MM: dict[Paper, tuple[float, float]] = {
    "letter": (8.5 * INCH_MM, 11 * INCH_MM),
    "a4": (210.0, 297.0),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Size:
    """Millimetres. `width` and `height` are those of the front; a folded tag is as wide again, lying open.

    `words` name it to the maker.
    """

    name: str
    words: str
    width: float
    height: float
    folded: bool = False

    @property
    def open_width(self) -> float:
        return self.width * 2 if self.folded else self.width

    @property
    def face_cm2(self) -> float:
        """The largest single face that is printed on."""
        return self.open_width * self.height / 100

    @property
    def most_letters(self) -> int:
        """More letters than this surely do not fit, so that nobody need try: 0.9 mm wide and 3 mm high each.

        Ours are 1.3 mm wide on average, and no size sets them smaller (see the style sheet).
        """
        return round(self.open_width * self.height / (0.9 * 3))


# From the smallest on; what one cannot hold goes to the next. A7 and A6 are 74 × 105 and 105 × 148 mm (ISO 216).
SIZES = (
    Size(name="ten", words=later("3.5 × 2 in, ten to a sheet"), width=3.5 * INCH_MM, height=2 * INCH_MM),
    Size(name="a7", words=later("A7, 105 × 74 mm"), width=105, height=74),
    Size(name="card", words=later("3 × 5 in card"), width=3 * INCH_MM, height=5 * INCH_MM),
    Size(
        name="folded",
        words=later("folded A7, 74 × 105 mm, the list inside"),
        width=74,
        height=105,
        folded=True,
    ),
)
SIZE_NAMES = tuple(size.name for size in SIZES)
# Further than this no cross reaches from the corner of a tag, and no letter comes so near to a cut.
CROSS_MM = 2.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """The corner of one tag on its sheet."""

    left: float
    top: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Grid:
    """How a sheet of `paper` is divided: as many tags of one size as it holds, in the middle of it."""

    size: Size
    paper: Paper

    @property
    def columns(self) -> int:
        return int((PAPERS_MM[self.paper][0] + 0.5) // self.size.open_width)

    @property
    def rows(self) -> int:
        return int((PAPERS_MM[self.paper][1] + 0.5) // self.size.height)

    @property
    def tags(self) -> int:
        return self.columns * self.rows

    @property
    def corner(self) -> tuple[float, float]:
        width, height = PAPERS_MM[self.paper]
        left = (width - self.columns * self.size.open_width) / 2
        return left, (height - self.rows * self.size.height) / 2

    def places(self, *, second: bool) -> tuple[Place, ...]:
        """Row by row; on the second page each row from the right, so that a side lies behind its front."""
        left, top = self.corner
        columns = range(self.columns)
        return tuple(
            Place(left=left + column * self.size.open_width, top=top + row * self.size.height)
            for row in range(self.rows)
            for column in (reversed(columns) if second else columns)
        )

    def crossings(self) -> tuple[Place, ...]:
        """Where cuts, and the folds of a folded tag, meet or end: the middles of the marks."""
        left, top = self.corner
        step = self.size.width
        across = [
            left + number * step for number in range(round(self.columns * self.size.open_width / step) + 1)
        ]
        down = [top + number * self.size.height for number in range(self.rows + 1)]
        return tuple(Place(left=x, top=y) for y in down for x in across)


def size_named(name: str) -> Size:
    """Raises KeyError for a size that there is not."""
    return next(size for size in SIZES if size.name == name)


def from_size_on(name: str) -> tuple[Size, ...]:
    """The size and every larger one, in the order in which they are tried."""
    names = [size.name for size in SIZES]
    return SIZES[names.index(name) :]
