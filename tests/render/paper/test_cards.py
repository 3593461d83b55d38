"""Four sizes of card, as many sides as the recipe needs."""

from collections.abc import Mapping
from dataclasses import replace
from io import BytesIO
from pathlib import Path

import pytest
import zxingcpp
from pypdf import PdfReader

from generator.render.cards.render import render_cards
from tests.render.paper.conftest import Sheets
from tests.render.paper.reading import label_words, lost, pages_of, picture, squeezed, text_of
from tests.render.paper.sample import LONG, TINY, TYPICAL, amount

# Points: 4 × 6 in, 5 × 7 in, and ISO 216.
SIZES = {"4x6": (288, 432), "5x7": (360, 504), "a6": (297.64, 419.53), "a5": (419.53, 595.28)}


def test_a_card_of_each_size_stands_in_the_folder_of_the_page() -> None:
    paths = [product.path for product in render_cards(TINY)]
    assert paths == [f"site/recipes/vanilla-sugar/card-{size}.pdf" for size in ("4x6", "5x7", "a6", "a5")]


@pytest.mark.parametrize("size", SIZES)
def test_every_side_has_the_size_of_the_card(printed: Mapping[tuple[str, str], bytes], size: str) -> None:
    for name in (TYPICAL.name, TINY.name, LONG.name):
        for page in PdfReader(BytesIO(printed[name, f"card-{size}"])).pages:
            assert (float(page.mediabox.width), float(page.mediabox.height)) == pytest.approx(
                SIZES[size], abs=0.01
            )


def test_a_short_recipe_takes_one_side_and_a_long_one_flows(documents: Sheets) -> None:
    sides = {key: len(document.pages) for key, document in documents.items() if key[1].startswith("card")}
    assert {sides[TINY.name, f"card-{size}"] for size in SIZES} == {1}
    assert all(sides[TYPICAL.name, f"card-{size}"] <= 3 for size in SIZES)
    assert all(sides[LONG.name, f"card-{size}"] >= 4 for size in SIZES)


def test_every_side_says_which_it_is_and_further_ones_carry_the_title(
    printed: Mapping[tuple[str, str], bytes],
) -> None:
    for size in SIZES:
        pages = pages_of(printed[LONG.name, f"card-{size}"])
        for number, text in enumerate(pages, start=1):
            assert squeezed(f"side {number} of {len(pages)}") in text
            assert squeezed("A feast of forty ingredients") in text


def test_a_card_carries_the_declaration_and_how_long_the_bake_keeps(
    printed: Mapping[tuple[str, str], bytes],
) -> None:
    words = [*label_words(TYPICAL), TYPICAL.keeps, TYPICAL.label.advice, TYPICAL.url, TYPICAL.tin]
    for size in SIZES:
        assert lost(words, printed[TYPICAL.name, f"card-{size}"]) == []


def test_the_times_of_every_way_stand_on_the_card(printed: Mapping[tuple[str, str], bytes]) -> None:
    words = [
        word for times in TYPICAL.times for word in (times.hands_on, times.waiting, times.baking, times.total)
    ]
    assert lost(words, printed[TYPICAL.name, "card-4x6"]) == []


def test_a_step_that_names_a_whole_part_lists_its_amounts(printed: Mapping[tuple[str, str], bytes]) -> None:
    listed = ", ".join(f"{line.amount.weight} {line.item}" for line in TYPICAL.parts[0].lines)
    assert squeezed(listed) in text_of(printed[TYPICAL.name, "card-4x6"])


def test_a_caution_stands_once_and_at_its_place_in_the_method(
    printed: Mapping[tuple[str, str], bytes],
) -> None:
    text = text_of(printed[TYPICAL.name, "card-4x6"])
    placed = squeezed("Take the dough out of the oven before you heat it.")
    assert text.count(placed) == 1
    assert text.index(squeezed("brush with the egg white")) < text.index(placed)
    assert text.index(squeezed("Do not taste raw dough")) < text.index(squeezed("Weigh out"))


def test_volume_stands_first_where_the_site_says_so() -> None:
    swapped = tuple(
        replace(
            part,
            lines=tuple(
                replace(
                    line,
                    amount=replace(line.amount, first=line.amount.volume, second=line.amount.weight),
                )
                for line in part.lines
            ),
        )
        for part in TINY.parts
    )
    card = next(render_cards(replace(TINY, parts=swapped)))
    assert squeezed("VolumeWeightIngredient") in text_of(card.content)
    assert squeezed("1 cup200 gsugar") in text_of(card.content)


@pytest.mark.parametrize("size", SIZES)
def test_a_reader_finds_the_address_in_the_printed_code(
    printed: Mapping[tuple[str, str], bytes], tmp_path: Path, size: str
) -> None:
    for view in (TYPICAL, LONG):
        codes = zxingcpp.read_barcodes(picture(printed[view.name, f"card-{size}"], tmp_path))
        assert [code.text for code in codes] == [f"{view.url}#since-{view.revision}"]


def test_a_long_address_still_reads_on_the_smallest_card(tmp_path: Path) -> None:
    long = "https://bakes.example/" + "a-very-long-folder/" * 9 + "recipes/vanilla-sugar/"
    card = next(render_cards(replace(TINY, url=long)))
    assert lost([long], card.content) == []
    codes = zxingcpp.read_barcodes(picture(card.content, tmp_path))
    assert [code.text for code in codes] == [f"{long}#since-{TINY.revision}"]


def test_a_recipe_that_is_not_on_the_site_has_no_code_that_leads_nowhere() -> None:
    card = next(render_cards(replace(TINY, on_site=False)))
    assert TINY.url not in text_of(card.content)
    assert lost(["Vanilla sugar"], card.content) == []


def test_an_amount_that_is_longer_than_its_column_wraps() -> None:
    part = TINY.parts[0]
    wide = replace(part.lines[0], amount=amount("123456–1234567 g", "12½ cups plus 13¾ tablespoons"))
    card = next(render_cards(replace(TINY, parts=(replace(part, lines=(wide,)),))))
    assert lost(["123456–1234567 g", "12½ cups plus 13¾ tablespoons"], card.content) == []


def test_a_recipe_in_another_size_says_so_and_what_does_not_grow_with_it() -> None:
    view = replace(TINY, scale="For 2 jars", notes=("Stir longer: time does not grow with the amount.",))
    assert lost([view.scale, *view.notes], next(render_cards(view)).content) == []
