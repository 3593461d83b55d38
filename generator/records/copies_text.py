"""The text that Tinleaf would put today where a copy stands."""

from generator.history.places import DESCRIPTION, PINNED, film_of, kind_of
from generator.pipeline import CheckResult, describe_text
from generator.render.description.variants import COMMENT, FULL

COMMANDS = {DESCRIPTION: "", PINNED: " --comment"}
"""What `tinleaf describe RECIPE` needs besides to print the text of a place."""


def text_at(result: CheckResult, recipe: str, place: str) -> str:
    """The description of the film that the place is under, or the comment to pin; "" for a place of another kind."""
    films = tuple(each.url for each in result.setting.book[recipe].about.videos)
    if kind_of(place) == DESCRIPTION:
        return describe_text(result, recipe, FULL, film=film_of(place, films))
    return describe_text(result, recipe, COMMENT) if kind_of(place) == PINNED else ""


def command_for(recipe: str, place: str) -> str:
    """What to type for the text of a place. A description names its film where there are several."""
    kind = kind_of(place)
    film = place.removeprefix(kind).strip() if kind == DESCRIPTION else ""
    return f"tinleaf describe {recipe}{COMMANDS.get(kind, '')}{f' --video {film}' if film else ''}"
