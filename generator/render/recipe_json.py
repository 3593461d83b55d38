"""A recipe's numbers for other programs: `recipe.json` beside its page."""

import json
from collections.abc import Mapping
from fractions import Fraction

from generator.render.output import Product


def render_recipe_json(name: str, data: Mapping[str, object]) -> Product:
    """The data as JSON in UTF-8, keys in the order given.

    Whole numbers stay whole; a fraction leaves as the nearest double, written with as many digits as name it
    and no more. Raises TypeError for what JSON cannot hold, ValueError for what is no number.
    """
    text = json.dumps(_plain(data), ensure_ascii=False, indent=1, allow_nan=False)
    return Product(path=f"site/recipes/{name}/recipe.json", content=f"{text}\n".encode())


def _plain(value: object) -> object:
    if isinstance(value, Fraction):
        return float(value)
    if isinstance(value, Mapping):
        return {key: _plain(inner) for key, inner in value.items()}
    if isinstance(value, list | tuple):
        return [_plain(inner) for inner in value]
    return value
