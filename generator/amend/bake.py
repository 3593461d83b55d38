"""The bake record that a correction comes from, as it is kept beside the correction."""

from pathlib import PurePosixPath

from generator.amend.answer import Refused
from generator.pipeline import CheckResult


def bake_named(result: CheckResult, recipe: str, name: str) -> str | Refused:
    """The name of the record, given by its day, its file or its name; "" where none is given."""
    wanted = PurePosixPath(name.strip()).name.removesuffix(".yaml")
    if not wanted:
        return ""
    own = [each for each in result.bakes if each.recipe == recipe]
    stems = [PurePosixPath(each.path).stem for each in own]
    found = [stem for each, stem in zip(own, stems, strict=True) if wanted in (stem, each.day.isoformat())]
    if len(found) == 1:
        return found[0]
    if len(found) > 1:
        return Refused(
            message=f"{recipe} was baked {len(found)} times that day", hint=f"Name one: {', '.join(found)}."
        )
    return Refused(
        message=f"there is no bake record “{wanted}” of {recipe}",
        hint=f"There is: {', '.join(sorted(stems)[-6:])}."
        if stems
        else f"Open one with: tinleaf baked {recipe}.",
    )
