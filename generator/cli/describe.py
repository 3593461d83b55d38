"""`tinleaf describe`: the block of text that goes under a recipe's video."""

import argparse

from generator.cli.options import add_content, add_day, content_of
from generator.cli.terminal import say

SUMMARY = "the block of text under the video"
TEXT = """\
Prints the block that goes under a recipe's video: the dish and its link first, ingredients, a
short method, allergens, links, chapters, credits; plain text inside the limit of site.yaml. It is
the same text as desk/RECIPE/description.txt of the output.

--correction prints instead the short text for a comment below the film: what was corrected, why,
what the film still shows, and the page; a change of allergens first.
"""
EXAMPLES = """\
examples:
  tinleaf describe honey-oat-braid
  tinleaf describe honey-oat-braid > under-the-video.txt
  tinleaf describe honey-oat-braid --correction     for a pinned comment

exit: 0 printed, 1 no such recipe or an error in it, 2 a mistake on the command line
"""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("recipe", metavar="RECIPE", help="the name of a file in recipes/, without .md")
    parser.add_argument(
        "--correction", action="store_true", help="the short text about what was corrected, for a comment"
    )
    add_content(parser, positional=False)
    add_day(parser)


def run(parser: argparse.ArgumentParser, options: argparse.Namespace) -> int:
    content = content_of(parser, options)
    from generator.cli.recipe import is_showable, tell_why_not
    from generator.pipeline import check_folder, describe_text
    from generator.render.description.correction import correction_note

    result = check_folder(content, day=options.day)
    if not is_showable(result, options.recipe, content=content):
        return 1
    text = describe_text(result, options.recipe)
    if not text:
        tell_why_not(result, options.recipe, content=content)
        return 1
    if options.correction:
        text = correction_note(result.views[options.recipe])
        if not text:
            say(f"nothing has been corrected in {options.recipe}")
            return 1
    print(text.rstrip("\n"))
    return 0
