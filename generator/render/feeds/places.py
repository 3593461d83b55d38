"""Addresses for readers far from the site: everything absolute, in the letters a URI allows (RFC 3986)."""

from urllib.parse import quote

from generator.render.photographs import is_picture, published_path

_SAFE = "/!$&'()*+,;=:@~%?#[]-._"


def absolute(address: str, site: str) -> str:
    """A place of the publication, as Markdown names it from the root of the site, under the site's address.

    The names of content files work too, pictures lead to their published copy, and no step upwards leads out
    of the site.
    """
    cut = next((at for at, sign in enumerate(address) if sign in "?#"), len(address))
    parts = [part for part in address[:cut].split("/") if part not in ("", ".", "..")]
    folder = bool(parts) and "." not in parts[-1]
    return uri(site + _published("/".join(parts)) + ("/" if folder else "") + address[cut:])


def uri(address: str) -> str:
    """The address with letters that a URI may not have percent-encoded; what is encoded stays."""
    scheme, mark, rest = address.partition("://")
    if not mark:
        return quote(address, safe=_SAFE)
    host, slash, path = rest.partition("/")
    return f"{scheme}://{host}{slash}{quote(path, safe=_SAFE)}"


def _published(place: str) -> str:
    if place.startswith("media/") and is_picture(place):
        return published_path(place)
    if place.endswith(".md"):
        return place.removeprefix("standing/").removesuffix(".md") + "/"
    return place
