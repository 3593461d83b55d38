"""The rules that a file's name must keep, because it becomes an address and lies on any disk."""

import re
from collections.abc import Iterable, Iterator

from generator.diagnostics.diagnostic import Diagnostic
from generator.diagnostics.span import whole_file

NAME = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
_BAKE = re.compile(r"([0-9]{4}-[0-9]{2}-[0-9]{2})-(.+)")
# Device names that Windows keeps whatever the extension (Microsoft, "Naming Files, Paths, and Namespaces").
_DEVICES = frozenset(
    ("con", "prn", "aux", "nul", *(f"{each}{n}" for each in ("com", "lpt") for n in range(1, 10)))
)
# Folders of the site that a standing page of the same name would write over.
_TAKEN = frozenset(
    ("recipes", "journal", "kinds", "corrections", "allergens", "media", "assets", "search", "by", "leaf")
)


def printable(name: str) -> str:
    """A file name as it can be shown: bytes that are no UTF-8 and control characters become escapes."""
    text = name.encode("utf-8", "surrogateescape").decode("utf-8", "backslashreplace")
    return "".join(each if each.isprintable() else each.encode("unicode_escape").decode() for each in text)


def check_name(path: str, stem: str, folder: str) -> Iterator[Diagnostic]:
    """What is wrong with the name of a file in `folder`, given without its extension."""
    name = stem
    if folder == "bakes":
        match = _BAKE.fullmatch(stem)
        if match is None:
            yield _fault("S051", path, "a bake record is named by its date", _BAKE_HINT)
            return
        name = match[2]
    if not NAME.fullmatch(name):
        message = f"“{printable(name)}” cannot be an address"
        yield _fault("S051", path, message, f"Rename the file{_suggestion(name)}: {_RULE}")
    elif name in _DEVICES:
        message = f"“{name}” is a name that Windows keeps for itself"
        yield _fault("S053", path, message, "Give the file another name.")
    elif folder == "standing" and name in _TAKEN:
        message = f"“{name}” is already the address of a part of the site"
        yield _fault("S053", path, message, "Give the page another name.")


def check_media_name(path: str) -> Iterator[Diagnostic]:
    last = path.rsplit("/", 1)[-1]
    if last.split(".", 1)[0].casefold() in _DEVICES:
        message = f"“{last}” is a name that Windows keeps for itself"
        yield _fault("S053", path, message, "Give the file another name.")


def find_collisions(paths: Iterable[str]) -> Iterator[Diagnostic]:
    """Paths that differ only in capitals: one file on the disks of most people."""
    seen: dict[str, str] = {}
    for path in sorted(paths):
        other = seen.setdefault(path.casefold(), path)
        if other != path:
            message = f"this name and “{other}” are one on disks that ignore capitals"
            yield _fault("S052", path, message, "Rename one of the two.")


_RULE = "lower-case letters a to z, digits and single hyphens only."
_BAKE_HINT = "Rename the file to the day and the recipe, as in 2026-09-12-honey-oat-braid.yaml."


def _suggestion(name: str) -> str:
    plain = re.sub(r"[^a-z0-9]+", "-", printable(name).casefold()).strip("-")
    return f" to “{plain}”" if NAME.fullmatch(plain) else ""


def _fault(code: str, path: str, message: str, hint: str) -> Diagnostic:
    return Diagnostic(code=code, message=message, span=whole_file(path), hint=hint)
