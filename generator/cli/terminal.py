"""What a terminal can show: colour, a line of progress, letters beyond ASCII."""

import io
import os
import shutil
import sys
from typing import TextIO

PREFIX = "tinleaf"


def has_colour(stream: TextIO) -> bool:
    """Colour only for a person: on a terminal that can show it, and not where NO_COLOR says no."""
    return stream.isatty() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"


def prepare(*streams: TextIO) -> None:
    """Files and pipes get UTF-8 whatever the locale; a terminal that lacks a letter shows a stand-in."""
    for stream in streams:
        if isinstance(stream, io.TextIOWrapper):
            encoding = stream.encoding if stream.isatty() else "utf-8"
            stream.reconfigure(encoding=encoding, errors="replace")


def say(text: str) -> None:
    """A sentence to the person, beside the output."""
    print(f"{PREFIX}: {text}", file=sys.stderr)


class ProgressLine:
    """One line that tells how far a long work is; silent where nobody watches."""

    def __init__(self, stream: TextIO) -> None:
        self._stream = stream
        self._shown = stream.isatty()

    def __call__(self, title: str, done: int, total: int) -> None:
        if not self._shown:
            return
        width = shutil.get_terminal_size().columns
        line = f"[{done}/{total}] {title}"[: width - 1]
        self._stream.write("\r\033[K" + line)
        self._stream.flush()

    def clear(self) -> None:
        if self._shown:
            self._stream.write("\r\033[K")
            self._stream.flush()
