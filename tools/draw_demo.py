"""Draws the pictures of the demonstration publication into its media folder.

    python tools/draw_demo.py [FOLDER]

Each picture is 1600 x 1200, in two inks on oat paper, and the same on every run.
"""

import sys
from collections.abc import Callable, Mapping
from pathlib import Path
from types import MappingProxyType

from bread_plates import boule, brack, braid, buns, maker, rolls, seeded, soda
from cake_plates import apple_cake, lemon_loaf, ring, tart
from engraving import Plate
from gift_plates import gift_tin, oat_squares, peel_jar, rack_cookies

MEDIA = Path(__file__).parent.parent / "content" / "media"

PICTURES: Mapping[str, Callable[[Plate], None]] = MappingProxyType(
    {
        "about-hands-and-tin": maker,
        "brown-butter-crackle-cookies": rack_cookies,
        "brown-soda-bread": soda,
        "candied-orange-peel": peel_jar,
        "candlemas-peel-buns": buns,
        "cardamom-orange-braid": braid,
        "cocoa-sour-cream-ring": ring,
        "crackle-apple-cake": apple_cake,
        "kettle-boule": boule,
        "lemon-almond-tart": tart,
        "lemon-poppy-loaf": lemon_loaf,
        "molasses-ginger-keepers": gift_tin,
        "orange-oat-squares": oat_squares,
        "seeded-tin-loaf": seeded,
        "sunday-milk-rolls": rolls,
        "tall-tea-brack": brack,
    }
)


def draw(folder: Path) -> None:
    """Every picture, as a JPEG named after what it shows."""
    folder.mkdir(parents=True, exist_ok=True)
    for name, engraver in PICTURES.items():
        plate = Plate(name)
        engraver(plate)
        plate.save(folder / f"{name}.jpg")


if __name__ == "__main__":
    draw(Path(sys.argv[1]) if len(sys.argv) > 1 else MEDIA)
