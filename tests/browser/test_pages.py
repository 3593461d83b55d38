"""Every page in a real browser, wide and narrow: accessible, quiet, and inside its width."""

from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

pytestmark = pytest.mark.browser

WIDTHS = (320, 1280)
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
_AXE = """async (rules) => {
  const found = await axe.run(document, { runOnly: { type: "tag", values: rules }, resultTypes: ["violations"] });
  return found.violations.map((one) => `${one.id}: ${one.nodes.map((node) => node.html).join(" | ")}`);
}"""
# The faces are there, every picture is decoded, two frames are drawn: what a page asks for, it has asked for.
SETTLED = """async () => {
  await document.fonts.ready;
  const pictures = [...document.images];
  for (const one of pictures) one.loading = "eager";
  const late = new Promise((done) => setTimeout(done, 5000));
  await Promise.race([late, Promise.allSettled(pictures.map((one) => one.decode()))]);
  const frame = () => new Promise((done) => requestAnimationFrame(done));
  await frame();
  await frame();
}"""
# Targets smaller than 24 by 24 CSS pixels (WCAG 2.2, 2.5.8), links inside running text set aside.
_SMALL = """() => [...document.querySelectorAll("a, button, input, summary, label")]
  .filter((one) => one.getClientRects().length && !one.matches(".skip, p a, td a, dd a"))
  .map((one) => [one.outerHTML.slice(0, 80), one.getBoundingClientRect()])
  .filter(([, box]) => box.height < 24 || box.width < 24)
  .map(([words, box]) => `${words}: ${box.width} x ${box.height}`)"""


@pytest.fixture(scope="session")
def axe() -> str:
    """The accessibility checker's source; missing, the tests fail."""
    root = Path(__file__).resolve().parents[2]
    return (root / "node_modules" / "axe-core" / "axe.min.js").read_text(encoding="utf-8")


def page_paths(folder: Path) -> list[str]:
    """Every page of the publication in `folder` that stays when it is opened, from the root of the site."""
    root = folder / "site"
    pages = (path for path in root.rglob("*.html") if 'http-equiv="refresh"' not in path.read_text("utf-8"))
    return sorted(path.relative_to(root).as_posix() for path in pages)


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


def of_each_shelf(paths: list[str], *, most: int = 2) -> list[str]:
    """The first pages of each folder of the site; its pages are filled from one template."""
    shelves: dict[str, list[str]] = {}
    for path in paths:
        shelves.setdefault(path.partition("/")[0] if "/" in path else path, []).append(path)
    return [path for shelf in shelves.values() for path in shelf[:most]]


def faults_of(
    browser: Browser,
    address: str,
    paths: list[str],
    *,
    axe: str,
    width: int,
    checked: list[str] | None = None,
) -> list[str]:
    """What the checker, the measure of targets and the width of the pages give reason to complain of.

    `checked`: the pages that the checker sees, all where none are named; the measures see every page.
    """
    faults: list[str] = []
    # The checker is put into the page, which the content policy of the page would rightly forbid.
    with browser.new_context(viewport={"width": width, "height": 800}, bypass_csp=True) as context:
        page = context.new_page()
        for path in paths:
            page.goto(address + path)
            if checked is None or path in checked:
                page.add_script_tag(content=axe)
                faults += [f"{path}: {fault}" for fault in page.evaluate(_AXE, RULES)]
            faults += [f"{path}: {fault}" for fault in page.evaluate(_SMALL)]
            across = page.evaluate("document.documentElement.scrollWidth")
            faults += [f"{path}: {across} px wide"] if across > width else []
    return faults


@pytest.mark.parametrize("width", WIDTHS)
def test_the_pages_of_the_sample_are_accessible_and_inside_their_width(
    browser: Browser, served: str, built: Path, axe: str, width: int
) -> None:
    paths = page_paths(built)
    # What is drawn wide differs from the narrow page by its template's styles alone.
    checked = None if width == 320 else of_each_shelf(paths, most=1)
    assert faults_of(browser, served, paths, axe=axe, width=width, checked=checked) == []


@pytest.mark.parametrize("width", [360, 1280])
def test_the_pages_of_the_demo_are_accessible_and_inside_their_width(
    browser: Browser, served_demo: str, demo: Path, axe: str, width: int
) -> None:
    paths = page_paths(demo)
    # What is drawn wide differs from the narrow page by its template's styles alone: the sample is checked so.
    checked = of_each_shelf(paths, most=1) if width == 360 else []
    assert faults_of(browser, served_demo, paths, axe=axe, width=width, checked=checked) == []


@pytest.mark.long
@pytest.mark.parametrize("width", [360, 1280])
def test_every_page_of_the_demo_is_accessible(
    browser: Browser, served_demo: str, demo: Path, axe: str, width: int
) -> None:
    assert faults_of(browser, served_demo, page_paths(demo), axe=axe, width=width) == []


def complaints(browser: Browser, root: str, paths: list[str]) -> list[str]:
    """What the browser says of the pages, and whatever they ask of another host."""
    with browser.new_context(viewport={"width": 1280, "height": 800}) as context:
        page = context.new_page()
        heard = watched(page)
        asked: list[str] = []
        page.on("request", lambda request: asked.append(request.url))
        for path in paths:
            page.goto(root + path)
            page.evaluate("window.scrollTo({ top: document.body.scrollHeight, behavior: 'instant' })")
            page.evaluate(SETTLED)
    return heard + [f"asked: {url}" for url in asked if not url.startswith((root, "data:"))]


@pytest.mark.parametrize("scheme", [pytest.param("http", marks=pytest.mark.long), "file"])
def test_the_sample_asks_nothing_of_others_and_complains_of_nothing(
    browser: Browser, served: str, built: Path, scheme: str
) -> None:
    root = served if scheme == "http" else (built / "site").as_uri() + "/"
    assert complaints(browser, root, page_paths(built)) == []


def test_the_demo_asks_nothing_of_others_and_complains_of_nothing(
    browser: Browser, served_demo: str, demo: Path
) -> None:
    assert complaints(browser, served_demo, page_paths(demo)) == []


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


@pytest.mark.parametrize(
    "seen",
    [
        {"color_scheme": "dark"},
        {"contrast": "more"},
        pytest.param({"color_scheme": "dark", "contrast": "more"}, marks=pytest.mark.long),
    ],
)
def test_the_bake_and_its_lists_are_accessible_in_the_dark_and_in_high_contrast(
    browser: Browser, served: str, axe: str, seen: dict[str, str]
) -> None:
    with browser.new_context(bypass_csp=True, **seen) as context:  # type: ignore[arg-type]
        page = context.new_page()
        for path in ("recipes/honey-oat-braid/index.html", "index.html", "recipes/index.html", "404.html"):
            page.goto(served + path)
            page.add_script_tag(content=axe)
            assert (path, page.evaluate(_AXE, RULES)) == (path, [])


def test_a_caution_stays_loud_in_the_dark_and_in_forced_colours_and_paper_stays_light(
    browser: Browser, served: str
) -> None:
    edge = "getComputedStyle(document.querySelector('.caution')).borderTopWidth"
    ground = "getComputedStyle(document.documentElement).getPropertyValue('--slip').trim()"
    with browser.new_context(color_scheme="dark") as context:
        page = context.new_page()
        page.goto(served + "recipes/honey-oat-braid/index.html")
        assert page.evaluate(edge) == "7px"
        page.emulate_media(forced_colors="active")
        assert page.evaluate(edge) == "7px"
        page.emulate_media(media="print", color_scheme="dark", forced_colors="none")
        assert page.evaluate(ground) == "#fff"
