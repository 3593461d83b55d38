"""The amount at the head of an ingredient line, put into the words that our own reader takes."""

import re
from dataclasses import dataclass

from generator.formula.shelf import Shelf
from generator.importer.line.tidy import SIGNS, one_line, pack_count_spelt_out, without_around
from generator.importer.line.unit_words import VAGUE_CUP, article_end, in_our_units, without_of
from generator.measure.number import read_number
from generator.measure.quantity import read_quantity

Question = tuple[str, str, str]
_NUMBER = re.compile(rf"\s*(?:[\d{SIGNS}][\d\s.,/⁄{SIGNS}\-–—]*[\d{SIGNS}]|[\d{SIGNS}])\s*")
_POINT_THOUSANDS = re.compile(r"^([1-9]\d{0,2})\.(\d{3})(?=\s*(?:g|ml|gr|gramm)\b)", re.I)
_VAGUE = re.compile(
    r"^(?P<how>(?:an?\s|eine?\s|une?\s|una\s|een\s|one\s|two\s|small\s|good\s|generous\s|big\s|\d\s)*(?:handfuls?|knobs?|splash(?:es)?|drizzles?|glugs?|"
    r"handvoll|handvol|poign[ée]es?|pu[ñn]ados?|manciat[ae]|"
    r"squeezes?|dollops?|sprinkl(?:e|es|ing)|lumps?|bunch(?:es)?|few|little|touch|bit|dusting|couple|sprinkle|scattering|smidge(?:n|on)?))\s+(?:of\s+)?(?P<what>.+)$",
    re.I,
)
_TASTE = re.compile(
    r"^(?P<what>[^,]+?)(?<!\sor)\s*(?:[-–—:(]\s*)?(?P<how>to taste|as needed|as required|q\.?\s?b\.?|"
    r"nach geschmack)\)?$",
    re.I,
)
_PINCH = re.compile(
    r"^(?:eine?\s|une\s|una\s|un\s|een\s)?(?:prise|pincée|pincee|pizca|pizzico|snufje|mespuntje|msp\.?|pitada|szczypta|nypa)\s+(.+)$",
    re.I,
)
_FRACTION_GAP = re.compile(r"(?<=\d)\s*&\s*(?=\d+/\d)|(?<=\d) and (?=(?:a half|1/2|½)\b)", re.I)
_DOUBLE_SIGN = re.compile(r"^(\d+)\s*(?:\+)\s*(\d/\d)")
_FRACTION_SPACES = re.compile(
    r"(?<![\d/])(\d{1,2})\s*[/⁄∕]\s+(\d{1,2})\b|(?<![\d/])(\d{1,2})\s+[/⁄∕]\s*(\d{1,2})\b"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Amount:
    """The line as our reader takes it; `note` what the amount's words said besides; `questions` what is unclear."""

    text: str
    note: str = ""
    questions: tuple[Question, ...] = ()


def plain_amount(text: str, *, shelf: Shelf) -> Amount:
    text = _FRACTION_GAP.sub(" ", text)
    text = _FRACTION_SPACES.sub(lambda f: f"{f[1] or f[3]}/{f[2] or f[4]}", text)
    text = _DOUBLE_SIGN.sub(r"\1 \2", text)
    text = pack_count_spelt_out(text)
    text, around = without_around(text)
    note = "about" if around else ""
    measured = read_quantity(text, spoons=shelf.spoons) is not None
    vague, taste = _VAGUE.match(text), _TASTE.match(text)
    if vague and (not measured or vague["how"].split()[0].isdigit()):
        return _vague(vague["what"], vague["how"].strip())
    if pinch := _PINCH.match(text):
        return Amount(text=f"a pinch of {without_of(' ' + pinch[1]).strip()}", note=note)
    if taste and not measured:
        return Amount(text=f"{taste['what'].strip()}, to taste", note=note)
    text, thousands = _thousands(text)
    text, questions = _foreign(text, shelf)
    return Amount(text=one_line(text), note=note, questions=(*thousands, *questions))


def _vague(what: str, how: str) -> Amount:
    hint = "Put it on your scale once and write the grams before the item."
    question = ("I008", f"nobody knows how much “{how}” is", hint)
    head, comma, rest = without_of(f" {what}").strip().partition(",")
    return Amount(text=f"{head.strip()}{comma}{rest}", note=how, questions=(question,))


def _thousands(text: str) -> tuple[str, tuple[Question, ...]]:
    """`1.000 g` is a thousand where a comma parts the decimals, and one gram elsewhere."""
    found = _POINT_THOUSANDS.match(text)
    if found is None:
        return text, ()
    whole = f"{found[1]}{found[2]}"
    hint = f"Keep {whole}, or write {found[1]} if the point parts decimals."
    question = ("I001", f"“{found.group()}” is read as {whole}", hint)
    return f"{whole}{text[found.end() :]}", (question,)


def _foreign(text: str, shelf: Shelf) -> tuple[str, tuple[Question, ...]]:
    """Every leading measure with a unit of another language, in ours: `2 EL (20 g) Zucker`."""
    ours = read_quantity(text, spoons=shelf.spoons)
    start = _amount_end(text)
    if start is None:
        return text, ()
    found = in_our_units(text, start)
    if ours is not None and ours[0].unit is not None and (found is None or found[2] <= ours[1]):
        return _second_measure(text[: ours[1]], text[ours[1] :]), ()
    if found is None:
        return text, ()
    fill, unit, end = found
    number = text[:start].strip() or "1"
    number = "1" if article_end(text) else number
    word = text[start:end].strip(" .").casefold()
    vague = unit == "cup"
    hint = "Fill your own cup and weigh it, then write the grams."
    question = (("I009", f"“{word}”: {VAGUE_CUP}", hint),) if vague else ()
    head = f"{number} {unit}" if not fill else f"{number} {fill} {unit}"
    return _second_measure(head, text[end:]), question


def _second_measure(head: str, rest: str) -> str:
    """What follows a unit without `de` or `d'`; the same after a second measure in brackets."""
    bracket = re.match(r"\s*(\([^()]*\))\s*", rest)
    if bracket:
        return f"{head} {bracket[1]} {without_of(' ' + rest[bracket.end() :]).strip()}"
    if rest[:1] in ",;)/-+":
        return f"{head}{rest}"
    return f"{head} {without_of(rest).strip()}"


def _amount_end(text: str) -> int | None:
    if article := article_end(text):
        return article
    number = read_number(text)
    if number is None:
        return None
    end = number[1]
    while end < len(text) and text[end].isspace():
        end += 1
    return end
