"""`tinleaf cards`: recipe cards of a selection of bakes, several on a sheet."""

import argparse

from generator.cli.folder import write_for_maker
from generator.cli.options import add_content, add_day, content_of, pdf_file, whole
from generator.cli.selection import add_selection, select
from generator.cli.terminal import say

SIZES = ("4x6", "5x7", "a6", "a5")
PAPERS = ("letter", "a4")
SUMMARY = "recipe cards of any selection of bakes, several on a sheet"
TEXT = """\
Lays recipe cards on sheets, as many as fit, with marks to cut at. Every page of fronts is followed
by that of their backs, in the order that a sheet shows when it is turned over its long edge; a card
of one side has an empty back. A recipe that takes more than two sides goes on on further cards, and
each says which it is. `make` lays the same cards one on a page, beside the page of the recipe.

SELECTION is one word or several: the name of a file in recipes/, kind:NAME, or all. A kind and
all hold what is published; a bake that is named is taken, published or not.
"""
EXAMPLES = """\
examples:
  tinleaf cards all                                 output/desk/cards/all-4x6.pdf
  tinleaf cards kind:bread --size 5x7 --paper letter
  tinleaf cards tall-tea-brack --copies 4           four of each card, for giving away
  tinleaf cards all --output cards.pdf              another place

exit: 0 laid out, 1 errors or nothing of that name, 2 a mistake on the command line
"""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    add_selection(parser)
    parser.add_argument(
        "--size", choices=SIZES, help="4x6 or 5x7 in, A6 or A5; without it 4x6 on letter and A6 on A4"
    )
    parser.add_argument("--paper", choices=PAPERS, help="letter or a4; without it the site's")
    parser.add_argument("--copies", metavar="N", type=whole, default=1, help="so many of each card")
    parser.add_argument("--output", metavar="FILE.pdf", type=pdf_file, help="where to write the cards")
    add_content(parser, positional=False)
    add_day(parser)


def run(parser: argparse.ArgumentParser, options: argparse.Namespace) -> int:
    content = content_of(parser, options)
    if options.copies > 100:
        parser.error("argument --copies: from 1 to 100")
    from generator.pipeline import check_folder

    result = check_folder(content, day=options.day)
    names = select(result, options, content, what="the cards")
    if names is None:
        return 1
    from generator.asked.booklet import file_name, subject_of
    from generator.asked.card_sheets import lay_cards

    made = lay_cards(
        result,
        names,
        size=options.size or "",
        paper=options.paper,
        copies=options.copies,
        subject=subject_of(options.selection, len(names)),
    )
    for words in made.told:
        say(words)
    place = f"desk/cards/{file_name(options.selection, ending=f'-{made.size}.pdf')}"
    path = write_for_maker(content, place, made.content, wish=options.output)
    if path is None:
        return 1
    cards, sheets = made.cards, made.sheets
    print(f"{path.as_posix()}: {cards} card{_s(cards)} on {sheets} sheet{_s(sheets)} of {made.paper}")
    return 0


def _s(number: int) -> str:
    return "" if number == 1 else "s"
