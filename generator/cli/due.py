"""`tinleaf due`: which published copies no longer say what the recipes say."""

import argparse
import json
from typing import TYPE_CHECKING

from generator.cli.options import add_content, add_day, content_of
from generator.cli.terminal import say

if TYPE_CHECKING:
    from generator.records.due import Stale, Unmarked

SUMMARY = "which published copies are stale, and what to do"
TEXT = """\
Compares every copy that went out (pages, descriptions, comments, cards, tags …) with what its
recipe says today, and lists the stale ones: why, and what to do about each. The most harmful come
first: allergens, then cautions, then amounts, temperatures and times, then words.

Below them stand the places that one would expect and that were never marked; they do not change
the exit. `tinleaf posted` marks a copy.
"""
EXAMPLES = """\
examples:
  tinleaf due
  tinleaf due --format json       for a script: an object with “due” and “unmarked”

exit: 0 nothing is stale, 1 something is, or could not be compared, 2 a mistake on the command line
"""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    add_content(parser, positional=False)
    add_day(parser)
    parser.add_argument("--format", choices=("text", "json"), default="text", help="default: text")


def run(parser: argparse.ArgumentParser, options: argparse.Namespace) -> int:
    content = content_of(parser, options)
    from generator.cli.findings import show_findings
    from generator.diagnostics.diagnostic import Severity
    from generator.pipeline import check_folder
    from generator.records.due import not_compared, stale_copies, unmarked

    result = check_folder(content, day=options.day)
    unread, stale = not_compared(result), stale_copies(result)
    errors = [each for each in result.diagnostics if each.severity is Severity.ERROR]
    show_findings(errors, result.texts, content=content)
    for name in unread:
        say(f"the copies of {name} cannot be compared: the recipe has errors, or is gone")
    if options.format == "json":
        print(json.dumps(_plain(stale, unmarked(result)), ensure_ascii=False, indent=1))
    else:
        print(_text(stale, unmarked(result), day=result.setting.day.isoformat()))
    return 1 if stale or unread or errors else 0


def _plain(stale: "tuple[Stale, ...]", never: "tuple[Unmarked, ...]") -> dict[str, object]:
    return {
        "due": [
            {
                "recipe": each.copy.recipe,
                "place": each.copy.place,
                "to": each.copy.to or None,
                "revision": each.copy.revision,
                "on": each.copy.on.isoformat(),
                "now": each.now,
                "harm": each.harm.name.lower(),
                "why": list(each.why),
                "do": list(each.do),
            }
            for each in stale
        ],
        "unmarked": [{"recipe": each.recipe, "place": each.place} for each in never],
    }


def _text(stale: "tuple[Stale, ...]", never: "tuple[Unmarked, ...]", *, day: str) -> str:
    count = {0: "no copy is stale", 1: "1 copy is stale"}.get(len(stale), f"{len(stale)} copies are stale")
    blocks = [f"{day}: {count}", *(_stale(each) for each in stale)]
    if never:
        places = "\n".join(f"  {each.recipe}: {each.place}" for each in never)
        blocks.append(f"Never marked (tinleaf posted RECIPE PLACE, once it is there):\n{places}")
    return "\n\n".join(blocks)


def _stale(each: "Stale") -> str:
    copy = each.copy
    now = f", now {each.now}" if copy.revision != each.now else ""
    carries = f"revision {copy.revision} since {copy.on.isoformat()}{now}"
    if copy.revision == each.now and each.is_changed:
        carries = f"revision {copy.revision} since {copy.on.isoformat()}, changed without a number"
    to = f", given to {copy.to}" if copy.to else ""
    head = f"{each.harm.name}  {copy.recipe}: {copy.place}{to} ({carries})"
    return "\n".join((head, *(f"  {words}" for words in each.why), *(f"  - {step}" for step in each.do)))
