"""Plain text and Markdown as lines of a source."""

import re

from generator.importer.model import SourceLine

_LINE_END = re.compile(r"\r\n|\r|\n|\u2028|\u2029|\x0b|\x0c")
_HEADING = re.compile(r"^\s{0,3}(#{1,6})\s+(?P<words>.*?)\s*#*\s*$")
_LINK = re.compile(r"!?\[(?P<words>[^\[\]]{0,300})\]\((?P<url>[^()\s]{1,2000})(?:\s+\"[^\"]*\")?\)")
_FENCE = re.compile(r"^\s*(```|~~~)")
_FRONT = re.compile(r"^---\s*$")
_KEY = re.compile(r"^(?P<key>title|description|author|tags|categories)\s*:\s*(?P<value>.*)$", re.I)
_BOLD = re.compile(r"(\*\*|__)(?=\S)(.+?)(?<=\S)\1")
_ITALIC = re.compile(r"(?<![\w*])([*_])(?=\S)([^*_]+?)(?<=\S)\1(?![\w*])")
_CODE = re.compile(r"`([^`]+)`")
# Marks of message boards around words; `[*]` before an item is a bullet.
_CODES = re.compile(
    r"\[/?(?:b|i|u|s|h\d|center|list|size|color|font|quote|ul|ol|li|url)(?:=[^\[\]]{0,200})?\]|\[\*\](?=\s*\S)",
    re.I,
)
_QUOTE = re.compile(r"^\s*>\s?")


def text_lines(text: str) -> tuple[SourceLine, ...]:
    return tuple(
        SourceLine(number=number, text=_CODES.sub("", each))
        for number, each in enumerate(_split(text), start=1)
    )


def _split(text: str) -> list[str]:
    lines = _LINE_END.split(text.removeprefix("\ufeff"))
    return lines[:-1] if lines and not lines[-1] else lines


def markdown_lines(text: str) -> tuple[SourceLine, ...]:
    """Lines without Markdown's marks; a first heading of the first level is the title."""
    out: list[SourceLine] = []
    titled = False
    front = _FRONT.match(text.removeprefix("\ufeff").split("\n", 1)[0].rstrip("\r")) is not None
    for number, line in enumerate(_split(text), start=1):
        if front:
            front = not (number > 1 and _FRONT.match(line))
            out.append(_front_line(number, line))
            titled = titled or out[-1].hint == "title"
            continue
        heading = _HEADING.match(line)
        words = _bare(heading["words"] if heading else _QUOTE.sub("", line))
        hint = ""
        if heading:
            hint = "title" if heading[1] == "#" and not titled else "heading"
            titled = titled or hint == "title"
        elif _FENCE.match(line):
            words = ""
        out.append(SourceLine(number=number, text=words, hint=hint))
    return tuple(out)


def _front_line(number: int, line: str) -> SourceLine:
    """A key that says what it is gets its place; every other line of a front matter is kept as a note."""
    found = _KEY.match(line)
    if _FRONT.match(line) or not line.strip():
        return SourceLine(number=number, text="")
    if found is None or not found["value"].strip():
        return SourceLine(number=number, text=line, hint="note")
    value = found["value"].strip().strip("\"'")
    key = found["key"].casefold()
    if key == "author":
        return SourceLine(number=number, text=f"Recipe\t{value}\t", hint="credit")
    hint = {"title": "title", "description": "lead"}.get(key, "tags")
    return SourceLine(number=number, text=value.strip("[]") if hint == "tags" else value, hint=hint)


def _bare(text: str) -> str:
    text = _LINK.sub(lambda f: f["words"] if f["url"].startswith("#") else f"{f['words']} {f['url']}", text)
    text = _CODE.sub(r"\1", text)
    text = _ITALIC.sub(r"\2", _BOLD.sub(r"\2", text))
    return re.sub(r"\\([\\`*_{}\[\]()#+.!|<>~-])", r"\1", text)
