"""How high a kitchen lies, as a person types it."""

import argparse
import re
from fractions import Fraction

_HEIGHT = re.compile(
    r"([0-9]{1,6}|[0-9]{1,3}(?:,[0-9]{3})+)\s*(ft|feet|foot|m|metres?|meters?)",
    re.IGNORECASE,
)


def height(text: str) -> Fraction:
    """Feet above the sea: 5000 ft, 1600 m. A bare number has no unit, and is asked about."""
    from generator.formula.altitude import HIGHEST_FT, METRES_IN_A_FOOT

    found = _HEIGHT.fullmatch(text.strip())
    if found is None:
        raise argparse.ArgumentTypeError(f"“{text}” is not a height with its unit, such as 5000 ft or 1600 m")
    number = Fraction(found[1].replace(",", ""))
    feet = number if found[2].lower().startswith("f") else number / METRES_IN_A_FOOT
    if not 0 < feet <= HIGHEST_FT:
        most = int(HIGHEST_FT * METRES_IN_A_FOOT)
        raise argparse.ArgumentTypeError(
            f"“{text}” is no height of a kitchen: write from 1 to {HIGHEST_FT} ft, or to {most} m"
        )
    return feet
