"""What is shown to a person is not written into files and pipes."""

import io

import pytest

from generator.cli.terminal import ProgressLine, has_colour, prepare


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


def test_colour_is_for_a_terminal_only(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("TERM", "xterm")
    assert has_colour(Terminal())
    assert not has_colour(io.StringIO())


@pytest.mark.parametrize(("name", "value"), [("NO_COLOR", "1"), ("TERM", "dumb")])
def test_a_person_may_ask_for_no_colour(monkeypatch: pytest.MonkeyPatch, name: str, value: str) -> None:
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setenv(name, value)
    assert not has_colour(Terminal())


def test_empty_no_color_asks_for_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setenv("NO_COLOR", "")
    assert has_colour(Terminal())


def test_progress_is_one_line_that_goes_away(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLUMNS", "20")
    terminal = Terminal()
    line = ProgressLine(terminal)
    line("Honey oat braid, the cards", 3, 12)
    line.clear()
    assert terminal.getvalue() == "\r\033[K[3/12] Honey oat br\r\033[K"


def test_progress_is_silent_where_nobody_watches() -> None:
    pipe = io.StringIO()
    line = ProgressLine(pipe)
    line("Honey oat braid", 3, 12)
    line.clear()
    assert pipe.getvalue() == ""


def test_file_gets_utf8_whatever_the_locale() -> None:
    raw = io.BytesIO()
    file = io.TextIOWrapper(raw, encoding="ascii")
    prepare(file)
    file.write("1½ cups")
    file.flush()
    assert raw.getvalue() == "1½ cups".encode()
