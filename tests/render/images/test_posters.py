"""The pictures with words: nothing leaves its place, however absurd the recipe, proved from what was drawn."""

from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from io import BytesIO

import pytest
from PIL import Image, ImageChops

from generator.present.posters import chapter_cards, poster_view
from generator.present.views import RecipeView
from generator.render.images.arrange import panels_of
from generator.render.images.chapter_card import chapter_face
from generator.render.images.contrast import LEAST, least_ratio, luminance, ratio
from generator.render.images.face import Bar, Box, Face
from generator.render.images.ink import (
    BRICK,
    INK,
    SLIP,
    SOFT,
    NoGlyph,
    Pen,
    Stroke,
    as_drawn,
    width_of,
    wrapped,
)
from generator.render.images.overlay import render_overlay
from generator.render.images.paint import Unreadable, as_jpeg, painted, photo_for, stroke_box, words_of
from generator.render.images.poster import share_face, tall_face
from generator.render.images.posters import render_chapter_cards, render_share, render_tall
from generator.render.print_fonts import FIGURES, TEXT
from tests.render.images.odd import LONGEST, odd
from tests.render.paper.reading import squeezed
from tests.render.paper.sample import LONG, TINY, TYPICAL

NORMAL, ALL = 60, 300


def no_photo(_: str) -> bytes:
    raise AssertionError("nobody asked for a photograph")


def faces_of(view: RecipeView) -> Iterator[Face]:
    poster = poster_view(view)
    for photo in (True, False):
        yield share_face(poster, photo=photo)
        yield tall_face(poster, photo=photo)
    yield from (chapter_face(card) for card in chapter_cards(view))


def assert_laid_out(face: Face) -> None:
    """Every line of words inside the safe area, the safe area inside the slip, no line on another."""
    safe, slip = face.safe, face.slip
    assert slip.left <= safe.left < safe.right <= slip.right
    assert slip.top <= safe.top < safe.bottom <= slip.bottom
    boxes = [stroke_box(stroke) for stroke in face.strokes]
    for stroke, box in zip(face.strokes, boxes, strict=True):
        assert safe.left - 1 <= box.left, stroke
        assert box.right <= safe.right + 1, stroke
        assert safe.top - 1 <= box.top, stroke
        assert box.bottom <= safe.bottom + 1, stroke
    for at, one in enumerate(boxes):
        for other in boxes[at + 1 :]:
            apart = one.right <= other.left + 1 or other.right <= one.left + 1
            # Lines of a title may stand closer than the reach of their letters.
            assert apart or abs(one.bottom - other.bottom) >= 0.9 * min(one.height, other.height)


def assert_drawn_inside(face: Face) -> None:
    """What the words changed in the picture lies inside the safe area."""
    changed = ImageChops.difference(
        painted(face, None, (50, 50)), painted(replace(face, strokes=()), None, (50, 50))
    ).getbbox()
    assert changed is not None
    left, top, right, bottom = changed
    safe = face.safe
    assert safe.left - 8 <= left
    assert safe.top - 2 <= top
    assert right <= safe.right + 8
    assert bottom <= safe.bottom + 2


@pytest.mark.parametrize("number", range(0, NORMAL, 3))
def test_no_words_leave_their_place_on_any_picture(number: int) -> None:
    for face in faces_of(odd(number)):
        assert_laid_out(face)


@pytest.mark.parametrize("number", [0, 1, 9, 27])
def test_no_ink_leaves_its_place_on_what_was_drawn(number: int) -> None:
    view = odd(number)
    for face in (*[*faces_of(view)][:4], *[*faces_of(view)][-1:]):
        assert_drawn_inside(face)


@pytest.mark.long
@pytest.mark.parametrize("number", range(ALL))
def test_no_ink_leaves_its_place_on_any_picture(number: int) -> None:
    view = odd(number)
    for face in faces_of(view):
        assert_laid_out(face)
        assert_drawn_inside(face)
    assert_overlays_hold(view, drawn=True)


def assert_overlays_hold(view: RecipeView, *, drawn: bool) -> None:
    """Each word on some panel, none outside of it; of the drawn picture all that is not clear is the panel."""
    panels = panels_of(view)
    drawn_with: dict[str, list[str]] = {}
    for stroke in (stroke for panel in panels for row in panel.rows for stroke in row.row.strokes):
        drawn_with.setdefault(stroke.pen.weight, []).append(stroke.text)
    bold, plain, small = (squeezed(as_drawn("".join(drawn_with.get(w, ())))) for w in ("700", "600", "400"))
    for part in view.parts:
        assert squeezed(part.title) in bold
        for each in part.lines:
            assert squeezed(each.amount.first) in bold
            assert squeezed(each.item) in plain
            assert squeezed(each.preparation) in plain
            assert all(squeezed(choice) in small for choice in each.choices)
    for panel in panels:
        for row in panel.rows:
            assert panel.left <= row.x
            assert row.x + panel.column <= panel.left + panel.width
            assert row.y + row.row.height <= panel.top + panel.height <= 1080 - 40
            for stroke in row.row.strokes:
                assert stroke.x >= -1
                assert stroke.x + width_of(stroke.text, stroke.pen) <= panel.column + 1, stroke
    if drawn:
        for product, panel in zip(render_overlay(view), panels, strict=True):
            seen = Image.open(BytesIO(product.content)).getchannel("A").getbbox()
            assert seen is not None
            left, top, right, bottom = seen
            assert panel.left - 2 <= left
            assert panel.top - 2 <= top
            assert right <= panel.left + panel.width + 2
            assert bottom <= panel.top + panel.height + 2


@pytest.mark.parametrize("number", range(0, NORMAL, 6))
def test_no_line_of_an_overlay_is_lost_or_leaves_its_panel(number: int) -> None:
    assert_overlays_hold(odd(number), drawn=number == 9)


@cache
def noise(width: int, height: int) -> bytes:
    """A photograph with every colour everywhere, on which no words could be read."""
    bands = [Image.effect_noise((width, height), 120) for _ in range(3)]
    file = BytesIO()
    Image.merge("RGB", bands).save(file, "JPEG", quality=90)
    return file.getvalue()


def inks(picture: Image.Image, stroke: Stroke) -> tuple[float, float]:
    """The least and the most luminance where a stroke stands: its letters, and what lies around them."""
    box = stroke_box(stroke)
    area = picture.crop((round(box.left), round(box.top), round(box.right) + 1, round(box.bottom) + 1))
    bands = area.tobytes()
    light = sorted(map(luminance, set(zip(bands[0::3], bands[1::3], bands[2::3], strict=True))))
    return light[0], light[-1]


@pytest.mark.parametrize("drawn", [share_face, tall_face])
def test_words_stand_out_from_the_drawn_picture_over_any_photograph(drawn: type) -> None:
    """WCAG 2.2, 1.4.3: at least 4.5 to 1, from the pixels of the file as a reader gets it."""
    view = odd(1)
    photo = replace(view.photo, width=800, height=600) if view.photo else None
    face = drawn(poster_view(replace(TYPICAL, photo=photo)), photo=True)
    whole = photo_for(face, noise(800, 600), (800, 600))
    picture = Image.open(BytesIO(as_jpeg(face, whole, (30, 60)))).convert("RGB")
    for stroke in face.strokes:
        dark, light = inks(picture, stroke)
        assert (light + 0.05) / (dark + 0.05) >= LEAST, stroke
        ground = picture.crop(
            (round(stroke.x) - 6, round(stroke.y) - 4, round(stroke.x) - 2, round(stroke.y))
        )
        assert least_ratio(ground, stroke.pen.colour) >= LEAST, stroke
    if face.photo:
        right = picture.crop((1150, 50, 1200, 600) if face.width == 1200 else (0, 20, 1000, 700))
        assert least_ratio(right, INK) == 1.0


def test_words_that_cannot_be_read_are_never_drawn() -> None:
    face = share_face(poster_view(TYPICAL), photo=False)
    dark = Bar(box=Box(left=0, top=0, width=1200, height=630), colour=INK)
    with pytest.raises(Unreadable, match=r"stands out from its ground by \d\.\d : 1"):
        painted(replace(face, bars=(*face.bars, dark)), None, (50, 50))


def test_every_ink_stands_out_from_the_slip() -> None:
    assert all(ratio(ink, SLIP) >= LEAST for ink in (INK, BRICK, SOFT))


@pytest.mark.parametrize("view", [TYPICAL, TINY, LONG, odd(10)], ids=lambda view: view.name)
def test_a_title_is_whole_or_says_that_it_is_not(view: RecipeView) -> None:
    for face in faces_of(view):
        told = squeezed(" ".join(words_of(face)))
        assert squeezed(view.title) in told or "…" in told


@pytest.mark.parametrize("drawn", [share_face, tall_face])
@pytest.mark.parametrize("photo", [True, False])
def test_sixty_letters_of_a_title_are_never_cut(drawn: type, photo: bool) -> None:
    for title in (LONGEST, "W" * 60, "wide mammoth " * 4 + "loaves", "i " * 30):
        view = replace(odd(10), title=title.strip())
        face = drawn(poster_view(view), photo=photo)
        assert squeezed(title) in squeezed("".join(words_of(face)))


def test_a_long_word_is_broken_between_syllables_with_a_hyphen() -> None:
    pen = Pen(family=TEXT, weight="700", size=60)
    lines = wrapped("Schokoladenbuttercreme", pen, 400, "de-DE")
    assert [line.replace("\u00ad", "-") for line in lines] == ["Schokoladen-", "buttercreme"]
    assert all(width_of(line, pen) <= 400 for line in lines)


def test_what_holds_figures_gets_no_hyphen() -> None:
    pen = Pen(family=FIGURES, weight="700", size=60)
    assert "\u00ad" not in "".join(wrapped("1234567890–1234567890", pen, 200))


def test_figures_are_of_one_width_and_letters_are_kerned() -> None:
    figures, text = Pen(family=FIGURES, weight="700", size=40), Pen(family=TEXT, weight="700", size=40)
    assert {width_of(each * 8, figures) for each in "0123456789"} == {width_of("0" * 8, figures)}
    assert width_of("To", text) < width_of("T", text) + width_of("o", text)


@pytest.mark.parametrize(("sign", "named"), [("面", "CJK UNIFIED IDEOGRAPH"), ("☐", "BALLOT BOX")])
def test_a_letter_that_no_face_has_is_named_and_never_left_out(sign: str, named: str) -> None:
    view = replace(TYPICAL, title=f"Loaf {sign}")
    for drawn in (lambda: render_tall(view, no_photo), lambda: render_overlay(view)):
        with pytest.raises(NoGlyph, match=named):
            drawn()


def test_pictures_have_their_sizes_and_the_same_bytes_each_time() -> None:
    film = odd(3).videos[0]
    view = replace(TYPICAL, videos=(replace(film, chapters=film.chapters[:3]),))
    share, tall, cards = (
        render_share(view, no_photo),
        render_tall(view, no_photo),
        [*render_chapter_cards(view)],
    )
    sizes = [Image.open(BytesIO(each.content)).size for each in (share, tall, *cards)]
    assert sizes == [(1200, 630), (1000, 1500), *[(1920, 1080)] * len(cards)]
    assert len(cards) == len(view.videos[0].chapters)
    assert share == render_share(view, no_photo)
    assert cards == [*render_chapter_cards(view)]


def test_a_photograph_that_cannot_be_read_leaves_a_picture_of_words() -> None:
    def gone(_: str) -> bytes:
        raise FileNotFoundError

    view = replace(TYPICAL, photo=odd(1).photo)
    assert render_share(view, gone).content == render_share(TYPICAL, no_photo).content
