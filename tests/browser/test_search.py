"""The search in a real browser: mistakes in spelling, wishes, no dead end, a disk, no scripts, strict policy."""

from collections.abc import Iterator
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.test_pages import watched

pytestmark = pytest.mark.browser
POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; "
    "connect-src 'self'; base-uri 'none'; form-action 'self'"
)


class _Strict(SimpleHTTPRequestHandler):
    def end_headers(self) -> None:
        self.send_header("Content-Security-Policy", POLICY)
        super().end_headers()

    def log_message(self, format: str, *args: object) -> None:
        """Says nothing: a test's output is its own."""


@pytest.fixture(scope="module")
def strict(demo: Path) -> Iterator[str]:
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(_Strict, directory=str(demo)))
    thread = Thread(target=server.serve_forever, daemon=True)
    thread.start()
    yield f"http://127.0.0.1:{server.server_port}/site/"
    server.shutdown()
    server.server_close()
    thread.join()


@pytest.fixture(params=["host", "disk"])
def root(request: pytest.FixtureRequest, strict: str, demo: Path) -> str:
    return strict if request.param == "host" else (demo / "site").as_uri() + "/"


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    with browser.new_context(viewport={"width": 390, "height": 844}) as context:
        yield context.new_page()


def titles(page: Page) -> list[str]:
    return page.locator("#leaf-found a").all_inner_texts()


def test_a_misspelt_word_finds_its_bake_from_the_field_above_any_page(page: Page, root: str) -> None:
    heard = watched(page)
    page.goto(root + "recipes/tall-tea-brack/index.html")
    page.get_by_role("searchbox").fill("cardomon brade")
    page.keyboard.press("Enter")
    page.wait_for_url("**/search/index.html?q=cardomon+brade")
    assert titles(page)[0] == "Cardamom orange braid"
    page.locator("#leaf-found a").first.click()
    page.wait_for_url("**/recipes/cardamom-orange-braid/index.html")
    assert heard == []


def test_an_empty_field_is_a_link_to_the_search(page: Page, strict: str) -> None:
    page.goto(strict + "index.html")
    page.get_by_role("button", name="Search").click()
    page.wait_for_url("**/search/index.html?q=")
    assert page.locator("#leaf-all").is_visible()


def test_what_lists_or_may_or_is_not_known_is_never_shown_as_not_listing(page: Page, strict: str) -> None:
    page.goto(strict + "search/index.html?without=milk&without=tree-nuts")
    bakes = page.evaluate("JSON.parse(document.getElementById('leaf-search').textContent).bakes")
    right = [
        bake["title"]
        for bake in bakes
        if bake["finished"] and not {"milk", "tree-nuts"} & {*bake["contains"], *bake["may_contain"]}
    ]
    assert sorted(titles(page)) == sorted(right)
    assert 0 < len(right) < len(bakes)
    assert "no promise" in page.locator("#leaf-count").inner_text()
    assert page.locator("#leaf-no-promise").is_visible()


def test_an_empty_answer_offers_ways_on(page: Page, strict: str) -> None:
    page.goto(strict + "search/index.html?q=zzzzzz&kind=bread")
    assert page.locator("#leaf-count").inner_text() == "Nothing found."
    assert page.locator("#leaf-all").is_visible()
    page.get_by_role("button", name="Without the words").click()
    assert len(titles(page)) > 0
    assert page.url.endswith("?kind=bread")


def test_a_tin_gives_the_bakes_and_how_much_of_each(page: Page, strict: str) -> None:
    page.goto(strict + "search/index.html")
    page.get_by_text("Narrow it down").click()
    page.get_by_label("I have this tin").select_option("loaf-23-x-13-x-7-cm")
    assert set(titles(page)) == {"Lemon poppy loaf", "Seeded tin loaf"}
    assert (
        page.locator("#leaf-found li", has_text="Lemon")
        .locator(".stub")
        .inner_text()
        .endswith("× the recipe")
    )
    page.get_by_role("button", name="Clear all").click()
    page.locator("#leaf-found").wait_for(state="hidden")


def test_without_scripts_all_bakes_stand_there_by_kind(browser: Browser, strict: str) -> None:
    with browser.new_context(java_script_enabled=False, viewport={"width": 320, "height": 800}) as context:
        page = context.new_page()
        page.goto(strict + "search/index.html")
        assert page.get_by_text("scripts are off here").is_visible()
        assert page.locator("#leaf-finder").is_hidden()
        assert page.locator("#leaf-all li a").count() >= 14


def test_an_old_address_leads_on(page: Page, root: str) -> None:
    page.goto(root + "2026/tea-brack.html")
    page.wait_for_url("**/recipes/tall-tea-brack/index.html")
    assert page.locator("h1").inner_text() == "Tall tea brack"
