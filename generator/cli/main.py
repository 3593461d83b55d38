"""Reads the command line and hands it to the command that was named."""

import argparse
import os
import sys
import traceback
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import NoReturn, Protocol

from generator.cli import (
    baked,
    book,
    bring,
    cards,
    check,
    correct,
    describe,
    due,
    make,
    posted,
    show,
    start,
    tags,
    view,
)
from generator.cli.options import OUR_BUG, USAGE_MISTAKE, Parser
from generator.cli.terminal import prepare, say


class Command(Protocol):
    """What the module of a command holds: its words for `--help`, its options, and its work."""

    SUMMARY: str
    TEXT: str
    EXAMPLES: str

    def add_arguments(self, parser: argparse.ArgumentParser) -> None: ...

    def run(self, parser: argparse.ArgumentParser, options: argparse.Namespace) -> int: ...


COMMANDS: Mapping[str, Command] = {
    "start": start,
    "check": check,
    "make": make,
    "view": view,
    "show": show,
    "describe": describe,
    "baked": baked,
    "bring": bring,
    "correct": correct,
    "tags": tags,
    "cards": cards,
    "book": book,
    "due": due,
    "posted": posted,
}

TEXT = """\
Tinleaf turns one recipe file into a web page, printable cards, gift tags and the text under a video.
Every number in them is computed once, from that file.
"""
EXAMPLES = """\
a first quarter of an hour:
  tinleaf start my-baking         lays a small content folder that works
  tinleaf make my-baking          writes output/: open output/site/index.html
  (edit my-baking/recipes/saturday-tin-loaf.md)
  tinleaf check my-baking         tells every mistake, and what to type instead

`tinleaf COMMAND --help` explains one command, with examples.
"""
CUT_OFF = 130
PIPE_CLOSED = 141


def run() -> NoReturn:
    """The command `tinleaf`."""
    sys.exit(main())


def main(words: Sequence[str] | None = None) -> int:
    """Runs one command and returns its exit. No mistake of the maker comes out as a traceback."""
    prepare(sys.stdout, sys.stderr)
    try:
        code = _dispatch(words)
        sys.stdout.flush()
    except BrokenPipeError:
        # Whoever read our output has seen enough. Python must not try to write the rest at its exit.
        os.dup2(os.open(os.devnull, os.O_WRONLY), 1)
        return PIPE_CLOSED
    except KeyboardInterrupt:
        return CUT_OFF
    except OSError as error:
        say(f"{error.filename or 'the disk'}: {error.strerror or error}")
        return 1
    except Exception as error:
        return _tell(error) or _own_up(error)
    return code


def _dispatch(words: Sequence[str] | None) -> int:
    parser, parsers = _parsers()
    options = parser.parse_args(words)
    command: str | None = options.command
    if command is None:
        parser.print_help(sys.stderr)
        return USAGE_MISTAKE
    return COMMANDS[command].run(parsers[command], options)


def _parsers() -> tuple[Parser, dict[str, Parser]]:
    form = argparse.RawDescriptionHelpFormatter
    parser = Parser(
        prog="tinleaf", description=TEXT, epilog=EXAMPLES, formatter_class=form, allow_abbrev=False
    )
    parser.add_argument("--version", action=_Version, nargs=0, help="show the version and end")
    commands = parser.add_subparsers(dest="command", metavar="COMMAND", title="commands")
    parsers = {}
    for name, command in COMMANDS.items():
        parsers[name] = commands.add_parser(
            name,
            help=command.SUMMARY,
            description=command.TEXT,
            epilog=command.EXAMPLES,
            formatter_class=form,
            allow_abbrev=False,
        )
        command.add_arguments(parsers[name])
    return parser, parsers


class _Version(argparse.Action):
    """Looked up only when it is asked for: reading the package's own description takes time."""

    def __call__(self, parser: argparse.ArgumentParser, *_: object) -> NoReturn:
        from importlib.metadata import version

        print(f"{parser.prog} {version('tinleaf')}")
        parser.exit()


def _tell(error: Exception) -> int:
    """1 after a template that cannot be filled was told, 0 for anything else."""
    # The engine of templates is loaded where one was filled, and nowhere else.
    if "generator.render.template_fault" not in sys.modules:
        return 0
    from generator.cli.findings import show_findings
    from generator.render.template_fault import TemplateFault

    if not isinstance(error, TemplateFault):
        return 0
    show_findings((error.finding,), {error.finding.span.path: error.text}, content=Path())
    return 1


def _own_up(error: Exception) -> int:
    """A bug of ours: say so in two lines, with the place; the whole story where TINLEAF_TRACEBACK asks."""
    if os.environ.get("TINLEAF_TRACEBACK"):
        traceback.print_exception(error)
    place = traceback.extract_tb(error.__traceback__)[-1]
    where = f"{os.path.basename(place.filename)}:{place.lineno}"
    say(f"this is a fault of the program, not of your files: {type(error).__name__}: {error} ({where})")
    say("please report it; TINLEAF_TRACEBACK=1 shows where it happened")
    return OUR_BUG
