"""Which copies are stale, why, and in which order."""

from datetime import date
from pathlib import Path

import pytest

from generator.history.changes import Harm
from generator.records.due import Stale, not_compared, stale_copies, unmarked
from tests.records.folder import checked, lay, posted, swap


@pytest.fixture
def root(tmp_path: Path) -> Path:
    return lay(tmp_path / "content")


def due(root: Path) -> list[tuple[str, str, tuple[str, ...]]]:
    return [(each.harm.name, each.copy.place, each.why) for each in stale_copies(checked(root))]


def only(root: Path) -> Stale:
    (one,) = stale_copies(checked(root))
    return one


def test_a_copy_is_fresh_until_the_recipe_changes(root: Path) -> None:
    posted(root, "page")
    assert due(root) == []
    swap(root, "10 g table salt", "12 g table salt")
    assert due(root) == [("AMOUNTS", "page", ("table salt 10 g → 12 g",))]
    posted(root, "page")
    assert due(root) == []


def test_allergens_come_before_cautions_before_amounts_before_words(root: Path) -> None:
    posted(root, "page")
    swap(root, "12 min", "14 min")
    posted(root, "description")
    swap(root, "Bake {", "Then bake {")
    posted(root, "club board")
    swap(root, "10 g table salt", "10 g table salt\n    - 20 g honey\n    - 50 g milk powder")
    swap(root, "{table salt}", "{table salt}, {honey}, {milk powder}")
    posted(root, "newsletter")
    swap(root, "Plain loaf", "A plain loaf")
    found = stale_copies(checked(root))
    assert [each.copy.place for each in found] == ["club board", "description", "page"]
    assert {each.harm for each in found} == {Harm.ALLERGENS}
    board = found[0].why
    assert board[0] == "now contains milk"
    assert board[1] == "a new caution: honey"
    assert board[2] == "new: 20 g honey"
    assert board[-2:] == ("other words: the title", "other words: the method")


def test_a_newsletter_is_not_sent_again_for_a_word(root: Path) -> None:
    posted(root, "newsletter")
    posted(root, "page")
    swap(root, "Plain loaf", "A plain loaf")
    assert due(root) == [("WORDS", "page", ("other words: the title",))]


def test_a_tag_tells_no_temperature_and_names_who_has_it(root: Path) -> None:
    posted(root, "tags", to="Ada", on=date(2026, 11, 20))
    swap(root, "400 F", "375 F")
    assert due(root) == []
    swap(root, "10 g table salt", "10 g table salt\n    - 20 g walnuts")
    swap(root, "{table salt}", "{table salt}, {walnuts}")
    stale = only(root)
    assert stale.why[0] == "now contains walnut"
    assert stale.do[0] == "tell Ada, who got it on 2026-11-20"
    assert "tinleaf posted loaf tags --to Ada" in stale.do[-1]


def test_a_description_that_reads_the_same_is_not_stale(root: Path) -> None:
    posted(root, "description")
    swap(root, "## Method\n", "## Notes\nA new note.\n\n## Method\n")
    assert due(root) == []
    swap(root, "title: Plain loaf", "title: Plain loaf\nlead: A loaf for every day.")
    assert [each[:2] for each in due(root)] == [("WORDS", "description")]


def test_a_pack_and_a_component_make_copies_stale(root: Path) -> None:
    posted(root, "page")
    swap(root, "[wheat, barley]", "[wheat, barley, soy]", path="pantry.yaml")
    assert due(root) == [("ALLERGENS", "page", ("now contains soy",))]
    swap(root, "[wheat, barley, soy]", "[wheat, barley]", path="pantry.yaml")
    swap(root, "  - 200 g orange\n", "  - 200 g orange\n  - 5 g almonds\n", path="recipes/candied-peel.md")
    swap(root, "the {orange}", "the {orange} and {almonds}", path="recipes/candied-peel.md")
    assert due(root)[0][2][0] == "now contains almond"


def test_what_is_gone_is_not_due(root: Path) -> None:
    posted(root, "page")
    swap(root, "10 g table salt", "12 g table salt")
    posted(root, "page", gone=True, why="taken down")
    assert due(root) == []


def test_an_older_copy_is_due_with_all_that_changed_since(root: Path) -> None:
    posted(root, "card", to="Aunt Ro", revision=1, on=date(2026, 9, 14))
    stale = only(root)
    assert (stale.copy.revision, stale.now) == (1, 2)
    assert stale.why == ("bread flour 400 g → 430 g",)
    assert stale.do[-1].startswith("then tinleaf posted loaf card --to 'Aunt Ro'; or")


def test_places_that_were_never_marked(root: Path) -> None:
    listed = {(each.recipe, each.place) for each in unmarked(checked(root))}
    assert listed == {("candied-peel", "page"), ("loaf", "page"), ("loaf", "description")}
    posted(root, "description")
    posted(root, "page")
    assert {each.recipe for each in unmarked(checked(root))} == {"candied-peel"}
    swap(
        root,
        "  - url: https://video.example/w/loaf",
        "  - url: https://video.example/w/loaf\n  - url: https://video.example/w/two",
    )
    assert [(each.recipe, each.place) for each in unmarked(checked(root))][-1] == (
        "loaf",
        "description https://video.example/w/two",
    )


def test_nothing_is_said_of_a_bake_that_is_not_out_yet(root: Path) -> None:
    swap(root, "published: 2026-09-12", "published: 2027-01-12")
    assert [each.recipe for each in unmarked(checked(root))] == ["candied-peel"]


def test_a_recipe_with_errors_is_named_and_not_passed_over(root: Path) -> None:
    posted(root, "page")
    swap(root, "10 g table salt", "10 g tabel slat")
    assert not_compared(checked(root)) == ("loaf",)
