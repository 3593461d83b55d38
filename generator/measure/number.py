"""A written number, and the range it stands for.

Only the digits 0 to 9 and the vulgar fraction signs are numbers here. Superscripts and the digits of other
scripts are not: a line that holds them is better asked about than guessed at.
"""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType


@dataclass(frozen=True, slots=True)
class Range:
    """From `low` to `high`, both included; an exact amount has two equal ends.

    The one type here that may be built by position, because its two ends have an order of their own.
    Raises ValueError where low is above high: readers never build such a thing, so it is our own mistake.
    """

    low: Fraction
    high: Fraction

    def __post_init__(self) -> None:
        if self.low is not self.high and self.low > self.high:
            raise ValueError(f"a range runs from low to high, not from {self.low} to {self.high}")

    @classmethod
    def exact(cls, value: Fraction | int) -> "Range":
        exactly = value if type(value) is Fraction else Fraction(value)
        return cls(exactly, exactly)

    @property
    def mid(self) -> Fraction:
        return self.low if self.low is self.high else (self.low + self.high) / 2

    @property
    def is_exact(self) -> bool:
        return self.low is self.high or self.low == self.high

    def __add__(self, other: "Range") -> "Range":
        low = self.low + other.low
        one = self.low is self.high and other.low is other.high
        return Range(low, low if one else self.high + other.high)

    def scaled(self, factor: Fraction | int) -> "Range":
        if factor == 1:
            return self
        if self.low is self.high:
            return Range.exact(self.low * factor)
        ends = (self.low * factor, self.high * factor)
        return Range(min(ends), max(ends))

    def minus(self, other: "Range") -> "Range":
        """What is left when `other` is taken away end by end.

        End by end, because what is taken is a part of this same amount: half of 20 to 25 g leaves
        10 to 12.5 g, not 7.5 to 15 g. The result may be below zero, which is the caller's to notice.
        """
        ends = (self.low - other.low, self.high - other.high)
        return Range(min(ends), max(ends))


def total(ranges: Iterable[Range]) -> Range:
    """The sum; zero where there is nothing to add."""
    result = Range.exact(0)
    for each in ranges:
        result = result + each
    return result


VULGAR: Mapping[str, Fraction] = MappingProxyType(
    {
        "¼": Fraction(1, 4),
        "½": Fraction(1, 2),
        "¾": Fraction(3, 4),
        "⅓": Fraction(1, 3),
        "⅔": Fraction(2, 3),
        "⅛": Fraction(1, 8),
        "⅜": Fraction(3, 8),
        "⅝": Fraction(5, 8),
        "⅞": Fraction(7, 8),
        "⅕": Fraction(1, 5),
        "⅖": Fraction(2, 5),
        "⅗": Fraction(3, 5),
        "⅘": Fraction(4, 5),
        "⅙": Fraction(1, 6),
        "⅚": Fraction(5, 6),
        "⅐": Fraction(1, 7),
        "⅑": Fraction(1, 9),
        "⅒": Fraction(1, 10),
    }
)

WORDS: Mapping[str, Fraction] = MappingProxyType(
    {
        "half a dozen": Fraction(6),
        "half an": Fraction(1, 2),
        "half a": Fraction(1, 2),
        "half": Fraction(1, 2),
        "one": Fraction(1),
        "two": Fraction(2),
        "three": Fraction(3),
        "four": Fraction(4),
        "five": Fraction(5),
        "six": Fraction(6),
        "seven": Fraction(7),
        "eight": Fraction(8),
        "nine": Fraction(9),
        "ten": Fraction(10),
        "eleven": Fraction(11),
        "twelve": Fraction(12),
        "a dozen": Fraction(12),
        "an": Fraction(1),
        "a": Fraction(1),
    }
)
_ARTICLES = frozenset({"a", "an"})

SPACE = "[ \t\u00a0\u2009\u202f]"
# Twelve digits are more than any kitchen needs, and keep the cost of a number bounded.
_RUN = "[0-9]{1,12}(?![0-9])"
_SLASH = "[/\u2044\u2215]"
_SIGNS = "".join(VULGAR)
_FRACTION = re.compile(f"({_RUN}){_SLASH}({_RUN})")
_SIGN = re.compile(f"[{_SIGNS}]")
# A comma and exactly three digits is thousands, unless what stands before it cannot be (0,125; 1000,500).
_THOUSANDS = re.compile(r"[1-9][0-9]{0,2}(?:,[0-9]{3}){1,3}(?:\.[0-9]{1,12})?(?![0-9])")
# After a decimal comma more than three digits are more likely a mistyped thousand than a measure.
_DECIMAL = re.compile(f"(?:[0-9]{{1,12}})?\\.{_RUN}|[0-9]{{1,12}},[0-9]{{1,3}}(?![0-9])")
_WHOLE = re.compile(_RUN)
_JOIN = re.compile(f"{SPACE}{{1,3}}|-|(?=[{_SIGNS}])")
DASH = "[-\u2010-\u2015\u2212]"
TO = re.compile(f"{SPACE}{{0,3}}{DASH}{SPACE}{{0,3}}|{SPACE}{{1,3}}[Tt][Oo]{SPACE}{{1,3}}")
# `half and half` and `half fat` cream, `five spice`: names of things, not numbers.
_NOT_A_NUMBER = f"(?!{SPACE}{{1,3}}(?:&|(?:and|fat|spice|few|little|bit)\\b))"
# ASCII, or else folding would let a dotted or a dotless i of other alphabets stand for an i.
_WORD = re.compile(f"({'|'.join(WORDS)})(?={SPACE}|$){_NOT_A_NUMBER}", re.IGNORECASE | re.ASCII)
_IMPROPER = re.compile(f"(?<![0-9.,/\u2044\u2215])([0-9]{{2,12}}){_SLASH}({_RUN})(?!{_SLASH})")
_MIXED_IMPROPER = re.compile(f"[0-9]{SPACE}{{1,3}}([0-9]{{1,12}}){_SLASH}({_RUN})(?!{_SLASH})")

Read = tuple[Fraction, int]


def read_number(text: str, start: int = 0, *, words: bool = False) -> tuple[Range, int] | None:
    """The number or range that begins at `start`, and the index after it; None where there is none.

    `half`, `half a`, `one` to `twelve` and `a dozen` are numbers; `a` and `an` only with `words`, since `a`
    begins many a sentence. A range runs upwards; of `25-20` only the 25 is read, the rest is left.
    """
    first = read_single(text, start, words=words)
    if first is None:
        return None
    value, end = first
    gap = TO.match(text, end)
    second = read_single(text, gap.end(), words=words) if gap else None
    if second is not None and value < second[0]:
        return Range(value, second[0]), second[1]
    return Range.exact(value), end


def read_single(text: str, start: int = 0, *, words: bool = False) -> Read | None:
    """One number, never a range: `2`, `1/2`, `1 1/2`, `1-1/2`, `½`, `1½`, `1.5`, `1,5`, `1,000`, `half a`."""
    found = _numeral(text, start) or _word(text, start, words=words)
    return found if found is not None and _ends_cleanly(text, found[1]) else None


def looks_garbled(text: str) -> bool:
    """Whether a fraction in the text is likely to have lost its space: `11/2` (1 1/2?), `31/4`, `1 3/2`.

    Such a number is still read by its letter (5½); saying so aloud is the caller's part.
    """
    improper = any(int(top) > int(bottom) for top, bottom in _IMPROPER.findall(text))
    return improper or any(int(top) >= int(bottom) for top, bottom in _MIXED_IMPROPER.findall(text))


def _numeral(text: str, start: int) -> Read | None:
    return _fraction(text, start) or _thousands(text, start) or _decimal(text, start) or _mixed(text, start)


def _fraction(text: str, start: int) -> Read | None:
    if sign := _SIGN.match(text, start):
        return VULGAR[sign.group()], sign.end()
    found = _FRACTION.match(text, start)
    if found is None or int(found[2]) == 0:
        return None
    return Fraction(int(found[1]), int(found[2])), found.end()


def _thousands(text: str, start: int) -> Read | None:
    found = _THOUSANDS.match(text, start)
    return (Fraction(found.group().replace(",", "")), found.end()) if found else None


def _decimal(text: str, start: int) -> Read | None:
    found = _DECIMAL.match(text, start)
    return (Fraction(found.group().replace(",", ".")), found.end()) if found else None


def _mixed(text: str, start: int) -> Read | None:
    """A whole number, with the fraction that belongs to it where one follows."""
    found = _WHOLE.match(text, start)
    if found is None:
        return None
    whole, end = Fraction(int(found.group())), found.end()
    join = _JOIN.match(text, end)
    part = _fraction(text, join.end()) if join else None
    if join is None or part is None:
        return None if join and _FRACTION.match(text, join.end()) else (whole, end)
    # `1-3/2` is no mixed number: it can only be a range.
    if join.group() == "-" and part[0] >= 1:
        return whole, end
    return whole + part[0], part[1]


def _word(text: str, start: int, *, words: bool) -> Read | None:
    found = _WORD.match(text, start)
    if found is None:
        return None
    word = found[1].casefold()
    return None if word in _ARTICLES and not words else (WORDS[word], found.end())


def _ends_cleanly(text: str, end: int) -> bool:
    """Not in the middle of something longer: a date, a version, a run of digits, a power."""
    after, beyond = text[end : end + 1], text[end + 1 : end + 2]
    return not after.isnumeric() and not (after in tuple(".,/\u2044\u2215") and beyond in tuple("0123456789"))
