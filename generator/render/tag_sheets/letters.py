"""How high the letters of a tag must stand, by the rule that the region follows, and the type sizes that reach it.

Sources: "american", 21 CFR 101.2(c): 1/16 in on the lower-case o for ingredients and allergens; 21 CFR 101.7(h) (from
memory; its first rung is that of 16 CFR 500.21) for the net quantity, by the area of the face. "european", Reg. (EU)
1169/2011 Art. 13(2) and (3): x-height 1.2 mm, 0.9 mm where the largest face is below 80 cm²; Directive 76/211/EEC,
annex I: figures of the net quantity of 2, 3, 4 or 6 mm (both as authorities quote them). Canada, Australia and New
Zealand go by the first, which is the larger (common practice).
"""

from dataclasses import dataclass
from fractions import Fraction

AMERICAN, EUROPEAN = "american", "european"
MM_IN_POINT = 25.4 / 72
# Docket Sans, in thousandths of its size: the lower-case x, and the lowest figure.
X_HEIGHT, FIGURE_HEIGHT = Fraction(526, 1000), Fraction(669, 1000)
SMALL_FACE_CM2 = 80
# No printed text of ours is below 8 pt, which is higher than Europe asks.
LEAST_POINTS = 8.2
_IN2_CM2 = 2.54**2
_SIXTEENTH_INCH = 25.4 / 16
# Square inches of the face up to which a height holds, in sixteenths of an inch.
_NET_SIXTEENTHS = ((5, 1), (25, 2), (100, 3), (400, 4))
_LARGE_NET_SIXTEENTHS = 8
_FIGURES_MM = ((50, 2.0), (200, 3.0), (1000, 4.0))
_LARGE_FIGURES_MM = 6.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Letters:
    """Type sizes in points: of all text that the law asks for, and of the net weight."""

    text: float
    net: float


def required_mm(rule: str, face_cm2: float) -> float:
    """The least height of ingredients and allergens: of the o by the American rule, of the x by the European."""
    if rule == EUROPEAN:
        return 0.9 if face_cm2 < SMALL_FACE_CM2 else 1.2
    return _SIXTEENTH_INCH


def required_net_mm(rule: str, *, grams: int, face_cm2: float) -> float:
    """The least height of the net weight: of its figures by weight in Europe, of the o by the face elsewhere."""
    if rule == EUROPEAN:
        return next((height for most, height in _FIGURES_MM if grams <= most), _LARGE_FIGURES_MM)
    area = face_cm2 / _IN2_CM2
    return _SIXTEENTH_INCH * next(
        (each for most, each in _NET_SIXTEENTHS if area <= most), _LARGE_NET_SIXTEENTHS
    )


def letters_for(rule: str, *, face_cm2: float, grams: int) -> Letters:
    """Type a little above the least height, so that no rounding falls below it."""
    text = required_mm(rule, face_cm2) / float(X_HEIGHT) / MM_IN_POINT
    part = FIGURE_HEIGHT if rule == EUROPEAN else X_HEIGHT
    net = required_net_mm(rule, grams=grams, face_cm2=face_cm2) / float(part) / MM_IN_POINT
    least = max(text * 1.015, LEAST_POINTS)
    return Letters(text=round(least, 2), net=round(max(net * 1.015, least), 2))
