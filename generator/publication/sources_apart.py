"""Files that speak of many things, told apart by what they speak of: a change reaches only what it concerns."""

import json
from collections.abc import Mapping
from pathlib import Path

from generator.build.packing import digest
from generator.source.document import Mapping as Keys
from generator.source.document import Node, Sequence, Text
from generator.source.read import read_mapping


def ledger_marks(path: Path) -> Mapping[str, str] | None:
    """A mark for each recipe of what the ledger says of it, under "" of all else; None where it cannot be read."""
    try:
        lines = path.read_bytes().splitlines()
    except FileNotFoundError:
        return {}
    except OSError:
        return None
    told: dict[str, list[bytes]] = {}
    for line in lines:
        told.setdefault(_recipe_of(line), []).append(line)
    return {name: digest(tuple(said)) for name, said in told.items()}


def _recipe_of(line: bytes) -> str:
    try:
        said = json.loads(line)
    except ValueError:
        return ""
    recipe = said.get("recipe") if isinstance(said, dict) else None
    return recipe if isinstance(recipe, str) else ""


def pantry_marks(path: Path) -> Mapping[str, str] | None:
    """A mark for each row of the pantry by its name, wherever it stands in the file; None where there is a mistake.

    Under "" stands what every row stands for: that decides which recipes use it at all.
    """
    try:
        data = path.read_bytes()
    except FileNotFoundError:
        return {}
    except OSError:
        return None
    keys, faults = read_mapping("pantry.yaml", data)
    if keys is None or faults:
        return None
    rows = dict(_row(key, node) for key, node in keys.entries)
    stands_for = tuple((key.value, _stands_for(node)) for key, node in keys.entries)
    return {**rows, "": digest(stands_for)}


def _stands_for(node: Node) -> object:
    named = node.get("is") if isinstance(node, Keys) else None
    return _bare(named) if named is not None else None


def _row(key: Text, node: Node) -> tuple[str, str]:
    return " ".join(key.value.split()), digest(_bare(node))


def _bare(node: Node) -> object:
    """What is written, without the places where it stands."""
    if isinstance(node, Keys):
        return tuple((key.value, _bare(value)) for key, value in node.entries)
    if isinstance(node, Sequence):
        return tuple(_bare(each) for each in node.items)
    return node.value
