"""Who can eat this? Four answers, the gravest first, each with its reason; never one for absence."""

from collections.abc import Mapping

import pytest

from generator.catalogue.load import built_in, read_pantry
from generator.declaration.declare import declare
from generator.declaration.people import ANSWERS, Answer, answers_for, read_people, worst
from generator.formula.book import understand_all
from generator.formula.intake.recipe import read_recipe
from generator.formula.model import Formula
from generator.formula.shelf import Shelf
from generator.measure.unit import SPOONS
from generator.source.read import read_document, read_mapping

PANTRY = """\
almonds:
  label: Almonds
  contains: [almond]
  may_contain: [tree nuts]
  checked: 2026-12-01
triticale flakes:
  contains: [triticale]
  checked: 2026-12-01
mixed nuts:
  contains: [tree nuts]
  checked: 2026-12-01
shop mix:
  is: raisins
  label: Fruit mix (raisins, natural flavouring)
"""
RECIPES = {
    "almond-bars": "100 g almonds\n  - 100 g unsalted butter",
    "flake-bars": "100 g triticale flakes\n  - 100 g honey",
    "nut-bars": "100 g mixed nuts\n  - 100 g honey",
    "fruit-bars": "100 g shop mix\n  - 100 g rolled oats",
    "sweets": "100 g granulated sugar\n  - 10 g water",
}


def kitchen() -> Mapping[str, Formula]:
    keys, _ = read_mapping("pantry.yaml", PANTRY.encode())
    pantry, _ = read_pantry(keys, catalogue=built_in(), spoons=SPOONS["us"])
    shelf = Shelf(catalogue=built_in(), pantry=pantry, spoons=SPOONS["us"], flour_cup="spooned", egg="large")
    written = {}
    for name, lines in RECIPES.items():
        text = f"---\ntitle: {name}\nformula:\n  - {lines}\n---\n"
        document, _ = read_document(f"recipes/{name}.md", text.encode(), "recipe")
        assert document is not None
        written[name], _ = read_recipe(document, spoons=shelf.spoons)
    return understand_all(written, faulty=set(), shelf=shelf).formulas


BOOK = kitchen()


def answer(bake: str, word: str) -> Answer:
    keys, _ = read_mapping("private/people.yaml", f"Ilka:\n  avoids: [{word}]\n".encode())
    ((eater,), _) = read_people(keys)
    listed = "".join(run.text for run in declare(BOOK[bake], book=BOOK, region="EU").ingredients)
    (found,) = answers_for(eater, BOOK[bake], book=BOOK, statement=listed)
    return found


@pytest.mark.parametrize(
    ("bake", "word", "state"),
    [
        ("almond-bars", "almond", "contains"),
        ("almond-bars", "tree nuts", "contains"),
        ("almond-bars", "hazelnut", "may contain"),
        ("almond-bars", "milk", "contains"),
        ("almond-bars", "goat milk", "not stated"),
        ("almond-bars", "peanut", "not stated"),
        ("flake-bars", "wheat", "contains"),
        ("flake-bars", "rye", "contains"),
        ("flake-bars", "gluten", "contains"),
        ("flake-bars", "barley", "not stated"),
        ("flake-bars", "honey", "contains"),
        ("flake-bars", "coconut", "unknown"),
        ("nut-bars", "hazelnut", "may contain"),
        ("fruit-bars", "sesame", "unknown"),
        ("fruit-bars", "oats", "contains"),
        ("sweets", "sesame", "not stated"),
    ],
)
def test_the_answer(bake: str, word: str, state: str) -> None:
    found = answer(bake, word)
    assert found.state == state
    assert found.reasons
    silent = found.reasons[0].startswith("no pack stands in the pantry for ")
    assert silent is (state == "not stated")


def test_the_reason_leads_to_the_line_and_the_pack() -> None:
    assert "almonds: may contain tree nuts (pantry entry of almonds: may_contain: tree nuts)" in (
        answer("almond-bars", "hazelnut").reasons
    )
    assert answer("flake-bars", "honey").reasons == ("the list of ingredients names honey",)
    assert "natural flavouring" in " ".join(answer("fruit-bars", "sesame").reasons)


def test_the_gravest_answer_stands_for_all() -> None:
    assert ANSWERS == ("contains", "may contain", "unknown", "not stated")
    several = [answer("almond-bars", word) for word in ("peanut", "hazelnut", "milk")]
    assert [worst(several[:1]), worst(several[:2]), worst(several), worst(())] == [
        *("not stated", "may contain", "contains", "not stated")
    ]


def test_mistakes_of_the_list_have_their_places() -> None:
    text = "Ilka:\n  avoids: [hazelnutt, milk]\n  like: cake\nOtso: nuts\nRuna:\n  note: none\n"
    keys, _ = read_mapping("private/people.yaml", text.encode())
    people, found = read_people(keys)
    assert [each.name for each in people] == ["Ilka", "Otso", "Runa"]
    assert [(each.span.line, each.span.column, each.code, each.message) for each in found] == [
        (3, 3, "S060", "a person has no key “like”"),
        (2, 12, "G010", "“hazelnutt” is not an allergen known here"),
        (4, 7, "G011", "“Otso” needs keys and values"),
        (5, 1, "G012", "it is not said what “Runa” avoids"),
    ]
