"""Where everything stands: paths from the root of the site, and absolute addresses from `url`."""

import re
import unicodedata

CARD_SIZES = (("4x6", "4 × 6 in"), ("5x7", "5 × 7 in"), ("a6", "A6"), ("a5", "A5"))


def recipe_path(name: str) -> str:
    return f"recipes/{name}/"


def journal_path(name: str) -> str:
    return f"journal/{name}/"


def standing_path(name: str) -> str:
    return f"{name}/"


def kind_path(kind: str) -> str:
    return f"kinds/{slug(kind)}/"


def slug(words: str) -> str:
    """Lower-case letters, digits and hyphens; letters of other scripts stay, for browsers escape them."""
    plain = unicodedata.normalize("NFKC", words).casefold()
    return re.sub(r"[^\w]+", "-", plain).strip("-_") or "kind"


def absolute(url: str, path: str) -> str:
    """`path` under the site's address, which ends with a slash."""
    return f"{url.rstrip('/')}/{path}"
