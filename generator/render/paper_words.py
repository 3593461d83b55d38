"""What every printed sheet asks of a recipe's view: its columns, its steps in runs, its sentences as HTML."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import groupby
from urllib.parse import urljoin

from markupsafe import Markup, escape

from generator.present.views import BlockView, LineView, RecipeView, Rich, Run, UseView, WayView
from generator.render.rich_text import rich_html
from generator.wording.speech import gettext, say

# What `rich_text` writes for a picture and for a link; paper shows their words, and the address of a link.
_PICTURE = re.compile(r'<img [^>]*?alt="([^"]*)"[^>]*>')
_LINK = re.compile(r'<a href="([^"]*)"[^>]*>(.*?)</a>', re.DOTALL)
_HEADING = re.compile(r"(</?)h[1-6]>")
_SPACES = re.compile(r"( +)")
# A longer word may break; it would not fit a narrow tag else.
_HELD_TOGETHER = 24
# Longer than this, a title in a running head would push the number of the side away.
_RUNNING = 38


@dataclass(frozen=True, slots=True, kw_only=True)
class Columns:
    """The columns of a docket: `second` is "" and `percent` false where the column would stand empty."""

    first: str
    second: str
    percent: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class BlockRun:
    """Neighbouring blocks of one kind, so that steps stand in one numbered list."""

    kind: str
    blocks: tuple[BlockView, ...]

    @property
    def before(self) -> int:
        """The number before its first, from which a list counts on."""
        return self.blocks[0].number - 1


def columns(view: RecipeView) -> Columns:
    """The two measures in the site's order, under their names."""
    lines = [line for part in view.parts for line in part.lines]
    both = [line.amount for line in lines if line.amount.weight and line.amount.volume]
    swapped = bool(both) and all(amount.first == amount.volume != amount.weight for amount in both)
    names = (say("Weight"), say("Volume"))
    return Columns(
        first=names[swapped],
        second=names[not swapped] if any(line.amount.second for line in lines) else "",
        percent=any(line.percent for line in lines),
    )


def runs_of(blocks: tuple[BlockView, ...]) -> tuple[BlockRun, ...]:
    """Blocks in their order, gathered by kind."""
    return tuple(
        BlockRun(kind=kind, blocks=tuple(run)) for kind, run in groupby(blocks, key=lambda block: block.kind)
    )


def unsaid_uses(block: BlockView) -> tuple[UseView, ...]:
    """The uses whose amount the sentence itself does not give, as where it names a whole part."""
    return tuple(
        use for use in block.uses if use.amount.first not in block.words.plain or not use.amount.first
    )


def all_ways(view: RecipeView) -> tuple[WayView, ...]:
    """The ways, and the steps common to all of them after them."""
    return (*view.ways, *((view.common,) if view.common else ()))


def loose_cautions(view: RecipeView) -> tuple[str, ...]:
    """The cautions that do not stand at their place in the method."""
    placed = {
        block.words.plain
        for way in all_ways(view)
        for section in way.sections
        for block in section.blocks
        if block.kind == "caution"
    }
    return tuple(text for text in view.cautions if text not in placed)


def on_paper(words: Rich, home: str) -> Markup:
    """A text for paper: pictures by their words, links with their address, headings as bold lines.

    `home` is the absolute address that places of the publication are joined to.
    """
    html = str(rich_html(words, level=6, place=lambda path: urljoin(home, path)))
    shown = _LINK.sub(_with_address, _PICTURE.sub(r"\1", html))
    return Markup(_HEADING.sub(lambda tag: f"{tag[1]}p{' class=bold' if tag[1] == '<' else ''}>", shown))


def home_of(view: RecipeView) -> str:
    """The address of the publication, from the recipe's own."""
    return view.url.removesuffix(view.path)


def running_title(title: str) -> str:
    """A title for the head of further sides: whole words, and a sign where some are left out."""
    if len(title) <= _RUNNING:
        return title
    return title[:_RUNNING].rsplit(" ", 1)[0] + " …"


def line_words(line: LineView) -> str:
    """What follows an item on its line: preparation, where it is told, and that it is optional."""
    pieces = (
        line.preparation,
        say("see {title}", title=line.component.title) if line.component else "",
        gettext("optional") if line.optional else "",
    )
    return ", ".join(piece for piece in pieces if piece)


def runs_html(runs: Iterable[Run]) -> Markup:
    """The words of a declaration, those that stand out as `strong`.

    A word of which a part stands out ("(milk),") is held together: the layout engine would otherwise break
    the line in the wrong place beside it.
    """
    html = Markup("")
    for letters in _worded(runs):
        pieces = Markup("").join(
            Markup("<strong>{}</strong>").format(text) if strong else escape(text) for text, strong in letters
        )
        short = sum(len(text) for text, _ in letters) <= _HELD_TOGETHER
        html += (
            Markup('<span class="held">{}</span>').format(pieces) if len(letters) > 1 and short else pieces
        )
    return html


def _worded(runs: Iterable[Run]) -> Iterator[list[tuple[str, bool]]]:
    """The text word by word, spaces as words of their own; each word as its stretches of one weight."""
    word: list[tuple[str, bool]] = []
    for run in runs:
        for text in filter(None, _SPACES.split(run.text)):
            if text.isspace():
                yield from (word, [(text, run.strong)]) if word else ([(text, run.strong)],)
                word = []
            else:
                word.append((text, run.strong))
    if word:
        yield word


def _with_address(link: re.Match[str]) -> str:
    address, words = link[1], link[2]
    return words if address == words else f"{words} ({address.removeprefix('mailto:')})"
