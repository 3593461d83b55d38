"""Finds the files of a content folder. What is hidden, or of no known kind, is passed over."""

import os
import stat
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.diagnostics.span import whole_file
from generator.source.names import check_media_name, check_name, find_collisions, printable

FOLDERS = {"recipes": ".md", "journal": ".md", "standing": ".md", "bakes": ".yaml"}
DATA = ("site.yaml", "pantry.yaml", "ledger.jsonl")
_OTHER_NAMES = {
    ".md": (".markdown", ".mdown", ".mkd", ".txt"),
    ".yaml": (".yml", ".json", ".txt"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """Paths inside a content folder, with forward slashes, sorted. `folders` by the folder's name."""

    folders: dict[str, tuple[str, ...]] = field(default_factory=dict)
    data: tuple[str, ...] = ()
    media: tuple[str, ...] = ()


def discover(root: Path) -> tuple[Found, Diagnostics]:
    """The files of the content folder `root`, and what is wrong with the folder and its names."""
    if not root.is_dir():
        what = "this is a file, not a folder" if root.exists() else "there is no such folder"
        hint = "Give the content folder, or lay a new one with “tinleaf start”."
        return Found(), (Diagnostic(code="S050", message=what, span=whole_file("."), hint=hint),)
    walker = _Walker(root=root, real=Path(os.path.realpath(root)))
    folders = {name: tuple(walker.pages(name, suffix)) for name, suffix in FOLDERS.items()}
    data = tuple(name for name in DATA if walker.is_readable(root / name, name))
    walker.pass_over_data()
    media = tuple(sorted(walker.media(root / "media", "media")))
    walker.found.extend(find_collisions((*media, *(path for paths in folders.values() for path in paths))))
    return Found(folders=folders, data=data, media=media), tuple(walker.found)


@dataclass(slots=True, kw_only=True)
class _Walker:
    root: Path
    real: Path
    found: list[Diagnostic] = field(default_factory=list)

    def note(self, code: str, path: str, message: str, hint: str) -> None:
        self.found.append(Diagnostic(code=code, message=message, span=whole_file(path), hint=hint))

    def entries(self, folder: Path, path: str) -> Iterator[tuple[str, Path]]:
        """Name and path of what stands in a folder and is not hidden; none where there is no folder."""
        if not folder.is_dir() or not self._stays_inside(folder, path):
            return
        try:
            names = sorted(os.listdir(folder))
        except OSError:
            self.note("S055", path, "this folder cannot be read", "Look at its permissions.")
            return
        yield from ((name, folder / name) for name in names if not name.startswith("."))

    def pages(self, name: str, suffix: str) -> Iterator[str]:
        for entry, file in self.entries(self.root / name, name):
            path = f"{name}/{printable(entry)}"
            stem, extension = os.path.splitext(entry)
            if extension in _OTHER_NAMES[suffix]:
                hint = f"Rename it to “{printable(stem)}{suffix}” if it belongs here, else move it away."
                self.note("S056", path, f"this file is passed over: only {suffix} files are read", hint)
            elif extension.lower() == suffix and self.is_readable(file, path):
                faults = tuple(check_name(path, stem if extension == suffix else entry, name))
                self.found.extend(faults)
                if not faults:
                    yield path

    def pass_over_data(self) -> None:
        for name, _ in self.entries(self.root, "."):
            stem, extension = os.path.splitext(name)
            if f"{stem}.yaml" in DATA and extension in _OTHER_NAMES[".yaml"]:
                hint = f"Rename it to “{stem}.yaml”."
                self.note("S056", name, f"this file is passed over: {stem}.yaml is read", hint)

    def media(self, folder: Path, path: str) -> Iterator[str]:
        for name, file in self.entries(folder, path):
            inner = f"{path}/{printable(name)}"
            if file.is_dir() and not file.is_symlink():
                yield from self.media(file, inner)
            elif self.is_readable(file, inner):
                self.found.extend(check_media_name(inner))
                yield inner

    def is_readable(self, file: Path, path: str) -> bool:
        """Whether a plain file stands there, inside the folder. A pipe or a device would never end."""
        if file.is_symlink() and not self._stays_inside(file, path):
            return False
        try:
            return stat.S_ISREG(file.stat().st_mode)
        except FileNotFoundError:
            return False
        except OSError:
            self.note("S055", path, "this file cannot be read", "Look at its permissions.")
            return False

    def _stays_inside(self, file: Path, path: str) -> bool:
        target = Path(os.path.realpath(file))
        if not target.exists():
            self.note(
                "S054", path, "this link leads nowhere", "Delete the link, or put the file itself here."
            )
            return False
        if target == self.real or self.real in target.parents:
            return True
        hint = "Copy what it leads to into the folder, and delete the link."
        self.note("S054", path, "this link leads out of the content folder", hint)
        return False
