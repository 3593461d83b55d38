"""The program as it stands: its own code, data and themes, and the libraries it is run with."""

import sys
import sysconfig
from functools import cache
from hashlib import sha256
from pathlib import Path

from generator.build.snapshot import snapshot_of

_PACKAGE = Path(__file__).resolve().parent.parent
_TREES: tuple[Path, ...] = (_PACKAGE, _PACKAGE.parent / "themes")
_LIBRARIES = (
    *("babel", "brotli", "fontpkg-fira-sans-condensed", "fontpkg-vollkorn", "fonttools", "jinja2"),
    *(
        "markdown-it-py",
        "markupsafe",
        "pillow",
        "pyyaml",
        "segno",
        "tinycss2",
        "tzdata",
        "weasyprint",
        "pydyf",
    ),
)


def program_stamp() -> str:
    """By sizes and times alone: the same as last time, or in doubt. Whatever is installed touches its folder."""
    marks = [_code() if each == _PACKAGE else _standing(each) for each in _TREES if each.is_dir()]
    return sha256("\n".join((sys.version, *marks)).encode()).hexdigest()


@cache
def _code() -> str:
    """The code as it stood when it was first asked for: it is what runs, whatever is installed meanwhile."""
    installed = [_changed(sysconfig.get_path(name)) for name in ("purelib", "platlib")]
    return "\n".join((_standing(_PACKAGE), *installed))


def _standing(tree: Path) -> str:
    return snapshot_of(tree, without=frozenset({"__pycache__"})).mark


def _changed(folder: str) -> str:
    try:
        return str(Path(folder).stat().st_mtime_ns)
    except OSError:
        return "-"


_KNOWN: list[str] = []


def known_mark(mark: str) -> None:
    """What `program_mark` gave for the program while it had the stamp that it has now."""
    _KNOWN[:] = [mark]


def program_mark() -> str:
    """By content: all code and data of ours, and the versions of the libraries. Themes are marked file by file."""
    return _KNOWN[0] if _KNOWN else _worked_out()


@cache
def _worked_out() -> str:
    hashed = sha256(sys.version.encode())
    for path in sorted(each for each in _PACKAGE.rglob("*") if each.is_file()):
        inside = path.relative_to(_PACKAGE)
        if inside.suffix != ".pyc" and inside.parts[0] != "_themes":
            hashed.update(f"\n{inside.as_posix()}\n".encode())
            hashed.update(path.read_bytes())
    for library in _LIBRARIES:
        hashed.update(f"\n{library} {_version(library)}".encode())
    return hashed.hexdigest()


def _version(library: str) -> str:
    # It loads what reads mail and archives, which a make that has nothing to do would wait for.
    from importlib.metadata import PackageNotFoundError, version

    try:
        return version(library)
    except PackageNotFoundError:
        return "-"
