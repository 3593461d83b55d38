"""A table with one ingredient on each row: its amount, unit, food and preparation stand in columns of their own."""

import re
from collections.abc import Mapping
from dataclasses import dataclass

_COLUMNS: Mapping[str, tuple[str, ...]] = {
    "food": ("ingredient", "ingredient name", "food", "item", "zutat", "ingrédient", "ingrediente", "what"),
    "amount": ("amount", "quantity", "qty", "weight", "measure", "how much", "menge", "quantité", "cantidad"),
    "unit": ("unit", "units", "uom", "einheit", "unité", "unidad"),
    "cut": ("preparation", "prep", "note", "notes", "how", "remark", "comment"),
    "part": ("part", "section", "group", "component", "for"),
    "recipe": ("recipe", "recipe name", "title", "bake", "name", "rezept", "recette", "receta"),
    "step": ("step", "steps", "method", "instruction", "instructions", "directions"),
}
_IN_HEAD = re.compile(r"\b(g|gr|grams?|ml|kg|oz|ounces?)\b")


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """`number` is the row's first line in the file. `more` holds the other cells, each with its column's name."""

    number: int
    name: str
    text: str
    more: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Foods:
    """Which column is what, the unit that the head of the amounts has, and the names of all columns."""

    at: Mapping[str, int]
    unit: str
    head: tuple[str, ...]


def food_columns(head: list[str]) -> Foods | None:
    """The columns of such a table, None where it has none for a food and none for its amount."""
    plain = [re.sub(r"\s*[(\[].*$", "", each).strip() for each in head]
    at: dict[str, int] = {}
    for kind, names in _COLUMNS.items():
        found = next((n for n, each in enumerate(plain) if each in names and n not in at.values()), None)
        if found is not None:
            at[kind] = found
    if "amount" not in at:
        grams = next((n for n, each in enumerate(plain) if _IN_HEAD.fullmatch(each)), None)
        at |= {"amount": grams} if grams is not None else {}
    if "food" not in at or "amount" not in at:
        return None
    unit = _IN_HEAD.search(head[at["amount"]])
    return Foods(at=at, unit=unit[1] if unit and "unit" not in at else "", head=tuple(head))


def by_recipe(filled: list[tuple[int, list[str]]], foods: Foods) -> tuple[Row, ...]:
    """A row for each recipe that the rows name, with the list as it would be written; one where they name none."""
    rows: dict[str, list[tuple[int, list[str]]]] = {}
    last = ""
    for number, row in filled[1:]:
        cells = [*(each.strip() for each in row), *([""] * (len(foods.head) - len(row)))]
        last = _cell(cells, foods, "recipe") or last
        rows.setdefault(last, []).append((number, cells))
    return tuple(_recipe(name, some, foods) for name, some in rows.items())


def _recipe(name: str, rows: list[tuple[int, list[str]]], foods: Foods) -> Row:
    words = ["Ingredients"]
    part = ""
    more: list[tuple[str, str]] = []
    for _, cells in rows:
        told = _cell(cells, foods, "part")
        if told and told != part:
            words += ["", f"{told.rstrip(':')}:"]
            part = told
        if _cell(cells, foods, "food"):
            words.append(_line(cells, foods))
        more += [
            (foods.head[at] if at < len(foods.head) else "", cell)
            for at, cell in enumerate(cells)
            if cell and at not in foods.at.values()
        ]
    steps = dict.fromkeys(step for _, cells in rows if (step := _cell(cells, foods, "step")))
    words += ["", "Method", *steps] if steps else []
    return Row(number=rows[0][0], name=name, text="\n".join(words), more=tuple(more))


def _line(cells: list[str], foods: Foods) -> str:
    amount, unit = _cell(cells, foods, "amount"), _cell(cells, foods, "unit")
    bare = foods.unit if amount and amount.replace(".", "").replace(",", "").isdigit() else ""
    cut = _cell(cells, foods, "cut")
    measured = " ".join(each for each in (amount, unit or bare, _cell(cells, foods, "food")) if each)
    return f"{measured}, {cut}" if cut else measured


def _cell(cells: list[str], foods: Foods, kind: str) -> str:
    return " ".join(cells[foods.at[kind]].split()) if kind in foods.at else ""
