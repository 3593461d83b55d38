"""A new bake record: where it stands, and its first words, which are valid as they are."""

from collections.abc import Collection
from datetime import date

from generator.source.quoting import quoted

# The comment of a key tells what goes there; a value typed or entered below it is the record's own.
PROMPTS = """\
# size: how many times the recipe, as in 2 or 1/2
# room: how warm the kitchen is, as in 66 F or 19 C
# weather: and how damp, as in rain all day, 70 %
# packs: those opened today, by their names in pantry.yaml, as in [{flow}]
# added: what went in beside the recipe, as in
#   - {{what: {flow}, amount: 10 g, when: 5 min into kneading}}
# left: what stayed over, as in
#   - {{what: {flow}, amount: 20 g}}
# times: as they really were, as in [rise 75 min, bake 32 min]
# dough: what it weighs before baking, as in 930 g
# baked: what it weighs after baking, as in 812 g
# photos: pictures of the day, as in [media/bakes/crumb.jpg]
# note: how it went
# next: what to do another time
"""


def record_path(recipe: str, day: date, *, taken: Collection[str], recipes: Collection[str]) -> str:
    """`bakes/2026-11-08-NAME.yaml`; `-2` and so on for further bakes of the day.

    `taken` are the paths that exist. A number that would make another recipe's name is passed over.
    """
    number = 1
    while True:
        name = recipe if number == 1 else f"{recipe}-{number}"
        path = f"bakes/{day.isoformat()}-{name}.yaml"
        if path not in taken and (number == 1 or name not in recipes):
            return path
        number += 1


def record_text(recipe: str, day: date, *, revision: int | None, item: str) -> str:
    """Recipe, day and revision, and a comment for everything that may follow, with `item` as the example."""
    lines = [f"recipe: {quoted(recipe)}", f"day: {day.isoformat()}"]
    lines += [f"revision: {revision}"] if revision is not None else []
    return "\n".join(lines) + "\n" + PROMPTS.format(flow=quoted(item, flow=True))
