"""Text for a place that takes neither markup nor angle brackets: what stands for them, and how long it is."""

import re

from generator.wording.speech import later, say

# An arrow typed with a keyboard, longest first; a number after "<" is compared, not pointed at.
_ARROWS = (
    (re.compile(r"<[-=]+>"), "↔"),
    (re.compile(r"[-=]+>(?!=)"), "→"),
    (re.compile(r"<-+(?!-*\d)"), "←"),
)
_AUTOLINK = re.compile(r"<((?:https?|mailto):[^<>\s]+)>")
_NUMBER = r"\s*(?=[-−]?[\d¼½¾⅐-⅞])"
_COMPARED = (
    (re.compile(r"(?<=\w)(?=[<>]=?" + _NUMBER + ")"), " "),
    (re.compile("<=" + _NUMBER), later("at most ")),
    (re.compile(">=" + _NUMBER), later("at least ")),
    (re.compile("<" + _NUMBER), later("less than ")),
    (re.compile(">" + _NUMBER), later("more than ")),
)
_BRACKETS = str.maketrans({"<": "‹", ">": "›"})
# Marks that steer a line and leave no trace, controls, the private marks of a reference, half characters.
_UNSEEN = re.compile(
    "[\u00ad\u200b\u2060\ufeff\ue000\ue001\x00-\x08\x0e-\x1b\x7f-\x84\x86-\x9f\ud800-\udfff]"
)
_ESCAPES = {"<": "%3C", ">": "%3E"}


def plain(text: str) -> str:
    """One line without angle brackets; every kind of space, no-break ones too, is a plain space."""
    line = " ".join(_UNSEEN.sub("", text).split())
    line = _AUTOLINK.sub(r"\1", line)
    for pattern, instead in (*_ARROWS, *_COMPARED):
        line = pattern.sub(say(instead), line)
    return line.translate(_BRACKETS)


def address(url: str) -> str:
    """An address on one line; what it may not hold is percent-encoded, so that it still leads there."""
    kept = "".join(_ESCAPES.get(sign, sign) for sign in _UNSEEN.sub("", url).strip())
    return "%20".join(kept.split())


def size(text: str) -> int:
    """Bytes in UTF-8, which is what the place counts: "350°F" has 6, "⅓ cup" 7."""
    return len(text.encode("utf-8"))
