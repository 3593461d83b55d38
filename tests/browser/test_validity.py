"""The Nu checker has neither error nor warning for any page."""

import json
import subprocess
from pathlib import Path

import pytest

pytestmark = pytest.mark.browser


def test_every_page_is_valid(built: Path, page_paths: tuple[str, ...]) -> None:
    checker = Path(__file__).resolve().parents[2] / "node_modules" / "vnu-jar" / "build" / "dist" / "vnu.jar"
    pages = [str(built / "site" / path) for path in page_paths]
    command = ["java", "-Xss4m", "-jar", str(checker), "--format", "json", "--stdout", "--exit-zero-always"]
    told = subprocess.run([*command, *pages], check=True, capture_output=True, text=True, timeout=180)
    messages = json.loads(told.stdout)["messages"]
    assert [f"{Path(one['url']).parent.name}:{one['lastLine']} {one['message']}" for one in messages] == []
    assert len(pages) == 13
