"""The table of allergens and the desk's table of people in a real browser: filter, keyboard, no script, paper."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from generator.declaration.people import Answer
from generator.present.people import BakeRow, PeopleView, PersonCell, PersonHead
from generator.render.people_sheet.render import render_people
from tests.browser.conftest import serving
from tests.browser.test_pages import faults_of
from tests.browser.test_validity import complaints

pytestmark = pytest.mark.browser
TABLE = "allergens/index.html"
ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture(scope="module")
def axe() -> str:
    return (ROOT / "node_modules" / "axe-core" / "axe.min.js").read_text(encoding="utf-8")


@pytest.mark.parametrize("width", [320, pytest.param(1280, marks=pytest.mark.long)])
def test_the_table_is_accessible_with_everything_opened(
    browser: Browser,
    served_demo: str,
    axe: str,
    width: int,
) -> None:
    assert faults_of(browser, served_demo, [TABLE], axe=axe, width=width) == []
    with browser.new_context(viewport={"width": width, "height": 800}, bypass_csp=True) as context:
        page = context.new_page()
        page.goto(served_demo + TABLE)
        page.evaluate("for (const one of document.querySelectorAll('details')) one.open = true")
        page.add_script_tag(content=axe)
        found = page.evaluate("async () => (await axe.run()).violations.map((one) => one.id)")
    assert found == []


def test_the_filter_hides_what_lists_and_says_beside_it_that_this_is_no_promise(
    browser: Browser, served_demo: str
) -> None:
    with browser.new_context() as context:
        page = context.new_page()
        page.goto(served_demo + TABLE)
        rows = page.locator(".allergens tbody tr")
        everything = rows.count()
        page.get_by_label("milk", exact=True).check()
        shown = page.locator(".allergens tbody tr:not([hidden])")
        assert 0 < shown.count() < everything
        column = page.locator(".allergens thead th").all_inner_texts().index("milk") - 1
        for row in shown.all():
            assert row.locator("td").nth(column).get_attribute("class") == "not-listed"
        assert "no promise" in page.locator(".allergen-warning").inner_text()
        assert page.get_by_role("status").inner_text() == (
            f"{shown.count()} of {everything} bakes do not list what is ticked. "
            "Ask first: this is no promise."
        )
        page.get_by_label("milk", exact=True).uncheck()
        assert shown.count() == everything


def test_where_it_comes_from_is_reached_by_keyboard(browser: Browser, served_demo: str) -> None:
    with browser.new_context() as context:
        page = context.new_page()
        page.goto(served_demo + TABLE)
        first = page.locator(".allergens summary").first
        first.focus()
        page.keyboard.press("Enter")
        assert page.locator(".allergens details[open] li").first.is_visible()
        name = first.inner_text()
        assert name.startswith("from")
        before = page.evaluate("document.activeElement.tagName")
        page.keyboard.press("Tab")
        assert (before, page.evaluate("document.activeElement === null")) == ("SUMMARY", False)


def test_the_table_stands_without_scripts_and_on_paper(browser: Browser, served_demo: str) -> None:
    with browser.new_context(java_script_enabled=False) as context:
        page = context.new_page()
        page.goto(served_demo + TABLE)
        assert page.locator(".allergen-filter").count() == 0
        assert page.locator(".allergens tbody tr").count() > 10
        assert page.get_by_text("may still hold traces").is_visible()
        page.locator(".allergens summary").first.click()
        assert page.locator(".allergens details[open] li").first.is_visible()
        page.emulate_media(media="print")
        assert page.locator(".allergens .said").first.is_visible()


def test_each_mark_has_its_own_shape_and_word(browser: Browser, served_demo: str) -> None:
    with browser.new_context() as context:
        page = context.new_page()
        page.goto(served_demo + TABLE)
        signs = page.locator(".signs li")
        shapes = {sign.locator("svg").inner_html() for sign in signs.all()[:3]}
        words = [sign.inner_text().strip().split(":")[0] for sign in signs.all()]
        assert len(shapes) == 3
        assert words[:3] == ["Contains", "May contain", "To be read"]


def sheet() -> PeopleView:
    states = ("contains", "may contain", "unknown", "not stated")
    cells = tuple(
        PersonCell(state=state, answers=(Answer(word="milk", state=state, reasons=("butter: <its> pack",)),))
        for state in states
    )
    people = tuple(PersonHead(name=f"Person {at}", avoids="milk", note="") for at in range(4))
    return PeopleView(
        title="A shelf",
        language="en-US",
        theme="docket",
        people=people,
        rows=(BakeRow(title="Tart & tea", cells=cells),),
    )


@pytest.fixture(scope="module")
def desk(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("desk")
    (folder / "site").mkdir()
    (folder / "site" / "index.html").write_bytes(render_people(sheet()).content)
    return folder


@pytest.fixture(scope="module")
def served_desk(desk: Path) -> Iterator[str]:
    with serving(desk) as address:
        yield address


@pytest.mark.parametrize("width", [320, pytest.param(1280, marks=pytest.mark.long)])
def test_the_table_of_people_is_accessible(
    browser: Browser,
    served_desk: str,
    axe: str,
    width: int,
) -> None:
    assert faults_of(browser, served_desk, ["index.html"], axe=axe, width=width) == []


def test_the_table_of_people_is_valid(desk: Path) -> None:
    assert complaints(desk) == []
