"""What `check` says of bakes that changed without a correction, and of a ledger that a hand has spoilt."""

from datetime import date
from pathlib import Path

import pytest

from generator.history.ledger import LEDGER
from tests.records.folder import checked, lay, posted, swap


@pytest.fixture
def root(tmp_path: Path) -> Path:
    root = lay(tmp_path / "content")
    posted(root, "page")
    return root


def found(root: Path, **more: date) -> list[tuple[str, str]]:
    return [
        (f"{each.span.path}:{each.span.line}:{each.span.column}", f"{each.code} {each.message}")
        for each in checked(root, **more).diagnostics
        if each.code.startswith("H")
    ]


def test_nothing_is_said_where_nothing_changed(root: Path) -> None:
    assert found(root) == []


def test_words_alone_are_let_pass(root: Path) -> None:
    swap(root, "Bake {", "Then bake {")
    assert found(root) == []


def test_a_change_by_hand_is_named_at_its_line(root: Path) -> None:
    swap(root, "10 g table salt", "12 g table salt")
    assert found(root) == [
        (
            "recipes/loaf.md:9:7",
            "H006 no correction explains what changed since revision 2 (changed in recipes/loaf.md): "
            "table salt 10 g → 12 g",
        )
    ]
    (warning,) = (each for each in checked(root).diagnostics if each.code == "H006")
    assert warning.hint == (
        "If it is meant: tinleaf correct loaf --as-it-stands --why “…”. If not, change it back."
    )


def test_a_change_in_the_pantry_is_named(root: Path) -> None:
    swap(root, "barley]", "barley, soy]", path="pantry.yaml")
    assert found(root) == [
        (
            "recipes/loaf.md:2:1",
            "H006 no correction explains what changed since revision 2 (changed in pantry.yaml): now contains soy",
        )
    ]


def test_a_change_in_a_component_is_named(root: Path) -> None:
    swap(root, "  - 200 g orange\n", "  - 200 g orange\n  - 5 g almonds\n", path="recipes/candied-peel.md")
    swap(root, "the {orange}", "the {orange} and {almonds}", path="recipes/candied-peel.md")
    told = dict(found(root))
    assert "(changed in recipes/candied-peel.md): now contains almond" in told["recipes/loaf.md:2:1"]


def test_a_change_of_the_settings_is_named(root: Path) -> None:
    swap(root, "[wheat]", "[wheat, sesame]", path="site.yaml")
    assert "another file, such as site.yaml" in dict(found(root))["recipes/loaf.md:2:1"]


def test_a_correction_typed_into_the_file_has_no_number_yet(root: Path) -> None:
    swap(root, "10 g table salt", "12 g table salt")
    more = "    why: Too wet.\n  - {on: 2026-10-01, change: dough/table salt 10 g -> 12 g, why: Bland.}\n"
    swap(root, "    why: Too wet.\n", more)
    (place, told) = found(root)[0]
    assert place == "recipes/loaf.md:14:1"
    assert told.startswith("H007 a correction is written in the file and not in the ledger")


def test_a_bake_that_is_not_out_yet_may_change_freely(root: Path) -> None:
    swap(root, "10 g table salt", "12 g table salt")
    assert found(root, day=date(2026, 9, 11)) == []


def test_corrections_without_a_ledger_are_fine(tmp_path: Path) -> None:
    root = lay(tmp_path / "plain")
    assert found(root) == []


def test_a_recipe_that_only_the_ledger_knows_is_named_once(root: Path) -> None:
    (root / "recipes/loaf.md").rename(root / "recipes/plain-loaf.md")
    posted(root, "page", recipe="plain-loaf")
    (one,) = (each for each in found(root) if each[1].startswith("H005"))
    assert one == (f"{LEDGER}:3:33", "H005 the ledger tells of “loaf”, and there is no such recipe")


def test_a_spoilt_line_is_an_error_and_the_rest_still_counts(root: Path) -> None:
    file = root / LEDGER
    lines = file.read_text().splitlines(keepends=True)
    file.write_text("".join((*lines[:-1], "{oops\n", lines[-1])))
    assert [each[0] for each in found(root)] == [f"{LEDGER}:4:2"]
    assert checked(root).setting.ledger.posted("loaf")
