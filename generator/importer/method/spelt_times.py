"""Times in the short hand and in the words of kitchens: `1h30`, `90'`, `an hour and a half`, `¾ of an hour`."""

import re
from collections.abc import Iterator

_HOURS = {"a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6}
_NAMED = "an?|one|two|three|four|five|six"
_PART = {"half": 30, "quarter": 15, "three quarters": 45, "three-quarters": 45}
_NO_TIME = r"(?![\d.,/]*\d)(?!\s?(?:g|kg|ml|oz|lb|cm|mm|°|º|degrees?|[CF]|%|x|×)(?!\w))"
_ONE = (
    r"(\d{1,2})\s?(?:h(?:rs?|ours?)?\.?\s?([0-5]\d)\s?(?:m(?:in(?:ute)?s?)?\b)?"
    r"|:([0-5]\d)\s?(?:h|hrs?|hours?)\b)"
)
_SPAN = re.compile(
    r"(?<![\w.,:/])(\d{1,2})\s?h(?:rs?|ours?)?\.?\s?([0-5]?\d)\s?(?:-|–|to)\s?([0-5]?\d)\s?m(?:in(?:ute)?s?)?\b",
    re.I,
)
_SHORT = re.compile(
    rf"(?<![\w.,:/]){_ONE}{_NO_TIME}(?:\s?(?:-|–|to)\s?{_ONE}{_NO_TIME})?(?!\s?[-–]\s?\d)", re.I
)
_STROKE = re.compile(r"(?<![\w.,:/])(\d{1,3})(?:'|′|’)?(?:\s?(?:-|–|to)\s?(\d{1,3}))?\s?['′’](?![\w'′’])")
_QUOTED = re.compile(r"(?:^|[\s(])['‘]\w")
_AND_PART = re.compile(
    rf"\b({_NAMED}|\d{{1,2}})\shours?\sand\s(?:an?\s)?(half|quarter|three[\s-]quarters)\b"
    rf"|\b({_NAMED}|\d{{1,2}})\sand\s(?:an?\s)?(half|quarter|three[\s-]quarters)\shours?\b",
    re.I,
)
_PART_OF = re.compile(
    r"(?<!and\s)(?<!and\sa\s)(?:\b(?:an?\s|one\s)?(half|quarter|three[\s-]quarters)|(½|¼|¾))(?:\s?of)?\s(?:an\s)?hour\b"
    r"|\b(?:an?\s)?(half)[\s-]hour\b",
    re.I,
)
_SIGNS = {"½": 30, "¼": 15, "¾": 45}


def spelt_times(text: str) -> Iterator[tuple[int, int, str]]:
    """Where such a time begins and ends, and how we write it."""
    for found in _SPAN.finditer(text):
        yield found.start(), found.end(), f"{_clock(found[1], found[2])} to {_clock(found[1], found[3])}"
    for found in _SHORT.finditer(text):
        low = _clock(found[1], found[2] or found[3])
        yield (
            found.start(),
            found.end(),
            f"{low} to {_clock(found[4], found[5] or found[6])}" if found[4] else low,
        )
    if not _QUOTED.search(text):
        for found in _STROKE.finditer(text):
            yield found.start(), found.end(), f"{found[1]}{'-' + found[2] if found[2] else ''} min"
    for found in _AND_PART.finditer(text):
        hours = found[1] or found[3]
        minutes = _PART[(found[2] or found[4]).casefold()]
        yield found.start(), found.end(), f"{_HOURS.get(hours.casefold()) or int(hours)} h {minutes} min"
    for found in _PART_OF.finditer(text):
        minutes = _SIGNS[found[2]] if found[2] else _PART[(found[1] or found[3]).casefold()]
        yield found.start(), found.end(), f"{minutes} min"


def _clock(hours: str, minutes: str) -> str:
    return f"{int(hours)} h {int(minutes)} min" if int(minutes) else f"{int(hours)} h"
