"""A command that is killed at any moment leaves the old state whole or the new one, never a mixture."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from tests.amend.folder import DAY, RECIPE, lay, lay_sample

ROOT = Path(__file__).resolve().parents[2]
CORRECT = [
    "correct",
    "candied-lemon-peel",
    "lemon peel",
    "160 g",
    "--why",
    "More peel.",
    "--day",
    "2026-11-25",
]
POSTED = ["posted", "honey-oat-braid", "description", "--day", "2026-11-25"]
SEED = 20261125


def tally(folder: Path, words: list[str], *, kills: int) -> dict[str, object]:
    command = [sys.executable, "-m", "tests.amend.kills", str(folder), str(kills), str(SEED), *words]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, timeout=3000)
    assert done.returncode == 0, done.stderr[-2000:]
    read = json.loads(done.stdout)
    assert isinstance(read, dict)
    return read


def holds(found: dict[str, object], kills: int) -> None:
    assert found["faults"] == []
    assert found["counted"] == kills
    assert found["old"] + found["new"] == kills  # type: ignore[operator]
    print(f"{found['counted']} of {found['trials']} kills fell between the first and the last write: {found}")


@pytest.mark.parametrize(
    "words",
    [["correct", "plain-loaf", "water", "310 g", "--why", "Dry."], ["posted", "plain-loaf", "description"]],
    ids=["correct", "posted"],
)
def test_a_few_kills(tmp_path: Path, words: list[str]) -> None:
    folder = lay(tmp_path / "content", plain_loaf=RECIPE)
    holds(tally(folder, [*words, "--day", DAY.isoformat()], kills=4), 4)


@pytest.mark.long
@pytest.mark.parametrize("words", [CORRECT, POSTED], ids=["correct", "posted"])
def test_two_hundred_kills(tmp_path: Path, words: list[str]) -> None:
    found = tally(lay_sample(tmp_path / "content"), words, kills=200)
    holds(found, 200)
    assert found["old"]
    assert found["new"]
