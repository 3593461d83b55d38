"""Sorts the lines of a text into places: title, ingredients with their parts, steps, facts, and the rest."""

import re
from collections.abc import Iterable

from generator.formula.shelf import Shelf
from generator.importer.line.ingredient import is_ingredient_like
from generator.importer.line.known import known, names_food
from generator.importer.line.tidy import bare, one_line
from generator.importer.model import Placed, SourceLine
from generator.importer.places.around import running_heads
from generator.importer.places.facts import fact_of
from generator.importer.places.headings import opened
from generator.importer.places.line_looks import (
    AMOUNTS,
    CAUTION,
    CHOOSE,
    COLUMNS,
    COMMON,
    COUNTED,
    FAREWELL,
    FOR,
    LISTED,
    MADE,
    MARK,
    META,
    NUMBERED,
    PAID_WORDS,
    RULE,
    SENTENCE_END,
    STEP_ALONE,
    TAB,
    TITLE_WORD,
    WAY,
    begins_list,
    could_be_title,
    heads_list,
    in_one_line,
    ingredients_follow,
    is_step,
    looks_like_part,
    part_name,
    parted_steps,
    pieces_of,
    several_facts,
    side_by_side,
    step_in_chapter,
    steps_follow,
    tells_of_work,
    title_with_address,
    way_name,
)
from generator.importer.places.placing import (
    State,
    column_units,
    continues,
    ends_method,
    goes_on_from,
    hinted,
    put,
    put_title,
    with_units,
)
from generator.importer.places.words import PARTS, SECTIONS, plain


def place_lines(lines: Iterable[SourceLine], shelf: Shelf) -> tuple[Placed, ...]:
    """Every line of the source with its place. A wrapped line gets the role of the line it goes on from."""
    source = tuple(lines)
    state = State(shelf)
    numbered = sum(bool(NUMBERED.match(each.text)) for each in source)
    heads = running_heads(source)
    for index, line in enumerate(source):
        if line.number in heads:
            put(state, line, "left out", f"a running head: {one_line(line.text)}")
            continue
        _place(line, source[index + 1 :], state, numbered=numbered)
    return tuple(state.out)


def _place(line: SourceLine, later: tuple[SourceLine, ...], state: State, *, numbered: int) -> None:
    text = with_units(one_line(TAB.sub(" | ", line.text)), state.columns)
    if units := column_units(text):
        state.columns = units
        put(state, line, "heading", text)
        return
    if line.hint == "joined":
        put(state, line, "heading")
        return
    if not text:
        put(state, line, "blank")
        state.blank = True
        return
    if line.hint and line.hint not in ("heading", "item", "cell"):
        hinted(line, text, state)
    elif RULE.match(text) and not any(each.isalnum() for each in text):
        put(state, line, "rule")
    elif STEP_ALONE.match(text) and state.section in ("method", "ingredients") and later:
        put(state, line, "rule")
        state.section, state.bare_number = "method", True
    elif "|" in text and later and COLUMNS.match(later[0].text):
        put(state, line, "heading", text)
    else:
        _read(line, text, later, state)
    state.blank = state.out[-1].role == "rule"


def _read(line: SourceLine, text: str, later: tuple[SourceLine, ...], state: State) -> None:
    bared = one_line(MARK.sub("", bare(text))).strip()
    marked = text.startswith("#") and text[:7].lstrip("#").startswith(" ")
    marked = marked and not (state.section == "method" and SENTENCE_END.search(text))
    heading = line.hint == "heading" or marked
    if _as_section(line, text, bared, heading, state):
        return
    if META.match(bared) and state.section != "method":
        put(state, line, "note", text)
        return
    if not state.titled and (named := title_with_address(bared)):
        state.titled = True
        put(state, line, "title", named)
    if state.section in ("top", "ingredients") and (listed := in_one_line(bared, state.shelf)):
        state.section = "ingredients"
        for role, value in listed:
            put(state, line, role, value, sure=False)
        return
    if state.section == "top" and not state.titled and TITLE_WORD.match(bared):
        _top(line, text, bared, heading, later, state)
        return
    if state.section == "method" and (stepped := step_in_chapter(bared)):
        put(state, line, "chapter", stepped[0])
        put(state, line, "step", stepped[1])
        return
    if several := several_facts(bared):
        for each in several:
            put(state, line, each.role, each.value)
        return
    after = state.section == "method" and state.blank and state.steps
    fact = fact_of(
        bared, within="" if state.section == "top" or (after and MADE.match(bared)) else state.section
    )
    if fact is not None and not (state.section == "ingredients" and fact.role in ("keeps", "credit")):
        role = fact.role
        value = f"{fact.value}\tpaid" if role == "link" and state.section == "paid" else fact.value
        put(state, line, role, value)
        return
    if caution := CAUTION.match(bared):
        put(state, line, "caution", caution["rest"])
        return
    _BY_SECTION.get(state.section, _elsewhere)(line, text, bared, heading, later, state)


def _as_section(line: SourceLine, text: str, bared: str, heading: bool, state: State) -> bool:
    """A heading such as Ingredients, with or without words behind it."""
    words = plain(bared)
    found = opened(bared, heading=heading)
    if found is None or (
        found.name == "method" and state.section == "top" and words == "preparation" and not heading
    ):
        return False
    if (words == "recipe" and not state.titled) or (found.name in ("credits", "keeps") and found.rest):
        return False
    if found.name == "ingredients" and state.ingredients and found.rest and not AMOUNTS.search(found.rest):
        # What a label says: a list of names, and no second list to weigh by.
        put(state, line, "note", text)
        state.section = "notes"
        return True
    state.section = found.name
    if found.rest:
        if found.beside:
            _fact_beside(line, found.beside, found.beside, state)
        _rest_of_heading(line, found.rest, state)
        return True
    put(state, line, "heading", bared)
    if found.part:
        put(state, line, "part", found.part)
    else:
        _beside_heading(line, bared, state)
    return True


def _beside_heading(line: SourceLine, bared: str, state: State) -> None:
    """`Ingredients (makes 12)` says more than the name of its section."""
    more = re.search(r"[(\[]([^()\[\]]+)[)\]]|\s((?:for|für|pour|para|per|voor)\s.+)$", bared)
    words = (more[1] or more[2]).strip(" :") if more and plain(bared) not in SECTIONS else ""
    if not words:
        return
    part = FOR.match(words)
    if part and state.section == "ingredients" and plain(part["name"]).split()[-1] in PARTS:
        put(state, line, "part", plain(part["name"]))
        return
    _fact_beside(line, words, bared, state)


def _fact_beside(line: SourceLine, words: str, otherwise: str, state: State) -> None:
    fact = fact_of(words, within="")
    put(state, line, fact.role if fact else "note", fact.value if fact else otherwise)


def _rest_of_heading(line: SourceLine, rest: str, state: State) -> None:
    if state.section == "ingredients":
        pieces = (pieces_of(rest.rstrip("."), state.shelf) if AMOUNTS.search(rest) else []) or [rest]
        for piece in pieces:
            put(state, line, "ingredient", piece.strip().rstrip("."), sure=len(pieces) == 1)
    elif state.section == "method":
        chosen = CHOOSE.match(rest)
        state.ways = int(chosen["many"]) if chosen else 0
        for piece in (rest,) if chosen else parted_steps(rest):
            put(state, line, "heading" if chosen else "step", piece)
    else:
        put(state, line, "note", f"{line.text.strip()}")


def _top(
    line: SourceLine, text: str, bared: str, heading: bool, later: tuple[SourceLine, ...], state: State
) -> None:
    title = TITLE_WORD.match(bared)
    if not state.titled and (title or (could_be_title(bared) and not begins_list(bared, later, state.shelf))):
        state.titled = True
        put_title(line, title["rest"] if title else bared, bool(title) or heading, state)
        return
    if begins_list(bared, later, state.shelf):
        state.section = "ingredients"
        _ingredients(line, text, bared, heading, later, state)
    elif heads_list(bared, later, state.shelf):
        state.section = "ingredients"
        put(state, line, "part", part_name(bared))
    elif state.ingredients and is_step(text, bared):
        state.section = "method"
        _method(line, text, bared, heading, later, state)
    elif PAID_WORDS.search(bared) or bared.startswith(("Corrected ", "Correction")):
        put(state, line, "note", bared)
    elif not state.led and len(bared) <= 220 and not heading:
        state.led = True
        put(state, line, "lead", bared)
    else:
        put(state, line, "intro", bared)


def _ingredients(
    line: SourceLine, text: str, bared: str, heading: bool, later: tuple[SourceLine, ...], state: State
) -> None:
    if WAY.match(bared) and not is_ingredient_like(bared, state.shelf):
        state.section = "method"
        _method(line, text, bared, heading, later, state)
        return
    if beside := side_by_side(line.text, state.shelf):
        for piece in beside:
            put(state, line, "ingredient", piece)
        return
    if is_ingredient_like(text, state.shelf) or is_ingredient_like(bared, state.shelf):
        pieces = LISTED.split(bared.rstrip(".")) if len(bared) > 60 else [bared]
        if len(pieces) >= 3 and all(is_ingredient_like(each, state.shelf) for each in pieces):
            for piece in pieces:
                put(state, line, "ingredient", piece.strip(), sure=False)
            return
        if len(bared) > 110 and is_step(text, bared) and bared.count(". "):
            state.section = "method"
            _method(line, text, bared, heading, later, state)
            return
        put(state, line, "ingredient", text)
        return
    if continues(line, text, state):
        put(state, line, "ingredient", f"\x00{bared}", sure=False)
        return
    if heading or looks_like_part(bared, state.shelf) or _caps_part(bared, later, state):
        if heading and not ingredients_follow(later, state.shelf) and not looks_like_part(bared, state.shelf):
            state.section = "method" if state.ingredients else "notes"
            _method(line, text, bared, heading, later, state) if state.ingredients else put(
                state, line, "note", text
            )
            return
        put(state, line, "part", part_name(bared))
        return
    if state.ingredients and is_step(text, bared):
        state.section = "method"
        _method(line, text, bared, heading, later, state)
        return
    if len(bared.split()) > 14 or (SENTENCE_END.search(bared) and len(bared.split()) > 6):
        if state.ingredients and steps_follow(later, state.shelf) and tells_of_work(bared, state.shelf):
            state.section = "method"
            _method(line, text, bared, heading, later, state)
            return
        put(state, line, "intro" if not state.ingredients else "note", text)
        return
    there = known(bared.partition(",")[0], state.shelf) is not None
    if (
        not there
        and not names_food(bared, state.shelf)
        and state.ingredients
        and steps_follow(later, state.shelf)
    ):
        state.section = "method"
        put(state, line, "section", bared.rstrip(":"))
        return
    put(state, line, "ingredient", text, sure=there)


def _caps_part(bared: str, later: tuple[SourceLine, ...], state: State) -> bool:
    """`FILLING` or `Orange swirl` alone on a line with ingredients after it."""
    if known(bared, state.shelf) or len(bared.split()) > 4 or any(each.isdigit() for each in bared):
        return False
    if "," in bared or not ingredients_follow(later, state.shelf):
        return False
    return bared.isupper() or (state.blank and bared[:1].isupper()) or plain(bared).split()[-1] in PARTS


def _method(
    line: SourceLine, text: str, bared: str, heading: bool, later: tuple[SourceLine, ...], state: State
) -> None:
    if COMMON.match(bared):
        state.ways = 0
        put(state, line, "way", "")
        return
    if way := WAY.match(bared):
        state.ways = max(state.ways - 1, 0)
        put(state, line, "way", way_name(way["way"]))
        return
    title = NUMBERED.sub("", bared).rstrip(":")
    short = len(title.split()) <= 6 and not SENTENCE_END.search(bared)
    if heading or (
        (short and (bared.endswith(":") or title.isupper() or FOR.match(bared)))
        and any(map(str.isalpha, title))
    ):
        if NUMBERED.match(text) and not heading:
            put(state, line, "step", title)
        elif state.ways:
            state.ways -= 1
            put(state, line, "way", way_name(title))
        else:
            put(state, line, "section", title.capitalize() if title.isupper() else title)
        return
    if state.steps and looks_like_part(bared, state.shelf) and ingredients_follow(later, state.shelf):
        state.section = "ingredients"
        put(state, line, "part", part_name(bared))
        return
    if state.steps and FAREWELL.match(bared):
        state.section = "notes"
        put(state, line, "note", text)
        return
    if state.steps and state.blank and ends_method(text, bared, state):
        state.section = "notes"
        put(state, line, "note", text)
        return
    if goes_on_from(text, state):
        put(state, line, "step", f"\x00{bared}")
        return
    counted = COUNTED.match(bared)
    shown = bared[counted.end() :] if counted and int(counted["number"]) == state.numbers + 1 else bared
    state.numbers += shown != bared
    put(state, line, "step", NUMBERED.sub("", shown), sure=True)
    state.bare_number = False


def _links(
    line: SourceLine, text: str, bared: str, heading: bool, later: tuple[SourceLine, ...], state: State
) -> None:
    put(state, line, "note", text)


def _keeps(
    line: SourceLine, text: str, bared: str, heading: bool, later: tuple[SourceLine, ...], state: State
) -> None:
    put(state, line, "keeps", bared) if len(bared) < 200 else put(state, line, "note", text)


def _elsewhere(
    line: SourceLine, text: str, bared: str, heading: bool, later: tuple[SourceLine, ...], state: State
) -> None:
    counted = COUNTED.match(bare(text)) or COUNTED.match(re.sub(r"^(\d{1,2})[.):]", r"\1", text))
    if state.steps and counted and int(counted["number"]) == state.steps + 1 and is_step(text, bared):
        # The method goes on after something that stood between its steps.
        state.section = "method"
        _method(line, text, bared, heading, later, state)
        return
    if not state.ingredients and begins_list(bared, later, state.shelf):
        state.section = "ingredients"
        _ingredients(line, text, bared, heading, later, state)
        return
    put(state, line, "note", text)


_BY_SECTION = {
    "top": _top,
    "ingredients": _ingredients,
    "method": _method,
    "links": _links,
    "paid": _links,
    "keeps": _keeps,
}
