"""The docket of a bake in use: ticked with the keyboard, chosen ways, and both without scripts."""

import pytest
from playwright.sync_api import Browser

pytestmark = pytest.mark.browser

BRAID = "recipes/honey-oat-braid/index.html"


def test_a_tick_is_set_by_keyboard_and_remembered(browser: Browser, served: str) -> None:
    with browser.new_context() as context:
        page = context.new_page()
        page.goto(served + BRAID)
        flour = page.get_by_role("checkbox", name="430 g 3⅓ cups bread flour")
        flour.focus()
        page.keyboard.press("Space")
        page.reload()
        assert flour.is_checked()
        assert page.get_by_role("checkbox", checked=True).count() == 1


def test_all_ticks_can_be_cleared(browser: Browser, served: str) -> None:
    with browser.new_context() as context:
        page = context.new_page()
        page.goto(served + BRAID)
        clear = page.get_by_role("button", name="Clear all ticks")
        assert clear.is_disabled()
        page.get_by_role("checkbox").first.check()
        clear.click()
        page.reload()
        assert page.get_by_role("checkbox", checked=True).count() == 0


def test_one_way_can_be_chosen_and_is_remembered(browser: Browser, served: str) -> None:
    with browser.new_context() as context:
        page = context.new_page()
        page.goto(served + BRAID)
        page.get_by_role("radio", name="By hand").check()
        page.reload()
        assert page.locator("#way-by-hand").is_visible()
        assert page.locator("#way-dough-cycle").is_hidden()
        assert page.locator("#method").is_visible()


def test_a_link_into_a_hidden_way_still_leads_there(browser: Browser, served: str) -> None:
    with browser.new_context() as context:
        page = context.new_page()
        page.goto(served + BRAID)
        page.get_by_role("radio", name="By hand").check()
        page.goto(served + BRAID + "#dough-cycle-2")
        page.reload()
        assert page.locator("#dough-cycle-2").is_visible()


def test_without_scripts_every_way_and_every_line_is_there(browser: Browser, served: str) -> None:
    with browser.new_context(java_script_enabled=False) as context:
        page = context.new_page()
        page.goto(served + BRAID)
        assert page.locator("#way-by-hand").is_visible()
        assert page.locator("#way-dough-cycle").is_visible()
        assert page.get_by_role("checkbox").count() == 12
        page.get_by_role("link", name="By hand").click()
        assert page.url.endswith("#way-by-hand")


def test_the_first_stop_of_the_keyboard_skips_to_the_text(browser: Browser, served: str) -> None:
    with browser.new_context() as context:
        page = context.new_page()
        page.goto(served + BRAID)
        page.keyboard.press("Tab")
        skip = page.get_by_role("link", name="Skip to the text")
        assert skip.evaluate("one => one === document.activeElement")
        assert skip.bounding_box() is not None
        page.keyboard.press("Enter")
        assert page.url.endswith("#leaf-main")


def test_every_stop_of_the_keyboard_is_seen(browser: Browser, served: str) -> None:
    """WCAG 2.4.7: whatever has the focus has an outline."""
    with browser.new_context() as context:
        page = context.new_page()
        page.goto(served + BRAID)
        bare: list[str] = []
        reached = 0
        for _ in range(60):
            page.keyboard.press("Tab")
            if page.evaluate("document.activeElement === document.body"):
                break
            outline = page.evaluate(
                "() => { const one = document.activeElement; const seen = one.closest('label') || one;"
                " return [one.outerHTML.slice(0, 60), getComputedStyle(one).outlineStyle,"
                " getComputedStyle(seen).outlineStyle]; }"
            )
            bare += [outline[0]] if outline[1:] == ["none", "none"] else []
            reached += 1
    assert bare == []
    assert reached > 30


def test_the_chosen_way_and_the_figures_print_in_one_ink(browser: Browser, served: str) -> None:
    with browser.new_context() as context:
        page = context.new_page()
        page.goto(served + BRAID)
        page.emulate_media(media="print")
        assert page.locator(".masthead").is_hidden()
        assert page.locator(".lines label").first.is_visible()
        colour = page.locator(".numeral").first.evaluate("one => getComputedStyle(one).color")
        assert colour == "rgb(0, 0, 0)"
