"""Claims of absence are found in the maker's prose and never printed by the tool."""

import pytest

from generator.declaration.checks import claim_diagnostics, claim_spans
from generator.declaration.claims import without_claims
from generator.declaration.declare import declare
from generator.diagnostics.span import Span
from tests.declaration.bakes import bake, book, line, pack, said


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("A gluten-free loaf", ["gluten-free"]),
        ("Nut free and dairy free!", ["Nut free", "dairy free"]),
        ("ALLERGEN-FREE", ["ALLERGEN-FREE"]),
        ("Cookies free from eggs", ["free from"]),
        ("A cake that is safe for everyone", ["safe for"]),
        ("Hypoallergenic", ["Hypoallergenic"]),
        ("Egg- and milk-free", ["milk-free"]),
        ("Allergy-friendly bars, suitable for coeliacs", ["Allergy-friendly", "suitable for coeliacs"]),
        ("Whisk until free from lumps", []),
        ("The box is safe for the freezer", []),
        ("Free-range eggs, a sugar-free glaze, fat-free milk", []),
        ("Feel free to add nuts", []),
    ],
)
def test_claims_are_found_where_they_stand(text: str, words: list[str]) -> None:
    found = claim_spans(text)
    assert [each[2] for each in found] == words
    assert all(text[start:end] == each for start, end, each in found)


def test_a_claim_is_a_warning_at_its_words() -> None:
    span = Span(path="recipes/bars.md", line=2, column=8, end_line=2, end_column=30)
    (found,) = claim_diagnostics("Our nut-free oat bars", span)
    assert (found.code, found.span.line, found.span.column, found.span.end_column) == ("L005", 2, 12, 20)
    assert found.message == "“nut-free” is a claim that a home kitchen cannot show to be true."


@pytest.mark.parametrize(
    ("text", "printed"),
    [
        ("gluten-free oats", "oats"),
        ("oats (gluten-free)", "oats ()"),
        ("fat-free milk", "fat-free milk"),
        ("sugar, free from nuts and milk", "sugar"),
    ],
)
def test_a_claim_is_cut_out_of_what_is_printed(text: str, printed: str) -> None:
    assert without_claims(text) == printed


def test_no_output_contains_a_claim() -> None:
    oats = pack("rolled oats", "Gluten-free oats (oats, gluten-free). Free from nuts and dairy. Nut-free.")
    bars = pack(
        "nut-free crunch bars", "Nut-free bars (sugar, dairy-free margarine (rapeseed oil))", contains=[]
    )
    formula = bake(line("rolled oats", 100, oats), line("nut-free crunch bars", 50, bars))
    for region in ("US", "EU"):
        declaration = declare(formula, book=book(formula), region=region, kitchen_handles=("milk",))
        assert claim_spans(said(declaration)) == []
        assert "oats" in declaration.statement.casefold()
