"""A whole day at the desk, in a browser: an old text comes in, is baked, corrected, copied and marked."""

from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image
from playwright.sync_api import Browser, Page, expect

from tests.desk.served import DAY, Served

UNNAMED = """all => all.filter(each => !(each.labels && each.labels.length) && !each.ariaLabel
    && !each.textContent.trim()).length"""

AXE = Path(__file__).resolve().parents[2] / "node_modules" / "axe-core" / "axe.min.js"
BROKEN = """async () => (await axe.run({runOnly: ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa", "best-practice"]}))
    .violations.map(each => `${each.id}: ${each.nodes[0].target}`)"""

_MADE = BytesIO()
Image.new("RGB", (40, 30), (180, 120, 60)).save(_MADE, "PNG")
PICTURE = _MADE.getvalue()

pytestmark = pytest.mark.browser

OLD = """Mill bread with milk

It is a plain loaf for toast.

Ingredients
500 g bread flour
300 g water
10 g salt
7 g instant yeast

Method
1. Mix the bread flour, water, salt and instant yeast and knead for 10 minutes.
2. Let rise for 1 hour. Bake at 220 C for 35 minutes.
"""


@pytest.fixture(scope="session")
def desk(running_desk: Served) -> Served:
    return running_desk


def test_a_day_at_the_desk(browser: Browser, desk: Served) -> None:
    context = browser.new_context(viewport={"width": 390, "height": 844})
    page = context.new_page()
    errors: list[str] = []
    page.on("pageerror", lambda error: errors.append(str(error)))
    name = _bring(page, desk)
    _bake(page, desk, name)
    _correct(page, desk, name)
    _post(page, desk, name)
    assert errors == []
    context.close()


def _bring(page: Page, desk: Served) -> str:
    page.goto(f"{desk.address}/desk/bring")
    page.get_by_role("textbox").fill(OLD)
    page.get_by_role("button", name="Read it").click()
    write = page.get_by_role("button", name="Write the recipe file")
    expect(write).to_be_disabled()
    page.get_by_role("button", name="Accept all lines").click()
    cut = "all => all.filter((each) => each.scrollHeight > each.clientHeight + 1).length"
    assert page.locator(".result textarea").evaluate_all(cut) == 0
    line = page.get_by_role("textbox", name="Line 3", exact=True)
    line.focus()
    assert page.locator(".came-from:visible").count() == 1
    line.press("Enter")
    expect(page.get_by_role("textbox", name="Line 4", exact=True)).to_be_focused()
    for box in page.locator(".result [type=checkbox]:not(:checked)").all():
        box.check()
    name = page.locator("#name").input_value()
    assert not list((desk.root / "recipes").glob(f"{name}.md"))
    write.click()
    page.wait_for_url(f"**/desk/edit/{name}")
    page.get_by_text("The usual fields").click()
    page.locator("[name=published]").fill("2026-11-20")
    page.get_by_role("button", name="Save the fields").click()
    expect(page.locator("#desk-said")).to_contain_text("is saved")
    assert "published: 2026-11-20" in (desk.root / f"recipes/{name}.md").read_text()
    return name


def _bake(page: Page, desk: Served, name: str) -> None:
    page.goto(f"{desk.address}/desk/bench/{name}")
    page.get_by_role("button", name="Start weighing").click()
    expect(page.locator("#now-amount")).to_have_text("500 g")
    expect(page.locator("#line-state")).to_contain_text("Everything is in the record")
    page.context.set_offline(True)
    tick = page.locator("#tick")
    for _ in range(4):
        tick.click()
    page.locator("#what").select_option(label="bread flour")
    for _ in range(4):
        page.get_by_role("button", name="+10 g").click()
    # One too many: it is taken back.
    page.get_by_role("button", name="Leave it out").last.click()
    page.locator("#photo").set_input_files({"name": "crumb.png", "mimeType": "image/png", "buffer": PICTURE})
    expect(page.locator("#line-state")).to_contain_text("6 entries wait")
    # The page is closed before the connection is back.
    context = page.context
    page.goto("about:blank")
    context.set_offline(False)
    page.goto(f"{desk.address}/desk/bench/{name}")
    expect(page.locator("#line-state")).to_contain_text("Everything is in the record")
    expect(page.locator("#count")).to_contain_text("4 of 4 are in")
    record = (desk.root / f"bakes/{DAY}-{name}.yaml").read_text()
    assert record.count("{what: bread flour, amount: 10 g}") == 3
    assert record.count(f"media/bakes/{DAY}-{name}-1.jpg") == 1
    assert (desk.root / f"media/bakes/{DAY}-{name}-1.jpg").read_bytes().startswith(b"\xff\xd8")


def test_what_was_pressed_by_mistake_is_no_harm(browser: Browser, desk: Served) -> None:
    """A line is not ticked by the second half of a double press; an addition is taken out of the record again."""
    page = browser.new_page(viewport={"width": 390, "height": 844})
    page.goto(f"{desk.address}/desk/bench/saturday-tin-loaf")
    page.get_by_role("button", name="Start weighing").click()
    page.locator("#tick").dblclick()
    expect(page.locator("#count")).to_contain_text("1 of")
    page.get_by_role("button", name="+25 g").click()
    expect(page.locator("#log")).to_contain_text("in the record")
    record = desk.root / f"bakes/{DAY}-saturday-tin-loaf.yaml"
    assert record.read_text().count("amount: 25 g") == 1
    page.get_by_role("button", name="Leave it out: 25 g").press("Enter")
    expect(page.locator("#log")).to_contain_text("left out again")
    expect(page.locator("#line-state")).to_contain_text("Everything is in the record")
    assert "amount: 25 g" not in record.read_text()
    page.close()


def test_a_bake_goes_on_past_midnight_when_one_says_so(browser: Browser, desk: Served) -> None:
    page = browser.new_page()
    address = f"{desk.address}/desk/bench/saturday-tin-loaf"
    page.goto(address)
    page.get_by_role("button", name="Start weighing").click()
    page.locator("#tick").click()
    expect(page.locator("#line-state")).to_contain_text("Everything is in the record")
    # The day turns: what is kept is of the day before.
    page.evaluate(
        """() => { const key = "bench saturday-tin-loaf", kept = JSON.parse(localStorage.getItem(key));
        localStorage.setItem(key, JSON.stringify({...kept, day: "2026-11-24"})); }"""
    )
    page.goto(address)
    expect(page.locator("#weigh")).to_be_hidden()
    page.get_by_role("button", name="Go on with the bake of 2026-11-24").click()
    expect(page.locator("#count")).to_contain_text("1 of")
    expect(page.locator(".docket-number")).to_contain_text("2026-11-24")
    page.reload()
    expect(page.locator("#count")).to_contain_text("1 of")
    page.get_by_role("button", name="Finish, and clear the ticks").click()
    page.wait_for_url("**/desk/")
    page.close()


def test_the_editor_marks_what_is_wrong_and_keeps_what_was_typed_elsewhere(
    browser: Browser, desk: Served
) -> None:
    page = browser.new_page()
    recipe = desk.root / "recipes/saturday-tin-loaf.md"
    before = recipe.read_text()
    page.goto(f"{desk.address}/desk/edit/{recipe.stem}")
    text = page.locator("#text")
    text.fill(text.input_value().replace("formula:", "formulas:", 1))
    expect(page.locator("#marks mark", has_text="formulas:")).to_have_count(1)
    expect(page.locator("#found")).to_contain_text("formulas")
    text.fill(before.replace("\ntitle:", "\n# mine\ntitle:", 1))
    recipe.write_text(before.replace("\ntitle:", "\n# theirs\ntitle:", 1))
    text.press("Control+s")
    expect(page.locator("#difference")).to_be_focused()
    expect(page.locator("#difference")).to_contain_text("-# theirs")
    expect(page.locator("#difference")).to_contain_text("+# mine")
    assert "# mine" not in recipe.read_text()
    page.get_by_role("button", name="Take the file as it stands").click()
    text.fill(text.input_value().replace("# theirs", "# both", 1))
    text.press("Control+s")
    expect(page.locator("#desk-said")).to_contain_text("is saved")
    assert recipe.read_text() == before.replace("\ntitle:", "\n# both\ntitle:", 1)
    recipe.write_text(before)
    page.close()


def _correct(page: Page, desk: Served, name: str) -> None:
    page.get_by_role("button", name="Sum it up").click()
    expect(page.locator(".offer code")).to_contain_text("530 g")
    page.get_by_role("button", name="Correct the recipe so").click()
    expect(page.locator(".offer")).to_contain_text("revision 2")
    page.goto(f"{desk.address}/recipes/{name}/")
    expect(page.locator("main")).to_contain_text("530 g")


def _post(page: Page, desk: Served, name: str) -> None:
    page.goto(f"{desk.address}/desk/")
    page.evaluate(
        "navigator.clipboard.writeText = (text) => { window.copied = text; return Promise.resolve(); }"
    )
    bake = page.locator(".bake", has_text="Mill bread").first
    bake.get_by_text("To open, copy or print").click()
    bake.get_by_role("button", name="Copy the description").click()
    expect(page.locator("#desk-said")).to_contain_text("✓")
    assert "530 g" in page.evaluate("window.copied")
    page.goto(f"{desk.address}/desk/copies")
    copy = page.locator(".copy", has_text="Mill bread with milk: page")
    copy.get_by_role("button", name="Mark as posted").click()
    expect(page.locator("#desk-said")).to_contain_text("carries revision 2")
    assert '"event": "posted"' in (desk.root / "ledger.jsonl").read_text()


def test_a_saved_file_is_shown_by_itself(browser: Browser, desk: Served) -> None:
    page = browser.new_page()
    recipe = desk.root / "recipes/saturday-tin-loaf.md"
    with page.expect_response("**/desk/events"):
        page.goto(f"{desk.address}/recipes/{recipe.stem}/")
    text = recipe.read_text()
    title = next(line for line in text.splitlines() if line.startswith("title:"))
    recipe.write_text(text.replace(title, "title: Another name", 1))
    expect(page.locator("h1")).to_have_text("Another name", timeout=10_000)
    recipe.write_text(text.replace("formula:", "formulas:", 1))
    expect(page.locator("#desk-live")).to_contain_text("formulas", timeout=10_000)
    expect(page.locator("h1")).to_have_text("Another name")
    recipe.write_text(text)
    page.close()


@pytest.mark.parametrize(("width", "height"), [(390, 844), pytest.param(820, 1180, marks=pytest.mark.long)])
def test_every_page_of_the_desk_is_complete_on_a_phone_and_a_tablet(
    browser: Browser, desk: Served, width: int, height: int
) -> None:
    """Nothing is wider than the screen, all has a name, and axe finds nothing (WCAG 2.2 AA, good practices)."""
    context = browser.new_context(viewport={"width": width, "height": height}, bypass_csp=True)
    page = context.new_page()
    name = next((desk.root / "recipes").glob("*.md")).stem
    (waiting,) = desk.send("/desk/bring", {"text": OLD.replace("Mill bread", f"Loaf {width}")}).values["ids"]
    paths = ("", "copies", "pantry", "bring", f"edit/{name}", f"bench/{name}", f"review/{waiting}", "enter")
    for path in paths:
        page.goto(f"{desk.address}/desk/{path}")
        assert page.evaluate("document.documentElement.scrollWidth") <= width, path
        unnamed = page.locator(
            "input:visible, select:visible, textarea:visible, button:visible"
        ).evaluate_all(UNNAMED)
        assert unnamed == 0, path
        page.add_script_tag(path=str(AXE))
        assert page.evaluate(BROKEN) == [], path
    page.goto(f"{desk.address}/desk/bench/{name}")
    assert page.locator("#size option").count() > 1
    assert all(each.strip() for each in page.locator("#size option").all_inner_texts())
    context.close()
