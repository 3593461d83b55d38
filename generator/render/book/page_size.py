"""The pages a booklet may have."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from generator.settings import Paper


@dataclass(frozen=True, slots=True, kw_only=True)
class PageSize:
    """`type` names the size of letters in the style sheet; `bleed` is what is printed beyond the cut."""

    width: str
    height: str
    type: str
    bleed: str


# A4 and A5 are sizes of ISO 216, letter is ANSI/ASME Y14.1 size A. A bleed of 3 mm, or an eighth of an inch, is what
# printing houses ask for.
PAGE_SIZES: Mapping[str, PageSize] = MappingProxyType(
    {
        "half": PageSize(width="5.5in", height="8.5in", type="small", bleed="0.125in"),
        "a5": PageSize(width="148mm", height="210mm", type="small", bleed="3mm"),
        "letter": PageSize(width="8.5in", height="11in", type="large", bleed="0.125in"),
        "a4": PageSize(width="210mm", height="297mm", type="large", bleed="3mm"),
    }
)
_HALF: Mapping[Paper, str] = MappingProxyType({"letter": "half", "a4": "a5"})


def usual_size(paper: Paper) -> str:
    """Half of the site's paper: two pages lie on a sheet, which is folded."""
    return _HALF[paper]
