"""What the maker asks to be corrected, what that comes to in the text, and why it cannot be."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from types import MappingProxyType

from generator.diagnostics.diagnostic import Diagnostics
from generator.measure.number import Range
from generator.measure.unit import Kind
from generator.source.edits import Edit


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What was typed. `recipe` is "" where the pantry is meant; `what` is then a row, `key` one of its keys.

    `old` says which of several is meant, "" where there is no doubt; `line` too. `every` changes all that are alike.
    """

    recipe: str
    what: str
    new: str
    why: str
    on: date
    key: str = ""
    old: str = ""
    film: str = ""
    bake: str = ""
    line: int | None = None
    every: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Refused:
    """Why nothing is changed, and what to type instead; `found` are the mistakes that the change would make."""

    message: str
    hint: str = ""
    found: Diagnostics = ()
    texts: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))


@dataclass(frozen=True, slots=True, kw_only=True)
class Former:
    """An amount as it was, to be looked for in prose: in grams, millilitres or minutes, or a text as it stood."""

    kind: Kind | None = None
    amount: Range | None = None
    words: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Worked:
    """The stretches to replace, the change in words (`what OLD -> NEW`), and what else the maker should know.

    `shown` is the old amount as a film would show it, "" for what no film shows.
    """

    edits: tuple[Edit, ...]
    what: str
    old: str
    new: str
    former: tuple[Former, ...] = ()
    remarks: tuple[str, ...] = ()
    shown: str = ""

    @property
    def change(self) -> str:
        return f"{self.what} {self.old} -> {self.new}"
