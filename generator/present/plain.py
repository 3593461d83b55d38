"""A passage as plain words: no marks of Markdown, every mention worded."""

import re
from collections.abc import Sequence

from markdown_it import MarkdownIt

from generator.present.views import MentionView

PLACE = re.compile("\ue000(\\d+)\ue001")
"""Where mention n stands in a passage's Markdown."""
_READER = MarkdownIt("commonmark", {"html": False}).enable("table")

_UNMARKED = re.compile("[A-Za-z\ue000][^\\\\`*_\\[\\]<>&~|\r\n\x00]*")
"""One line that begins with a letter or a mention and holds no sign that Markdown knows: it is as it stands."""


def plain_words(markdown: str, mentions: Sequence[MentionView]) -> str:
    """The text in one line a paragraph or list item."""
    if _UNMARKED.fullmatch(markdown):
        return _with_mentions(" ".join(markdown.split()), mentions)
    lines: list[str] = []
    for token in _READER.parse(markdown):
        if token.type == "inline":
            parts = (
                " " if child.type in ("softbreak", "hardbreak") else child.content
                for child in token.children or ()
            )
            lines.append(" ".join("".join(parts).split()))
        elif token.type in ("fence", "code_block"):
            lines.append(token.content.strip())
    return _with_mentions("\n".join(line for line in lines if line), mentions)


def _with_mentions(text: str, mentions: Sequence[MentionView]) -> str:
    return PLACE.sub(lambda found: mentions[int(found.group(1))].text, text)
