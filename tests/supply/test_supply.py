"""What is installed is known, hashed and licensed; what is handed on is the same bytes each time, and complete."""

import hashlib
import os
import re
import shutil
import subprocess
import sys
import tarfile
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]


def locked() -> dict[str, str]:
    text = (ROOT / "requirements.lock").read_text("utf-8")
    return dict(re.findall(r"^([A-Za-z0-9][\w.-]*)==([^\s;\\]+)", text, re.MULTILINE))


def test_every_locked_library_has_hashes() -> None:
    parts = re.split(r"^(?=[A-Za-z0-9])", (ROOT / "requirements.lock").read_text("utf-8"), flags=re.MULTILINE)
    libraries = [part for part in parts if re.match(r"[A-Za-z0-9]", part)]
    assert len(libraries) == len(locked()) > 10
    assert not [part.split()[0] for part in libraries if "--hash=sha256:" not in part]


def test_the_list_of_licences_names_exactly_what_is_locked() -> None:
    rows = re.findall(
        r"^\| (\S+) \| (\S+) \| (.+) \|$", (ROOT / "docs" / "licences.md").read_text("utf-8"), re.M
    )
    named = {name: version for name, version, _ in rows if name != "library"}
    assert named == locked()
    assert not [name for name, _, licence in rows if licence == "not named"]


def build(folder: Path) -> dict[str, str]:
    """Both distributions, built in a copy of the sources; name -> digest."""
    source = folder / "source"
    wanted = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=True).stdout
    for name in wanted.splitlines():
        if (ROOT / name).is_file():
            (source / name).parent.mkdir(parents=True, exist_ok=True)
            shutil.copyfile(ROOT / name, source / name)
    environment = {**os.environ, "SOURCE_DATE_EPOCH": "1764028800"}
    words = [sys.executable, "-m", "hatchling", "build", "-d", str(folder / "dist")]
    subprocess.run(words, cwd=source, env=environment, check=True, capture_output=True)
    files = sorted((folder / "dist").iterdir())
    return {each.name: hashlib.sha256(each.read_bytes()).hexdigest() for each in files}


@pytest.mark.long
def test_two_builds_are_the_same_bytes_and_hold_themes_and_data(tmp_path: Path) -> None:
    first = build(tmp_path / "a")
    assert first == build(tmp_path / "elsewhere")
    assert len(first) == 2
    wheel = next((tmp_path / "a" / "dist").glob("*.whl"))
    names = set(zipfile.ZipFile(wheel).namelist())
    data = {each.relative_to(ROOT).as_posix() for each in (ROOT / "generator").rglob("*.yaml")}
    assert data <= names
    themes = {
        f"generator/_themes/{each.relative_to(ROOT / 'themes').as_posix()}"
        for each in (ROOT / "themes").rglob("*.html")
    }
    assert themes <= names
    with tarfile.open(next((tmp_path / "a" / "dist").glob("*.tar.gz"))) as archive:
        inside = {name.partition("/")[2] for name in archive.getnames()}
    assert data <= inside


@pytest.mark.long
def test_an_installed_wheel_in_an_empty_environment_makes_the_demo(tmp_path: Path) -> None:
    build(tmp_path)
    wheel = next((tmp_path / "dist").glob("*.whl"))
    subprocess.run([sys.executable, "-m", "venv", str(tmp_path / "venv")], check=True)
    programs = tmp_path / "venv" / "bin"
    install = [str(programs / "pip"), "install", "--quiet"]
    lock = subprocess.run([*install, "--require-hashes", "-r", str(ROOT / "requirements.lock")], check=False)
    if lock.returncode:
        pytest.skip("the package registry cannot be reached")
    subprocess.run([*install, "--no-deps", str(wheel)], check=True)
    words = ["make", str(ROOT / "content"), "--output", str(tmp_path / "out"), "--day", "2026-11-25"]
    subprocess.run([str(programs / "tinleaf"), *words], cwd=tmp_path, check=True, capture_output=True)
    assert (tmp_path / "out" / "site" / "index.html").is_file()
