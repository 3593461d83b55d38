"""A small content folder, invented, with a component, a preferment, a pantry, a post and a page; and edits of it."""

import random
import shutil
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import date, timedelta
from pathlib import Path

from generator.build.cache import Cache
from generator.diagnostics.diagnostic import Diagnostics
from generator.pipeline import MakeResult, make_folder
from generator.publication.making import How
from generator.publication.memory import same_as_last

PAPER = frozenset({"tags", "bench sheets", "overlays", "posters", "chapter cards", "formula sheets", "cards"})
"""Stages that take seconds for each bake."""

SITE = """\
title: The Small Oven
lead: Three bakes and a note.
maker: Orla Testwell
url: https://small-oven.example/
"""
PANTRY = """\
bread flour:
  label: Bread flour (wheat flour)
  contains: [wheat]
  checked: 2026-10-01
butter:
  label: Butter (cream, salt)
  contains: [milk]
  checked: 2026-10-01
"""
LOAF = """\
---
title: Plain loaf
lead: A tin loaf.
published: 2026-10-02
kinds: [bread]
makes: 1 loaf
formula:
  sponge:
    preferment: sponge
    lines:
      - {line: 200 g night sponge, recipe: night-sponge}
  dough:
    - 400 g bread flour
    - 250 g water
    - 8 g salt
---
A loaf for every day.

## Method
1. Mix the {night sponge}, {bread flour}, {water} and {salt}. {rise 1 h}.
2. Bake {bake 40 min} at {oven 220 C}.
"""
SPONGE = """\
---
title: Night sponge
published: 2026-10-01
formula:
  - 100 g bread flour
  - 100 g water
  - 1/4 tsp instant yeast
---
## Method
1. Stir the {bread flour}, {water} and {instant yeast}. {rest 12 h}.
"""
SQUARES = """\
---
title: Oat squares
lead: Chewy.
published: 2026-10-05
kinds: [bars]
tin: square 20 cm
formula:
  - 150 g butter
  - 200 g rolled oats
  - 100 g honey
---
## Method
1. Melt the {butter} with the {honey}, stir in the {rolled oats}.
2. Bake {bake 25 min} at {oven 350 F}.
"""
POST = """\
---
title: On oats
published: 2026-10-06
bakes: [oat-squares]
---
Read the pack.
"""
LATER = "recipes/spare-loaf.md"


def lay(root: Path) -> Path:
    texts = {
        "site.yaml": SITE,
        "pantry.yaml": PANTRY,
        "recipes/plain-loaf.md": LOAF,
        "recipes/night-sponge.md": SPONGE,
        "recipes/oat-squares.md": SQUARES,
        "journal/on-oats.md": POST,
        "standing/about.md": "---\ntitle: About\n---\nOne oven.\n",
    }
    for path, text in texts.items():
        (root / path).parent.mkdir(parents=True, exist_ok=True)
        (root / path).write_text(text, encoding="utf-8")
    return root


@dataclass(slots=True)
class Kitchen:
    """The folder, the place it is made into again and again, and the day."""

    folder: Path
    without: frozenset[str] = PAPER
    day: date = date(2026, 11, 1)
    count: int = 0
    cache: Cache = field(init=False)

    def __post_init__(self) -> None:
        lay(self.content)
        self.cache = Cache(root=self.folder / "cache")

    @property
    def content(self) -> Path:
        return self.folder / "content"

    @property
    def output(self) -> Path:
        return self.folder / "output"

    def make(self) -> MakeResult:
        how = How(cache=self.cache, without=self.without)
        return make_folder(self.content, output=self.output, day=self.day, how=how)

    def clean(self) -> tuple[Mapping[str, bytes], Diagnostics]:
        """What a first make without a cache gives."""
        fresh = self.folder / "fresh"
        how = How(cache=Cache(root=None), without=self.without)
        made = make_folder(self.content, output=fresh, day=self.day, how=how)
        files = files_in(fresh)
        shutil.rmtree(fresh, ignore_errors=True)
        return files, made.diagnostics

    def same(self) -> bool:
        return same_as_last(self.content, self.output, day=self.day, cache=self.cache) is not None

    def change(self, path: str, old: str, new: str) -> None:
        file = self.content / path
        text = file.read_text(encoding="utf-8")
        assert old in text
        file.write_text(text.replace(old, new, 1), encoding="utf-8")


def files_in(root: Path) -> Mapping[str, bytes]:
    return {
        path.relative_to(root).as_posix(): path.read_bytes()
        for path in sorted(root.rglob("*"))
        if path.is_file()
    }


Edit = Callable[[Kitchen, random.Random], None]


def _number_after(text: str, line: str) -> str:
    return next(each for each in text.splitlines() if each.endswith(line))


def _amount(path: str, item: str) -> Edit:
    def edit(kitchen: Kitchen, chance: random.Random) -> None:
        old = _number_after((kitchen.content / path).read_text(encoding="utf-8"), f" g {item}")
        kitchen.change(path, old, old[: old.index("- ") + 2] + f"{chance.randint(90, 400)} g {item}")

    return edit


def _lead(kitchen: Kitchen, chance: random.Random) -> None:
    text = (kitchen.content / "recipes/oat-squares.md").read_text(encoding="utf-8")
    kitchen.change(
        "recipes/oat-squares.md", _starting(text, "lead:"), f"lead: Chewy, {chance.randint(1, 999)} times."
    )


def _title(kitchen: Kitchen, chance: random.Random) -> None:
    """Of a component: it stands on the pages of the bakes that use it."""
    text = (kitchen.content / "recipes/night-sponge.md").read_text(encoding="utf-8")
    kitchen.change(
        "recipes/night-sponge.md", _starting(text, "title:"), f"title: Sponge {chance.randint(1, 999)}"
    )


def _starting(text: str, start: str) -> str:
    return next(each for each in text.splitlines() if each.startswith(start))


def _pantry(kitchen: Kitchen, chance: random.Random) -> None:
    text = (kitchen.content / "pantry.yaml").read_text(encoding="utf-8")
    old = next(each for each in text.splitlines() if each.startswith("  label: Butter"))
    kitchen.change("pantry.yaml", old, f"  label: Butter {chance.randint(1, 999)} (cream, salt)")


def _longer_pantry(kitchen: Kitchen, chance: random.Random) -> None:
    """A line more above a row: everything below stands elsewhere."""
    kitchen.change("pantry.yaml", "bread flour:", f"# note {chance.randint(1, 999)}\nbread flour:")


def _never_read(kitchen: Kitchen, chance: random.Random) -> None:
    """A finding that names all bakes of a pack comes and goes."""
    text = (kitchen.content / "pantry.yaml").read_text(encoding="utf-8")
    old, new = "  checked: 2026-10-01\nbutter", "  note: unread\nbutter"
    kitchen.change("pantry.yaml", *((old, new) if old in text else (new, old)))


def _setting(kitchen: Kitchen, chance: random.Random) -> None:
    text = (kitchen.content / "site.yaml").read_text(encoding="utf-8")
    kitchen.change("site.yaml", _starting(text, "lead:"), f"lead: Bakes and {chance.randint(1, 999)} notes.")


def _post(kitchen: Kitchen, chance: random.Random) -> None:
    kitchen.change("journal/on-oats.md", "Read", f"Well, {chance.randint(1, 999)}. Read")


def _add_or_delete(kitchen: Kitchen, chance: random.Random) -> None:
    file = kitchen.content / LATER
    if file.exists():
        file.unlink()
    else:
        file.write_text(LOAF.replace("Plain loaf", f"Spare loaf {chance.randint(1, 999)}"), encoding="utf-8")


def _day(kitchen: Kitchen, chance: random.Random) -> None:
    kitchen.day += timedelta(days=chance.choice((1, 30, 200)))


def _unpublish(kitchen: Kitchen, chance: random.Random) -> None:
    text = (kitchen.content / "recipes/oat-squares.md").read_text(encoding="utf-8")
    day = chance.choice(("2026-10-05", "2027-12-01"))
    kitchen.change("recipes/oat-squares.md", _starting(text, "published:"), f"published: {day}")


def _spoilt_output(kitchen: Kitchen, chance: random.Random) -> None:
    """Somebody edits what was made."""
    (kitchen.output / "site" / "index.html").write_text("edited by hand", encoding="utf-8")


def _touch(kitchen: Kitchen, chance: random.Random) -> None:
    (kitchen.content / "recipes/plain-loaf.md").touch()


EDITS: Mapping[str, Edit] = {
    "amount": _amount("recipes/oat-squares.md", "rolled oats"),
    "amount of a component": _amount("recipes/night-sponge.md", "water"),
    "amount of a user": _amount("recipes/plain-loaf.md", "water"),
    "lead": _lead,
    "title of a component": _title,
    "pantry row": _pantry,
    "pantry lines move": _longer_pantry,
    "pack no longer read": _never_read,
    "setting": _setting,
    "post": _post,
    "add or delete": _add_or_delete,
    "day": _day,
    "publish or not": _unpublish,
    "output edited": _spoilt_output,
    "touched": _touch,
}
