"""Gentle notes as the checker tells them: when, with what source, and how they are accepted."""

from dataclasses import replace

import pytest

from tests.formula.kitchen import Baked, F, bake, recipe, shelf

SWEET = "- 500 g bread flour\n- 300 g water\n- 60 g granulated sugar\n- 10 g table salt\n- 5 g instant yeast"


def _notes(baked: Baked) -> list[str]:
    return [code for code in baked.codes if code.startswith("N")]


def test_each_note_names_its_source_and_how_to_accept_it() -> None:
    (found,) = (each for each in bake(bake=recipe(SWEET)).diagnostics if each.code == "N001")
    assert "Source: " in found.hint
    assert "accepts: [{note: sugar, why: …}]" in found.hint


@pytest.mark.parametrize(("limit", "noted"), [(12, []), (F("11.9"), ["N001"]), (5, ["N001"])])
def test_the_limit_of_sugar_is_a_setting(limit: F, noted: list[str]) -> None:
    assert _notes(bake(replace(shelf(), yeast_sugar=F(limit)), bake=recipe(SWEET))) == noted


def test_an_accepted_note_is_not_told() -> None:
    more = "accepts:\n  - {note: sugar, why: It rises over night.}\n"
    assert _notes(bake(bake=recipe(SWEET, more=more))) == []


def test_a_cake_without_yeast_has_no_notes_on_yeast() -> None:
    cake = "- 200 g cake flour\n- 250 g granulated sugar\n- 200 g egg\n- 8 g ground cinnamon\n- 5 g baking powder"
    assert _notes(bake(bake=recipe(cake))) == []


def test_a_preferment_of_others_is_not_asked_for_its_salt() -> None:
    sponge = recipe("- 150 g bread flour\n- 150 g milk\n- 0.5 g instant yeast", more="weighs: 300 g\n")
    dough = recipe(
        "sponge:\n  preferment: sponge\n  lines:\n    - {line: 300 g sponge, recipe: sponge}\n"
        "dough:\n  - 350 g bread flour\n  - 180 g water\n  - 10 g table salt"
    )
    assert _notes(bake(sponge=sponge)) == ["N003"]
    assert _notes(bake(sponge=sponge, dough=dough)) == []


def test_salt_to_taste_is_not_judged() -> None:
    assert (
        _notes(
            bake(
                bake=recipe("- 500 g bread flour\n- 300 g water\n- table salt, to taste\n- 5 g instant yeast")
            )
        )
        == []
    )
