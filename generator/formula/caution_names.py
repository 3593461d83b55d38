"""The names of the cautions that a bake can raise, by which a maker sets one aside in the front matter.

cautions_off:
  - {what: honey, why: The honey is brushed on by the one who eats it.}
"""

CAUTION_NAMES = (
    "raw dough",
    "raw flour",
    "raw egg",
    "honey",
    "hot sugar",
    "hot oil",
    "lye",
    "egg filling",
    "cooling",
    "chilled",
    "garlic in oil",
    "starter discard",
    "candied peel",
    "alcohol",
    "choking",
    "lupin",
    "royal jelly",
    "xylitol",
    "sugar alcohols",
)
