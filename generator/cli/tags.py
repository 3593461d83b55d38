"""`tinleaf tags`: gift tags of one bake, for the people of a list or to fill in by hand."""

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from generator.cli.folder import write_for_maker
from generator.cli.options import add_content, add_day, content_of, day, pdf_file
from generator.cli.terminal import say

if TYPE_CHECKING:
    from generator.asked.gifts import Printed
    from generator.source.recipients import Recipient

SIZES = ("ten", "a7", "card", "folded")
SUMMARY = "gift tags, for the people of a list or to fill in"
TEXT = """\
Prints the tags of one bake: ingredients and allergens by the rules of site.yaml, cautions, weight,
keeping and dates. They are taken from the newest record in bakes/: the packs it names, the day, the
weight. Without a record the tag says which packs it assumes, and its dates are left blank.

Sizes: ten (3.5 x 2 in), a7 (105 x 74 mm), card (3 x 5 in), folded (A7 with the list inside).
Letters never shrink below what the region asks. What does not fit in front goes to the back, the
list of ingredients first; allergens are told in front. What fits neither takes a larger tag, and
you are told which. Two sides are printed turned over the long edge.

NAMES.csv is a table with a heading row: to (needed), from, note; commas or semicolons, UTF-8.
"""
EXAMPLES = """\
examples:
  tinleaf tags honey-oat-braid                        a sheet to fill in by hand
  tinleaf tags honey-oat-braid --for private/names.csv
  tinleaf tags honey-oat-braid --size folded --bake 2026-12-20
  tinleaf tags honey-oat-braid --output tags.pdf      another place than
                                                      output/desk/honey-oat-braid/tags-for.pdf

exit: 0 printed, 1 errors or no such recipe, 2 a mistake on the command line
"""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("recipe", metavar="RECIPE", help="the name of a file in recipes/, without .md")
    parser.add_argument(
        "--for", dest="names", metavar="NAMES.csv", type=Path, help="a tag for each person on this list"
    )
    parser.add_argument(
        "--size",
        choices=SIZES,
        help="ten, a7, card or folded; without it ten, or the next larger one that holds the words",
    )
    parser.add_argument(
        "--bake", metavar="DATE", type=day, help="the bake record of this day instead of the newest"
    )
    parser.add_argument("--output", metavar="FILE.pdf", type=pdf_file, help="where to write the tags")
    add_content(parser, positional=False)
    add_day(parser)


def run(parser: argparse.ArgumentParser, options: argparse.Namespace) -> int:
    content = content_of(parser, options)
    if options.names is not None and not options.names.is_file():
        parser.error(f"there is no file {options.names}")
    from generator.cli.recipe import is_showable, tell_why_not
    from generator.pipeline import check_folder

    result = check_folder(content, day=options.day)
    if not is_showable(result, options.recipe, content=content):
        return 1
    if options.recipe not in result.setting.book or not _records_are_sound(result, content):
        tell_why_not(result, options.recipe, content=content)
        return 1
    people = _people(options.names)
    if people is None:
        return 1
    from generator.asked.gifts import person_of, print_tags

    wish = {"size": options.size or "", "on": options.bake}
    printed = print_tags(result, options.recipe, people=map(person_of, people), **wish)
    if printed.refused:
        say(printed.refused)
        return 1
    return _write(printed, options, content)


def _records_are_sound(result: object, content: Path) -> bool:
    from generator.diagnostics.diagnostic import Severity

    found = getattr(result, "diagnostics", ())
    return not any(each.severity is Severity.ERROR and each.span.path.startswith("bakes/") for each in found)


def _people(names: Path | None) -> "tuple[Recipient, ...] | None":
    """Everyone on the list; None where it has mistakes, which are told."""
    if names is None:
        return ()
    from generator.asked.gifts import unprintable_people
    from generator.cli.findings import show_findings
    from generator.diagnostics.diagnostic import has_errors
    from generator.source.recipients import read_recipients

    people, found, text = read_recipients(names.as_posix(), names.read_bytes())
    found = (*found, *unprintable_people(people))
    show_findings(found, {names.as_posix(): text}, content=Path())
    return None if has_errors(found) else people


def _write(printed: "Printed", options: argparse.Namespace, content: Path) -> int:
    for words in printed.told:
        say(words)
    place = f"desk/{options.recipe}/tags-for.pdf"
    path = write_for_maker(content, place, printed.content, wish=options.output)
    if path is None:
        return 1
    print(f"{path.as_posix()}{_counts(printed)}")
    return 0


def _counts(printed: "Printed") -> str:
    if not printed.tags:
        return ""
    tags, sheets = printed.tags, printed.sheets
    return f": {tags} tag{'' if tags == 1 else 's'} on {sheets} page{'' if sheets == 1 else 's'}"
