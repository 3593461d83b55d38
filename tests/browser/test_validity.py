"""The Nu checker has neither error nor warning for any page."""

import json
import subprocess
from pathlib import Path

import pytest

from tests.browser.conftest import serving

pytestmark = pytest.mark.browser

CHECKER = Path(__file__).resolve().parents[2] / "node_modules" / "vnu-jar" / "build" / "dist" / "vnu.jar"


def complaints(folder: Path) -> list[str]:
    """What the checker says of all pages below a folder, as a host serves them.

    On a disk it would take every file to lie outside of 'self', which the policy of the pages allows.
    """
    with serving(folder) as address:
        root = address.removesuffix("site/")
        pages = [root + path.relative_to(folder).as_posix() for path in sorted(folder.rglob("*.html"))]
        loopback = ("-Dnu.validator.servlet.allow-forbidden-hosts=true", "-jar", str(CHECKER))
        command = ["java", "-Xss4m", *loopback, "--format", "json", "--stdout", "--exit-zero-always"]
        told = subprocess.run([*command, *pages], check=True, capture_output=True, text=True, timeout=240)
    found = json.loads(told.stdout)["messages"]
    return [f"{one['url']}:{one.get('lastLine', '')} {one['message']}" for one in found]


def test_the_checker_finds_faults(tmp_path: Path) -> None:
    (tmp_path / "wrong.html").write_text("<!doctype html><title>x</title><p id=a><p id=a>", encoding="utf-8")
    assert [fault for fault in complaints(tmp_path) if "Duplicate ID" in fault]


def test_the_checker_holds_a_page_against_its_policy(tmp_path: Path) -> None:
    policy = '<meta http-equiv="Content-Security-Policy" content="default-src \'self\'">'
    page = f"<!doctype html><html lang=en><head>{policy}<title>x</title><style>p {{ margin: 0 }}</style><p>x"
    (tmp_path / "wrong.html").write_text(page, encoding="utf-8")
    assert [fault for fault in complaints(tmp_path) if "violates Content Security Policy" in fault]


@pytest.mark.long
def test_every_page_of_the_sample_is_valid(built: Path) -> None:
    assert complaints(built) == []


def test_every_page_of_the_demo_is_valid(demo: Path) -> None:
    assert complaints(demo) == []
