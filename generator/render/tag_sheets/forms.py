"""The sizes a tag may have, from the smallest on, and the papers they are cut from.

All sizes divide one block of 7 by 10 inches, which stands in the middle of US Letter (margins 0.75 and
0.5 in) and of A4 alike; one set of cut marks serves both.
"""

from dataclasses import dataclass

from generator.settings import Paper

INCH_MM = 25.4
BLOCK_MM = (7 * INCH_MM, 10 * INCH_MM)
# US Letter is 8.5 × 11 in; A4 is 210 × 297 mm (ISO 216).
PAPERS_MM: dict[Paper, tuple[float, float]] = {
    "letter": (8.5 * INCH_MM, 11 * INCH_MM),
    "a4": (210.0, 297.0),
}
# Cut marks: this far from the tags, and this long.
_GAP_MM, _MARK_MM = 2.0, 6.0


@dataclass(frozen=True, slots=True, kw_only=True)
class TagForm:
    """How the block is divided."""

    name: str
    columns: int
    rows: int

    @property
    def width_mm(self) -> float:
        return BLOCK_MM[0] / self.columns

    @property
    def height_mm(self) -> float:
        return BLOCK_MM[1] / self.rows

    @property
    def most_letters(self) -> int:
        """More letters than this surely do not fit, so that nobody need try: 0.9 mm wide and 3.4 mm high each.

        Our letters are 1.3 mm wide on average, and no form sets them smaller (see the style sheet).
        """
        return round(self.width_mm * self.height_mm / (0.9 * 3.4))

    @property
    def tags(self) -> int:
        return self.columns * self.rows


# A longer declaration takes the next form; letters never shrink, and everything stays on one face, so that no
# half with the allergens can be cut off and lost. "ten-close" sets the lines about allergens one after another
# instead of one below another.
FORMS = (
    TagForm(name="ten", columns=2, rows=5),
    TagForm(name="ten-close", columns=2, rows=5),
    TagForm(name="eight", columns=2, rows=4),
    TagForm(name="six", columns=2, rows=3),
    TagForm(name="four", columns=2, rows=2),
    TagForm(name="two", columns=1, rows=2),
    TagForm(name="one", columns=1, rows=1),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """A cut mark as a box in millimetres from the sheet's corner."""

    left: float
    top: float
    width: float
    height: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    """The place of one tag on the sheet, in millimetres."""

    left: float
    top: float


def margins_mm(paper: Paper) -> tuple[float, float]:
    """What the block leaves free at the left and at the top."""
    width, height = PAPERS_MM[paper]
    return (width - BLOCK_MM[0]) / 2, (height - BLOCK_MM[1]) / 2


def fields_of(form: TagForm, paper: Paper) -> tuple[Field, ...]:
    """The tags row by row."""
    left, top = margins_mm(paper)
    return tuple(
        Field(left=left + column * form.width_mm, top=top + row * form.height_mm)
        for row in range(form.rows)
        for column in range(form.columns)
    )


def marks_of(form: TagForm, paper: Paper) -> tuple[Mark, ...]:
    """Marks at the ends of every cut, outside the tags."""
    left, top = margins_mm(paper)
    upright = [left + number * form.width_mm for number in range(form.columns + 1)]
    level = [top + number * form.height_mm for number in range(form.rows + 1)]
    ends = (top - _GAP_MM - _MARK_MM, top + BLOCK_MM[1] + _GAP_MM)
    sides = (left - _GAP_MM - _MARK_MM, left + BLOCK_MM[0] + _GAP_MM)
    return (
        *(Mark(left=x, top=end, width=0, height=_MARK_MM) for x in upright for end in ends),
        *(Mark(left=side, top=y, width=_MARK_MM, height=0) for y in level for side in sides),
    )
