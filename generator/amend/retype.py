"""A file typed anew in a browser: what was changed is replaced, and every other byte stays.

A browser gives back every line ended alike and without a byte-order mark; the lines that were not touched keep
theirs, and new ones end as their neighbours do.
"""

from difflib import SequenceMatcher

from generator.source.lines import LINE_END

_MARK = "\ufeff"


def shown_text(data: bytes) -> str | None:
    """What an editor shows; None where the file is no UTF-8."""
    try:
        return LINE_END.sub("\n", data.decode("utf-8").removeprefix(_MARK))
    except UnicodeDecodeError:
        return None


def retyped_bytes(before: bytes, typed: str) -> bytes:
    """The file as `before`, with the lines that `typed` has otherwise. `before` is UTF-8."""
    text = before.decode("utf-8")
    mark = _MARK if text.startswith(_MARK) else ""
    old, ends = _lines(text.removeprefix(_MARK))
    new = LINE_END.sub("\n", typed.removeprefix(_MARK)).split("\n")
    usual = next((each for each in ends if each), "\n")
    out: list[str] = []
    for kind, start, end, first, last in SequenceMatcher(None, old, new, autojunk=False).get_opcodes():
        if kind == "equal":
            out += [line + ends[start + at] for at, line in enumerate(new[first:last])]
        else:
            near = [each for each in ends[start:end] if each] or [usual]
            out += [line + near[min(at, len(near) - 1)] for at, line in enumerate(new[first:last])]
    whole = _ended(out, usual)
    return (mark + whole).encode("utf-8")


def _lines(text: str) -> tuple[list[str], list[str]]:
    """The lines, and how each ends: the last one with ""."""
    lines, ends, at = [], [], 0
    for found in LINE_END.finditer(text):
        lines.append(text[at : found.start()])
        ends.append(found[0])
        at = found.end()
    return [*lines, text[at:]], [*ends, ""]


def _ended(lines: list[str], usual: str) -> str:
    """Every line but the last with an end, the last one without: what was the last may stand elsewhere now."""
    bare = [LINE_END.sub("", line) for line in lines]
    ends = [line[len(plain) :] or usual for line, plain in zip(lines, bare, strict=True)]
    return "".join(plain + end for plain, end in zip(bare[:-1], ends[:-1], strict=True)) + (
        bare[-1] if bare else ""
    )
