"""A picture before it is drawn: where its photograph, its slip, its bars and its words lie, in pixels."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from generator.present.views import Fact
from generator.render.far_faces import runs_leftward
from generator.render.images.ink import (
    BRICK,
    INK,
    RULE,
    SLIP,
    SOFT,
    Pen,
    Stroke,
    balanced,
    cut_short,
    width_of,
    wrapped,
)
from generator.render.print_fonts import FIGURES, TEXT
from generator.render.rich_text import tied

# The lines of Arabic reach from 0.9 of the size above the line to 0.35 below.
_FAR_LEADING = 1.26

Colour = tuple[int, int, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    left: float
    top: float
    width: float
    height: float

    @property
    def right(self) -> float:
        return self.left + self.width

    @property
    def bottom(self) -> float:
        return self.top + self.height

    def inside(self, margin: float) -> "Box":
        return Box(
            left=self.left + margin,
            top=self.top + margin,
            width=self.width - 2 * margin,
            height=self.height - 2 * margin,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """A filled rectangle: a rule, a mark of a ruler, a piece of a strip."""

    box: Box
    colour: Colour = INK


@dataclass(frozen=True, slots=True, kw_only=True)
class Face:
    """One picture. Words stand on the slip alone, and inside `safe`; the photograph shows where the slip is not."""

    width: int
    height: int
    slip: Box
    safe: Box
    bars: tuple[Bar, ...]
    strokes: tuple[Stroke, ...]
    photo: Box | None = None
    ground: Colour = SLIP


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """Words and bars of one piece of a slip, from its upper left corner, and how high it is."""

    height: float
    strokes: tuple[Stroke, ...] = ()
    bars: tuple[Bar, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Measures:
    """The sizes of a slip's words, in pixels. For a lead the title does not become smaller than `lead_from`."""

    titles: tuple[float, ...]
    title_lines: int
    lead: float
    lead_lines: int
    figure: float
    lead_from: float = 0


def head_block(maker: str, width: float, size: float, language: str) -> Block:
    """Who says it, over a thick rule."""
    pen = Pen(family=FIGURES, weight="600", size=size, colour=BRICK)
    lines = cut_short(wrapped(tied(maker), pen, width, language), 2, pen, width)
    strokes = tuple(
        Stroke(x=0, y=size * (1.2 * at + 0.9), text=line, pen=pen) for at, line in enumerate(lines)
    )
    rule = Bar(box=Box(left=0, top=size * (1.2 * len(lines) + 0.15), width=width, height=max(4, size / 5)))
    return Block(height=size * (1.2 * len(lines) + 0.15) + rule.box.height, strokes=strokes, bars=(rule,))


def title_blocks(title: str, width: float, measures: Measures, language: str) -> Iterator[Block]:
    """The title at each size it can have, the largest first; the last one fits any title by cutting it."""
    for size in measures.titles:
        pen = Pen(family=TEXT, weight="700", size=size)
        lines = wrapped(tied(title), pen, width, language)
        if len(lines) <= measures.title_lines and not any(map(_is_broken, lines)):
            yield text_block(balanced(tied(title), pen, width, language), pen, 1.08)
        elif size == measures.titles[-1]:
            yield text_block(cut_short(lines, 2 * measures.title_lines, pen, width), pen, 1.08)


def _is_broken(line: str) -> bool:
    return line.endswith("\u00ad")


def lead_block(lead: str, width: float, measures: Measures, language: str) -> Block | None:
    """The sentence below the title; nothing where it has no room, for a sentence is never cut."""
    pen = Pen(family=TEXT, weight="400", size=measures.lead)
    lines = wrapped(tied(lead), pen, width, language)
    return text_block(lines, pen, 1.32) if lead and len(lines) <= measures.lead_lines else None


def text_block(lines: Iterable[str], pen: Pen, leading: float) -> Block:
    """Lines below each other; letters that reach further up and down stand further apart."""
    lines = tuple(lines)
    leading = max(leading, _FAR_LEADING) if any(map(runs_leftward, lines)) else leading
    strokes = tuple(
        Stroke(x=0, y=pen.size * (leading * at + 0.5 * (leading - 1) + 0.83), text=line, pen=pen)
        for at, line in enumerate(lines)
    )
    return Block(height=pen.size * leading * len(strokes), strokes=strokes)


def fact_blocks(facts: Iterable[Fact], width: float, size: float, language: str) -> Iterator[Block]:
    """Ruled lines of the docket: what it is at the left, its figures bold at the right, or below where both are long.

    What takes more than three lines is left out: it stands on the page.
    """
    small = Pen(family=FIGURES, weight="400", size=size * 0.86, colour=SOFT)
    bold = Pen(family=FIGURES, weight="700", size=size)
    for fact in facts:
        words = tied(fact.words)
        beside = width_of(fact.label, small) + size + width_of(words, bold) <= width
        lines = (words,) if beside else wrapped(words, bold, width, language)
        labels = wrapped(tied(fact.label), small, width, language)
        rows = 1 if beside else len(labels) + len(lines)
        if rows > 4:
            continue
        step = size * 1.24
        strokes = [Stroke(x=0, y=step * at + size, text=label, pen=small) for at, label in enumerate(labels)]
        strokes += [
            Stroke(
                x=width - width_of(line, bold) if beside else 0,
                y=step * (at + (0 if beside else len(labels))) + size,
                text=line,
                pen=bold,
            )
            for at, line in enumerate(lines)
        ]
        height = step * rows + size * 0.3
        rule = Bar(box=Box(left=0, top=height - 2, width=width, height=2), colour=RULE)
        yield Block(height=height, strokes=tuple(strokes), bars=(rule,))


def placed(block: Block, left: float, top: float) -> tuple[tuple[Stroke, ...], tuple[Bar, ...]]:
    strokes = tuple(
        Stroke(x=each.x + left, y=each.y + top, text=each.text, pen=each.pen) for each in block.strokes
    )
    bars = tuple(
        Bar(
            box=Box(
                left=bar.box.left + left,
                top=bar.box.top + top,
                width=bar.box.width,
                height=bar.box.height,
            ),
            colour=bar.colour,
        )
        for bar in block.bars
    )
    return strokes, bars


def ruler(box: Box, *, step: float, thick: float = 2) -> Iterator[Bar]:
    """The marks of a ruler along the top of a box, or down its left side where it is taller than wide; each fifth is
    longer."""
    along = box.width if box.width >= box.height else box.height
    for number in range(1, round(along / step)):
        at, long = number * step, number % 5 == 0
        if box.width >= box.height:
            length = box.height * (1 if long else 0.5)
            yield Bar(box=Box(left=box.left + at - thick / 2, top=box.top, width=thick, height=length))
        else:
            length = box.width * (1 if long else 0.5)
            yield Bar(box=Box(left=box.left, top=box.top + at - thick / 2, width=length, height=thick))
