"""Both themes for everybody: keyboard alone, large letters, narrow, forced colours, scripts off, no motion.

The second theme is made from a few bakes of the demo as a maker would make it, and keeps every law of the first.
"""

from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.conftest import serving
from tests.browser.test_pages import RULES, axe, complaints, faults_of, page_paths
from tests.browser.test_validity import complaints as invalid
from tests.themes.small import make_small

pytestmark = pytest.mark.browser

__all__ = ["axe"]
BRAID = "recipes/cardamom-orange-braid/index.html"
MOST_BYTES = 90_000
ASSETS = ("docket.css", "print.css", "sizes.js", "ticks.js")


@pytest.fixture(scope="session")
def racked(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder that holds the "site/" of a few bakes under `theme: rack`, read back as it was made."""
    folder = tmp_path_factory.mktemp("racked")
    made = make_small(folder, theme="rack")
    assert made.unproven == ()
    assert made.report is not None
    return folder / "output"


@pytest.fixture(scope="session")
def served_rack(racked: Path) -> Iterator[str]:
    with serving(racked) as address:
        yield address


@pytest.fixture(scope="session")
def addresses(served_rack: str, served_demo: str) -> Mapping[str, str]:
    """Where each theme's pages are, with the braid among them."""
    return {"rack": served_rack, "docket": served_demo}


both = pytest.mark.parametrize("theme", ["docket", "rack"])
# Of these, the tests of the docket stand in test_pages.py and test_docket.py.
rack = pytest.mark.parametrize("theme", ["rack"])


@pytest.mark.long
def test_every_page_of_the_rack_is_valid(racked: Path) -> None:
    assert invalid(racked) == []


FEW = (BRAID, "index.html", "allergens/index.html")


def test_the_rack_is_accessible_and_inside_its_width(browser: Browser, served_rack: str, axe: str) -> None:
    assert faults_of(browser, served_rack, list(FEW), axe=axe, width=320) == []


@pytest.mark.long
@pytest.mark.parametrize("width", [320, 1280])
def test_every_page_of_the_rack_is_accessible_and_inside_its_width(
    browser: Browser, served_rack: str, racked: Path, axe: str, width: int
) -> None:
    assert faults_of(browser, served_rack, page_paths(racked), axe=axe, width=width) == []


def test_the_rack_asks_nothing_of_others_and_complains_of_nothing(browser: Browser, served_rack: str) -> None:
    assert complaints(browser, served_rack, list(FEW)) == []


def test_a_bake_on_the_rack_is_light(racked: Path) -> None:
    shared = sum((racked / "site" / "leaf" / name).stat().st_size for name in ASSETS)
    pages = {
        path: path.stat().st_size + shared for path in (racked / "site" / "recipes").glob("*/index.html")
    }
    assert len(pages) == 3
    assert max(pages.values()) < MOST_BYTES


def test_the_rack_is_another_page_and_no_other_paint(racked: Path, demo: Path) -> None:
    """Fields, stairs and shelves in the place of lines, strips and small dockets; not a recoloured sheet."""
    rack_page, docket = ((folder / "site" / BRAID).read_text("utf-8") for folder in (racked, demo))
    for mine in ("flight", "tray", "board"):
        assert f"class={mine}" in rack_page or f'class="{mine}' in rack_page
        assert f"class={mine}" not in docket
    for ours in ("strip", "needs", "perforation"):
        assert f"class={ours}" in docket or f'class="{ours}' in docket
        assert f"class={ours}" not in rack_page


def test_the_rack_is_accessible_in_the_dark(browser: Browser, served_rack: str, axe: str) -> None:
    with browser.new_context(bypass_csp=True, color_scheme="dark") as context:
        page = context.new_page()
        for path in (BRAID, "404.html"):
            page.goto(served_rack + path)
            page.add_script_tag(content=axe)
            found = page.evaluate(
                "(rules) => axe.run(document, { runOnly: { type: 'tag', values: rules } })"
                ".then((told) => told.violations.map((one) => one.id))",
                RULES,
            )
            assert (path, found) == (path, [])


def focused(page: Page, words: str) -> bool:
    return bool(page.evaluate("(words) => document.activeElement.matches(words)", words))


def tab_to(page: Page, words: str, *, most: int = 120) -> None:
    """Presses Tab until what is wished for has the focus, which must be seen all the way."""
    for _ in range(most):
        page.keyboard.press("Tab")
        outline = "getComputedStyle(document.activeElement).outlineStyle"
        inside = "document.activeElement.matches('.segments input')"
        assert page.evaluate(f"{outline} !== 'none' || {inside}"), page.evaluate(
            "document.activeElement.outerHTML"
        )
        if focused(page, words):
            return
    pytest.fail(f"{words} is not to be reached")


@both
def test_a_bake_is_used_with_the_keyboard_alone(
    browser: Browser, addresses: Mapping[str, str], theme: str
) -> None:
    with browser.new_context() as context:
        page = context.new_page()
        page.goto(addresses[theme] + BRAID)
        page.keyboard.press("Tab")
        assert focused(page, ".skip")
        page.keyboard.press("Enter")
        tab_to(page, ".lines input")
        page.keyboard.press("Space")
        assert page.locator(".lines input").first.is_checked()
        tab_to(page, ".kitchen-offer button")
        page.keyboard.press("Enter")
        page.wait_for_selector(".kitchen[open]")
        tab_to(page, ".kitchen-ways button")
        page.keyboard.press("Enter")
        for _ in range(3):
            page.keyboard.press("ArrowRight")
        tab_to(page, ".timer-start")
        page.keyboard.press("Enter")
        assert page.locator(".timers .timer").count() == 1
        page.keyboard.press("Escape")
        assert not page.locator(".kitchen").evaluate("(view) => view.open")
        assert focused(page, ".kitchen-offer button")


@rack
def test_letters_of_twice_the_size_and_a_narrow_page_need_no_scrolling_sideways(
    browser: Browser, addresses: Mapping[str, str], theme: str
) -> None:
    """WCAG 1.4.4 and 1.4.10: 200 % letters on a phone, a page of 320 px, and a window of 1280 px at 400 %."""
    across = "document.documentElement.scrollWidth"
    with browser.new_context(viewport={"width": 320, "height": 640}, bypass_csp=True) as context:
        page = context.new_page()
        for path in (BRAID, "index.html", "recipes/index.html"):
            page.goto(addresses[theme] + path)
            assert (path, page.evaluate(across)) == (path, 320)
        page.goto(addresses[theme] + BRAID)
        page.click(".kitchen-offer button")
        page.wait_for_selector(".kitchen[open]")
        assert page.evaluate(across) == 320
        page.keyboard.press("Escape")
        page.set_viewport_size({"width": 360, "height": 800})
        page.add_style_tag(content="html { font-size: 200%; }")
        assert page.evaluate(across) <= 360


@rack
def test_with_forced_colours_edges_say_what_grounds_said(
    browser: Browser, addresses: Mapping[str, str], theme: str
) -> None:
    with browser.new_context(forced_colors="active") as context:
        page = context.new_page()
        page.goto(addresses[theme] + BRAID)

        def style(words: str, name: str) -> str:
            told = page.locator(words).first.evaluate("(one, name) => getComputedStyle(one)[name]", name)
            return str(told)

        assert float(style(".caution", "borderTopWidth").removesuffix("px")) >= 4
        assert style(".caution-word", "borderTopStyle") == "solid"
        assert style(".lines input", "appearance") == "auto"
        page.locator(".lines input").first.check()
        assert page.locator(".lines input").first.is_checked()
        bars = {"docket": (".bar.solid", ".bar-heat"), "rack": (".stair.hands_on", ".stair.baking")}[theme]
        solid, baking = (style(words, "fill") for words in bars)
        assert solid != baking


@rack
def test_without_scripts_everything_is_there_and_nothing_is_offered_in_vain(
    browser: Browser, addresses: Mapping[str, str], theme: str
) -> None:
    with browser.new_context(java_script_enabled=False) as context:
        page = context.new_page()
        page.goto(addresses[theme] + BRAID)
        for words in (".lines .first", ".step-words", ".label-box .declared", ".caution"):
            assert all(one.is_visible() for one in page.locator(words).all())
        assert page.locator("[data-way]").count() == 2
        assert page.locator(".ways a").count() == 2
        assert page.locator(".choices").is_hidden()
        assert page.locator(".tidy:visible, .kitchen-offer:visible").count() == 0
        page.locator(".lines label").first.click()
        assert page.locator(".lines input").first.is_checked()


@both
def test_who_wants_no_motion_gets_none(browser: Browser, addresses: Mapping[str, str], theme: str) -> None:
    moving = """() => [...document.querySelectorAll("*")].filter((one) => {
      const style = getComputedStyle(one);
      return parseFloat(style.transitionDuration) > 0 || style.animationName !== "none";
    }).length"""
    glide = "getComputedStyle(document.documentElement).scrollBehavior"
    with browser.new_context(reduced_motion="reduce") as context:
        page = context.new_page()
        page.goto(addresses[theme] + BRAID)
        assert page.evaluate(glide) == "auto"
        assert page.evaluate(moving) == 0
        page.emulate_media(reduced_motion="no-preference")
        assert page.evaluate(glide) == "smooth"
