"""`tinleaf check`: proofreads every file of a content folder."""

import argparse
import json
import sys

from generator.cli.options import add_content, add_day, content_of

SUMMARY = "proofread every file"
TEXT = """\
Proofreads every file and tells all mistakes at once: where, what, and what to type instead.
Each reads  path:line:column: severity[CODE] message  with the line itself and a hint below.
Nothing is written. A warning asks you to look; an error keeps `make` from writing.
"""
EXAMPLES = """\
examples:
  tinleaf check                         the content folder you are in, or content/
  tinleaf check my-baking               another one
  tinleaf check --format json           for an editor or a script: a list of objects; the paths
                                        in it are relative to the content folder
  tinleaf check --day 2026-12-24        as if it were that day

exit: 0 no errors (there may be warnings), 1 errors, 2 a mistake on the command line
"""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    add_content(parser, positional=True)
    add_day(parser)
    parser.add_argument("--format", choices=("text", "json"), default="text", help="default: text")


def run(parser: argparse.ArgumentParser, options: argparse.Namespace) -> int:
    content = content_of(parser, options)
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
