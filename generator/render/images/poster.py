"""The picture to share and the tall one: a slip with the name and the figures of a bake, over its photograph."""

from collections.abc import Iterator

from generator.present.posters import SHARE_SIZE, PosterView
from generator.render.images.face import (
    Bar,
    Block,
    Box,
    Face,
    Measures,
    fact_blocks,
    head_block,
    lead_block,
    placed,
    ruler,
    title_blocks,
)
from generator.render.images.ink import GROUND, INK, Stroke

TALL = (1000, 1500)
_EDGE = 3
# Where the picture is shown, the lead stands beside it as text.
_SHARE_BESIDE = Measures(
    titles=(84, 76, 68, 60, 52, 46, 40, 34), title_lines=4, lead=25, lead_lines=0, figure=29
)
_SHARE_ALONE = Measures(
    titles=(128, 112, 96, 84, 72, 60, 48), title_lines=3, lead=34, lead_lines=3, figure=36, lead_from=84
)
_TALL_BELOW = Measures(
    titles=(104, 92, 80, 70, 60, 50, 42), title_lines=3, lead=36, lead_lines=4, figure=38, lead_from=70
)
_TALL_ALONE = Measures(
    titles=(150, 128, 110, 94, 80, 66, 52), title_lines=5, lead=46, lead_lines=7, figure=48, lead_from=94
)


def share_face(view: PosterView, *, photo: bool) -> Face:
    """1200 x 630, the size at which pages are shown when somebody passes them on."""
    width, height = SHARE_SIZE
    slip = Box(left=0, top=0, width=560 if photo else width, height=height)
    measures = _SHARE_BESIDE if photo else _SHARE_ALONE
    safe = Box(left=48, top=44, width=slip.width - 48 - 64, height=height - 88)
    strokes, bars = _filled(view, safe, measures, most_facts=2)
    marks = Box(left=slip.right - 30, top=0, width=24, height=height)
    edge = (Bar(box=Box(left=slip.right - _EDGE, top=0, width=_EDGE, height=height)),) if photo else ()
    return Face(
        width=width,
        height=height,
        slip=slip,
        safe=safe,
        strokes=strokes,
        bars=(*bars, *_mirrored(marks), *edge),
        photo=Box(left=slip.right, top=0, width=width - slip.right, height=height) if photo else None,
    )


def tall_face(view: PosterView, *, photo: bool) -> Face:
    """1000 x 1500, for boards that show pictures in columns."""
    width, height = TALL
    top = 760 if photo else 60
    slip = Box(left=60, top=top, width=width - 120, height=height - top - 60)
    safe = Box(left=slip.left + 52, top=slip.top + 62, width=slip.width - 104, height=slip.height - 62 - 48)
    strokes, bars = _filled(view, safe, _TALL_BELOW if photo else _TALL_ALONE, most_facts=3 if photo else 8)
    marks = Box(left=slip.left, top=slip.top + _EDGE, width=slip.width, height=28)
    return Face(
        width=width,
        height=height,
        slip=slip,
        safe=safe,
        strokes=strokes,
        bars=(*_frame(slip), *ruler(marks, step=10), *bars),
        photo=Box(left=0, top=0, width=width, height=860) if photo else None,
        ground=GROUND,
    )


def _mirrored(box: Box) -> Iterator[Bar]:
    """A ruler's marks down the right side of a box."""
    for mark in ruler(box, step=10):
        yield Bar(
            box=Box(
                left=box.right - mark.box.width,
                top=mark.box.top,
                width=mark.box.width,
                height=mark.box.height,
            )
        )


def _frame(box: Box) -> Iterator[Bar]:
    for left, top, width, height in (
        (box.left, box.top, box.width, _EDGE),
        (box.left, box.bottom - _EDGE, box.width, _EDGE),
        (box.left, box.top, _EDGE, box.height),
        (box.right - _EDGE, box.top, _EDGE, box.height),
    ):
        yield Bar(box=Box(left=left, top=top, width=width, height=height), colour=INK)


def _filled(
    view: PosterView, safe: Box, measures: Measures, *, most_facts: int
) -> tuple[tuple[Stroke, ...], tuple[Bar, ...]]:
    """Head, title and lead from the top, figures from the bottom: the largest title with which all have room."""
    head = head_block(view.maker, safe.width, measures.figure * 0.86, view.language)
    lead = lead_block(view.lead, safe.width, measures, view.language)
    all_facts = tuple(fact_blocks(view.facts, safe.width, measures.figure, view.language))[:most_facts]
    room = safe.height - head.height
    titles = tuple(title_blocks(view.title, safe.width, measures, view.language))
    for title, words, facts in _choices(titles, lead, all_facts, measures):
        if _height(title, words, facts, measures) <= room:
            return _set(head, title, words, facts, safe, measures)
    return _set(head, titles[-1], None, (), safe, measures)


def _choices(
    titles: tuple[Block, ...], lead: Block | None, facts: tuple[Block, ...], measures: Measures
) -> Iterator[tuple[Block, Block | None, tuple[Block, ...]]]:
    """What is tried, the best first: with a lead and a large title, then without the lead; two figures are worth more
    than a larger title."""
    few = min(len(facts), 2)
    if lead:
        for title in titles:
            if title.strokes[0].pen.size >= measures.lead_from:
                yield from ((title, lead, facts[:count]) for count in range(len(facts), few - 1, -1))
    for least in (few, 0):
        for title in titles:
            yield from ((title, None, facts[:count]) for count in range(len(facts), least - 1, -1))


def _height(title: Block, lead: Block | None, facts: tuple[Block, ...], measures: Measures) -> float:
    gaps = measures.figure * (1.9 if facts else 0.8)
    return (
        title.height
        + (lead.height + measures.lead * 0.5 if lead else 0)
        + sum(b.height for b in facts)
        + gaps
    )


def _set(
    head: Block, title: Block, lead: Block | None, facts: tuple[Block, ...], safe: Box, measures: Measures
) -> tuple[tuple[Stroke, ...], tuple[Bar, ...]]:
    strokes: list[Stroke] = []
    bars: list[Bar] = []

    def put(block: Block, top: float) -> float:
        more, lines = placed(block, safe.left, top)
        strokes.extend(more)
        bars.extend(lines)
        return top + block.height

    top = put(head, safe.top) + measures.figure * 0.6
    top = put(title, top)
    if lead:
        put(lead, top + measures.lead * 0.5)
    top = safe.bottom - sum(each.height for each in facts)
    for each in facts:
        top = put(each, top)
    return tuple(strokes), tuple(bars)
