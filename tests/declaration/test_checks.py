"""What the maker is told: whole messages, at their place."""

from dataclasses import replace
from datetime import date
from fractions import Fraction

from generator.declaration.checks import kitchen_diagnostics, label_diagnostics, pack_diagnostics
from generator.declaration.lines import without_pack
from generator.diagnostics.span import Span
from tests.declaration.bakes import bake, book, extra, line, pack

DAY = date(2026, 11, 20)


def test_a_pack_to_read_is_named_at_its_line() -> None:
    formula = bake(line("sugar", 10, at=7), line("gelatin", 5, at=8))
    (found,) = label_diagnostics(formula, book=book(formula))
    assert (found.code, found.span.path, found.span.line, found.span.column) == (
        "L001",
        "recipes/bake.md",
        8,
        5,
    )
    assert found.message == "the label is not finished: gelatin may be made of fish: read its pack."
    assert (
        found.hint
        == "In pantry.yaml give the pack's text as “label:” and what it declares as “contains: […]”."
    )


def test_alternatives_and_extras_are_read_too() -> None:
    choice = line("butter", 10, at=7, alternatives=(line("margarine", 10, at=8),))
    formula = bake(choice, uses=(extra("chocolate chips"),))
    assert [each.span.line for each in label_diagnostics(formula, book=book(formula))] == [8, 40]


def test_what_a_component_leaves_open_is_told_in_its_own_file() -> None:
    inner = bake(line("gelatin", 5), name="glaze")
    outer = bake(line("glaze", 5, component="glaze"))
    everything = book(inner, outer)
    assert label_diagnostics(outer, book=everything) == ()
    assert len(label_diagnostics(inner, book=everything)) == 1


def test_a_kind_still_to_be_named_is_told_for_the_region() -> None:
    row = pack("nut brittle", "Nut brittle (sugar, nuts)")
    formula = bake(line("nut brittle", 5, row))
    assert label_diagnostics(formula, book=book(formula)) == ()
    (found,) = label_diagnostics(formula, book=book(formula), region="US")
    assert found.message == (
        "the label is not finished: nut brittle: “Nut” does not name the kind of tree nuts; read the pack."
    )


def test_a_pack_without_a_day_lists_every_bake_that_depends_on_it() -> None:
    row = pack("rolled oats", "Rolled oats (oats)")
    inner = bake(line("rolled oats", 50, row), name="crumble")
    outer = bake(line("crumble", 20, component="crumble"), name="tart")
    (found,) = pack_diagnostics(book(inner, outer), day=DAY, pack_age=180)
    assert found.code == "L002"
    assert found.span == row.span
    assert found.message == (
        "it is not said when the pack of rolled oats was last read. Depending on it: Crumble, Tart."
    )
    assert found.hint == "Read the pack and add “checked: 2026-11-20”."


def test_a_reading_grows_old_the_day_after_its_last() -> None:
    row = pack("rolled oats", "Rolled oats (oats)", checked=date(2026, 5, 24))
    everything = book(bake(line("rolled oats", 50, row)))
    assert pack_diagnostics(everything, day=DAY, pack_age=180) == ()
    (found,) = pack_diagnostics(everything, day=DAY, pack_age=179)
    assert found.code == "L003"
    assert found.message == "the pack of rolled oats was last read 180 days ago. Depending on it: Bake."


def test_a_row_that_only_weighs_needs_no_reading() -> None:
    everything = book(bake(line("rolled oats", 50, pack("rolled oats"))))
    assert pack_diagnostics(everything, day=DAY, pack_age=180) == ()


def test_an_ingredient_that_often_holds_more_is_named_once_in_the_whole_content() -> None:
    first, second = bake(line("bread flour"), name="a-loaf"), bake(line("bread flour"), name="b-loaf")
    (found,) = pack_diagnostics(book(first, second), day=DAY, pack_age=180)
    assert found.code == "L004"
    assert found.message == "packs of bread flour often hold barley too."
    read = pack("bread flour", "Bread flour (wheat flour)", checked=DAY)
    assert pack_diagnostics(book(bake(line("bread flour", 500, read))), day=DAY, pack_age=180) == ()


def test_a_word_that_is_no_allergen_is_named_at_its_place_with_the_nearest() -> None:
    span = Span(path="site.yaml", line=6, column=20, end_line=6, end_column=26)
    (found,) = kitchen_diagnostics([("milk", span), ("Shellfish", span), ("almnds", span)])
    assert (found.code, found.span) == ("L006", span)
    assert found.message == "“almnds” is not an allergen known here."
    assert found.hint == "Did you mean “almond” or “salmon” or “egg”?"


def test_a_pack_that_was_looked_at_and_says_nothing_is_still_to_be_read() -> None:
    looked_at = pack("raisins", checked=DAY)
    formula = bake(line("raisins", 100, looked_at))
    (found,) = label_diagnostics(formula, book=book(formula))
    assert found.message == ("the label is not finished: raisins: say in the pantry what its pack contains.")
    silent = bake(line("raisins", 100, pack("raisins")))  # a row of the pantry that says nothing of its pack
    assert [each.message for each in label_diagnostics(silent, book=book(silent))] == [found.message]
    weighed = bake(line("raisins", 100, replace(pack("raisins"), grams_per_ml=Fraction(3, 5))))
    for one in (weighed, bake(line("raisins", 100))):
        assert label_diagnostics(one, book=book(one)) == ()
        assert without_pack(one, book=book(one)) == ("raisins",)
