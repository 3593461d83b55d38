"""The kitchen view: one step a screen, timers from the step's own durations, that outlive a reload."""

import pytest
from playwright.sync_api import Browser, Page, expect

pytestmark = pytest.mark.browser

BRAID = "recipes/honey-oat-braid/index.html"


def _opened(page: Page, served: str) -> None:
    page.goto(served + BRAID)
    page.get_by_role("button", name="Kitchen view").click()
    expect(page.get_by_role("dialog")).to_be_visible()


def _by_hand(page: Page, served: str) -> None:
    _opened(page, served)
    page.get_by_role("dialog").get_by_role("button", name="By hand").click()


def test_it_asks_for_the_way_and_then_shows_one_step_a_screen(browser: Browser, served: str) -> None:
    with browser.new_context() as context:
        page = context.new_page()
        _opened(page, served)
        view = page.get_by_role("dialog")
        assert view.get_by_role("button", name="Next").is_disabled()
        view.get_by_role("button", name="By hand").click()
        assert page.locator(".kitchen-place").text_content() == "Step 1 of 3, By hand"
        assert view.locator(".step").count() == 1
        assert "Mix everything but the peel." in (view.locator(".step").text_content() or "")


def test_every_step_of_the_way_and_of_the_common_part_is_a_screen(browser: Browser, served: str) -> None:
    with browser.new_context() as context:
        page = context.new_page()
        _by_hand(page, served)
        shown = []
        for _ in range(3):
            shown.append(page.locator(".kitchen .step-words").text_content())
            page.keyboard.press("ArrowRight")
        written = [
            each.text_content()
            for each in page.locator("article #way-by-hand .step-words, article #method .step-words").all()
        ]
        assert shown == written
        assert page.get_by_role("dialog").count() == 0


def test_a_timer_counts_down_rings_and_outlives_a_reload(browser: Browser, served: str) -> None:
    with browser.new_context() as context:
        page = context.new_page()
        page.clock.install()
        _by_hand(page, served)
        page.get_by_role("button", name="Start timer: 12 min knead").click()
        page.get_by_role("button", name="Start timer: 1 h 30 min rise").click()
        names = page.locator(".timer-name").all_text_contents()
        assert names == ["knead, step 1", "rise, step 1"]
        page.clock.fast_forward("10:00")
        page.reload()
        expect(page.locator(".timer")).to_have_count(2)
        assert (page.locator(".timer-left").first.text_content() or "").startswith(("1:5", "2:00"))
        page.clock.fast_forward("02:05")
        expect(page.locator(".timer-said").first).to_have_text("time is up")
        page.get_by_role("button", name="Quiet: knead, step 1").click()
        assert page.locator(".timer-rings").count() == 0
        page.get_by_role("button", name="Stop: knead, step 1").click()
        expect(page.locator(".timer")).to_have_count(1)


def test_a_range_says_look_first_and_then_that_time_is_up(browser: Browser, served: str) -> None:
    with browser.new_context() as context:
        page = context.new_page()
        page.clock.install()
        _by_hand(page, served)
        page.keyboard.press("ArrowRight")
        page.keyboard.press("ArrowRight")
        page.get_by_role("button", name="Start timer: 12 to 15 min bake").click()
        page.clock.fast_forward("12:02")
        expect(page.locator(".timer-said")).to_have_text("look now")
        page.clock.fast_forward("03:00")
        expect(page.locator(".timer-said")).to_have_text("time is up")


def test_a_reload_in_the_middle_leads_back_to_the_same_step(browser: Browser, served: str) -> None:
    with browser.new_context() as context:
        page = context.new_page()
        _by_hand(page, served)
        page.keyboard.press("ArrowRight")
        before = page.locator(".kitchen .step-words").text_content()
        page.reload()
        expect(page.get_by_role("dialog")).to_be_visible()
        assert page.locator(".kitchen .step-words").text_content() == before


def test_escape_leads_back_to_the_page_and_the_button(browser: Browser, served: str) -> None:
    with browser.new_context() as context:
        page = context.new_page()
        _opened(page, served)
        page.keyboard.press("Escape")
        assert page.get_by_role("dialog").count() == 0
        door = page.get_by_role("button", name="Kitchen view")
        assert door.evaluate("one => one === document.activeElement")


@pytest.mark.parametrize("width", [320, 390, 1280])
def test_nothing_is_wider_than_the_screen(browser: Browser, served: str, width: int) -> None:
    with browser.new_context(viewport={"width": width, "height": 700}) as context:
        page = context.new_page()
        _by_hand(page, served)
        page.get_by_role("button", name="Start timer: 12 min knead").click()
        for each in (".kitchen", ".kitchen-leaf", ".timers"):
            wide = page.locator(each).first.evaluate("one => one.scrollWidth - one.clientWidth")
            assert wide <= 0, each


def test_without_scripts_no_door_stands_there(browser: Browser, served: str) -> None:
    with browser.new_context(java_script_enabled=False) as context:
        page = context.new_page()
        page.goto(served + BRAID)
        assert page.get_by_role("button", name="Kitchen view").count() == 0
