"""`tinleaf bring`: an old description, page or table becomes recipe files."""

import argparse
import sys
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from generator.cli.options import add_content, add_day, content_of
from generator.cli.terminal import say
from generator.cli.view import port

if TYPE_CHECKING:
    from generator.asked.incoming import Arrival
    from generator.importer.model import Brought, PantryRow
    from generator.pipeline import CheckResult

SUMMARY = "turn an old description, page or table into recipe files"
TEXT = """\
Reads a text, Markdown, a saved web page or a CSV of name and text, and writes an unpublished
recipe file for each recipe in it. Every doubt stands as a “# ?” comment at its line; what found no
place is kept in the notes. A file that is there is never written over. Amounts are read back as
`check` reads them; an ingredient that nobody knows is set aside with a caution, never mapped to
another.
"""
EXAMPLES = """\
examples:
  tinleaf bring old/honey-loaf.txt             writes recipes/honey-loaf.md
  tinleaf bring old/honey-loaf.txt --dry-run   prints it
  tinleaf bring old/                           every text, page and table in a folder
  tinleaf bring page.html --as saturday-loaf   under another name
  tinleaf bring old.txt --review               source and result side by side, in the browser
  tinleaf bring old.txt --pantry               adds rows for unknown ingredients to pantry.yaml
  pbpaste | tinleaf bring -                    from another program, printed

exit: 0 brought in, 1 something could not be brought in, 2 a mistake on the command line
"""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="a file, a folder, or - for standard input")
    parser.add_argument("--as", dest="name", metavar="NAME", help="the name of the recipe file, without .md")
    parser.add_argument(
        "--dry-run", action="store_true", help="print what would be written, and write nothing"
    )
    parser.add_argument(
        "--pantry", action="store_true", help="also add a row to pantry.yaml for each unknown ingredient"
    )
    parser.add_argument(
        "--review", action="store_true", help="look every line over in the browser before anything is written"
    )
    parser.add_argument("--port", metavar="N", type=port, help="with --review: the port of the desk")
    add_content(parser, positional=False)
    add_day(parser)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Wish:
    name: str
    printed: bool
    pantry: bool
    content: Path


def run(parser: argparse.ArgumentParser, options: argparse.Namespace) -> int:
    content = content_of(parser, options)
    name: str = options.name or ""
    if name and not _is_name(name):
        parser.error(
            f"“{name}” cannot be the name of a file: lower-case letters, digits and single hyphens only"
        )
    given = Path(options.file)
    if options.file != "-" and not given.exists():
        parser.error(f"there is no file or folder {options.file}")
    if name and given.is_dir():
        parser.error("--as names one recipe; a folder may hold many")
    if options.review and (options.dry_run or options.file == "-"):
        parser.error("--review shows what is in a file or a folder; leave out --dry-run and -")
    if options.port is not None and not options.review:
        parser.error("--port goes with --review")
    from generator.pipeline import check_folder

    if options.review:
        return _review(parser, options, content, name)
    printed = options.dry_run or options.file == "-"
    wish = _Wish(name=name, printed=printed, pantry=options.pantry, content=content)
    result = check_folder(content, day=options.day)
    good = [_bring_file(each, result, wish, parser) for each in _files(options.file)]
    if not good:
        say(f"{options.file} holds nothing that can be read: texts, Markdown, HTML and CSV are")
    return 0 if good and all(good) else 1


def _review(parser: argparse.ArgumentParser, options: argparse.Namespace, content: Path, name: str) -> int:
    """Serves the desk with everything that was found waiting to be looked over."""
    from generator.asked.incoming import arrive, kitchen_of
    from generator.cli.view import serve
    from generator.pipeline import check_folder

    kitchen = kitchen_of(check_folder(content, day=options.day))
    arrivals = [arrive(each, _data(each), kitchen, named=name) for each in _files(options.file)]
    for each in arrivals:
        if each.refused is not None:
            say(f"{each.name}: {each.refused.message}. {each.refused.hint}".rstrip())
        for empty in each.empty:
            say(f"{empty}: no line with an ingredient and its amount was found")
    brought = tuple(recipe for each in arrivals for recipe in each.recipes)
    if name and len(brought) > 1:
        parser.error(f"--as names one recipe; {options.file} holds {len(brought)}")
    options.lan = False
    return serve(content, options, brought) if brought else 1


def _is_name(name: str) -> bool:
    from generator.source.names import check_name

    return not any(True for _ in check_name(f"recipes/{name}.md", name, "recipes"))


def _files(given: str) -> list[str]:
    if given == "-" or not Path(given).is_dir():
        return [given]
    from generator.asked.incoming import files_in

    taken, passed = files_in(Path(given))
    for each in passed:
        say(f"{each} is passed over: it is no text, page or table")
    return [str(each) for each in taken]


def _data(given: str) -> bytes:
    """A little more than the limit, so that what is too large is known to be."""
    from generator.importer.files.sources import MOST_BYTES

    if given == "-":
        return sys.stdin.buffer.read(MOST_BYTES + 1)
    with open(given, "rb") as file:
        return file.read(MOST_BYTES + 1)


def _bring_file(given: str, result: "CheckResult", wish: _Wish, parser: argparse.ArgumentParser) -> bool:
    from generator.asked.incoming import arrive, kitchen_of

    shown = "standard input" if given == "-" else given
    arrival = arrive(shown, _data(given), kitchen_of(result), named=wish.name)
    if arrival.refused is not None:
        say(f"{shown}: {arrival.refused.message}. {arrival.refused.hint}".rstrip())
        return False
    for name in arrival.empty:
        say(f"{name}: no line with an ingredient and its amount was found; nothing is written")
    if wish.name and len(arrival.recipes) > 1:
        parser.error(f"--as names one recipe; {shown} holds {len(arrival.recipes)}")
    good = [_bring_one(each, result, wish, arrival) for each in arrival.recipes]
    return bool(good) and all(good) and not arrival.empty


def _bring_one(brought: "Brought", result: "CheckResult", wish: _Wish, arrival: "Arrival") -> bool:
    from generator.asked.incoming import is_accepted

    rows, pantry = brought.rows, None
    if wish.pantry and rows:
        brought, pantry = _with_pantry(brought, result, wish, arrival)
    _tell(brought, rows, wish)
    if wish.printed:
        print(brought.text, end="")
        return is_accepted(brought)
    if not is_accepted(brought):
        _tell_wrong(brought, wish)
        return False
    return _write(brought, pantry, wish)


def _with_pantry(
    brought: "Brought", result: "CheckResult", wish: _Wish, arrival: "Arrival"
) -> tuple["Brought", str]:
    """The recipe read once more, with the rows in the pantry."""
    from generator.asked.incoming import stocked
    from generator.importer.bring import bring
    from generator.importer.incoming_text import Source

    kitchen, pantry = stocked(result, brought.rows)
    lines = tuple(dict.fromkeys(each.line for each in brought.source))
    again = bring(
        Source(name=brought.source_name, stem=brought.name, lines=lines), kitchen, named=brought.name
    )
    return again or brought, pantry


def _write(brought: "Brought", pantry: str | None, wish: _Wish) -> bool:
    from generator.asked.incoming import write_brought
    from generator.cli.findings import show_findings
    from generator.cli.folder import prefix_of

    path = f"{prefix_of(wish.content)}recipes/{brought.name}.md"
    if (wish.content / "recipes" / f"{brought.name}.md").exists():
        say(f"{path} is there already and is not written over; name another with --as NAME")
        return False
    found = write_brought(wish.content, brought, pantry=pantry)
    if found:
        show_findings(found, {}, content=wish.content)
        return False
    print(path)
    return True


def _tell(brought: "Brought", rows: tuple["PantryRow", ...], wish: _Wish) -> None:
    """The sum of it on standard error: what was read, how surely, what is asked, what was left out."""
    from generator.asked.incoming import doubts_of, source_text
    from generator.cli.brought_words import summary_of
    from generator.cli.terminal import has_colour
    from generator.diagnostics.text import as_text

    print(summary_of(brought), file=sys.stderr)
    texts = {brought.source_name: source_text(brought)}
    doubts = as_text(doubts_of(brought), texts, colour=has_colour(sys.stderr))
    print(doubts, end="", file=sys.stderr)
    if rows:
        from generator.importer.pantry_text import row_text

        told = (
            "added to pantry.yaml"
            if wish.pantry and not wish.printed
            else "for pantry.yaml (--pantry adds them)"
        )
        print(f"  {told}:", file=sys.stderr)
        for row in rows:
            print("\n".join(f"    {line}" for line in row_text(row).splitlines()), file=sys.stderr)


def _tell_wrong(brought: "Brought", wish: _Wish) -> None:
    from generator.cli.findings import show_findings

    show_findings(brought.wrong, {f"recipes/{brought.name}.md": brought.text}, content=wish.content)
    more = " Nothing in it is known: try --pantry." if not any(each.known for each in brought.lines) else ""
    say(f"{brought.source_name} is not written, for `check` would not take it.{more} See it with --dry-run")
