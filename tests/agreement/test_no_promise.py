"""Over everything that a make writes: no output holds a claim of absence, and no private person leaves the desk."""

import re
import shutil
from collections.abc import Iterator
from datetime import date
from html.parser import HTMLParser
from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader

from generator.declaration.claims import claim_spans
from generator.declaration.regions import REGION_NAMES
from generator.pipeline import make_folder
from generator.render.people_sheet.render import PATH as PEOPLE

ROOT = Path(__file__).resolve().parents[2]
# Bakes of the demo that between them have every kind of output; paper for all of them would take minutes.
BAKES = ("brown-soda-bread", "candied-orange-peel", "tall-tea-brack")
NAMES = ("Quillon Ashgrove", "Perpetua Lindqvist-Ömer", "Zofya")
NOTE = "carries an injector in a red bag"
LIST = f"""\
{NAMES[0]}:
  avoids: [hazelnut, tree nuts]
  note: {NOTE}
{NAMES[1]}:
  avoids: [milk, kiwi fruit]
{NAMES[2]}:
  avoids: [sesame, sulphites, gluten]
"""


@pytest.fixture(scope="module")
def output(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Some of the demo with a list of people beside it, made whole."""
    folder = tmp_path_factory.mktemp("promise")
    shutil.copytree(ROOT / "content", folder / "content", ignore=shutil.ignore_patterns("journal"))
    for recipe in (folder / "content" / "recipes").glob("*.md"):
        if recipe.stem not in BAKES:
            recipe.unlink()
    return made_with_people(folder)


def made_with_people(folder: Path) -> Path:
    (folder / "content" / "private").mkdir(exist_ok=True)
    (folder / "content" / "private" / "people.yaml").write_text(LIST, encoding="utf-8")
    made = make_folder(folder / "content", output=folder / "output", day=date(2026, 12, 31), jobs=1)
    assert made.report is not None
    return folder / "output"


class _Words(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []

    def handle_data(self, data: str) -> None:
        self.found.append(data)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found += [
            value or "" for name, value in attrs if name in ("content", "alt", "title", "aria-label")
        ]


def words_of(path: Path) -> str:
    if path.suffix == ".pdf":
        reader = PdfReader(BytesIO(path.read_bytes()))
        return f"{reader.metadata} " + " ".join(page.extract_text() for page in reader.pages)
    text = path.read_text(encoding="utf-8")
    if path.suffix not in (".html", ".xml", ".svg"):
        return text
    words = _Words()
    words.feed(text)
    return " ".join(words.found)


def files(folder: Path) -> Iterator[Path]:
    kinds = (".pdf", ".html", ".xml", ".json", ".txt", ".js", ".css", ".svg")
    return (each for each in sorted(folder.rglob("*")) if each.suffix in kinds)


@pytest.fixture(scope="module")
def read(output: Path) -> dict[str, str]:
    return texts(output)


def claims_in(read: dict[str, str]) -> dict[str, list[tuple[int, int, str]]]:
    found = ((name, claim_spans(" ".join(text.split()))) for name, text in read.items())
    return {name: spans for name, spans in found if spans}


def texts(output: Path) -> dict[str, str]:
    return {path.relative_to(output).as_posix(): words_of(path) for path in files(output)}


def test_no_output_anywhere_holds_a_claim(read: dict[str, str]) -> None:
    assert len(read) > 50
    assert claims_in(read) == {}


@pytest.mark.long
@pytest.mark.parametrize("region", REGION_NAMES)
def test_no_output_of_the_whole_demo_holds_a_claim_or_a_person_in_any_region(
    region: str, tmp_path: Path
) -> None:
    """Every bake, the journal too, on the page, in the data and on every sheet of paper."""
    shutil.copytree(ROOT / "content", tmp_path / "content")
    site = tmp_path / "content" / "site.yaml"
    text = site.read_text(encoding="utf-8")
    assert "region: US" in text
    site.write_text(text.replace("region: US", f"region: {region}"), encoding="utf-8")
    output = made_with_people(tmp_path)
    read = texts(output)
    assert len(read) > 200
    assert claims_in(read) == {}
    private = [
        name for name, words in read.items() if name != PEOPLE and any(each in words for each in NAMES)
    ]
    assert private == []


def test_the_measure_of_claims_sees_one(output: Path) -> None:
    assert claim_spans(
        "This is a gluten-free, nut free cake, safe for people with allergies, free from milk."
    )


def test_no_person_leaves_the_desk(output: Path, read: dict[str, str]) -> None:
    page = (output / PEOPLE).read_text(encoding="utf-8")
    for words in (*NAMES, NOTE, "Ask the person; this is not a promise."):
        assert words in page
    asked = [name.encode() for name in (*NAMES, NOTE)]
    seen = 0
    for path in sorted(output.rglob("*")):
        if not path.is_file() or path.relative_to(output).as_posix() == PEOPLE:
            continue
        seen += 1
        data = path.read_bytes()
        assert not any(each in data for each in asked), path
        if path.suffix == ".pdf":
            text = read[path.relative_to(output).as_posix()]
            assert not any(name in text for name in (*NAMES, NOTE)), path
    assert seen > 60


def test_the_table_of_people_gives_each_state_its_own_word_and_shape(output: Path) -> None:
    page = (output / PEOPLE).read_text(encoding="utf-8")
    shapes: dict[str, set[str]] = {}
    for svg, word in re.findall(
        r'<p class="state"><svg[^>]*>(.*?)</svg>\s*([A-Z][a-z ]+)</p>', page, re.DOTALL
    ):
        shapes.setdefault(word.strip(), set()).add(" ".join(svg.split()))
    assert {"Contains", "May contain", "Not stated", "Unknown"} == set(shapes)
    assert all(len(each) == 1 for each in shapes.values())
    assert len({next(iter(each)) for each in shapes.values()}) == 4


def test_the_sitemap_and_every_page_lead_to_the_table_of_allergens(output: Path) -> None:
    assert "/allergens/</loc>" in (output / "site" / "sitemap.xml").read_text()
    for page in sorted((output / "site" / "recipes").glob("*/index.html")):
        text = page.read_text(encoding="utf-8")
        if moved := re.search(r'http-equiv="?refresh"? content="0; ?url=([^"]+)"', text):
            assert (page.parent / moved[1]).is_file()
            continue
        assert len(re.findall(r'href="?\.\./\.\./allergens/index\.html\b', text)) == 2
