"""`tinleaf show`: one recipe, every amount worked out, in the terminal or as data."""

import argparse

from generator.cli.options import add_content, add_day, content_of

SUMMARY = "one recipe with every amount worked out"
TEXT = """\
Shows one recipe as Tinleaf understands it: every line in grams and in cups, baker's percentages,
hydration, salt, times, allergens. RECIPE is the name of its file without .md.
"""
EXAMPLES = """\
examples:
  tinleaf show honey-oat-braid
  tinleaf show honey-oat-braid --format json    exact, unrounded: what recipe.json holds

exit: 0 shown, 1 no such recipe or an error in it, 2 a mistake on the command line
"""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("recipe", metavar="RECIPE", help="the name of a file in recipes/, without .md")
    add_content(parser, positional=False)
    add_day(parser)
    parser.add_argument("--format", choices=("text", "json"), default="text", help="default: text")


def run(parser: argparse.ArgumentParser, options: argparse.Namespace) -> int:
    content = content_of(parser, options)
    from generator.cli.recipe import is_showable, tell_why_not
    from generator.pipeline import check_folder, show_json, show_text

    result = check_folder(content, day=options.day)
    if not is_showable(result, options.recipe, content=content):
        return 1
    show = show_json if options.format == "json" else show_text
    text = show(result, options.recipe)
    if not text:
        tell_why_not(result, options.recipe, content=content)
        return 1
    print(text.rstrip("\n"))
    return 0
