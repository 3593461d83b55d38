"""What stands on which side of a tag. Letters never shrink: what does not fit goes to the second side, or further."""

from dataclasses import dataclass

from generator.render.tag_sheets.sizes import Size
from generator.wording.speech import later, say

HEAD, PERSON, NET, DATES = "head", "person", "net", "dates"
LIST, BRIEF, CAUTIONS = "list", "brief", "cautions"
LIST_WORDS = later("the list of ingredients")
KEEPS, PLACE, PACKS, TURN, TITLE = "keeps", "place", "packs", "turn", "title"


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """The blocks of both sides in their order. `told` says to the maker what stands elsewhere than in front."""

    front: tuple[str, ...]
    second: tuple[str, ...] = ()
    told: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """A plan, with or without the code, which stands on the second side where there is one."""

    plan: Plan
    coded: bool


# The list of ingredients and the line about allergens after it stay together wherever they go. What is contained and
# what may be is said in front on every tag, beside the word that the list is on the back: it is read first.
PLAIN = (
    Plan(front=(HEAD, PERSON, LIST, CAUTIONS, KEEPS, PLACE, PACKS, NET, DATES)),
    Plan(
        front=(HEAD, PERSON, BRIEF, TURN, CAUTIONS, KEEPS, PLACE, PACKS, NET, DATES),
        second=(TITLE, LIST),
        told=LIST_WORDS,
    ),
    Plan(
        front=(HEAD, PERSON, BRIEF, TURN, CAUTIONS, KEEPS, NET, DATES),
        second=(TITLE, LIST, PLACE, PACKS),
        told=later("the list of ingredients, the place and the packs"),
    ),
    Plan(
        front=(HEAD, PERSON, BRIEF, TURN, CAUTIONS, PLACE, PACKS, NET, DATES),
        second=(TITLE, LIST, KEEPS),
        told=later("the list of ingredients and the keeping"),
    ),
    Plan(
        front=(HEAD, PERSON, BRIEF, TURN, CAUTIONS, KEEPS, PLACE, PACKS, NET, DATES),
        second=(LIST,),
        told=LIST_WORDS,
    ),
    Plan(
        front=(HEAD, PERSON, BRIEF, TURN, CAUTIONS, KEEPS, PLACE, NET, DATES),
        second=(LIST, PACKS),
        told=later("the list of ingredients and the packs"),
    ),
    Plan(
        front=(HEAD, PERSON, BRIEF, TURN, CAUTIONS, NET, DATES),
        second=(LIST, KEEPS, PLACE, PACKS),
        told=later("the list of ingredients, the keeping, the place and the packs"),
    ),
    Plan(
        front=(HEAD, PERSON, BRIEF, TURN, NET, DATES),
        second=(LIST, CAUTIONS, KEEPS, PLACE, PACKS),
        told=later("the list of ingredients, the cautions, the keeping, the place and the packs"),
    ),
)
# On sheets of its own a tag has no second side.
WHOLE = PLAIN[0]
FOLDED = (
    Plan(
        front=(HEAD, PERSON, BRIEF, TURN, CAUTIONS, NET, DATES),
        second=(TITLE, LIST, KEEPS, PLACE, PACKS),
    ),
    Plan(
        front=(HEAD, PERSON, BRIEF, TURN, NET, DATES),
        second=(TITLE, LIST, CAUTIONS, KEEPS, PLACE, PACKS),
        told=later("the cautions"),
    ),
)


_ONE = {
    False: later("{things} stands on the back: the front has no room."),
    True: later("{things} stands inside: the front has no room."),
}
_SEVERAL = {
    False: later("{things} stand on the back: the front has no room."),
    True: later("{things} stand inside: the front has no room."),
}


def plans_for(size: Size) -> tuple[Plan, ...]:
    """What is tried, in order. Within each the code is left out before anything moves, since it only adds."""
    return FOLDED if size.folded else PLAIN


def moved_words(step: Step, size: Size, *, has_code: bool) -> tuple[str, ...]:
    """Sentences for the maker: what moved, and what was left out."""
    words = []
    if step.plan.told:
        things = say(step.plan.told)
        one = step.plan.told == LIST_WORDS
        sentence = _ONE[size.folded] if one else _SEVERAL[size.folded]
        words.append(say(sentence, things=f"{things[:1].upper()}{things[1:]}"))
    if step.plan.second:
        words.append(say("Print on both sides, turned over the long edge."))
    if has_code and not step.coded:
        words.append(say("The code is left out: it would take the room of words."))
    return tuple(words)
