"""Words that say what is done to an ingredient, wherever on its line they stand."""

import re

_DONE = (
    r"[a-z]{3,}ed|torn|cut|ground|beaten|frozen|shaken|broken|soft|cold|warm|hot|lukewarm|tepid|cool|ripe|thin|"
    r"ice[- ]cold|whole|raw|fine|coarse|split|whipped|minus\s\w+|dry|crushed"
)
_HOW = r"(?:[a-z]{3,}ly|very|well|just|still|half|slightly|quite|not|freshly|skin|rind|stone)"
_INTO = (
    r"(?:in|into|to)\s(?:(?:very|small|large|thin|thick|big|fine|rough|little|\d+\s?(?:cm|mm)|bite[- ]sized)\s)*"
    r"(?:cubes?|pieces?|chunks?|slices?|strips?|rounds?|dice|halves|quarters|bits?|sticks?|lumps?|crumbs?|flakes?|powder)"
    r"|(?:at|to)\sroom\stemperature|(?:at\s)?room\stemperature|on\stop|for\s(?:dusting|greasing|brushing|rolling|"
    r"sprinkling|serving|the\s(?:tin|pan|top|board))|as\sneeded|to\staste|if\sneeded|skins?\s(?:on|off)"
)
_ONE = rf"(?:{_HOW}\s)*(?:{_DONE})(?:\s(?:{_INTO}))?|{_INTO}"
_WHOLE = re.compile(
    rf"(?:{_ONE})(?:(?:\s?,\s?(?:and\s|then\s|but\s)?|\s(?:and|then|but|or|&)\s|\s)(?:{_ONE}))*", re.I
)
_BRACKET_LAST = re.compile(r"\s*\((?P<words>[^()\d]{3,60})\)\s*$")
_NAMES_ELSE = re.compile(r"\b(?:packed|heaped|heaping|level|sifted|optional|divided)\b", re.I)


def is_preparation(words: str) -> bool:
    """Whether words say nothing but how a thing is cut, warmed or made ready: `finely grated`, `in cubes`."""
    return _WHOLE.fullmatch(words.strip()) is not None


def preparation_after_comma(text: str) -> str:
    """`125 g butter (melted)` and `125 g butter – melted` as they are usually written: `125 g butter, melted`."""
    if found := _BRACKET_LAST.search(text):
        words, head = found["words"].strip(), text[: found.start()]
        if head and is_preparation(words) and not _NAMES_ELSE.search(words):
            return f"{head.rstrip(' ,;')}, {words}"
    return text
