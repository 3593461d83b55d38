"""Words of the notation, said where a recipe has them: `say(word)` of what a maker wrote finds them here.

Whatever else a maker writes in their place is the maker's, and stays as it is.
"""

from generator.wording.speech import later

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
PREFERMENTS = (later("preferment"), later("poolish"), later("sponge"), later("levain"), later("starter"))
WAYS = (later("by hand"), later("mixer"), later("dough cycle"), later("bread machine"))
