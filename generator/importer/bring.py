"""One recipe out of the lines of a source: placed, read, referred to, written, and read back."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from generator.catalogue.names import fold
from generator.diagnostics.diagnostic import Diagnostics, has_errors
from generator.importer.compare import resembles
from generator.importer.compose import Draft, compose, is_dough
from generator.importer.files.letters import Cleaned, clean_lines
from generator.importer.incoming_text import Source, slug
from generator.importer.line.foods import usual_name
from generator.importer.line.ingredient import read_ingredient
from generator.importer.method.refer import refer
from generator.importer.method.steps import GOES_ON, Way, read_ways
from generator.importer.model import (
    Brought,
    Confidence,
    Doubt,
    Kitchen,
    PantryRow,
    Placed,
    ReadLine,
    ResultLine,
    SourceLine,
)
from generator.importer.places.facts import tin_in_step
from generator.importer.places.labels import counting
from generator.importer.places.layout import place_lines
from generator.importer.places.shapes import shaped
from generator.importer.places.titles import chosen
from generator.importer.unnamed import unnamed

_OPTIONAL = re.compile(r"\s*[(\[]?\boptional\b[)\]]?\s*", re.I)


def bring(source: Source, kitchen: Kitchen, *, named: str = "") -> Brought | None:
    """What a source holds, None where no ingredient line was found in it."""
    cleaned = clean_lines(source.lines, kitchen.unprintable)
    bare = shaped(cleaned.lines, kitchen.shelf)
    cleaned = replace(cleaned, said=(*cleaned.said, *bare.said), aside=(*cleaned.aside, *bare.aside))
    placed, untitled = chosen(place_lines(bare.lines, kitchen.shelf), source.stem)
    placed, lines, doubts = _read_lines(placed, kitchen)
    if not lines:
        return None
    lines = _with_notes(_named_parts(lines), bare.notes)
    doubts = (*bare.doubts, *doubts, *counting(lines), *unnamed(placed, lines, kitchen.shelf))
    ways = read_ways(placed)
    title, asked = _title(placed, source)
    asked = (*asked, *untitled)
    name = named or slug(title) or slug(source.stem) or "brought-in"
    draft = _Plan(
        source=source, kitchen=kitchen, placed=placed, lines=lines, ways=ways, title=title, cleaned=cleaned
    )
    result, steps, found = draft.written((*asked, *doubts))
    wrong = kitchen.proof(name, _text(result))
    if has_errors(wrong):
        plain_result, plain_steps, plain_found = draft.written((*asked, *doubts), plainly=True)
        plain_wrong = kitchen.proof(name, _text(plain_result))
        if len(_errors(plain_wrong)) < len(_errors(wrong)):
            result, steps, found, wrong = plain_result, plain_steps, plain_found, plain_wrong
            found = (*found, _no_references(wrong))
    return Brought(
        name=name,
        title=title,
        source_name=source.name,
        source=_with_originals(placed, source.lines),
        result=result,
        lines=lines,
        steps=steps,
        doubts=tuple(
            sorted(dict.fromkeys((*asked, *doubts, *found)), key=lambda each: (each.line, each.code))
        ),
        rows=tuple(_rows(lines, kitchen)),
        left_out=(*source.said, *cleaned.said, *_left_out(placed)),
        like=resembles(lines, kitchen.book, kitchen.shelf),
        wrong=_errors(wrong),
    )


def _errors(found: Diagnostics) -> Diagnostics:
    return tuple(each for each in found if has_errors((each,)))


def _text(result: tuple[ResultLine, ...]) -> str:
    return "".join(f"{each.text}\n" for each in result)


def _no_references(wrong: Diagnostics) -> Doubt:
    message = "the steps did not add up with the list, so the amounts stand together at the end of the method"
    return Doubt(code="I021", message=message, hint="Put each “{name}” into its step.", line=1)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Plan:
    """What is known of a recipe before its steps are referred."""

    source: Source
    kitchen: Kitchen
    placed: tuple[Placed, ...]
    lines: tuple[ReadLine, ...]
    ways: tuple[Way, ...]
    title: str
    cleaned: Cleaned

    def written(
        self, doubts: tuple[Doubt, ...], *, plainly: bool = False
    ) -> tuple[tuple[ResultLine, ...], tuple[str, ...], tuple[Doubt, ...]]:
        """The lines of the file, its steps, and the doubts that the steps gave."""
        referred = refer(self.ways, self.lines, self.kitchen.shelf, plainly=plainly)
        draft = Draft(
            title=self.title,
            source_name=self.source.name,
            placed=self.placed,
            lines=self.lines,
            ways=self.ways,
            referred=referred,
            doubts=doubts,
            kinds=_kinds(self.placed, self.kitchen.kinds),
            tin=_tin(self.placed),
            aside=self.cleaned.aside,
        )
        found = tuple(each for some in referred.doubts.values() for each in some)
        return compose(draft), tuple(referred.texts.values()), found


def _read_lines(
    placed: tuple[Placed, ...], kitchen: Kitchen
) -> tuple[tuple[Placed, ...], tuple[ReadLine, ...], tuple[Doubt, ...]]:
    """The ingredient lines understood; what names no ingredient goes to the notes, with a doubt."""
    out: list[Placed] = []
    lines: list[ReadLine] = []
    doubts: list[Doubt] = []
    part, optional = "", False
    made = {
        fold(words): name for name, formula in kitchen.book.items() for words in (formula.about.title, name)
    }
    for each in _joined(placed):
        if each.role == "part":
            part, optional = _part(each.value)
        if each.role != "ingredient":
            out.append(each)
            continue
        found, asked = read_ingredient(
            each.value, shelf=kitchen.shelf, number=each.line.number, part=part, optional=optional, made=made
        )
        if not found:
            message = f"“{each.value.strip()}” names no ingredient"
            doubts.append(
                Doubt(code="I011", message=message, hint="It is kept in the notes.", line=each.line.number)
            )
            out.append(replace(each, role="note", value=each.value, confidence=Confidence.DOUBTFUL))
            continue
        lines.extend(found)
        doubts.extend(asked)
        out.append(replace(each, confidence=_least(found, each.confidence)))
    return _without_empty_parts(out, lines), tuple(lines), tuple(doubts)


def _without_empty_parts(placed: list[Placed], lines: list[ReadLine]) -> tuple[Placed, ...]:
    """A heading over no ingredient is kept as a note."""
    named = {fold(line.part) for line in lines}
    return tuple(
        replace(each, role="note", value=each.line.text)
        if each.role == "part" and fold(_part(each.value)[0]) not in named
        else each
        for each in placed
    )


def _least(found: tuple[ReadLine, ...], own: Confidence) -> Confidence:
    order = (Confidence.SURE, Confidence.LIKELY, Confidence.DOUBTFUL)
    return max((own, *(line.confidence for line in found)), key=order.index)


def _joined(placed: tuple[Placed, ...]) -> list[Placed]:
    """Ingredient lines that were wrapped, whole again; the second half stays as a line without words of its own."""
    out: list[Placed] = []
    for each in placed:
        if (
            each.role == "ingredient"
            and each.value.startswith(GOES_ON)
            and out
            and out[-1].role == "ingredient"
        ):
            out[-1] = replace(out[-1], value=f"{out[-1].value} {each.value[1:]}")
            out.insert(-1, replace(each, role="heading", value=""))
        else:
            out.append(
                replace(each, value=each.value.removeprefix(GOES_ON)) if each.role == "ingredient" else each
            )
    return out


def _part(words: str) -> tuple[str, bool]:
    optional = _OPTIONAL.search(words) is not None
    name = re.sub(r"\s*[(\[].*$", "", _OPTIONAL.sub(" ", words)).strip(" :")
    name = re.sub(r"[/:{}\[\],]+", " ", re.sub(r"^(?:for )?(?:the )?", "", name))
    name = re.sub(r"\s+ingredients$", "", " ".join(name.split()))
    return name.casefold(), optional


def _named_parts(lines: tuple[ReadLine, ...]) -> tuple[ReadLine, ...]:
    """Lines before the first heading get a part of their own where others have one; so do lines of one item twice."""
    parts = {line.part for line in lines}
    items = [fold(line.written.item) for line in lines if not line.part and line.known]
    if "" not in parts or (len(parts) == 1 and len(set(items)) == len(items)):
        return lines
    name = next(each for each in ("dough", "main", "first part") if each not in parts)
    return tuple(replace(line, part=line.part or name) for line in lines)


def _with_notes(lines: tuple[ReadLine, ...], notes: Mapping[int, str]) -> tuple[ReadLine, ...]:
    """What the text says of a line besides, as its note."""
    return tuple(
        replace(each, note="; ".join(one for one in (each.note, notes.get(each.line, "")) if one))
        for each in lines
    )


def _title(placed: tuple[Placed, ...], source: Source) -> tuple[str, tuple[Doubt, ...]]:
    found = [each for each in placed if each.role == "title"]
    if found:
        return " ".join(found[0].value.split())[:200], ()
    title = source.stem.replace("-", " ").replace("_", " ").strip().capitalize() or "Brought in"
    doubt = Doubt(code="I010", message="no title was found", hint="It is made of the file's name.", line=1)
    return title, (doubt,)


def _kinds(placed: tuple[Placed, ...], used: frozenset[str]) -> tuple[str, ...]:
    """Words of tags that are kinds already; a new kind is the maker's to name."""
    words = [
        word.strip("# ").casefold()
        for each in placed
        if each.role in ("tags", "kinds")
        for word in re.split(r"[\s,]+|(?=#)", each.value)
    ]
    return tuple(dict.fromkeys(word for word in words if word in used))


def _tin(placed: tuple[Placed, ...]) -> str:
    stated = next((each.value for each in placed if each.role == "tin"), "")
    told = (tin_in_step(each.value) for each in placed if each.role == "step")
    return stated or next((each for each in told if each), "")


def _rows(lines: Iterable[ReadLine], kitchen: Kitchen) -> Iterable[PantryRow]:
    seen: set[str] = set()
    for line in lines:
        name = fold(line.written.item).replace(",", "")
        if line.known or name in seen:
            continue
        seen.add(name)
        stands_for = usual_name(name, kitchen.shelf)
        yield PantryRow(name=name, stands_for=stands_for, near=kitchen.shelf.nearest(name), line=line.line)


def _left_out(placed: tuple[Placed, ...]) -> tuple[str, ...]:
    out = [each for each in placed if each.role == "left out"]
    rules = sum(each.role == "rule" for each in placed)
    told = (f"{rules} line{'s' if rules != 1 else ''} without words",) if rules else ()
    return (*told, *(f"line {each.line.number}: {each.value}" for each in out))


def _with_originals(placed: tuple[Placed, ...], original: tuple[SourceLine, ...]) -> tuple[Placed, ...]:
    by_number = {each.number: each for each in original}
    ordered = sorted(placed, key=lambda each: each.line.number)
    return tuple(replace(each, line=by_number.get(each.line.number, each.line)) for each in ordered)


def dough_parts(lines: Iterable[ReadLine]) -> frozenset[str]:
    return frozenset(line.part for line in lines if is_dough(line.part))
