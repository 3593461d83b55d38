"""The page of keys: every key that a reader knows stands on it, every key on it is known, every example is right.

The readers tell themselves what they know: a key that nobody has is answered with the list of those there are.
"""

import re
from datetime import date
from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image

from generator.diagnostics.diagnostic import Severity
from generator.formula.tin_text import read_shape
from generator.pipeline import check_folder

ROOT = Path(__file__).resolve().parents[2]
PAGE = (ROOT / "docs" / "recipe-file.md").read_text(encoding="utf-8")
DAY = date(2026, 10, 1)
SITE = {"title": "title: Invented bakes", "maker": "maker: An oven", "url": "url: https://kitchen.example/"}
PANTRY = "bread flour:\n  contains: [wheat]\n  checked: 2026-09-01\nbought candied peel:\n  is: candied orange peel\n"
PEEL = "---\ntitle: Peel\nweighs: 200 g\nformula:\n  - 200 g granulated sugar\n---\n"
LINES = {
    "bread flour": "430 g bread flour",
    "water": "280 g water",
    "table salt": "9 g table salt",
    "instant yeast": "5 g instant yeast",
}
PERCENTS = ("100% bread flour", "65% water", "2% table salt")
NOBODYS = "qqqqq"

# The table below a heading or an introducing line, and what each of its examples stands in.
TABLES = {
    "recipe": "## A recipe",
    "videos": "The entries of `videos`:",
    "links": "The entries of `links`:",
    "credits": "The entries of `credits`:",
    "corrections": "The entries of `corrections`:",
    "accepts": "The entries of `accepts`:",
    "cautions_off": "The entries of `cautions_off`:",
    "part": "## Parts",
    "line": "## Lines",
    "site": "## site.yaml",
    "machine": "The keys of `machine`",
    "friction": "The keys of `friction`",
    "pantry": "## pantry.yaml",
    "bake": "## A bake record",
}


def _table(name: str) -> list[list[str]]:
    start = PAGE.index(TABLES[name])
    rows = []
    for line in PAGE[PAGE.index("\n|", start) + 1 :].splitlines():
        if not line.startswith("|"):
            break
        rows.append([cell.strip() for cell in line.strip("|").split("|")])
    return rows[2:]


def _examples() -> list[tuple[str, str, str]]:
    return [(name, row[0].strip("`"), row[1].strip("`")) for name in TABLES for row in _table(name)]


def _list_of(lines: tuple[str, ...]) -> str:
    return "formula:\n" + "".join(f"  - {line}\n" for line in lines)


def _recipe(front: str, formula: str = "") -> str:
    title = "" if front.startswith("title:") else "title: Plain loaf\n"
    return f"---\n{title}{front}\n{formula}---\nPlain.\n"


def _default_formula(front: str) -> str:
    if front.startswith("formula:"):
        return ""
    return _list_of(PERCENTS if front.startswith(("flour:", "dough:")) else tuple(LINES.values()))


def _laid(folder: Path, place: str, example: str) -> Path:
    """A content folder with the example where its table says that it stands."""
    site, pantry, recipe = dict(SITE), PANTRY, _recipe("lead: Plain.", _list_of(tuple(LINES.values())))
    if place == "site":
        site[example.partition(":")[0]] = example
    elif place in ("machine", "friction"):
        site[place] = f"{place}: {example}"
    elif place == "pantry":
        pantry += f"a thing of mine: {example}\n"
    elif place == "bake":
        (folder / "bakes").mkdir(parents=True)
        (folder / "bakes" / "2026-09-19-plain-loaf.yaml").write_text(f"{example}\n", encoding="utf-8")
    elif place == "recipe":
        recipe = _recipe(example, _default_formula(example))
    elif place == "line":
        recipe = _recipe("lead: Plain.", _list_of(tuple(LINES.values())) + f"  - {example}\n")
    elif place == "part":
        recipe = _recipe(*_with_part(example))
    else:
        recipe = _recipe(f"{place}: [{example}]", _list_of(tuple(LINES.values())))
    (folder / "recipes").mkdir(parents=True, exist_ok=True)
    (folder / "media").mkdir()
    picture = BytesIO()
    Image.new("RGB", (8, 8), "white").save(picture, format="JPEG")
    (folder / "media" / "loaf.jpg").write_bytes(picture.getvalue())
    (folder / "site.yaml").write_text("\n".join(site.values()) + "\n", encoding="utf-8")
    (folder / "pantry.yaml").write_text(pantry, encoding="utf-8")
    (folder / "recipes" / "candied-peel.md").write_text(PEEL, encoding="utf-8")
    (folder / "recipes" / "plain-loaf.md").write_text(recipe, encoding="utf-8")
    return folder


def _with_part(example: str) -> tuple[str, str]:
    """Percents need a base, and a share of all flour needs the rest of it."""
    other = "  main:\n    - 700 g bread flour\n    - 400 g water\n"
    base = "lead: Plain."
    if "%" in example.split("lines:")[1]:
        base = "flour: 500 g"
        whole = (
            "  main: {total: yes, lines: [100% bread flour, 66% water, 2% table salt, 1% instant yeast]}\n"
        )
        other = "" if "total" in example else whole
    return base, f"formula:\n  first: {example}\n{other}"


def _errors(folder: Path) -> list[str]:
    found = check_folder(folder, day=DAY).diagnostics
    return [f"{each.code} {each.message}" for each in found if each.severity is Severity.ERROR]


@pytest.mark.parametrize(("place", "key", "example"), _examples())
def test_each_example_passes_check(tmp_path: Path, place: str, key: str, example: str) -> None:
    assert key in example
    assert _errors(_laid(tmp_path / "content", place, example)) == []


def _known(folder: Path, place: str) -> set[str]:
    """What the reader itself says that it knows."""
    wrong = {
        "recipe": f"{NOBODYS}: 1",
        "site": f"{NOBODYS}: 1",
        "bake": f"{NOBODYS}: 1",
        "part": f"{{{NOBODYS}: 1, lines: [5 g water]}}",
        "line": f"{{line: 5 g rye flour, {NOBODYS}: 1}}",
    }
    found = check_folder(_laid(folder, place, wrong.get(place, f"{{{NOBODYS}: 1}}")), day=DAY).diagnostics
    hint = next(each.hint for each in found if each.code == "S060" and NOBODYS in each.message)
    return set(hint.partition("may have: ")[2].rstrip(".").split(", "))


@pytest.mark.parametrize("place", TABLES)
def test_every_key_that_is_known_stands_on_the_page_and_no_other(tmp_path: Path, place: str) -> None:
    rows = [row[0].strip("`") for row in _table(place)]
    assert len(rows) == len(set(rows))
    assert set(rows) == _known(tmp_path / "content", place)


def test_the_recipe_in_percent_passes_check(tmp_path: Path) -> None:
    (block,) = re.findall(r"```yaml\n# front matter\n(.*?)```", PAGE, re.DOTALL)
    folder = _laid(tmp_path / "content", "recipe", "lead: Plain.")
    (folder / "recipes" / "plain-loaf.md").write_text(
        f"---\ntitle: Plain loaf\n{block}---\n", encoding="utf-8"
    )
    assert _errors(folder) == []


@pytest.mark.parametrize(
    "tin",
    [
        row[0].strip("`")
        for row in [
            [cell.strip() for cell in line.strip("|").split("|")]
            for line in PAGE[PAGE.index("## Tins") : PAGE.index("## The text")].splitlines()
            if line.startswith("| `")
        ]
    ],
)
def test_each_tin_is_read(tin: str) -> None:
    shape, faults = read_shape(tin)
    assert (shape is not None, faults) == (True, ())


def test_each_reference_of_the_page_is_understood(tmp_path: Path) -> None:
    text = PAGE[PAGE.index("| in braces") : PAGE.index("## site.yaml")]
    references = re.findall(r"`(\{[^`]+\})`", text)
    assert len(references) >= 14
    # Shares and wholes of one line cannot stand in one way, so each reference is a way of its own.
    formula = "formula:\n  dough:\n    - 430 g bread flour\n"
    steps = "\n".join(
        f"## Method: way {number}\n1. Use {each}. {{rest 5 min}}" for number, each in enumerate(references)
    )
    folder = _laid(tmp_path / "content", "recipe", "lead: Plain.")
    text = f"---\ntitle: Plain loaf\n{formula}---\nPlain.\n\n{steps}\n"
    (folder / "recipes" / "plain-loaf.md").write_text(text, encoding="utf-8")
    found = check_folder(folder, day=DAY).diagnostics
    # That a way leaves flour over is not what is tested: every reference must mean something.
    meaningless = [
        each.message for each in found if each.code in ("R010", "R011", "R012", "R013", "T001", "T002")
    ]
    assert meaningless == []
