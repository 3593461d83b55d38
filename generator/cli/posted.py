"""`tinleaf posted`: a copy went out, was renewed, or is gone."""

import argparse
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from generator.cli.options import add_content, add_day, content_of, day, whole
from generator.cli.terminal import say

if TYPE_CHECKING:
    from generator.pipeline import CheckResult
    from generator.records.posting import Wish

SUMMARY = "mark a published copy as renewed"
TEXT = """\
Writes into ledger.jsonl that a copy of RECIPE stands at PLACE and says what the recipe says today;
`tinleaf due` tells when that is so no more. PLACE is page, description, pinned comment, card, tags,
newsletter, or any words of yours. With several films a description and a pinned comment name
theirs: description https://video.example/w/x

Of a description the fingerprint of the exact text is kept. Give the text back with --text as it
really stands there, and what somebody changed in it is told, line by line.
"""
EXAMPLES = """\
examples:
  tinleaf posted honey-oat-braid page
  tinleaf posted honey-oat-braid description
  tinleaf posted honey-oat-braid description --text copied-from-the-site.txt
  tinleaf posted honey-oat-braid card --to "Aunt Ro" --on 2026-09-14
  tinleaf posted honey-oat-braid card --revision 1 --on 2026-09-14    it carries an older revision
  tinleaf posted honey-oat-braid pinned comment --gone --why "comments are closed"

exit: 0 marked, 1 not marked (and why), 2 a mistake on the command line
"""
MOST_BYTES = 200_000
MOST_LETTERS = 500


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("recipe", metavar="RECIPE", help="the name of a file in recipes/, without .md")
    parser.add_argument("place", metavar="PLACE", nargs="+", help="where the copy stands")
    parser.add_argument("--on", metavar="DATE", type=day, help="the day it went out; without it, today")
    parser.add_argument("--to", metavar="WHO", default="", help="who got a card or a tag")
    parser.add_argument("--text", metavar="FILE", help="the text as it stands there; - reads standard input")
    parser.add_argument("--revision", metavar="N", type=whole, help="the copy carries this older revision")
    parser.add_argument(
        "--as-it-stands", action="store_true", help="mark it although its text is not the one of today"
    )
    parser.add_argument(
        "--as-typed", action="store_true", help="PLACE is meant, although it is nearly another"
    )
    parser.add_argument("--gone", action="store_true", help="the copy no longer exists; needs --why")
    parser.add_argument("--why", metavar="TEXT", default="", help="why it is gone")
    add_content(parser, positional=False)
    add_day(parser)


def run(parser: argparse.ArgumentParser, options: argparse.Namespace) -> int:
    _fit_together(parser, options)
    content = content_of(parser, options)
    text = _text(parser, options.text)
    from generator.cli.recipe import is_showable, tell_why_not
    from generator.pipeline import check_folder
    from generator.records.posting import Wish, unfit

    if text is not None and unfit(text):
        say(f"{options.text}: {unfit(text)}")
        return 1
    before = _ledger(content)
    result = check_folder(content, day=options.day)
    if not is_showable(result, options.recipe, content=content):
        return 1
    if options.recipe not in result.setting.book:
        tell_why_not(result, options.recipe, content=content)
        return 1
    wish = Wish(
        recipe=options.recipe,
        place=" ".join(options.place),
        on=options.on,
        to=" ".join(options.to.split()),
        text=text,
        revision=options.revision,
        as_it_stands=options.as_it_stands,
        as_typed=options.as_typed,
        gone=options.gone,
        why=" ".join(options.why.split()),
    )
    return _mark(content, result, wish, before)


def _fit_together(parser: argparse.ArgumentParser, options: argparse.Namespace) -> None:
    if options.gone and not options.why.strip():
        parser.error("--gone needs --why TEXT, such as --why “the film was taken down”")
    if options.why and not options.gone:
        parser.error("--why tells why a copy is gone: it goes with --gone")
    if options.gone and (options.text or options.revision or options.as_it_stands):
        parser.error("--gone cannot go together with --text, --revision or --as-it-stands")
    for name in ("to", "why"):
        value: str = getattr(options, name)
        if not " ".join(value.split()).isprintable() or len(value) > MOST_LETTERS:
            parser.error(f"argument --{name}: write a few plain words")


def _text(parser: argparse.ArgumentParser, name: str | None) -> str | None:
    """The text of a file or of standard input. Ends the program with 2 where it cannot be read."""
    if name is None:
        return None
    try:
        if name == "-":
            data = sys.stdin.buffer.read(MOST_BYTES + 1)
        else:
            with Path(name).open("rb") as file:
                data = file.read(MOST_BYTES + 1)
        text = data.decode("utf-8-sig")
    except OSError as error:
        parser.error(f"argument --text: {name} cannot be read ({error.strerror})")
    except UnicodeDecodeError:
        parser.error(f"argument --text: {name} is not UTF-8")
    if len(data) > MOST_BYTES:
        parser.error(f"argument --text: {name} is larger than any description")
    return text


def _ledger(content: Path) -> bytes | None:
    """The bytes that the change is made from: read before all else, so that nothing written meanwhile is lost."""
    from generator.history.ledger import LEDGER

    file = content / LEDGER
    return file.read_bytes() if file.is_file() else None


def _mark(content: Path, result: "CheckResult", wish: "Wish", before: bytes | None) -> int:
    from generator.cli.findings import show_findings
    from generator.diagnostics.diagnostic import has_errors
    from generator.history.ledger import LEDGER, appended
    from generator.records.posting import mark
    from generator.source.write import Change, commit

    spoilt = [each for each in result.diagnostics if each.span.path == LEDGER]
    show_findings(spoilt, result.texts, content=content)
    marked = mark(content, result, wish)
    if not marked.events:
        for each in marked.told:
            say(each)
        return 1
    after = appended(before or b"", marked.events)
    found = commit(content, [Change(path=LEDGER, before=before, after=after)])
    show_findings(found, result.texts, content=content)
    if has_errors(found):
        say("nothing was marked")
        return 1
    print("\n".join(marked.told))
    return 0
