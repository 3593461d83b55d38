"""The readers are not blind: an output of another recipe, one figure away, is told apart by every one of them."""

import re
import shutil
from collections.abc import Mapping
from pathlib import Path

import pytest

from generator.pipeline import describe_text
from generator.render.site.frame import frame_of
from generator.render.site.page import page_product
from generator.render.site.pages import recipe_page
from tests.agreement.claims import inner_disagreements
from tests.agreement.comparing import disagreements
from tests.agreement.making import Baked, baked, sheets_of, texts_of
from tests.agreement.reading import Output, holds, plain, read_description, read_page

KITCHEN = Path(__file__).resolve().parent.parent / "golden" / "kitchens" / "spooned" / "content"
CROWN = "raisin-crown"

ON_EVERY_OUTPUT = {
    "a weight": ("142 g plumped raisins", "143 g plumped raisins"),
    "a temperature of the oven": ("{oven 340 F}", "{oven 345 F}"),
    "the end of a time": ("{bake 12-18 min}", "{bake 12-19 min}"),
}
ON_EVERY_TEXT = {
    **ON_EVERY_OUTPUT,
    "a spoon": ("1 3/4 tsp table salt", "1 1/2 tsp table salt"),
    "an egg": ("1 small egg", "1 medium egg"),
    "the end of a range": ("30-40 g sliced almonds", "30-41 g sliced almonds"),
    "a temperature of the bake": ("{core 190 F}", "{core 191 F}"),
    "a share": ("{bread flour: 3/5}", "{bread flour: 2/5}"),
    "an extra": ("{10 g of bread flour}", "{12 g of bread flour}"),
    "a waiting time": ("{rise 1 h 30 min}", "{rise 1 h 35 min}"),
    "an ingredient": ("30-40 g sliced almonds", "30-40 g chopped walnuts"),
}


@pytest.fixture(scope="module")
def crown() -> Baked:
    return baked(KITCHEN, CROWN)


def changed(folder: Path, change: tuple[str, str]) -> Baked:
    """The same recipe in a folder of its own, with one passage changed wherever it stands."""
    shutil.copytree(KITCHEN, folder)
    path = folder / "recipes" / f"{CROWN}.md"
    text = path.read_text(encoding="utf-8")
    assert change[0] in text
    text = text.replace(*change)
    if "walnuts" in change[1]:
        text = text.replace("{sliced almonds}", "{chopped walnuts}").replace(
            "{sliced\n   almonds}", "{chopped walnuts}"
        )
    path.write_text(text, encoding="utf-8")
    return baked(folder, CROWN)


def seen(bake: Baked, output: Output) -> bool:
    return bool(list(disagreements(bake.data, output, region=bake.region, first=bake.first)))


@pytest.mark.parametrize("change", ON_EVERY_TEXT.values(), ids=ON_EVERY_TEXT)
def test_another_text_is_told_apart(change: tuple[str, str], crown: Baked, tmp_path: Path) -> None:
    other = changed(tmp_path / "content", change)
    assert {output.name: seen(crown, output) for output in texts_of(other)} == {
        "page": True,
        "JSON-LD": True,
        "description": True,
    }


@pytest.mark.parametrize(
    "change",
    [
        change if place < 2 else pytest.param(change, marks=pytest.mark.long)
        for place, change in enumerate(ON_EVERY_OUTPUT.values())
    ],
)
def test_another_sheet_is_told_apart(change: tuple[str, str], crown: Baked, tmp_path: Path) -> None:
    other = changed(tmp_path / "content", change)
    found = {output.name: seen(crown, output) for output in sheets_of(other) if output.name != "tags"}
    assert found == dict.fromkeys(("card-4x6", "card-5x7", "card-a6", "card-a5", "bench sheet"), True)


FIGURE = re.compile(r"(?<=>)[^<>]*?(\d+)(?=[^<>]*<)")
NOT_OF_RECIPE_JSON = re.compile(
    r'<h3 class="part-head">.*?</h3>|<p class="numeral">.*?</p>|<span class="second">.*?</span>(?=</li>)'
    r'|<i>.*?</i>|<details class="ovens">.*?</details>',
    re.DOTALL,
)
"""Sums of parts, numbers of steps, and beside a step the second measure and the share, other ovens.

recipe.json has no words for them.
"""
READ_ELSEWHERE = re.compile(
    r'<div class="loading">.*?<p class="basis">.*?</p>|<section class="formula".*?</section>'
    r'|<section class="equipment".*?</section>',
    re.DOTALL,
)
"""The loading of a machine, the folded formula and other equipment have readers of their own:
`test_sheet_and_loading.py` and `test_other_kitchens.py`."""


def test_another_declaration_is_told_apart_on_every_sheet(crown: Baked, tmp_path: Path) -> None:
    other = changed(tmp_path / "content", ON_EVERY_TEXT["an ingredient"])
    found = {}
    for output in sheets_of(other):
        wrong = disagreements(crown.data, output, region=crown.region, first=crown.first)
        found[output.name] = any("contains" in each for each in wrong)
    assert found == {
        **dict.fromkeys(("card-4x6", "card-5x7", "card-a6", "card-a5", "tags"), True),
        "bench sheet": False,
    }


def test_every_figure_of_the_page_changed_by_one_is_seen(crown: Baked) -> None:
    """Each figure of the times, the docket's lines and the method, each at its own place."""
    content = page_product(
        recipe_page(crown.view, structured=lambda _: ""), frame_of(crown.result.site)
    ).content
    text = content.decode()
    assert not seen(crown, read_page(content))
    spared = [each.span() for each in NOT_OF_RECIPE_JSON.finditer(text)]
    spared += [each.span() for each in READ_ELSEWHERE.finditer(text)]
    regions = ((text.index('class="times"'), text.index('class="tear-off"')), _method(text))
    unseen, tried = [], 0
    for figure in (each for start, end in regions for each in FIGURE.finditer(text, start, end)):
        at, end = figure.span(1)
        if any(first <= at < last for first, last in spared):
            continue
        tried += 1
        other = f"{text[:at]}{int(figure[1]) + 1}{text[end:]}"
        if not seen(crown, read_page(other.encode())):
            unseen.append(text[at - 50 : end + 50])
    assert unseen == []
    assert tried > 90


def _method(text: str) -> tuple[int, int]:
    return text.index('id="leaf-method"'), text.index('id="leaf-label"')


def test_a_figure_changed_in_the_description_is_seen(crown: Baked) -> None:
    text = describe_text(crown.result, CROWN)
    assert not seen(crown, read_description(text))
    for figure in ("142 g", "1¾ tsp", "375 °F", "88 °C", "12–18 min", "3 h 37 min", "WHEAT"):
        other = text.replace(figure, f"9{figure}", 1)
        assert seen(crown, read_description(other)), figure


def test_a_number_of_recipe_json_away_from_its_words_is_seen(crown: Baked) -> None:
    assert list(inner_disagreements(crown.data)) == []
    step = crown.data["steps"][-1]
    changes: tuple[Mapping[str, object], ...] = (
        {"temperatures": [{**step["temperatures"][0], "c": [195, 195]}, *step["temperatures"][1:]]},
        {"temperatures": step["temperatures"][1:]},
        {"stages": [{"kind": "bake", "minutes": [16, 16]}, *step["stages"][1:]]},
    )
    for change in changes:
        data = {**crown.data, "steps": [*crown.data["steps"][:-1], {**step, **change}]}
        assert list(inner_disagreements(data)) != [], change


@pytest.mark.parametrize(
    ("text", "words", "found"),
    [
        ("Take 30 g of it", "30 g", True),
        ("Take 430 g of it", "30 g", False),
        ("Take 4.30 g of it", "30 g", False),
        ("Take 20–30 g of it", "30 g", False),
        ("It is cold. 30 g of it", "30 g", True),
        ("1\u00a0½\ncups", "1½ cups", True),
        ("1½ cups", "½ cups", False),
        ("pu\u00adﬀ 12–\n15 min", "puff 12–15 min", True),
    ],
)
def test_words_are_found_whole_or_not_at_all(text: str, words: str, found: bool) -> None:
    assert holds(plain(text), plain(words)) is found
