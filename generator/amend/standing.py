"""The content folder as it stands at one moment: the bytes of what a correction may touch, and what they mean."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from types import MappingProxyType

from generator.diagnostics.diagnostic import Diagnostics, Severity
from generator.history.ledger import LEDGER
from generator.pipeline import CheckResult, check_folder
from generator.source.characters import MOST_BYTES
from generator.source.pending import Change

PANTRY = "pantry.yaml"


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """`files` holds recipes, pantry and ledger by path; everything was understood from these very bytes."""

    root: Path
    day: date | None
    files: Mapping[str, bytes]
    result: CheckResult

    def text(self, path: str) -> str:
        """The file as text, byte-order mark and line ends included; "" where there is none."""
        return self.files.get(path, b"").decode("utf-8", "replace")

    def with_files(self, changed: Mapping[str, bytes]) -> CheckResult:
        """What the folder would mean with other bytes in these files."""
        return check_folder(self.root, day=self.day, instead={**self.files, **changed})

    def changes(self, changed: Mapping[str, bytes]) -> tuple[Change, ...]:
        """The changes to commit, the ledger last, so that it never tells of what is not there yet."""
        ordered = sorted(changed, key=lambda path: (path == LEDGER, path))
        return tuple(Change(path=path, before=self.files.get(path), after=changed[path]) for path in ordered)

    def ledger_faults(self) -> Diagnostics:
        """What is wrong in the ledger: nothing is added to one that cannot be read whole."""
        return tuple(
            each
            for each in self.result.diagnostics
            if each.span.path == LEDGER and each.severity is Severity.ERROR
        )


def path_of(recipe: str) -> str:
    return f"recipes/{recipe}.md"


def read_standing(root: Path, *, day: date | None) -> Standing:
    """Reads and understands the folder. What cannot be read is left out, and told by the check itself."""
    files = {}
    for file in (*sorted((root / "recipes").glob("*.md")), root / PANTRY, root / LEDGER):
        try:
            if file.is_file() and (file.name == LEDGER or file.stat().st_size <= MOST_BYTES):
                files[file.relative_to(root).as_posix()] = file.read_bytes()
        except OSError:
            continue
    return Standing(
        root=root,
        day=day,
        files=MappingProxyType(files),
        result=check_folder(root, day=day, instead=files),
    )
