"""Sizes, measures and heats on the page of a bake: the strings of `tinleaf show`, remembered, by keyboard alone."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Locator, Page

from tests.browser.test_pages import RULES, axe
from tests.demo import checked, offered, offers_of, shown

__all__ = ["axe"]
pytestmark = pytest.mark.browser

CAKE = "recipes/crackle-apple-cake/index.html"
TART = "recipes/lemon-almond-tart/index.html"

# Every size in both orders: what each docket line says, and what each step says with the weight first.
_EVERYTHING = """() => {
  const plain = (element) => element.textContent.replace(/\\s+/g, " ").trim();
  const all = (selector) => [...document.querySelectorAll(selector)];
  const choose = (element) => element.dispatchEvent(new Event("change", { bubbles: true }));
  const size = document.querySelector("#leaf-size");
  const found = [];
  for (const option of [...size.options]) {
    size.value = option.value;
    choose(size);
    const told = { id: option.value };
    for (const radio of all('[name="leaf-measure"]')) {
      radio.checked = true;
      choose(radio);
      told[radio.value] = all(".lines label").map((line) =>
        [".first", ".second"].map((name) => plain(line.querySelector(name))));
      told[`${radio.value} steps`] = all(".step-words").map(plain);
    }
    told.percents = all(".lines .percent").map(plain);
    told.times = all(".times, .need-baking, .need-waiting, .need-hands_on, .need-heat").map(plain);
    told.status = all(".chosen p").map(plain);
    found.push(told);
  }
  return found;
}"""


def _said(words: Locator) -> str:
    """What a reader sees, ties as blanks."""
    return words.inner_text().replace("\u00a0", " ")


def _opened(page: Page, address: str) -> Page:
    page.goto(address)
    page.locator(".choices").wait_for(state="visible")
    return page


@pytest.fixture(scope="module")
def everything(browser: Browser, demo: Path) -> dict[str, list[dict[str, Any]]]:
    """What the page of each bake says in each size, opened from a disk and without a network."""
    found = {}
    with browser.new_context(offline=True) as context:
        page = context.new_page()
        for recipe in checked().site.recipes:
            _opened(page, (demo / "site" / recipe.path / "index.html").as_uri())
            found[recipe.name] = page.evaluate(_EVERYTHING)
    return found


def _expected(line: dict[str, str], *, first: str) -> list[str]:
    pair = [line["weight"], line["volume"]]
    ordered = pair if first == "weight" else pair[::-1]
    return ordered if ordered[0] else [ordered[1], ""]


def _lines(data: dict[str, Any]) -> Iterator[dict[str, str]]:
    return (line for part in data["parts"] for line in part["lines"])


def test_every_size_of_every_bake_is_offered_on_its_page(everything: dict[str, list[dict[str, Any]]]) -> None:
    assert {name: [told["id"] for told in sizes] for name, sizes in everything.items()} == {
        recipe.name: [offer.id for offer in offers_of(recipe)] for recipe in checked().site.recipes
    }


def test_the_amounts_on_the_page_are_those_of_show(everything: dict[str, list[dict[str, Any]]]) -> None:
    wrong = []
    for recipe, offer in offered():
        [told] = [each for each in everything[recipe.name] if each["id"] == offer.id]
        data = shown(recipe.name, offer)
        for first in ("weight", "volume"):
            expected = [_expected(line, first=first) for line in _lines(data)]
            wrong += [] if told[first] == expected else [(recipe.name, offer.id, first, told[first])]
    assert wrong == []


def test_the_steps_on_the_page_are_those_of_show(everything: dict[str, list[dict[str, Any]]]) -> None:
    wrong, compared = [], 0
    for recipe, offer in offered():
        [told] = [each for each in everything[recipe.name] if each["id"] == offer.id]
        printed = {" ".join(step["text"].split()) for step in shown(recipe.name, offer)["steps"]}
        compared += len(told["weight steps"])
        wrong += [(recipe.name, offer.id, step) for step in told["weight steps"] if step not in printed]
    assert wrong == []
    assert compared > 500


def test_percents_times_and_heats_are_the_same_in_every_size(
    everything: dict[str, list[dict[str, Any]]],
) -> None:
    for sizes in everything.values():
        assert [told["percents"] for told in sizes] == [sizes[0]["percents"]] * len(sizes)
        assert [told["times"] for told in sizes] == [sizes[0]["times"]] * len(sizes)


def test_the_notes_of_a_size_are_told_beside_it(everything: dict[str, list[dict[str, Any]]]) -> None:
    for recipe, offer in offered():
        [told] = [each for each in everything[recipe.name] if each["id"] == offer.id]
        assert told["status"] == ([offer.scale, *offer.notes] if offer.scale else [])


def test_the_choice_is_remembered_by_bake_and_by_site(browser: Browser, demo: Path) -> None:
    site = (demo / "site").as_uri() + "/"
    with browser.new_context(offline=True) as context:
        page = _opened(context.new_page(), site + CAKE)
        page.get_by_label("Make").select_option("round 9 in")
        page.get_by_role("radio", name="volume first").check()
        page.get_by_role("radio", name="°C first").check()
        page.reload()
        assert page.get_by_label("Make").input_value() == "round 9 in"
        assert _said(page.locator(".chosen .scale")).startswith("0.79 × the recipe, for round")
        assert _said(page.locator(".told-heat b").first) == "175 °C"
        _opened(page, site + TART)
        assert page.get_by_label("Make").input_value() == "1"
        assert page.get_by_role("radio", name="volume first").is_checked()
        assert _said(page.locator(".need-heat").first).endswith("190 °C (375 °F, gas mark 5)")


def test_a_size_that_is_no_longer_offered_is_forgotten(browser: Browser, served_demo: str) -> None:
    with browser.new_context() as context:
        page = _opened(context.new_page(), served_demo + CAKE)
        before = _said(page.locator(".docket"))
        page.evaluate("localStorage.setItem('size crackle-apple-cake', '{\"size\": \"round 99 in\"}')")
        page.reload()
        assert page.get_by_label("Make").input_value() == "1"
        assert _said(page.locator(".docket")) == before


def test_a_browser_that_keeps_nothing_still_shows_every_size(browser: Browser, served_demo: str) -> None:
    with browser.new_context() as context:
        context.add_init_script(
            "Object.defineProperty(window, 'localStorage', { get() { throw new Error('forbidden'); } })"
        )
        page = context.new_page()
        faults: list[str] = []
        page.on("pageerror", lambda error: faults.append(str(error)))
        _opened(page, served_demo + CAKE)
        page.get_by_label("Make").select_option("2")
        assert _said(page.locator(".lines .first").first) == "230 g"
        assert faults == []


def test_everything_is_chosen_by_keyboard_alone(browser: Browser, served_demo: str) -> None:
    with browser.new_context() as context:
        page = _opened(context.new_page(), served_demo + CAKE)
        page.get_by_label("Make").focus()
        page.keyboard.press("ArrowDown")
        assert _said(page.locator(".chosen .scale")) == "½ × the recipe"
        page.keyboard.press("Tab")
        page.keyboard.press("ArrowRight")
        assert page.get_by_role("radio", name="volume first").is_checked()
        assert _said(page.locator(".lines .first").first) == "½ stick"
        page.keyboard.press("Tab")
        page.keyboard.press("ArrowLeft")
        assert page.get_by_role("radio", name="°C first").is_checked()
        seen = page.evaluate("getComputedStyle(document.activeElement.closest('label')).outlineStyle")
        assert seen == "solid"


def test_a_screen_reader_hears_what_was_chosen(browser: Browser, served_demo: str) -> None:
    with browser.new_context() as context:
        page = _opened(context.new_page(), served_demo + CAKE)
        assert _said(page.get_by_role("status")) == ""
        page.get_by_label("Make").select_option("3")
        heard = _said(page.get_by_role("status"))
        assert heard.startswith("3 × the recipe")
        assert "more than double" in heard
        assert page.get_by_role("group", name="Measure", exact=True).get_by_role("radio").count() == 2
        assert page.get_by_role("group", name="Heat", exact=True).get_by_role("radio").count() == 3
        assert page.get_by_role("checkbox", name="345 g 3 sticks unsalted butter").count() == 1


def test_without_scripts_the_whole_page_stands_in_both_units(browser: Browser, served_demo: str) -> None:
    with browser.new_context(java_script_enabled=False) as context:
        page = context.new_page()
        page.goto(served_demo + CAKE)
        assert page.locator(".choices").is_hidden()
        assert [each.is_hidden() for each in page.locator(".as-written").all()] == [True, True]
        assert _said(page.locator(".lines label").first).split("\n")[:2] == ["115 g", "1 stick"]
        assert _said(page.locator(".told-heat").first) == "350 °F (175 °C)"


@pytest.mark.parametrize("width", [320, 1280])
def test_a_chosen_size_is_accessible_and_inside_its_width(
    browser: Browser, served_demo: str, axe: str, width: int
) -> None:
    with browser.new_context(viewport={"width": width, "height": 800}, bypass_csp=True) as context:
        page = _opened(context.new_page(), served_demo + CAKE)
        page.get_by_label("Make").select_option("rectangle 13 x 9 in")
        page.get_by_role("radio", name="volume first").check()
        page.locator(".ovens summary").click()
        page.add_script_tag(content=axe)
        found = page.evaluate(
            "(rules) => axe.run(document, { runOnly: { type: 'tag', values: rules } })"
            ".then((found) => found.violations.map((one) => `${one.id}: ${one.nodes[0].html}`))",
            RULES,
        )
        assert found == []
        assert page.evaluate("document.documentElement.scrollWidth") <= width


def test_a_printed_page_says_which_size_it_shows(browser: Browser, served_demo: str) -> None:
    with browser.new_context() as context:
        page = _opened(context.new_page(), served_demo + CAKE)
        page.get_by_label("Make").select_option("2")
        page.emulate_media(media="print")
        assert page.locator(".choices").is_hidden()
        assert page.locator(".chosen .scale").is_visible()
        assert _said(page.locator(".chosen .scale")) == "2 × the recipe"
        assert _said(page.locator(".lines .first").first) == "230 g"
