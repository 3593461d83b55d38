"""The card before a chapter of a film: its number, its name, and where it lies in the film, drawn to scale."""

from collections.abc import Iterator

from generator.present.posters import ChapterCardView
from generator.render.images.face import Bar, Box, Face, Measures, placed, title_blocks
from generator.render.images.ink import (
    BRICK,
    INK,
    RULE,
    SLIP,
    SOFT,
    Pen,
    Stroke,
    cut_short,
    width_of,
    wrapped,
)
from generator.render.print_fonts import FIGURES
from generator.render.rich_text import tied

CARD = (1920, 1080)
# Words stay inside nine tenths of the picture, as in television (SMPTE ST 2046-1, from memory).
_SAFE = Box(left=120, top=90, width=1680, height=900)
_NUMBER = Pen(family=FIGURES, weight="700", size=300, colour=BRICK)
_NAMES = Measures(titles=(148, 128, 112, 96, 80, 64), title_lines=3, lead=40, lead_lines=1, figure=44)
_STRIP = Box(left=120, top=846, width=1680, height=56)


def chapter_face(view: ChapterCardView) -> Face:
    strokes = [*_above(view)]
    bars = [*_strip(view)]
    number = str(view.number)
    left = _SAFE.left + max(width_of(number, _NUMBER), width_of("0", _NUMBER)) + 70
    width = _SAFE.right - left
    for title in title_blocks(view.title, width, _NAMES, view.language):
        if title.height <= 560:
            break
    top = 222 + (560 - title.height) / 2
    strokes.append(Stroke(x=_SAFE.left, y=222 + 280 + 0.35 * _NUMBER.size, text=number, pen=_NUMBER))
    bars.append(Bar(box=Box(left=left - 36, top=262, width=5, height=480), colour=INK))
    more, _ = placed(title, left, top)
    return Face(
        width=CARD[0],
        height=CARD[1],
        slip=Box(left=0, top=0, width=CARD[0], height=CARD[1]),
        safe=_SAFE,
        strokes=(*strokes, *more, *_below(view)),
        bars=tuple(bars),
        ground=SLIP,
    )


def _above(view: ChapterCardView) -> Iterator[Stroke]:
    """The bake at the left, the maker at the right where both have room on one line."""
    pen = Pen(family=FIGURES, weight="600", size=44)
    maker = Pen(family=FIGURES, weight="400", size=44, colour=SOFT)
    name = cut_short(wrapped(tied(view.bake), pen, _SAFE.width, view.language), 1, pen, _SAFE.width)
    yield Stroke(x=_SAFE.left, y=_SAFE.top + 44, text=name[0], pen=pen)
    if width_of(name[0], pen) + 60 + width_of(tied(view.maker), maker) <= _SAFE.width:
        x = _SAFE.right - width_of(tied(view.maker), maker)
        yield Stroke(x=x, y=_SAFE.top + 44, text=tied(view.maker), pen=maker)


def _below(view: ChapterCardView) -> Iterator[Stroke]:
    """When it begins, which of how many it is, and how long the film lasts."""
    bold = Pen(family=FIGURES, weight="700", size=44)
    soft = Pen(family=FIGURES, weight="400", size=44, colour=SOFT)
    y = _SAFE.bottom - 12
    yield Stroke(x=_SAFE.left, y=y, text=view.stamp, pen=bold)
    yield Stroke(x=_SAFE.left + width_of(view.stamp, bold) + 40, y=y, text=view.count, pen=soft)
    if view.length:
        yield Stroke(x=_SAFE.right - width_of(view.length, soft), y=y, text=view.length, pen=soft)


def _strip(view: ChapterCardView) -> Iterator[Bar]:
    """The film as one strip: this chapter filled, the others bounded; below it the minutes as marks of a ruler."""
    yield Bar(box=Box(left=_STRIP.left, top=_STRIP.top, width=_STRIP.width, height=4))
    yield Bar(box=Box(left=_STRIP.left, top=_STRIP.bottom - 4, width=_STRIP.width, height=4))
    for number, stretch in enumerate(view.strip, start=1):
        left = _STRIP.left + _STRIP.width * float(stretch.start) / 100
        if number == view.number:
            width = max(6.0, _STRIP.width * float(stretch.share) / 100)
            left = min(left, _STRIP.right - width)
            yield Bar(box=Box(left=left, top=_STRIP.top, width=width, height=_STRIP.height), colour=BRICK)
        yield Bar(box=Box(left=min(left, _STRIP.right - 4), top=_STRIP.top, width=4, height=_STRIP.height))
    yield Bar(box=Box(left=_STRIP.right - 4, top=_STRIP.top, width=4, height=_STRIP.height))
    if len(view.minutes) <= 240:
        for number, minute in enumerate(view.minutes, start=1):
            left = _STRIP.left + _STRIP.width * float(minute) / 100
            long = 22 if number % 5 == 0 else 12
            yield Bar(
                box=Box(left=left - 1, top=_STRIP.bottom, width=3, height=long),
                colour=INK if long > 12 else RULE,
            )
