"""What a make remembers for the next one, and whether the next one has anything to do.

`same_as_last` imports no parser, no template engine and no PDF library: it looks at sizes and times alone.
"""

import os
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime
from pathlib import Path
from zoneinfo import ZoneInfo

from generator.build.cache import Cache
from generator.build.packing import digest, packed, pressed, unpressed
from generator.build.program import program_stamp
from generator.build.snapshot import Snapshot, content_mark, snapshot_of
from generator.diagnostics.diagnostic import Diagnostics


@dataclass(frozen=True, slots=True, kw_only=True)
class Last:
    """The last make of a content folder into an output folder, small enough to be read in a moment.

    `doubtful` holds the marks of files that were so young that their times may not show a later change.
    `texts` are those that the findings are shown in.
    """

    program: str
    day: date
    zone: str
    content: str
    doubtful: Mapping[str, str]
    output: str
    files: int
    diagnostics: Diagnostics
    texts: Mapping[str, str]


def day_of(last: Last, day: date | None) -> date:
    return day or datetime.now(ZoneInfo(last.zone)).date()


def same_as_last(content: Path, output: Path, *, day: date | None, cache: Cache) -> Last | None:
    """The last make, where nothing that it read or wrote has changed since; None where it must be done again."""
    last = recalled(cache, "last", content, output)
    if not isinstance(last, Last) or day_of(last, day) != last.day or last.program != program_stamp():
        return None
    if content_snapshot(content).mark != last.content or snapshot_of(output).mark != last.output:
        return None
    if any(content_mark(content / path) != mark for path, mark in last.doubtful.items()):
        return None
    return last


def content_snapshot(root: Path) -> Snapshot:
    """All that a make may read of a content folder; what begins with a dot it never reads."""
    return snapshot_of(root)


def recalled(cache: Cache, what: str, content: Path, output: Path) -> object:
    """What was remembered of these two folders; None where nothing was, or nothing that can be read."""
    found = cache.get(_key(what, content, output))
    if found is None:
        return None
    try:
        return unpressed(found)
    except Exception:
        # Remembered by another version of the program: as good as nothing.
        return None


def remember(cache: Cache, what: str, content: Path, output: Path, value: object) -> None:
    cache.put(_key(what, content, output), pressed(packed(value)))


def _key(what: str, content: Path, output: Path) -> str:
    return digest("memory, in pieces", what, os.path.realpath(content), os.path.realpath(output))
