"""All that a maker may choose, in one frozen type. Read from `site.yaml` by `source/site.py`."""

from dataclasses import dataclass
from datetime import date
from fractions import Fraction
from typing import Literal, TypeAlias

Paper: TypeAlias = Literal["letter", "a4"]
First: TypeAlias = Literal["weight", "volume"]
Cup: TypeAlias = Literal["us", "metric", "imperial", "australian"]
FlourCup: TypeAlias = Literal["spooned", "dipped"]
OvenC: TypeAlias = Literal["nearest 5", "dial"]
Scale: TypeAlias = Literal["F", "C"]
LoadingOrder: TypeAlias = Literal["liquids first", "yeast first"]
Pan: TypeAlias = Literal["1 lb", "1.5 lb", "2 lb"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Degrees:
    """A temperature, or a difference of two, in the scale in which the maker states it."""

    value: Fraction
    scale: Scale


@dataclass(frozen=True, slots=True, kw_only=True)
class Machine:
    """A bread machine as the maker tells of it; None or "" is what is not stated, and never guessed.

    `rest` is minutes at least and at most that it stands still before it mixes. `add_ins` are the maker's words.
    """

    order: LoadingOrder | None = None
    rest: tuple[int, int] | None = None
    add_ins: str = ""
    pan: Pan | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Friction:
    """What mixing adds to a dough's temperature by the maker's own measuring: a difference, None where not stated."""

    machine: Degrees | None = None
    mixer: Degrees | None = None
    hand: Degrees | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """The settings of a publication, under the names they have in `site.yaml`.

    `url` is absolute and ends with a slash. `pack_age` counts days, `description_limit` and `short_limit`
    bytes. `egg` is the size an egg has where a line says none. `flour_cup` is how a cup of white wheat flour
    was filled: spooned 125 g, dipped 137 g. `cups_beside` names the cups of other countries that pages show
    beside the site's own. `yeast_sugar` is the percent of sugar on flour above which a yeast for sweet doughs
    is suggested (common practice: from 5 to 12). `compressed` asks for copies for servers that send them
    ready. `machine`, `dough_temperature` and `friction` have no default: what they do not say is told as not
    known.
    """

    title: str = ""
    lead: str = ""
    maker: str = ""
    url: str = ""
    contact: str = ""
    region: str = "US"
    language: str = "en-US"
    zone: str = "UTC"
    paper: Paper = "letter"
    first: First = "weight"
    cup: Cup = "us"
    cups_beside: tuple[Cup, ...] = ()
    flour_cup: FlourCup = "spooned"
    egg: str = "large"
    oven_c: OvenC = "nearest 5"
    theme: str = "docket"
    kitchen_handles: tuple[str, ...] = ()
    pack_age: int = 180
    yeast_sugar: Fraction = Fraction(10)
    statement: str = ""
    statement_on: date | None = None
    paid_links: str = ""
    description_limit: int = 5000
    short_limit: int = 2000
    compressed: bool = False
    machine: Machine | None = None
    dough_temperature: Degrees | None = None
    friction: Friction = Friction()
