"""What the maker is told beside the tags, and the eater is not: on what they stand, and what is to be checked."""

from collections.abc import Iterable

from generator.present.tag_views import TagView
from generator.wording.speech import later, say

CHECK_LOCALLY = later("Check with your local authority")


def remarks(tag: TagView) -> tuple[str, ...]:
    """Sentences in order: what is left out, the record or the packs assumed, the statement of the place."""
    return (*tag.untold, *_basis(tag), *_place(tag))


def remarks_text(told: Iterable[str]) -> str:
    """The sentences as a text file."""
    return "".join(f"{words}\n" for words in told)


def _basis(tag: TagView) -> tuple[str, ...]:
    if tag.record:
        return tuple(filter(None, (say("The tags are printed from {record}.", record=tag.record), tag.packs)))
    words = say("There is no bake record: dates are left blank, and packs are assumed to be as last read.")
    return tuple(filter(None, (words, tag.packs)))


def _place(tag: TagView) -> tuple[str, ...]:
    """The statement of the place, with what is said beside it on the desk alone."""
    words = tag.recipe.statement_of_place
    if not words:
        told = say("No statement of the place is printed; some places ask for one.")
    elif tag.statement_on:
        told = say(
            "The statement of the place, dated {day}, is printed word for word: “{words}”",
            day=tag.statement_on,
            words=words,
        )
    else:
        told = say("The statement of the place is printed word for word: “{words}”", words=words)
    return (f"{told} {say(CHECK_LOCALLY)}.",)
