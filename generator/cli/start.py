"""`tinleaf start`: lays a new, working content folder."""

import argparse
from collections.abc import Iterator
from datetime import UTC, datetime
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path

from generator.cli.options import USAGE_MISTAKE, day
from generator.cli.terminal import say

SUMMARY = "lay a new content folder that works at once"
TEXT = """\
Lays a small content folder: the settings, a pantry, one recipe, one journal post, an about page
and a picture. It passes `check` as it is; change the words to your own. DIR must be new or empty.
"""
EXAMPLES = """\
examples:
  tinleaf start my-baking
  tinleaf make my-baking

exit: 0 laid, 2 the folder is not empty, or a mistake on the command line
"""

STARTER_DAY = "2026-01-01"
"""Stands in the starter's files where the day belongs on which the folder is laid."""
IGNORED = ".gitignore"
LEFT_ALONE = frozenset({".git", ".DS_Store"})


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("folder", metavar="DIR", type=Path, help="the folder to lay, new or empty")
    parser.add_argument(
        "--day", metavar="DATE", type=day, help="the date of the first recipe, as 2026-09-12 (default: today)"
    )


def run(parser: argparse.ArgumentParser, options: argparse.Namespace) -> int:
    folder: Path = options.folder
    if folder.exists() and not folder.is_dir():
        say(f"{folder} is a file, not a folder")
        return USAGE_MISTAKE
    if folder.is_dir() and any(each.name not in LEFT_ALONE for each in folder.iterdir()):
        say(f"{folder} is not empty; nothing was written. Name a new folder")
        return USAGE_MISTAKE
    # UTC is the starter's zone: a local date could be tomorrow there, and the recipe not yet published.
    today = (options.day or datetime.now(UTC).date()).isoformat()
    for path, content in _starter(files("generator.cli") / "starter"):
        target = folder / path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(content.replace(STARTER_DAY.encode(), today.encode()))
    print(f"{folder.as_posix()}/ is laid. Now try:\n\n  tinleaf check {folder}\n  tinleaf make {folder}")
    return 0


def _starter(place: Traversable, above: str = "") -> Iterator[tuple[str, bytes]]:
    """The files of the starter: path in the content folder, and content."""
    for each in sorted(place.iterdir(), key=lambda item: item.name):
        # A real .gitignore would work on this project's own files too.
        name = IGNORED if each.name == "gitignore.txt" else each.name
        if each.is_dir():
            yield from _starter(each, f"{above}{name}/")
        else:
            yield f"{above}{name}", each.read_bytes()
