"""Style sheets, scripts, the icon and the web fonts: what all pages share."""

from collections.abc import Iterator

from generator.render.fonts import TYPEFACES, face_rules, web_copy
from generator.render.output import Product
from generator.render.theme import theme_folder

# Files of the theme's folder that are published as they are.
_PUBLISHED = ("icon.svg", "ticks.js", "sizes.js", "allergens.js", "kitchen.js", "kitchen.css")


def asset_products(theme: str) -> Iterator[Product]:
    """The shared files, under "site/leaf/"."""
    folder = theme_folder(theme, "site")
    for name in _PUBLISHED:
        yield Product(path=f"site/leaf/{name}", content=(folder / name).read_bytes())
    yield Product(path="site/leaf/docket.css", content=_style_sheet(theme))
    yield Product(path="site/leaf/print.css", content=(folder / "print.css").read_bytes())
    for face in TYPEFACES:
        yield Product(path=f"site/leaf/{face.web}", content=web_copy(face))


def _style_sheet(theme: str) -> bytes:
    """One style sheet: the faces, then the theme's sheets in the order of their names."""
    sheets = sorted(theme_folder(theme, "site").glob("[0-9]*.css"))
    return (face_rules(".") + "".join(sheet.read_text(encoding="utf-8") for sheet in sheets)).encode()
