"""A whole story, every output read back at each step.

Publish, bake twice with additions, correct, rebuild, `due`, post, correct a component, `due` again. The short one
makes all that is text; the long one makes everything, and lets `check --built` judge it.
"""

import json
import re
import shlex
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from xml.etree import ElementTree

import pytest

from generator.cli.main import main
from generator.pipeline import check_folder
from tests.tasks import SITE as PAGES
from tests.tasks import made_by

Capture = pytest.CaptureFixture[str]
ATOM = "{http://www.w3.org/2005/Atom}"
MAP = "{http://www.sitemaps.org/schemas/sitemap/0.9}"
URL = "https://book.example/recipes/mill-loaf/"
SITE = """\
title: A small book
maker: M. Reed
url: https://book.example/
language: en-GB
region: EU
zone: UTC
"""
PANTRY = """\
bread flour: {label: "Bread flour (wheat flour)", contains: [wheat], checked: 2026-09-01}
walnuts: {label: Walnuts, contains: [walnut], checked: 2026-09-01}
"""
PEEL = """\
---
title: Candied peel
published: 2026-09-01
weighs: 260 g
formula:
  - 200 g orange peel
  - 200 g granulated sugar
---
## Method
1. Cook the {orange peel} with the {granulated sugar}. {cook 40 min}
"""
LOAF = """\
---
title: Mill loaf
published: 2026-09-12
makes: 1 loaf
bakes_off: 12 %
formula:
  dough:
    - 276 g water
    - 400 g (3 1/4 cups) bread flour   # of the mill
    - 10 g table salt
    - 7 g instant yeast
    - {line: 52 g candied peel, recipe: candied-peel}
videos:
  - url: https://video.example/w/loaf
    published: 2026-09-12T15:00-05:00
    length: 12:00
    chapters:
      0:00: Hello
      1:20: Weighing out
      6:00: Baking
---
## Method
1. Mix the {water}, {bread flour}, {table salt}, {instant yeast} and {candied peel}. {knead 12 min} {rise 1 h}
2. Bake {bake 30 min} at {oven 200 C}.
"""
NEW_CUPS = "3½ cups"
SENTENCE = (
    f"bread flour 400 g (3¼ cups) → 431 g ({NEW_CUPS}), because it took 31 g more "
    "at the bake of 19 September 2026 (damp, 72 %)."
)


@dataclass(slots=True, kw_only=True)
class Kitchen:
    """The folder, and what a step of the story made and told."""

    root: Path
    capsys: Capture
    publish: Callable[["Kitchen", str], dict[str, bytes]]

    def run(self, day: str, *words: str, code: int = 0) -> str:
        self.capsys.readouterr()
        assert main([*words, "--content", str(self.root), "--day", day]) == code, self.capsys.readouterr()
        told = self.capsys.readouterr()
        return told.out if told.out else told.err

    def made(self, day: str) -> "Made":
        return Made(files=self.publish(self, day))


@dataclass(frozen=True, slots=True, kw_only=True)
class Made:
    files: dict[str, bytes]

    def page(self, path: str = "recipes/mill-loaf/") -> str:
        """The words of a page, without its marks."""
        html = re.sub(r"(?s)<(script|style).*?</\1>", " ", self.files[f"site/{path}index.html"].decode())
        blocks = re.sub(r"</?(?:p|li|d[tdl]|div|h[1-6]|ul|ol|section|header|td|th)\b[^>]*>", " ", html)
        return " ".join(re.sub(r"<[^>]+>", "", blocks).replace("\u00a0", " ").split())

    def html(self) -> str:
        return self.files["site/recipes/mill-loaf/index.html"].decode()

    def numbers(self, name: str = "mill-loaf") -> dict[str, object]:
        read: dict[str, object] = json.loads(self.files[f"site/recipes/{name}/recipe.json"])
        return read

    def flour(self) -> object:
        parts = self.numbers()["parts"]
        assert isinstance(parts, list)
        return next(line["grams"] for line in parts[0]["lines"] if line["item"] == "bread flour")

    def structured(self) -> dict[str, object]:
        block = re.search(r'(?s)<script type="application/ld\+json">(.*?)</script>', self.html())
        assert block is not None
        graph = json.loads(block[1])["@graph"]
        found: dict[str, object] = next(each for each in graph if each["@type"] == "Recipe")
        return found

    def entry(self) -> dict[str, str]:
        """The bake in both feeds, which must agree."""
        feed = ElementTree.fromstring(self.files["site/feed.xml"])
        atom = next(each for each in feed.iter(f"{ATOM}entry") if each.findtext(f"{ATOM}id") == URL)
        items = json.loads(self.files["site/feed.json"])["items"]
        item = next(each for each in items if each["id"] == URL)
        updated = atom.findtext(f"{ATOM}updated") or ""
        assert item.get("date_modified", item["date_published"]) == updated
        assert item["content_html"] == atom.findtext(f"{ATOM}content")
        return {"updated": updated[:10], "content": item["content_html"], "summary": item.get("summary", "")}

    def changed_on(self, path: str) -> str | None:
        pages = ElementTree.fromstring(self.files["site/sitemap.xml"])
        found = next(each for each in pages if each.findtext(f"{MAP}loc") == f"https://book.example/{path}")
        return found.findtext(f"{MAP}lastmod")


def as_text(kitchen: Kitchen, day: str) -> dict[str, bytes]:
    """Everything that is text, as `make` would make it."""
    result = check_folder(kitchen.root, day=date.fromisoformat(day))
    assert [each for each in result.diagnostics if each.severity.value == "error"] == []
    return dict(made_by(result, *PAGES, ": numbers"))


def as_made(kitchen: Kitchen, day: str) -> dict[str, bytes]:
    """Everything, by the command; then `check --built` reads it back."""
    output = kitchen.root.parent / "output"
    kitchen.run(day, "make", "--output", str(output))
    kitchen.run(day, "check", "--built", str(output))
    files = (each for each in output.rglob("*") if each.is_file())
    return {each.relative_to(output).as_posix(): each.read_bytes() for each in files}


def lay(root: Path) -> Path:
    (root / "recipes").mkdir(parents=True)
    (root / "site.yaml").write_text(SITE)
    (root / "pantry.yaml").write_text(PANTRY)
    (root / "recipes" / "candied-peel.md").write_text(PEEL)
    (root / "recipes" / "mill-loaf.md").write_bytes(LOAF.replace("\n", "\r\n").encode())
    return root


def published(kitchen: Kitchen) -> None:
    made = kitchen.made("2026-09-12")
    assert made.flour() == [400, 400]
    assert "Corrected" not in made.page()
    assert "id=since-1" in made.html()
    assert made.structured()["dateModified"] == "2026-09-12"
    assert made.entry()["updated"] == "2026-09-12"
    assert "400 g (3¼ cups) bread flour" in kitchen.run("2026-09-12", "describe", "mill-loaf")
    kitchen.run("2026-09-12", "describe", "mill-loaf", "--correction", code=1)
    for place in ("page", "description", "newsletter"):
        kitchen.run("2026-09-12", "posted", "mill-loaf", place)
    kitchen.run("2026-09-13", "posted", "mill-loaf", "card", "--to", "Aunt Ro")
    kitchen.run("2026-09-13", "posted", "candied-peel", "page")
    assert kitchen.run("2026-09-13", "due").startswith("2026-09-13: no copy is stale")


def baked_twice(kitchen: Kitchen) -> str:
    """Two bake days; gives the correction that the second one offers."""
    for day, amounts, weather in (
        ("2026-09-15", ("10 g", "10 g"), "dry, 40 %"),
        ("2026-09-19", ("10 g", "10 g", "11 g"), "damp, 72 %"),
    ):
        for amount in amounts:
            kitchen.run(day, "baked", "mill-loaf", "--add", f"{amount} bread flour, kneading")
        kitchen.run(day, "baked", "mill-loaf", "--weather", weather, "--dough", "740 g", "--baked", "650 g")
    done = kitchen.run("2026-09-19", "baked", "mill-loaf", "--done")
    assert "bread flour 400 g, +31 g in 3 additions, hydration 69 % → 64 %" in done
    assert "dough 745 g → 776 g, 740 g on the scale; after baking 650 g (-12.2 %)" in done
    compared = kitchen.run("2026-09-20", "baked", "mill-loaf", "--compare")
    assert "bread flour: +20 g, +31 g; mean +26 g, spread 7.8 g (n = 2)" in compared
    assert "40 %  +20 g bread flour" in compared
    return next(line.strip() for line in done.splitlines() if line.startswith("  tinleaf correct "))


def corrected(kitchen: Kitchen, offered: str) -> None:
    before = (kitchen.root / "recipes" / "mill-loaf.md").read_bytes()
    words = shlex.split(offered)[1:]
    kitchen.run("2026-09-20", *words, "--film", "400 g at 1:25")
    after = (kitchen.root / "recipes" / "mill-loaf.md").read_bytes()
    assert b"431 g" in after
    assert after.count(b"\n") == after.count(b"\r\n")
    assert b"# of the mill" in after
    for line in before.split(b"\r\n"):
        assert line in after or b"400 g" in line
    made = kitchen.made("2026-09-20")
    reads_corrected(made)
    note = kitchen.run("2026-09-20", "describe", "mill-loaf", "--correction")
    assert note == (
        f"Corrected 20 September 2026: {SENTENCE} The film still shows 400 g at 1:25.\n"
        f"The recipe stands at revision 2 now: {URL}#since-1\n"
    )
    description = kitchen.run("2026-09-20", "describe", "mill-loaf")
    assert f"Corrected 20 September 2026: {SENTENCE}" in description
    assert f"431 g ({NEW_CUPS}) bread flour" in description
    # The bake of revision 1 offers nothing any more.
    assert "tinleaf correct" not in kitchen.run("2026-09-20", "baked", "mill-loaf", "--done")


def reads_corrected(made: Made) -> None:
    page = made.page()
    assert made.numbers()["revision"] == 2
    assert made.flour() == [431, 431]
    assert f"Corrected 20 September 2026: {SENTENCE} The film still shows 400 g at 1:25." in page
    now = f"bread flour 431 g ({NEW_CUPS})"
    assert f"The film still shows 400 g at 1:25; the recipe now says {now}, corrected 20 September" in page
    assert f"1:20 Weighing out still shows 400 g; now {now}" in page
    assert f"Since revision 1 bread flour 400 g (3¼ cups) → 431 g ({NEW_CUPS})" in page
    assert "id=since-1" in made.html()
    assert "id=since-2" in made.html()
    # The old amount stands only where it is said to be the old one.
    assert page.count("400 g") == len(re.findall(r"(?:shows|bread flour) 400 g", page))
    assert f"Mill loaf, {SENTENCE}" in made.page("corrections/")
    structured = made.structured()
    assert structured["dateModified"] == "2026-09-20"
    assert structured["correction"] == [
        {"@type": "CorrectionComment", "text": SENTENCE, "datePublished": "2026-09-20"}
    ]
    entry = made.entry()
    assert entry["updated"] == "2026-09-20"
    assert entry["summary"].startswith(f"Corrected 20 September 2026: {SENTENCE}")
    assert SENTENCE.split(",")[0] in entry["content"].replace("\u00a0", " ")
    assert made.changed_on("recipes/mill-loaf/") == "2026-09-20"
    assert made.changed_on("corrections/") == "2026-09-20"


def due_and_posted(kitchen: Kitchen) -> None:
    due = json.loads(kitchen.run("2026-09-21", "due", "--format", "json", code=1))["due"]
    assert {(each["recipe"], each["place"]) for each in due} == {
        ("mill-loaf", place) for place in ("page", "description", "newsletter", "card")
    }
    assert all("400 g → 431 g" in json.dumps(each, ensure_ascii=False) for each in due)
    for place in ("page", "description", "newsletter"):
        kitchen.run("2026-09-21", "posted", "mill-loaf", place)
    kitchen.run("2026-09-21", "posted", "mill-loaf", "card", "--to", "Aunt Ro")
    assert kitchen.run("2026-09-21", "due").startswith("2026-09-21: no copy is stale")


def component_corrected(kitchen: Kitchen) -> None:
    words = ("correct", "candied-peel", "granulated sugar", "220 g", "--why", "It did not keep.")
    kitchen.run("2026-09-25", *words)
    made = kitchen.made("2026-09-25")
    assert (made.numbers()["revision"], made.numbers("candied-peel")["revision"]) == (3, 2)
    assert made.flour() == [431, 431]
    assert "granulated sugar 200 g" in made.page("recipes/candied-peel/")
    assert made.entry()["updated"] == "2026-09-25"
    assert made.structured()["dateModified"] == "2026-09-25"
    assert "id=since-1" in made.html()
    assert "id=since-2" in made.html()
    page, label = made.page(), "the list of ingredients on the label reads otherwise"
    assert f"Since revision 1 bread flour 400 g (3¼ cups) → 431 g ({NEW_CUPS})" in page
    assert f"Since revision 2 {label}" in page
    reason = f"Corrected 25 September 2026: {label}, because its Candied peel was corrected: it did not keep."
    assert reason in page
    assert "its Candied peel was corrected" in made.entry()["content"]
    due = json.loads(kitchen.run("2026-09-26", "due", "--format", "json", code=1))["due"]
    assert ("candied-peel", "page") in {(each["recipe"], each["place"]) for each in due}
    kitchen.run("2026-09-26", "posted", "candied-peel", "page")
    for place in ("page", "description", "newsletter"):
        kitchen.run("2026-09-26", "posted", "mill-loaf", place)
    kitchen.run("2026-09-26", "posted", "mill-loaf", "card", "--to", "Aunt Ro")
    assert kitchen.run("2026-09-26", "due").startswith("2026-09-26: no copy is stale")
    ledger = (kitchen.root / "ledger.jsonl").read_text().splitlines()
    assert all(isinstance(json.loads(line), dict) for line in ledger)
    assert "nothing to correct" in kitchen.run("2026-09-26", "check")


def tell(kitchen: Kitchen) -> None:
    published(kitchen)
    corrected(kitchen, baked_twice(kitchen))
    due_and_posted(kitchen)
    component_corrected(kitchen)


def test_the_story_in_text(tmp_path: Path, capsys: Capture) -> None:
    tell(Kitchen(root=lay(tmp_path / "content"), capsys=capsys, publish=as_text))


@pytest.mark.long
def test_the_story_in_everything(tmp_path: Path, capsys: Capture) -> None:
    tell(Kitchen(root=lay(tmp_path / "content"), capsys=capsys, publish=as_made))
