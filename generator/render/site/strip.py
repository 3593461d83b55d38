"""The time strip: one bar for each stretch of work, placed one after another."""

from dataclasses import dataclass
from fractions import Fraction

from generator.present.views import TimesView


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """A stretch of the strip: left edge and width in percent, as SVG attributes."""

    stage: str
    left: str
    width: str


def bars(times: TimesView) -> tuple[Bar, ...]:
    """The bars of one way in the order of work; their widths are the shares that the view gives."""
    placed: list[Bar] = []
    left = Fraction(0)
    for segment in times.segments:
        share = Fraction(segment.share.rstrip(" %"))
        placed.append(Bar(stage=segment.stage, left=_percent(left), width=_percent(share)))
        left += share
    return tuple(placed)


def _percent(share: Fraction) -> str:
    return f"{float(share):.2f}%"
