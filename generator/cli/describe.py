"""`tinleaf describe`: the block of text that goes under a recipe's video."""

import argparse

from generator.cli.options import add_content, add_day, content_of

SUMMARY = "the block of text under the video"
TEXT = """\
Prints the block that goes under a recipe's video: the dish and its link first, ingredients, a
short method, allergens, links, chapters, credits; plain text inside the limit of site.yaml. It is
the same text as desk/RECIPE/description.txt of the output.
"""
EXAMPLES = """\
examples:
  tinleaf describe honey-oat-braid
  tinleaf describe honey-oat-braid > under-the-video.txt

exit: 0 printed, 1 no such recipe or an error in it, 2 a mistake on the command line
"""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("recipe", metavar="RECIPE", help="the name of a file in recipes/, without .md")
    add_content(parser, positional=False)
    add_day(parser)


def run(parser: argparse.ArgumentParser, options: argparse.Namespace) -> int:
    content = content_of(parser, options)
    from generator.cli.recipe import is_showable, tell_why_not
    from generator.pipeline import check_folder, describe_text

    result = check_folder(content, day=options.day)
    if not is_showable(result, options.recipe, content=content):
        return 1
    text = describe_text(result, options.recipe)
    if not text:
        tell_why_not(result, options.recipe, content=content)
        return 1
    print(text.rstrip("\n"))
    return 0
