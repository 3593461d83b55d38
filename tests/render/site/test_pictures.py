"""A photograph in a page: the widths it is offered in, and what stays in sight where a sheet cuts it."""

from pathlib import Path

import pytest

from generator.present.views import PhotoView
from generator.render.site.pictures import Picture, list_picture_of, picture_of

SITE = Path(__file__).parents[3] / "themes"


def _photo(width: int, height: int, focus: tuple[int, int]) -> PhotoView:
    return PhotoView(
        path="media/a.jpg", source="media/a.jpg", text="A.", width=width, height=height, url="", focus=focus
    )


@pytest.mark.parametrize(
    ("focus", "classes"),
    [((50, 50), ""), ((40, 60), ""), ((30, 88), "x25 y100"), ((0, 50), "x0"), ((100, 70), "x100 y75")],
)
def test_a_large_picture_says_where_the_eye_should_rest(focus: tuple[int, int], classes: str) -> None:
    assert picture_of(_photo(1200, 2000, focus), page="").focus == classes


@pytest.mark.parametrize(
    ("focus", "classes"),
    [((50, 88), "y75"), ((50, 50), ""), ((50, 100), "y100"), ((20, 40), "x25"), ((50, 5), "y0")],
)
def test_a_picture_cut_for_lists_says_it_from_within_the_cut(focus: tuple[int, int], classes: str) -> None:
    """1200 x 2000 is cut to 1200 x 900: a point at 88 percent is 1760 down, and the cut begins at 1100."""
    assert list_picture_of(_photo(1200, 2000, focus), page="").focus == classes


@pytest.mark.parametrize("theme", ["docket", "rack"])
def test_every_theme_knows_the_classes(theme: str) -> None:
    rules = (SITE / theme / "site" / "1-ground.css").read_text(encoding="utf-8")
    axes = "y" if theme == "docket" else "xy"
    assert "object-position" in rules
    for axis in axes:
        assert [q for q in (0, 25, 75, 100) if f".{axis}{q} {{ --{axis}: {q}%; }}" not in rules] == []


def test_the_docket_cuts_pictures_only_above_and_below() -> None:
    """So it needs no rule for the other direction: each of its pictures is as wide as its place."""
    sheets = [(SITE / "docket" / "site" / name).read_text("utf-8") for name in ("2-docket.css", "lists.css")]
    cut = [line for sheet in sheets for line in sheet.splitlines() if "object-fit: cover" in line]
    assert cut
    assert [line for line in cut if "width: 100%" not in line or "aspect-ratio" in line] == []


def test_a_large_picture_and_one_in_a_list_offer_their_own_widths() -> None:
    photo = _photo(1600, 1200, (50, 50))
    assert _widths(picture_of(photo, page="")) == ["720w", "1080w", "1600w"]
    assert _widths(list_picture_of(photo, page="")) == ["600w", "900w"]
    small = _photo(480, 360, (50, 50))
    assert picture_of(small, page="").choices == list_picture_of(small, page="").choices == "media/a.jpg 480w"


def _widths(shot: Picture) -> list[str]:
    return [each.split()[1] for each in shot.choices.split(",")]
