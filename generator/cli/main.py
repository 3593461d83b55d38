"""Reads the command line and hands it to the command that was named."""

import argparse
import os
import sys
from collections.abc import Mapping, Sequence
from importlib import import_module
from typing import NoReturn, Protocol

from generator.cli.exits import OUR_BUG, USAGE_MISTAKE, Parser
from generator.cli.terminal import prepare, say


class Command(Protocol):
    """What the module of a command holds: its words for `--help`, its options, and its work."""

    SUMMARY: str
    TEXT: str
    EXAMPLES: str

    def add_arguments(self, parser: argparse.ArgumentParser) -> None: ...

    def run(self, parser: argparse.ArgumentParser, options: argparse.Namespace) -> int: ...


COMMANDS: Mapping[str, str] = {
    "start": "lay a new content folder that works at once",
    "check": "proofread every file",
    "make": "check, then write the site, the cards, the tags and the descriptions",
    "view": "the publication and the kitchen desk in a browser on this machine",
    "show": "one recipe with every amount worked out, in any size",
    "describe": "the texts that go under a recipe's video",
    "baked": "record a bake day, sum it up, compare bakes",
    "bring": "turn an old description, page or table into recipe files",
    "correct": "puts an amount, a time or a pack's fact right, with the reason",
    "tags": "gift tags, for the people of a list or to fill in",
    "cards": "recipe cards of any selection of bakes, several on a sheet",
    "book": "a booklet of any selection of bakes, or an EPUB",
    "due": "which published copies are stale, and what to do",
    "posted": "mark a published copy as renewed",
}
"""Every command with the SUMMARY of its module, which is loaded only where the command is called."""

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
    given = tuple(sys.argv[1:] if words is None else words)
    called = next((each for each in given if not each.startswith("-")), "")
    command = load(called) if called in COMMANDS else None
    parser, parsers = _parsers({called: command} if command else {})
    options = parser.parse_args(given)
    if command is None:
        parser.print_help(sys.stderr)
        return USAGE_MISTAKE
    return command.run(parsers[called], options)


def load(name: str) -> Command:
    """The module of a command."""
    module: Command = import_module(f"generator.cli.{name}")
    return module


def _parsers(called: Mapping[str, Command]) -> tuple[Parser, dict[str, Parser]]:
    """A parser for every command; only those that are called know their options."""
    form = argparse.RawDescriptionHelpFormatter
    parser = Parser(
        prog="tinleaf", description=TEXT, epilog=EXAMPLES, formatter_class=form, allow_abbrev=False
    )
    parser.add_argument("--version", action=_Version, nargs=0, help="show the version and end")
    commands = parser.add_subparsers(dest="command", metavar="COMMAND", title="commands")
    parsers = {}
    for name, summary in COMMANDS.items():
        command = called.get(name)
        parsers[name] = commands.add_parser(
            name,
            help=summary,
            description=command.TEXT if command else "",
            epilog=command.EXAMPLES if command else "",
            formatter_class=form,
            allow_abbrev=False,
        )
        if command:
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
    from pathlib import Path

    from generator.cli.findings import show_findings
    from generator.render.template_fault import TemplateFault

    if not isinstance(error, TemplateFault):
        return 0
    show_findings((error.finding,), {error.finding.span.path: error.text}, content=Path())
    return 1


def _own_up(error: Exception) -> int:
    """A bug of ours: say so in two lines, with the place; the whole story where TINLEAF_TRACEBACK asks."""
    import traceback

    if os.environ.get("TINLEAF_TRACEBACK"):
        traceback.print_exception(error)
    place = traceback.extract_tb(error.__traceback__)[-1]
    where = f"{os.path.basename(place.filename)}:{place.lineno}"
    say(f"this is a fault of the program, not of your files: {type(error).__name__}: {error} ({where})")
    say("please report it; TINLEAF_TRACEBACK=1 shows where it happened")
    return OUR_BUG
