"""The gentle notes by the names under which a maker accepts them, each with its code."""

from collections.abc import Mapping
from types import MappingProxyType

NOTE_CODES: Mapping[str, str] = MappingProxyType(
    {
        "sugar": "N001",
        "hot liquid": "N002",
        "salt": "N003",
        "hydration": "N004",
        "cinnamon": "N005",
        "batches": "N006",
    }
)
NOTE_NAMES = tuple(NOTE_CODES)
