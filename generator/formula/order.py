"""The order in which recipes are understood: components before what is made with them; circles are errors."""

from collections.abc import Mapping
from graphlib import CycleError, TopologicalSorter

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.formula.written import Name, WrittenRecipe


def in_order_of_making(recipes: Mapping[str, WrittenRecipe]) -> tuple[tuple[str, ...], Diagnostics]:
    """Names in order, those that stand in a circle left out and reported at the line that closes it."""
    links = {name: _components(recipe) for name, recipe in recipes.items()}
    found: list[Diagnostic] = []
    while True:
        graph = {name: [each.text for each in used if each.text in links] for name, used in links.items()}
        try:
            return tuple(TopologicalSorter(graph).static_order()), tuple(found)
        except CycleError as circle:
            names = tuple(reversed(circle.args[1]))
            found.append(_circle(names, links))
            links = {name: used for name, used in links.items() if name not in names}


def _components(recipe: WrittenRecipe) -> tuple[Name, ...]:
    lines = (line for part in recipe.parts for line in part.lines)
    every = (each for line in lines for each in (line, *line.alternatives))
    return tuple(line.recipe for line in every if line.recipe is not None)


def _circle(names: tuple[str, ...], links: Mapping[str, tuple[Name, ...]]) -> Diagnostic:
    first, second = names[0], names[1]
    at = next((each for each in links[first] if each.text == second), links[first][0])
    chain = " → ".join(names)
    message = f"a recipe cannot be made of itself: {chain}"
    hint = "Break the circle: write what one of them is made of as plain ingredients."
    return Diagnostic(code="F046", message=message, span=at.span, hint=hint)
