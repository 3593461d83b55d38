"""The tins that a bake fits into: its own, and the usual ones that its page offers with their amounts."""

import re
from collections.abc import Iterator

from generator.formula.model import Formula
from generator.formula.tin_text import read_shape
from generator.formula.tin_twins import both_names, muffin_name, usual_twin
from generator.formula.tins import TinShape
from generator.formula.usual_tins import offers
from generator.present.addresses import slug
from generator.present.search_views import Choice, SearchTin
from generator.present.tins import factor_words, typeset_tin
from generator.wording.speech import say

# What a tin and its twin have in common: “2 x round ”, “loaf ”.
_COUNT_AND_KIND = re.compile(r"^(?:\d+ x )?[a-z]+ ")


def search_tins(formula: Formula) -> tuple[SearchTin, ...]:
    """None for a recipe without a tin, and only its own where nothing can be compared."""
    own, _ = read_shape(formula.about.tin) if formula.about.tin else (None, ())
    if own is None:
        return ()
    return tuple(_tins(own, formula.about.tin))


def _tins(own: TinShape, text: str) -> Iterator[SearchTin]:
    mine = _own(own, text)
    yield SearchTin(tin=mine, times="")
    for offer in offers(own):
        names = both_names(offer)
        tin = _choice(*names)
        if tin.id != mine.id:
            yield SearchTin(tin=tin, times=say("{factor} × the recipe", factor=factor_words(offer.factor)))


def _own(own: TinShape, text: str) -> Choice:
    """One name for tins that are sold as one, so that a tin in inches and its twin in centimetres are one choice."""
    if own.kind == "muffin":
        return _choice(muffin_name(own), "")
    twin = usual_twin(own)
    return _choice(twin.metric, twin.inches) if twin else _choice(" ".join(text.split()), "")


def _choice(name: str, other: str) -> Choice:
    twin = _COUNT_AND_KIND.sub("", other)
    title = typeset_tin(f"{name} ({twin})" if twin else name)
    return Choice(id=slug(name), title=title[:1].upper() + title[1:])
