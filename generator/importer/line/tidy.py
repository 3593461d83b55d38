"""The surface of an ingredient line: list marks, leaders, table cells and trailing amounts put into one order."""

import re

from generator.measure.number import VULGAR, read_number
from generator.measure.quantity import Quantity, read_quantity
from generator.measure.unit import Kind, Spoons, unit_named

SIGNS = "".join(VULGAR)
# Any sign but one that an amount, a bracket, a table, a quotation or markup begins with; `~` means about.
_BULLET = re.compile(
    rf"^\s*(?:(?:\[[ xX]?\]|\([ xX]?\)|[^\w\s()\[\].,|<{{}}@#\\\"'“‘$&~{SIGNS}])+\s*|~\s+|(?<=\s)o\s+(?=\d))+"
)
_NUMBERED = re.compile(
    rf"^\s*(?:(?:\d{{1,2}}[.)]|\d{{1,2}}\s?/(?=\s))\s+(?=[\w{SIGNS}(])|(?:\(\d{{1,2}}\)|\[\d{{1,2}}\])\s+(?=[\d{SIGNS}(]))",
    re.I,
)
_EMPHASIS = re.compile(r"(\*\*|__|(?<!\w)[*_](?=\S)|(?<=\S)[*_](?!\w)|`)")
_BLANKS = re.compile(r"[ \t\u00a0\u2000-\u200a\u202f\u205f\u3000]+")
_LEADERS = re.compile(r"\s*(?:\.{3,}|…+|_{3,}|-{3,}|(?:\.\s){3,}\.?)\s*")
_CELLS = re.compile(r"\s*\|\s*|\t+| {3,}")
_AROUND = re.compile(
    r"^(?:about|approx(?:\.|imately)?|around|roughly|circa|ca\.?|env\.?|environ|etwa|~|≈|\+/-)\s*", re.I
)
_SIZE_LAST = re.compile(r"(?<=[\w½¼¾⅓⅔])\s+(?:extra[\s-]large|large|medium|small|packed|heaped|level)$", re.I)
_PERCENT_CELL = re.compile(r"\(?\d{1,3}(?:[.,]\d{1,2})?\s?%\)?")
_JOIN = re.compile(r"\s*(?:[:=]|\s[-–—]|[-–—]\s)\s*")
_SAME_AGAIN = re.compile(r"(?<=[A-Za-z.])\s*/\s*|/ ")
_LOOSE = re.compile(r"\s*(?:or|to|as|plus|and|for)\s", re.I)
_TIGHT = re.compile(rf"(?<![\w.,/])([\d{SIGNS}][\d.,/⁄{SIGNS}]*)\s*(?:×|x)\s+(?=\d)", re.I)


def bare(text: str) -> str:
    """A line without its bullet, tick box, number of a list and marks of emphasis; one kind of blank."""
    text = _EMPHASIS.sub("", text)
    text = _BULLET.sub("", text)
    text = _NUMBERED.sub("", text)
    return text.strip()


def one_line(text: str) -> str:
    return _BLANKS.sub(" ", text).strip()


def in_order(text: str, *, spoons: Spoons) -> tuple[str, bool]:
    """The line with its amount first, and whether it had to be put there.

    Reads `Flour ..... 500 g`, `| flour | 500 g | 100 % |`, `flour: 500 g, sifted`, `500 g<tab>flour`.
    """
    cells = [one_line(each) for each in _CELLS.split(_LEADERS.sub("\t", text.strip("| "))) if each.strip()]
    if len(cells) > 1 and (joined := _from_cells(cells, spoons)):
        return joined, True
    plain = cells[0] if len(cells) == 1 and "|" in text else one_line(text)
    if starts_with_amount(plain, spoons=spoons):
        return plain, False
    return _trailing(plain, spoons)


def _from_cells(cells: list[str], spoons: Spoons) -> str:
    """Measures first, then the first cell of words, then the others as its preparation; percents go last."""
    cells = _with_units(cells, spoons)
    measures = [each for each in cells if is_measures(each, spoons=spoons)]
    percents = [each for each in cells if each not in measures and _PERCENT_CELL.fullmatch(each)]
    words = [
        each
        for each in cells
        if each not in measures and each not in percents and any(map(str.isalnum, each))
    ]
    if not measures and len(words) == 2 and words[1][:1].isdigit():
        return ""
    if not words:
        return ""
    first, *more = measures or [""]
    second = f" ({' / '.join(more)})" if more else ""
    note = "".join(f" ({each.strip('()')})" for each in percents)
    return one_line(f"{first}{second} {', '.join(words)}{note}")


def _with_units(cells: list[str], spoons: Spoons) -> list[str]:
    """A number and its unit in two cells are one measure."""
    out: list[str] = []
    for each in cells:
        before = out[-1] if out else ""
        number = read_number(before) if before else None
        alone = number is not None and not before[number[1] :].strip()
        unit = unit_named(each, spoons=spoons) if alone else None
        out[-1:] = [f"{before} {each}"] if unit else [*out[-1:], each]
    return out


def starts_with_amount(text: str, *, spoons: Spoons) -> bool:
    read = read_quantity(_AROUND.sub("", text), spoons=spoons)
    return read is not None and read[0].amount.low > 0


def is_measures(text: str, *, spoons: Spoons) -> bool:
    """Whether the whole text is one measure, with or without a second in brackets, such as `4 cups (500 g)`."""
    text = _SIZE_LAST.sub("", _AROUND.sub("", text.strip())).replace("(", "/ ").replace(")", "")
    for each in _SAME_AGAIN.split(text):
        read = read_quantity(each.strip(), spoons=spoons)
        if read is None or each.strip()[read[1] :].strip(" ."):
            return False
    return True


def _trailing(plain: str, spoons: Spoons) -> tuple[str, bool]:
    """`Flour: 500 g`, `Flour – 500 g, sifted`, `flour 500 g`, `Flour (500 g)`."""
    for join in _JOIN.finditer(plain):
        name, rest = plain[: join.start()].strip(), plain[join.end() :].strip()
        amount, after = _leading_measure(rest, spoons)
        if name and amount and not after.strip(" ,;.")[:1].isalnum():
            return one_line(f"{amount} {name}{after}"), True
        if name and amount and after.startswith((",", "(", ";", " (")):
            return one_line(f"{amount} {name}{after}"), True
        if name and amount and _LOOSE.match(after):
            return one_line(f"{amount} {name}, {after.strip()}"), True
        size, comma, cut = after.partition(",")
        if name and amount and _is_size(size):
            return one_line(f"{amount} {size.strip()} {name}{comma}{cut}"), True
    turned, moved = _unmarked_trailing(plain, spoons)
    return (turned, moved) if moved else _before_comma(plain, spoons)


def _before_comma(plain: str, spoons: Spoons) -> tuple[str, bool]:
    """`butter 125 g, melted`: the measure stands behind the name and before its preparation."""
    name, comma, cut = plain.partition(",")
    turned, moved = _unmarked_trailing(name, spoons) if comma else (plain, False)
    return (f"{turned},{cut}", True) if moved else (plain, False)


def _is_size(text: str) -> bool:
    return text.strip().casefold() in ("large", "medium", "small", "extra large", "extra-large")


def _leading_measure(text: str, spoons: Spoons) -> tuple[str, str]:
    read = read_quantity(_AROUND.sub("", text), spoons=spoons)
    if read is None:
        return "", text
    shift = len(text) - len(_AROUND.sub("", text))
    return text[: read[1] + shift].strip(), text[read[1] + shift :]


def _unmarked_trailing(plain: str, spoons: Spoons) -> tuple[str, bool]:
    """`flour 500 g`: only where the line ends with a measure that has a unit, or a bare count after a comma."""
    for start in (found.start() + 1 for found in re.finditer(rf"\s(?=[\d{SIGNS}])", plain)):
        tail = plain[start:]
        measures = is_measures(tail.rstrip("."), spoons=spoons)
        read = read_quantity(tail, spoons=spoons)
        if measures and read is not None and read[0].unit is not None and plain[:start].strip(" ,:-–—"):
            first, bracket, rest = tail.partition("(")
            second = f" ({rest}" if bracket else ""
            return one_line(f"{first.rstrip('. ')}{second} {plain[:start].strip(' ,:-–—')}"), True
    return plain, False


def without_around(text: str) -> tuple[str, bool]:
    """`about 500 g` says 500 g and that it is not exact."""
    rest = _AROUND.sub("", text)
    return (rest, True) if rest != text and read_number(rest) is not None else (text, False)


def is_pack_count(text: str) -> bool:
    """`2 x 400 g tins`: a count times the size of one."""
    return _TIGHT.match(text) is not None


def pack_count_spelt_out(text: str) -> str:
    """`2 x 400 g tins tomatoes` becomes `2 (400 g) tins tomatoes`."""
    found = re.match(r"(\d+)\s*[x×]\s*(\d+(?:[.,]\d+)?\s*(?:g|ml|oz|kg|l|cl|lb))\b\s*", text, re.I)
    return f"{found[1]} ({found[2]}) {text[found.end() :]}" if found else text


def mass_or_count(quantity: Quantity | None) -> bool:
    return quantity is not None and (quantity.unit is None or quantity.unit.kind is not Kind.VOLUME)
