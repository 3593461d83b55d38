"""Content folders of any size, invented by rule: the same number gives the same folder everywhere."""

import random
from pathlib import Path

SITE = """\
title: The Long Shelf
lead: Bakes without end.
maker: Orla Testwell
url: https://long-shelf.example/
"""
PANTRY = """\
bread flour:
  label: Bread flour (wheat flour)
  contains: [wheat]
  checked: 2026-10-01
butter:
  label: Butter (cream, salt)
  contains: [milk]
  checked: 2026-10-01
rye flour:
  label: Rye flour
  contains: [rye]
  checked: 2026-10-01
"""
KINDS = ("bread", "bars", "gifts", "buns", "winter", "summer", "plain", "rich")
LEADS = ("soft", "dark", "crisp", "tall", "flat", "small", "slow", "quick")
EXTRAS = ("walnuts", "raisins", "sunflower seeds", "dried figs", "candied orange peel", "rolled oats")


def recipe(number: int) -> str:
    chance = random.Random(number)
    flour, extra = chance.choice(("bread flour", "rye flour")), chance.choice(EXTRAS)
    grams = chance.randint(300, 900)
    month, day = 1 + number % 9, 1 + number % 28
    return f"""\
---
title: Bake number {number}
lead: A {chance.choice(LEADS)} bake, the {number}th of its kind.
published: 2026-{month:02}-{day:02}
kinds: [{chance.choice(KINDS)}]
makes: 1 loaf
portions: {chance.randint(8, 24)} slices
tin: loaf 23 x 13 x 7 cm
formula:
  dough:
    - {grams} g {flour}
    - {grams * 62 // 100} g water
    - {chance.randint(5, 18)} g salt
    - {chance.randint(2, 9)} g instant yeast
    - {chance.randint(20, 90)} g butter, in small pieces
    - {chance.randint(40, 160)} g {extra}
---
Number {number} keeps well and is made in a morning. Weigh everything before you begin.

## Method
1. Mix the {{{flour}}}, {{water: half}}, {{salt}} and {{instant yeast}}; add the {{water: rest}} and the {{butter}}.
2. {{knead 10 min}}. Work in the {{{extra}}}. {{rise 1 h}} until doubled.
3. Shape it, {{rise 45 min}} in the tin.
4. Bake {{bake 35-40 min}} at {{oven 350 F}}, to {{core 94 C}}. {{cool 1 h}}.

## Notes
Wrap it in paper. It is better on the second day.
"""


def lay(root: Path, *, recipes: int) -> Path:
    """A folder with so many recipes."""
    (root / "recipes").mkdir(parents=True)
    (root / "site.yaml").write_text(SITE, encoding="utf-8")
    (root / "pantry.yaml").write_text(PANTRY, encoding="utf-8")
    for number in range(1, recipes + 1):
        (root / "recipes" / f"bake-{number:05}.md").write_text(recipe(number), encoding="utf-8")
    return root
