"""What `tinleaf show` does with `--revision N` and `--changes`."""

import argparse
import json
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from generator.cli.terminal import say

if TYPE_CHECKING:
    from generator.formula.wish import Wish
    from generator.pipeline import CheckResult
    from generator.records.steps import Step

_INDENT = "  "


def show_revision(
    result: "CheckResult", options: argparse.Namespace, *, content: Path, wish: "Wish | None"
) -> int:
    """An earlier revision in the terminal or as data; what it is rebuilt from is told on standard error."""
    from generator.pipeline import show_json, show_text
    from generator.records.rebuild import Refused, rebuild

    then = rebuild(content, result, options.recipe, options.revision)
    if isinstance(then, Refused):
        say(then.words)
        return 1
    show = show_json if options.format == "json" else show_text
    shown = show(replace(result, setting=then.setting), options.recipe, wish=wish)
    if shown.refused:
        say(f"{options.recipe}: {shown.refused}")
        return 1
    say(then.told)
    print(shown.text.rstrip("\n"))
    return 0


def show_changes(result: "CheckResult", options: argparse.Namespace, *, content: Path) -> int:
    """Every step from the first revision on; with `--revision N` all that changed since then, as one."""
    from generator.records.rebuild import Refused
    from generator.records.steps import since, steps

    if options.revision is None:
        found = steps(content, result, options.recipe)
    else:
        one = since(content, result, options.recipe, options.revision)
        if isinstance(one, Refused):
            say(one.words)
            return 1
        found = (one,)
    if options.format == "json":
        print(json.dumps([_plain(each) for each in found], ensure_ascii=False, indent=1))
    elif found:
        print("\n\n".join(_words(each) for each in found))
    else:
        print(f"{options.recipe}: one revision, and nothing has changed")
    return 0


def _plain(step: "Step") -> dict[str, object]:
    return {
        "from": step.before,
        "to": step.after,
        "on": step.on.isoformat() if step.on else None,
        "cause": step.cause or None,
        "what": step.what or None,
        "why": step.why or None,
        "changes": [{"harm": each.harm.name.lower(), "words": each.words} for each in step.told],
        "effects": list(step.effects),
        "unrecorded": step.unrecorded or None,
    }


def _words(step: "Step") -> str:
    lines = [_head(step)]
    if step.why:
        lines.append(f"{_INDENT}why: {step.why}")
    if step.unrecorded:
        lines.append(f"{_INDENT}what changed is recorded nowhere: {step.unrecorded}")
    elif not step.told:
        lines.append(f"{_INDENT}nothing that a reader would weigh, heat, time or read otherwise")
    lines += [f"{_INDENT}{each.words}" for each in step.told]
    if step.effects:
        lines.append(f"{_INDENT}so: {'; '.join(step.effects)}")
    return "\n".join(lines)


def _head(step: "Step") -> str:
    from generator.records.steps import UNNUMBERED

    if step.cause == UNNUMBERED:
        return f"since revision {step.before}, without a correction"
    if step.before == step.after:
        return f"revision {step.before}, which is the newest, and today"
    cause = {"hand": "changed by hand", "undo": "a correction taken back"}.get(step.cause, "")
    if step.cause in ("component", "pantry"):
        # `what` begins with the component's name, or with “pantry”.
        cause = f"by {step.what}"
    day = f", {step.on.isoformat()}" if step.on else ""
    return f"revision {step.before} → {step.after}{day}{f', {cause}' if cause else ''}"
