"""`tinleaf baked`: records a bake day from the bench, sums it up, compares the bakes of a recipe."""

import argparse
import json
from pathlib import Path
from typing import TYPE_CHECKING

from generator.cli.options import add_content, add_day, content_of, day
from generator.cli.terminal import say

if TYPE_CHECKING:
    from generator.asked.baking import Baked, Outcome, Wanted
    from generator.pipeline import CheckResult

SUMMARY = "record a bake day, sum it up, compare bakes"
TEXT = """\
Opens the record of a bake day, bakes/DATE-RECIPE.yaml, and enters what you tell it: what went in
beside the recipe, what stayed over, weights, warmth, times. The record is a file of your own, to
edit as you like; every comment and every byte of it stays. Names and units are looked at before
anything is written. What you add is declared: the tags of that day name its allergens.

--done sums the day up and offers the correction as a command to copy. --compare lays all bakes
of the recipe side by side: what was added each time, mean and spread, by humidity and warmth.
"""
EXAMPLES = """\
examples:
  tinleaf baked honey-oat-braid                           opens today's record
  tinleaf baked honey-oat-braid --add "10 g bread flour, 5 min into kneading"
  tinleaf baked honey-oat-braid --add "2 tsp water" --room "24 C" --weather "damp, 70 %"
  tinleaf baked honey-oat-braid --left "20 g honey" --dough "930 g" --baked "812 g"
  tinleaf baked honey-oat-braid --packs "bread flour, bought candied peel" --time "rise 75 min"
  tinleaf baked honey-oat-braid --done                    --on 2026-11-08 for another day
  tinleaf baked honey-oat-braid --compare

exit: 0 well, 1 a mistake in what is to be entered or in the record, 2 a mistake on the command line
"""
_NOTES = (("note", "how it went; more than one note makes one text"), ("next", "what to do another time"))


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("recipe", metavar="RECIPE", help="the name of a file in recipes/, without .md")
    entries = parser.add_argument_group("entries, each as often as you like")
    entries.add_argument(
        "--add", metavar="TEXT", action="append", default=[], help="what went in beside the recipe"
    )
    entries.add_argument("--left", metavar="TEXT", action="append", default=[], help="what stayed over")
    entries.add_argument(
        "--packs", metavar="NAMES", action="append", default=[], help="packs opened today, with commas"
    )
    entries.add_argument(
        "--time", metavar="TEXT", action="append", default=[], help="how long a stage really took"
    )
    for name, words in _NOTES:
        entries.add_argument(f"--{name}", metavar="TEXT", action="append", default=[], help=words)
    once = parser.add_argument_group("entries, the last one counts")
    once.add_argument("--size", metavar="N", help="how many times the recipe, as in 2 or 1/2")
    once.add_argument("--room", metavar="TEXT", help="how warm the kitchen is")
    once.add_argument("--weather", metavar="TEXT", help="how damp; a percentage is used in --compare")
    once.add_argument("--dough", metavar="WEIGHT", help="what it weighs before baking")
    once.add_argument("--baked", metavar="WEIGHT", help="what it weighs after baking")
    asked = parser.add_mutually_exclusive_group()
    asked.add_argument("--done", action="store_true", help="sum the day up, with the correction to make")
    asked.add_argument("--compare", action="store_true", help="all bakes of the recipe side by side")
    parser.add_argument("--on", metavar="DATE", type=day, help="the bake day; without it --day, else today")
    parser.add_argument("--again", action="store_true", help="open a second record for one day")
    parser.add_argument("--format", choices=("text", "json"), default="text", help="default: text")
    add_content(parser, positional=False)
    add_day(parser)


def run(parser: argparse.ArgumentParser, options: argparse.Namespace) -> int:
    content = content_of(parser, options)
    from generator.cli.folder import finish_earlier

    wanted = _wanted(options)
    if options.again and (options.done or options.compare):
        parser.error("--again opens a record; --done and --compare open none")
    if options.compare and (wanted.anything or options.on):
        parser.error("--compare takes all bakes: leave out --on and what is to be entered")
    if options.format == "json" and not (options.done or options.compare):
        parser.error("--format json goes with --done or --compare")
    if not finish_earlier(content):
        return 1
    from generator.cli.recipe import is_known
    from generator.pipeline import check_folder

    result = check_folder(content, day=options.day)
    if not is_known(result, options.recipe):
        return 1
    if options.compare:
        return _compare(result, options, content)
    if options.done:
        return _done(result, options, content, wanted)
    return _record(result, options, content, wanted)


def _wanted(options: argparse.Namespace) -> "Wanted":
    from generator.asked.baking import Wanted

    once = (
        ("size", options.size),
        ("room", options.room),
        ("weather", options.weather),
        ("dough", options.dough),
        ("baked", options.baked),
    )
    packs = [name.strip() for names in options.packs for name in names.split(",")]
    return Wanted(
        add=tuple(options.add),
        left=tuple(options.left),
        packs=tuple(name for name in packs if name),
        times=tuple(options.time),
        set=tuple((key, text) for key, text in once if text is not None),
        more=tuple((key, text) for key, _ in _NOTES for text in getattr(options, key)),
    )


def _record(result: "CheckResult", options: argparse.Namespace, content: Path, wanted: "Wanted") -> int:
    from generator.asked.baking import record_bake

    on = options.on or result.setting.day
    outcome = record_bake(result, content, options.recipe, on=on, again=options.again, wanted=wanted)
    return _tell(result, outcome, options, content, entered=wanted.anything)


def _tell(
    result: "CheckResult",
    outcome: "Outcome",
    options: argparse.Namespace,
    content: Path,
    *,
    entered: bool,
) -> int:
    from generator.cli.findings import show_findings
    from generator.cli.folder import prefix_of
    from generator.diagnostics.diagnostic import has_errors

    texts = {**result.texts, outcome.path: outcome.text} if outcome.path else result.texts
    show_findings(outcome.found, texts, content=content)
    for words in (*outcome.refused, *outcome.told):
        say(words)
    if not outcome.path:
        return 1
    state = (
        "opened" if outcome.opened else "entered" if outcome.changed else "nothing new" if entered else "open"
    )
    print(f"{prefix_of(content)}{outcome.path}: {state}")
    if outcome.view is not None and (entered or not outcome.opened):
        print(outcome.view.summary)
        for words in (*(f"!! {each}" for each in outcome.view.alarms), *outcome.view.remarks):
            print(words)
    print(_next(outcome, options, entered=entered))
    return 1 if has_errors(outcome.found) else 0


def _next(outcome: "Outcome", options: argparse.Namespace, *, entered: bool) -> str:
    """What to type next."""
    command = f"tinleaf baked {options.recipe}"
    for word, value in (("--content", options.content), ("--on", options.on), ("--day", options.day)):
        command += f" {word} {value}" if value else ""
    if entered:
        return f"next: {command} --done"
    again = "" if outcome.opened else f"\nfor another bake of this day: {command} --again"
    return (
        f'next: {command} --add "10 g bread flour, 5 min into kneading", or edit the file; then --done{again}'
    )


def _days(result: "CheckResult", options: argparse.Namespace, content: Path) -> "tuple[Baked, ...] | None":
    """The bakes of a recipe that is free of errors, and whose records are; None where one is not, which is told."""
    from generator.asked.baking import bakes_of
    from generator.cli.findings import show_findings
    from generator.cli.recipe import is_showable, tell_why_not
    from generator.diagnostics.diagnostic import has_errors

    if not is_showable(result, options.recipe, content=content):
        return None
    if options.recipe not in result.setting.book:
        tell_why_not(result, options.recipe, content=content)
        return None
    paths = {each.path for each in result.bakes if each.recipe == options.recipe}
    named = f"-{options.recipe}.yaml"
    found = tuple(
        each for each in result.diagnostics if each.span.path in paths or each.span.path.endswith(named)
    )
    show_findings(found, result.texts, content=content)
    if has_errors(found):
        say("mend the record first: a sum over a mistake would be wrong")
        return None
    return bakes_of(result, content, options.recipe)


def _done(result: "CheckResult", options: argparse.Namespace, content: Path, wanted: "Wanted") -> int:
    if wanted.anything:
        code = _record(result, options, content, wanted)
        if code:
            return code
        from generator.pipeline import check_folder

        result = check_folder(content, day=options.day)
    days = _days(result, options, content)
    if days is None:
        return 1
    chosen = [each for each in days if options.on is None or each.day.record.day == options.on]
    if not chosen:
        say(_no_bake(options, days))
        return 1
    from generator.asked.baking import compared, day_values, view_of
    from generator.render.bake_terminal import comparison_text, day_text

    last = chosen[-1]
    if options.format == "json":
        print(json.dumps(day_values(result, last), ensure_ascii=False, indent=1))
        return 0
    print(day_text(view_of(result, last)), end="")
    if len(days) > 1:
        print("\n" + comparison_text(compared(result, options.recipe, days)), end="")
    return 0


def _no_bake(options: argparse.Namespace, days: "tuple[Baked, ...]") -> str:
    known = ", ".join(dict.fromkeys(each.day.record.day.isoformat() for each in days))
    where = f"There are records of {known}." if known else f"Open one: tinleaf baked {options.recipe}"
    on = f" on {options.on.isoformat()}" if options.on else ""
    return f"there is no bake record of {options.recipe}{on}. {where}"


def _compare(result: "CheckResult", options: argparse.Namespace, content: Path) -> int:
    days = _days(result, options, content)
    if days is None:
        return 1
    if not days:
        say(_no_bake(options, days))
        return 1
    from generator.asked.baking import compared, comparison_values
    from generator.render.bake_terminal import comparison_text

    if options.format == "json":
        print(json.dumps(comparison_values(result, options.recipe, days), ensure_ascii=False, indent=1))
    else:
        print(comparison_text(compared(result, options.recipe, days)), end="")
    return 0
