"""A small content folder to correct, in any layout that a maker's editor may leave behind."""

import shutil
from datetime import date
from pathlib import Path

from generator.amend.answer import Asked, Refused
from generator.amend.plan import Plan, plan_correction
from generator.amend.standing import Standing, read_standing
from generator.source.write import commit

DAY = date(2026, 11, 25)
SAMPLE = Path(__file__).parents[1] / "present" / "sample"
SITE = "title: A small book\nmaker: M. Reed\nurl: https://book.example\ncontact: post@book.example\n"
RECIPE = """\
---
title: Plain loaf
published: 2026-09-12
formula:
  - 300 g (1 1/4 cups) water
  - 500 g (4 cups) all-purpose flour
  - 2 large eggs
  - 10 g table salt
---
## Method
1. Mix the {water}, the {all-purpose flour}, the {eggs} and the {table salt}. {bake 30 min} at {oven 400 F}.
"""


def lay(root: Path, **recipes: str | bytes) -> Path:
    """A content folder with these recipes, underscores for hyphens in their names."""
    (root / "recipes").mkdir(parents=True)
    (root / "site.yaml").write_text(SITE, encoding="utf-8")
    for name, text in recipes.items():
        data = text if isinstance(text, bytes) else text.encode()
        (root / "recipes" / f"{name.replace('_', '-')}.md").write_bytes(data)
    return root


def lay_sample(root: Path) -> Path:
    """The sample kitchen: a braid with candied peel, which is a recipe of its own, and a pantry."""
    shutil.copytree(SAMPLE, root, ignore=shutil.ignore_patterns("*.py", "__pycache__"))
    (root / "media").mkdir(exist_ok=True)
    for file in (root / "recipes").glob("*.md"):
        text = file.read_text(encoding="utf-8")
        kept = [line for line in text.split("\n") if not line.startswith(("photo:", "photo_text:"))]
        file.write_text("\n".join(kept), encoding="utf-8", newline="")
    return root


def asked(recipe: str, what: str, new: str, **more: object) -> Asked:
    return Asked(recipe=recipe, what=what, new=new, **{"why": "Too wet.", "on": DAY, **more})  # type: ignore[arg-type]


def standing(root: Path) -> Standing:
    return read_standing(root, day=DAY)


def plan(root: Path, recipe: str, what: str, new: str, **more: object) -> Plan | Refused:
    return plan_correction(standing(root), asked(recipe, what, new, **more))


def planned(root: Path, recipe: str, what: str, new: str, **more: object) -> Plan:
    found = plan(root, recipe, what, new, **more)
    assert isinstance(found, Plan), found
    return found


def write(root: Path, made: Plan) -> None:
    assert commit(root, made.changes) == ()
