"""`tinleaf book`: a selection of bakes as a booklet to print, or as an EPUB to read."""

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from generator.cli.folder import write_for_maker
from generator.cli.options import add_content, add_day, content_of
from generator.cli.selection import add_selection, select
from generator.cli.terminal import say

if TYPE_CHECKING:
    from generator.asked.booklet import Bound

SIZES = ("half", "a5", "letter", "a4")
SUMMARY = "a booklet of any selection of bakes, or an EPUB"
TEXT = """\
Binds a selection of bakes: cover, contents, a bake a spread, what must be known of allergens, an
index by ingredient and by tin. Each bake carries its cautions, its revision and its corrections.

SELECTION is one word or several: the name of a file in recipes/, kind:NAME, or all. A kind and
all hold what is published; a bake that is named is taken, published or not. Each bake stands in
the book once.

The booklet is a PDF whose pages come in fours. On half or A5 pages it is printed two on a sheet
(your printer calls that a booklet), folded and stapled. With --bleed it has crop marks and a
bleed for a printing house.
"""
EXAMPLES = """\
examples:
  tinleaf book all                                  output/desk/books/all.pdf
  tinleaf book kind:bread --title "Our bread"       a booklet under a title of its own
  tinleaf book tall-tea-brack kettle-boule --paper a5 --bleed
  tinleaf book all --epub --output bakes.epub       for a reading device

exit: 0 bound, 1 errors or nothing of that name, 2 a mistake on the command line
"""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    add_selection(parser)
    parser.add_argument("--epub", action="store_true", help="an EPUB instead of a PDF")
    parser.add_argument("--title", type=_title, help="instead of the title of the publication")
    parser.add_argument(
        "--paper", choices=SIZES, help="half (of letter), a5, letter or a4; without it half of the site's"
    )
    parser.add_argument("--bleed", action="store_true", help="crop marks and a bleed, for a printing house")
    parser.add_argument("--output", metavar="FILE", type=Path, help="where to write the book")
    add_content(parser, positional=False)
    add_day(parser)


def _title(text: str) -> str:
    title = " ".join(text.split())
    if not title or len(title) > 200:
        raise argparse.ArgumentTypeError("a title has 1 to 200 letters")
    return title


def run(parser: argparse.ArgumentParser, options: argparse.Namespace) -> int:
    _agree(parser, options)
    content = content_of(parser, options)
    from generator.asked.booklet import Wanted, bind, subject_of
    from generator.pipeline import check_folder

    result = check_folder(content, day=options.day)
    names = select(result, options, content, what="the book")
    if names is None:
        return 1
    wanted = Wanted(
        title=options.title or "", epub=options.epub, size=options.paper or "", bleed=options.bleed
    )
    subject = subject_of(options.selection, len(names))
    return _write(bind(result, names, wanted, subject=subject), options, content)


def _agree(parser: argparse.ArgumentParser, options: argparse.Namespace) -> None:
    """Ends the program with 2 where options do not go together."""
    if options.epub and (options.paper or options.bleed):
        parser.error("an EPUB has no paper: --paper and --bleed are for a PDF")
    ending = ".epub" if options.epub else ".pdf"
    if options.output is not None and options.output.suffix.casefold() != ending:
        hint = " (an EPUB needs --epub)" if options.output.suffix.casefold() == ".epub" else ""
        parser.error(f"argument --output: “{options.output}” does not end in {ending}{hint}")


def _write(bound: "Bound", options: argparse.Namespace, content: Path) -> int:
    from generator.asked.booklet import file_name

    for words in bound.told:
        say(words)
    if bound.refused:
        say(bound.refused)
        return 1
    name = file_name(options.selection, ending=".epub" if options.epub else ".pdf")
    path = write_for_maker(content, f"desk/books/{name}", bound.content, wish=options.output)
    if path is None:
        return 1
    print(f"{path.as_posix()}: {bound.bakes} bake{'' if bound.bakes == 1 else 's'}")
    return 0
