"""What a maker sees of bake days: in words, every number rounded for people."""

import shlex
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Offered:
    """A correction that a bake day suggests: what is to say `new`, and why; `bake` is the path of the record."""

    recipe: str
    what: str
    new: str
    why: str
    bake: str

    @property
    def command(self) -> str:
        """The same as a command to copy."""
        words = (self.recipe, self.what, self.new, "--why", self.why, "--from", self.bake)
        told = (each if each in ("--why", "--from") else shlex.quote(each) for each in words)
        return f"tinleaf correct {' '.join(told)}"


@dataclass(frozen=True, slots=True, kw_only=True)
class BakeDayView:
    """One bake day. `title` is the bake, `summary` the sums in one sentence.

    `alarms` are allergens that the recipe's own label does not name, `remarks` what the maker should know about the
    sums, `facts` pairs of a label and words. `offered` are corrections, `offers` the same as commands to copy; where
    there are none, `no_offer` says why.
    """

    path: str
    title: str
    day: str
    revision: str
    summary: str
    alarms: tuple[str, ...]
    remarks: tuple[str, ...]
    facts: tuple[tuple[str, str], ...]
    offered: tuple[Offered, ...]
    no_offer: str

    @property
    def offers(self) -> tuple[str, ...]:
        return tuple(each.command for each in self.offered)


@dataclass(frozen=True, slots=True, kw_only=True)
class BakeRowView:
    """A bake in the table of several."""

    day: str
    room: str
    weather: str
    added: str
    dough: str
    baked: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SpreadView:
    """Of one ingredient over the bakes of a revision: `amounts` in the order of the table."""

    item: str
    amounts: tuple[str, ...]
    mean: str
    spread: str


@dataclass(frozen=True, slots=True, kw_only=True)
class GroupView:
    """The bakes of one revision. The two orders are of measured humidity and warmth, lowest first, in words."""

    title: str
    rows: tuple[BakeRowView, ...]
    spreads: tuple[SpreadView, ...]
    by_humidity: tuple[tuple[str, str], ...]
    by_warmth: tuple[tuple[str, str], ...]
    remarks: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ComparisonView:
    title: str
    groups: tuple[GroupView, ...]
