"""Words of ours in the scripts and style sheets of a theme: they stand in `_("…")` there too, and go out said.

A script gets a plain text in its place, so that nothing is looked up in a browser:

    button.textContent = _("Clear all ticks");

A style sheet gets what `content` wants, with the counters that a page has in place of their names:

    content: _("side {page} of {pages}");
"""

import json
import re
from collections.abc import Callable, Iterator

Say = Callable[[str], str]

WORDED = re.compile(r'(?<![\w.$])_\(("(?:[^"\\\n]|\\.)*")\)')
_PLACE = re.compile(r"\{(\w+)\}")


def messages_of(text: str) -> Iterator[str]:
    """What a script or a style sheet says, in the order of the file."""
    return (json.loads(found[1]) for found in WORDED.finditer(text))


def worded_script(text: str, say: Say) -> str:
    """The script with its words said. A place that it fills by itself ("{count}") stays."""
    return WORDED.sub(lambda found: json.dumps(say(json.loads(found[1])), ensure_ascii=False), text)


def worded_style(text: str, say: Say) -> str:
    """The style sheet with its words said; "{page}" becomes the counter of that name."""
    return WORDED.sub(lambda found: _content(say(json.loads(found[1]))), text)


def _content(words: str) -> str:
    pieces = _PLACE.split(words)
    told = (f"counter({each})" if at % 2 else _text(each) for at, each in enumerate(pieces) if each)
    return " ".join(told)


def _text(words: str) -> str:
    """A string of CSS (Syntax Module Level 3, 4.3.5): only quotes and backslashes need care."""
    escaped = words.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'
