"""Cautions that the formula itself raises. Their basis is public food-safety advice, named beside each."""

from collections.abc import Iterator
from fractions import Fraction

from generator.formula.model import Formula, Heat

RAW = "Do not taste raw dough or batter: {things}. Wash hands and surfaces."  # CDC; FDA on raw flour
HONEY = "Honey is not for babies under 12 months, not even baked."  # INSPQ; CDC, from memory
SYRUP = "Hot sugar burns badly: keep children away and let it cool before you touch it."  # common practice
ALCOHOL = "Made with alcohol; some of it remains after baking."  # USDA retention factors, release 6 (2007)
CHOKING = "Whole nuts and hard pieces can choke: not for children under 4."  # American Academy of Pediatrics
SYRUP_FROM_C = Fraction(105)


def cautions_of(formula: Formula) -> tuple[str, ...]:
    """The sentences, each once, in a fixed order."""
    keys = set(_keys(formula))
    found = []
    raw = [words for key, words in (("raw flour", "flour"), ("raw egg", "egg")) if key in keys]
    if raw:
        things = f"{' and '.join(raw)} {'is' if len(raw) == 1 else 'are'} raw"
        found.append(RAW.format(things=things))
    found += [HONEY] if "honey" in keys else []
    found += [SYRUP] if _is_hot_sugar(formula) else []
    found += [ALCOHOL] if "alcohol" in keys else []
    found += [CHOKING] if keys & {"whole nuts", "choking"} else []
    return tuple(found)


def _keys(formula: Formula) -> Iterator[str]:
    for line in formula.lines:
        for each in (line, *line.alternatives):
            if each.ware is not None:
                yield from each.ware.ingredient.cautions


def _is_hot_sugar(formula: Formula) -> bool:
    """A temperature that is no oven's and above boiling: syrup or caramel."""
    heats = (
        mention
        for way in formula.ways
        for section in way.sections
        for block in section.blocks
        for mention in block.words.mentions
        if isinstance(mention, Heat) and mention.kind == "other"
    )
    return any(heat.temperature.celsius().high >= SYRUP_FROM_C for heat in heats)
