"""Words of the notation, said where a recipe has them: `said(word)` of what a maker wrote finds them here.

Whatever else a maker writes in their place is the maker's, and stays as it is.
"""

from generator.wording.speech import later, say, voice

STAGES = (
    *(later("bake"), later("work"), later("mix"), later("knead"), later("cook")),
    *(later("rest"), later("rise"), later("chill"), later("freeze"), later("cool")),
)
HEATS = (later("oven"), later("core"))
SIZES = (
    *(later("extra large"), later("jumbo"), later("large"), later("medium"), later("small")),
    *(later("packed"), later("sifted"), later("heaped"), later("heaping"), later("rounded")),
    *(later("generous"), later("scant")),
)
AMOUNTS = (
    *(later("to taste"), later("as needed"), later("for dusting"), later("for greasing")),
    *(later("for brushing"), later("for sprinkling"), later("for rolling"), later("for rolling out")),
    *(later("for the tin"), later("for the pan"), later("for the board")),
    *(later("a pinch"), later("a dash"), later("a handful"), later("a few"), later("a little")),
)
PREFERMENTS = (
    *(later("preferment"), later("poolish"), later("sponge"), later("levain"), later("starter")),
    *(later("biga"), later("sourdough"), later("rye sour"), later("pate fermentee"), later("old dough")),
    *(later("soaker"), later("scald"), later("water roux")),
)
SHARES = (
    *(later("half"), later("a half"), later("one half"), later("a third"), later("one third")),
    *(later("two thirds"), later("a quarter"), later("one quarter"), later("three quarters")),
)
CHAPTERS = (later("Notes"), later("Questions"))
TIN_WORDS = ("base", "hole", "holds", "deep", "each")
"""Said in the context `tin`."""
ADDED = (later("at the signal"),)
WAYS = (later("by hand"), later("mixer"), later("dough cycle"), later("bread machine"))
_KNOWN = {each.casefold(): each for each in (*WAYS, *PREFERMENTS, *SHARES, *CHAPTERS, *ADDED)}


def said(words: str) -> str:
    """Words of the notation in the language that is spoken, whatever capitals they have; all others as they are."""
    known = _KNOWN.get(" ".join(words.casefold().split())) if voice().catalogue else None
    return say(known) if known else words
