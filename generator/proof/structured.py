"""What a page tells programs of a bake, in the vocabulary of schema.org."""

import json
from collections.abc import Iterable, Iterator, Mapping, Sequence

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.diagnostics.span import whole_file
from generator.present.views import RecipeView
from generator.proof.built_text import lines_of
from generator.proof.compare import compare
from generator.proof.context import Sayings
from generator.proof.page_text import PageText
from generator.proof.squeeze import letters_of
from generator.wording.speech import say

_KIND = "application/ld+json"
_COMPARED = frozenset({"recipeIngredient", "recipeYield", "prepTime", "cookTime", "totalTime"})
_STEPS = "recipeInstructions"


def structured_faults(
    page: PageText, view: RecipeView, sayings: Sequence[Sayings], *, remedy: str
) -> Diagnostics:
    """Where the Recipe of the page says another thing than the recipe, or any text of it a figure of its own."""
    path = page.text.path
    try:
        nodes = list(_nodes(json.loads(page.scripts.get(_KIND, ""))))
    except ValueError:
        nodes = []
    recipes = [each for each in nodes if each.get("@type") == "Recipe"]
    if len(recipes) != 1:
        wrong = (
            "the data for search engines cannot be read" if not recipes else "there are several recipes in it"
        )
        return (Diagnostic(code="A007", message=wrong, span=whole_file(path), hint=remedy),)
    found = tuple(
        Diagnostic(
            code="A005",
            message=f"{name} in the data for search engines: it says “{said}”, the recipe “{meant}”",
            span=whole_file(path),
            hint=remedy,
        )
        for name, said, meant in _differences(recipes[0], view)
    )
    if found:
        return found
    text = lines_of(path, _texts(_unproven(recipes[0])), inside="the data for search engines")
    return compare(text, (), sayings, remedy=remedy)


def _unproven(recipe: Mapping[str, object]) -> Mapping[str, object]:
    """Without the values that were held against the recipe one by one."""
    return {key: value for key, value in recipe.items() if key not in _COMPARED or not _is_plain(value)}


def _is_plain(value: object) -> bool:
    return isinstance(value, str) or (
        isinstance(value, list) and all(isinstance(each, str) for each in value)
    )


def _texts(value: object, *, steps: bool = False) -> Iterator[str]:
    """Every string of the data but addresses, and but the texts of the steps, which were compared."""
    if isinstance(value, str):
        yield from () if "://" in value else (value,)
    elif isinstance(value, Mapping):
        for key, each in value.items():
            # The files to print have a size of paper in their names.
            if key != "encoding" and not (steps and key == "text" and isinstance(each, str)):
                yield from _texts(each, steps=steps or key == _STEPS)
    elif isinstance(value, list):
        for each in value:
            yield from _texts(each, steps=steps)


def _nodes(value: object) -> Iterator[Mapping[str, object]]:
    if isinstance(value, dict):
        yield value
        for each in value.values():
            yield from _nodes(each)
    elif isinstance(value, list):
        for each in value:
            yield from _nodes(each)


def _differences(recipe: Mapping[str, object], view: RecipeView) -> Iterator[tuple[str, str, str]]:
    prep, cook, total = view.iso_times
    single = {
        "name": view.title,
        "url": view.url,
        "datePublished": view.published.isoformat() if view.published else "",
        "dateModified": view.updated.isoformat() if view.updated else "",
        "version": str(view.revision),
        "prepTime": prep,
        "cookTime": cook,
        "totalTime": total,
    }
    for key, meant in single.items():
        if str(recipe.get(key, "")) != meant:
            yield key, str(recipe.get(key, "nothing")), meant or "nothing"
    yield from _listed("recipeIngredient", recipe.get("recipeIngredient"), view.ingredient_lines)
    made = recipe.get("recipeYield", [])
    yield from _listed(
        "recipeYield", made if isinstance(made, list) else [made], dict.fromkeys(view.yield_words)
    )
    steps = [str(each.get("text", "")) for each in _nodes(recipe.get(_STEPS))]
    yield from _listed(_STEPS, [each for each in steps if each], _steps(view))


def _steps(view: RecipeView) -> Iterator[str]:
    for way in (*view.ways, *((view.common,) if view.common else ())):
        for block in (block for section in way.sections for block in section.blocks):
            if block.words.plain:
                lead = say("Caution: {words}", words="") if block.kind == "caution" else ""
                yield f"{lead}{block.words.plain}"


def _listed(name: str, said: object, meant: Iterable[str]) -> Iterator[tuple[str, str, str]]:
    ours = list(meant)
    theirs = [] if said is None else [str(each) for each in (said if isinstance(said, list) else [said])]
    for number in range(max(len(ours), len(theirs))):
        one = theirs[number] if number < len(theirs) else "nothing"
        other = ours[number] if number < len(ours) else "nothing"
        if one != other and letters_of(one) != letters_of(other):
            yield f"{name}, number {number + 1}", one, other
