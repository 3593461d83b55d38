"""Style sheets, scripts, the icon and the web fonts: what all pages share."""

import json
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from types import MappingProxyType

from generator.render.fonts import TYPEFACES, face_rules, web_copies
from generator.render.output import Product
from generator.render.photographs import without_notes
from generator.render.site.slim import slim_css, slim_js
from generator.render.theme import is_readable, templates, theme_file, theme_folder, theme_folders
from generator.render.worded import worded_script
from generator.wording.speech import gettext

_KIND = "site"
# Stands inside its page.
_INLINE = frozenset({"missing.css"})


def asset_products(theme: str) -> Iterator[Product]:
    """The shared files, under "site/leaf/": every sheet, script, drawing, font and picture, the theme's own before
    ours."""
    names = _published(theme)
    for name in names:
        content = _pieces(theme, name) + _content(theme_file(theme, _KIND, name))
        yield Product(path=f"site/leaf/{name}", content=content)
    yield Product(path="site/leaf/docket.css", content=_style_sheet(theme))
    for face in TYPEFACES:
        for name, content in web_copies(face):
            if name in names:
                continue
            yield Product(path=f"site/leaf/{name}", content=content)


def _published(theme: str) -> list[str]:
    folders = theme_folders(theme, _KIND)
    files = (
        path for folder in folders for path in folder.iterdir() if path.suffix in (*_SLIM, *_AS_THEY_ARE)
    )
    names = {path.name for path in files if is_readable(path, theme)}
    return sorted(name for name in names - _INLINE if not name[0].isdigit())


def _pieces(theme: str, name: str) -> bytes:
    """What stands before a script that builds elements: their template, so that no page carries it unused."""
    if name != "kitchen.js":
        return b""
    words = templates(theme, _KIND).get_template("kitchen-pieces.html").render()
    return f"const kitchenPieces = {json.dumps(words.strip())};\n".encode()


def _content(path: Path) -> bytes:
    if path.suffix in _AS_THEY_ARE:
        return without_notes(path.read_bytes(), path.suffix)
    text = path.read_text(encoding="utf-8")
    return _SLIM[path.suffix](worded_script(text, gettext) if path.suffix == ".js" else text).encode()


def _style_sheet(theme: str) -> bytes:
    """One style sheet: the faces, then the numbered sheets of the theme, or else ours, in their order."""
    sheets = sorted(
        each for each in theme_folder(theme, _KIND).glob("[0-9]*.css") if is_readable(each, theme)
    )
    rules = face_rules(".") + "".join(sheet.read_text(encoding="utf-8") for sheet in sheets)
    return slim_css(rules).encode()


_AS_THEY_ARE = (".woff2", ".ttf", ".png", ".jpg")
_SLIM: Mapping[str, Callable[[str], str]] = MappingProxyType({".css": slim_css, ".js": slim_js, ".svg": str})
