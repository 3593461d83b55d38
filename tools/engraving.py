"""A plate to engrave on: flat tints of two inks, and lines that swell in the shade and thin out in light.

Everything is drawn at twice the size and reduced once, so edges are smooth. A plate's small
irregularities come from a generator seeded with its name, so the same name gives the same picture.
"""

import math
import random
from collections.abc import Callable, Sequence
from io import BytesIO
from pathlib import Path

from PIL import Image, ImageChops, ImageDraw

Point = tuple[float, float]
Colour = tuple[int, int, int]
Shade = Callable[[float, float], float]

WIDTH, HEIGHT, SCALE = 1600, 1200, 2
MOST_BYTES = 195_000
QUALITIES = range(86, 40, -2)

INK: Colour = (0x22, 0x30, 0x3C)
BRICK: Colour = (0xB5, 0x47, 0x2F)
PAPER: Colour = (0xF6, 0xF1, 0xE6)
OAT: Colour = (0xDC, 0xC9, 0xA3)


def tint(first: Colour, second: Colour, share: float) -> Colour:
    """`share` of the first colour, the rest of the second."""
    mixed = [round(a * share + b * (1 - share)) for a, b in zip(first, second, strict=True)]
    return (mixed[0], mixed[1], mixed[2])


CRUST = tint(BRICK, OAT, 0.42)
PALE_CRUST = tint(BRICK, OAT, 0.2)
CRUMB = tint(OAT, PAPER, 0.5)
STEEL = tint(INK, PAPER, 0.28)
CHOCOLATE = tint(INK, BRICK, 0.72)


def clamp(value: float) -> float:
    return max(0.0, min(1.0, value))


def ball(x: float, y: float) -> float:
    """The shade on a round thing lit from the upper left; x and y run from -1 to 1 over its box."""
    return float(clamp((0.55 * x + 0.85 * y + 0.2) / 1.15) ** 1.3)


def wall(x: float, y: float) -> float:
    """The shade on an upright round wall."""
    return float(clamp((x + 0.42 + 0.34 * y) / 1.6) ** 1.5)


def even(x: float, y: float) -> float:
    """A flat, even tone."""
    return 0.42


def pool(x: float, y: float) -> float:
    """A shadow lying on a table: full in the middle, gone at the rim."""
    return float(clamp(1.05 - math.hypot(x, y)) ** 0.7)


def oval(
    x: float,
    y: float,
    across: float,
    down: float,
    *,
    turn: float = 0,
    square: float = 2,
    start: float = 0,
    end: float = 360,
) -> list[Point]:
    """Points of an ellipse by its two radii, turned by degrees; `square` above 2 fills its corners."""
    points = []
    cos_t, sin_t = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    for step in range(97):
        angle = math.radians(start + (end - start) * step / 96)
        c, s = math.cos(angle), math.sin(angle)
        u = across * math.copysign(abs(c) ** (2 / square), c)
        v = down * math.copysign(abs(s) ** (2 / square), s)
        points.append((x + u * cos_t - v * sin_t, y + u * sin_t + v * cos_t))
    return points


def flowing(points: Sequence[Point], *, closed: bool = True, steps: int = 12) -> list[Point]:
    """A smooth curve (Catmull-Rom) through the points."""
    count = len(points)
    curve: list[Point] = []
    for i in range(count if closed else count - 1):
        at = [
            points[(i + k) % count] if closed else points[max(0, min(count - 1, i + k))]
            for k in (-1, 0, 1, 2)
        ]
        for step in range(steps):
            t = step / steps
            weights = (-t + 2 * t**2 - t**3, 2 - 5 * t**2 + 3 * t**3, t + 4 * t**2 - 3 * t**3, t**3 - t**2)
            x = sum(w * p[0] for w, p in zip(weights, at, strict=True)) / 2
            y = sum(w * p[1] for w, p in zip(weights, at, strict=True)) / 2
            curve.append((x, y))
    return curve if closed else [*curve, points[-1]]


class Plate:
    """One picture in the making. Coordinates are those of the finished picture, 1600 by 1200."""

    def __init__(self, name: str) -> None:
        self.chance = random.Random(name)
        self.image = Image.new("RGB", (WIDTH * SCALE, HEIGHT * SCALE), PAPER)
        self.pen = ImageDraw.Draw(self.image)

    def fill(self, points: Sequence[Point], colour: Colour, *, edge: float = 5, line: Colour = INK) -> None:
        """A flat shape with an outline; no outline where `edge` is 0."""
        self.pen.polygon(_grown(points), fill=colour)
        if edge:
            self.line([*points, points[0]], edge, line)

    def line(self, points: Sequence[Point], width: float, colour: Colour = INK) -> None:
        grown = _grown(points)
        self.pen.line(grown, fill=colour, width=round(width * SCALE), joint="curve")
        radius = width * SCALE / 2
        for x, y in (grown[0], grown[-1]):
            self.pen.ellipse((x - radius, y - radius, x + radius, y + radius), fill=colour)

    def engrave(
        self,
        clip: Sequence[Point],
        shade: Shade,
        *,
        gap: float = 12,
        angle: float = 0,
        bow: float = 0,
        heaviest: float = 7,
        colour: Colour = INK,
        within: Sequence[Point] | None = None,
    ) -> None:
        """Swelling lines over the shape `clip`, and inside `within` too where that is given."""
        left, top = min(p[0] for p in clip), min(p[1] for p in clip)
        right, bottom = max(p[0] for p in clip), max(p[1] for p in clip)
        size = (math.ceil((right - left) * SCALE) + 2, math.ceil((bottom - top) * SCALE) + 2)
        lines = Image.new("L", size, 0)
        pen = ImageDraw.Draw(lines)
        middle = ((left + right) / 2, (top + bottom) / 2)
        half = ((right - left) / 2, (bottom - top) / 2)
        for strip in _strips(middle, half, shade, gap, angle, bow, heaviest):
            pen.polygon([((x - left) * SCALE, (y - top) * SCALE) for x, y in strip], fill=255)
        for shape in (clip, within):
            if shape is not None:
                mask = Image.new("L", size, 0)
                ImageDraw.Draw(mask).polygon(
                    [((x - left) * SCALE, (y - top) * SCALE) for x, y in shape], fill=255
                )
                lines = ImageChops.multiply(lines, mask)
        self.image.paste(colour, (round(left * SCALE), round(top * SCALE)), lines)

    def save(self, path: Path) -> None:
        """As a JPEG of the best quality that stays within `MOST_BYTES`, so that a page loads fast."""
        small = self.image.resize((WIDTH, HEIGHT), Image.Resampling.LANCZOS)
        for quality in QUALITIES:
            held = BytesIO()
            small.save(held, "JPEG", quality=quality, optimize=True, progressive=True)
            if held.tell() <= MOST_BYTES:
                break
        path.write_bytes(held.getvalue())


def _grown(points: Sequence[Point]) -> list[Point]:
    return [(x * SCALE, y * SCALE) for x, y in points]


def _strips(
    middle: Point, half: Point, shade: Shade, gap: float, angle: float, bow: float, heaviest: float
) -> list[list[Point]]:
    """The lines as thin closed shapes: each runs along `angle`, bowed in its middle, as wide as its shade."""
    c, s = math.cos(math.radians(angle)), math.sin(math.radians(angle))
    reach = math.hypot(*half) + abs(bow)
    strips: list[list[Point]] = []
    for row in range(round(-reach / gap) - 1, round(reach / gap) + 2):
        upper: list[Point] = []
        lower: list[Point] = []
        for step in range(-60, 61):
            u = reach * step / 60
            v = row * gap + bow * (1 - (step / 60) ** 2) + 0.8 * math.sin(u / 23 + row * 1.7)
            x, y = middle[0] + u * c - v * s, middle[1] + u * s + v * c
            wide = heaviest * clamp(shade((x - middle[0]) / half[0], (y - middle[1]) / half[1])) / 2
            if wide < 0.3:
                _close(strips, upper, lower)
                upper, lower = [], []
                continue
            upper.append((x + wide * s, y - wide * c))
            lower.append((x - wide * s, y + wide * c))
        _close(strips, upper, lower)
    return strips


def _close(strips: list[list[Point]], upper: list[Point], lower: list[Point]) -> None:
    if len(upper) > 1:
        strips.append([*upper, *reversed(lower)])
