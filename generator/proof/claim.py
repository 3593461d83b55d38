"""What a built file must say: the words of one thing of the recipe, as they stand together."""

from dataclasses import dataclass

from generator.proof.squeeze import letters_of

# What a mistake in it would mean: an amount or time; what keeps an eater from harm; anything else.
AMOUNT, DECLARATION, WORDS = "amount", "declaration", "words"


@dataclass(frozen=True, slots=True, kw_only=True)
class Claim:
    """`what` names the thing to the maker ("the line of bread flour"), `says` are its words.

    `ways` are all wordings that a format may have, `spellings` the letters of each. `loose` stands anywhere, all
    others stand in the order in which they are given. What is not `needed` explains its figures where it stands, and
    may as well not be there. `group` names the section that it may be left out with, for want of room.
    """

    what: str
    says: str
    ways: tuple[str, ...]
    spellings: tuple[str, ...]
    kind: str = AMOUNT
    loose: bool = False
    needed: bool = True
    group: str = ""


def claim(
    what: str, *ways: str, kind: str = AMOUNT, loose: bool = False, needed: bool = True, group: str = ""
) -> tuple[Claim, ...]:
    """One claim that may be worded in any of these ways, the first of them for messages; none where it is empty."""
    told = {letters: " ".join(way.split()) for way in reversed(ways) if (letters := letters_of(way))}
    if not told:
        return ()
    words = tuple(reversed(told.values()))
    spellings = tuple(reversed(told))
    return (
        Claim(
            what=what,
            says=words[0],
            ways=words,
            spellings=spellings,
            kind=kind,
            loose=loose or not needed,
            needed=needed,
            group=group,
        ),
    )
