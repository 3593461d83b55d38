"""The short text for a comment: allergens first, newest correction next, the page last, never too long."""

from dataclasses import replace
from datetime import date

from generator.present.views import CorrectionView, SinceView
from generator.render.description.correction import LIMIT, correction_note
from tests.render.text.sample import BRAID, CORRECTION, SUGAR

SINCE = (SinceView(number=1, alarms=(), changes=("bread flour 400 g → 430 g",)),)
PAGE = "The recipe stands at revision 2 now: https://plumtin.example/notes/recipes/plum-braid/#since-1\n"


def many(count: int) -> tuple[CorrectionView, ...]:
    return tuple(
        replace(CORRECTION, on=date(2026, 9, 30), day=f"September {count - number}, 2026", film="")
        for number in range(count)
    )


def test_what_why_what_the_film_shows_and_where() -> None:
    note = correction_note(replace(BRAID, revision=2, since=SINCE))
    assert note == (
        "Corrected September 20, 2026: dough/bread flour 400 g → 430 g, because too wet twice. "
        "The film still shows 400 g at 1:25.\n" + PAGE
    )


def test_a_bake_without_a_correction_has_none() -> None:
    assert correction_note(replace(SUGAR, corrections=(), since=())) == ""


def test_a_change_of_allergens_stands_first_and_stays() -> None:
    loud = (replace(SINCE[0], alarms=("now contains sesame", "a new caution: honey")),)
    view = replace(BRAID, revision=2, since=loud, corrections=many(40))
    note = correction_note(view, limit=260)
    first, *_, last = note.splitlines()
    assert first == (
        "ALLERGENS AND CAUTIONS, changed since revision 1: now contains sesame; a new caution: honey."
    )
    assert f"{last}\n" == PAGE
    assert "40 corrections: see the page." in note


def test_older_corrections_give_way_and_are_counted() -> None:
    view = replace(BRAID, revision=2, since=SINCE, corrections=many(40))
    note = correction_note(view)
    assert len(note.encode()) <= LIMIT
    lines = note.splitlines()
    assert lines[0].startswith("Corrected September 40, 2026:")
    told = sum(line.startswith("Corrected") for line in lines)
    assert 1 < told < 40
    assert lines[-2] == f"{40 - told} earlier corrections: see the page."


def test_one_reason_that_is_too_long_gives_way_to_the_change() -> None:
    long = replace(CORRECTION, because="so " + "very " * 400 + "wet", film="")
    note = correction_note(replace(BRAID, revision=2, since=SINCE, corrections=(long,)))
    assert note == "Corrected September 20, 2026: dough/bread flour 400 g → 430 g.\n" + PAGE
