"""Who can eat what, by the packs as they were last read and by those of the newest bake day."""

from datetime import date
from pathlib import Path

from generator.pipeline import check_folder

FILES = {
    "site.yaml": "title: A shelf\nmaker: Wynne\nurl: https://shelf.example/\n",
    "pantry.yaml": """\
bread flour:
  label: Bread flour (wheat flour)
  contains: [wheat]
  checked: 2026-09-01
strong flour of the mill:
  is: bread flour
  label: Strong flour (wheat flour, sesame)
  contains: [wheat, sesame]
  checked: 2026-12-01
""",
    "recipes/mill-loaf.md": """\
---
title: Mill loaf
formula:
  - 500 g bread flour
  - 300 g water
  - 10 g table salt
---
## Method
1. Mix the {bread flour}, {water} and {table salt}. {bake 30 min} at {oven 350 F}.
""",
    "private/people.yaml": "Ilka:\n  avoids: [sesame]\n",
    "bakes/2026-12-20-mill-loaf.yaml": "packs: [strong flour of the mill]\n",
    "bakes/2027-01-05-mill-loaf.yaml": "packs: [bread flour]\n",
}


def rows(folder: Path, *, without: str = "") -> list[tuple[str, str, str]]:
    for path, text in FILES.items():
        if path != without:
            (folder / path).parent.mkdir(parents=True, exist_ok=True)
            (folder / path).write_text(text, encoding="utf-8")
    view = check_folder(folder, day=date(2026, 12, 24)).who_can_eat
    assert view is not None
    return [(row.title, row.cells[0].state, row.basis) for row in view.rows]


def test_a_bake_with_a_record_stands_there_twice_and_says_by_which_packs(tmp_path: Path) -> None:
    """A record of a day to come is not looked at."""
    assert rows(tmp_path) == [
        ("Mill loaf", "not stated", "Packs assumed, as last read: bread flour (Sep 1, 2026)."),
        (
            "Mill loaf",
            "contains",
            "As baked on December 20, 2026. Packs of the day: strong flour of the mill.",
        ),
    ]


def test_without_a_record_a_bake_stands_there_once(tmp_path: Path) -> None:
    assert len(rows(tmp_path, without="bakes/2026-12-20-mill-loaf.yaml")) == 1
