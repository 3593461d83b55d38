"""Finds the one recipe that a command is about, or says why it cannot be shown."""

from pathlib import Path
from typing import TYPE_CHECKING

from generator.cli.findings import show_findings
from generator.cli.terminal import say
from generator.diagnostics.diagnostic import Severity, did_you_mean

if TYPE_CHECKING:
    from generator.pipeline import CheckResult

FOR_ALL = ("site.yaml", "pantry.yaml")


def is_showable(result: "CheckResult", name: str, *, content: Path) -> bool:
    """Whether the recipe NAME is there and free of errors. Tells what concerns it on standard error."""
    path = f"recipes/{name}.md"
    if not is_known(result, name):
        return False
    errors = [each for each in result.diagnostics if each.severity is Severity.ERROR]
    concerned = [each for each in errors if each.span.path in (path, *FOR_ALL)]
    warnings = [each for each in result.diagnostics if each not in errors and each.span.path == path]
    show_findings([*concerned, *warnings], result.texts, content=content)
    return not concerned


def is_known(result: "CheckResult", name: str) -> bool:
    """Whether there is a file of that name, with errors or without; the nearest names where there is none."""
    path = f"recipes/{name}.md"
    if path in result.texts:
        return True
    names = [each[len("recipes/") : -len(".md")] for each in result.texts if each.startswith("recipes/")]
    say(f"there is no recipe {path}. {did_you_mean(name, names) or _some(names)}".rstrip())
    return False


def _some(names: list[str]) -> str:
    return f"There is: {', '.join(sorted(names)[:12])}." if names else "There are no recipes yet."


def tell_why_not(result: "CheckResult", name: str, *, content: Path) -> None:
    """For a recipe that has no error of its own, and needs another that has."""
    errors = [each for each in result.diagnostics if each.severity is Severity.ERROR]
    show_findings(errors, result.texts, content=content)
    say(f"{name} cannot be shown before these are mended")
