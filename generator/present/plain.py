"""A passage as plain words: no marks of Markdown, every mention worded."""

import re
from collections.abc import Sequence

from markdown_it import MarkdownIt

from generator.present.views import MentionView

PLACE = re.compile("\ue000(\\d+)\ue001")
"""Where mention n stands in a passage's Markdown."""
_READER = MarkdownIt("commonmark", {"html": False}).enable("table")


def plain_words(markdown: str, mentions: Sequence[MentionView]) -> str:
    """The text in one line a paragraph or list item."""
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
    text = "\n".join(line for line in lines if line)
    return PLACE.sub(lambda found: mentions[int(found.group(1))].text, text)
