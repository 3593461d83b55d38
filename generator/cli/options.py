"""The options that several commands have, each with one meaning everywhere."""

import argparse
import re
from datetime import date
from fractions import Fraction
from pathlib import Path

from generator.cli.exits import OUR_BUG as OUR_BUG
from generator.cli.exits import USAGE_MISTAKE as USAGE_MISTAKE
from generator.cli.exits import Parser as Parser
from generator.cli.folder import content_folder, finish_earlier
from generator.measure.number import read_number
from generator.measure.quantity import read_quantity
from generator.measure.unit import SPOONS


def day(text: str) -> date:
    """A date as it stands in the content: 2026-09-12."""
    if not re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", text):
        raise argparse.ArgumentTypeError(f"“{text}” is not a date such as 2026-09-12")
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f"“{text}” is not a day of the calendar") from None


def workers(text: str) -> int:
    if not re.fullmatch(r"[1-9][0-9]{0,2}", text):
        raise argparse.ArgumentTypeError(f"“{text}” is not a number from 1 to 999")
    return int(text)


def whole(text: str) -> int:
    """A number of something that is counted from 1."""
    if not re.fullmatch(r"[1-9][0-9]{0,5}", text):
        raise argparse.ArgumentTypeError(f"“{text}” is not a whole number from 1 on")
    return int(text)


def pdf_file(text: str) -> Path:
    if Path(text).suffix.casefold() != ".pdf":
        raise argparse.ArgumentTypeError(f"“{text}” does not end in .pdf")
    return Path(text)


def positive(text: str) -> Fraction:
    """A number above 0: 2, 1/2, 1 1/2, 1.5."""
    plain = text.strip().removeprefix("×").removesuffix("x").strip()
    read = read_number(plain)
    if read is None or read[1] != len(plain) or not read[0].is_exact or read[0].low <= 0:
        raise argparse.ArgumentTypeError(f"“{text}” is not a number above 0 such as 2, 1/2 or 1.5")
    return read[0].low


def weight(text: str) -> Fraction:
    """A weight above 0 in grams: 600 g, 1.2 kg, 1 lb 4 oz; a bare number is grams."""
    plain = text.strip()
    read = read_quantity(plain, spoons=SPOONS["us"])
    grams = None
    if read is not None and read[1] == len(plain):
        grams = read[0].amount if read[0].unit is None else read[0].grams()
    if grams is None or not grams.is_exact or grams.low <= 0:
        raise argparse.ArgumentTypeError(f"“{text}” is not a weight above 0 such as 600 g or 1 lb 4 oz")
    return grams.low


def add_content(parser: argparse.ArgumentParser, *, positional: bool) -> None:
    """`--content DIR` everywhere; check and make take the folder as a plain word too."""
    if positional:
        parser.add_argument(
            "folder", metavar="CONTENT", nargs="?", type=Path, help="the same as --content DIR"
        )
    parser.add_argument(
        "--content",
        metavar="DIR",
        type=Path,
        help="the content folder; without it, this folder if it has a site.yaml, else content/ in it",
    )


def add_day(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--day",
        metavar="DATE",
        type=day,
        help="the publication day, as 2026-09-12; without it, today in the zone of site.yaml",
    )


def content_of(parser: argparse.ArgumentParser, options: argparse.Namespace) -> Path:
    """The content folder that the options name, with nothing half written in it.

    Ends the program with 2 where there is none, with 1 where an earlier command left what cannot be finished.
    """
    given: Path | None = options.content
    plain: Path | None = getattr(options, "folder", None)
    if given is not None and plain is not None and given != plain:
        parser.error(f"the content folder is given twice: {plain} and {given}")
    found = content_folder(given or plain, here=Path())
    if isinstance(found, str):
        parser.error(found)
    if not finish_earlier(found):
        parser.exit(1)
    return found
