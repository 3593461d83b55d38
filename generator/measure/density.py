"""From volume to weight and back, and how far two measures of one thing lie apart."""

from fractions import Fraction

from generator.measure.number import Range


def grams_of(ml: Range, grams_per_ml: Fraction) -> Range:
    return ml.scaled(grams_per_ml)


def millilitres_of(grams: Range, grams_per_ml: Fraction) -> Range:
    """Raises ValueError for a density that is not above zero: whoever reads one in must refuse it there."""
    if grams_per_ml <= 0:
        raise ValueError("a density is above zero")
    return grams.scaled(1 / grams_per_ml)


def apart(a: Range, b: Range) -> Fraction:
    """The midpoints' difference as a share of the first; 1 (wholly apart) where only the first is zero."""
    if a.mid == 0:
        return Fraction(0) if b.mid == 0 else Fraction(1)
    return abs(a.mid - b.mid) / abs(a.mid)
