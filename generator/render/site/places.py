"""Addresses inside the publication, made relative to the page they stand on.

A folder's address gets its `index.html`, so that the links also lead somewhere when the pages are opened
from a disk. Places are written from the root of the site: "" is the home page, "recipes/plum-cake/" a folder.
"""

import posixpath
from functools import lru_cache
from urllib.parse import quote

_SAFE = "/!$&'()*+,;=:@~%"


@lru_cache(maxsize=1 << 11)
def relative(target: str, *, page: str) -> str:
    """The address of `target` as seen from the file or folder `page`; query and fragment are kept."""
    place, mark, rest = _split(target)
    if not place and mark == "#":
        return target
    wanted = place + "index.html" if not place or place.endswith("/") else place
    folder = posixpath.dirname(page) or "."
    return quote(posixpath.relpath(wanted, folder), safe=_SAFE) + mark + rest


def from_maker(address: str) -> str:
    """An address as a maker types it in Markdown, from the root of the site.

    The names of content files work too: "recipes/plum-cake.md" is "recipes/plum-cake/", "standing/about.md"
    is "about/". Steps upwards are dropped, since nothing of the publication lies above its root.
    """
    place, mark, rest = _split(address)
    parts = [part for part in place.split("/") if part not in ("", ".", "..")]
    inside = "/".join(parts)
    if inside.endswith(".md"):
        inside = inside.removeprefix("standing/").removesuffix(".md") + "/"
    elif parts and "." not in parts[-1]:
        inside += "/"
    return inside + mark + rest


def _split(address: str) -> tuple[str, str, str]:
    """Path, the first "?" or "#", and what follows it."""
    cut = next((at for at, sign in enumerate(address) if sign in "?#"), len(address))
    return address[:cut], address[cut : cut + 1], address[cut + 1 :]


def file_of(path: str) -> str:
    """The file of a page: "recipes/" is "recipes/index.html"."""
    return path + "index.html" if not path or path.endswith("/") else path
