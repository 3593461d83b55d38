"""Shows the diagnostics of a run to a person."""

import sys
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import TextIO

from generator.cli.folder import prefix_of
from generator.cli.terminal import has_colour
from generator.diagnostics.diagnostic import Diagnostic


def show_findings(
    diagnostics: Iterable[Diagnostic],
    texts: Mapping[str, str],
    *,
    content: Path,
    stream: TextIO | None = None,
) -> None:
    """Each finding with its excerpt and hint, on standard error unless `stream` says otherwise."""
    from generator.diagnostics.text import as_text

    out = stream or sys.stderr
    text = as_text(tuple(diagnostics), texts, prefix=prefix_of(content), colour=has_colour(out))
    if text:
        print(text.rstrip("\n"), file=out)
