"""The Nu checker has neither error nor warning for any page."""

import json
import subprocess
from pathlib import Path

import pytest

pytestmark = pytest.mark.browser

CHECKER = Path(__file__).resolve().parents[2] / "node_modules" / "vnu-jar" / "build" / "dist" / "vnu.jar"


def complaints(folder: Path) -> list[str]:
    """What the checker says of all pages below a folder."""
    pages = [str(path) for path in sorted(folder.rglob("*.html"))]
    command = ["java", "-Xss4m", "-jar", str(CHECKER), "--format", "json", "--stdout", "--exit-zero-always"]
    told = subprocess.run([*command, *pages], check=True, capture_output=True, text=True, timeout=240)
    return [f"{one['url']}:{one['lastLine']} {one['message']}" for one in json.loads(told.stdout)["messages"]]


def test_the_checker_finds_faults(tmp_path: Path) -> None:
    (tmp_path / "wrong.html").write_text("<!doctype html><title>x</title><p id=a><p id=a>", encoding="utf-8")
    assert [fault for fault in complaints(tmp_path) if "Duplicate ID" in fault]


def test_every_page_of_the_sample_is_valid(built: Path) -> None:
    assert complaints(built) == []


def test_every_page_of_the_demo_is_valid(demo: Path) -> None:
    assert complaints(demo) == []
