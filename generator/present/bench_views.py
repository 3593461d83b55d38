"""What stands beside a formula for another kitchen: other yeast, other equipment, other tins, another altitude."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class YeastRow:
    """A line of yeast as each of the three kinds; `own` is the number of the column that the recipe has, from 0."""

    item: str
    cells: tuple[str, ...]
    own: int


@dataclass(frozen=True, slots=True, kw_only=True)
class YeastView:
    """`columns` names the kinds; `notes` say the ratio with its source, and how to use each kind."""

    columns: tuple[str, ...]
    rows: tuple[YeastRow, ...]
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class EquipmentLayer:
    """What goes in together; amounts are those of the docket."""

    title: str
    remark: str
    items: str


@dataclass(frozen=True, slots=True, kw_only=True)
class EquipmentEntry:
    """One kind of equipment that the maker wrote no way for. `ordered` is false where no order is stated, `caution`
    may be ""."""

    title: str
    order: str
    ordered: bool
    layers: tuple[EquipmentLayer, ...]
    says: tuple[str, ...]
    caution: str


@dataclass(frozen=True, slots=True, kw_only=True)
class EquipmentView:
    """The same dough with other equipment; there are no entries for a dough that is not kneaded.

    `common` holds for all entries alike.
    """

    intro: str
    entries: tuple[EquipmentEntry, ...]
    common: tuple[str, ...]
    basis: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TinRow:
    """`name` is what `tinleaf show --tin` takes; `title` has its twin in the other unit."""

    name: str
    title: str
    times: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TinsView:
    """The usual tins for the recipe's own; `remark` says how they are compared, or why there are none."""

    rows: tuple[TinRow, ...]
    remark: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AltitudeTable:
    """A published table as far as it speaks of this recipe; the first column names the ingredient."""

    title: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AltitudeView:
    """`height` is the reader's own, "" on a page, which tells of every altitude of the tables."""

    height: str
    tables: tuple[AltitudeTable, ...]
    notes: tuple[str, ...]
