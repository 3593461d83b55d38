"""Where everything stands in the overlay: rows, columns, and further pictures. Nothing is drawn here."""

from dataclasses import dataclass, replace

from generator.present.views import LineView, PartView, RecipeView
from generator.render.images.ink import BRICK, Pen, Stroke, balanced, cut_short, width_of, wrapped
from generator.render.print_fonts import FIGURES, TEXT
from generator.render.rich_text import tied
from generator.wording.speech import say

WIDTH, HEIGHT = 1920, 1080
_MARGIN, _PADDING, _GUTTER = 56, 36, 48
_COLUMN = 720
# Figures in pixels and columns, tried in this order. Below 28 px a viewer on a telephone cannot read them
# (28 of 1080 lines; from memory of television practice).
_SCALES = ((42, 1), (36, 1), (32, 1), (36, 2), (32, 2), (28, 2))
_TITLE_SIZES = (64, 52, 44)
# A row of more lines than this goes on in a further row, so that any text fits any column.
_ROW_LINES = 6
# How finely the columns of a picture are levelled, in pixels.
_STEP = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One row of the docket. `rule` draws a line under it; `heads` keeps it with the row after it."""

    strokes: tuple[Stroke, ...]
    height: float
    rule: bool
    heads: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    row: Row
    x: float
    y: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Panel:
    """One picture: a panel with a head and its rows, all in pixels of the picture."""

    left: float
    top: float
    width: float
    height: float
    head: tuple[Stroke, ...]
    head_height: float
    rows: tuple[Placed, ...]
    column: float


def panels_of(view: RecipeView) -> tuple[Panel, ...]:
    """The pictures of a recipe: one at the largest size it fits in, else as many as it takes."""
    for figure, columns in _SCALES:
        rows = _rows(view, figure)
        head, head_height = _head(view, columns, "")
        filled = _filled(rows, _room(head_height))
        if len(filled) <= columns:
            return (_panel(_balanced(rows, columns), head, head_height, columns),)
    several = [filled[at : at + columns] for at in range(0, len(filled), columns)]
    return tuple(
        _panel(page, _head(view, columns, _of(number, len(several)))[0], head_height, columns)
        for number, page in enumerate(several, start=1)
    )


def _balanced(rows: list[Row], columns: int) -> list[list[Row]]:
    """The rows in at most so many columns, none much taller than it must be."""
    height = sum(row.height for row in rows) / columns
    while len(filled := _filled(rows, height)) > columns:
        height += _STEP
    return filled


def _room(head_height: float) -> float:
    return HEIGHT - 2 * _MARGIN - 2 * _PADDING - head_height


def _panel(columns: list[list[Row]], head: tuple[Stroke, ...], head_height: float, count: int) -> Panel:
    width = count * _COLUMN + (count - 1) * _GUTTER + 2 * _PADDING
    tallest = max((sum(row.height for row in column) for column in columns), default=0)
    height = head_height + tallest + 2 * _PADDING
    top = (HEIGHT - height) / 2
    rows = []
    for number, column in enumerate(columns):
        y = top + _PADDING + head_height
        for row in column:
            rows.append(Placed(row=row, x=_MARGIN + _PADDING + number * (_COLUMN + _GUTTER), y=y))
            y += row.height
    moved = tuple(
        replace(stroke, x=stroke.x + _MARGIN + _PADDING, y=stroke.y + top + _PADDING) for stroke in head
    )
    return Panel(
        left=_MARGIN,
        top=top,
        width=width,
        height=height,
        head=moved,
        head_height=head_height,
        rows=tuple(rows),
        column=_COLUMN,
    )


def _head(view: RecipeView, columns: int, remark: str) -> tuple[tuple[Stroke, ...], float]:
    """Maker and title, and which of several pictures this is; the height is the same for every remark."""
    width = columns * _COLUMN + (columns - 1) * _GUTTER
    small = Pen(family=FIGURES, weight="400", size=26)
    words = " · ".join(piece for piece in (view.maker, view.makes, remark) if piece)
    title, lines = _title(view, width)
    maker = cut_short(wrapped(words, small, width, view.language), 2, small, width)
    strokes = [Stroke(x=0, y=24 + 32 * at, text=line, pen=small) for at, line in enumerate(maker)]
    y = 32.0 * min(2, len(wrapped(f"{words} · {_of(10, 10)}", small, width, view.language)))
    for line in lines:
        y += title.size * 1.04
        strokes.append(Stroke(x=0, y=y - title.size * 0.16, text=line, pen=title))
    return tuple(strokes), y + 22


def _of(number: int, count: int) -> str:
    return say("{number} of {count}", number=number, count=count)


def _title(view: RecipeView, width: float) -> tuple[Pen, tuple[str, ...]]:
    for size in _TITLE_SIZES:
        pen = Pen(family=TEXT, weight="700", size=size)
        lines = balanced(view.title, pen, width, view.language)
        if len(lines) <= 2:
            break
    return pen, cut_short(lines, 4, pen, width)


def _rows(view: RecipeView, figure: float) -> list[Row]:
    amounts = [tied(line.amount.first) for part in view.parts for line in part.lines]
    pen = Pen(family=FIGURES, weight="700", size=figure)
    room = min(max((width_of(text, pen) for text in amounts), default=0), 0.4 * _COLUMN)
    rows: list[Row] = []
    for part in view.parts:
        if part.title:
            rows.extend(_part_rows(part, figure, view.language))
        for line in part.lines:
            rows.extend(_line_rows(line, figure, room, view.language))
    return rows


def _part_rows(part: PartView, figure: float, language: str) -> list[Row]:
    pen = Pen(family=FIGURES, weight="700", size=figure * 0.9, colour=BRICK)
    lines = wrapped(f"{part.title} {tied(part.weight)}".strip(), pen, _COLUMN, language)
    last = len(lines) - 1
    return [
        Row(
            strokes=(Stroke(x=0, y=figure * 1.15, text=text, pen=pen),),
            height=figure * 1.5,
            rule=at == last,
            heads=True,
        )
        for at, text in enumerate(lines)
    ]


def _line_rows(line: LineView, figure: float, room: float, language: str) -> list[Row]:
    """Weight at the left, item beside it, volume at the right end where there is room, else below."""
    item = Pen(family=FIGURES, weight="600", size=figure * 0.92)
    small = Pen(family=FIGURES, weight="400", size=figure * 0.78)
    bold = Pen(family=FIGURES, weight="700", size=figure)
    left = room + figure * 0.55
    width = _COLUMN - left
    words = ", ".join(filter(None, (line.item, line.preparation, say("optional") if line.optional else "")))
    texts = [(text, item, left) for text in wrapped(words, item, width, language)]
    volume = tied(line.amount.second)
    beside = len(texts) == 1 and width_of(texts[0][0], item) + width_of(volume, small) + figure <= width
    if volume and not beside:
        texts += [(text, small, left) for text in wrapped(volume, small, width, language)]
    for choice in line.choices:
        other = say("or {choice}", choice=tied(choice))
        texts += [(text, small, left) for text in wrapped(other, small, width, language)]
    amounts = [
        (text, bold, room - width_of(text, bold)) for text in wrapped(tied(line.amount.first), bold, room + 1)
    ]
    if volume and beside:
        amounts.append((volume, small, _COLUMN - width_of(volume, small)))
        first = [[amounts[0], amounts[-1]], *([amount] for amount in amounts[1:-1])]
    else:
        first = [[amount] for amount in amounts]
    return _stacked(first, [[text] for text in texts], figure)


_Drawn = tuple[str, Pen, float]


def _stacked(left: list[list[_Drawn]], right: list[list[_Drawn]], figure: float) -> list[Row]:
    """The lines of both sides put together and cut into rows that are never too high."""
    count = max(len(left), len(right), 1)
    together = [
        [*(left[at] if at < len(left) else ()), *(right[at] if at < len(right) else ())]
        for at in range(count)
    ]
    rows = []
    for start in range(0, count, _ROW_LINES):
        cut = together[start : start + _ROW_LINES]
        strokes = tuple(
            Stroke(x=x, y=figure * 1.08 * (at + 1), text=text, pen=pen)
            for at, texts in enumerate(cut)
            for text, pen, x in texts
            if text
        )
        whole = start + _ROW_LINES >= count
        rows.append(
            Row(strokes=strokes, height=figure * (1.08 * len(cut) + 0.38), rule=whole, heads=not whole)
        )
    return rows


def _filled(rows: list[Row], room: float) -> list[list[Row]]:
    """Rows put into columns of a height; a row that heads another goes over with it."""
    columns: list[list[Row]] = [[]]
    for at, row in enumerate(rows):
        follower = rows[at + 1].height if row.heads and at + 1 < len(rows) else 0
        used = sum(each.height for each in columns[-1])
        if columns[-1] and used + row.height + follower > room:
            columns.append([])
        columns[-1].append(row)
    return columns
