"""A text of the maker's as it is typed into a file of keys and values, quoted only where it must be."""

import re

_STARTS = tuple("-?:,[]{}#&*!|>'\"%@`")
_FLOW = re.compile(r"[,\[\]{}]")
_BREAKS = re.compile(r":(?=\s|$)|\s#")
_ESCAPES = {"\\": "\\\\", '"': '\\"'}


def quoted(text: str, *, flow: bool = False) -> str:
    """One line of YAML that reads back as `text`, its line breaks made spaces.

    `flow` is for a text inside brackets or braces, where a comma ends it.
    """
    line = " ".join(text.split())
    return line if _is_plain(line, flow=flow) else f'"{"".join(_ESCAPES.get(each, each) for each in line)}"'


def _is_plain(line: str, *, flow: bool) -> bool:
    if not line or line.startswith(_STARTS) or _BREAKS.search(line) or line in ("---", "..."):
        return False
    return not (flow and (_FLOW.search(line) or ":" in line))
