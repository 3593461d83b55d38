"""What a built file must say: the words of one thing of the recipe, as they stand together."""

from collections.abc import Iterator
from dataclasses import dataclass

from generator.proof.squeeze import letters_of

# What a mistake in it would mean: an amount or time; what keeps an eater from harm; anything else.
AMOUNT, DECLARATION, WORDS = "amount", "declaration", "words"


@dataclass(frozen=True, slots=True, kw_only=True)
class Claim:
    """`what` names the thing to the maker ("the line of bread flour"), `says` are its words.

    `ways` are all wordings that a format may have, `spellings` the letters of each, worked out when they are asked
    for: most texts have the first. `loose` stands anywhere, all others stand in the order in which they are given.
    What is not `needed` explains its figures where it stands, and may as well not be there. `group` names the section
    that it may be left out with, for want of room.
    """

    what: str
    wordings: tuple[str, ...]
    kind: str = AMOUNT
    loose: bool = False
    needed: bool = True
    group: str = ""

    @property
    def says(self) -> str:
        return self.ways[0]

    @property
    def ways(self) -> tuple[str, ...]:
        return tuple(reversed(self._told.values()))

    @property
    def spellings(self) -> tuple[str, ...]:
        return tuple(reversed(self._told))

    @property
    def _told(self) -> dict[str, str]:
        return {
            letters: " ".join(way.split()) for way in reversed(self.wordings) if (letters := letters_of(way))
        }

    def each_spelling(self) -> Iterator[str]:
        """The letters of each wording, one after the other, some perhaps twice."""
        for way in self.wordings:
            if letters := letters_of(way):
                yield letters


def claim(
    what: str, *ways: str, kind: str = AMOUNT, loose: bool = False, needed: bool = True, group: str = ""
) -> tuple[Claim, ...]:
    """One claim that may be worded in any of these ways, the first of them for messages; none where it is empty."""
    for number, way in enumerate(ways):
        if letters_of(way):
            return (
                Claim(
                    what=what,
                    wordings=ways[number:],
                    kind=kind,
                    loose=loose or not needed,
                    needed=needed,
                    group=group,
                ),
            )
    return ()
