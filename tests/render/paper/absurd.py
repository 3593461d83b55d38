"""Recipes from tiny to absurd, made by number: the same number is the same recipe on every machine.

One ingredient and eighty; words of sixty letters; forty steps; titles, notes, keepings and lists of allergens that go
on and on; names in Arabic, in Hebrew and with signs. Those after the last have signs that no face of ours has.
"""

import json
import random
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from generator.pipeline import CheckResult, check_folder

DAY = date(2026, 10, 1)
ALL = 300
SITE = """\
title: A shelf of odd bakes
maker: Wynne Alder, who bakes on the second floor above the old rope walk
url: https://odd.example/
region: US
statement: Made in a home kitchen that nobody inspects.
statement_on: 2026-08-01
"""
LONGEST = "Hefeteigzopfflechtanleitungsbeispielmehlmischungsvorratsdose"
SPACED = "a good deal of what the miller next door sets aside when the stones run slow and the day is cool"
FOREIGN = {
    "arabic": "خبز بالسمسم",
    "hebrew": "חלה מתוקה",
    "emoji": "cake \U0001f9c1 by \U0001f469\U0001f3fd\u200d\U0001f373",
    "sign": "crumb \u2618\ufe0f",
}
UNKNOWN = {ALL: "bread 面包", ALL + 1: "flag \U0001f3f4\U000e0067", ALL + 2: "rune ᚠ", ALL + 3: "key 1\u20e3"}
_KNOWN = (
    *("bread flour", "whole wheat flour", "water", "table salt", "instant yeast", "granulated sugar", "egg"),
    *("unsalted butter", "whole milk", "honey", "walnuts", "sesame seeds", "rolled oats", "cocoa powder"),
    *("lemon juice", "ground cinnamon", "raisins", "olive oil", "vanilla extract", "baking soda"),
)
_MANY = (
    "wheat",
    "barley",
    "milk",
    "egg",
    "soy",
    "almond",
    "hazelnut",
    "walnut",
    "pecan",
    "pistachio",
    "sesame",
)
_WORDS = (
    "fold",
    "slowly",
    "until",
    "the",
    "dough",
    "shines",
    "and",
    "a",
    "window",
    "of",
    "it",
    "holds",
    "its",
    "rim",
)
_AMOUNTS = (
    "1 g",
    "0.2 g",
    "3 g",
    "20 g",
    "125 g",
    "1 cup",
    "2 tablespoons",
    "1/4 teaspoon",
    "1234 g",
    "12345 g",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Odd:
    """`foreign` is the name in other letters that stands in it, or ""; `weight` grows with what there is to print."""

    name: str
    text: str
    foreign: str
    weight: int


def pantry() -> str:
    """What the odd recipes are made of beside common things: names and labels of every length."""
    long_label = ", ".join(f"part {at} of the mixture ({each})" for at, each in enumerate(_MANY * 3))
    rows = {
        LONGEST.lower(): {"is": "dark chocolate", "label": long_label, "contains": [*_MANY]},
        SPACED: {"is": "bread flour", "label": "Bread flour (wheat)", "contains": ["wheat"]},
        **{
            words: {"is": "raisins", "label": words, "contains": []}
            for words in (*FOREIGN.values(), *UNKNOWN.values())
        },
    }
    return "".join(f"{json.dumps(name, ensure_ascii=False)}: {_pack(row)}\n" for name, row in rows.items())


def _pack(row: Mapping[str, object]) -> str:
    return json.dumps({**row, "tsp": "3 g", "checked": "2026-09-01"}, ensure_ascii=False)


def odd(number: int) -> Odd:
    """The recipe of that number, from 0; every thirtieth holds all there is at once."""
    dice = random.Random(number)
    worst = number % 30 == 0
    foreign = UNKNOWN.get(number, "")
    if number < ALL and number % 10 == 7:
        foreign = list(FOREIGN.values())[number // 10 % len(FOREIGN)]
    count = 80 if worst else dice.choice((1, 1, 2, 5, 8, 12, 20, 40))
    steps = 40 if worst else dice.choice((1, 1, 3, 6, 10, 20))
    parts = _parts(dice, count, foreign)
    title = _title(dice, number, worst=worst, foreign=foreign)
    head = {
        "title": title,
        "published": "2026-01-01",
        "kinds": ["odd"],
        "keeps": _prose(dice, 60 if worst else dice.choice((0, 4, 30))),
        "lead": _prose(dice, 50 if worst else dice.choice((0, 6, 20))),
        "makes": f"{dice.choice((1, 24, 4800))} {LONGEST.lower() if worst else 'pieces'}",
    }
    keys = "".join(
        f"{key}: {json.dumps(words, ensure_ascii=False)}\n" for key, words in head.items() if words
    )
    formula = "".join(_part(name, lines) for name, lines in parts)
    text = f"---\n{keys}formula:\n{formula}---\n## Method\n{_steps(dice, steps, [name for name, _ in parts])}"
    return Odd(name=f"odd-{number:03}", text=text, foreign=foreign, weight=count * 3 + steps)


def _parts(dice: random.Random, count: int, foreign: str) -> list[tuple[str, list[str]]]:
    """Lines in parts: a name stands once in each."""
    own = [LONGEST.lower(), SPACED] if count > 2 else dice.choice(([], [LONGEST.lower()], [SPACED]))
    names = ([foreign] if foreign else []) + own + list(_KNOWN)
    taken = [f"{_amount(dice, names[at % len(names)])}{_done(dice)}" for at in range(count)]
    cut = [taken[at : at + len(names)] for at in range(0, count, len(names))]
    return [(f"part {letter}", lines) for letter, lines in zip("abcd", cut, strict=False)]


def _amount(dice: random.Random, name: str) -> str:
    return f"{dice.choice(('1', '2', '12') if name == 'egg' else _AMOUNTS)} {name}"


def _done(dice: random.Random) -> str:
    return dice.choice(("", "", ", sifted twice", f", {LONGEST.lower()}"))


def _part(name: str, lines: list[str]) -> str:
    return f"  {name}:\n" + "".join(f"    - {json.dumps(line, ensure_ascii=False)}\n" for line in lines)


def _title(dice: random.Random, number: int, *, worst: bool, foreign: str) -> str:
    titles = ("Tin", "Plain loaf", f"Loaf of {LONGEST}", " ".join([SPACED.capitalize(), SPACED]))
    base = f"{titles[3]} {LONGEST}" if worst else dice.choice(titles)
    return f"{base} {foreign} no. {number}".replace("  ", " ")


def _prose(dice: random.Random, words: int) -> str:
    if not words:
        return ""
    told = " ".join(dice.choice((*_WORDS, *_WORDS, LONGEST.lower())) for _ in range(words))
    return f"{told[:1].upper()}{told[1:]}."


def _steps(dice: random.Random, count: int, parts: list[str]) -> str:
    """Each part is taken once, the rest of them together with the last step."""
    found = []
    for at in range(count):
        held = parts[at : at + 1] if at < count - 1 else parts[at:]
        uses = " and ".join(f"{{{name}}}" for name in held)
        told = _prose(dice, dice.choice((5, 20, 60)))
        found.append(f"{at + 1}. {f'Take {uses}. ' if uses else ''}{told} {{rest {at + 1} min}}.\n")
    return "".join(found)


def lay(root: Path, numbers: Iterable[int]) -> dict[str, Odd]:
    """Writes the recipes into a content folder, and gives them by name."""
    recipes = root / "recipes"
    recipes.mkdir(parents=True)
    (root / "site.yaml").write_text(SITE)
    (root / "pantry.yaml").write_text(pantry())
    made = {each.name: each for each in map(odd, numbers)}
    for each in made.values():
        (recipes / f"{each.name}.md").write_text(each.text)
    return made


def understood(root: Path) -> CheckResult:
    return check_folder(root, day=DAY)
