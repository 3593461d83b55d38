"""A small fuzzer that is guided by coverage: what reaches a new line of ours is kept and changed further.

    python -m tests.hostile.fuzz SECONDS SEED

Prints how many inputs were tried, how many reached something new, and every fault with the input that shows it.
"""

import random
import shutil
import sys
import tempfile
import time
from collections.abc import Callable, Mapping
from pathlib import Path
from types import FrameType
from typing import Any

from generator.asked.incoming import arrive, kitchen_of
from generator.declaration.pack import read_pack
from generator.diagnostics.text import as_text
from generator.formula.line import read_line
from generator.measure.unit import SPOONS
from generator.pipeline import check_folder
from generator.render.rich_text import prose_html
from tests.formula.kitchen import place

ROOT = Path(__file__).parents[2]
STARTER = ROOT / "generator" / "cli" / "starter"
SIGNS = "{}[]()<>:;,.-+=&*!|%@`'\"\\/#\n\t\0 \u202e\ufeff½٣²⁄�" + "09azg"
PIECES = ("1e999", "1/0", "9" * 400, "{water}", "---\n", "&a ", "*a", "<<: ", "## Method\n", "- ", "1 g ")
SLOW = 5.0
"""Seconds of an input while every line is watched, which takes several times as long as without."""
RECORD = """\
recipe: saturday-tin-loaf
day: 2026-11-08
revision: 1
room: 66 F
weather: two days of rain
added:
  - {what: bread flour, amount: 10 g, when: after 8 min of kneading}
dough: 1031 g
"""
OLD_TEXT = """\
SODA LOAF | bake with me
https://www.example.org/soda

INGREDIENTS (1 loaf):
1 1/2 cups (190 g) flour, sifted
½ tsp fine salt plus 1 tsp for the tin
0:00 Start
2:10 The dough

METHOD
1. Mix it all. 2. Bake at 220 C (425 F) for 35-40 minutes.
#bread
"""
OLD_PAGE = """\
<html><head><title>Soda loaf</title><script type="application/ld+json">{"@context": "https://schema.org",
"@type": "Recipe", "name": "Soda loaf", "recipeIngredient": ["190 g flour", "1 tsp salt"],
"recipeInstructions": [{"@type": "HowToStep", "text": "Bake 40 minutes."}], "totalTime": "PT1H"}</script></head>
<body><h1>Soda loaf</h1><ul><li>190 g flour</li></ul></body></html>
"""
Place = tuple[str, int]


def changed(text: str, chance: random.Random, others: list[str]) -> str:
    for _ in range(chance.randint(1, 4)):
        at = chance.randint(0, len(text))
        end = min(len(text), at + chance.choice((0, 1, 3, 20)))
        other = chance.choice(others)
        cut = chance.randint(0, len(other))
        new = chance.choice(
            (chance.choice(SIGNS), chance.choice(PIECES), text[at:end] * 3, "", other[cut : cut + 30])
        )
        text = text[:at] + new + text[end:]
    return text[:20_000]


def covered(work: Callable[[str], object], text: str) -> set[Place]:
    """The places of ours that the work passes through, by function and line."""
    seen: set[Place] = set()

    def look(frame: FrameType, event: str, _: Any) -> Any:
        if "generator/" not in frame.f_code.co_filename:
            return None
        seen.add((frame.f_code.co_filename, frame.f_lineno))
        return look

    sys.settrace(look)
    try:
        work(text)
    finally:
        sys.settrace(None)
    return seen


def whole_folder(path: str) -> Callable[[str], object]:
    def work(text: str) -> None:
        with tempfile.TemporaryDirectory() as folder:
            file = Path(folder) / path
            file.parent.mkdir(parents=True, exist_ok=True)
            file.write_bytes(text.encode("utf-8", "surrogatepass"))
            result = check_folder(Path(folder))
            as_text(result.diagnostics, result.texts)

    return work


def beside_a_recipe(path: str) -> Callable[[str], object]:
    """The text as one file of a whole content folder, which is checked with it."""

    def work(text: str) -> None:
        with tempfile.TemporaryDirectory() as folder:
            content = Path(folder) / "content"
            shutil.copytree(STARTER, content, ignore=shutil.ignore_patterns("media", "journal"))
            (content / path).parent.mkdir(exist_ok=True)
            (content / path).write_bytes(text.encode("utf-8", "surrogatepass"))
            result = check_folder(content)
            as_text(result.diagnostics, result.texts)

    return work


def brought(name: str) -> Callable[[str], object]:
    kitchen = kitchen_of(check_folder(STARTER))
    return lambda text: arrive(name, text.encode("utf-8", "surrogatepass"), kitchen)


def targets() -> Mapping[str, tuple[Callable[[str], object], list[str]]]:
    recipe = (STARTER / "recipes" / "saturday-tin-loaf.md").read_text("utf-8")
    article = (STARTER / "journal" / "a-first-loaf.md").read_text("utf-8")
    return {
        "recipe": (whole_folder("recipes/a.md"), [recipe]),
        "article": (whole_folder("journal/a.md"), [article]),
        "pantry": (whole_folder("pantry.yaml"), [(STARTER / "pantry.yaml").read_text("utf-8")]),
        "settings": (whole_folder("site.yaml"), [(STARTER / "site.yaml").read_text("utf-8")]),
        "ledger": (
            whole_folder("ledger.jsonl"),
            [(ROOT / "content" / "ledger.jsonl").read_text("utf-8")[:4000]],
        ),
        "line": (
            lambda text: read_line(text, place, spoons=SPOONS["us"]),
            ["1 1/2 cups (190 g) flour, sifted"],
        ),
        "pack": (
            read_pack,
            ["Wheat flour (wheat, niacin), soya lecithin 2%, milk powder. May contain: nuts, sesame."],
        ),
        "bake record": (beside_a_recipe("bakes/2026-11-08-saturday-tin-loaf.yaml"), [RECORD]),
        "people": (
            beside_a_recipe("private/people.yaml"),
            ["Zofya:\n  avoids: [milk, tree nuts]\n  note: a\n"],
        ),
        "old text": (brought("old.txt"), [OLD_TEXT]),
        "old page": (brought("old.html"), [OLD_PAGE]),
        "old table": (brought("old.csv"), ['name,text\nSoda loaf,"500 g flour\n1 tsp salt\nBake 40 min."\n']),
        "markdown": (lambda text: prose_html(text, level=2, place=str), [article]),
    }


def fuzz(name: str, seconds: float, seed: int) -> tuple[int, int, list[str]]:
    """Inputs tried, inputs that reached something new, faults."""
    work, kept = targets()[name]
    chance, known, faults, tried = random.Random(seed), set[Place](), list[str](), 0
    for text in kept:
        work(text)  # loads what is loaded once, which would drown what an input reaches
    until = time.monotonic() + seconds
    while time.monotonic() < until and len(faults) < 5:
        text, begun = changed(chance.choice(kept), chance, kept), time.process_time()
        tried += 1
        try:
            seen = covered(work, text)
        except Exception as fault:  # any at all is what is looked for
            faults.append(f"{name}: {fault!r} by {text!r}")
            continue
        if time.process_time() - begun > SLOW:
            faults.append(f"{name}: slow by {text!r}")
        if not seen <= known:
            known |= seen
            kept.append(text)
    return tried, len(kept), faults


if __name__ == "__main__":
    for target in targets():
        print(target, *fuzz(target, float(sys.argv[1]), int(sys.argv[2])))
