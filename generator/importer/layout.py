"""Sorts the lines of a text into places: title, ingredients with their parts, steps, facts, and the rest."""

import re
from collections.abc import Iterable
from dataclasses import dataclass, field

from generator.formula.shelf import Shelf
from generator.importer.facts import URL, fact_of
from generator.importer.ingredient import is_ingredient_like
from generator.importer.known import known
from generator.importer.model import Confidence, Placed, SourceLine
from generator.importer.tidy import bare, one_line
from generator.importer.words import PARTS, SECTIONS, VERBS, plain

_RULE = re.compile(r"^[\W_]+$")
_NUMBERED = re.compile(r"^\s*(?:step\s*)?\(?\d{1,2}[.):]\s*(?=\S)|^\s*step\s\d{1,2}\b\s*[-–—:.]?\s*", re.I)
_STEP_ALONE = re.compile(r"^\s*(?:step\s)?\d{1,2}[.):]?\s*$", re.I)
_TITLE_WORD = re.compile(r"^(?:title|name|recipe|rezept|recette|receta|ricetta|recept)\s*:\s*(?P<rest>.+)$", re.I)
_CAUTION = re.compile(r"^(?:caution|warning|careful|achtung)\s*[:!]\s*(?P<rest>.+)$", re.I)
_WAY = re.compile(
    r"^(?:method\s*[:\-–—]\s*|the\s)?(?P<way>(?:by hand|dough cycle|(?:in\s(?:a|the|your)\s)?(?:bread (?:machine|maker)|stand mixer|"
    r"food processor|mixer)|hand(?: |-)?(?:mixed|kneaded)|no(?: |-)knead))(?:\s(?:method|version|way|instructions))?\s*:?$",
    re.I,
)
_COMMON = re.compile(r"^(?:then,?\s)?(?:for\s)?(?:all|both|every|either)\s(?:the\s)?(?:ways?|methods?|versions?)\s*:?$|^then,? for (?:all|every) ways?:?$", re.I)
_FOR = re.compile(r"^(?:for|für|pour|para|per|voor)\s+(?:the\s|den\s|die\s|das\s|la\s|le\s|el\s|il\s|de\s|het\s)?(?P<name>[\w' -]{2,40}?)\s*(?:\([^)]*\))?\s*[:.]?$", re.I)
_SENTENCE_END = re.compile(r"[.!?]$")
_LISTED = re.compile(r",\s+(?:and\s+)?(?=(?:about\s)?[\d½¼¾⅓⅔]|an?\s(?:pinch|dash)\b)|;\s*")
_META = re.compile(r"^(?:(?:prep|cook|bak\w+|total|rest\w*|rising|proof\w*|active|hands-on|ready in|time)(?:\stime)?|difficulty|level|course|cuisine|category|calories|temperatures|contains|may contain)(?:,[^:]{1,40})?\s*[:=]", re.I)
_CHOOSE = re.compile(r"^choose one of (?P<many>\d) ways\.?$", re.I)
_PAID_WORDS = re.compile(r"\b(?:commission|affiliate|sponsored|sponsor)\b", re.I)
_POINTS = re.compile(r"\b(?:watch|video|recipe here|full recipe|printable|link|website|blog|subscribe|follow|shop|written)\b", re.I)
_COLUMNS = re.compile(r"^\s*\|?\s*:?-{2,}:?\s*\|[\s|:-]*$")
_TAB = re.compile(r"(?<=[\w)%.¼½¾])(?<![0-9][.)])\t+(?=\S)")
_MARK = re.compile(r"^#{1,6}\s+|^\*\*(?=.*\*\*:?$)|\*\*:?$|^==+\s*|\s*==+$|^--+\s*(?=\w)|(?<=\w)\s*--+$|^\[(?=[^\]]+\]$)|\]$")


@dataclass(slots=True)
class _State:
    shelf: Shelf
    out: list[Placed] = field(default_factory=list)
    section: str = "top"
    titled: bool = False
    led: bool = False
    blank: bool = True
    ingredients: int = 0
    steps: int = 0
    after_step: bool = False
    bare_number: bool = False
    ways: int = 0


def place_lines(lines: Iterable[SourceLine], shelf: Shelf) -> tuple[Placed, ...]:
    """Every line of the source with its place. A wrapped line gets the role of the line it goes on from."""
    source = tuple(lines)
    state = _State(shelf)
    numbered = sum(bool(_NUMBERED.match(each.text)) for each in source)
    for index, line in enumerate(source):
        _place(line, source[index + 1 :], state, numbered=numbered)
    return tuple(state.out)


def _put(state: _State, line: SourceLine, role: str, value: str = "", *, sure: bool = True) -> None:
    confidence = Confidence.SURE if sure else Confidence.LIKELY
    state.out.append(Placed(line=line, role=role, value=value, confidence=confidence))
    state.ingredients += role == "ingredient"
    state.steps += role == "step"


def _place(line: SourceLine, later: tuple[SourceLine, ...], state: _State, *, numbered: int) -> None:
    text = one_line(_TAB.sub(" | ", line.text))
    if not text:
        _put(state, line, "blank")
        state.blank = True
        return
    if line.hint and line.hint not in ("heading", "item", "cell"):
        _hinted(line, text, state)
    elif _RULE.match(text) and not any(each.isalnum() for each in text):
        _put(state, line, "rule")
    elif _STEP_ALONE.match(text) and state.section in ("method", "ingredients") and later:
        _put(state, line, "rule")
        state.section, state.bare_number = "method", True
    elif "|" in text and later and _COLUMNS.match(later[0].text):
        _put(state, line, "heading", text)
    else:
        _read(line, text, later, state)
    state.blank = False


_HINTED = {"section-ingredients": "ingredients", "section-method": "method", "section-notes": "notes"}


_IN_FIELDS = frozenset({"credit", "chapter", "link"})
"""Hints whose text has fields, parted by tabs."""


def _hinted(line: SourceLine, text: str, state: _State) -> None:
    """What the form of the source says of a line needs no guess."""
    if line.hint in _HINTED:
        state.section = _HINTED[line.hint]
        _put(state, line, "heading")
        return
    state.titled = state.titled or line.hint == "title"
    state.led = state.led or line.hint == "lead"
    if line.hint == "step" and (caution := _CAUTION.match(text)):
        _put(state, line, "caution", caution["rest"])
        return
    value = plain(text) if line.hint == "part" else line.text if line.hint in _IN_FIELDS else text
    if line.hint == "way" and _COMMON.match(text):
        value = ""
    _put(state, line, line.hint, value)


def _read(line: SourceLine, text: str, later: tuple[SourceLine, ...], state: _State) -> None:
    bared = one_line(_MARK.sub("", bare(text))).strip()
    heading = line.hint == "heading" or text.startswith("#") and text[:7].lstrip("#").startswith(" ")
    if _as_section(line, text, bared, heading, state):
        return
    if _META.match(bared) and state.section != "method":
        _put(state, line, "note", text)
        return
    if not state.titled and (named := _title_with_address(bared)):
        state.titled = True
        _put(state, line, "title", named)
    if state.section in ("top", "ingredients") and (listed := _in_one_line(bared, state)):
        state.section = "ingredients"
        for role, value in listed:
            _put(state, line, role, value, sure=False)
        return
    fact = fact_of(bared, within=state.section if state.section != "top" else "")
    if fact is not None and not (state.section == "ingredients" and fact.role in ("keeps", "credit")):
        role = fact.role
        value = f"{fact.value}\tpaid" if role == "link" and state.section == "paid" else fact.value
        _put(state, line, role, value)
        return
    if caution := _CAUTION.match(bared):
        _put(state, line, "caution", caution["rest"])
        return
    _BY_SECTION.get(state.section, _elsewhere)(line, text, bared, heading, later, state)


def _as_section(line: SourceLine, text: str, bared: str, heading: bool, state: _State) -> bool:
    """A heading such as Ingredients, with or without words behind it."""
    words = plain(bared)
    name = SECTIONS.get(words)
    rest = ""
    if name is None and (heading or len(words) < 60):
        head, _, tail = bared.partition(":")
        head_words = plain(head)
        if head_words in SECTIONS and tail.strip() and (head_words not in ("preparation", "note", "tip", "recipe", "source", "formula")):
            name, rest = SECTIONS[head_words], tail.strip()
        else:
            short = re.sub(r"\s*[(\[].*$|\s(?:for|für|pour|para|per|voor)\s.*$", "", bared)
            name = SECTIONS.get(plain(short)) if len(bared) < 70 and not bared.endswith(".") else None
            name = name if name in ("ingredients", "method") else None
    if name is None or (name == "method" and state.section == "top" and words == "preparation" and not heading):
        return False
    if words == "recipe" and not state.titled:
        return False
    if (name in ("credits", "keeps") and rest) or (rest and URL.search(rest)):
        return False
    state.section = name
    if rest:
        _rest_of_heading(line, rest, state)
    else:
        _put(state, line, "heading", bared)
        _beside_heading(line, bared, state)
    return True


def _beside_heading(line: SourceLine, bared: str, state: _State) -> None:
    """`Ingredients (makes 12)` says more than the name of its section."""
    more = re.search(r"[(\[]([^()\[\]]+)[)\]]|\s((?:for|für|pour|para|per|voor)\s.+)$", bared)
    words = (more[1] or more[2]).strip(" :") if more and plain(bared) not in SECTIONS else ""
    if words:
        fact = fact_of(words, within="")
        _put(state, line, fact.role if fact else "note", fact.value if fact else words)


def _rest_of_heading(line: SourceLine, rest: str, state: _State) -> None:
    if state.section == "ingredients":
        pieces = [each for each in _LISTED.split(rest) if each.strip()]
        for piece in pieces:
            _put(state, line, "ingredient", piece.strip().rstrip("."), sure=len(pieces) == 1)
    elif state.section == "method":
        chosen = _CHOOSE.match(rest)
        state.ways = int(chosen["many"]) if chosen else 0
        _put(state, line, "heading" if chosen else "step", rest)
    else:
        _put(state, line, "note", f"{line.text.strip()}")


def _top(line: SourceLine, text: str, bared: str, heading: bool, later: tuple[SourceLine, ...], state: _State) -> None:
    title = _TITLE_WORD.match(bared)
    if not state.titled and (title or (_could_be_title(bared) and not _begins_list(bared, later, state))):
        state.titled = True
        _title(line, title["rest"] if title else bared, bool(title) or heading, state)
        return
    if _begins_list(bared, later, state):
        state.section = "ingredients"
        _ingredients(line, text, bared, heading, later, state)
    elif _heads_list(bared, later, state):
        state.section = "ingredients"
        _put(state, line, "part", _part_name(bared))
    elif state.ingredients and _is_step(text, bared):
        state.section = "method"
        _method(line, text, bared, heading, later, state)
    elif _PAID_WORDS.search(bared) or bared.startswith(("Corrected ", "Correction")):
        _put(state, line, "note", bared)
    elif not state.led and len(bared) <= 220 and not heading:
        state.led = True
        _put(state, line, "lead", bared)
    else:
        _put(state, line, "intro", bared)


def _title(line: SourceLine, words: str, sure: bool, state: _State) -> None:
    """The first piece of `Honey loaf | soft | no mixer`, out of capitals; the others are kept as a note."""
    first, *others = re.split(r"\s[|•·]\s", words)
    first = first.strip(" !")
    _put(state, line, "title", first.capitalize() if first.isupper() else first, sure=sure)
    if others:
        _put(state, line, "note", " | ".join(others))


def _could_be_title(bared: str) -> bool:
    bared = re.split(r"\s[|•·]\s", bared)[0]
    return len(bared.split()) <= 14 and not bared.endswith((".", ":", ";")) and len(bared) <= 120


def _title_with_address(bared: str) -> str:
    """`Honey oat braid: https://…` names the bake before its address."""
    found = URL.search(bared)
    words = bared[: found.start()].strip(" -–—:|") if found else ""
    return words if words and _could_be_title(words) and not _POINTS.search(words) else ""


def _in_one_line(bared: str, state: _State) -> list[tuple[str, str]]:
    """`For the base: 150 g flour, 100 g butter. For the top: 3 eggs, 200 g sugar.`, `You need 500 g flour, …`."""
    out: list[tuple[str, str]] = []
    for segment in re.split(r"(?<=[.;])\s+(?=[A-Z][^:.]{2,40}:)", bared):
        head = re.match(r"(?:(?P<name>[^:,\d]{2,40}):|(?:you(?:'ll| will)? need|take|use))\s+(?P<rest>.+)$", segment, re.I)
        pieces = _pieces(head["rest"].rstrip("."), state) if head else []
        if len(pieces) < 2:
            return []
        if head and head["name"]:
            out.append(("part", _part_name(head["name"])))
        out += [("ingredient", piece) for piece in pieces]
    return out


def _pieces(text: str, state: _State) -> list[str]:
    """The ingredients of a list in one line; what is none goes on from the one before. Empty where it is no list."""
    out: list[str] = []
    for piece in re.split(r",\s+(?:and\s+)?|;\s*|\s+and\s+(?=[\d½¼¾⅓⅔])", text):
        like = is_ingredient_like(piece, state.shelf) or re.match(r"(?:juice|zest)\sof\s\d", piece, re.I)
        if like or known(piece.strip(), state.shelf):
            out.append(piece.strip())
        elif out:
            out[-1] = f"{out[-1]}, {piece}"
        else:
            return []
    return out


def _next_filled(later: tuple[SourceLine, ...], most: int = 1) -> list[str]:
    return [one_line(_TAB.sub(" | ", each.text)) for each in later[: 4 * most] if each.text.strip()][:most]


def _begins_list(bared: str, later: tuple[SourceLine, ...], state: _State) -> bool:
    """An ingredient with another one right after it, without any heading over them."""
    if not is_ingredient_like(bared, state.shelf):
        return False
    return any(is_ingredient_like(each, state.shelf) for each in _next_filled(later, 2))


def _heads_list(bared: str, later: tuple[SourceLine, ...], state: _State) -> bool:
    after = _next_filled(later, 2)
    return _looks_like_part(bared, state) and len(after) == 2 and all(is_ingredient_like(each, state.shelf) for each in after)


def _looks_like_part(bared: str, state: _State) -> bool:
    words = plain(bared)
    if not words or len(words) > 50 or is_ingredient_like(bared, state.shelf):
        return False
    if _FOR.match(bared) or bared.endswith(":"):
        return not _SENTENCE_END.search(bared.rstrip(":"))
    name = re.sub(r"\s*\([^)]*\)", "", words)
    return name.split()[-1] in PARTS and known(name, state.shelf) is None or name in PARTS


def _part_name(bared: str) -> str:
    found = _FOR.match(bared)
    return plain(found["name"] if found else bared)


def _ingredients(line: SourceLine, text: str, bared: str, heading: bool, later: tuple[SourceLine, ...], state: _State) -> None:
    if _WAY.match(bared) and not is_ingredient_like(bared, state.shelf):
        state.section = "method"
        _method(line, text, bared, heading, later, state)
        return
    if is_ingredient_like(text, state.shelf) or is_ingredient_like(bared, state.shelf):
        pieces = _LISTED.split(bared.rstrip(".")) if len(bared) > 60 else [bared]
        if len(pieces) >= 3 and all(is_ingredient_like(each, state.shelf) for each in pieces):
            for piece in pieces:
                _put(state, line, "ingredient", piece.strip(), sure=False)
            return
        if len(bared) > 110 and _is_step(text, bared) and bared.count(". "):
            state.section = "method"
            _method(line, text, bared, heading, later, state)
            return
        _put(state, line, "ingredient", text)
        return
    if _continues(line, text, state):
        _put(state, line, "ingredient", f"\x00{bared}", sure=False)
        return
    if heading or _looks_like_part(bared, state) or _caps_part(bared, later, state):
        if heading and not _ingredients_follow(later, state) and not _looks_like_part(bared, state):
            state.section = "method" if state.ingredients else "notes"
            _method(line, text, bared, heading, later, state) if state.ingredients else _put(state, line, "note", text)
            return
        _put(state, line, "part", _part_name(bared))
        return
    if state.ingredients and _is_step(text, bared):
        state.section = "method"
        _method(line, text, bared, heading, later, state)
        return
    if len(bared.split()) > 14 or (_SENTENCE_END.search(bared) and len(bared.split()) > 6):
        _put(state, line, "intro" if not state.ingredients else "note", text)
        return
    _put(state, line, "ingredient", text, sure=known(bared.partition(",")[0], state.shelf) is not None)


def _ingredients_follow(later: tuple[SourceLine, ...], state: _State) -> bool:
    return any(is_ingredient_like(each, state.shelf) for each in _next_filled(later, 2))


def _caps_part(bared: str, later: tuple[SourceLine, ...], state: _State) -> bool:
    """`FILLING` or `Orange swirl` alone on a line with ingredients after it."""
    if known(bared, state.shelf) or len(bared.split()) > 4 or any(each.isdigit() for each in bared):
        return False
    if "," in bared or not _ingredients_follow(later, state):
        return False
    return bared.isupper() or (state.blank and bared[:1].isupper()) or plain(bared).split()[-1] in PARTS


def _continues(line: SourceLine, text: str, state: _State) -> bool:
    """A line that goes on from the one above: it begins small, deeper than a list mark, and the last was cut."""
    last = state.out[-1] if state.out else None
    if last is None or last.role != "ingredient" or state.blank:
        return False
    indented = len(line.text) - len(line.text.lstrip()) > len(last.line.text) - len(last.line.text.lstrip())
    open_end = last.line.text.rstrip().endswith((",", "(", "and", "or", "plus")) or last.line.text.count("(") > last.line.text.count(")")
    return text[:1].islower() and (indented or open_end) and known(text.partition(",")[0], state.shelf) is None


def _is_step(text: str, bared: str) -> bool:
    words = bared.split()
    if not words:
        return False
    numbered = bool(_NUMBERED.match(text)) and len(words) > 2
    first = re.sub(r"\W", "", _NUMBERED.sub("", bared).split(" ")[0]).casefold()
    return (numbered or len(words) >= 4) and (first in VERBS or (numbered and len(words) > 3))


def _method(line: SourceLine, text: str, bared: str, heading: bool, later: tuple[SourceLine, ...], state: _State) -> None:
    if _COMMON.match(bared):
        state.ways = 0
        _put(state, line, "way", "")
        return
    if way := _WAY.match(bared):
        state.ways = max(state.ways - 1, 0)
        _put(state, line, "way", _way_name(way["way"]))
        return
    title = _NUMBERED.sub("", bared).rstrip(":")
    short = len(title.split()) <= 6 and not _SENTENCE_END.search(bared)
    if heading or (short and (bared.endswith(":") or title.isupper() or _FOR.match(bared))) and any(map(str.isalpha, title)):
        if _NUMBERED.match(text) and not heading:
            _put(state, line, "step", title)
        elif state.ways:
            state.ways -= 1
            _put(state, line, "way", _way_name(title))
        else:
            _put(state, line, "section", title.capitalize() if title.isupper() else title)
        return
    if state.steps and state.blank and _ends_method(text, bared, state):
        state.section = "notes"
        _put(state, line, "note", text)
        return
    if _goes_on(text, state):
        _put(state, line, "step", f"\x00{bared}")
        return
    _put(state, line, "step", _NUMBERED.sub("", bared), sure=True)
    state.bare_number = False


def _way_name(words: str) -> str:
    plain_words = re.sub(r"^(?:in\s)?(?:a|the|your)\s", "", words.casefold())
    return "dough cycle" if plain_words in ("bread machine", "bread maker", "dough cycle") else plain_words


def _goes_on(text: str, state: _State) -> bool:
    """A step wrapped over several lines: no blank between, no number or mark of its own."""
    last = state.out[-1] if state.out else None
    if last is None or last.role not in ("step", "caution") or state.blank or state.bare_number:
        return False
    if _NUMBERED.match(text) or bare(text) != text.strip():
        return False
    cut = len(last.line.text.rstrip()) >= 45 and not _SENTENCE_END.search(last.line.text.rstrip())
    return text[:1].islower() or cut


def _ends_method(text: str, bared: str, state: _State) -> bool:
    """Words of farewell after the last step, in a method whose steps are numbered."""
    numbered = [each for each in state.out if each.role == "step" and _NUMBERED.match(each.line.text)]
    first = re.sub(r"\W", "", bared.split(" ")[0]).casefold()
    return bool(numbered) and not _NUMBERED.match(text) and first not in VERBS


def _links(line: SourceLine, text: str, bared: str, heading: bool, later: tuple[SourceLine, ...], state: _State) -> None:
    _put(state, line, "note", text)


def _keeps(line: SourceLine, text: str, bared: str, heading: bool, later: tuple[SourceLine, ...], state: _State) -> None:
    _put(state, line, "keeps", bared) if len(bared) < 200 else _put(state, line, "note", text)


def _credits(line: SourceLine, text: str, bared: str, heading: bool, later: tuple[SourceLine, ...], state: _State) -> None:
    _put(state, line, "note", text)


def _elsewhere(line: SourceLine, text: str, bared: str, heading: bool, later: tuple[SourceLine, ...], state: _State) -> None:
    if not state.ingredients and _begins_list(bared, later, state):
        state.section = "ingredients"
        _ingredients(line, text, bared, heading, later, state)
        return
    _put(state, line, "note", text)


_BY_SECTION = {"top": _top, "ingredients": _ingredients, "method": _method, "links": _links, "paid": _links, "keeps": _keeps}


def has_address(text: str) -> bool:
    return URL.search(text) is not None
