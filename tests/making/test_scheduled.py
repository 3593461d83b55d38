"""What is dated to come is nowhere on the site before its day: a bake, and a film of a bake that is there already."""

import json
from collections.abc import Mapping
from datetime import date, timedelta

import pytest

from generator.pipeline import make_folder
from generator.publication.making import How
from tests.making.kitchen import PAPER, lay

TODAY = date(2026, 11, 25)
LATER = TODAY + timedelta(days=7)
FILM = "https://video.example/w/plain-loaf"
SECRET = """\
---
title: Quince surprise
published: 2026-12-02
kinds: [bread, quinces]
occasions: [Quince day]
was: [old/quince.html, older/Quince]
formula:
  - 400 g bread flour
  - 250 g water
---
## Method
1. Mix {bread flour} and {water}. {bake 40 min}
"""


@pytest.fixture(scope="module")
def sites(tmp_path_factory: pytest.TempPathFactory) -> Mapping[date, Mapping[str, str]]:
    """The text files of the site on both days, by path, and those of the desk."""
    root = tmp_path_factory.mktemp("scheduled")
    lay(root / "content")
    (root / "content" / "recipes" / "quince-surprise.md").write_text(SECRET, encoding="utf-8")
    loaf = next(
        each for each in (root / "content" / "recipes").glob("*.md") if "Plain loaf" in each.read_text()
    )
    films = f"videos:\n  - {{url: '{FILM}', published: '2026-12-02T09:00+00:00'}}\n"
    loaf.write_text(
        loaf.read_text().replace("makes: 1 loaf\n", f"makes: 1 loaf\n{films}", 1), encoding="utf-8"
    )
    made = {}
    for day in (TODAY, LATER):
        output = root / f"{day}"
        result = make_folder(root / "content", output=output, day=day, how=How(without=PAPER))
        assert result.report is not None, result.diagnostics
        made[day] = {
            path.relative_to(output).as_posix(): path.read_text(encoding="utf-8")
            for path in output.rglob("*")
            if path.suffix in (".html", ".json", ".xml", ".txt", ".vtt") and not path.name.startswith(".")
        }
    return made


def on_site(files: Mapping[str, str]) -> dict[str, str]:
    return {path: text for path, text in files.items() if path.startswith("site/")}


def test_a_bake_to_come_is_nowhere_before_its_day(sites: Mapping[date, Mapping[str, str]]) -> None:
    told = [path for path, text in on_site(sites[TODAY]).items() if "quince" in (path + text).casefold()]
    assert told == []
    assert "Quince surprise" in sites[TODAY]["desk/quince-surprise/description.txt"]


def test_on_its_day_a_bake_is_everywhere(sites: Mapping[date, Mapping[str, str]]) -> None:
    told = {path for path, text in on_site(sites[LATER]).items() if "quince-surprise" in text}
    lists = (
        "index.html",
        "recipes/index.html",
        "kinds/bread/index.html",
        "by/occasion/index.html",
        "old/quince.html",
    )
    data = ("feed.xml", "feed.json", "sitemap.xml", "search.json", "recipes/quince-surprise/recipe.json")
    assert {f"site/{each}" for each in (*lists, *data)} <= told


def test_a_film_to_come_is_only_on_the_desk_before_its_day(sites: Mapping[date, Mapping[str, str]]) -> None:
    assert [path for path, text in on_site(sites[TODAY]).items() if FILM in text] == []
    assert [path for path, text in on_site(sites[TODAY]).items() if "VideoObject" in text] == []


def test_on_its_day_a_film_is_on_the_page_and_in_the_feeds(sites: Mapping[date, Mapping[str, str]]) -> None:
    told = {path for path, text in on_site(sites[LATER]).items() if FILM in text}
    page = next(path for path in told if path.endswith("index.html"))
    assert {page, "site/feed.xml", "site/feed.json"} <= told
    items = json.loads(sites[LATER]["site/feed.json"])["items"]
    assert any(FILM in each["content_html"] for each in items)


def test_every_old_address_of_a_page_leads_straight_to_it(sites: Mapping[date, Mapping[str, str]]) -> None:
    """Renamed twice: neither address leads by way of the other, and each is spelt as it was."""
    for path, up in (("site/old/quince.html", "../"), ("site/older/Quince/index.html", "../../")):
        page = sites[LATER][path]
        assert f"url={up}recipes/quince-surprise/index.html" in page
        assert '<link rel="canonical" href="https://small-oven.example/recipes/quince-surprise/">' in page
        assert "<loc>https://small-oven.example/old" not in sites[LATER]["site/sitemap.xml"]
