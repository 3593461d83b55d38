"""Every page in a real browser, wide and narrow: accessible, quiet, and inside its width."""

from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

pytestmark = pytest.mark.browser

WIDTHS = (320, 360, 1280)
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
_AXE = """async (rules) => {
  const found = await axe.run(document, { runOnly: { type: "tag", values: rules } });
  return found.violations.map((one) => `${one.id}: ${one.nodes.map((node) => node.html).join(" | ")}`);
}"""
# Targets smaller than 24 by 24 CSS pixels (WCAG 2.2, 2.5.8), links inside running text set aside.
_SMALL = """() => [...document.querySelectorAll("a, button, input, summary, label")]
  .filter((one) => one.getClientRects().length && !one.matches(".skip, p a, td a, dd a"))
  .map((one) => [one.outerHTML.slice(0, 80), one.getBoundingClientRect()])
  .filter(([, box]) => box.height < 24 || box.width < 24)
  .map(([words, box]) => `${words}: ${box.width} x ${box.height}`)"""


@pytest.fixture(scope="session")
def axe(project_root: Path) -> str:
    """The accessibility checker's source; missing, the tests fail."""
    return (project_root / "node_modules" / "axe-core" / "axe.min.js").read_text(encoding="utf-8")


@pytest.fixture(scope="session")
def project_root() -> Path:
    return Path(__file__).resolve().parents[2]


def watched(page: Page) -> list[str]:
    """A list that fills with all the page complains of, asks for in vain, or asks of others."""
    heard: list[str] = []
    page.on("console", lambda message: heard.append(f"console: {message.text}"))
    page.on("pageerror", lambda error: heard.append(f"error: {error}"))
    page.on("requestfailed", lambda request: heard.append(f"failed: {request.url}"))
    page.on(
        "response",
        lambda answer: heard.append(f"{answer.status}: {answer.url}") if answer.status > 399 else None,
    )
    return heard


@pytest.mark.parametrize("width", WIDTHS)
def test_pages_are_accessible_quiet_and_inside_their_width(
    browser: Browser, served: str, page_paths: tuple[str, ...], axe: str, width: int
) -> None:
    faults: list[str] = []
    # The checker is put into the page, which the content policy of the page would rightly forbid.
    with browser.new_context(viewport={"width": width, "height": 800}, bypass_csp=True) as context:
        page = context.new_page()
        for path in page_paths:
            page.goto(served + path)
            page.add_script_tag(content=axe)
            faults += [f"{path}: {fault}" for fault in page.evaluate(_AXE, RULES)]
            faults += [f"{path}: {fault}" for fault in page.evaluate(_SMALL)]
            across = page.evaluate("document.documentElement.scrollWidth")
            faults += [f"{path}: {across} px wide"] if across > width else []
    assert faults == []


@pytest.mark.parametrize("scheme", ["http", "file"])
def test_pages_ask_nothing_of_others_and_complain_of_nothing(
    browser: Browser, served: str, built: Path, page_paths: tuple[str, ...], scheme: str
) -> None:
    root = served if scheme == "http" else (built / "site").as_uri() + "/"
    asked: list[str] = []
    with browser.new_context(viewport={"width": 1280, "height": 800}) as context:
        page = context.new_page()
        heard = watched(page)
        page.on("request", lambda request: asked.append(request.url))
        for path in page_paths:
            page.goto(root + path)
            page.evaluate("window.scrollTo(0, document.body.scrollHeight)")
            page.wait_for_load_state("networkidle")
    assert heard == []
    assert [url for url in asked if not url.startswith((root, "data:"))] == []


def test_the_faces_of_the_publication_are_used(browser: Browser, served: str) -> None:
    with browser.new_context() as context:
        page = context.new_page()
        page.goto(served + "recipes/honey-oat-braid/index.html")
        page.evaluate("document.fonts.ready")
        loaded = page.evaluate(
            "[...document.fonts].filter((face) => face.status === 'loaded').map((face) => face.family)"
        )
    assert {name.strip('"') for name in loaded} == {"Vollkorn", "Fira Sans Condensed"}


def test_a_text_twice_as_large_still_fits(browser: Browser, served: str) -> None:
    """WCAG 1.4.4 and 1.4.10: at 200 % text on a phone nothing runs out of the page."""
    with browser.new_context(viewport={"width": 360, "height": 800}, bypass_csp=True) as context:
        page = context.new_page()
        page.goto(served + "recipes/honey-oat-braid/index.html")
        page.add_style_tag(content="html { font-size: 200%; }")
        assert page.evaluate("document.documentElement.scrollWidth") <= 360
