"""American spelling of our own words, which are written in British English. What a maker writes stays as it is."""

import re
from functools import lru_cache

_AMERICAN = {
    "colour": "color",
    "colours": "colors",
    "coloured": "colored",
    "flavouring": "flavoring",
    "flavourings": "flavorings",
    "levelled": "leveled",
    "mouldy": "moldy",
    "pasteurised": "pasteurized",
    "sulphites": "sulfites",
}
_BRITISH = re.compile(rf"\b(?:{'|'.join(sorted(_AMERICAN, reverse=True))})\b", re.IGNORECASE)


@lru_cache(maxsize=4096)
def american(text: str) -> str:
    """A text of ours, as it is named in the code, for readers in the United States."""
    return _BRITISH.sub(_respelt, text)


def _respelt(found: re.Match[str]) -> str:
    spelt = _AMERICAN[found[0].lower()]
    return spelt[:1].upper() + spelt[1:] if found[0][:1].isupper() else spelt
