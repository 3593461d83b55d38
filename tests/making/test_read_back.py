"""What is read back: each file where it is made, each entry of a feed once; and copies for servers."""

import gzip
from dataclasses import replace
from pathlib import Path

import pytest

from generator.build.cache import Cache
from generator.diagnostics.diagnostic import Diagnostics
from generator.pipeline import MakeResult, check_folder, make_folder
from generator.present.views import ArticleView, RecipeView, SiteView
from generator.proof.expected import Expected
from generator.proof.feed_entry import FeedEntry
from generator.proof.folder import prove_folder
from generator.proof.texts import entry_faults
from generator.publication.making import How
from generator.render.feeds import render
from generator.render.feeds.entry import Entry, recipe_entry
from tests.making.kitchen import PAPER, Kitchen, files_in

DRAWN = frozenset({"posters", "chapter cards"})
SPOILT = ("200\u00a0g".encode(), "205\u00a0g".encode())


@pytest.fixture
def kitchen(tmp_path: Path) -> Kitchen:
    return Kitchen(folder=tmp_path, without=PAPER | DRAWN)


@pytest.fixture
def read(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The titles of the entries that are read and compared."""
    seen: list[str] = []
    compare = entry_faults

    def noted(path: str, entry: FeedEntry, view: RecipeView | ArticleView, expected: Expected) -> Diagnostics:
        seen.append(entry.title)
        return compare(path, entry, view, expected)

    monkeypatch.setattr("generator.publication.release.entry_faults", noted)
    monkeypatch.setattr("generator.proof.texts.entry_faults", noted)
    return seen


def test_an_entry_is_read_once_and_again_only_when_it_changed(kitchen: Kitchen, read: list[str]) -> None:
    kitchen.make()
    # The post is in both feeds, and has no task of its own.
    assert sorted(read) == ["Night sponge", "Oat squares", "On oats", "On oats", "Plain loaf"]
    read.clear()
    kitchen.change("recipes/oat-squares.md", "100 g honey", "90 g honey")
    made = kitchen.make()
    assert made.report is not None
    assert "site/feed.xml" in made.report.written
    assert sorted(read) == ["Oat squares", "On oats", "On oats"]


def test_an_entry_that_says_another_amount_is_found(
    kitchen: Kitchen, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The fault is in what all feeds are put together from."""

    def wrong(view: RecipeView, site: SiteView) -> Entry:
        entry = recipe_entry(view, site)
        return replace(entry, html=entry.html.replace("100\u00a0g", "190\u00a0g"))

    kitchen.make()
    before = files_in(kitchen.output)
    monkeypatch.setattr("generator.publication.leaves.recipe_entry", wrong)
    kitchen.change("recipes/oat-squares.md", "lead: Chewy.", "lead: Chewy and soft.")
    made = kitchen.make()
    assert made.report is None
    assert any("190 g" in " ".join(each.message.split()) for each in made.unproven)
    assert files_in(kitchen.output) == before


@pytest.mark.parametrize("name", ["atom", "json_feed"])
def test_a_feed_that_spoils_a_proved_entry_is_found(
    name: str, kitchen: Kitchen, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The entry was right, and what one feed makes of it is not."""
    kitchen.make()
    feed = getattr(render, name)
    monkeypatch.setattr(render, name, lambda *given: feed(*given).replace(*SPOILT))
    kitchen.change("recipes/oat-squares.md", "100 g honey", "90 g honey")
    made = kitchen.make()
    assert made.report is None
    path = {"atom": "site/feed.xml", "json_feed": "site/feed.json"}[name]
    assert {each.span.path for each in made.unproven} == {path}
    assert any("205 g" in " ".join(each.message.split()) for each in made.unproven)


def making(kitchen: Kitchen, output: str, jobs: int) -> tuple[MakeResult, Path]:
    place = kitchen.folder / output
    how = How(cache=Cache(root=None), without=kitchen.without)
    return make_folder(kitchen.content, output=place, day=kitchen.day, jobs=jobs, how=how), place


def test_recipes_worded_in_several_processes_give_the_same(
    kitchen: Kitchen, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("generator.publication.leafing.FEWEST", 1)
    kitchen.change("recipes/plain-loaf.md", "A loaf for every day.", "A loaf for every day ☐.")
    kitchen.change("recipes/plain-loaf.md", "lead: A tin loaf.", "lead: A tin loaf, plain.")
    (one, here), (two, there) = (making(kitchen, name, jobs) for name, jobs in (("here", 1), ("there", 2)))
    assert one.diagnostics == two.diagnostics == check_folder(kitchen.content, day=kitchen.day).diagnostics
    assert files_in(here) == files_in(there)


def test_compressed_copies_stand_beside_the_texts_of_the_site(kitchen: Kitchen) -> None:
    kitchen.change("site.yaml", "maker:", "compressed: yes\nmaker:")
    made = kitchen.make()
    assert made.unproven == ()
    files = files_in(kitchen.output)
    copies = {path: content for path, content in files.items() if path.endswith(".gz")}
    texts = {path for path in files if path.startswith("site/") and path.endswith((".html", ".css", ".js"))}
    assert len(texts) > 10
    assert {path + ".gz" for path in texts} <= set(copies)
    assert all(gzip.decompress(content) == files[path[:-3]] for path, content in copies.items())
    assert not any(path.startswith("desk/") for path in copies)
    assert {path: content[4:8] for path, content in copies.items()} == dict.fromkeys(copies, bytes(4))
    expected = check_folder(kitchen.content, day=kitchen.day).expected
    page = "site/recipes/oat-squares/index.html.gz"

    def found() -> set[tuple[str, str]]:
        told = prove_folder(kitchen.output, expected).diagnostics
        return {(each.code, each.span.path) for each in told if each.span.path.endswith(".gz")}

    assert found() == set()
    (kitchen.output / page).write_bytes(gzip.compress(b"another page"))
    assert found() == {("A010", page)}
    (kitchen.output / page).write_bytes(b"no archive")
    assert found() == {("A007", page)}
    kitchen.change("site.yaml", "compressed: yes\n", "")
    made = kitchen.make()
    assert made.report is not None
    # What was changed by hand is never removed.
    assert (*made.report.removed, *made.report.kept) == (*sorted(set(copies) - {page}), page)
