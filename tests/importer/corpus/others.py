"""The layouts of another hand, and what is measured of them beside the counts of the corpus."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from random import Random

from generator.asked.incoming import arrive
from generator.catalogue.names import fold
from tests.importer.corpus.bakes_other import OTHERS
from tests.importer.corpus.layouts import Text
from tests.importer.corpus.measuring import Score, score, unasked_wrong
from tests.importer.corpus.others_1 import FIRST
from tests.importer.corpus.others_2 import SECOND
from tests.importer.corpus.others_3 import THIRD_BY_OTHERS
from tests.importer.corpus.others_4 import FOURTH_BY_OTHERS
from tests.importer.corpus.others_words import Other
from tests.importer.corpus.truth import Bake
from tests.importer.kitchen import kitchen

BY_OTHERS: Mapping[str, Other] = {**FIRST, **SECOND, **THIRD_BY_OTHERS, **FOURTH_BY_OTHERS}
_TITLE = re.compile(r"^title: [\"']?(.+?)[\"']?$", re.MULTILINE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Beside:
    """Texts with their title found, of how many, and lines that were read wrong without a question."""

    titles: tuple[int, int]
    unasked: tuple[str, ...]


def texts_by_others(layouts: Mapping[str, Other]) -> Iterable[tuple[str, Bake, Text]]:
    """Every bake that is written so in every layout, always the same."""
    for name, layout in layouts.items():
        for number, bake in enumerate(OTHERS):
            if (whole := layout.adapt(bake)) is not None:
                yield f"{name} {number}", whole, layout.write(whole, Random(f"{name} {number}"))


def measured(texts: Iterable[tuple[str, Bake, Text]]) -> Score:
    total = Score()
    for name, bake, text in texts:
        total = total + score(name, bake, text)
    return total


def beside(texts: Iterable[tuple[str, Bake, Text]]) -> Beside:
    """Whether the title is the bake's, and which lines say something else without asking."""
    titles, count, unasked = 0, 0, []
    for name, bake, text in texts:
        count += 1
        for brought in arrive(text.name, text.data.encode(), kitchen()).recipes:
            found = _TITLE.search(brought.text)
            titles += found is not None and fold(found[1]) == fold(bake.title)
            unasked += [f"{name}: {each}" for each in unasked_wrong(bake, brought)]
    return Beside(titles=(titles, count), unasked=tuple(unasked))
