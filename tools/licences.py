"""Writes docs/licences.md: every locked library with its version and the licence its own metadata names.

python tools/licences.py          writes the list
python tools/licences.py --check  exits with 1 where the list differs
"""

import re
import sys
from importlib.metadata import PackageMetadata, PackageNotFoundError, metadata
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
LIST = ROOT / "docs" / "licences.md"
HEAD = """# Licences

What the program needs when it runs, as locked in `requirements.lock`. Written by `tools/licences.py` from the
metadata that each library was published with; a library that is for other systems only is not installed here,
and its licence is then not known to this list.

| library | version | licence |
|---|---|---|
"""


def locked(text: str) -> list[tuple[str, str]]:
    """Name and version of every library in a lock."""
    return re.findall(r"^([a-z0-9][a-z0-9._-]*)==([^\s;\\]+)", text, re.MULTILINE | re.IGNORECASE)


def licence_of(about: PackageMetadata) -> str:
    named = about.get("License-Expression") or ""
    classes = [
        each.split(" :: ")[-1] for each in about.get_all("Classifier") or [] if each.startswith("License")
    ]
    written = (about.get("License") or "").strip().splitlines()
    return named or ", ".join(classes) or (written[0] if written else "") or "not named"


def row(name: str, version: str) -> str:
    try:
        return f"| {name} | {version} | {licence_of(metadata(name))} |"
    except PackageNotFoundError:
        return f"| {name} | {version} | not installed on this system |"


def licences(lock: str) -> str:
    return HEAD + "\n".join(row(*each) for each in locked(lock)) + "\n"


def main() -> int:
    wanted = licences((ROOT / "requirements.lock").read_text("utf-8"))
    if "--check" in sys.argv:
        return int(LIST.read_text("utf-8") != wanted)
    LIST.write_text(wanted, "utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
