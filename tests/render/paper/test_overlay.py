"""The overlay: every amount, large enough, on the panel and nowhere else."""

from dataclasses import replace
from io import BytesIO

import pytest
from PIL import Image

from generator.present.views import RecipeView
from generator.render.images.arrange import HEIGHT, WIDTH, Panel, panels_of
from generator.render.images.ink import BRICK, INK, PAPER, as_drawn, width_of
from generator.render.images.overlay import render_overlay
from tests.render.paper.reading import squeezed
from tests.render.paper.sample import LONG, LONG_WORD, TINY, TYPICAL, amount, line


def contrast(one: tuple[int, int, int], other: tuple[int, int, int]) -> float:
    """WCAG 2.2, contrast ratio."""

    def light(colour: tuple[int, int, int]) -> float:
        parts = [value / 255 for value in colour]
        linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
        return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]

    dark, bright = sorted((light(one), light(other)))
    return (bright + 0.05) / (dark + 0.05)


def texts_on(panel: Panel) -> str:
    rows = " ".join(as_drawn(stroke.text) for placed in panel.rows for stroke in placed.row.strokes)
    return squeezed(" ".join(as_drawn(stroke.text) for stroke in panel.head) + rows)


def wild() -> RecipeView:
    """Amounts and words that nobody should type, and that must fit all the same."""
    lines = (
        line("flour " * 60, "123456789–1234567890 kilograms", "7 cups plus 3 tablespoons " * 6),
        line(LONG_WORD * 4, "1 g", preparation="cut " * 200),
    )
    return replace(TINY, title="A title of many words " * 12, parts=(replace(TINY.parts[0], lines=lines),))


VIEWS = [TYPICAL, TINY, LONG, wild()]


@pytest.mark.parametrize("view", VIEWS, ids=lambda view: view.title[:12])
def test_nothing_leaves_its_column_or_the_panel(view: RecipeView) -> None:
    for panel in panels_of(view):
        assert panel.left >= 40
        assert panel.left + panel.width <= WIDTH - 40
        assert panel.top >= 40
        assert panel.top + panel.height <= HEIGHT - 40
        for stroke in panel.head:
            assert stroke.x + width_of(stroke.text, stroke.pen) <= panel.left + panel.width - 20
            assert stroke.y <= panel.top + 36 + panel.head_height
        for placed in panel.rows:
            assert placed.y + placed.row.height <= panel.top + panel.height
            for stroke in placed.row.strokes:
                assert stroke.x >= -1, stroke
                assert stroke.x + width_of(stroke.text, stroke.pen) <= panel.column + 1, stroke
                assert 0 < stroke.y < placed.row.height


@pytest.mark.parametrize("view", VIEWS, ids=lambda view: view.title[:12])
def test_texts_of_a_row_do_not_lie_on_each_other(view: RecipeView) -> None:
    for panel in panels_of(view):
        for placed in panel.rows:
            ends: dict[float, float] = {}
            for stroke in sorted(placed.row.strokes, key=lambda each: (each.y, each.x)):
                assert stroke.x >= ends.get(stroke.y, -1), stroke
                ends[stroke.y] = stroke.x + width_of(stroke.text, stroke.pen)


@pytest.mark.parametrize("view", [TYPICAL, TINY, LONG], ids=lambda view: view.name)
def test_every_amount_and_item_stands_on_a_panel(view: RecipeView) -> None:
    told = "".join(texts_on(panel) for panel in panels_of(view))
    for part in view.parts:
        assert squeezed(part.title) in told
        for each in part.lines:
            for words in (each.amount.weight, each.amount.volume, each.item, *each.choices):
                assert squeezed(words) in told, words


@pytest.mark.parametrize("view", VIEWS, ids=lambda view: view.title[:12])
def test_letters_never_shrink_below_what_a_telephone_shows(view: RecipeView) -> None:
    sizes = [s.pen.size for panel in panels_of(view) for placed in panel.rows for s in placed.row.strokes]
    assert min(sizes) >= 21


def test_inks_stand_out_from_the_paper() -> None:
    assert contrast(INK, PAPER) >= 4.5
    assert contrast(BRICK, PAPER) >= 4.5


def test_the_picture_is_full_hd_and_transparent_around_the_panel() -> None:
    (product,) = render_overlay(TYPICAL)
    assert product.path == "desk/honey-oat-braid/overlay.png"
    with Image.open(BytesIO(product.content)) as image:
        assert (image.size, image.mode) == ((1920, 1080), "RGBA")
        assert {
            image.getchannel("A").getpixel(at) for at in ((0, 0), (1919, 0), (0, 1079), (1919, 1079))
        } == {0}
        (panel,) = panels_of(TYPICAL)
        middle = image.getpixel((int(panel.left) + 12, int(panel.top) + 12))
        assert middle == (255, 255, 255, 255)
        colours = {colour for _, colour in image.getcolors(1 << 21) or []}
        assert {(*INK, 255), (*BRICK, 255)} <= colours


def test_a_long_recipe_takes_further_pictures_and_says_so() -> None:
    products = render_overlay(LONG)
    assert [product.path for product in products] == [
        "desk/forty-and-thirty/overlay.png",
        "desk/forty-and-thirty/overlay-2.png",
    ]
    for number, panel in enumerate(panels_of(LONG), start=1):
        assert f"{number}of2" in texts_on(panel)


def test_a_narrow_space_is_drawn_as_a_space() -> None:
    narrow = replace(TINY, parts=(replace(TINY.parts[0], lines=(line("sugar", "1\u202f000 g"),)),))
    spaced = replace(TINY, parts=(replace(TINY.parts[0], lines=(line("sugar", "1\u00a0000 g"),)),))
    assert render_overlay(narrow)[0].content == render_overlay(spaced)[0].content


def test_an_amount_that_is_unknown_leaves_its_place_empty() -> None:
    view = replace(
        TINY, parts=(replace(TINY.parts[0], lines=(replace(line("salt", ""), amount=amount("", "")),)),)
    )
    (panel,) = panels_of(view)
    assert [stroke.text for placed in panel.rows for stroke in placed.row.strokes] == ["salt"]


@pytest.mark.parametrize("count", [3, 8, 12, 16, 20, 26])
def test_no_column_of_a_picture_stands_empty(count: int) -> None:
    lines = tuple(line(f"ingredient {number}", f"{number} g", "1 cup") for number in range(count))
    (panel,) = panels_of(replace(TINY, parts=(replace(TINY.parts[0], lines=lines),)))
    ends = [
        max(placed.y + placed.row.height for placed in panel.rows if placed.x == left)
        for left in {placed.x for placed in panel.rows}
    ]
    assert len(ends) == (1 if panel.width < 1000 else 2)
    assert max(ends) - min(ends) <= 2 * max(placed.row.height for placed in panel.rows)
