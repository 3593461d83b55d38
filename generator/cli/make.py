"""`tinleaf make`: checks a content folder, then writes everything that changed."""

import argparse
import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from generator.cli.options import OUR_BUG, USAGE_MISTAKE, add_content, add_day, content_of, workers
from generator.cli.terminal import ProgressLine, say

if TYPE_CHECKING:
    from generator.build.store import WriteReport
    from generator.diagnostics.diagnostic import Diagnostics

_SHOWN = 12
"""So many places are enough to report a fault of ours."""

SUMMARY = "check, then write the site, the cards, the tags and the descriptions"
TEXT = """\
Checks everything, then writes the output folder: site/ to upload as it is, desk/ for yourself.
With an error anywhere nothing is written, and the old output stays as it was. Only files that
changed are written; files that an earlier make wrote and nobody needs any more are removed; files
that you put there yourself are never touched.
"""
EXAMPLES = """\
examples:
  tinleaf make                          the content folder you are in, or content/;
                                        writes output/ beside the content folder
  tinleaf make my-baking --output www   another content folder, another place
  tinleaf make --day 2026-12-24         what will be published on that day
  tinleaf make --jobs 1                 one file after the other, for a small machine
  tinleaf make --check-only             whether the output is as the content says

Before anything is written, every new file is read back and compared with the recipes; see
`tinleaf check --built`.

What was made once is kept in your cache folder (XDG_CACHE_HOME or ~/.cache, in it tinleaf/), which
is safe to delete. TINLEAF_CACHE_BYTES says how large it may grow (2000000000), 0 keeps nothing.

exit: 0 written, 1 errors (nothing was written), 2 a mistake on the command line;
      with --check-only 1 also where there is something to write
"""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    add_content(parser, positional=True)
    parser.add_argument(
        "--output",
        metavar="DIR",
        type=Path,
        help="where to write (default: output/ beside the content folder)",
    )
    add_day(parser)
    parser.add_argument(
        "--jobs",
        metavar="N",
        type=workers,
        default=os.cpu_count() or 1,
        help="how many files to print at a time (default: one for each processor)",
    )
    parser.add_argument(
        "--check-only",
        action="store_true",
        help="write nothing; say what would be written (exit 1 if anything)",
    )
    parser.add_argument(
        "--keep-going",
        action="store_true",
        help="write the bakes that are free of errors; what was made of the others before stays as it is",
    )
    parser.add_argument(
        "--profile", action="store_true", help="show where the time went, and the slowest files"
    )


def run(parser: argparse.ArgumentParser, options: argparse.Namespace) -> int:
    content = content_of(parser, options)
    from generator.build.cache import users_cache
    from generator.build.place import why_unusable
    from generator.cli.findings import show_findings
    from generator.cli.folder import output_folder
    from generator.publication.memory import same_as_last

    output = output_folder(content, options.output)
    reason = why_unusable(output, content=content)
    if reason:
        say(reason)
        return USAGE_MISTAKE
    last = same_as_last(content, output, day=options.day, cache=users_cache())
    if last is not None:
        show_findings(last.diagnostics, last.texts, content=content)
        print(f"{output.as_posix()}/: 0 files written, {last.files} unchanged; as of {last.day.isoformat()}")
        return 0
    return _make(content, output, options)


def _make(content: Path, output: Path, options: argparse.Namespace) -> int:
    from generator.cli.findings import show_findings
    from generator.pipeline import make_folder
    from generator.publication.making import How

    how = How(check_only=options.check_only, keep_going=options.keep_going)
    progress = ProgressLine(sys.stderr)
    try:
        made = make_folder(
            content, output=output, day=options.day, jobs=options.jobs, progress=progress, how=how
        )
    finally:
        progress.clear()
    show_findings(made.diagnostics, made.texts, content=content)
    if options.profile:
        from generator.cli.profile import as_table

        print(as_table(made.profile), file=sys.stderr)
    if made.unproven:
        return own_up(made.unproven, output, own_theme=made.own_theme)
    wrong = has_errors_in(made.diagnostics)
    return _conclude(made.report, output, day=made.day.isoformat(), options=options, wrong=wrong)


def has_errors_in(diagnostics: "Diagnostics") -> bool:
    from generator.diagnostics.diagnostic import has_errors

    return has_errors(diagnostics)


def own_up(unproven: "Diagnostics", output: Path, *, own_theme: bool) -> int:
    """What was made does not say what the recipes say: our fault, or that of a maker's own theme, and the old output
    stays as it was."""
    from generator.cli.findings import show_findings

    show_findings(unproven[:_SHOWN], {}, content=output)
    more = f" and {len(unproven) - _SHOWN} more" if len(unproven) > _SHOWN else ""
    say(f"the files that were made do not agree with your recipes: {len(unproven[:_SHOWN])} places{more}")
    if own_theme:
        say("every page must say what the recipes say, in any theme; nothing was written. See docs/themes.md")
        return 1
    say("this is a fault of the program, not of your files; nothing was written. Please report it")
    return OUR_BUG


def _conclude(
    report: "WriteReport | None", output: Path, *, day: str, options: argparse.Namespace, wrong: bool
) -> int:
    if report is None:
        say("nothing was written, because of the errors above")
        return 1
    if report.refused:
        for reason in report.refused:
            say(reason)
        say("nothing was written")
        return 1
    for path in report.kept:
        say(f"{output / path} is needed no more, but was edited by hand, and so was kept")
    if options.check_only:
        print(f"{output.as_posix()}/: {_counts(report, 'to write', 'to remove')}; as of {day}")
        return 1 if wrong or report.written or report.removed else 0
    print(f"{output.as_posix()}/: {_counts(report)}; as of {day}")
    if wrong:
        say("the bakes with errors were left as they were")
    return 1 if wrong else 0


def _counts(report: "WriteReport", wrote: str = "written", gone: str = "removed") -> str:
    """ "3 files written, 120 unchanged, 1 removed"."""
    written = len(report.written)
    words = [f"{written} file{'' if written == 1 else 's'} {wrote}"]
    words += [f"{len(report.unchanged)} unchanged"] if report.unchanged else []
    words += [f"{len(report.removed)} {gone}"] if report.removed else []
    return ", ".join(words)
