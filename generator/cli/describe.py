"""`tinleaf describe`: the texts that go with a recipe's video."""

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from generator.cli.options import add_content, add_day, content_of
from generator.cli.terminal import say

if TYPE_CHECKING:
    from generator.pipeline import CheckResult
    from generator.present.views import VideoView

SUMMARY = "the texts that go under a recipe's video"
TEXT = """\
Prints the block that goes under a recipe's video: the dish and its link first, ingredients, a
short method, allergens, links, chapters, credits; plain text inside the limit of site.yaml. It is
the same text as desk/RECIPE/description.txt of the output.

--short is for a place with less room ("short_limit:" in site.yaml, 2000 bytes unless said): what is
left out is named, and cautions, allergens and the page's address always stay. --comment is the
comment to pin below the film: what was corrected, or before that the page, cautions and allergens.
--chapters is a chapter file for players (WebVTT). `make` writes each to desk/RECIPE/ too.

--correction prints the short text about what was corrected, why, what the film still shows, and the
page; a change of allergens first; nothing where nothing was corrected.

With several films --video says which: its number in the recipe file, its address, or how that ends.
"""
EXAMPLES = """\
examples:
  tinleaf describe honey-oat-braid
  tinleaf describe honey-oat-braid > under-the-video.txt
  tinleaf describe honey-oat-braid --short --copy        straight to the clipboard
  tinleaf describe honey-oat-braid --comment
  tinleaf describe honey-oat-braid --chapters --video 2 > chapters.vtt
  tinleaf describe honey-oat-braid --all --into texts    every text of every film, a file each

exit: 0 printed, 1 no such recipe or film, an error in it, or no such text, 2 a mistake on the
command line
"""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("recipe", metavar="RECIPE", help="the name of a file in recipes/, without .md")
    which = parser.add_mutually_exclusive_group()
    which.add_argument("--short", action="store_true", help="for a place with less room")
    which.add_argument("--comment", action="store_true", help="the comment to pin below the film")
    which.add_argument("--chapters", action="store_true", help="the chapters as a file for players (WebVTT)")
    which.add_argument(
        "--correction", action="store_true", help="the short text about what was corrected, for a comment"
    )
    which.add_argument("--all", action="store_true", help="write every text of every film into a folder")
    parser.add_argument(
        "--into", type=Path, metavar="FOLDER", help="where --all writes; without it, RECIPE-texts here"
    )
    parser.add_argument("--video", metavar="ID", default="", help="which film, where there are several")
    parser.add_argument(
        "--copy", action="store_true", help="put it on the clipboard; where there is none, print it"
    )
    add_content(parser, positional=False)
    add_day(parser)


def run(parser: argparse.ArgumentParser, options: argparse.Namespace) -> int:
    if options.into and not options.all:
        parser.error("--into goes with --all")
    if options.all and (options.video or options.copy):
        parser.error("--all writes the texts of all films into files: it takes neither --video nor --copy")
    content = content_of(parser, options)
    from generator.cli.recipe import is_showable, tell_why_not
    from generator.pipeline import check_folder, describe_text

    result = check_folder(content, day=options.day)
    if not is_showable(result, options.recipe, content=content):
        return 1
    if not describe_text(result, options.recipe):
        tell_why_not(result, options.recipe, content=content)
        return 1
    if options.all:
        return _write_all(result, options)
    film = None
    if options.video:
        film = _film(result, options.recipe, options.video)
        if film is None:
            return 1
    text = _text(result, options, film)
    return _hand_over(text.rstrip("\n"), options) if text else 1


def _film(result: "CheckResult", recipe: str, wish: str) -> "VideoView | None":
    """The film by its number, its address, or the end of that; None where it is none or several, which is told."""
    films = result.views[recipe].videos
    found = [each for number, each in enumerate(films, start=1) if wish in (str(number), each.url)]
    found = found or [each for each in films if each.url.rstrip("/").endswith(wish.rstrip("/"))]
    if len(found) == 1:
        return found[0]
    told = "".join(f"\n  {number}  {each.url}" for number, each in enumerate(films, start=1))
    which = f"several films of {recipe}" if found else f"no film of {recipe}"
    say(f"{which}: “{wish}”. Its films:{told}" if films else f"{recipe} has no film under “videos:”")
    return None


def _text(result: "CheckResult", options: argparse.Namespace, film: "VideoView | None") -> str:
    """The text that is asked for; "" where there is none, which is told."""
    from generator.pipeline import describe_text

    if options.correction:
        from generator.render.description.correction import correction_note

        text = correction_note(result.views[options.recipe])
        if not text:
            say(f"nothing has been corrected in {options.recipe}")
        return text
    kind = next((each for each in ("short", "comment", "chapters") if getattr(options, each)), "description")
    text = describe_text(result, options.recipe, kind, film=film.url if film else "")
    if kind == "chapters" and not text:
        _tell_why_no_chapters(result, options.recipe, film)
    return text


def _tell_why_no_chapters(result: "CheckResult", recipe: str, film: "VideoView | None") -> None:
    from generator.render.description.chapters import why_none

    films = result.views[recipe].videos
    first = film or (films[0] if films else None)
    say(f"no chapter file of {recipe}: {why_none(first) if first else 'it has no film'}")


def _hand_over(text: str, options: argparse.Namespace) -> int:
    if options.copy:
        from generator.cli.clipboard import put_on_clipboard

        why = put_on_clipboard(text)
        if not why:
            say(f"copied: {len(text.encode())} bytes; {text.splitlines()[0]}")
            return 0
        say(f"not copied: {why}. Here it is:")
    print(text)
    return 0


def _write_all(result: "CheckResult", options: argparse.Namespace) -> int:
    from generator.build.beside import write_text
    from generator.render.description.variants import variants

    view, settings = result.views[options.recipe], result.setting.settings
    folder = options.into or Path(f"{options.recipe}-texts")
    limits = {"limit": settings.description_limit, "short_limit": settings.short_limit}
    for each in variants(view, **limits):
        sign = "WEBVTT" if each.kind == "chapters" else view.url
        reason = write_text(folder / each.file, each.text, sign=sign)
        if reason:
            say(reason)
            return 1
        print(f"{(folder / each.file).as_posix()}: {len(each.text.encode())} bytes")
    return 0
