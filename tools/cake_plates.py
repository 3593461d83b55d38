"""The pictures of cakes, and of a tart."""

import math

from engraving import (
    BRICK,
    CHOCOLATE,
    CRUMB,
    CRUST,
    INK,
    OAT,
    PALE_CRUST,
    PAPER,
    Colour,
    Plate,
    Point,
    ball,
    clamp,
    even,
    flowing,
    oval,
    pool,
    tint,
    wall,
)
from props import apple, ground, leaf, lemon_half, shadow, solid, wedge_of


def box_loaf(
    plate: Plate, left: float, right: float, foot: float, head: float, colour: Colour
) -> list[Point]:
    """The long side of a loaf cake with a risen, uneven top; its outline is handed back."""
    span = right - left
    top = flowing(
        [
            (left + 8, foot - 10),
            (left - 6, head + 50),
            (left + span * 0.1, head),
            (left + span * 0.3, head - 44),
            (left + span * 0.52, head - 60),
            (left + span * 0.75, head - 42),
            (left + span * 0.92, head + 4),
            (right + 4, head + 58),
            (right - 10, foot - 10),
            (left + span * 0.5, foot),
        ]
    )
    solid(plate, top, colour, gap=12, angle=-12, bow=40, heaviest=8)
    return top


def slice_of(plate: Plate, x: float, y: float, tall: float, wide: float, lean: float, specks: Colour) -> None:
    """A slice that leans back, cut face forward."""
    face = flowing(
        [
            (x, y),
            (x + lean, y - tall),
            (x + lean + wide * 0.28, y - tall * 1.2),
            (x + lean + wide * 0.7, y - tall * 1.2),
            (x + lean + wide, y - tall),
            (x + wide, y),
            (x + wide * 0.5, y + 8),
        ]
    )
    back = [(u + 26, v - 8) for u, v in face]
    plate.fill(back, CRUST)
    plate.fill(face, CRUMB)
    plate.engrave(face, lambda u, v: clamp(0.1 + 0.35 * u + 0.2 * v), gap=13, angle=-30, heaviest=4)
    for _ in range(46):
        u, v = plate.chance.uniform(0.1, 0.9), plate.chance.uniform(0.06, 1.05)
        px, py = x + lean * v + wide * u, y - tall * v
        plate.fill(oval(px, py, 4.5, 3.5), specks, edge=0)


def lemon_loaf(plate: Plate) -> None:
    ground(plate)
    shadow(plate, 800, 925, 640, 60)
    box_loaf(plate, 220, 960, 920, 590, CRUST)
    split = flowing(
        [
            (300, 640),
            (430, 588),
            (600, 566),
            (760, 580),
            (880, 634),
            (770, 628),
            (690, 650),
            (600, 622),
            (480, 650),
            (400, 624),
        ]
    )
    plate.fill(split, CRUMB, edge=5)
    plate.engrave(split, even, gap=10, angle=70, heaviest=5, colour=BRICK)
    for _ in range(70):
        u, v = plate.chance.uniform(0.05, 0.95), plate.chance.uniform(0.2, 0.95)
        plate.fill(oval(226 + u * 720, 590 + v * 320, 5, 4), INK, edge=0)
    slice_of(plate, 905, 930, 250, 240, 66, INK)
    slice_of(plate, 1015, 950, 236, 236, 96, INK)
    lemon_half(plate, 1350, 905, 96)


def ring(plate: Plate) -> None:
    ground(plate)
    shadow(plate, 820, 1010, 330, 40)
    foot = flowing([(700, 880), (740, 960), (610, 1005), (990, 1005), (860, 960), (900, 880)])
    plate.fill(foot, OAT)
    plate.engrave(foot, wall, gap=9, angle=90, heaviest=6)
    plate.fill(oval(800, 880, 560, 62), tint(OAT, PAPER, 0.8))
    plate.engrave(oval(800, 880, 560, 62), wall, gap=11, heaviest=5)
    body = flowing(
        [
            (352, 850),
            (330, 720),
            (400, 560),
            (560, 470),
            (800, 446),
            (1040, 470),
            (1200, 560),
            (1270, 720),
            (1248, 850),
            (1040, 898),
            (800, 908),
            (560, 898),
        ]
    )
    plate.fill(body, tint(BRICK, INK, 0.62))
    for i in range(-6, 7):
        turn = i / 6.6
        x_top, x_foot = 800 + 300 * math.sin(turn * 1.5), 800 + 462 * math.sin(turn * 1.5)
        x_low = 800 + (x_foot - 800) * 0.97
        rib = flowing(
            [
                (x_top - 24, 500 + 60 * abs(turn)),
                (x_foot - 34, 690),
                (x_low - 32, 868 - 26 * abs(turn)),
                (x_low + 32, 868 - 26 * abs(turn)),
                (x_foot + 34, 690),
                (x_top + 24, 500 + 60 * abs(turn)),
            ]
        )
        plate.engrave(
            rib,
            lambda u, v: clamp(0.9 - 1.5 * abs(u + 0.3)),
            gap=9,
            angle=90,
            heaviest=9,
            colour=CRUST,
            within=body,
        )
        if abs(i) < 6:
            groove: list[Point] = [
                (x_top + 34, 500 + 60 * abs(turn)),
                (x_foot + 40, 690),
                (x_low + 38, 872 - 26 * abs(turn)),
            ]
            plate.line(flowing(groove, closed=False), 4)
    plate.line([*body, body[0]], 6)
    drips: list[Point] = [(368, 640)]
    for i in range(13):
        x = 392 + i * 63
        long = plate.chance.uniform(30, 150) if 0 < i < 12 else 20
        crown = 650 - 40 * math.sin(math.pi * i / 12)
        drips += [
            (x - 16, crown),
            (x - 8, crown + long),
            (x + 12, crown + long + 12),
            (x + 26, crown + long - 6),
            (x + 34, crown + 4),
        ]
    coat = flowing(
        [*drips, (1222, 630), (1180, 552), (1030, 468), (800, 440), (570, 468), (414, 556)], steps=8
    )
    plate.fill(coat, CHOCOLATE, edge=5)
    plate.engrave(
        coat,
        lambda u, v: clamp(0.75 - 2.2 * math.hypot(u + 0.45, v + 0.25)),
        gap=9,
        angle=-12,
        bow=-40,
        heaviest=6,
        colour=tint(PAPER, BRICK, 0.6),
    )
    hole = oval(800, 520, 150, 40)
    plate.fill(hole, INK, edge=5)
    plate.engrave(hole, lambda u, v: clamp(0.3 - v), gap=8, heaviest=4, colour=BRICK)


def tart(plate: Plate) -> None:
    ground(plate, spot=False)
    x, y, radius = 730, 540, 410
    plate.engrave(oval(x + 24, y + 40, radius * 1.06, radius * 1.06), pool, gap=10, heaviest=14)
    flutes = [
        (
            x + math.cos(a / 360 * math.tau) * (radius + 16 * math.cos(a / 360 * math.tau * 36)),
            y + math.sin(a / 360 * math.tau) * (radius + 16 * math.cos(a / 360 * math.tau * 36)),
        )
        for a in range(360)
    ]
    plate.fill(flutes, CRUST)
    plate.engrave(flutes, ball, gap=12, angle=-30, heaviest=7)
    plate.fill(oval(x, y, 364, 364), tint(BRICK, OAT, 0.34), edge=4)
    inside = oval(x, y, 350, 350)
    plate.fill(inside, tint(OAT, PAPER, 0.55), edge=4)
    plate.engrave(
        inside,
        lambda u, v: clamp(0.55 * u + 0.6 * v) * 0.5,
        gap=15,
        angle=-35,
        bow=50,
        heaviest=6,
        colour=BRICK,
    )
    for turn in range(5, 365, 15):
        a = math.radians(turn)
        nut = leaf(x + math.cos(a) * 306, y + math.sin(a) * 306, 30, 14, turn + 70)
        plate.fill(nut, PALE_CRUST, edge=3)
        plate.line([nut[2], nut[10]], 2)
    wedge = wedge_of(x, y, 450, 12, 57)
    plate.fill(wedge, tint(OAT, PAPER, 0.86), edge=0)
    plate.line([wedge[1], wedge[0], wedge[-1]], 6)
    moved = wedge_of(x + 170, y + 112, 350, 12, 57)
    crust = wedge_of(x + 170, y + 112, 420, 12, 57)
    plate.engrave([(u + 20, v + 30) for u, v in crust], even, gap=9, heaviest=13)
    plate.fill(crust, CRUST)
    plate.engrave(crust, ball, gap=11, angle=-30, heaviest=7)
    plate.fill(moved, tint(OAT, PAPER, 0.55), edge=4)
    plate.engrave(
        moved, lambda u, v: clamp(0.3 * u + 0.5 * v) * 0.6, gap=13, angle=-35, heaviest=6, colour=BRICK
    )
    for turn in (18, 34, 50):
        a = math.radians(turn)
        plate.fill(
            leaf(x + 170 + math.cos(a) * 306, y + 112 + math.sin(a) * 306, 30, 14, turn + 70),
            PALE_CRUST,
            edge=3,
        )


def cake_block(plate: Plate, x: float, y: float, wide: float, tall: float, deep: float, slant: float) -> None:
    """A square of layered cake: front face, right side and a rough lid."""
    front = [(x, y), (x + wide, y), (x + wide, y - tall), (x, y - tall)]
    side = [
        (x + wide, y),
        (x + wide + slant, y - deep),
        (x + wide + slant, y - deep - tall),
        (x + wide, y - tall),
    ]
    lid = [
        (x, y - tall),
        (x + wide, y - tall),
        (x + wide + slant, y - deep - tall),
        (x + slant, y - deep - tall),
    ]
    plate.fill(front, CRUMB)
    plate.fill(side, OAT)
    plate.engrave(side, even, gap=10, angle=0, heaviest=7)
    band = [
        (x + 3, y - tall * 0.36),
        (x + wide - 3, y - tall * 0.36),
        (x + wide - 3, y - tall * 0.64),
        (x + 3, y - tall * 0.64),
    ]
    plate.engrave(front, lambda u, v: 0.22, gap=14, angle=-35, heaviest=4)
    plate.fill(band, tint(OAT, PAPER, 0.95), edge=0)
    for _ in range(round(wide / 26)):
        px, py = x + plate.chance.uniform(26, wide - 26), y - tall * plate.chance.uniform(0.42, 0.58)
        chunk = [(px + math.cos(a) * 21, py + math.sin(a) * 13) for a in (0.3, 1.6, 2.9, 4.4, 5.4)]
        plate.fill(chunk, PAPER, edge=3, line=BRICK)
    plate.fill(lid, CRUST)
    plate.line([*front, front[0]], 5)
    for _ in range(round(wide * deep / 640)):
        u, v = plate.chance.uniform(0.04, 0.96), plate.chance.uniform(0.06, 0.94)
        px, py = x + wide * u + slant * v, y - tall - deep * v
        solid(
            plate,
            oval(px, py - 5, 17, 10, turn=plate.chance.uniform(-60, 60)),
            tint(BRICK, OAT, 0.75),
            gap=6,
            heaviest=4,
            edge=2.5,
        )


def apple_cake(plate: Plate) -> None:
    ground(plate)
    apple(plate, 470, 560, 136)
    apple(plate, 760, 536, 150)
    shadow(plate, 980, 908, 560, 44)
    cake_block(plate, 560, 900, 700, 180, 210, 150)
    for share in (1 / 3, 2 / 3):
        plate.line([(560 + 700 * share, 900), (560 + 700 * share, 720), (710 + 700 * share, 510)], 5)
    plate.line([(635, 615), (1335, 615), (1335, 795)], 5)
    shadow(plate, 420, 1004, 230, 30)
    cake_block(plate, 240, 1000, 240, 180, 84, 62)
