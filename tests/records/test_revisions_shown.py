"""Earlier revisions rebuilt from the ledger or by taking corrections back, and what changed between them."""

from datetime import date
from fractions import Fraction
from pathlib import Path

import pytest

from generator.history.ledger import LEDGER, PantryChange, Revision, appended
from generator.present.facts import facts_of
from generator.records.rebuild import Rebuilt, Refused, rebuild, revision_numbers
from generator.records.steps import Step, since, steps
from tests.records.folder import LOAF, PANTRY, PEEL, checked, lay, posted, swap

PLAIN = LOAF.replace("(3 1/3 cups) ", "")


@pytest.fixture
def root(tmp_path: Path) -> Path:
    return lay(tmp_path / "content")


def rebuilt(root: Path, number: int) -> Rebuilt:
    found = rebuild(root, checked(root), "loaf", number)
    assert isinstance(found, Rebuilt), found
    return found


def flour(found: Rebuilt) -> Fraction | None:
    grams = next(line.grams for line in found.formula.lines if line.item == "bread flour")
    return grams.mid if grams else None


def note(root: Path, *events: Revision | PantryChange) -> None:
    file = root / LEDGER
    file.write_bytes(appended(file.read_bytes() if file.exists() else b"", events))


def revision(number: int, text: str, **more: object) -> Revision:
    known = {"recipe": "loaf", "on": date(2026, 10, number), "cause": "correction", "corrections": 1}
    return Revision(**{**known, "number": number, "text": text, **more})  # type: ignore[arg-type]


def test_without_a_ledger_a_correction_is_taken_back(root: Path) -> None:
    found = rebuilt(root, 1)
    assert flour(found) == 400
    assert found.formula.about.corrections == ()
    assert "taking the newest correction back" in found.told
    assert flour(rebuilt(root, 2)) == 430


def test_every_change_that_says_what_it_was_is_taken_back(tmp_path: Path) -> None:
    more = (
        "  - {on: 2026-09-21, change: oven 425 F -> 400 F, why: Too dark.}\n"
        "  - {on: 2026-09-22, change: bake 25 min -> 30 min, why: Too pale.}\n"
        "  - {on: 2026-09-23, change: makes 2 loaves -> 1 loaf, why: Miscounted.}\n"
        "  - {on: 2026-09-24, change: dough/bread flour 430 g -> 440 g, why: Wet.}\n"
    )
    text = PLAIN.replace("---\n## Method", f"{more}---\n## Method").replace("- 430 g bread", "- 440 g bread")
    root = lay(tmp_path / "content", loaf=text)
    result = checked(root)
    assert revision_numbers(result, "loaf") == (1, 2, 3, 4, 5, 6)
    told = [tuple(one.words for one in each.told) for each in steps(root, result, "loaf")]
    assert told == [
        ("bread flour 400 g → 430 g",),
        ("oven 425 °F → 400 °F",),
        ("bake 25 min → 30 min",),
        ("makes 2 loaves → 1 loaf",),
        ("bread flour 430 g → 440 g",),
    ]


@pytest.mark.parametrize(
    ("change", "why"),
    [
        ("dough/bread flour 400 g -> 450 g", "bread flour now says “430 g”, and not the “450 g”"),
        ("Less flour.", "“Less flour.” does not say what stood there before"),
        ("oven 425 F -> 375 F", "the file has no one place that “oven 425 F -> 375 F” is about"),
        ("dough/rye flour 1 g -> 2 g", "the file has no one place"),
    ],
)
def test_what_cannot_be_taken_back_is_refused_in_words(root: Path, change: str, why: str) -> None:
    swap(root, "dough/bread flour 400 g -> 430 g", change)
    found = rebuild(root, checked(root), "loaf", 1)
    assert isinstance(found, Refused)
    assert why in found.words
    (step,) = steps(root, checked(root), "loaf")
    assert step.unrecorded == found.words


def test_a_revision_that_does_not_exist_is_refused_with_those_that_do(root: Path) -> None:
    words = "there is no revision 5 of loaf: there are 1 and 2"
    assert rebuild(root, checked(root), "loaf", 5) == Refused(words=words)
    assert since(root, checked(root), "loaf", 5) == Refused(words=words)


def test_the_folder_is_rebuilt_as_of_the_event(root: Path) -> None:
    early, late = PLAIN, PLAIN.replace("430 g bread", "460 g bread")
    old_peel = Revision(recipe="candied-peel", number=1, on=date(2026, 10, 1), cause="first", text=PEEL)
    note(root, PantryChange(on=date(2026, 10, 1), text=PANTRY), old_peel, revision(2, early))
    note(
        root,
        PantryChange(
            on=date(2026, 10, 2), what="bread flour", text=PANTRY.replace("barley]", "barley, soy]")
        ),
    )
    note(root, revision(3, late, cause="pantry"))
    swap(root, "430 g (3 1/3 cups)", "500 g")
    swap(root, "barley]", "barley, sesame]", path="pantry.yaml")
    assert flour(rebuilt(root, 2)) == 430
    assert flour(rebuilt(root, 3)) == 460
    contains = [each.facts["contains"]["any"] for each in (rebuilt(root, 2), rebuilt(root, 3))]  # type: ignore[index]
    assert contains == [["barley", "wheat"], ["barley", "soy", "wheat"]]
    assert rebuilt(root, 2).told == "revision 2 from the text that the ledger keeps of 2026-10-02"


def test_what_was_first_noted_later_stood_so_before(root: Path) -> None:
    note(root, revision(2, PLAIN))
    assert rebuilt(root, 2).told.endswith("; candied-peel and the pantry as of today")
    later = Revision(recipe="candied-peel", number=1, on=date(2026, 10, 9), cause="first", text=PEEL)
    note(root, later)
    assert rebuilt(root, 2).told.endswith("; the pantry as of today")


def test_an_earlier_revision_than_the_ledgers_first_is_taken_back_from_that_text(root: Path) -> None:
    posted(root, "page")
    swap(root, "430 g (3 1/3 cups)", "500 g")
    assert revision_numbers(checked(root), "loaf") == (1, 2)
    assert flour(rebuilt(root, 1)) == 400
    assert flour(rebuilt(root, 2)) == 430


def test_what_was_before_the_ledger_is_rebuilt_with_the_packs_of_its_first_revision(root: Path) -> None:
    posted(root, "page")
    swap(root, "barley]", "barley, soy]", path="pantry.yaml")
    first, _ = steps(root, checked(root), "loaf")
    assert [each.words for each in first.told] == ["bread flour 400 g → 430 g"]


def test_steps_tell_the_effect_and_what_has_no_number_yet(root: Path) -> None:
    posted(root, "page")
    swap(root, "10 g table salt", "12 g table salt")
    first, last = steps(root, checked(root), "loaf")
    assert (first.before, first.after, first.on, first.why) == (1, 2, date(2026, 9, 20), "Too wet.")
    assert [each.words for each in first.told] == ["bread flour 400 g → 430 g"]
    assert first.effects == ("hydration 75 % → 69.8 %", "dough 757 g → 787 g")
    assert (last.before, last.after, last.cause) == (2, 2, "not corrected")
    assert [each.words for each in last.told] == ["table salt 10 g → 12 g"]


def test_since_sums_up(root: Path) -> None:
    swap(root, "10 g table salt", "12 g table salt")
    found = since(root, checked(root), "loaf", 1)
    assert isinstance(found, Step)
    assert found.effects == ("hydration 75 % → 69.8 %", "dough 759 g → 789 g")


def test_a_revision_is_shown_with_its_own_number_and_day(root: Path) -> None:
    found = rebuilt(root, 1)
    from generator.history.revisions import revision_of

    shown = revision_of(found.formula, found.setting.ledger)
    assert (shown.number, shown.updated) == (1, date(2026, 9, 12))
    assert found.facts == facts_of(found.formula, found.setting)
