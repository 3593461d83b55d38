"""The pictures of what goes into tins and jars."""

import math

from engraving import (
    BRICK,
    CRUMB,
    CRUST,
    INK,
    OAT,
    PALE_CRUST,
    PAPER,
    Plate,
    ball,
    clamp,
    even,
    flowing,
    oval,
    tint,
    wall,
)
from props import cracked_cookie, ground, leaf, lemon_half, shadow, solid, strip


def rack_cookies(plate: Plate) -> None:
    ground(plate)
    shadow(plate, 820, 950, 690, 90)
    frame = [(330, 560), (1270, 560), (1450, 960), (150, 960)]
    for i in range(17):
        t = i / 16
        plate.line([(330 + 940 * t, 560), (150 + 1300 * t, 960)], 5, tint(INK, PAPER, 0.75))
    plate.line([*frame, frame[0]], 10)
    for t in (0.34, 0.68):
        y = 560 + 400 * t
        plate.line([(330 - 180 * t, y), (1270 + 180 * t, y)], 8)
    for leg in (165, 1435):
        plate.line([(leg, 960), (leg, 1000)], 10)
    for row, (y, size, count) in enumerate(((600, 108, 4), (720, 126, 4), (866, 146, 4))):
        for i in range(count):
            span = (0.74 + row * 0.13) * 860
            x = 800 + (i - 1.5) * span / 3.05
            cracked_cookie(plate, x, y, size, size * 0.48, 5, 7)


def gift_tin(plate: Plate) -> None:
    ground(plate)
    shadow(plate, 840, 985, 600, 56)
    lid = oval(1130, 700, 300, 300)
    plate.fill([(u + 26, v + 6) for u, v in lid], tint(BRICK, INK, 0.5))
    plate.fill(lid, BRICK)
    plate.engrave(lid, ball, gap=12, angle=-30, bow=50, heaviest=7)
    for radius in (262, 246):
        plate.line(oval(1130, 700, radius, radius), 4, PAPER)
    for turn in range(0, 360, 30):
        a = math.radians(turn)
        plate.fill(leaf(1130 + math.cos(a) * 150, 700 + math.sin(a) * 150, 62, 18, turn), PAPER, edge=3)
    plate.fill(oval(1130, 700, 56, 56), PAPER, edge=4)
    back = oval(640, 640, 380, 92)
    plate.fill(back, tint(INK, PAPER, 0.6))
    paper = flowing(
        [
            (272, 640),
            (300, 560),
            (360, 600),
            (430, 520),
            (520, 566),
            (610, 500),
            (700, 560),
            (800, 508),
            (880, 576),
            (960, 548),
            (1008, 640),
            (640, 720),
        ]
    )
    plate.fill(paper, PAPER, edge=4)
    plate.engrave(paper, lambda u, v: 0.3 + 0.3 * math.sin(u * 22), gap=14, angle=80, heaviest=4)
    for x, y in (
        (450, 596),
        (640, 570),
        (830, 598),
        (540, 636),
        (740, 636),
        (400, 660),
        (640, 676),
        (880, 660),
    ):
        cracked_cookie(plate, x, y, 118, 48, 0, 9)
    front = [
        (260, 650),
        *oval(640, 650, 380, 92, start=180, end=0),
        (1020, 650),
        (1020, 900),
        *oval(640, 900, 380, 92, start=0, end=180),
    ]
    plate.fill(front, BRICK)
    plate.engrave(front, wall, gap=11, angle=90, heaviest=8)
    for drop in (40, 52, 212, 224):
        plate.line(oval(640, 650 + drop, 380, 92, start=4, end=176), 3.5, PAPER)
    for turn in range(18, 168, 24):
        a = math.radians(turn)
        u, v = 640 + math.cos(a) * 380, 782 + math.sin(a) * 92
        wide = max(0.3, math.sin(a))
        plate.fill([(u, v - 52), (u + 32 * wide, v), (u, v + 52), (u - 32 * wide, v)], PAPER, edge=3)
    plate.line(oval(640, 650, 380, 92, start=0, end=180), 9)
    plate.line([*front, front[0]], 5)


def oat_squares(plate: Plate) -> None:
    ground(plate)
    shadow(plate, 850, 985, 470, 60)
    for level, push in enumerate((0, 26, -18, 12)):
        y = 970 - level * 142
        x = 470 + push
        front = oval(x + 270, y - 66, 270, 66, square=9)
        slab = [(x + 12, y - 124), (x + 530, y - 124), (x + 640, y - 204), (x + 122, y - 204)]
        side = [(x + 536, y - 8), (x + 646, y - 92), (x + 640, y - 200), (x + 536, y - 122)]
        for shape, colour in ((side, tint(BRICK, OAT, 0.5)), (slab, PALE_CRUST), (front, CRUST)):
            plate.fill(shape, colour)
        plate.engrave(side, even, gap=9, angle=-38, heaviest=8)
        plate.engrave(front, lambda u, v: clamp(0.2 + 0.3 * v), gap=11, heaviest=6)
        for _ in range(64):
            flake = oval(
                x + plate.chance.uniform(26, 514),
                y - plate.chance.uniform(18, 116),
                17,
                10,
                turn=plate.chance.uniform(0, 180),
            )
            plate.fill(flake, plate.chance.choice((CRUMB, OAT, OAT, BRICK)), edge=2.5)
        for _ in range(44):
            u, v = plate.chance.uniform(0.04, 0.96), plate.chance.uniform(0.1, 0.9)
            flake = oval(
                x + 12 + 518 * u + 110 * v, y - 124 - 80 * v, 17, 8, turn=plate.chance.uniform(-30, 30)
            )
            plate.fill(flake, plate.chance.choice((CRUMB, OAT, OAT, BRICK)), edge=2.5)
    for width, colour in ((10, INK), (6, PAPER)):
        plate.line([(742, 974), (742, 408), (800, 366)], width, colour)
    for way in (-1, 1):
        loop = flowing([(800, 366), (800 + way * 54, 290), (800 + way * 122, 296), (800 + way * 112, 350)])
        plate.line([*loop, loop[0]], 10)
        plate.line([*loop, loop[0]], 6, PAPER)

    solid(plate, oval(800, 366, 16, 14), PAPER, gap=6, heaviest=3, edge=4)


def peel_jar(plate: Plate) -> None:
    ground(plate)
    shadow(plate, 700, 950, 380, 52)
    jar = oval(640, 690, 270, 262, square=6)
    plate.fill(jar, tint(OAT, PAPER, 0.6), edge=0)
    for row in range(15):
        for _ in range(6):
            piece = strip(
                plate,
                640 + plate.chance.uniform(-196, 196),
                912 - row * 29,
                plate.chance.uniform(90, 150),
                plate.chance.uniform(-50, 50),
            )
            inside = [p for p in piece if abs(p[0] - 640) < 252 and 470 < p[1] < 938]
            if len(inside) == len(piece):
                plate.fill(piece, plate.chance.choice((BRICK, CRUST, CRUST, PALE_CRUST)), edge=3)
                plate.engrave(piece, ball, gap=7, angle=30, heaviest=3)
    plate.engrave(jar, wall, gap=15, angle=90, heaviest=5)
    for x, wide in ((412, 10), (436, 5)):
        plate.line([(x, 520), (x, 860)], wide, PAPER)
    plate.line([*jar, jar[0]], 8)
    label = oval(640, 740, 140, 84, square=8)
    plate.fill(label, PAPER, edge=4)
    plate.line(oval(640, 740, 124, 70, square=8), 3, BRICK)
    for y, half in ((712, 74), (740, 92), (768, 56)):
        plate.line([(640 - half, y), (640 + half, y)], 5, tint(INK, PAPER, 0.7))
    lid = oval(640, 396, 236, 50, square=8)
    plate.fill(lid, BRICK, edge=6)
    plate.engrave(lid, wall, gap=10, angle=90, heaviest=6)
    plate.line([(404, 404), (876, 404)], 4, PAPER)
    lemon_half(plate, 1180, 830, 150)
    for x, y, turn in (
        (990, 1000, -12),
        (1120, 1028, 16),
        (1290, 1020, -24),
        (860, 1030, 10),
        (1400, 990, 40),
    ):
        piece = strip(plate, x, y, 130, turn)
        plate.engrave([(u + 8, v + 14) for u, v in piece], even, gap=6, heaviest=8)
        plate.fill(piece, CRUST, edge=4)
        plate.engrave(piece, ball, gap=7, angle=30, heaviest=4)
