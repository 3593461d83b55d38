"""A small content folder: a loaf with a film, a peel that goes into it, and a pantry."""

from datetime import date
from pathlib import Path

from generator.history.ledger import LEDGER, appended, read_ledger
from generator.pipeline import CheckResult, check_folder
from generator.records.posting import Marked, Wish, mark

DAY = date(2026, 11, 25)
SITE = """\
title: A small book
maker: M. Reed
url: https://book.example
contact: post@book.example
kitchen_handles: [wheat]
"""
PANTRY = """\
bread flour: {label: "Bread flour (wheat flour, malted barley flour)", contains: [wheat, barley], checked: 2026-11-01}
"""
PEEL = """\
---
title: Candied peel
published: 2026-09-01
weighs: 260 g
formula:
  - 200 g orange
  - 200 g granulated sugar
---
## Method
1. Cook the {orange} with the {granulated sugar}. {cook 40 min}
"""
LOAF = """\
---
title: Plain loaf
published: 2026-09-12
makes: 1 loaf
formula:
  dough:
    - 300 g water
    - 430 g (3 1/3 cups) bread flour
    - 10 g table salt
    - 7 g instant yeast
    - {line: 40 g candied peel, recipe: candied-peel}
videos:
  - url: https://video.example/w/loaf
corrections:
  - on: 2026-09-20
    change: dough/bread flour 400 g -> 430 g
    why: Too wet.
---
## Method
1. Mix the {water}, {bread flour}, {table salt}, {instant yeast} and {candied peel}. {knead 12 min} {rise 1 h}
2. Bake {bake 30 min} at {oven 400 F}.
"""


def lay(root: Path, *, loaf: str = LOAF, peel: str = PEEL, pantry: str = PANTRY) -> Path:
    (root / "recipes").mkdir(parents=True)
    files = {
        "site.yaml": SITE,
        "pantry.yaml": pantry,
        "recipes/loaf.md": loaf,
        "recipes/candied-peel.md": peel,
    }
    for path, text in files.items():
        (root / path).write_text(text, encoding="utf-8", newline="")
    return root


def checked(root: Path, *, day: date = DAY) -> CheckResult:
    return check_folder(root, day=day)


def swap(root: Path, old: str, new: str, *, path: str = "recipes/loaf.md") -> None:
    """Changes a file as a hand in an editor does."""
    text = (root / path).read_text(encoding="utf-8")
    assert old in text
    (root / path).write_text(text.replace(old, new), encoding="utf-8", newline="")


def posted(root: Path, place: str, *, on: date = DAY, **more: object) -> Marked:
    """Marks a copy of the loaf, and appends what that gives to the ledger."""
    wish = Wish(**{"recipe": "loaf", "place": place, "on": on, **more})  # type: ignore[arg-type]
    marked = mark(root, checked(root), wish)
    file = root / LEDGER
    before = file.read_bytes() if file.exists() else b""
    if marked.events:
        file.write_bytes(appended(before, marked.events))
    assert read_ledger(file.read_text(encoding="utf-8") if file.exists() else "")[1] == ()
    return marked
