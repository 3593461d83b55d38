"""`tinleaf baked` over the real pipeline: what is entered, what it comes to, what is told, what reaches the tags."""

import json
from datetime import date
from pathlib import Path

import pytest

from generator.cli.main import main
from generator.history.bake_book import Draft, write_draft
from generator.pipeline import check_folder

Capture = pytest.CaptureFixture[str]
SITE = "title: A shelf\nmaker: Wynne\nurl: https://shelf.example/\nregion: EU\nlanguage: en-GB\nzone: Europe/Berlin\n"
PANTRY = """\
bread flour:
  label: Bread flour (wheat flour)
  contains: [wheat]
  checked: 2026-11-01
strong flour of the mill:
  is: bread flour
  label: Strong flour (wheat flour, malted barley flour)
  contains: [wheat, barley]
  checked: 2026-11-01
tahini:
  label: Tahini (sesame seeds)
  contains: [sesame]
  checked: 2026-11-01
"""
LOAF = """\
---
title: Mill loaf
published: 2026-01-01
formula:
  dough:
    - 400 g bread flour
    - 276 g water
    - 2 eggs
    - 10 g table salt
  finish:
    counts: no
    lines:
      - 20 g honey
---
## Method
1. Mix the {bread flour}, {water}, {eggs} and {table salt}. {rise 1 h}. {bake 30 min} at {oven 180 C}.
2. Brush with the {honey}.
"""
DAY = "2026-11-20"
PATH = f"bakes/{DAY}-mill-loaf.yaml"


@pytest.fixture
def kitchen(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    content = tmp_path / "content"
    (content / "recipes").mkdir(parents=True)
    (content / "site.yaml").write_text(SITE)
    (content / "pantry.yaml").write_text(PANTRY)
    (content / "recipes" / "mill-loaf.md").write_text(LOAF)
    monkeypatch.chdir(tmp_path)
    return content


def baked(*words: str, day: str = DAY) -> int:
    return main(["baked", "mill-loaf", *words, "--day", day])


def test_a_record_is_opened_once_and_again_only_when_asked(kitchen: Path, capsys: Capture) -> None:
    assert baked() == 0
    assert capsys.readouterr().out == (
        f"content/{PATH}: opened\n"
        f'next: tinleaf baked mill-loaf --day {DAY} --add "10 g bread flour, 5 min into kneading", '
        "or edit the file; then --done\n"
    )
    text = (kitchen / PATH).read_text()
    assert text.startswith(f"recipe: mill-loaf\nday: {DAY}\nrevision: 1\n# size: ")
    assert main(["check", "--day", DAY]) == 0
    assert baked() == 0
    assert f"content/{PATH}: open\n" in capsys.readouterr().out
    assert (kitchen / PATH).read_text() == text
    assert baked("--again") == 0
    assert baked("--again") == 0
    assert sorted(each.name for each in (kitchen / "bakes").iterdir()) == [
        f"{DAY}-mill-loaf-2.yaml",
        f"{DAY}-mill-loaf-3.yaml",
        f"{DAY}-mill-loaf.yaml",
    ]
    assert baked("--note", "third") == 0
    assert "note: third" in (kitchen / "bakes" / f"{DAY}-mill-loaf-3.yaml").read_text()


def test_a_finished_record_makes_room_for_the_next_bake_of_the_day(kitchen: Path) -> None:
    assert baked("--baked", "700 g") == 0
    assert baked("--note", "belongs to it") == 0
    assert "belongs to it" in (kitchen / PATH).read_text()
    assert baked() == 0
    assert (kitchen / "bakes" / f"{DAY}-mill-loaf-2.yaml").exists()


def test_the_day_is_summed_up_with_the_correction_to_copy(kitchen: Path, capsys: Capture) -> None:
    for amount in ("10 g", "10 g", "10 g", "15 g", "10 g"):
        assert baked("--add", f"{amount} bread flour, kneading") == 0
    assert (
        baked("--dough", "840 g", "--baked", "735 g", "--weather", "damp, 70 %", "--time", "rise 75 min") == 0
    )
    capsys.readouterr()
    assert baked("--done") == 0
    told = capsys.readouterr()
    added = "".join(f"Added    {each} g bread flour, kneading\n" for each in (10, 10, 10, 15, 10))
    assert told.err == ""
    assert told.out == (
        "Mill loaf, 20 November 2026, revision 1\n"
        "bread flour 400 g, +55 g in 5 additions, hydration 88 % → 77.4 %; "
        "dough 786 g → 841 g, 840 g on the scale; after baking 735 g (-12.5 %)\n"
        "\n"
        "Weather  damp, 70 %\n"
        f"{added}"
        "Time     rise 1 h 15 min (the recipe: 1 h)\n"
        "\n"
        "To correct the recipe:\n"
        "  tinleaf correct mill-loaf 'dough/bread flour' '455 g' --why 'It took 55 g more at the bake of "
        f"20 November 2026 (damp, 70 %).' --from {PATH}\n"
    )


def test_nothing_added_is_nothing_to_do(kitchen: Path, capsys: Capture) -> None:
    assert baked("--baked", "700 g") == 0
    capsys.readouterr()
    assert baked("--done") == 0
    out = capsys.readouterr().out
    assert (
        "nothing was added, hydration 88 %; dough 786 g; after baking 700 g (-13.2 % of the 806 g put in)"
        in out
    )
    assert out.endswith("Nothing to do: the recipe fits this bake.\n")


def test_what_was_left_counts_less_and_pieces_stay_pieces(kitchen: Path, capsys: Capture) -> None:
    assert baked("--add", "1 egg", "--left", "6 g honey", "--left", "26 g water") == 0
    capsys.readouterr()
    assert baked("--done", "--format", "json") == 0
    told = json.loads(capsys.readouterr().out)
    used = {each["item"]: each["used"] for each in told["changes"]}
    assert used == {"eggs": [150, 150], "honey": [14, 14], "water": [250, 250]}
    assert told["after"]["dough_grams"] == [810, 810]
    assert told["corrections"] == [
        "tinleaf correct mill-loaf dough/eggs 3 --why 'It took 50 g more at the bake of 20 November 2026.' --from "
        + PATH
    ]


def test_an_old_revision_is_never_corrected_twice(kitchen: Path, capsys: Capture) -> None:
    assert baked("--add", "30 g bread flour") == 0
    recipe = kitchen / "recipes" / "mill-loaf.md"
    entry = "corrections:\n  - {on: 2026-11-21, change: dough/bread flour 400 g -> 430 g, why: Too wet.}\n---\n## M"
    recipe.write_text(LOAF.replace("400 g bread", "430 g bread").replace("---\n## M", entry))
    capsys.readouterr()
    assert baked("--done", day="2026-11-22") == 0
    out = capsys.readouterr().out
    assert "tinleaf correct" not in out
    assert "This was baked with revision 1; the recipe stands at 2 now." in out
    # The sums are by the recipe of that day, rebuilt from its correction.
    assert "bread flour 400 g, +30 g, hydration 88 %" in out
    path = kitchen / PATH
    path.write_text(path.read_text().replace("revision: 1\n", ""))
    assert baked("--done", day="2026-11-22") == 0
    out = capsys.readouterr().out
    assert "tinleaf correct" not in out
    assert "a revision that the record does not name" in out
    assert "the record does not say which revision was baked: the sums are by the recipe of today" in out


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (
            ("--add", "10 g bred flour"),
            "neither the bake, the catalogue nor the pantry knows “bred flour”. Did you mean “bread flour”?",
        ),
        (("--add", "bread flour"), "--add: “bread flour” has no amount; write it as in “10 g bread flour”"),
        (
            ("--left", "5 g raisins"),
            "this bake has no “raisins” that could be left. "
            "It is made of: bread flour, water, eggs, table salt, honey.",
        ),
        (
            ("--packs", "bread flower"),
            "the pantry has no row called “bread flower”. Did you mean “bread flour”?",
        ),
        (("--room", "warm"), "“warm” is not a temperature. Write it as in 66 F or 19 C."),
        (
            ("--dough", "2 cups"),
            "“2 cups” is not a weight. Write one weight with its unit, as in 908 g or 2 lb 4 oz.",
        ),
        (("--time", "ryse 1 h"), "there is no stage “ryse”. Did you mean “rise”?"),
        (("--time", "rise 75"), "“75” is not a time. Write it as in “rise 1 h 15 min”."),
    ],
)
def test_a_mistake_is_told_and_nothing_is_written(
    kitchen: Path, capsys: Capture, words: tuple[str, ...], told: str
) -> None:
    assert baked("--note", "kept") == 0
    before = (kitchen / PATH).read_bytes()
    capsys.readouterr()
    assert baked(*words) == 1
    assert capsys.readouterr().err == f"tinleaf: {told}\n"
    assert (kitchen / PATH).read_bytes() == before
    (kitchen / PATH).unlink()
    assert baked(*words) == 1
    assert not (kitchen / PATH).exists()


def test_unknown_recipes_days_and_records(kitchen: Path, capsys: Capture) -> None:
    assert main(["baked", "mil-loaf"]) == 1
    assert (
        capsys.readouterr().err
        == "tinleaf: there is no recipe recipes/mil-loaf.md. Did you mean “mill-loaf”?\n"
    )
    for wrong in (
        ["--on", "2026-02-30"],
        ["--done", "--compare"],
        ["--compare", "--note", "x"],
        ["--format", "json"],
    ):
        with pytest.raises(SystemExit) as end:
            main(["baked", "mill-loaf", *wrong])
        assert end.value.code == 2
    capsys.readouterr()
    assert baked("--done", "--on", "2026-11-19") == 1
    assert "there is no bake record of mill-loaf on 2026-11-19. Open one: " in capsys.readouterr().err
    assert baked() == 0
    (kitchen / "bakes" / "2026-11-19-mill-loaf.yaml").write_text("recipe: mill-loafs\n")
    (kitchen / "bakes" / "2026-11-18-mill-loaf.yaml").write_text("added: [\n")
    capsys.readouterr()
    assert baked("--compare") == 1
    err = capsys.readouterr().err
    assert "2026-11-19-mill-loaf.yaml:1:9: error[K001] there is no recipe called “mill-loafs”" in err
    assert "2026-11-18-mill-loaf.yaml:1:8: error[S020]" in err


def test_a_record_that_is_broken_or_odd_is_left_alone(kitchen: Path, capsys: Capture) -> None:
    (kitchen / "bakes").mkdir()
    for text, told in (
        (
            "{recipe: mill-loaf, day: 2026-11-20}\n",
            "in a form that cannot be added to safely: edit it by hand",
        ),
    ):
        (kitchen / PATH).write_text(text)
        assert baked("--note", "x") == 1
        assert told in capsys.readouterr().err
        assert (kitchen / PATH).read_text() == text


def test_a_record_that_cannot_be_read_is_not_overlooked(kitchen: Path, capsys: Capture) -> None:
    (kitchen / "bakes").mkdir()
    (kitchen / PATH).write_text("note: [\n")
    assert baked("--note", "x") == 1
    assert "error[S0" in capsys.readouterr().err
    assert [each.name for each in (kitchen / "bakes").iterdir()] == [f"{DAY}-mill-loaf.yaml"]


def test_an_overnight_dough_is_asked_about(kitchen: Path, capsys: Capture) -> None:
    assert baked("--dough", "800 g") == 0
    capsys.readouterr()
    assert baked("--baked", "700 g", day="2026-11-21") == 0
    err = capsys.readouterr().err
    assert f"{PATH} has no weight after baking yet." in err
    assert f"add --on {DAY}" in err


def test_allergens_from_the_bench_are_loud_and_reach_the_tag(kitchen: Path, capsys: Capture) -> None:
    assert (
        baked("--add", "15 g tahini, at the end", "--packs", "strong flour of the mill", "--baked", "700 g")
        == 0
    )
    out = capsys.readouterr().out
    assert "!! CONTAINS BARLEY (from bread flour). The label of the recipe does not say so." in out
    assert "!! CONTAINS SESAME (from tahini). The label of the recipe does not say so." in out
    assert "tahini is not in the recipe: for this bake it is a new line, CONTAINS SESAME." in out
    label = check_folder(kitchen, day=date.fromisoformat(DAY)).tag("mill-loaf").recipe.label
    assert "tahini (SESAME seeds)" in label.statement
    assert "malted BARLEY flour" in label.statement


def test_the_tag_is_of_the_last_bake_of_the_day(kitchen: Path) -> None:
    assert baked("--baked", "700 g") == 0
    for number in range(2, 12):
        assert baked("--again", "--baked", f"{700 + number} g") == 0
    tag = check_folder(kitchen, day=date.fromisoformat(DAY)).tag("mill-loaf")
    assert tag.record == f"bakes/{DAY}-mill-loaf-11.yaml"


def test_bakes_are_compared_with_mean_and_spread(kitchen: Path, capsys: Capture) -> None:
    for day, more, weather, room in (
        ("2026-11-01", "20 g", "damp, 70 %", "24 C"),
        ("2026-11-02", "5 g", "dry, 35 %", "66 F"),
        ("2026-11-03", "", "snow", "21 C"),
    ):
        added = ("--add", f"{more} bread flour") if more else ()
        assert baked(*added, "--weather", weather, "--room", room, "--baked", "700 g", day=day) == 0
    capsys.readouterr()
    assert baked("--compare") == 0
    out = capsys.readouterr().out
    assert "Revision 1: 3 bakes\n" in out
    assert "  bread flour: +20 g, +5 g, 0 g; mean +8.3 g, spread 10.4 g (n = 3)\n" in out
    assert "  3 bakes are few: a mean of so few may be chance, and the orders below show no rule.\n" in out
    assert "  By humidity:\n    35 %  +5 g bread flour\n    70 %  +20 g bread flour\n" in out
    assert "  By room warmth:\n    18.9 °C  +5 g bread flour\n      21 °C  nothing\n" in out
    assert baked("--compare", "--format", "json") == 0
    (group,) = json.loads(capsys.readouterr().out)["groups"]
    assert group["n"] == 3
    (flour,) = group["items"]
    assert flour["grams"] == [20, 5, 0]
    assert flour["mean"] == pytest.approx(25 / 3)
    assert flour["standard_deviation"] == pytest.approx(10.408, abs=0.001)


def test_a_file_that_changes_meanwhile_is_not_written_over(
    kitchen: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert baked("--note", "mine") == 0

    def late(root: Path, draft: Draft, **beside: object) -> object:
        (kitchen / PATH).write_text("recipe: mill-loaf\nnote: theirs\n")
        return write_draft(root, draft)

    monkeypatch.setattr("generator.asked.baking.write_draft", late)
    capsys.readouterr()
    assert baked("--note", "again") == 1
    assert "nothing was written" in capsys.readouterr().err
    assert (kitchen / PATH).read_text() == "recipe: mill-loaf\nnote: theirs\n"


def test_a_word_that_is_no_unit_is_told_as_such(kitchen: Path, capsys: Capture) -> None:
    assert baked("--add", "2 glugs water") == 1
    assert "“glugs” is no unit" in capsys.readouterr().err
    assert baked("--add", "2 tbps water") == 1
    assert "“tbps” is no unit. Did you mean “tbsp”" in capsys.readouterr().err
    assert baked("--add", "2 glugs moonshine") == 1
    assert "knows “glugs moonshine”" in capsys.readouterr().err


def test_a_scaled_bake_offers_the_correction_of_the_recipe(kitchen: Path, capsys: Capture) -> None:
    assert baked("--size", "2", "--add", "20 g water") == 0
    out = capsys.readouterr().out
    assert "water" in out
    assert "+10 g" in out
    assert "Baked 2 times the recipe." in out
