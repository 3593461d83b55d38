"""`tinleaf check`: proofreads every file of a content folder."""

import argparse
import json
import shlex
import sys
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from generator.cli.options import add_content, add_day, content_of

if TYPE_CHECKING:
    from generator.pipeline import CheckResult
    from generator.proof.folder import Proved

SUMMARY = "proofread every file"
TEXT = """\
Proofreads every file and tells all mistakes at once: where, what, and what to type instead.
Each reads  path:line:column: severity[CODE] message  with the line itself and a hint below.
Nothing is written. A warning asks you to look; an error keeps `make` from writing.

With --built DIR it also reads an output folder back, the pages, the cards, the tags, the pictures
over a film, the descriptions and the data, and compares every amount, temperature, time and
allergen in them with your recipes. It names what differs, files that nothing explains, and files
that are missing.
"""
EXAMPLES = """\
examples:
  tinleaf check                         the content folder you are in, or content/
  tinleaf check my-baking               another one
  tinleaf check --format json           for an editor or a script: a list of objects; the paths
                                        in it are relative to the content folder
  tinleaf check --day 2026-12-24        as if it were that day
  tinleaf check --built output          is what was made, and perhaps uploaded, still what the
                                        recipes say?

exit: 0 no errors (there may be warnings), 1 errors, 2 a mistake on the command line
"""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    add_content(parser, positional=True)
    parser.add_argument(
        "--built", metavar="DIR", type=Path, help="an output folder to read back and compare with the recipes"
    )
    add_day(parser)
    parser.add_argument("--format", choices=("text", "json"), default="text", help="default: text")


def run(parser: argparse.ArgumentParser, options: argparse.Namespace) -> int:
    content = content_of(parser, options)
    if options.built is not None:
        return _built(parser, options, content)
    from generator.cli.findings import show_findings
    from generator.diagnostics.diagnostic import has_errors
    from generator.diagnostics.plain import as_objects
    from generator.diagnostics.text import summary
    from generator.pipeline import check_folder

    result = check_folder(content, day=options.day)
    if options.format == "json":
        print(json.dumps(as_objects(result.diagnostics), ensure_ascii=False, indent=1))
    else:
        show_findings(result.diagnostics, result.texts, content=content, stream=sys.stdout)
        print(f"{content.resolve().name}: {summary(result.diagnostics)}")
    return 1 if has_errors(result.diagnostics) else 0


def _built(parser: argparse.ArgumentParser, options: argparse.Namespace, content: Path) -> int:
    """Checks the content, then the output folder against it; what has errors cannot be compared."""
    from generator.diagnostics.diagnostic import has_errors
    from generator.pipeline import check_folder
    from generator.proof.folder import prove_folder, why_unreadable

    built: Path = options.built
    reason = why_unreadable(built)
    if reason:
        parser.error(reason)
    result = check_folder(content, day=options.day)
    sound = not has_errors(result.diagnostics)
    remedy = _remedy(options, content)
    proved = prove_folder(built, replace(result.expected, remedy=remedy)) if sound else None
    if options.format == "json":
        _print_objects(result, proved, content, built)
    else:
        _show(result, proved, content, built)
    return 1 if proved is None or has_errors(proved.diagnostics) else 0


def _print_objects(result: "CheckResult", proved: "Proved | None", content: Path, built: Path) -> None:
    """Both lists in one, each path as it can be opened from here."""
    from generator.cli.folder import prefix_of
    from generator.diagnostics.plain import as_objects

    found = as_objects(result.diagnostics, prefix=prefix_of(content))
    found += as_objects(proved.diagnostics, prefix=prefix_of(built)) if proved else []
    print(json.dumps(found, ensure_ascii=False, indent=1))


def _show(result: "CheckResult", proved: "Proved | None", content: Path, built: Path) -> None:
    from generator.cli.findings import show_findings
    from generator.diagnostics.text import summary

    show_findings(result.diagnostics, result.texts, content=content, stream=sys.stdout)
    print(f"{content.resolve().name}: {summary(result.diagnostics)}")
    if proved is None:
        print(f"{built.as_posix()}: not compared, because of the errors above")
        return
    show_findings(proved.diagnostics, proved.texts, content=built, stream=sys.stdout)
    if proved.diagnostics:
        print(f"{built.as_posix()}: {summary(proved.diagnostics)}")
    else:
        day = result.setting.day.isoformat()
        print(f"{built.as_posix()}: {proved.count} files agree with the recipes as of {day}")


def _remedy(options: argparse.Namespace, content: Path) -> str:
    """The command that makes this output from this content, to be typed as it stands."""
    words = ["tinleaf", "make"]
    words += [] if content == Path() else [content.as_posix()]
    words += ["--output", options.built.as_posix()]
    words += ["--day", options.day.isoformat()] if options.day else []
    return f"`{shlex.join(words)}` writes it anew."
