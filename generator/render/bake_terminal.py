"""Bake days as text for a terminal."""

from collections.abc import Iterable, Iterator

from generator.present.bake_views import BakeDayView, BakeRowView, ComparisonView, GroupView

_INDENT = "  "
_HEADS = BakeRowView(day="Day", room="Room", weather="Weather", added="Added", dough="Dough", baked="Baked")
_WIDEST = 36


def day_text(view: BakeDayView) -> str:
    """The sums, what must not be missed, what was noted, and the corrections to copy."""
    head = ", ".join(each for each in (view.title, view.day, view.revision) if each)
    blocks = [
        f"{head}\n{view.summary}",
        "\n".join(f"!! {each}" for each in view.alarms),
        "\n".join(f"Note: {each}" for each in view.remarks),
        _facts(view.facts),
        "To correct the recipe:\n" + "\n".join(f"{_INDENT}{each}" for each in view.offers)
        if view.offers
        else "",
        view.no_offer,
    ]
    return "\n\n".join(block for block in blocks if block) + "\n"


def _facts(facts: Iterable[tuple[str, str]]) -> str:
    pairs = tuple(facts)
    width = max((len(label) for label, _ in pairs), default=0)
    return "\n".join(f"{label:<{width}}  {words}" for label, words in pairs)


def comparison_text(view: ComparisonView) -> str:
    """A table for each revision, then each ingredient over its bakes, then both orders."""
    return f"{view.title}\n\n" + "\n\n".join("\n".join(_group(each)) for each in view.groups) + "\n"


def _group(group: GroupView) -> Iterator[str]:
    yield group.title
    yield from (f"{_INDENT}{row}" for row in _table(group.rows))
    for each in group.spreads:
        told = ", ".join(part for part in (each.mean, each.spread) if part)
        yield f"{_INDENT}{each.item}: {', '.join(each.amounts)}; {told}"
    yield from (f"{_INDENT}{remark}" for remark in group.remarks)
    for title, ordered in (("By humidity", group.by_humidity), ("By room warmth", group.by_warmth)):
        if len(ordered) > 1:
            yield f"{_INDENT}{title}:"
            width = max(len(measure) for measure, _ in ordered)
            yield from (f"{_INDENT * 2}{measure:>{width}}  {added}" for measure, added in ordered)


def _table(rows: tuple[BakeRowView, ...]) -> Iterator[str]:
    """Columns as wide as their words; a column that nobody filled is left out."""
    table = [_cells(each) for each in (_HEADS, *rows)]
    kept = [at for at in range(len(table[0])) if any(row[at] for row in table[1:])]
    widths = {at: max(len(row[at]) for row in table) for at in kept}
    for row in table:
        yield "  ".join(f"{row[at]:<{widths[at]}}" for at in kept).rstrip()


def _cells(row: BakeRowView) -> tuple[str, ...]:
    cells = (row.day, row.room, row.weather, row.added, row.dough, row.baked)
    return tuple(
        each if len(each) <= _WIDEST or at == 3 else f"{each[: _WIDEST - 1]}…"
        for at, each in enumerate(cells)
    )
