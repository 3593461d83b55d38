"""The amounts of a recipe as a picture to lay over a film: a docket on a transparent ground."""

from collections.abc import Iterator
from io import BytesIO

from PIL import Image, ImageDraw

from generator.present.views import RecipeView
from generator.render.images.arrange import HEIGHT, WIDTH, Panel, panels_of
from generator.render.images.ink import INK, OVERSAMPLE, PAPER, RULE, as_drawn, draw_text
from generator.render.images.record import recorded
from generator.render.output import Product


def render_overlay(view: RecipeView) -> tuple[Product, ...]:
    """`overlay.png`, and `overlay-2.png` and on where a recipe is too long for one picture."""
    return tuple(
        Product(
            path=f"desk/{view.name}/overlay{'' if number == 1 else f'-{number}'}.png", content=_png(panel)
        )
        for number, panel in enumerate(panels_of(view), start=1)
    )


def _png(panel: Panel) -> bytes:
    picture = Image.new("RGBA", (WIDTH * OVERSAMPLE, HEIGHT * OVERSAMPLE), (*PAPER, 0))
    _draw(ImageDraw.Draw(picture), panel)
    written = BytesIO()
    picture.reduce(OVERSAMPLE).save(written, format="PNG", compress_level=6)
    return recorded(written.getvalue(), _words(panel))


def _words(panel: Panel) -> Iterator[str]:
    """Every text of the picture: the head, then row by row the amount, the item, and what stands below it."""
    yield from (as_drawn(stroke.text) for stroke in panel.head)
    for placed in panel.rows:
        strokes = sorted(placed.row.strokes, key=lambda each: -int(each.pen.weight))
        yield " ".join(as_drawn(each.text) for each in strokes)


def _draw(canvas: ImageDraw.ImageDraw, panel: Panel) -> None:
    right, bottom = panel.left + panel.width, panel.top + panel.height
    corners = [edge * OVERSAMPLE for edge in (panel.left, panel.top, right, bottom)]
    canvas.rectangle(corners, fill=(*PAPER, 255), outline=(*INK, 255), width=3 * OVERSAMPLE)
    for stroke in panel.head:
        draw_text(canvas, (stroke.x, stroke.y), stroke.text, stroke.pen)
    first = min((placed.y for placed in panel.rows), default=panel.top + panel.head_height)
    _line(canvas, panel.left, right, first - 8, colour=INK, thick=5)
    for placed in panel.rows:
        for stroke in placed.row.strokes:
            draw_text(canvas, (placed.x + stroke.x, placed.y + stroke.y), stroke.text, stroke.pen)
        if placed.row.rule:
            _line(
                canvas, placed.x, placed.x + panel.column, placed.y + placed.row.height, colour=RULE, thick=2
            )


def _line(
    canvas: ImageDraw.ImageDraw,
    left: float,
    right: float,
    y: float,
    *,
    colour: tuple[int, int, int],
    thick: int,
) -> None:
    ends = [left * OVERSAMPLE, y * OVERSAMPLE, right * OVERSAMPLE, y * OVERSAMPLE]
    canvas.line(ends, fill=(*colour, 255), width=thick * OVERSAMPLE)
