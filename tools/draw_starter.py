"""Draws the picture of the starter's recipe: `.venv/bin/python tools/draw_starter.py`."""

from pathlib import Path

from PIL import Image, ImageDraw, ImageFilter

WIDTH, HEIGHT = 1200, 900
FINER = 3
WALL, TABLE = (237, 229, 214), (201, 178, 146)
CRUST, CRUST_DARK, CRUST_LIGHT = (176, 108, 52), (132, 74, 32), (206, 146, 82)
CRUMB, HOLE = (246, 232, 205), (228, 206, 168)
TARGET = Path(__file__).resolve().parent.parent / "generator/cli/starter/media/saturday-tin-loaf.jpg"

Point = tuple[float, float]


def grown(points: list[Point]) -> list[Point]:
    return [(x * FINER, y * FINER) for x, y in points]


def dome(left: float, right: float, base: float, rim: float, top: float) -> list[Point]:
    """The outline of a tin loaf seen from its end: straight sides, a crown that swells over the rim."""
    middle, half = (left + right) / 2, (right - left) / 2
    crown = []
    for step in range(61):
        across = step / 30 - 1
        swell = (1 - abs(across) ** 2.6) ** 0.5 if abs(across) < 1 else 0.0
        crown.append((middle + across * (half + 16), rim - (rim - top) * swell))
    return [(left + 10, base), (left, rim + 20), *crown, (right, rim + 20), (right - 10, base)]


def body(draw: ImageDraw.ImageDraw, left: float, right: float) -> None:
    """The loaf behind its cut face, drawn as many ends one behind the other, lighter towards the top."""
    for step in range(140):
        shift = 330 * (1 - step / 139)
        shade = step / 139
        colour = tuple(
            round(dark + (light - dark) * (0.25 + 0.55 * shade))
            for dark, light in zip(CRUST_DARK, CRUST_LIGHT, strict=True)
        )
        end = dome(left + shift, right + shift, 690 - shift * 0.34, 470 - shift * 0.34, 300 - shift * 0.34)
        draw.polygon(grown(end), fill=colour)


def face(
    draw: ImageDraw.ImageDraw, left: float, right: float, *, base: float, rim: float, top: float
) -> None:
    draw.polygon(grown(dome(left, right, base, rim, top)), fill=CRUST)
    draw.polygon(grown(dome(left + 16, right - 16, base - 14, rim + 6, top + 18)), fill=CRUMB)
    width, height = right - left - 90, base - top - 110
    for number in range(70):
        # An even scatter without a random number: steps by the powers of the plastic number.
        x = left + 45 + width * (number * 0.7548776662 % 1)
        y = top + 70 + height * (number * 0.5698402910 % 1)
        size = 3 + 6 * (number * 0.6180339887 % 1)
        draw.ellipse([each * FINER for each in (x, y, x + size * 1.5, y + size)], fill=HOLE)


def slice_lying(draw: ImageDraw.ImageDraw, left: float, base: float) -> None:
    draw.polygon(
        grown([(left, base), (left + 60, base - 92), (left + 400, base - 92), (left + 345, base)]), fill=CRUST
    )
    draw.polygon(
        grown(
            [(left + 22, base - 14), (left + 72, base - 84), (left + 380, base - 84), (left + 332, base - 14)]
        ),
        fill=CRUMB,
    )
    draw.polygon(
        grown([(left, base), (left + 345, base), (left + 345, base + 18), (left, base + 18)]), fill=CRUST_DARK
    )


def picture() -> Image.Image:
    canvas = Image.new("RGB", (WIDTH * FINER, HEIGHT * FINER), WALL)
    draw = ImageDraw.Draw(canvas)
    draw.rectangle([0, 560 * FINER, WIDTH * FINER, HEIGHT * FINER], fill=TABLE)
    shadow = Image.new("L", canvas.size, 0)
    ImageDraw.Draw(shadow).ellipse([each * FINER for each in (250, 590, 1110, 760)], fill=120)
    ImageDraw.Draw(shadow).ellipse([each * FINER for each in (90, 790, 560, 850)], fill=90)
    canvas.paste((92, 66, 40), mask=shadow.filter(ImageFilter.GaussianBlur(22 * FINER)))
    draw = ImageDraw.Draw(canvas)
    body(draw, 340, 700)
    face(draw, 340, 700, base=700, rim=475, top=300)
    slice_lying(draw, 130, 815)
    return canvas.resize((WIDTH, HEIGHT), Image.Resampling.LANCZOS)


if __name__ == "__main__":
    picture().save(TARGET, quality=86, optimize=True)
