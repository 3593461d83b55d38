"""Things that stand in more than one picture: the table, a board, a tin, fruit, a cookie."""

import math

from engraving import (
    BRICK,
    CHOCOLATE,
    CRUMB,
    CRUST,
    INK,
    OAT,
    PAPER,
    STEEL,
    Colour,
    Plate,
    Point,
    ball,
    even,
    flowing,
    oval,
    pool,
    tint,
    wall,
)

TABLE = 830
SKY = tint(OAT, PAPER, 0.45)


def ground(plate: Plate, *, spot: bool = True) -> None:
    """What every plate stands on: a table, a disk of tint behind, and a rule along the foot as on a scale."""
    if spot:
        disk = oval(800, 590, 470, 470)
        plate.fill(disk, SKY, edge=0)
        plate.engrave(disk, lambda x, y: 0.28 + 0.1 * y, gap=26, heaviest=6, colour=OAT)
    table = [(60, TABLE), (1540, TABLE), (1540, 1080), (60, 1080)]
    plate.fill(table, tint(OAT, PAPER, 0.7), edge=0)
    plate.engrave(table, lambda x, y: 0.2 + 0.16 * y, gap=30, heaviest=7, colour=tint(INK, OAT, 0.3))
    plate.line([(60, TABLE), (1540, TABLE)], 4)
    plate.line([(60, 60), (1540, 60), (1540, 1140), (60, 1140), (60, 60)], 4)
    plate.line([(60, 1080), (1540, 1080)], 3)
    for tick in range(1, 74):
        x = 60 + tick * 20
        plate.line([(x, 1080), (x, 1080 + (34 if tick % 10 == 0 else 22 if tick % 5 == 0 else 12))], 3)


def shadow(plate: Plate, x: float, y: float, across: float, down: float) -> None:
    lying = oval(x, y, across, down)
    plate.engrave(lying, pool, gap=9, heaviest=8)


def solid(
    plate: Plate,
    shape: list[Point],
    colour: Colour,
    *,
    gap: float = 12,
    angle: float = -28,
    bow: float = 30,
    heaviest: float = 7,
    edge: float = 5,
) -> None:
    """A rounded thing: its tint, its outline, the shade upon it."""
    plate.fill(shape, colour, edge=0)
    plate.engrave(shape, ball, gap=gap, angle=angle, bow=bow, heaviest=heaviest)
    plate.line([*shape, shape[0]], edge)


def board(plate: Plate, x: float, y: float, across: float, down: float, *, thick: float = 26) -> None:
    """A round wooden board seen from a little above."""
    shadow(plate, x + 40, y + thick + 26, across * 1.06, down * 1.05)
    under = oval(x, y + thick, across, down)
    plate.fill(under, tint(BRICK, OAT, 0.3))
    plate.engrave(under, wall, gap=9, angle=90, heaviest=5)
    top = oval(x, y, across, down)
    plate.fill(top, OAT)
    plate.engrave(
        top, lambda u, v: 0.16 + 0.1 * math.sin(v * 9), gap=14, heaviest=6, colour=tint(INK, OAT, 0.5)
    )


def leaf(x: float, y: float, long: float, wide: float, turn: float) -> list[Point]:
    """A pointed cut in a crust."""
    c, s = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    edge = [(long * (t / 12 * 2 - 1), wide * math.sin(math.pi * t / 12)) for t in range(13)]
    both = edge + [(u, -v * 0.55) for u, v in reversed(edge)]
    return [(x + u * c - v * s, y + u * s + v * c) for u, v in both]


def tin(plate: Plate, left: float, right: float, top: float, foot: float) -> None:
    """A loaf tin from its long side."""
    shape = [(left, top), (right, top), (right - 52, foot), (left + 52, foot)]
    plate.fill(shape, STEEL)
    plate.engrave(shape, wall, gap=11, angle=90, heaviest=8)
    rim = [(left - 16, top - 16), (right + 16, top - 16), (right + 10, top + 12), (left - 10, top + 12)]
    plate.fill(rim, tint(INK, PAPER, 0.16))
    plate.line([(left + 60, top + 50), (right - 60, top + 50)], 4, PAPER)


def lemon_half(plate: Plate, x: float, y: float, radius: float) -> None:
    """Half a lemon or an orange, cut face forward."""
    shadow(plate, x + 18, y + radius * 0.9, radius * 1.2, radius * 0.26)
    solid(plate, oval(x, y, radius, radius * 0.94), tint(OAT, PAPER, 0.9), gap=9, heaviest=5)
    plate.fill(oval(x, y, radius * 0.86, radius * 0.8), PAPER, edge=3)
    for turn in range(0, 360, 40):
        a = math.radians(turn + 20)
        cx, cy = x + math.cos(a) * radius * 0.07, y + math.sin(a) * radius * 0.065
        rim = oval(cx, cy, radius * 0.7, radius * 0.65, start=turn + 4, end=turn + 36)[4:-4]
        wedge = flowing([(cx, cy), rim[0], rim[len(rim) // 2], rim[-1]], steps=6)
        plate.fill(wedge, tint(BRICK, OAT, 0.3), edge=3)
        plate.engrave(wedge, even, gap=9, angle=turn + 20, heaviest=3.5, colour=PAPER)


def apple(plate: Plate, x: float, y: float, radius: float) -> None:
    shadow(plate, x + 20, y + radius * 0.86, radius * 1.1, radius * 0.22)
    body = flowing(
        [
            (x, y - radius * 0.72),
            (x + radius * 0.5, y - radius * 0.92),
            (x + radius, y - radius * 0.3),
            (x + radius * 0.8, y + radius * 0.6),
            (x + radius * 0.3, y + radius * 0.92),
            (x, y + radius * 0.84),
            (x - radius * 0.3, y + radius * 0.92),
            (x - radius * 0.8, y + radius * 0.6),
            (x - radius, y - radius * 0.3),
            (x - radius * 0.5, y - radius * 0.92),
        ]
    )
    solid(plate, body, BRICK, gap=11, angle=70, bow=-46, heaviest=7)
    plate.line(
        flowing([(x, y - radius * 0.7), (x + 8, y - radius), (x + 26, y - radius * 1.22)], closed=False), 9
    )
    plate.fill(leaf(x + 74, y - radius * 1.12, 54, 24, -20), OAT, edge=4)


def strip(plate: Plate, x: float, y: float, long: float, turn: float) -> list[Point]:
    """A curl of candied peel."""
    c, s = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    bend = plate.chance.uniform(14, 34) * plate.chance.choice((-1, 1))
    path = [(long * t, bend * (1 - (2 * t) ** 2)) for t in (-0.5, -0.25, 0, 0.25, 0.5)]
    curl = flowing([(u, v - 11) for u, v in path] + [(u, v + 11) for u, v in reversed(path)], steps=6)
    return [(x + u * c - v * s, y + u * s + v * c) for u, v in curl]


def wedge_of(x: float, y: float, radius: float, start: float, end: float) -> list[Point]:
    """A slice of a round thing, from its middle."""
    return [(x, y), *oval(x, y, radius, radius, start=start, end=end)]


def cracked_cookie(
    plate: Plate, x: float, y: float, across: float, down: float, chunks: int, cracks: int
) -> None:
    """A cookie seen from above and in front; cracks run over its top, chunks of chocolate sit in it."""
    plate.engrave(oval(x + 10, y + down * 0.34, across * 1.06, down * 0.98), pool, gap=8, heaviest=8)
    rim = [(u, v + down * 0.2) for u, v in oval(x, y, across, down)]
    plate.fill(rim, tint(BRICK, OAT, 0.6))
    top = [
        (u + plate.chance.uniform(-2.5, 2.5), v + plate.chance.uniform(-2, 2))
        for u, v in oval(x, y, across, down)
    ][:-1]
    solid(plate, top, CRUST, gap=10, angle=-24, bow=18, heaviest=5.5, edge=4)
    for _ in range(cracks):
        turn, start = plate.chance.uniform(0, 6.28), plate.chance.uniform(0.05, 0.45)
        path = []
        for step in range(6):
            reach = start + step * 0.1
            turn += plate.chance.uniform(-0.34, 0.34)
            path.append((x + math.cos(turn) * reach * across, y + math.sin(turn) * reach * down))
        plate.line(flowing(path, closed=False, steps=5), 5, tint(BRICK, INK, 0.45))
        plate.line([(u + 2, v + 4) for u, v in flowing(path, closed=False, steps=5)], 2.5, CRUMB)
    for _ in range(chunks):
        turn, reach = plate.chance.uniform(0, 6.28), plate.chance.uniform(0.1, 0.72)
        cx, cy = x + math.cos(turn) * reach * across, y + math.sin(turn) * reach * down
        size = plate.chance.uniform(11, 19)
        corners = [
            (cx + math.cos(a + turn) * size, cy + math.sin(a + turn) * size * 0.66)
            for a in (0, 1.3, 2.9, 4.4)
        ]
        plate.fill(corners, CHOCOLATE, edge=2.5)
