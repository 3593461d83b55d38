"""Cautions that the formula and the method raise, each with its public basis. None is a promise of anything.

A maker sets one aside with a reason in the front matter (`cautions_off`); nothing else takes one away.
"""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from generator.declaration.lines import formula_allergens
from generator.formula.model import Block, Formula, Heat, Line, Mention, Part, Use, WholePart
from generator.measure.same import Same
from generator.present.stored import cooked_on_the_stove, stored
from generator.present.unheated import is_heated, keys_of, left_unheated, ware_keys
from generator.wording.speech import later, say

SYRUP_FROM_C = Fraction(105)


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """`name` as in `formula.caution_names`; `eater` marks what whoever eats it must know, so it goes on a tag."""

    name: str
    words: str
    basis: str
    eater: bool = False


RAW_DOUGH = later("Do not taste raw dough or batter: {things}. Wash hands and surfaces.")
CAUTIONS = (
    Caution(name="raw dough", words=RAW_DOUGH, basis="CDC and FDA on raw flour and raw egg"),
    Caution(
        name="raw flour",
        words=later("Contains raw flour: bake it before anyone eats it."),
        basis="CDC on raw flour; flour heated at home is not reliably treated (FDA)",
        eater=True,
    ),
    Caution(
        name="raw egg",
        words=later(
            "Contains raw egg: use pasteurised egg. Not for young children, in pregnancy, for older or "
            "immune-compromised people."
        ),
        basis="CDC on raw egg; the groups from memory",
        eater=True,
    ),
    Caution(
        name="honey",
        words=later("Honey is not for babies under 12 months, not even baked."),
        basis="INSPQ; CDC, from memory",
        eater=True,
    ),
    Caution(
        name="hot sugar",
        words=later("Hot sugar burns badly: keep children away and let it cool before you touch it."),
        basis="common practice",
    ),
    Caution(
        name="hot oil",
        words=later("Hot fat burns badly: keep children and water away, and never leave it alone."),
        basis="common practice",
    ),
    Caution(
        name="lye",
        words=later(
            "Lye burns: food grade only, gloves and goggles. Add lye to cold water, never water to lye. "
            "Not to be eaten before it is baked."
        ),
        basis="21 CFR 184.1763 (sodium hydroxide in food), from memory; common practice",
    ),
    Caution(
        name="egg filling",
        words=later("Cook egg fillings to 160 °F (71 °C)."),
        basis="foodsafety.gov, minimum temperatures",
    ),
    Caution(
        name="cooling",
        words=later(
            "Cool hot fillings fast: from 135 °F (57 °C) to 70 °F (21 °C) within 2 hours, to 41 °F (5 °C) within 6 "
            "hours in all."
        ),
        basis="FDA Food Code 3-501.14, from memory",
    ),
    Caution(
        name="chilled",
        words=later(
            "Keep refrigerated, at most 40 °F (4 °C). Discard after 2 hours above that, 1 hour above 90 °F "
            "(32 °C)."
        ),
        basis="USDA, danger zone of 40 to 140 °F",
        eater=True,
    ),
    Caution(
        name="garlic in oil",
        words=later(
            "Garlic or herbs in oil: refrigerate at 40 °F (4 °C) or less and use within 4 days, or freeze. "
            "Never keep at room temperature."
        ),
        basis="National Center for Home Food Preservation, 2015 (older pages say 7 days)",
        eater=True,
    ),
    Caution(
        name="starter discard",
        words=later(
            "Starter that is taken off is raw flour: bake it before anyone eats it. Keep it refrigerated; "
            "throw it away if it is mouldy or pink."
        ),
        basis="derived from CDC on raw flour",
    ),
    Caution(
        name="candied peel",
        words=later("Dry candied peel fully and keep it airtight and cool. Throw it away if it is mouldy."),
        basis="common practice, from memory",
    ),
    Caution(
        name="alcohol",
        words=later("Made with alcohol; some of it remains after baking."),
        basis="USDA retention factors, release 6 (2007): 45 % after 25 minutes, 10 % after 2 hours",
        eater=True,
    ),
    Caution(
        name="choking",
        words=later("Whole nuts and hard pieces can choke: not for children under 4."),
        basis="American Academy of Pediatrics",
        eater=True,
    ),
    Caution(
        name="lupin",
        words=later("Lupin can harm people with a peanut allergy too."),
        basis="Regulation (EU) 1169/2011, Annex II, names lupin; the cross-reaction from memory",
        eater=True,
    ),
    Caution(
        name="royal jelly",
        words=later("Royal jelly, bee pollen and propolis can cause severe allergic reactions."),
        basis="Standard 1.2.3 (Australia and New Zealand): warning and advisory statements, the words from memory",
        eater=True,
    ),
    Caution(
        name="xylitol",
        words=later("Xylitol is poisonous to dogs; much of it may act as a laxative."),
        basis="from memory",
        eater=True,
    ),
    Caution(
        name="sugar alcohols",
        words=later("Much sugar alcohol may act as a laxative."),
        basis="from memory",
        eater=True,
    ),
)
ALCOHOL_AS_IT_IS = later(
    "Made with alcohol that no heat takes away."
)  # USDA retention factors: 70 % after a night

# Each in English and in German, whose compounds hold the word at their beginning or their end: "Waldhonig".
_LYE = re.compile(
    r"\b(?:lye|sodium hydroxide|caustic soda|\w*lauge|laugenperlen|ätznatron|natriumhydroxid)\b",
    re.IGNORECASE,
)
_XYLITOL = re.compile(r"\b(?:xylit(?:ol)?|birkenzucker)\b", re.IGNORECASE)
_SUGAR_ALCOHOL = re.compile(r"\b(?:isomalt|(?:malt|erythr|sorb|mann|lact)it(?:ol)?)\b", re.IGNORECASE)
_BEES = re.compile(
    r"\b(?:royal jelly|bee pollen|propolis|gel[ée]e royale|(?:blüten|bienen)pollen)\b", re.IGNORECASE
)
_HONEY = re.compile(r"\bhoney\b|honig(?!melone)", re.IGNORECASE)
_FAT = re.compile(
    r"\b(?:fry|fries|fried|frying|oil|lard|dripping|frittier\w*|ausback\w*|\w*öl|\w*schmalz|frittierfett)\b",
    re.IGNORECASE,
)
_GROUND = re.compile(r"\b(?:ground|milled|powdered|(?:fein )?gemahlene?n?|geriebene?n?)\b", re.IGNORECASE)
_FILLING = re.compile(
    r"\b(?:filling|custard|cream|curd|frosting|icing|topping|cheesecake|mousse|ganache|quiche)s?\b|"
    r"\b\w*(?:füllung|creme|krem|guss|belag|haube|käsekuchen|vanillepudding)\b",
    re.IGNORECASE,
)
# What is a filling by the name of the whole recipe; and what is one of egg without milk.
_CREAM = re.compile(
    r"\b(?:pastry cream|custard|(?:lemon|lime|orange) curd|curd|frangipane cream|mousse)s?\b|"
    r"(?:vanille|konditor|zitronen|limetten|orangen|butter|mandel)creme\b|vanillepudding\b",
    re.IGNORECASE,
)
_CURD = re.compile(r"\bcurds?\b|(?:zitronen|limetten|orangen)creme\b", re.IGNORECASE)
_CHILLED_BAKE = re.compile(
    r"\b(?:cheesecake|custard|quiche|tiramisu|trifle|(?:cream|meringue) (?:pie|tart)|flan|eclair|éclair|"
    r"profiterole|cream puff|mousse)s?\b|"
    r"(?:käse|quark)(?:kuchen|torte)\b|(?:sahne|creme)(?:torte|schnitte|rolle)n?\b|"
    r"windbeutel|bienenstich|panna cotta",
    re.IGNORECASE,
)


def cautions_of(formula: Formula, *, book: Mapping[str, Formula]) -> tuple[Caution, ...]:
    """What the bake raises and the maker has not set aside, in the order of `CAUTIONS`."""
    aside = {each.caution for each in formula.about.cautions_off}
    raised = raised_by(formula, book=book)
    return tuple(
        _worded(each, formula, book) for each in CAUTIONS if each.name in raised and each.name not in aside
    )


def raised_by(formula: Formula, *, book: Mapping[str, Formula]) -> frozenset[str]:
    """The names of all cautions that the formula and the method raise, components included."""
    return _raised_by(Same(formula), Same(book))


@lru_cache(maxsize=64)
def _raised_by(of: Same[Formula], within: Same[Mapping[str, Formula]]) -> frozenset[str]:
    """A page and a tag ask for it, one after the other."""
    formula, book = of.thing, within.thing
    keys = _keys(formula, book)
    left = left_unheated(formula, book)
    raised = set(keys & {"honey", "alcohol"}) | (left & {"raw flour", "raw egg", "chilled"})
    raised |= {"raw dough"} if is_heated(formula) and _raw_things(keys) else set()
    raised |= {"choking"} if _can_choke(formula, book) else set()
    raised |= {"lupin"} if "lupin" in formula_allergens(formula, book=book).allergens else set()
    raised |= (
        _burns(formula) | _named(formula, book) | _fillings(formula, book, frozenset()) | stored(formula)
    )
    return frozenset(raised)


def _worded(caution: Caution, formula: Formula, book: Mapping[str, Formula]) -> Caution:
    words = say(caution.words)
    if caution.name == "raw dough":
        words = say(RAW_DOUGH, things=_raw_things(_keys(formula, book)))
    if caution.name == "alcohol" and "alcohol" in left_unheated(formula, book):
        words = say(ALCOHOL_AS_IT_IS)
    return Caution(name=caution.name, words=words, basis=caution.basis, eater=caution.eater)


def _raw_things(keys: frozenset[str]) -> str:
    if {"raw flour", "raw egg"} <= keys:
        return say("flour and egg are raw")
    if "raw flour" in keys:
        return say("flour is raw")
    return say("egg is raw") if "raw egg" in keys else ""


def _keys(formula: Formula, book: Mapping[str, Formula]) -> frozenset[str]:
    lines = (keys_of(line, book) for line in formula.lines)
    extras = (ware_keys(use.ware) for use in _uses(formula) if use.extra)
    return frozenset[str]().union(*lines, *extras)


def _can_choke(formula: Formula, book: Mapping[str, Formula]) -> bool:
    """Nuts count unless the line says that they are ground."""
    return any(
        keys_of(line, book) & {"whole nuts", "choking"}
        and not _GROUND.search(f"{line.written.size} {line.written.preparation}")
        for line in formula.lines
    )


def _burns(formula: Formula) -> set[str]:
    """Temperatures above boiling that are no oven's: fat where the step speaks of it, sugar where some is in."""
    sweet = any(line.ware is not None and line.ware.ingredient.group == "sugar" for line in formula.lines)
    found = set()
    for block in _blocks(formula):
        if any(map(_above_boiling, block.words.mentions)):
            names = " ".join(use.item for use in _uses_of(block))
            found.add("hot oil" if _FAT.search(f"{block.words.markdown} {names}") else "hot sugar")
    return found if sweet else found - {"hot sugar"}


def _above_boiling(mention: Mention) -> bool:
    if not isinstance(mention, Heat) or mention.kind != "other":
        return False
    return mention.temperature.celsius().high >= SYRUP_FROM_C


def _named(formula: Formula, book: Mapping[str, Formula]) -> set[str]:
    """What a name or a pack's own text tells: lye, xylitol, honey inside something bought."""
    texts = " ".join(_texts(formula, book, frozenset()))
    own = " ".join(block.words.markdown for block in _blocks(formula))
    found = {"lye"} if _LYE.search(f"{texts} {own}") else set[str]()
    found |= {"xylitol"} if _XYLITOL.search(texts) else set()
    found |= {"sugar alcohols"} if any(_SUGAR_ALCOHOL.search(line.item) for line in formula.lines) else set()
    found |= {"royal jelly"} if _BEES.search(texts) else set()
    return found | ({"honey"} if _HONEY.search(texts) else set())


def _texts(formula: Formula, book: Mapping[str, Formula], seen: frozenset[str]) -> Iterator[str]:
    wares = [(use.item, use.ware) for use in _uses(formula) if use.extra]
    for line in _every_line(formula.lines):
        wares.append((line.item, line.ware))
        inner = book.get(line.component or "")
        if inner is not None and inner.name not in seen:
            yield from _texts(inner, book, seen | {inner.name})
    for item, ware in wares:
        yield item
        yield from (f"{pack.name} {pack.label}" for pack in (ware.packs if ware else ()))


def _fillings(formula: Formula, book: Mapping[str, Formula], seen: frozenset[str]) -> set[str]:
    """ "chilled", "egg filling" and "cooling", by the names of the bake and its parts and by what is in these."""
    chilled = bool(_CHILLED_BAKE.search(" ".join((formula.about.title, *formula.about.kinds))))
    found = {"chilled"} if chilled else set[str]()
    whole = bool(_CREAM.search(formula.about.title))
    for part in (each for each in formula.parts if whole or _FILLING.search(each.name)):
        found |= _filling(part, formula, book)
    for line in formula.lines:
        inner = book.get(line.component or "")
        if inner is not None and inner.name not in seen:
            found |= _fillings(inner, book, seen | {inner.name}) & {"chilled", "cooling"}
    return found


def _filling(part: Part, formula: Formula, book: Mapping[str, Formula]) -> set[str]:
    keys = frozenset[str]().union(*(keys_of(line, book) for line in part.lines))
    milk = any(line.ware is not None and line.ware.ingredient.group == "dairy" for line in part.lines)
    curd = bool(_CURD.search(f"{part.name} {formula.about.title}"))
    custard = "raw egg" in keys and (milk or curd)
    found = {"chilled"} if "chilled" in keys or custard else set[str]()
    if custard and is_heated(formula):
        found |= {"egg filling"}
    return found | ({"cooling"} if found and cooked_on_the_stove(formula) else set())


def _every_line(lines: Iterable[Line]) -> Iterator[Line]:
    for line in lines:
        yield line
        yield from _every_line(line.alternatives)


def _blocks(formula: Formula) -> Iterator[Block]:
    return (block for way in formula.ways for section in way.sections for block in section.blocks)


def _uses(formula: Formula) -> Iterator[Use]:
    return (use for block in _blocks(formula) for use in _uses_of(block))


def _uses_of(block: Block) -> Iterator[Use]:
    for each in block.words.mentions:
        if isinstance(each, Use):
            yield each
        elif isinstance(each, WholePart):
            yield from each.uses
