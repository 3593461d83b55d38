"""A selection of bakes on the command line: what its words name, and whether all that it stands on is sound."""

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from generator.cli.terminal import say

if TYPE_CHECKING:
    from generator.pipeline import CheckResult


def add_selection(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "selection", metavar="SELECTION", nargs="+", type=_word, help="names of recipes, kind:NAME, or all"
    )


def _word(text: str) -> str:
    word = text.strip()
    if not word or word == "kind:":
        raise argparse.ArgumentTypeError("a selection is a name, kind:NAME or all")
    return word


def select(
    result: "CheckResult", options: argparse.Namespace, content: Path, *, what: str
) -> tuple[str, ...] | None:
    """The names of the recipes chosen, or None where that cannot be, which is told. `what` is made: “the book”."""
    from generator.asked.booklet import choose

    chosen = choose(result, options.selection)
    if not (_are_known(result, chosen.unknown) and _are_sound(result, chosen.names, options, content, what)):
        return None
    return chosen.names


def _are_known(result: "CheckResult", unknown: tuple[str, ...]) -> bool:
    """Whether every word names something; the nearest words where one does not. A faulty recipe is known."""
    from generator.asked.booklet import words_to_choose
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
    result: "CheckResult", names: tuple[str, ...], options: argparse.Namespace, content: Path, what: str
) -> bool:
    """Whether nothing that the selection stands on has an error; a kind and all stand on every recipe."""
    from generator.cli.recipe import is_showable, tell_why_not
    from generator.diagnostics.diagnostic import has_errors
    from generator.present.book import EVERYTHING, KIND

    if any(word == EVERYTHING or word.startswith(KIND) for word in options.selection):
        if has_errors(result.diagnostics):
            tell_why_not(result, what, content=content)
            return False
        return True
    for name in dict.fromkeys((*names, *options.selection)):
        if not is_showable(result, name, content=content):
            return False
        if name not in result.setting.book:
            tell_why_not(result, name, content=content)
            return False
    return True
