"""The pictures of breads, and of the hands that bake them."""

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
    STEEL,
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
from props import board, ground, leaf, shadow, solid, tin


def braid(plate: Plate) -> None:
    ground(plate)
    board(plate, 800, 850, 640, 118)
    count = 12
    for i in range(count):
        along = (i + 0.5) / count * 2 - 1
        fat = (1 - abs(along) ** 2.6) * 0.6 + 0.4
        x = 800 + along * 520
        for side in (1, -1):
            y = 700 + side * 56 * fat - 20 * fat
            lobe = oval(x + 34 * fat, y, 122 * fat + 14, 62 * fat + 8, turn=side * -50, square=2.3)
            solid(
                plate, lobe, CRUST if side > 0 else PALE_CRUST, gap=11, angle=side * -50, bow=16, heaviest=7
            )
            for _ in range(4):
                u, v = plate.chance.uniform(-0.5, 0.5), plate.chance.uniform(-0.6, 0.6)
                fleck = oval(
                    x + 34 * fat + u * 70, y + v * 80 * fat, 11, 5, turn=plate.chance.uniform(0, 180)
                )
                plate.fill(fleck, BRICK, edge=2)


def boule(plate: Plate) -> None:
    ground(plate)
    cloth = flowing(
        [(210, 890), (500, 850), (1050, 846), (1400, 880), (1450, 960), (1180, 1010), (800, 1022), (330, 996)]
    )
    plate.fill(cloth, PAPER, edge=4)
    plate.engrave(
        cloth,
        lambda x, y: 0.3 if abs(y - 0.2) < 0.12 or abs(y - 0.62) < 0.06 else 0,
        gap=9,
        heaviest=8,
        colour=BRICK,
    )
    shadow(plate, 850, 930, 520, 62)
    loaf = flowing(
        [
            (352, 830),
            (372, 660),
            (500, 492),
            (690, 420),
            (900, 416),
            (1100, 486),
            (1230, 640),
            (1258, 822),
            (1180, 914),
            (900, 946),
            (640, 944),
            (430, 912),
        ]
    )
    solid(plate, loaf, CRUST, gap=13, angle=-18, bow=70, heaviest=9)
    for ring in range(5):
        dust = oval(805, 690 + ring * 8, 300 + ring * 38, 170 + ring * 22, start=195, end=330)
        plate.line(dust, 3, tint(PAPER, CRUST, 0.7))
    for x, y, long, turn in (
        (560, 640, 150, -58),
        (735, 575, 176, -66),
        (915, 575, 176, -112),
        (1080, 650, 146, -122),
    ):
        cut = leaf(x, y, long, 40, turn)
        plate.fill(cut, CRUMB, edge=5)
        plate.engrave(
            cut, lambda u, v: clamp(0.25 + 0.5 * u), gap=9, angle=turn + 80, heaviest=5, colour=BRICK
        )


def seeded(plate: Plate) -> None:
    ground(plate)
    shadow(plate, 830, 940, 580, 58)
    dome = flowing(
        [
            (330, 690),
            (316, 590),
            (372, 478),
            (520, 408),
            (720, 376),
            (900, 378),
            (1090, 412),
            (1232, 486),
            (1286, 590),
            (1270, 690),
            (800, 720),
        ]
    )
    solid(plate, dome, CRUST, gap=13, angle=-14, bow=60, heaviest=8)
    for _ in range(260):
        u = plate.chance.uniform(-1, 1)
        v = plate.chance.uniform(0, 1) ** 1.4
        x, y = 800 + u * 440, 400 + 90 * abs(u) ** 2.2 + v * 230
        if abs(u) > 0.9 and v > 0.4:
            continue
        size = plate.chance.choice((13, 9, 6))
        seed = leaf(x, y, size, size * 0.5, plate.chance.uniform(0, 180)) if size > 6 else oval(x, y, 5, 4)
        plate.fill(seed, PAPER if size == 9 else OAT if size == 13 else INK, edge=2.5)
    tin(plate, 300, 1300, 680, 940)


def brack(plate: Plate) -> None:
    ground(plate)
    shadow(plate, 850, 968, 420, 54)
    dome = flowing(
        [
            (478, 580),
            (456, 490),
            (520, 372),
            (660, 300),
            (810, 284),
            (960, 304),
            (1090, 380),
            (1146, 490),
            (1122, 580),
            (800, 610),
        ]
    )
    solid(plate, dome, CRUST, gap=13, angle=-16, bow=60, heaviest=9)
    for i in range(19):
        u = -0.78 + 1.56 * ((i * 0.382) % 1)
        v = 0.08 + 0.8 * (i / 19) * (1 - 0.35 * abs(u))
        fruit = oval(800 + u * 320, 326 + 120 * u * u + v * 190, 21, 14, turn=plate.chance.uniform(0, 90))
        solid(plate, fruit, BRICK if i % 3 == 0 else CHOCOLATE, gap=6, heaviest=3, edge=3)
    case = [
        (470, 560),
        *oval(800, 560, 330, 40, start=180, end=0)[1:-1],
        (1130, 560),
        (1110, 930),
        *oval(800, 930, 310, 44, start=0, end=180),
        (490, 930),
    ]
    plate.fill(case, tint(BRICK, PAPER, 0.82))
    plate.engrave(case, wall, gap=10, angle=90, heaviest=7)
    for i in range(25):
        a = math.pi * i / 24
        x = math.cos(a)
        plate.line(
            [(800 + x * 330, 560 + math.sin(a) * 40), (800 + x * 310, 930 + math.sin(a) * 44)],
            3,
            tint(PAPER, BRICK, 0.5),
        )
    plate.line(oval(800, 560, 330, 40, start=0, end=180), 6)
    for drop in (0, 16):
        plate.line(oval(800, 730 + drop, 321, 42, start=0, end=180), 7, PAPER)
        plate.line([(u, v + 5) for u, v in oval(800, 730 + drop, 321, 42, start=0, end=180)], 2.5)
    for side in (-1, 1):
        bow = flowing(
            [
                (800, 780),
                (800 + side * 60, 730),
                (800 + side * 120, 742),
                (800 + side * 112, 792),
                (800 + side * 50, 800),
            ]
        )
        plate.line([*bow, bow[0]], 9)
        plate.line([*bow, bow[0]], 5, PAPER)
        tail = flowing([(800, 784), (800 + side * 30, 840), (800 + side * 62, 880)], closed=False)
        plate.line(tail, 9)
        plate.line(tail, 5, PAPER)
    solid(plate, oval(800, 782, 17, 15), PAPER, gap=6, heaviest=3, edge=4)


def soda(plate: Plate) -> None:
    ground(plate)
    board(plate, 800, 880, 620, 130)
    loaf = flowing(
        [
            (330, 760),
            (350, 620),
            (480, 505),
            (650, 452),
            (860, 440),
            (1060, 480),
            (1210, 580),
            (1268, 740),
            (1200, 860),
            (1000, 922),
            (760, 934),
            (520, 906),
            (380, 850),
        ]
    )
    rough = [(u + plate.chance.uniform(-5, 5), v + plate.chance.uniform(-5, 5)) for u, v in loaf]
    solid(plate, rough, PALE_CRUST, gap=12, angle=-20, bow=60, heaviest=9)
    for cut in (
        flowing(
            [
                (395, 664),
                (590, 650),
                (800, 615),
                (1010, 600),
                (1190, 606),
                (1020, 668),
                (810, 700),
                (590, 716),
            ]
        ),
        flowing(
            [
                (690, 462),
                (735, 560),
                (772, 650),
                (800, 780),
                (812, 926),
                (880, 926),
                (890, 790),
                (850, 640),
                (790, 540),
            ]
        ),
    ):
        plate.fill(cut, CRUMB, edge=5)
        plate.engrave(cut, lambda u, v: 0.42, gap=10, angle=52, heaviest=5, colour=BRICK)
    join = flowing([(764, 625), (850, 612), (872, 690), (786, 704)])
    plate.fill(join, CRUMB, edge=0)
    for _ in range(90):
        a, r = plate.chance.uniform(0, 6.28), plate.chance.uniform(0.1, 0.88)
        x, y = 800 + math.cos(a) * r * 430, 690 + math.sin(a) * r * 215
        plate.fill(leaf(x, y, 12, 6, plate.chance.uniform(0, 180)), OAT, edge=2.5)


def roll(plate: Plate, x: float, y: float, across: float, down: float) -> None:
    solid(plate, oval(x, y, across, down, square=2.5), CRUST, gap=19, angle=-32, bow=34, heaviest=11)
    glint = oval(x - across * 0.34, y - down * 0.4, across * 0.3, down * 0.14, turn=-30)
    plate.fill(glint, PALE_CRUST, edge=0)
    for _ in range(7):
        a, r = plate.chance.uniform(0, 6.28), plate.chance.uniform(0, 0.55)
        seed = leaf(
            x + math.cos(a) * r * across, y + math.sin(a) * r * down, 10, 5, plate.chance.uniform(0, 180)
        )
        plate.fill(seed, PAPER, edge=2.5)


def rolls(plate: Plate) -> None:
    ground(plate, spot=False)
    plate.fill(oval(806, 596, 626, 446, square=9), tint(INK, OAT, 0.6), edge=0)
    pan = oval(780, 560, 620, 440, square=9)
    plate.fill(pan, STEEL, edge=7)
    plate.engrave(pan, ball, gap=24, angle=-40, heaviest=8)
    plate.fill(oval(780, 560, 576, 398, square=9), tint(INK, PAPER, 0.75), edge=5)
    for row in range(3):
        for column in range(4):
            x, y = 780 + (column - 1.5) * 278, 560 + (row - 1) * 254
            if (row, column) == (2, 3):
                plate.engrave(
                    oval(x - 20, y - 16, 100, 90),
                    lambda u, v: 0.4,
                    gap=10,
                    angle=45,
                    heaviest=4,
                    colour=PAPER,
                )
                continue
            roll(plate, x, y, 142, 130)
    plate.engrave(oval(1382, 940, 160, 130), pool, gap=9, heaviest=12)
    roll(plate, 1356, 900, 142, 132)
    torn = flowing([(1226, 842), (1250, 806), (1300, 780), (1296, 830), (1262, 880), (1230, 896)])
    plate.fill(torn, CRUMB, edge=4)
    plate.engrave(torn, even, gap=9, angle=60, heaviest=4, colour=BRICK)


def buns(plate: Plate) -> None:
    ground(plate)
    candle = [(1210, 860), (1210, 470), *oval(1250, 470, 40, 12, start=180, end=0), (1290, 860)]
    shadow(plate, 1290, 905, 150, 26)
    plate.fill(oval(1250, 880, 130, 36), STEEL)
    plate.engrave(oval(1250, 880, 130, 36), wall, gap=9, heaviest=5)
    plate.fill(candle, PAPER)
    plate.engrave(candle, wall, gap=10, angle=90, heaviest=6)
    plate.fill(oval(1250, 470, 40, 12), CRUMB)
    for radius in (150, 110):
        glow = oval(1250, 390, radius, radius)
        plate.engrave(
            glow, lambda u, v: 0.3 * clamp(1.1 - math.hypot(u, v)), gap=12, heaviest=8, colour=BRICK
        )
    plate.line([(1250, 470), (1250, 440)], 6)
    plate.fill(
        flowing([(1250, 310), (1284, 396), (1276, 438), (1250, 452), (1224, 438), (1216, 396)]), BRICK, edge=5
    )
    plate.fill(flowing([(1250, 380), (1266, 416), (1250, 440), (1234, 416)]), CRUMB, edge=0)
    shadow(plate, 680, 968, 520, 50)
    plate.fill(oval(640, 910, 500, 92), PAPER, edge=6)
    plate.fill(oval(640, 902, 410, 66), tint(OAT, PAPER, 0.6), edge=3)
    for x, y, size in ((640, 690, 168), (400, 770, 172), (880, 774, 172), (640, 818, 186)):
        bun = flowing(
            [
                (x - size, y + 50),
                (x - size * 0.9, y - size * 0.34),
                (x - size * 0.4, y - size * 0.72),
                (x + size * 0.3, y - size * 0.74),
                (x + size * 0.88, y - size * 0.36),
                (x + size, y + 46),
                (x + size * 0.6, y + size * 0.54),
                (x - size * 0.55, y + size * 0.54),
            ]
        )
        solid(plate, bun, CRUST, gap=12, angle=-26, bow=46, heaviest=8)
        plate.fill(
            oval(x - size * 0.34, y - size * 0.36, size * 0.32, size * 0.11, turn=-24), PALE_CRUST, edge=0
        )
        for _ in range(9):
            u, v = plate.chance.uniform(-0.7, 0.7), plate.chance.uniform(-0.4, 0.4)
            plate.fill(
                oval(x + u * size, y + v * size, 13, 6, turn=plate.chance.uniform(0, 180)), BRICK, edge=2.5
            )


def hand(plate: Plate, side: int) -> None:
    """A sleeve and a hand that grips the tin from one end: side -1 is the left, 1 the right."""

    def at(points: list[Point]) -> list[Point]:
        return [(800 + side * u, v) for u, v in points]

    skin = tint(BRICK, PAPER, 0.24)
    sleeve = at([(740, 690), (740, 1000), (560, 930), (540, 740)])
    plate.fill(sleeve, BRICK, edge=6)
    plate.engrave(sleeve, even, gap=13, angle=side * 70, heaviest=6)
    cuff = at([(575, 728), (590, 944), (536, 934), (520, 736)])
    plate.fill(cuff, PAPER, edge=5)
    palm = at(flowing([(540, 748), (470, 716), (400, 742), (372, 800), (380, 872), (430, 926), (540, 920)]))
    solid(plate, palm, skin, gap=11, angle=side * 60, bow=20, heaviest=6)
    for i, (reach, y) in enumerate(((300, 934), (286, 896), (300, 858), (326, 822))):
        finger = at(oval(reach + 62, y, 88 - i * 4, 24, turn=side * 0 - 6, square=2.6))
        solid(plate, finger, skin, gap=9, angle=side * 80, heaviest=4, edge=4.5)
    thumb = at(
        flowing(
            [(480, 726), (420, 650), (350, 612), (308, 616), (310, 650), (360, 690), (400, 760), (450, 780)]
        )
    )
    solid(plate, thumb, skin, gap=10, angle=side * 50, heaviest=5)
    nail = at(oval(330, 630, 17, 10, turn=32))
    plate.fill(nail, PAPER, edge=2.5)


def maker(plate: Plate) -> None:
    ground(plate)
    shadow(plate, 800, 1000, 520, 50)
    dome = flowing(
        [
            (420, 610),
            (436, 520),
            (560, 448),
            (720, 420),
            (900, 420),
            (1050, 452),
            (1164, 520),
            (1180, 610),
            (800, 650),
        ]
    )
    solid(plate, dome, CRUST, gap=13, angle=-14, bow=50, heaviest=8)
    cut = leaf(800, 500, 250, 30, -3)
    plate.fill(cut, CRUMB, edge=5)
    plate.engrave(cut, even, gap=10, angle=70, heaviest=5, colour=BRICK)
    tin(plate, 370, 1230, 620, 950)
    for side in (-1, 1):
        hand(plate, side)
    for _ in range(70):
        x, y = plate.chance.uniform(300, 1300), plate.chance.uniform(985, 1060)
        plate.fill(oval(x, y, plate.chance.uniform(2, 6), 2.5), PAPER, edge=0)
