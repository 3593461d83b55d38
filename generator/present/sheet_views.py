"""What a formula sheet and a machine's loading list show: every number is words already."""

from dataclasses import dataclass

from generator.present.bench_views import AltitudeView, EquipmentView, TinsView, YeastView


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetRow:
    """`of_all` is on all flour, `of_own` on the flour of the table itself; either is "" where there is none."""

    item: str
    weight: str
    of_all: str = ""
    of_own: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetTable:
    """A table of the sheet. `own_flour` names the flour that `of_own` is on, "" where no row has it."""

    title: str
    remark: str
    rows: tuple[SheetRow, ...]
    sum: SheetRow
    own_flour: str = ""

    @property
    def has_all(self) -> bool:
        return any(row.of_all for row in self.rows)

    @property
    def has_own(self) -> bool:
        return any(row.of_own for row in self.rows)


@dataclass(frozen=True, slots=True, kw_only=True)
class BatchView:
    """How often a component is made: "60 g", "1 batch of 400 g", "340 g"; `left` is "" for nothing."""

    title: str
    used: str
    made: str
    left: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterRow:
    """A room's temperature, and the water's for each column."""

    room: str
    cells: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterView:
    """Water for the wanted dough temperature. `notes` say what it is reckoned from, and what nobody stated.

    There are no rows where no friction figure is stated for any way.
    """

    wanted: str
    columns: tuple[str, ...]
    rows: tuple[WaterRow, ...]
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetFact:
    label: str
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetView:
    """A formula in the trade's way. `base` says what a hundred percent is, "" without flour."""

    base: str
    facts: tuple[SheetFact, ...]
    tables: tuple[SheetTable, ...]
    builds: tuple[SheetTable, ...]
    batches: tuple[BatchView, ...]
    water: WaterView | None
    path: str
    yeast: YeastView | None = None
    equipment: EquipmentView | None = None
    tins: TinsView | None = None
    altitude: AltitudeView | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadRow:
    """One thing for the pan; `place` is unique in its way ("load 3"). `second` may be ""."""

    place: str
    item: str
    first: str
    second: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LayerView:
    """`remark` says how a layer is put in: the yeast in a dry hollow."""

    title: str
    remark: str
    rows: tuple[LoadRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class MachineView:
    """The loading of a bread machine. `ordered` is false where the layers stand in no stated order.

    `added` goes in while it kneads, when `added_when` says. `pan` is about its size, `look` about the look after
    five minutes, `timer` is a caution. `basis` says where the guidance comes from.
    """

    order: str
    ordered: bool
    layers: tuple[LayerView, ...]
    added: tuple[LoadRow, ...]
    added_when: str
    rest: str
    look: str
    pan: str
    timer: str
    basis: str
