"""What was brought in, in a few lines for the terminal."""

from collections import Counter

from generator.importer.model import Brought, Confidence


def summary_of(brought: Brought) -> str:
    """What was read with what confidence, what it resembles, what was left out and why."""
    lines = [f"{brought.source_name}: “{brought.title}” as recipes/{brought.name}.md"]
    lines.append(f"  {_counted(len(brought.lines), 'ingredient line')}: {_confidences(brought)}")
    roles = Counter(each.role for each in brought.source)
    steps = _counted(roles["step"], "line") + " of steps"
    others = [_counted(roles[role], role) for role in ("link", "chapter", "credit", "caution") if roles[role]]
    kept = roles["note"] + roles["tags"]
    notes = [f"{_counted(kept, 'line')} kept in the notes"] if kept else []
    lines.append(f"  {', '.join([steps, *others, *notes])}")
    if brought.like:
        lines.append(f"  {brought.like}")
    aside = [line for line in brought.lines if not line.known]
    if aside:
        lines.append(
            f"  set aside, with a caution in the file: {', '.join(line.written.item for line in aside)}"
        )
    lines += [f"  left out: {each}" for each in brought.left_out]
    count = len(brought.doubts)
    lines.append(f"  {_counted(count, 'question')} to answer:" if count else "  no questions")
    return "\n".join(lines)


def _counted(number: int, word: str) -> str:
    return f"{number} {word}{'' if number == 1 else 's'}"


def _confidences(brought: Brought) -> str:
    counts = Counter(line.confidence for line in brought.lines)
    told = [f"{counts[each]} {each.value}" for each in Confidence if counts[each]]
    return ", ".join(told)
