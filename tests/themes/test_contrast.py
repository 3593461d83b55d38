"""Every pair of colours that the style sheets of the pages set is told apart: light, dark, and with more contrast.

The ratio is that of WCAG 2.2 (relative luminance of sRGB); 4.5 : 1 is asked for text (1.4.3), 3 : 1 for the mark of
the focus and for lines and shapes that mean something (1.4.11), 7 : 1 for text where more contrast is wished (1.4.6).
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
import tinycss2
from PIL import ImageColor

ROOT = Path(__file__).parents[2] / "themes"
THEMES = ("docket", "rack")
VALUE = re.compile(r"^(?:var\(--([a-z-]+)\)|(#[0-9a-fA-F]{3,8}))$")
# No words stand in these.
WORDLESS = re.compile(r"::?(before|after)|input|\.sign|\.strip|\.bar")
GROUNDS = ("ground", "slip", "tray")


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    file: str
    media: str
    selector: str
    values: Mapping[str, str]


def rules(theme: str) -> Iterator[Rule]:
    """All rules of the style sheets for the screen. Print has one ink on white."""
    for path in sorted((ROOT / theme / "site").glob("*.css")):
        if path.name != "print.css":
            sheet = tinycss2.parse_stylesheet(
                path.read_text("utf-8"), skip_comments=True, skip_whitespace=True
            )
            yield from _rules(sheet, path.name, "")


def _rules(nodes: list[Any], file: str, media: str) -> Iterator[Rule]:
    for node in nodes:
        kind = getattr(node, "type", "")
        if kind == "at-rule" and node.lower_at_keyword in ("media", "container"):
            said = tinycss2.serialize(node.prelude).strip()
            if "print" not in said and "forced" not in said:
                inner = tinycss2.parse_rule_list(node.content, skip_comments=True, skip_whitespace=True)
                yield from _rules(inner, file, said)
        elif kind == "qualified-rule":
            content = node.content
            told = tinycss2.parse_declaration_list(content, skip_comments=True, skip_whitespace=True)
            values = {
                each.name: tinycss2.serialize(each.value).strip()
                for each in told
                if each.type == "declaration"
            }
            yield Rule(
                file=file, media=media, selector=tinycss2.serialize(node.prelude).strip(), values=values
            )


def palette(theme: str, *, dark: bool, more: bool) -> dict[str, str]:
    """The named colours as a reader with these wishes has them."""
    named: dict[str, str] = {}
    for rule in rules(theme):
        dark_only, more_only = "dark" in rule.media, "contrast" in rule.media
        if rule.selector == ":root" and (dark or not dark_only) and (more or not more_only):
            named |= {
                name.removeprefix("--"): value for name, value in rule.values.items() if name.startswith("--")
            }
    return named


def colour(value: str, named: Mapping[str, str]) -> tuple[int, int, int] | None:
    found = VALUE.match(value)
    if found is None:
        return None
    if found[1]:
        return colour(named[found[1]], named) if found[1] in named else None
    return ImageColor.getrgb(found[2])[:3]


def luminance(rgb: tuple[int, int, int]) -> float:
    """WCAG 2.2, “relative luminance”."""
    parts = [each / 255 for each in rgb]
    red, green, blue = (
        each / 12.92 if each <= 0.04045 else ((each + 0.055) / 1.055) ** 2.4 for each in parts
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def ratio(one: tuple[int, int, int], other: tuple[int, int, int]) -> float:
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def pairs(theme: str) -> Iterator[tuple[str, str, str, float]]:
    """Where, and the two values that stand on each other, with the ratio that is asked for."""
    grounds = [f"var(--{name})" for name in GROUNDS if name in palette(theme, dark=False, more=False)]
    for rule in rules(theme):
        where = f"{rule.file} {rule.selector}"
        ink = rule.values.get("color", "")
        ground = rule.values.get("background", rule.values.get("background-color", ""))
        if rule.selector == ":root" or WORDLESS.search(rule.selector):
            continue
        if VALUE.match(ink) and VALUE.match(ground):
            yield where, ink, ground, 4.5
        elif VALUE.match(ground):
            yield where, "var(--ink)" if rule.file != "missing.css" else "", ground, 4.5
        elif ink in ("var(--ink)", "var(--soft)", "var(--heat)"):
            yield from ((where, ink, each, 4.5) for each in grounds)
        outline = rule.values.get("outline", "").rpartition(" ")[2]
        if outline == "var(--heat)":
            yield from ((f"{where} (focus)", outline, each, 3.0) for each in grounds)


@pytest.mark.parametrize("more", [False, True])
@pytest.mark.parametrize("dark", [False, True])
@pytest.mark.parametrize("theme", THEMES)
def test_words_are_told_from_their_ground(theme: str, dark: bool, more: bool) -> None:
    named = palette(theme, dark=dark, more=more)
    checked, wrong = 0, []
    for where, ink, ground, least in pairs(theme):
        one, other = colour(ink, named), colour(ground, named)
        if one is None or other is None:
            continue
        checked += 1
        reached = ratio(one, other)
        asked = 7.0 if more and least == 4.5 and ink != "var(--heat)" else least
        if reached < asked:
            wrong.append(f"{where}: {ink} on {ground} is {reached:.2f}, not {asked}")
    assert checked > 60
    assert wrong == []


@pytest.mark.parametrize("dark", [False, True])
@pytest.mark.parametrize("theme", THEMES)
def test_what_is_drawn_is_told_from_its_ground(theme: str, dark: bool) -> None:
    """The bars of time: hands-on, waiting (an edge) and baking, each on the paper it stands on."""
    named = palette(theme, dark=dark, more=False)
    ground = colour("var(--tray)" if theme == "rack" else "var(--slip)", named)
    for drawn in ("var(--ink)", "var(--heat)"):
        one = colour(drawn, named)
        assert one is not None
        assert ground is not None
        assert ratio(one, ground) >= 3


@pytest.mark.parametrize("theme", THEMES)
def test_the_page_that_stands_alone_keeps_to_it_too(theme: str) -> None:
    """`missing.css` has its colours inside, once for light and once for dark."""
    for dark in (False, True):
        seen: dict[str, dict[str, str]] = {}
        for rule in rules(theme):
            if rule.file == "missing.css" and (dark or not rule.media):
                seen.setdefault(rule.selector, {}).update(rule.values)
        ground = seen.get("main", {}).get("background") or seen["body"]["background"]
        inks = [seen["body"]["color"], seen.get(".number", {}).get("color", seen["body"]["color"])]
        inks.append(
            seen["a:focus-visible"].get("outline-color") or seen["a:focus-visible"]["outline"].split()[-1]
        )
        for ink in inks:
            one, other = colour(ink, {}), colour(ground, {})
            assert one is not None
            assert other is not None
            assert ratio(one, other) >= 4.5


def test_the_ratio_is_that_of_the_standard() -> None:
    """WCAG 2.2, “contrast ratio”: 21 : 1 at most. Grey #767676 on white is known as the lightest above 4.5 : 1."""
    assert ratio((0, 0, 0), (255, 255, 255)) == pytest.approx(21)
    assert round(ratio((0x76, 0x76, 0x76), (255, 255, 255)), 2) == 4.54
