"""Rows for pantry.yaml, proposed for what nobody knows yet. The maker reads the packs; nothing is claimed here."""

from collections.abc import Iterable

from generator.importer.markdown_text import comment, scalar
from generator.importer.model import PantryRow


def row_text(row: PantryRow) -> str:
    """A row as it is typed: what it probably stands for, or nothing but the question what its pack says."""
    name = scalar(row.name)
    if row.stands_for:
        return f"{name}:\n  is: {scalar(row.stands_for)}"
    near = f"  # near: {comment(', '.join(row.near))}" if row.near else ""
    return f"{name}:{near}\n  note: read its pack, then say what it contains"


def with_rows(text: str, rows: Iterable[PantryRow]) -> str:
    """The pantry's text with the rows behind it, in the line ends that it has; every other letter is kept."""
    added = [row_text(each) for each in rows]
    if not added:
        return text
    end = "\r\n" if "\r\n" in text else "\n"
    gap = "" if not text or text.endswith(("\n", "\r")) else end
    block = ["", "# Brought in: read these packs.", *(line for row in added for line in row.splitlines())]
    return f"{text}{gap}{end.join(block if text else block[1:])}{end}"
