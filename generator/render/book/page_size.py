"""The pages a booklet may have."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from generator.settings import Paper


@dataclass(frozen=True, slots=True, kw_only=True)
class PageSize:
    """`type` names the size of letters in the style sheet.

    `ruled` is how many lines to write on a page has, 8 mm apart between its margins.
    """

    width: str
    height: str
    type: str
    ruled: int


# Printing houses ask for a bleed of 3 mm or an eighth of an inch. The engine ends it (BleedBox) at 10 points, 3.5 mm,
# and draws marks in the outer half of this: so they stand outside of the bleed.
BLEED_AND_MARKS = "7.2mm"
# A4 and A5 are sizes of ISO 216, letter is ANSI/ASME Y14.1 size A.
PAGE_SIZES: Mapping[str, PageSize] = MappingProxyType(
    {
        "half": PageSize(width="5.5in", height="8.5in", type="small", ruled=22),
        "a5": PageSize(width="148mm", height="210mm", type="small", ruled=22),
        "letter": PageSize(width="8.5in", height="11in", type="large", ruled=30),
        "a4": PageSize(width="210mm", height="297mm", type="large", ruled=33),
    }
)
_HALF: Mapping[Paper, str] = MappingProxyType({"letter": "half", "a4": "a5"})


def usual_size(paper: Paper) -> str:
    """Half of the site's paper: two pages lie on a sheet, which is folded."""
    return _HALF[paper]
