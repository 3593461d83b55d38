"""`tinleaf show`: one recipe, every amount worked out, in the terminal or as data."""

import argparse
from typing import TYPE_CHECKING

from generator.cli.height import height
from generator.cli.options import add_content, add_day, content_of, positive, weight, whole
from generator.cli.terminal import say

if TYPE_CHECKING:
    from fractions import Fraction

    from generator.formula.wish import Wish

SUMMARY = "one recipe with every amount worked out, in any size"
TEXT = """\
Shows one recipe as Tinleaf understands it: every line in grams and in cups, baker's percentages,
hydration, salt, times, allergens. RECIPE is the name of its file without .md.

One of the sizes below scales it. Pinches stay pinches; times and temperatures do not scale, and
the output says when to start looking.

--revision shows the recipe as it was, with what it is rebuilt from; --changes tells what each
revision changed and what that did to hydration and dough weight, or with --revision N all that
changed since then.
"""
EXAMPLES = """\
examples:
  tinleaf show honey-oat-braid
  tinleaf show honey-oat-braid --times 1 1/2    half as much again
  tinleaf show honey-oat-braid --flour 600 g    for so much flour
  tinleaf show honey-oat-braid --dough 1.2 kg   for so much dough
  tinleaf show honey-oat-braid --portions 20
  tinleaf show honey-oat-braid --tin round 20 cm
  tinleaf show honey-oat-braid --altitude 5000 ft
  tinleaf show honey-oat-braid --format json    exact, unrounded: what recipe.json holds
  tinleaf show honey-oat-braid --revision 1     as it was before it was corrected
  tinleaf show honey-oat-braid --changes        what each correction changed

exit: 0 shown, 1 no such recipe, revision or size, or errors in it, 2 a mistake on the command line
"""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("recipe", metavar="RECIPE", help="the name of a file in recipes/, without .md")
    sizes = parser.add_argument_group("sizes", "one at a time")
    sizes.add_argument("--times", metavar="N", nargs="+", help="a number: 2, 1/2, 1 1/2")
    sizes.add_argument("--flour", metavar="W", nargs="+", help="the weight of all flour: 600 g")
    sizes.add_argument("--dough", metavar="W", nargs="+", help="the weight of the dough: 1.2 kg")
    sizes.add_argument("--portions", metavar="N", nargs="+", help="so many of what the recipe counts")
    sizes.add_argument("--tin", metavar="T", nargs="+", help="another tin: round 20 cm, loaf 9 x 5 x 3 in")
    sizes.add_argument(
        "--by", choices=("fill", "depth"), help="compare tins by volume or by area (default: what is known)"
    )
    parser.add_argument(
        "--altitude",
        metavar="H",
        nargs="+",
        help="two published tables for a kitchen at 5000 ft or 1600 m",
    )
    parser.add_argument("--revision", metavar="N", type=whole, help="an earlier revision, as it was")
    parser.add_argument(
        "--changes", action="store_true", help="what changed from revision to revision, or since --revision"
    )
    add_content(parser, positional=False)
    add_day(parser)
    parser.add_argument("--format", choices=("text", "json"), default="text", help="default: text")


def run(parser: argparse.ArgumentParser, options: argparse.Namespace) -> int:
    wish = _wish(parser, options)
    if options.changes and wish is not None:
        parser.error("--changes compares the recipe in its own size: leave the other size out")
    feet = _feet(parser, options)
    content = content_of(parser, options)
    from generator.cli.recipe import is_showable, tell_why_not
    from generator.pipeline import check_folder, show_json, show_text

    result = check_folder(content, day=options.day)
    if not is_showable(result, options.recipe, content=content):
        return 1
    if (options.changes or options.revision is not None) and options.recipe in result.setting.book:
        from generator.cli.show_revision import show_changes, show_revision

        if options.changes:
            return show_changes(result, options, content=content)
        return show_revision(result, options, content=content, wish=wish)
    if feet is not None:
        shown = show_text(result, options.recipe, wish=wish, feet=feet)
    else:
        show = show_json if options.format == "json" else show_text
        shown = show(result, options.recipe, wish=wish)
    if shown.refused:
        say(f"{options.recipe}: {shown.refused}")
        return 1
    if not shown.text:
        tell_why_not(result, options.recipe, content=content)
        return 1
    print(shown.text.rstrip("\n"))
    return 0


def _feet(parser: argparse.ArgumentParser, options: argparse.Namespace) -> "Fraction | None":
    """How high the kitchen lies. Ends the program with 2 where that is no height, or where nothing comes of it."""
    if not options.altitude:
        return None
    if options.format == "json" or options.changes or options.revision is not None:
        parser.error("--altitude goes with the recipe as text, as it stands today")
    try:
        return height(" ".join(options.altitude))
    except argparse.ArgumentTypeError as mistake:
        parser.error(f"argument --altitude: {mistake}")


def _wish(parser: argparse.ArgumentParser, options: argparse.Namespace) -> "Wish | None":
    """The size that was asked for. Ends the program with 2 where there are two, or one that is none."""
    given = {
        name: " ".join(words)
        for name in ("times", "flour", "dough", "portions", "tin")
        if (words := getattr(options, name))
    }
    if len(given) > 1:
        parser.error(f"one size at a time: {' and '.join(f'--{name}' for name in given)} cannot go together")
    if not given:
        return None
    from generator.formula.wish import Wish

    name, text = next(iter(given.items()))
    if name == "tin":
        return Wish(tin=text, by=options.by)
    try:
        number = weight(text) if name in ("flour", "dough") else positive(text)
    except argparse.ArgumentTypeError as mistake:
        parser.error(f"argument --{name}: {mistake}")
    wishes = {
        "times": Wish(times=number),
        "flour": Wish(flour=number),
        "dough": Wish(dough=number),
        "portions": Wish(portions=number),
    }
    return wishes[name]
