"""Every output says which language it is in, as its own standard wants, and it is the publication's.

HTML 3.2.6.1 (lang), PDF 32000-1 7.2 (Lang of the catalog), EPUB 3.3 5.5.3.1 (dc:language), schema.org inLanguage,
RFC 4287 2 (xml:lang), JSON Feed 1.1 (language), Open Graph (og:locale).
"""

import json
import re
import shutil
from collections.abc import Iterator
from datetime import date
from functools import partial
from io import BytesIO
from pathlib import Path
from zipfile import ZipFile

import pytest
from pypdf import PdfReader

from generator.pipeline import CheckResult, check_folder
from generator.present.book import book_view
from generator.render.bench_sheets.render import render_bench_sheet
from generator.render.book.epub import render_book_epub
from generator.render.feeds.render import render_feeds
from generator.render.site.publication import render_site
from generator.render.structured_data.render import structured_data
from generator.wording.speech import speaking

STARTER = Path(__file__).resolve().parents[2] / "generator/cli/starter"


@pytest.fixture(scope="module")
def german(tmp_path_factory: pytest.TempPathFactory) -> Iterator[CheckResult]:
    """The content folder that a beginner gets, in German."""
    content = tmp_path_factory.mktemp("deutsch") / "content"
    shutil.copytree(STARTER, content)
    site = content / "site.yaml"
    site.write_text(
        site.read_text(encoding="utf-8").replace("language: en-US", "language: de-AT"), encoding="utf-8"
    )
    with speaking("en-US"):
        # The command speaks the language of what it has read, from there on.
        yield check_folder(content, day=date(2026, 11, 25))


@pytest.fixture(scope="module")
def pages(german: CheckResult) -> dict[str, str]:
    structured = partial(structured_data, site=german.site)
    with speaking("de-AT"):
        made = render_site(german.site, media=german.media, structured=structured)
        return {each.path: each.content.decode() for each in made if each.path.endswith((".html", ".js"))}


def test_pages_and_what_they_tell_programs(pages: dict[str, str]) -> None:
    html = {path: text for path, text in pages.items() if path.endswith(".html")}
    assert len(html) > 8
    assert {found for text in html.values() for found in re.findall(r'<html lang="?([\w-]+)', text)} == {
        "de-AT"
    }
    data = "".join(
        re.findall(r"<script type=\"application/ld\+json\">(.*?)</script>", "".join(html.values()))
    )
    assert set(re.findall(r'"inLanguage":\s*"([^"]*)"', data)) == {"de-AT"}
    assert set(re.findall(r'property="og:locale" content="([^"]*)"', "".join(html.values()))) == {"de_AT"}


def test_a_page_says_nothing_of_ours_in_english(pages: dict[str, str]) -> None:
    whole = next(text for path, text in pages.items() if "/recipes/saturday" in path)
    page = re.sub(r"<script.*?</script>|<[^>]*>", " ", whole, flags=re.S)
    for words in ("Abwiegen", "Zubereitung", "Handarbeit", "Was drin ist", "Zum Text springen"):
        assert words in page
    for words in (
        "Weigh out",
        "Method",
        "Hands-on",
        "What is in it",
        "Skip to",
        "Bakes",
        "Revision",
        "Published",
    ):
        assert words not in page


def test_feeds(german: CheckResult) -> None:
    with speaking("de-AT"):
        feeds = {each.path.rpartition("/")[2]: each.content.decode() for each in render_feeds(german.site)}
    assert 'xml:lang="de-AT"' in feeds["feed.xml"]
    assert json.loads(feeds["feed.json"])["language"] == "de-AT"


def test_paper_and_book(german: CheckResult) -> None:
    view = next(iter(german.views.values()))
    with speaking("de-AT"):
        sheet = render_bench_sheet(view, paper="a4").content
        book = render_book_epub(
            book_view([view], german.setting, title="", subject="Ein Gebäck"), pictures={}
        )
    document = PdfReader(BytesIO(sheet))
    assert document.root_object.raw_get("/Lang") == "de-AT"
    assert "Backzettel" in document.pages[0].extract_text()
    with ZipFile(BytesIO(book)) as opened:
        names = [name for name in opened.namelist() if name.endswith((".xhtml", ".opf"))]
        texts = {name: opened.read(name).decode() for name in names}
    assert "<dc:language>de-AT</dc:language>" in next(
        text for name, text in texts.items() if name.endswith(".opf")
    )
    html = [text for name, text in texts.items() if name.endswith(".xhtml")]
    assert len(html) >= 6
    assert all('lang="de-AT" xml:lang="de-AT"' in text for text in html)
