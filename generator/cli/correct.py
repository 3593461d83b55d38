"""`tinleaf correct`: one fact put right in the maker's own file, with the reason, and numbered in the ledger."""

import argparse
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from generator.cli.options import add_content, add_day, content_of, day
from generator.cli.terminal import say

if TYPE_CHECKING:
    from generator.amend.answer import Asked, Refused
    from generator.amend.plan import Plan
    from generator.amend.standing import Standing
    from generator.diagnostics.diagnostic import Diagnostics

SUMMARY = "puts an amount, a time or a pack's fact right, with the reason"
TEXT = """\
Changes exactly what you name in the file of RECIPE, and nothing else: the amount of a line, its
second measure, and a new entry under “corrections:”. It shows the difference, then writes it, and
notes the new revision in ledger.jsonl, also for every bake that is made with this one. Whatever
names the amount in braces follows by itself; plain text that still states it is pointed out.

WHAT is a line, as ITEM or PART/ITEM; or oven, core, bake, rise, knead and the like with the value
to change before the new one; or makes, portions, tin, weighs, bakes_off, keeps, flour, dough.
With --pantry, it is a row of pantry.yaml and one of its keys.
"""
EXAMPLES = """\
examples:
  tinleaf correct honey-oat-braid "bread flour" "430 g" --why "Too wet at two bakes."
  tinleaf correct honey-oat-braid dough/water "250 g" --why "…" --film "240 g at 1:25"
  tinleaf correct honey-oat-braid oven "350 F" "340 F" --why "…"
  tinleaf correct honey-oat-braid bake "20 min" "25 min" --why "…" --line 52
  tinleaf correct honey-oat-braid keeps "2 days in a paper bag" --why "…"
  tinleaf correct --pantry "bread flour" cup "130 g" --why "Weighed it again."
  tinleaf correct honey-oat-braid --undo             takes the last one back, as a new revision
  tinleaf correct honey-oat-braid --as-it-stands --why "…"   for a change made in an editor

exit: 0 corrected, 1 errors or nothing to correct, 2 a mistake on the command line
"""
_TRIES = 3
"""Two corrections at once: the one that comes second starts again from the file as it is then."""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("words", metavar="RECIPE WHAT [OLD] NEW", nargs="*", help="see above")
    parser.add_argument("--why", metavar="TEXT", help="the reason, as readers are told it")
    parser.add_argument(
        "--on",
        metavar="DATE",
        type=day,
        help="the day of the correction; without it, the day of --day or today",
    )
    parser.add_argument(
        "--from",
        dest="bake",
        metavar="BAKE",
        default="",
        help="the bake record that it comes from, or its day",
    )
    parser.add_argument(
        "--film", metavar="TEXT", default="", help="what the film still shows: “400 g at 1:25”"
    )
    several = parser.add_argument_group("where several are alike")
    several.add_argument("--line", metavar="N", type=_line, help="the one in line N of the file")
    several.add_argument("--all", dest="every", action="store_true", help="all of them")
    other = parser.add_argument_group("instead of one fact of a recipe")
    other.add_argument("--pantry", action="store_true", help="a fact of pantry.yaml: ROW KEY NEW")
    other.add_argument("--undo", action="store_true", help="take the last correction back")
    other.add_argument("--as-it-stands", action="store_true", help="record a change made in an editor")
    other.add_argument(
        "--change",
        metavar="TEXT",
        default="",
        help="with --as-it-stands: an entry “ITEM OLD -> NEW” for readers",
    )
    parser.add_argument(
        "--check-only", "--dry-run", dest="check_only", action="store_true", help="show, and write nothing"
    )
    add_content(parser, positional=False)
    add_day(parser)


def _line(text: str) -> int:
    if not text.isascii() or not text.isdigit() or not int(text[:9]) > 0:
        raise argparse.ArgumentTypeError(f"“{text}” is not the number of a line")
    return int(text[:9])


def run(parser: argparse.ArgumentParser, options: argparse.Namespace) -> int:
    _look_over(parser, options)
    content = content_of(parser, options)
    from generator.amend.standing import read_standing
    from generator.source.write import commit

    for tried in range(_TRIES):
        standing = read_standing(content, day=options.day)
        plan = _plan(parser, options, standing, content)
        if plan is None:
            return 1
        _show(plan, content)
        if options.check_only:
            print("nothing was written")
            return 0
        found = commit(content, plan.changes)
        if tried + 1 == _TRIES or not any(each.code == "W001" for each in found):
            return _end(plan, found, content)
        say("a file changed meanwhile; starting again from what it is now")
    raise AssertionError("the last try ends the command")


def _look_over(parser: argparse.ArgumentParser, options: argparse.Namespace) -> None:
    """Mistakes that can be told from the command line alone end the program with 2."""
    if options.undo and options.as_it_stands:
        parser.error("--undo and --as-it-stands cannot go together")
    if options.change and not options.as_it_stands:
        parser.error("--change goes with --as-it-stands")
    words, whole = len(options.words), options.undo or options.as_it_stands
    if whole and words != (0 if options.pantry else 1):
        parser.error("with --pantry there is no RECIPE" if options.pantry else "name one RECIPE")
    if not whole and options.pantry and words != 3:
        parser.error("name the ROW, the KEY and what it says NOW, each in quotes where it has spaces")
    if not whole and not options.pantry and words < 3:
        parser.error("name the RECIPE, WHAT is to be corrected, and its NEW amount")
    if options.why is not None and not options.why.strip():
        parser.error("--why is empty: say in a few words what was wrong, for your readers")
    if options.why is None and not options.undo:
        parser.error("--why is needed: say in a few words what was wrong, for your readers")


def _plan(
    parser: argparse.ArgumentParser, options: argparse.Namespace, standing: "Standing", content: Path
) -> "Plan | None":
    """What is to be written; None where that cannot be, which is told."""
    from generator.amend.answer import Refused
    from generator.cli.findings import show_findings
    from generator.cli.folder import prefix_of
    from generator.cli.recipe import is_showable, tell_why_not

    spoilt = standing.ledger_faults()
    if spoilt:
        show_findings(spoilt, standing.result.texts, content=content)
        say("nothing was changed: the ledger is to be mended first")
        return None
    recipe = "" if options.pantry else options.words[0]
    if recipe and not is_showable(standing.result, recipe, content=content):
        return None
    if recipe and recipe not in standing.result.setting.book:
        tell_why_not(standing.result, recipe, content=content)
        return None
    answer = _answer(options, standing, recipe, prefix_of(content))
    if not isinstance(answer, Refused):
        return answer
    _tell(answer, content)
    return None


def _answer(options: argparse.Namespace, standing: "Standing", recipe: str, prefix: str) -> "Plan | Refused":
    from generator.amend.answer import Refused
    from generator.amend.by_hand import plan_as_it_stands, plan_pantry_as_it_stands
    from generator.amend.plan import plan_correction
    from generator.amend.plan_pantry import plan_pantry
    from generator.amend.undo import plan_pantry_undo, plan_undo

    on: date = options.on or standing.result.setting.day
    why = " ".join((options.why or "").split())
    if options.undo and recipe:
        return plan_undo(standing, recipe, on=on, why=why, prefix=prefix)
    if options.undo:
        return plan_pantry_undo(standing, on=on, why=why, prefix=prefix)
    if options.as_it_stands and recipe:
        change = " ".join(options.change.split())
        return plan_as_it_stands(standing, recipe, on=on, why=why, change=change, prefix=prefix)
    if options.as_it_stands:
        return plan_pantry_as_it_stands(standing, on=on, why=why, prefix=prefix)
    asked = _asked(options, standing, recipe, on, why)
    if isinstance(asked, Refused):
        return asked
    return (
        plan_correction(standing, asked, prefix=prefix)
        if recipe
        else plan_pantry(standing, asked, prefix=prefix)
    )


def _asked(
    options: argparse.Namespace, standing: "Standing", recipe: str, on: date, why: str
) -> "Asked | Refused":
    from generator.amend.answer import Asked
    from generator.amend.bake import bake_named
    from generator.amend.words import sorted_out

    if not recipe:
        row, key, new = options.words
        return Asked(recipe="", what=row, key=key, new=new, why=why, on=on)
    bake = bake_named(standing.result, recipe, options.bake)
    if not isinstance(bake, str):
        return bake
    what, old, new = sorted_out(options.words[1:], standing.result.setting.book[recipe])
    return Asked(
        recipe=recipe,
        what=what,
        old=old,
        new=new,
        why=why,
        on=on,
        film=" ".join(options.film.split()),
        bake=bake,
        line=options.line,
        every=options.every,
    )


def _tell(refused: "Refused", content: Path) -> None:
    from generator.cli.findings import show_findings

    say(refused.message)
    if refused.hint:
        say(refused.hint)
    if refused.found:
        show_findings(refused.found, refused.texts, content=content)


def _show(plan: "Plan", content: Path) -> None:
    """The difference on standard output; what to look at besides on standard error."""
    from generator.cli.findings import show_findings

    if plan.difference:
        print(plan.difference, end="")
    show_findings(plan.found, plan.texts, content=content)
    for remark in plan.remarks:
        say(remark)


def _end(plan: "Plan", found: "Diagnostics", content: Path) -> int:
    from generator.cli.findings import show_findings
    from generator.diagnostics.diagnostic import has_errors

    show_findings(found, plan.texts, content=content)
    if has_errors(found):
        return 1
    print(plan.what)
    if not plan.revisions:
        print("no bake is another one by it")
    for each in plan.revisions:
        beside = (
            ""
            if each is plan.revisions[0] and each.cause not in ("component", "pantry")
            else f", because of {each.what}"
        )
        print(f"{each.recipe}: revision {each.number}{beside}")
    return 0
