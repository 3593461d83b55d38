"""Corrections in a reader's words: both measures, the reason after "because", the film, and what changed since."""

from datetime import date
from pathlib import Path

import pytest

from generator.history.events import Ledger, PantryChange, Revision
from generator.pipeline import CheckResult, check_folder
from generator.present.corrected import because_words
from generator.present.correction_views import since_anchor
from generator.present.corrections import numbered, since_views
from generator.present.facts import facts_of
from generator.present.views import RecipeView

SITE = "title: A shelf\nmaker: Wynne\nurl: https://shelf.example/\nregion: US\nlanguage: en-GB\n"
LOAF = """\
---
title: Mill loaf
published: 2026-01-01
formula:
  dough:
    - 430 g bread flour
    - 2 tsp instant yeast
    - 3 eggs
    - 300 g water
  wash:
    counts: no
    lines:
      - 20 g water
videos:
  - url: https://video.example/w/loaf
    length: 10:00
    chapters:
      0:00: Hello
      1:20: Weighing
      5:00: Baking
corrections:
CORRECTIONS
---
## Method
1. Mix the {bread flour}, {instant yeast}, {eggs} and {dough/water}. {rise 1 h 15 min}. Brush with {wash/water}.
2. {bake 30 min} at {oven 340 F}.
"""
ENTRY = "  - {{on: {0}, change: {1}, why: {2}, film: {3}}}"


def entry(change: str, why: str = "Too wet.", film: str = "", on: str = "2026-09-20") -> str:
    return ENTRY.format(on, change, why, film)


def checked(tmp_path: Path, *entries: str, site: str = SITE, loaf: str = LOAF) -> CheckResult:
    (tmp_path / "recipes").mkdir(exist_ok=True)
    (tmp_path / "site.yaml").write_text(site)
    (tmp_path / "recipes" / "mill-loaf.md").write_text(loaf.replace("CORRECTIONS", "\n".join(entries)))
    return check_folder(tmp_path, day=date(2026, 10, 1))


def view(tmp_path: Path, *entries: str, site: str = SITE) -> RecipeView:
    return checked(tmp_path, *entries, site=site).views["mill-loaf"]


@pytest.mark.parametrize(
    ("change", "told"),
    [
        (
            "dough/bread flour 400 g -> 430 g",
            "bread flour 400 g (3¼ cups) → 430 g (3½ cups)",
        ),
        ("bread flour 400 g => 430 g", "bread flour 400 g (3¼ cups) → 430 g (3½ cups)"),
        ("dough/instant yeast 1 tsp -> 2 tsp", "instant yeast 3.1 g (1 tsp) → 6.2 g (2 tsp)"),
        ("eggs 2 -> 3", "eggs 100 g (2) → 150 g (3)"),
        ("dough/water 280 g -> 300 g", "water (dough) 280 g (1 cup + 3 tbsp) → 300 g (1¼ cups)"),
        ("oven 350 F -> 340 F", "oven 350 °F (175 °C) → 340 °F (170 °C)"),
        ("rise 60 min -> 75 min", "rise 1 h → 1 h 15 min"),
        ("The lid comes off -> earlier", "The lid comes off → earlier"),
        ("dough/rye flour 20 g -> 10 g", "rye flour (dough) 20 g → 10 g"),
    ],
)
def test_a_change_is_told_in_both_measures_where_they_are_known(
    tmp_path: Path, change: str, told: str
) -> None:
    (only,) = view(tmp_path, entry(change)).corrections
    assert only.change == told
    assert only.sentence == f"{told}, because too wet."


def test_the_new_amount_reads_as_the_page_has_it(tmp_path: Path) -> None:
    for first in ("weight", "volume"):
        shown = view(tmp_path, entry("dough/bread flour 400 g -> 430 g"), site=f"{SITE}first: {first}\n")
        amount = shown.parts[0].lines[0].amount
        assert shown.corrections[0].change.endswith(f"→ {amount.first} ({amount.second})")


@pytest.mark.parametrize(
    ("why", "told"),
    [
        ("Too wet at two bakes in damp weather.", "too wet at two bakes in damp weather"),
        ("Because it was dry.", "it was dry"),
        ("Flour differs.", "flour differs"),
        ("Odilia asked for it.", "Odilia asked for it"),
        ("I had misread the scale.", "I had misread the scale"),
        ("USDA figures say so!", "USDA figures say so!"),
        ("400 g was a slip.", "400 g was a slip"),
        ("A viewer asked.", "a viewer asked"),
        ("", ""),
    ],
)
def test_a_reason_follows_because_and_keeps_its_names(tmp_path: Path, why: str, told: str) -> None:
    formula = checked(tmp_path).setting.book["mill-loaf"]
    assert because_words(why, formula) == told


def test_the_film_is_held_against_what_stands_today(tmp_path: Path) -> None:
    shown = view(
        tmp_path,
        entry("dough/bread flour 400 g -> 420 g", film='"400 g at 1:25"'),
        entry("dough/bread flour 420 g -> 430 g", on="2026-09-25"),
        entry("oven 360 F -> 350 F", film='"360 F"', on="2026-09-26"),
        entry("oven 350 F -> 340 F", on="2026-09-27"),
    )
    (film,) = shown.videos
    now = "bread flour 430 g (3½ cups)"
    assert film.film_remarks == (
        f"The film still shows 400 g at 1:25; the recipe now says {now}, corrected 20 September 2026.",
        "The film still shows 360 F; the recipe now says oven 340 °F (170 °C), corrected 26 September 2026.",
    )
    assert [each.remarks for each in film.chapters] == [(), (f"still shows 400 g; now {now}",), ()]


def test_corrections_stand_newest_first_also_of_one_day(tmp_path: Path) -> None:
    shown = view(
        tmp_path,
        entry("dough/bread flour 400 g -> 410 g", on="2026-09-20"),
        entry("dough/bread flour 410 g -> 420 g", on="2026-09-21"),
        entry("dough/bread flour 420 g -> 430 g", on="2026-09-21"),
    )
    assert [each.revision for each in shown.corrections] == [4, 3, 2]


def test_since_each_revision_the_net_change_is_told(tmp_path: Path) -> None:
    shown = view(
        tmp_path,
        entry("dough/bread flour 400 g -> 420 g"),
        entry("oven 350 F -> 340 F", on="2026-09-22"),
        entry("dough/bread flour 420 g -> 430 g", on="2026-09-25"),
    )
    assert shown.revision == 4
    since = {each.number: each.changes for each in shown.since}
    flour = "→ 430 g (3½ cups)"
    assert since == {
        3: (f"bread flour 420 g (3⅓ cups) {flour}",),
        2: ("oven 350 °F (175 °C) → 340 °F (170 °C)", f"bread flour 420 g (3⅓ cups) {flour}"),
        1: (f"bread flour 400 g (3¼ cups) {flour}", "oven 350 °F (175 °C) → 340 °F (170 °C)"),
    }
    assert [each.anchor for each in shown.since] == [since_anchor(number) for number in (3, 2, 1)]


def revision(
    number: int, facts: object, cause: str, *, corrections: int, what: str = "", why: str = ""
) -> Revision:
    return Revision(
        recipe="mill-loaf",
        number=number,
        on=date(2026, 9, 20 + number),
        cause=cause,  # type: ignore[arg-type]
        what=what,
        why=why,
        corrections=corrections,
        facts=facts,  # type: ignore[arg-type]
        text="x",
    )


def test_what_the_ledger_knows_beside_the_file_is_told_too(tmp_path: Path) -> None:
    result = checked(tmp_path, entry("dough/bread flour 400 g -> 430 g"))
    formula, setting = result.setting.book["mill-loaf"], result.setting
    today = dict(facts_of(formula, setting))
    without = {**today, "contains": {"any": ["egg"], "US": ["egg"]}}
    ledger = Ledger(
        events=(
            revision(5, without, "first", corrections=1),
            PantryChange(on=date(2026, 9, 26), what="bread flour contains", text=""),
            revision(6, today, "pantry", corrections=1, what="pantry: bread flour contains", why="New pack."),
        )
    )
    assert [number for _, number in numbered(formula, ledger)] == [5]
    since = {each.number: each for each in since_views(formula, today, setting.settings, ledger)}
    assert set(since) == {1, 2, 3, 4, 5}
    assert since[5].alarms == ("now contains wheat",)
    assert since[5].changes == ()
    assert since[4].alarms == ("now contains wheat",)
    assert since[4].changes == ("bread flour 400 g (3¼ cups) → 430 g (3½ cups)",)
