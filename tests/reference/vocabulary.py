"""The whole vocabulary of schema.org, read from the declarations that the package schema-dts publishes of it.

Each type is an `interface NameBase` (NameLeaf where it adds none) with the properties it adds and the types it
extends; each property names its permitted values. The file is read as text: what TypeScript would check is small
enough to be done here, and stricter, since there any string may stand for a person and any for a date.
"""

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from functools import cache
from pathlib import Path
from urllib.parse import urlsplit

DECLARATIONS = Path(__file__).parents[2] / "node_modules" / "schema-dts" / "dist" / "schema.d.ts"

_INTERFACE = re.compile(r"^interface (\w+)Base extends ([^{]+)\{\n(.*?)^\}", re.M | re.S)
# A type that adds no property extends the interfaces of others itself.
_LEAF = re.compile(r"^(?:export )?interface (\w+)Leaf extends ([^{]+) \{", re.M)
_PROPERTY = re.compile(r'(/\*\*(?:(?!\*/).)*\*/\s*)?"(\w+)"\?: SchemaValue<([^;"]+), "\2">;', re.S)
_MEMBER = re.compile(r'^export type (\w+) = ([^;]*"https://schema\.org/[^;]*);', re.M)
# ISO 8601: at least one component, T before hours, minutes and seconds.
_DURATION = re.compile(r"P(?=\d|T\d)(?:\d+D)?(?:T(?=\d)(?:\d+H)?(?:\d+M)?(?:\d+(?:\.\d+)?S)?)?|P\d+W")


@dataclass(frozen=True, slots=True, kw_only=True)
class Vocabulary:
    """`parents` and `ranges` by type, each with what it declares itself; `superseded` are (type, property)."""

    parents: Mapping[str, tuple[str, ...]]
    ranges: Mapping[str, Mapping[str, tuple[str, ...]]]
    superseded: frozenset[tuple[str, str]]
    members: Mapping[str, frozenset[str]]

    def above(self, kind: str) -> Iterator[str]:
        """The type and every type that it is a kind of."""
        yield kind
        for parent in self.parents[kind]:
            yield from self.above(parent)

    def faults(self, node: object, *, where: str = "") -> Iterator[str]:
        """All that the vocabulary has against a node and what is in it."""
        if not isinstance(node, dict):
            yield f"{where}: no node"
            return
        kind = node.get("@type")
        if kind not in self.parents:
            yield f"{where}: there is no type {kind}"
            return
        for key, value in node.items():
            if not key.startswith("@"):
                yield from self._property(str(kind), key, value, f"{where}/{kind}.{key}")

    def _property(self, kind: str, key: str, value: object, where: str) -> Iterator[str]:
        owner = next((each for each in self.above(kind) if key in self.ranges[each]), None)
        if owner is None:
            yield f"{where}: {kind} has no property {key}"
            return
        if (owner, key) in self.superseded:
            yield f"{where}: {key} is superseded"
        for each in value if isinstance(value, list) else [value]:
            yield from self._value(each, self.ranges[owner][key], where)

    def _value(self, value: object, allowed: tuple[str, ...], where: str) -> Iterator[str]:
        if isinstance(value, dict):
            if set(value) == {"@id"}:
                fits = "IdReference" in allowed and _is_address(value["@id"])
            else:
                yield from self.faults(value, where=where)
                kind = value.get("@type")
                fits = kind in self.parents and not set(self.above(str(kind))).isdisjoint(allowed)
        else:
            fits = any(self._is_plain(value, each) for each in allowed)
        if not fits:
            yield f"{where}: {value!r} is none of {', '.join(allowed)}"

    def _is_plain(self, value: object, kind: str) -> bool:
        """Whether a number or a text can be a value of a data type, or names a member of an enumeration."""
        if isinstance(value, bool):
            return kind == "Boolean"
        if isinstance(value, int):
            return kind in ("Integer", "Number")
        if isinstance(value, float):
            return kind == "Number"
        if not isinstance(value, str) or not value.strip():
            return False
        if kind in self.members:
            return value in self.members[kind]
        return kind in _PLAIN and _PLAIN[kind](value)


def _is_address(value: object) -> bool:
    parts = urlsplit(str(value))
    return parts.scheme in ("https", "http") and bool(parts.netloc) and " " not in str(value)


def _is_date(value: str) -> bool:
    try:
        return date.fromisoformat(value).isoformat() == value
    except ValueError:
        return False


def _is_moment(value: str) -> bool:
    """With its zone: a moment without one is another moment for every reader."""
    try:
        return datetime.fromisoformat(value).tzinfo is not None
    except ValueError:
        return False


_PLAIN: Mapping[str, Callable[[str], bool]] = {
    "Text": lambda value: True,
    "URL": _is_address,
    "Date": _is_date,
    "DateTime": _is_moment,
    "Duration": lambda value: _DURATION.fullmatch(value) is not None,
}


@cache
def vocabulary() -> Vocabulary:
    text = DECLARATIONS.read_text(encoding="utf-8")
    parents: dict[str, tuple[str, ...]] = {}
    ranges: dict[str, dict[str, tuple[str, ...]]] = {}
    superseded: set[tuple[str, str]] = set()
    for kind, above, body in _INTERFACE.findall(text):
        found = _PROPERTY.findall(body)
        parents[kind] = _extended(above)
        ranges[kind] = {key: tuple(map(str.strip, values.split("|"))) for _, key, values in found}
        superseded |= {(kind, key) for remark, key, _ in found if "@deprecated" in remark}
    for kind, above in _LEAF.findall(text):
        parents.setdefault(kind, _extended(above))
        ranges.setdefault(kind, {})
    members = {name: frozenset(re.findall(r'"([^"]+)"', listed)) for name, listed in _MEMBER.findall(text)}
    return Vocabulary(parents=parents, ranges=ranges, superseded=frozenset(superseded), members=members)


def _extended(above: str) -> tuple[str, ...]:
    return tuple(
        each.strip().removesuffix("Base") for each in above.split(",") if each.strip().endswith("Base")
    )
