"""What a reference in braces means, taken by itself: an item, a part, a share, an extra, a stage, a measure.

The whole text is tried as an item or a part first, then as a share, an extra, a measure.
"""

import re
from dataclasses import dataclass
from fractions import Fraction

from generator.catalogue.lookup import fold
from generator.diagnostics.diagnostic import Diagnostic, Diagnostics, did_you_mean
from generator.diagnostics.span import Span
from generator.formula.model import Heat, Line, Measure, Part, Stage, Timed, Ware
from generator.formula.names import lines_called, names_near, parts_called
from generator.formula.normalise import is_count
from generator.formula.shelf import Shelf
from generator.formula.written import WrittenReference
from generator.measure.duration import read_duration
from generator.measure.length import read_length
from generator.measure.number import VULGAR, read_number
from generator.measure.quantity import Quantity, read_quantity
from generator.measure.temperature import read_temperature
from generator.measure.unit import SPOONS

KINDS = {
    **dict.fromkeys(("work", "mix", "knead", "cook"), Stage.HANDS_ON),
    **dict.fromkeys(("rest", "rise", "chill", "freeze", "cool"), Stage.WAITING),
    "bake": Stage.BAKING,
}
_MACHINE_WAITS = ("mix", "knead")
_FRACTION_SIGNS = ("/", "\u2044", "\u2215", *VULGAR)
_FRACTION_WORDS = {
    "half": Fraction(1, 2),
    "a half": Fraction(1, 2),
    "one half": Fraction(1, 2),
    "a third": Fraction(1, 3),
    "one third": Fraction(1, 3),
    "two thirds": Fraction(2, 3),
    "a quarter": Fraction(1, 4),
    "one quarter": Fraction(1, 4),
    "three quarters": Fraction(3, 4),
}
_OF = re.compile(r"\s{0,9}of\s{1,9}", re.I)
_PINCH = re.compile(r"(an?\s{1,9}(?:pinch|dash|little|few drops))\s{1,9}of\s{1,9}(\S.*)", re.I)


@dataclass(frozen=True, slots=True, kw_only=True)
class Whole:
    line: Line
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Everything:
    part: Part
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Share:
    """A share of a line: one of `fraction` and `quantity`; neither for `rest`, and for what is no share at all."""

    line: Line
    words: str
    fraction: Fraction | None
    quantity: Quantity | None
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Extra:
    """An amount outside the formula, such as `10 g of bread flour`; `words` for a pinch or for pieces."""

    item: str
    ware: Ware | None
    line: Line | None
    quantity: Quantity | None
    words: str
    span: Span


Meaning = Whole | Everything | Share | Extra | Timed | Heat | Measure


def meaning_of(
    reference: WrittenReference, *, parts: tuple[Part, ...], shelf: Shelf, way: str
) -> tuple[Meaning | None, Diagnostics]:
    """What one reference means in the way called `way`; None with a diagnostic where it means nothing."""
    text, span = reference.text, reference.span
    named = _named(text, span, parts)
    if named is not None:
        return named
    shared = _share(text, span, parts, shelf)
    if shared is not None:
        return shared
    extra = _extra(text, span, parts, shelf)
    if extra is not None:
        return extra
    return _measure(text, span, way, parts)


def _named(text: str, span: Span, parts: tuple[Part, ...]) -> tuple[Meaning | None, Diagnostics] | None:
    lines = lines_called(text, parts)
    if len(lines) == 1:
        return Whole(line=lines[0], span=span), ()
    if len(lines) > 1:
        return None, (_ambiguous(text, span, lines),)
    called = parts_called(text, parts)
    if called:
        return Everything(part=called[0], span=span), ()
    return None


def _ambiguous(text: str, span: Span, lines: tuple[Line, ...]) -> Diagnostic:
    full = tuple(dict.fromkeys(f"{line.part}/{line.item}" if line.part else line.item for line in lines))
    times = "twice" if len(lines) == 2 else f"{len(lines)} times"
    message = f"“{text}” stands in the formula {times}"
    hint = "Say which one: " + " or ".join(f"“{{{each}}}”" for each in full) + "."
    if len(full) == 1:
        hint = "Join the lines of that name into one, or name the whole part."
    return Diagnostic(code="R011", message=message, span=span, hint=hint)


def _share(
    text: str, span: Span, parts: tuple[Part, ...], shelf: Shelf
) -> tuple[Meaning | None, Diagnostics] | None:
    name, colon, words = text.rpartition(":")
    if not colon:
        return None
    name, words = name.strip(), " ".join(words.split())
    lines = lines_called(name, parts)
    if not lines:
        return None if _reads_as_measure(text) else (None, (_no_line(name, words, span, parts),))
    if len(lines) > 1:
        return None, (_ambiguous(name, span, lines),)
    fraction = _fraction(words)
    if words.casefold() == "rest":
        return Share(line=lines[0], words="rest", fraction=None, quantity=None, span=span), ()
    if fraction is not None and 0 < fraction <= 1:
        return Share(line=lines[0], words=words, fraction=fraction, quantity=None, span=span), ()
    read = read_quantity(words, spoons=shelf.spoons)
    if fraction is None and read and read[1] == len(words) and read[0].amount.low > 0:
        return Share(line=lines[0], words=words, fraction=None, quantity=read[0], span=span), ()
    message = f"“{words}” is no share of {name}"
    hint = f"Write “{{{name}: half}}”, “{{{name}: 1/3}}”, “{{{name}: 20 g}}” or “{{{name}: rest}}”."
    unclear = Share(line=lines[0], words=words, fraction=None, quantity=None, span=span)
    return unclear, (Diagnostic(code="R012", message=message, span=span, hint=hint),)


def _no_line(name: str, words: str, span: Span, parts: tuple[Part, ...]) -> Diagnostic:
    """A share of something that is no line: a whole part, or a stage with a colon too many."""
    if parts_called(name, parts):
        message = f"“{name}” is a part, and a part has no shares"
        hint = f"Take shares of its ingredients, or write “{{{name}}}” for everything in it."
        return Diagnostic(code="R012", message=message, span=span, hint=hint)
    if fold(name) in (*KINDS, "oven", "core"):
        message = f"“{name}” is followed by a space, not by a colon"
        return Diagnostic(code="R010", message=message, span=span, hint=f"Write “{{{fold(name)} {words}}}”.")
    return _nothing(name, span, parts)


def _fraction(words: str) -> Fraction | None:
    """`half`, `1/3`, `⅓`, `30 %`; a whole number is no fraction but a count of pieces."""
    folded = words.casefold()
    if folded in _FRACTION_WORDS:
        return _FRACTION_WORDS[folded]
    percent = folded.endswith("%")
    plain = folded.rstrip("% ")
    read = read_number(plain)
    if read is None or read[1] != len(plain) or not read[0].is_exact:
        return None
    if percent:
        return read[0].low / 100
    return read[0].low if read[0].low < 1 and any(sign in plain for sign in _FRACTION_SIGNS) else None


def _reads_as_measure(text: str) -> bool:
    return read_duration(text) is not None or read_temperature(text) is not None


def _extra(
    text: str, span: Span, parts: tuple[Part, ...], shelf: Shelf
) -> tuple[Meaning | None, Diagnostics] | None:
    pinch = _PINCH.fullmatch(text)
    if pinch:
        return _extra_of(pinch.group(2), None, pinch.group(1), span, parts, shelf)
    read = read_quantity(text, spoons=shelf.spoons)
    of = _OF.match(text, read[1]) if read else None
    if read is None or of is None:
        return None
    # A measure is worded by the shelf's spoons; pieces, pinches and drops as they are written.
    words = read[0].text.strip() if is_count(read[0]) else ""
    return _extra_of(text[of.end() :], read[0], words, span, parts, shelf)


def _extra_of(
    item: str, quantity: Quantity | None, words: str, span: Span, parts: tuple[Part, ...], shelf: Shelf
) -> tuple[Meaning | None, Diagnostics]:
    item = " ".join(item.split())
    lines = lines_called(item, parts)
    line = lines[0] if lines else None
    ware = line.ware if line else shelf.ware(item)[0]
    if line is None and ware is None:
        near = shelf.nearest(item)
        hint = "Did you mean " + " or ".join(f"“{each}”" for each in near) + "?" if near else ""
        message = f"neither the formula, the catalogue nor the pantry knows “{item}”"
        return None, (
            Diagnostic(code="R013", message=message, span=span, hint=hint or "Add it to pantry.yaml."),
        )
    if quantity is not None and quantity.amount.low <= 0:
        message, hint = "an amount must be more than nothing", "Give an amount above 0."
        return None, (Diagnostic(code="F004", message=message, span=span, hint=hint),)
    return Extra(item=item, ware=ware, line=line, quantity=quantity, words=words, span=span), ()


def _measure(text: str, span: Span, way: str, parts: tuple[Part, ...]) -> tuple[Meaning | None, Diagnostics]:
    kind, _, rest = text.partition(" ")
    folded = kind.casefold()
    if folded in KINDS:
        duration = read_duration(rest.strip())
        if duration is None:
            return None, (_no_time(folded, span),)
        return Timed(kind=folded, stage=_stage(folded, way), duration=duration, span=span), ()
    if folded in ("oven", "core"):
        temperature = read_temperature(rest.strip())
        if temperature is None:
            return None, (_no_temperature(folded, rest.strip(), span),)
        return Heat(kind=folded, temperature=temperature, span=span), ()
    temperature = read_temperature(text)
    if temperature is not None:
        return Heat(kind="other", temperature=temperature, span=span), ()
    duration, length = read_duration(text), read_length(text)
    if duration is not None or length is not None:
        return Measure(duration=duration, length=length, span=span), ()
    return None, (_lost_of(text, span, parts) or _nothing(text, span, parts),)


def _lost_of(text: str, span: Span, parts: tuple[Part, ...]) -> Diagnostic | None:
    """`{10 g flour}`, which is neither an extra nor a share."""
    read = read_quantity(text, spoons=SPOONS["us"])
    item = text[read[1] :].strip() if read else ""
    lines = lines_called(item, parts) if item else ()
    if read is None or not lines:
        return None
    amount = text[: read[1]].strip()
    message = f"“{text}” is neither an extra nor a share"
    hint = (
        f"Write “{{{lines[0].item}: {amount}}}” for a share, “{{{amount} of {lines[0].item}}}” for an extra."
    )
    return Diagnostic(code="R010", message=message, span=span, hint=hint)


def _stage(kind: str, way: str) -> Stage:
    """On a bread machine's dough cycle the machine mixes and kneads while the baker waits."""
    if kind in _MACHINE_WAITS and fold(way) == "dough cycle":
        return Stage.WAITING
    return KINDS[kind]


def _no_time(kind: str, span: Span) -> Diagnostic:
    message = f"“{kind}” needs a time"
    hint = f"Write “{{{kind} 20 min}}”, “{{{kind} 1 h 30 min}}” or “{{{kind} 12-15 min}}”."
    return Diagnostic(code="T001", message=message, span=span, hint=hint)


def _no_temperature(kind: str, said: str, span: Span) -> Diagnostic:
    message = f"“{kind}” needs a temperature"
    if any(character.isdigit() for character in said):
        message = f"“{said}” is no temperature with its scale"
    example = "“{oven 350 F}”, “{oven 180 C fan}” or “{oven gas 4}”" if kind == "oven" else "“{core 88 C}”"
    return Diagnostic(code="T002", message=message, span=span, hint=f"Write {example}.")


def _nothing(text: str, span: Span, parts: tuple[Part, ...]) -> Diagnostic:
    known = {fold(line.item): line.item for part in parts for line in part.lines}
    known |= {fold(part.name): part.name for part in parts if part.name}
    near = names_near(text, parts)
    hint = "Did you mean " + " or ".join(f"“{each}”" for each in near) + "?" if near else ""
    hint = hint or did_you_mean(text, known)
    if not hint:
        hint = "Add it to the formula, write “{10 g of …}” for an extra, or take the braces away."
    message = f"nothing in the formula is called “{text}”"
    return Diagnostic(code="R010", message=message, span=span, hint=hint)
