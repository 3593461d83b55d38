"""Reads a page that is plainly written, which is every page of ours, in a tenth of the time.

Plain is what no two readers of HTML read differently: each tag, attribute and remark is written as the grammar has
it, "<" stands for nothing else, and there is no element whose content has a grammar of its own beside scripts and
styles. Anything else is `NotPlain`, and is left to the standard library's parser.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from html import unescape

from generator.proof.page_text import (
    CHANGING,
    EMPTY,
    UNREAD,
    Changing,
    Timer,
    links_of,
    part_of,
    told_by,
)
from generator.proof.squeeze import readable

_VALUE = r"\"([^\"]*)\"|'([^']*)'|([^ \t\n\"'<>=`]+)"
_ATTRIBUTE = re.compile(rf"[ \t\n]+([A-Za-z][A-Za-z0-9:_-]*)(?:=(?:{_VALUE}))?")
_START = re.compile(rf"([a-z][a-z0-9]*)((?:{_ATTRIBUTE.pattern})*)[ \t\n]*(/?)")
_END = re.compile(r"/([a-z][a-z0-9]*)[ \t\n]*")
_REMARK = re.compile(r"!--[^->](?:-?[^->])*--|!doctype html", re.IGNORECASE)
# Their content is read in one way by some readers, and in another by others.
_OWN_GRAMMAR = frozenset({"iframe", "math", "noembed", "noframes", "plaintext", "textarea", "xmp"})


class NotPlain(Exception):
    """The page is to be read by someone else."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Tag:
    """A tag, with all that is read of it wherever it stands; `ends` and `alone` say what it is.

    `plain` is one of which nothing is read but its name.
    """

    name: str
    ends: bool = False
    alone: bool = False
    part: str = ""
    told: str = ""
    links: tuple[str, ...] = ()
    choice: str | None = None
    timer: tuple[str, str] | None = None
    changes: tuple[tuple[str, str], ...] = ()
    script: str = ""
    plain: bool = True


@dataclass(slots=True)
class _Open:
    """An element that changes, while it is read: how deep it stands, and its words so far."""

    depth: int
    tag: _Tag
    line: int
    words: list[str] = field(default_factory=list)


@dataclass(frozen=True, slots=True, kw_only=True)
class PlainPage:
    """What was read, in the order of the page."""

    said: list[str] = field(default_factory=list)
    told: list[str] = field(default_factory=list)
    scripts: dict[str, str] = field(default_factory=dict)
    links: list[tuple[str, int]] = field(default_factory=list)
    changing: list[Changing] = field(default_factory=list)
    timers: list[Timer] = field(default_factory=list)
    options: list[str] = field(default_factory=list)
    open: list[str] = field(default_factory=list)
    open_changing: list[_Open] = field(default_factory=list)

    @property
    def words(self) -> str:
        return "".join(self.said)

    @property
    def told_words(self) -> str:
        return "".join(self.told)


def read_plain(content: str, *, line: int) -> PlainPage:
    """NotPlain: the page is not plainly written."""
    page = PlainPage()
    first, *pieces = content.split("<")
    if first:
        _say(page, first)
        line += first.count("\n")
    at = 0
    while at < len(pieces):
        piece = pieces[at]
        at += 1
        source, closed, data = piece.partition(">")
        if not closed:
            raise NotPlain
        tag = _tag(source)
        if tag.ends:
            _end(page, tag)
        elif tag.name:
            _start(page, tag, line)
            if tag.name in UNREAD:
                data, at = _unread(data, pieces, at, f"/{tag.name}>")
                if tag.name == "script" and data:
                    page.scripts[tag.script] = page.scripts.get(tag.script, "") + data
                line += source.count("\n") + data.count("\n")
                continue
            if tag.name == "title" and not (at < len(pieces) and pieces[at].startswith("/title>")):
                raise NotPlain
        if data:
            _say(page, data)
        if "\n" in piece:
            line += piece.count("\n")
    while page.open:
        _close(page)
    return page


def _unread(data: str, pieces: Sequence[str], at: int, end: str) -> tuple[str, int]:
    """The content of a script or a style, and where it ends."""
    while at < len(pieces) and not pieces[at].startswith(end):
        # Such signs begin what some readers take for the end, or for no end.
        if pieces[at][:1] in ("/", "!", ""):
            raise NotPlain
        data += f"<{pieces[at]}"
        at += 1
    if at == len(pieces):
        raise NotPlain
    return data, at


def _say(page: PlainPage, data: str) -> None:
    if "&" in data:
        data = unescape(data)
    page.said.append(readable(data.replace("\n", " ")))
    for each in page.open_changing:
        each.words.append(data)


def _start(page: PlainPage, tag: _Tag, line: int) -> None:
    if not tag.plain:
        if tag.told:
            page.told.append(tag.told)
        for each in tag.links:
            page.links.append((each, line))
        if tag.choice is not None:
            page.options.append(tag.choice)
        if tag.timer is not None:
            page.timers.append(Timer(kind=tag.timer[0], seconds=tag.timer[1], line=line))
    if tag.part:
        page.said.append(tag.part)
    if tag.alone or tag.name in EMPTY:
        return
    page.open.append(tag.name)
    if tag.changes:
        page.open_changing.append(_Open(len(page.open), tag, line))


def _end(page: PlainPage, tag: _Tag) -> None:
    if page.open and page.open[-1] == tag.name:
        _close(page)
    elif tag.name in page.open:
        while page.open[-1] != tag.name:
            _close(page)
        _close(page)
    if tag.part:
        page.said.append(tag.part)


def _close(page: PlainPage) -> None:
    """The innermost element."""
    depth = len(page.open)
    page.open.pop()
    if page.open_changing and page.open_changing[-1].depth == depth:
        last = page.open_changing.pop()
        words = "".join(last.words)
        for name, value in last.tag.changes:
            page.changing.append(Changing(name=name, value=value, words=words, line=last.line))


@lru_cache(maxsize=1 << 12)
def _tag(source: str) -> _Tag:
    """What stands between the brackets; most tags of a site stand on many pages. NotPlain: it is no plain tag."""
    if found := _END.fullmatch(source):
        return _Tag(name=found[1], ends=True, part=part_of(found[1]))
    found = _START.fullmatch(source)
    if found is None:
        if _REMARK.fullmatch(source):
            return _Tag(name="")
        raise NotPlain
    name, alone = found[1], bool(found[found.re.groups])
    attributes = {}
    for each in _ATTRIBUTE.finditer(found[2]):
        value = next((value for value in each.groups()[1:] if value is not None), "")
        attributes[each[1].lower()] = unescape(value) if "&" in value else value
    changes = tuple((each, attributes[each]) for each in CHANGING if each in attributes)
    if name in _OWN_GRAMMAR or ((alone or name in EMPTY) and changes):
        raise NotPlain
    if name in UNREAD and (alone or changes):
        raise NotPlain
    seconds, told, links = attributes.get("data-seconds"), told_by(attributes), tuple(links_of(attributes))
    # The end of what stands alone parts words as well.
    return _Tag(
        name=name,
        alone=alone,
        part=part_of(name) * (2 if alone else 1),
        told=readable("".join(f"{each}\n" for each in told)),
        links=links,
        choice=attributes.get("value", "") if name == "option" else None,
        timer=(attributes.get("data-kind", ""), seconds) if seconds is not None else None,
        changes=changes,
        script=attributes.get("id") or attributes.get("type", ""),
        plain=not (told or links or seconds is not None or name == "option"),
    )
