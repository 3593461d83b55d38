"""The command line itself: help, usage mistakes, and ends that are nobody's mistake."""

import os
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path

import pytest

from generator.cli.main import COMMANDS, CUT_OFF, PIPE_CLOSED, load, main
from generator.cli.options import OUR_BUG
from tests.cli.conftest import Cardboard

Capture = pytest.CaptureFixture[str]


def exit_of(words: Sequence[str]) -> object:
    with pytest.raises(SystemExit) as ended:
        main(words)
    return ended.value.code


def test_help_names_every_command(capsys: Capture) -> None:
    assert exit_of(["--help"]) == 0
    out = capsys.readouterr().out
    assert [name for name in COMMANDS if f"\n    {name} " not in out] == []
    assert "tinleaf start my-baking" in out


def test_the_list_of_commands_says_what_each_of_them_says() -> None:
    assert {name: load(name).SUMMARY for name in COMMANDS} == COMMANDS


def test_help_loads_no_command() -> None:
    program = "import sys; from generator.cli.main import main; main(['--help'])"
    told = subprocess.run(
        [sys.executable, "-c", f"import sys\ntry: exec({program!r})\nexcept SystemExit: print(*sys.modules)"],
        capture_output=True,
        text=True,
        check=True,
    )
    loaded = {each for each in told.stdout.split() if each.startswith("generator.")}
    assert loaded == {"generator.cli", "generator.cli.exits", "generator.cli.main", "generator.cli.terminal"}


@pytest.mark.parametrize("name", sorted(COMMANDS))
def test_help_of_each_command_teaches_with_examples_and_exits(name: str, capsys: Capture) -> None:
    assert exit_of([name, "--help"]) == 0
    out = capsys.readouterr().out
    assert f"\nexamples:\n  tinleaf {name}" in out
    assert "\nexit: 0 " in out
    assert max(len(line) for line in out.splitlines()) <= 100


def test_version_is_that_of_the_project(project: Path, capsys: Capture) -> None:
    assert exit_of(["--version"]) == 0
    version = capsys.readouterr().out.removeprefix("tinleaf ").strip()
    assert f'version = "{version}"' in (project / "pyproject.toml").read_text()


@pytest.mark.usefixtures("content")
@pytest.mark.parametrize(
    ("words", "message"),
    [
        (["bake"], "tinleaf: argument COMMAND: invalid choice: 'bake'"),
        (["check", "--dya=x"], "tinleaf: unrecognized arguments: --dya=x"),
        (["check", "--day", "12.9.2026"], "tinleaf check: argument --day: “12.9.2026” is not a date such as"),
        (["check", "--day", "2026-02-30"], "tinleaf check: argument --day: “2026-02-30” is not a day of the"),
        (["check", "--day", "20260230"], "tinleaf check: argument --day: “20260230” is not a date such as"),
        (["check", "nowhere"], "tinleaf check: there is no folder nowhere"),
        (
            ["check", "content", "--content", "."],
            "tinleaf check: the content folder is given twice: content and .",
        ),
        (["check", "--format", "xml"], "tinleaf check: argument --format: invalid choice: 'xml'"),
        (["make", "--jobs", "0"], "tinleaf make: argument --jobs: “0” is not a number from 1 to 999"),
        (["show"], "tinleaf show: the following arguments are required: RECIPE"),
        (["start"], "tinleaf start: the following arguments are required: DIR"),
    ],
)
def test_usage_mistake_exits_with_2_and_one_line(words: list[str], message: str, capsys: Capture) -> None:
    assert exit_of(words) == 2
    out, err = capsys.readouterr()
    assert out == ""
    first, second = err.splitlines()
    assert first[: len(message)] == message
    assert second == f"See `{message.partition(':')[0]} --help`."


def test_no_command_shows_the_help_and_exits_with_2(capsys: Capture) -> None:
    assert main([]) == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert err.startswith("usage: tinleaf ")


def test_no_content_folder_exits_with_2(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Capture
) -> None:
    monkeypatch.chdir(tmp_path)
    assert exit_of(["check"]) == 2
    assert capsys.readouterr().err.startswith("tinleaf check: this folder has no site.yaml and no content/")


@pytest.mark.usefixtures("content")
def test_interruption_is_quiet(pipeline: Cardboard, capsys: Capture) -> None:
    pipeline.raises = KeyboardInterrupt()
    assert main(["check"]) == CUT_OFF
    assert capsys.readouterr() == ("", "")


@pytest.mark.usefixtures("content")
def test_trouble_with_the_disk_is_told_in_one_line(pipeline: Cardboard, capsys: Capture) -> None:
    pipeline.raises = PermissionError(13, "Permission denied", "content/site.yaml")
    assert main(["check"]) == 1
    assert capsys.readouterr() == ("", "tinleaf: content/site.yaml: Permission denied\n")


@pytest.mark.usefixtures("content")
def test_bug_of_ours_is_owned_up_to_without_a_traceback(pipeline: Cardboard, capsys: Capture) -> None:
    pipeline.raises = KeyError("x")
    assert main(["check"]) == OUR_BUG
    first, second = capsys.readouterr().err.splitlines()
    assert first.startswith("tinleaf: this is a fault of the program, not of your files: KeyError: 'x' (")
    assert second == "tinleaf: please report it; TINLEAF_TRACEBACK=1 shows where it happened"


@pytest.mark.usefixtures("content")
def test_bug_of_ours_shows_its_traceback_when_asked(
    pipeline: Cardboard, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("TINLEAF_TRACEBACK", "1")
    pipeline.raises = KeyError("x")
    assert main(["check"]) == OUR_BUG
    assert "Traceback (most recent call last)" in capsys.readouterr().err


def test_closed_pipe_is_quiet(project: Path) -> None:
    """A reader that has seen enough, as `tinleaf --help | head -1`."""
    program = (
        "import sys\n"
        "from generator.cli import check, main\n"
        "check.run = lambda parser, options: print('x' * 100000) or 0\n"
        "sys.exit(main.main(['check']))\n"
    )
    read, write = os.pipe()
    os.close(read)
    try:
        ended = subprocess.run(
            [sys.executable, "-c", program], cwd=project, stdout=write, stderr=subprocess.PIPE, check=False
        )
    finally:
        os.close(write)
    assert (ended.returncode, ended.stderr) == (PIPE_CLOSED, b"")


def test_help_loads_nothing_heavy(project: Path) -> None:
    """So that it is there at once."""
    heavy = {"weasyprint", "jinja2", "PIL", "yaml", "markdown_it", "hashlib", "generator.pipeline"}
    program = (
        "import sys\n"
        "from generator.cli.main import main\n"
        "try: main(['make', '--help'])\n"
        "except SystemExit: pass\n"
        f"sys.exit(' '.join(sorted({heavy!r} & set(sys.modules))))\n"
    )
    ended = subprocess.run(
        [sys.executable, "-c", program], cwd=project, capture_output=True, text=True, check=False
    )
    assert ended.stderr.strip() == ""
