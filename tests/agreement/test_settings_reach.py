"""Each setting for readers elsewhere reaches every output that shows what it is about."""

import html
import re
from dataclasses import dataclass
from datetime import date
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from generator.pipeline import CheckResult, check_folder, describe_text, show_text
from generator.render.cards.render import render_cards
from generator.render.site.frame import frame_of
from generator.render.site.page import page_product
from generator.render.site.pages import recipe_page
from tests.render.paper.reading import squeezed, text_of

DAY = date(2026, 10, 1)
SITE = "title: Invented bakes\nmaker: An invented kitchen\nurl: https://kitchen.example/\n"
CAKE = """---
title: A plain cake
published: 2026-01-10
tin: round 20 x 5 cm
formula:
  - 2 cups all-purpose flour
  - 1 cup water
  - 2 tbsp granulated sugar
  - 3 eggs
---
## Method
1. Stir the {all-purpose flour}, {water}, {granulated sugar} and {egg}. {bake 40 min} at {oven 350 F}.
"""
_TAG = re.compile(r"<[^>]*>")


@dataclass(frozen=True, slots=True, kw_only=True)
class Outputs:
    page: str
    terminal: str
    card: str
    description: str

    def each(self) -> dict[str, str]:
        return {
            "page": self.page,
            "terminal": self.terminal,
            "card": self.card,
            "description": self.description,
        }


def _checked(settings: str) -> CheckResult:
    with TemporaryDirectory() as name:
        folder = Path(name) / "content"
        (folder / "recipes").mkdir(parents=True)
        (folder / "site.yaml").write_text(SITE + settings, encoding="utf-8")
        (folder / "recipes" / "cake.md").write_text(CAKE, encoding="utf-8")
        return check_folder(folder, day=DAY)


@cache
def outputs(settings: str) -> Outputs:
    checked = _checked(settings)
    (view,) = checked.site.recipes
    page = page_product(recipe_page(view, structured=lambda _: ""), frame_of(checked.site)).content.decode()
    card = next(each for each in render_cards(view) if each.path.endswith("card-4x6.pdf"))
    texts = (
        html.unescape(_TAG.sub(" ", page.partition("<main")[2])),
        show_text(checked, "cake").text,
        text_of(card.content),
        describe_text(checked, "cake"),
    )
    page_text, terminal, card_text, description = (squeezed(each) for each in texts)
    return Outputs(page=page_text, terminal=terminal, card=card_text, description=description)


def _missing(settings: str, words: str) -> list[str]:
    return [name for name, text in outputs(settings).each().items() if squeezed(words) not in text]


@pytest.mark.parametrize(
    ("settings", "words"),
    [
        ("cup: us\n", "US: 1 cup 237 ml, 1 tbsp 14.8 ml, 1 tsp 4.9 ml"),
        ("cup: metric\n", "metric: 1 cup 250 ml, 1 tbsp 15 ml, 1 tsp 5 ml"),
        ("cup: imperial\n", "imperial: 1 cup 284 ml, 1 tbsp 15 ml, 1 tsp 5 ml"),
        ("cup: australian\n", "Australian: 1 cup 250 ml, 1 tbsp 20 ml, 1 tsp 5 ml"),
        # 2 cups of 237 ml at 125 g and at 137 g (the setting), and 2 cups of 250 ml.
        ("flour_cup: spooned\n", "250 g"),
        ("flour_cup: dipped\n", "274 g"),
        ("flour_cup: dipped\n", "dipped full and leveled"),
        ("cup: metric\n", "264 g"),
        ("egg: medium\n", "medium, where a line names no size"),
        ("oven_c: nearest 5\n", "175 °C"),
        ("oven_c: dial\n", "180 °C"),
        ("oven_c: dial\n", "as British oven dials have it"),
        # Common practice: 25 °F or 20 °C less with a fan; gas mark 4.
        ("oven_c: dial\n", "325 °F, 160 °C"),
        # 473.2 ml are 1 cup and 9.5 spoons of 20 ml, within 2.5 %.
        ("cups_beside: [metric, australian]\n", "metric: 2 tbsp"),
        ("cups_beside: [metric, australian]\n", "Australian: 1 tbsp + 2 tsp"),
    ],
)
def test_a_setting_reaches_page_terminal_card_and_description(settings: str, words: str) -> None:
    assert _missing(settings, words) == []


def test_a_gas_mark_reaches_them_all() -> None:
    texts = outputs("region: UK\n").each()
    told = {
        name: "gas mark" in text.casefold() or "gasmark" in text.casefold() for name, text in texts.items()
    }
    assert told == dict.fromkeys(texts, True)


@pytest.mark.parametrize(("first", "order"), [("weight", ("250g", "2cups")), ("volume", ("2cups", "250g"))])
def test_the_measure_that_stands_first_does_so_everywhere(first: str, order: tuple[str, str]) -> None:
    for name, text in outputs(f"first: {first}\n").each().items():
        flat = re.sub(r"\s", "", text)
        places = [flat.index(words) for words in order]
        assert places == sorted(places), name
