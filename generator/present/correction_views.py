"""What a reader is told of corrections."""

from dataclasses import dataclass
from datetime import date

from generator.present.page_link import PageLink
from generator.wording.speech import say


@dataclass(frozen=True, slots=True, kw_only=True)
class CorrectionView:
    """A correction in words; `recipe` leads to the page it concerns, `revision` is the number that it made.

    `change` is "bread flour 400 g (3 cups) → 430 g (3⅓ cups)", `because` the maker's reason as it follows that word,
    "" where the page gives none. `film` is what the film still shows.
    """

    on: date
    day: str
    change: str
    why: str
    film: str
    recipe: PageLink
    because: str = ""
    revision: int = 0

    @property
    def sentence(self) -> str:
        """`bread flour 400 g → 430 g, because too wet at two bakes in damp weather.`"""
        words = (
            say("{change}, because {why}", change=self.change, why=self.because)
            if self.because
            else self.change
        )
        return words if words.endswith((".", "!", "?", "…")) else f"{words}."

    @property
    def rest(self) -> str:
        """What follows `change` in the sentence."""
        return self.sentence.removeprefix(self.change)


@dataclass(frozen=True, slots=True, kw_only=True)
class SinceView:
    """All that changed since revision `number`, for whoever holds a card or a print of it.

    `alarms` are changes of allergens and cautions, `changes` those of amounts, times and temperatures. With neither,
    only words changed. `anchor` is where the code on a card leads.
    """

    number: int
    alarms: tuple[str, ...]
    changes: tuple[str, ...]

    @property
    def anchor(self) -> str:
        return since_anchor(self.number)


def since_anchor(revision: int) -> str:
    return f"since-{revision}"
