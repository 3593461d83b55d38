"""The packaged data, read into ingredients. A fault here is ours, so it raises; nothing is passed over.

A file `data/GROUP.yaml` is a list of rows; its stem is the group. A weight is written as its source states
it, `{g: 137, per: "1 cup", by: "USDA SR28 20083"}`, and the arithmetic is done here.
"""

import re
from collections.abc import Iterable, Mapping
from fractions import Fraction
from importlib.resources import files
from types import MappingProxyType
from typing import Any, TypeAlias

from generator.catalogue.allergens import ALLERGENS
from generator.catalogue.ingredient import US_CUP_ML, Ingredient
from generator.catalogue.names import fold
from generator.catalogue.tables import parsed_table

Row: TypeAlias = Mapping[str, Any]

KEYS = frozenset(
    (
        *("name", "also", "plural", "flour", "white_wheat", "nominal_liquid", "salt_added"),
        *("weight", "no_volume", "forms", "pieces", "units", "composition"),
        *("allergens", "allergens_by", "ask", "often", "label", "labels", "made_of", "cautions"),
    )
)
CAUTIONS = frozenset({"raw flour", "raw egg", "honey", "alcohol", "whole nuts", "choking"})
_REGION = re.compile(r"[A-Z]{2,3}")  # a name as in `declaration/regions`, which alone knows which there are
SALT_PER_MG_SODIUM = Fraction(25, 10_000)  # salt = sodium x 2.5, Regulation (EU) 1169/2011, Annex I
BY_NATURE = (
    "what the food is, by the classes of 21 USC 321(qq), Reg. (EU) 1169/2011 Annex II, Canada B.01.010.1 "
    "and Standard 1.2.3"
)
_ML: Mapping[str, Fraction] = MappingProxyType(
    {
        "cup": US_CUP_ML,
        "fl oz": US_CUP_ML / 8,
        "tbsp": US_CUP_ML / 16,
        "tablespoon": US_CUP_ML / 16,
        "tsp": US_CUP_ML / 48,
        "ml": Fraction(1),
    }
)
_PER = re.compile(r"(?P<amount>\d*\.?\d+) (?P<what>.+)")
_VOLUME = re.compile(r"(?P<unit>cup|fl oz|tbsp|tablespoon|tsp|ml)\b")


class FaultyRow(ValueError):
    """A row of the packaged data is wrong: a bug of ours."""


def built_in_rows() -> tuple[Ingredient, ...]:
    """Every row of the packaged `data/*.yaml`, files in alphabetical order."""
    folder = files("generator.catalogue").joinpath("data")
    found = sorted(
        (each for each in folder.iterdir() if each.name.endswith(".yaml")), key=lambda each: each.name
    )
    rows: list[Ingredient] = []
    for each in found:
        group = each.name.removesuffix(".yaml").replace("_", " ")
        rows += read_rows(each.read_text(encoding="utf-8"), group=group)
    return tuple(rows)


def read_rows(text: str, *, group: str) -> tuple[Ingredient, ...]:
    """The rows of one data file."""
    return tuple(_ingredient(row, group=group) for row in parsed_table(text))


def grams_per_ml(weighing: Row) -> Fraction:
    """Grams a millilitre of `{g, per}` where `per` starts with an amount and a volume unit."""
    amount, what = _per(weighing)
    volume = _VOLUME.match(what)
    if volume is None:
        raise FaultyRow(f"{what!r} is no volume")
    return _number(weighing["g"]) / (amount * _ML[volume["unit"]])


def grams_each(weighing: Row) -> Fraction:
    """Grams of one piece of `{g, per}`: `10 nuts` at 14 g is 1.4 g."""
    amount, _ = _per(weighing)
    return _number(weighing["g"]) / amount


def _ingredient(row: Row, *, group: str) -> Ingredient:
    _check_keys(row)
    name = row["name"]
    plural = row.get("plural", name)
    weight = row.get("weight")
    return Ingredient(
        name=name,
        names=tuple(dict.fromkeys(fold(each) for each in (name, plural, *row.get("also", ())))),
        plural=plural,
        group=group,
        flour=row.get("flour", False),
        white_wheat=row.get("white_wheat", False),
        nominal_liquid=row.get("nominal_liquid", False),
        salt_added=row.get("salt_added", False),
        grams_per_ml=grams_per_ml(weight) if weight else None,
        modifiers=MappingProxyType({key: grams_per_ml(each) for key, each in row.get("forms", {}).items()}),
        pieces=MappingProxyType({key: grams_each(each) for key, each in row.get("pieces", {}).items()}),
        units=MappingProxyType({key: grams_each(each) for key, each in row.get("units", {}).items()}),
        **_composition(row.get("composition", {})),
        allergens=tuple(sorted(row.get("allergens", ()))),
        ask=tuple(row.get("ask", ())),
        often=tuple(sorted(row.get("often", ()))),
        label_name=row.get("label", name),
        label_names=MappingProxyType(dict(row.get("labels", {}))),
        made_of=row.get("made_of", ""),
        cautions=tuple(row.get("cautions", ())),
        sources=MappingProxyType(dict(_sources(row))),
    )


def _composition(given: Row) -> dict[str, Fraction | None]:
    """Water, fat, sugar and salt in 100 g; sodium in milligrams becomes salt. What is not given is None."""
    parts = {key: _number(given[key]) if key in given else None for key in ("water", "fat", "sugar", "salt")}
    if "sodium" in given:
        parts["salt"] = _number(given["sodium"]) * SALT_PER_MG_SODIUM
    return parts


def _sources(row: Row) -> Iterable[tuple[str, str]]:
    """Field -> source, for each value the row gives, and the reason where it gives no weight per volume."""
    if "weight" in row or "no_volume" in row:
        yield "grams_per_ml", _stated(row["weight"]) if "weight" in row else row["no_volume"]
    for key, field in (("forms", "modifiers"), ("pieces", "pieces"), ("units", "units")):
        for word, weighing in row.get(key, {}).items():
            yield f"{field}.{word}", _stated(weighing)
    yield from _composition_sources(row.get("composition", {}))
    yield "allergens", row.get("allergens_by", BY_NATURE)


def _composition_sources(given: Row) -> Iterable[tuple[str, str]]:
    for key in ("water", "fat", "sugar", "salt"):
        if key in given:
            yield key, given["by"]
    if "sodium" in given:
        yield "salt", f"{given['by']}, sodium x 2.5 (Reg. (EU) 1169/2011 Annex I)"
    if "salt_by" in given:
        yield "salt", given["salt_by"]


def _stated(weighing: Row) -> str:
    return f"{weighing['by']}, {weighing['per']} = {weighing['g']} g"


def _per(weighing: Row) -> tuple[Fraction, str]:
    found = _PER.fullmatch(weighing["per"])
    if found is None or set(weighing) != {"g", "per", "by"}:
        raise FaultyRow(f"a weighing is {{g, per: AMOUNT WHAT, by}}, not {weighing!r}")
    return Fraction(found["amount"]), found["what"]


def _number(value: object) -> Fraction:
    """YAML numbers come as floats; their shortest decimal is what the row says."""
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise FaultyRow(f"{value!r} is no number")
    return Fraction(str(value))


def _check_keys(row: Row) -> None:
    strange = {
        "keys": set(row) - KEYS,
        "allergens": {*row.get("allergens", ()), *row.get("often", ())} - set(ALLERGENS),
        "cautions": set(row.get("cautions", ())) - CAUTIONS,
        "regions": {each for each in row.get("labels", {}) if not _REGION.fullmatch(each)},
        "composition": set(row.get("composition", {}))
        - {"water", "fat", "sugar", "salt", "sodium", "by", "salt_by"},
    }
    faults = {kind: sorted(words) for kind, words in strange.items() if words}
    if faults or not isinstance(row.get("name"), str) or isinstance(row.get("ask", []), str):
        raise FaultyRow(f"{row.get('name')!r}: {faults or 'a name is text, and ask is a list'}")
