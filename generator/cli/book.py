"""`tinleaf book`: a selection of bakes as a booklet to print, or as an EPUB to read."""

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from generator.cli.options import add_content, add_day, content_of
from generator.cli.terminal import say

if TYPE_CHECKING:
    from generator.booklet import Bound
    from generator.pipeline import CheckResult

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
    parser.add_argument(
        "selection", metavar="SELECTION", nargs="+", type=_word, help="names of recipes, kind:NAME, or all"
    )
    parser.add_argument("--epub", action="store_true", help="an EPUB instead of a PDF")
    parser.add_argument("--title", type=_title, help="instead of the title of the publication")
    parser.add_argument(
        "--paper", choices=SIZES, help="half (of letter), a5, letter or a4; without it half of the site's"
    )
    parser.add_argument("--bleed", action="store_true", help="crop marks and a bleed, for a printing house")
    parser.add_argument("--output", metavar="FILE", type=Path, help="where to write the book")
    add_content(parser, positional=False)
    add_day(parser)


def _word(text: str) -> str:
    word = text.strip()
    if not word or word == "kind:":
        raise argparse.ArgumentTypeError("a selection is a name, kind:NAME or all")
    return word


def _title(text: str) -> str:
    title = " ".join(text.split())
    if not title or len(title) > 200:
        raise argparse.ArgumentTypeError("a title has 1 to 200 letters")
    return title


def run(parser: argparse.ArgumentParser, options: argparse.Namespace) -> int:
    _agree(parser, options)
    content = content_of(parser, options)
    from generator.booklet import Wanted, bind, choose, subject_of
    from generator.pipeline import check_folder

    result = check_folder(content, day=options.day)
    chosen = choose(result, options.selection)
    if not (_are_known(result, chosen.unknown) and _are_sound(result, chosen.names, options, content)):
        return 1
    wanted = Wanted(
        title=options.title or "", epub=options.epub, size=options.paper or "", bleed=options.bleed
    )
    subject = subject_of(options.selection, len(chosen.names))
    return _write(bind(result, chosen.names, wanted, subject=subject), options, content)


def _agree(parser: argparse.ArgumentParser, options: argparse.Namespace) -> None:
    """Ends the program with 2 where options do not go together."""
    if options.epub and (options.paper or options.bleed):
        parser.error("an EPUB has no paper: --paper and --bleed are for a PDF")
    ending = ".epub" if options.epub else ".pdf"
    if options.output is not None and options.output.suffix.casefold() != ending:
        hint = " (an EPUB needs --epub)" if options.output.suffix.casefold() == ".epub" else ""
        parser.error(f"argument --output: “{options.output}” does not end in {ending}{hint}")


def _are_known(result: "CheckResult", unknown: tuple[str, ...]) -> bool:
    """Whether every word names something; the nearest words where one does not. A faulty recipe is known."""
    from generator.booklet import words_to_choose
    from generator.diagnostics.diagnostic import did_you_mean

    words = words_to_choose(result)
    nothing = [each for each in unknown if f"recipes/{each}.md" not in result.texts]
    for word in nothing:
        near = did_you_mean(word, [each for each in words if _is_kind(each) == _is_kind(word)])
        told = near or (
            f"There is: {', '.join(words[:12])}." if len(words) > 1 else "There are no recipes yet."
        )
        say(f"nothing is called “{word}”. {told}")
    return not nothing


def _is_kind(word: str) -> bool:
    return word.startswith("kind:")


def _are_sound(
    result: "CheckResult", names: tuple[str, ...], options: argparse.Namespace, content: Path
) -> bool:
    """Whether nothing that the book stands on has an error; a kind and all stand on every recipe."""
    from generator.cli.recipe import is_showable, tell_why_not
    from generator.diagnostics.diagnostic import has_errors
    from generator.present.book import EVERYTHING, KIND

    if any(word == EVERYTHING or word.startswith(KIND) for word in options.selection):
        if has_errors(result.diagnostics):
            tell_why_not(result, "the book", content=content)
            return False
        return True
    for name in dict.fromkeys((*names, *options.selection)):
        if not is_showable(result, name, content=content):
            return False
        if name not in result.setting.book:
            tell_why_not(result, name, content=content)
            return False
    return True


def _write(bound: "Bound", options: argparse.Namespace, content: Path) -> int:
    from generator.booklet import file_name
    from generator.build.beside import write_beside, write_file
    from generator.cli.folder import output_folder
    from generator.render.output import Product

    for words in bound.told:
        say(words)
    if bound.refused:
        say(bound.refused)
        return 1
    name = file_name(options.selection, epub=options.epub)
    product = Product(path=f"desk/books/{name}", content=bound.content)
    if options.output is not None:
        path, reason = options.output, write_file(options.output, bound.content)
    else:
        root = output_folder(content, None)
        path, reason = root / product.path, write_beside(root, product, content=content)
    if reason:
        say(reason)
        return 1
    print(f"{path.as_posix()}: {bound.bakes} bake{'' if bound.bakes == 1 else 's'}")
    return 0
