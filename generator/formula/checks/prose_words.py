"""When a word of prose that is also the name of an ingredient means something else."""

import re

VERBS = frozenset(
    {"butter", "flour", "salt", "sugar", "oil", "water", "ice", "cream", "pepper", "honey", "egg", "milk"}
)
"""Names that are also what a baker does: “flour the board”."""

OTHER_THINGS = frozenset({"date", "port", "stout", "sprinkle", "mace", "season", "dust", "peel", "zest"})
"""Names that alone, in this form, mostly mean something else: the date, an oven's port, to sprinkle."""

RESULTS = frozenset({"bread", "caramel", "toffee", "praline", "jelly", "fondant", "cracker", "preserves"})
"""Names of what is being made: the bread is done, cook it to a caramel."""

_OBJECTS = frozenset(
    {
        *(
            "the",
            "a",
            "an",
            "it",
            "them",
            "each",
            "every",
            "your",
            "its",
            "both",
            "all",
            "any",
            "this",
            "that",
        ),
        *(
            "these",
            "those",
            "another",
            "one",
            "two",
            "three",
            "four",
            "lightly",
            "well",
            "generously",
            "until",
        ),
        *("together", "evenly", "and", "over", "again"),
    }
)
"""What follows a verb of the kitchen."""
_NOUN_BEFORE = frozenset(
    {
        *(
            "the",
            "of",
            "with",
            "in",
            "some",
            "more",
            "extra",
            "little",
            "add",
            "adding",
            "into",
            "a",
            "an",
            "your",
        ),
        *(
            "this",
            "that",
            "any",
            "melted",
            "soft",
            "cold",
            "warm",
            "hot",
            "beaten",
            "fresh",
            "stir",
            "use",
            "using",
        ),
    }
)
_ADDING = frozenset({"add", "with", "some", "more", "extra", "little", "stir"})
_NEGATION = frozenset({"without", "no", "not", "never", "than", "like", "avoid", "instead"})
_COMPOUND = frozenset(
    {
        *(
            "towel",
            "towels",
            "cloth",
            "bath",
            "thermometer",
            "knife",
            "cutter",
            "cutters",
            "sheet",
            "sheets",
            "tin",
        ),
        *(
            "tins",
            "pan",
            "pans",
            "jar",
            "jars",
            "scoop",
            "grinder",
            "mill",
            "strainer",
            "spoon",
            "spoons",
            "dish",
        ),
        *(
            "bag",
            "bags",
            "brush",
            "bowl",
            "wheel",
            "timer",
            "cooker",
            "corer",
            "squeezer",
            "press",
            "box",
            "paper",
        ),
        *(
            "mat",
            "sieve",
            "dredger",
            "shaker",
            "spray",
            "crust",
            "crumb",
            "crumbs",
            "knob",
            "colour",
            "color",
        ),
        *(
            "coloured",
            "colored",
            "brown",
            "sized",
            "size",
            "shapes",
            "time",
            "house",
            "dough",
            "machine",
            "maker",
        ),
        *("basket", "board", "rack", "side", "skin", "skins", "stick"),
    }
)
"""Words that make another thing of the name before them: a tea towel, a sugar thermometer, a bread knife."""
_AS_BIG_AS = re.compile(r"size of (?:an? |small |large ){0,2}$", re.I)


def means_something_else(name: str, *, before: str, after: str, text_before: str) -> bool:
    """Whether `name`, between the words `before` and `after` of one sentence ("" at its ends), is no ingredient."""
    if after in _COMPOUND or before in _NEGATION or _AS_BIG_AS.search(text_before):
        return True
    if name in OTHER_THINGS:
        return True
    if name in RESULTS:
        return before not in _ADDING
    if name not in VERBS:
        return False
    return before == "" or (before not in _NOUN_BEFORE and after in _OBJECTS)
