"""Writes the recipe file: front matter, method, notes, each doubt as a comment over its line."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from urllib.parse import urlsplit

from generator.catalogue.names import fold
from generator.importer.markdown_text import comment, escaped, scalar
from generator.importer.method.refer import Referred
from generator.importer.method.steps import Section, Way
from generator.importer.model import Doubt, Placed, ReadLine, ResultLine
from generator.importer.places.words import NOT_DOUGH


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """All that goes into one file, in places."""

    title: str
    source_name: str
    placed: tuple[Placed, ...]
    lines: tuple[ReadLine, ...]
    ways: tuple[Way, ...]
    referred: Referred
    doubts: tuple[Doubt, ...]
    kinds: tuple[str, ...] = ()
    tin: str = ""
    out: list[ResultLine] = field(default_factory=list)
    aside: tuple[str, ...] = ()

    def write(self, text: str, *sources: int) -> None:
        self.out.append(ResultLine(text=text, sources=sources))

    def of(self, role: str) -> list[Placed]:
        return [each for each in self.placed if each.role == role]


def compose(draft: Draft) -> tuple[ResultLine, ...]:
    draft.write("---")
    draft.write(
        f"# Brought in from {comment(draft.source_name)}. Every “# ?” is a question: answer it, then delete it."
    )
    _opening(draft)
    _formula(draft)
    _films(draft)
    _links(draft)
    _credits(draft)
    for words in draft.aside:
        draft.write(f"# {comment(words)}")
    draft.write("---")
    _intro(draft)
    _method(draft)
    _notes(draft)
    return tuple(_one_blank(draft.out))


def _one_blank(lines: list[ResultLine]) -> Iterator[ResultLine]:
    """Without a second blank line in a row, and none at the end."""
    while lines and not lines[-1].text:
        lines.pop()
    last = ""
    for line in lines:
        if line.text or last:
            yield line
        last = line.text


def _opening(draft: Draft) -> None:
    title = draft.of("title")
    _ask(draft, [each for each in draft.doubts if each.code in ("I010", "I013", "I014")], "")
    draft.write(f"title: {scalar(draft.title)}", *(each.line.number for each in title[:1]))
    for key in ("lead", "makes", "portions", "keeps"):
        found = draft.of(key)
        if found:
            joined = " ".join(each.value for each in found) if key == "keeps" else found[0].value
            draft.write(
                f"{key}: {scalar(joined)}",
                *(each.line.number for each in found[: len(found) if key == "keeps" else 1]),
            )
    if draft.kinds:
        draft.write(f"kinds: [{', '.join(draft.kinds)}]")
    if draft.tin:
        draft.write(f"tin: {scalar(draft.tin)}", *(each.line.number for each in draft.of("tin")[:1]))


def _ask(draft: Draft, doubts: Iterable[Doubt], indent: str) -> None:
    for each in doubts:
        draft.write(f"{indent}# ? {_told(each)}", each.line)


def _told(doubt: Doubt) -> str:
    end = "" if doubt.message.endswith(("?", ".", "!")) else "."
    return f"{comment(doubt.message)}{end} {comment(doubt.hint)}"


def _formula(draft: Draft) -> None:
    parts: dict[str, list[ReadLine]] = {}
    for line in draft.lines:
        parts.setdefault(line.part, []).append(line)
    draft.write("formula:")
    if list(parts) == [""]:
        _lines(draft, parts[""], "  ")
        return
    headings = {each.value: each.line.number for each in draft.of("part")}
    for name, lines in parts.items():
        heading = next((number for value, number in headings.items() if fold(name) in fold(value)), None)
        sources = (heading,) if heading is not None else ()
        _part(draft, name, lines, sources)


def _part(draft: Draft, name: str, lines: list[ReadLine], sources: tuple[int, ...]) -> None:
    if not any(line.known for line in lines):
        draft.write(f"  # {comment(name)}: nothing in it is known yet", *sources)
        _lines(draft, lines, "  ")
    elif is_dough(name):
        draft.write(f"  {scalar(name)}:", *sources)
        _lines(draft, lines, "    ")
    else:
        draft.write(f"  {scalar(name)}:", *sources)
        draft.write(
            "    # ? Taken to be no dough, so outside the percentages. Delete the next line if it is."
        )
        draft.write("    counts: no")
        draft.write("    lines:")
        _lines(draft, lines, "      ")


def is_dough(name: str) -> bool:
    return not any(word in NOT_DOUGH for word in name.replace("-", " ").split())


def _lines(draft: Draft, lines: list[ReadLine], indent: str) -> None:
    asked: set[Doubt] = set()
    for line in lines:
        doubts = [
            each
            for each in draft.doubts
            if each.line == line.line and (each.code < "I010" or each.code == "I012") and each not in asked
        ]
        asked.update(doubts)
        _ask(draft, doubts, indent)
        for text in _line(line):
            draft.write(f"{indent}{text}", line.line)


def _line(line: ReadLine) -> Iterator[str]:
    keys = list(_keys(line))
    mark = "" if line.known else "# ? "
    if not keys:
        yield f"{mark}- {scalar(line.text)}"
        return
    yield f"{mark}- line: {scalar(line.text)}"
    for key, value in keys:
        yield f"{mark}  {key}: {value}"


def _keys(line: ReadLine) -> Iterator[tuple[str, str]]:
    if line.recipe:
        yield "recipe", line.recipe
    if line.optional:
        yield "optional", "true"
    if line.alternatives:
        yield "or", f"[{', '.join(_flow(each) for each in line.alternatives)}]"
    if line.note:
        yield "note", scalar(line.note)
    if not line.agree:
        yield "agree", "no"


def _flow(text: str) -> str:
    plain = scalar(text)
    return (
        plain
        if not set(plain) & set(",[]{}:#") or plain.startswith('"')
        else f'"{plain}"'.replace("\\", "\\\\")
    )


def _films(draft: Draft) -> None:
    films, marks = draft.of("video"), draft.of("chapter")
    if not films:
        return
    draft.write("videos:")
    for number, film in enumerate(films):
        draft.write(f"  - url: {scalar(film.value.partition(chr(9))[0])}", film.line.number)
        stamps: set[str] = set()
        if number == 0 and marks:
            draft.write("    chapters:")
            for mark in marks:
                stamp, _, title = mark.value.partition("\t")
                if stamp not in stamps:
                    draft.write(f"      {stamp}: {scalar(title)}", mark.line.number)
                stamps.add(stamp)


def _links(draft: Draft) -> None:
    links = draft.of("link")
    if not links:
        return
    draft.write("links:")
    for link in links:
        title, url, *more = link.value.split("\t")
        shown = title or urlsplit(url).hostname or url
        paid = ", paid: true" if "paid" in more else ""
        draft.write(f"  - {{title: {_quoted(shown)}, url: {_quoted(url)}{paid}}}", link.line.number)


def _quoted(text: str) -> str:
    plain = " ".join(text.split()).replace("\\", "\\\\").replace('"', '\\"')
    return f'"{plain}"'


def _credits(draft: Draft) -> None:
    credited = draft.of("credit")
    if not credited:
        return
    draft.write("credits:")
    for each in credited:
        what, who, url = each.value.split("\t")
        address = f", url: {_quoted(url)}" if url else ""
        draft.write(f"  - {{what: {_quoted(what)}, who: {_quoted(who)}{address}}}", each.line.number)


def _intro(draft: Draft) -> None:
    for each in draft.of("intro"):
        draft.write(escaped(each.value, opening=True), each.line.number)
        draft.write("")


def _method(draft: Draft) -> None:
    """Cautions about lines that are set aside stand first: who bakes from the page must meet them."""
    aside = [line for line in draft.lines if not line.known]
    ways = draft.ways
    if not ways and aside:
        ways = (Way(name="", sections=()),)
    for index, way in enumerate(ways):
        draft.write(f"## Method: {way.name}" if way.name else "## Method", *way.sources)
        if index == len(ways) - 1:
            _not_yet(draft, aside)
        number = 0
        for section in way.sections:
            number = _section(draft, section, index, number)
        left = _left(draft, index) if draft.ways else _everything(draft)
        if left:
            draft.write("<!-- ? The steps do not name these. Put each into its step. -->")
            draft.write(f"Also needed, and not named in the steps: {_listed(left)}.")
            draft.write("")


def _not_yet(draft: Draft, aside: list[ReadLine]) -> None:
    if aside:
        named = "; ".join(escaped(line.text, opening=False) for line in aside)
        draft.write("<!-- ? Add these to pantry.yaml and to the formula, then delete this caution. -->")
        draft.write(
            f"Caution: Not yet in the amounts or on the label: {named}.", *(line.line for line in aside)
        )
        draft.write("")


def _everything(draft: Draft) -> list[str]:
    return [
        f"{{{line.part + '/' if line.part else ''}{line.written.item}}}" for line in draft.lines if line.known
    ]


def _left(draft: Draft, index: int) -> list[str]:
    left = draft.referred.left.get(index, ())
    crowded = {each[1:] for each in left if each.startswith("\x00")}
    kept = [each for each in left if not each.startswith("\x00")]
    return [*kept, *(f"{{{part}}}" for part in sorted(crowded))]


def _section(draft: Draft, section: Section, way: int, start: int) -> int:
    if section.title:
        draft.write(f"### {escaped(section.title, opening=False)}", *section.sources)
    step, number = 0, start
    for block in section.blocks:
        for doubt in draft.referred.doubts.get((way, number), ()):
            draft.write(f"<!-- ? {_told(doubt)} -->", doubt.line)
        text = draft.referred.texts[way, number]
        if block.kind == "caution":
            draft.write("")
            draft.write(f"Caution: {text}", *block.sources)
            draft.write("")
        else:
            step += 1
            draft.write(f"{step}. {text}", *block.sources)
        number += 1
    draft.write("")
    return number


def _listed(words: list[str]) -> str:
    return " and ".join(each for each in (", ".join(words[:-1]), words[-1]) if each)


def _notes(draft: Draft) -> None:
    notes = [each for each in draft.placed if each.role in ("note", "tags") or _has_other_kinds(each, draft)]
    films = draft.of("video")
    chapters = [] if films else draft.of("chapter")
    extra = [each for key in ("makes", "portions", "tin") for each in draft.of(key)[1:]]
    if not notes and not chapters and not extra:
        return
    draft.write("## Notes")
    for each in sorted((*notes, *chapters, *extra), key=lambda item: item.line.number):
        text = (
            each.line.text
            if each.role in ("chapter", "makes", "portions", "tin")
            else each.value or each.line.text
        )
        safe = escaped(" ".join(text.split()), opening=True)
        safe = f"{safe[:7]}\\:{safe[8:]}" if safe[:8].casefold() == "caution:" else safe
        draft.write(safe, each.line.number)
        draft.write("")


def _has_other_kinds(each: Placed, draft: Draft) -> bool:
    """Whether keywords of a page name more than kinds that are in use."""
    words = {word.strip().casefold() for word in each.value.split(",")}
    return each.role == "kinds" and not words <= set(draft.kinds)


def result_line_of(result: tuple[ResultLine, ...]) -> Mapping[int, tuple[int, ...]]:
    """For each line of the source, the lines of the file that come from it."""
    found: dict[int, list[int]] = {}
    for number, each in enumerate(result, start=1):
        for source in each.sources:
            found.setdefault(source, []).append(number)
    return {source: tuple(numbers) for source, numbers in found.items()}
