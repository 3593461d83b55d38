"""The focal point of a photograph: what is understood, and what is said of the rest."""

from pathlib import Path

import pytest

from generator.pipeline import check_folder
from tests.render.test_photographs import picture

RECIPE = """---
title: {title}
photo: media/loaf.jpg
photo_text: A loaf.
{more}formula: [500 g bread flour]
---
## Method
1. Bake the {{bread flour}}.
"""
SITE = "title: Bakes\nmaker: A Baker\nurl: https://bakes.example/\n"


@pytest.fixture
def content(tmp_path: Path) -> Path:
    root = tmp_path / "content"
    (root / "recipes").mkdir(parents=True)
    (root / "media").mkdir()
    (root / "site.yaml").write_text(SITE)
    (root / "media" / "loaf.jpg").write_bytes(picture(80, 60))
    return root


def lay(content: Path, name: str, more: str) -> None:
    text = RECIPE.format(title=name.capitalize(), more=f"{more}\n" if more else "")
    (content / "recipes" / f"{name}.md").write_text(text)


@pytest.mark.parametrize(
    ("written", "focus"),
    [
        ("", (50, 50)),
        ("photo_focus: 30% 60%", (30, 60)),
        ("photo_focus: 30 % 60 %", (30, 60)),
        ("photo_focus: 30, 60", (30, 60)),
        ("photo_focus: 0% 100%", (0, 100)),
        ("photo_focus: 33.4% 66.6%", (33, 67)),
    ],
)
def test_a_focal_point_is_two_percents(content: Path, written: str, focus: tuple[int, int]) -> None:
    lay(content, "loaf", written)
    photo = check_folder(content).views["loaf"].photo
    assert photo is not None
    assert photo.focus == focus


@pytest.mark.parametrize("written", ["left", "30%", "130% 20%", "20% 101%", "-3% 4%", "1% 2% 3%"])
def test_what_is_no_place_is_said_where_it_stands(content: Path, written: str) -> None:
    lay(content, "loaf", f"photo_focus: {written}")
    (found,) = (each for each in check_folder(content).diagnostics if each.code == "S083")
    assert (found.span.path, found.span.line, found.span.column) == ("recipes/loaf.md", 5, 14)
    assert found.message == f"“{written}” is no place in a photograph"
    assert "photo_focus: 30% 60%" in found.hint


def test_a_photograph_has_one_focal_point_wherever_it_is_shown(content: Path) -> None:
    lay(content, "bun", "photo_focus: 10% 20%")
    lay(content, "loaf", "")
    views = check_folder(content).views
    assert [views[name].photo.focus for name in ("bun", "loaf")] == [(10, 20), (10, 20)]  # type: ignore[union-attr]


def test_two_focal_points_of_one_photograph_are_an_error(content: Path) -> None:
    lay(content, "bun", "photo_focus: 10% 20%")
    lay(content, "loaf", "photo_focus: 30% 60%")
    (found,) = (each for each in check_folder(content).diagnostics if each.code == "S084")
    assert (found.span.path, found.span.line, found.span.column) == ("recipes/loaf.md", 5, 14)
    assert found.message == "“media/loaf.jpg” has another focal point elsewhere: 10% 20%"
