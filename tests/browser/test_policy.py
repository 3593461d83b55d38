"""The pages work under their own content policy, from a host and from a disk, and it stops what is not theirs."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.test_pages import SETTLED, watched

pytestmark = pytest.mark.browser

# One page of each kind, the page for lost readers and one that moved among them.
PAGES = (
    "index.html",
    "404.html",
    "recipes/index.html",
    "recipes/cardamom-orange-braid/index.html",
    "journal/index.html",
    "journal/every-pack-twice/index.html",
    "kinds/bread/index.html",
    "by/time/index.html",
    "search/index.html?q=orange",
    "allergens/index.html",
    "corrections/index.html",
)
LISTEN = """
window.refused = [];
document.addEventListener("securitypolicyviolation",
  (event) => window.refused.push(`${event.violatedDirective} ${event.blockedURI}`));
"""


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    with browser.new_context(viewport={"width": 390, "height": 844}) as context:
        context.add_init_script(LISTEN)
        yield context.new_page()


@pytest.mark.parametrize("place", ["host", "disk"])
def test_no_page_asks_for_what_its_policy_refuses(
    page: Page, served_demo: str, demo: Path, place: str
) -> None:
    root = served_demo if place == "host" else (demo / "site").as_uri() + "/"
    heard = watched(page)
    for path in PAGES:
        page.goto(root + path)
        page.evaluate(SETTLED)
        assert (path, page.evaluate("window.refused")) == (path, [])
        if path != "404.html":
            assert page.evaluate("document.styleSheets.length") >= 2, path
    assert heard == []


def test_the_kitchen_view_and_the_sizes_work_under_it(page: Page, served_demo: str) -> None:
    page.goto(f"{served_demo}recipes/cardamom-orange-braid/index.html")
    page.locator("select").first.select_option(index=1)
    page.get_by_role("button", name="Kitchen view").first.click()
    page.locator("dialog, [role=dialog], .kitchen").first.wait_for()
    assert page.evaluate("window.refused") == []


def test_a_script_and_a_style_that_are_not_the_page_s_own_are_stopped(page: Page, served_demo: str) -> None:
    page.goto(f"{served_demo}index.html")
    page.evaluate(
        """() => {
          const script = document.createElement("script");
          script.textContent = "window.ran = true";
          document.head.append(script);
          const style = document.createElement("style");
          style.textContent = "body { display: none }";
          document.head.append(style);
        }"""
    )
    assert page.evaluate("window.ran") is None
    assert page.locator("body").is_visible()
    refused = page.evaluate("window.refused")
    assert {each.split()[0] for each in refused} == {"script-src-elem", "style-src-elem"}
