"""What can be found: never more than is known, above all of what a label does not list."""

import json
from datetime import date
from pathlib import Path

import pytest

from generator.formula.old_address import read_old_address
from generator.pipeline import CheckResult, check_folder
from generator.present.search_views import SearchBake, SearchView
from generator.present.search_words import search_words
from generator.render.search_json import search_text
from tests.demo import checked

DAY = date(2026, 10, 1)
FLOUR = "bread flour:\n  contains: [wheat]\n  checked: 2026-09-01\n"
LOAF = (
    "---\ntitle: {title}\npublished: {day}\nkinds: [bread]\n{keys}formula:\n  - 430 g bread flour\n  - 280 g water\n"
    "{lines}---\n## Method: dough cycle\n1. Mix {{bread flour}}{rest}. {{mix 20 min}} {{bake 40 min}}\n"
    "## Method: by hand\n1. Mix {{bread flour}}{rest}. {{bake 40 min}}\n"
)


def folder(
    root: Path, *, keys: str = "", lines: str = "", rest: str = ", {water}", pantry: str = FLOUR
) -> Path:
    (root / "recipes").mkdir(parents=True)
    site = "title: Invented bakes\nmaker: An oven\nurl: https://kitchen.example/\n"
    (root / "site.yaml").write_text(site, encoding="utf-8")
    (root / "pantry.yaml").write_text(pantry, encoding="utf-8")
    text = LOAF.format(title="Plain loaf", day="2026-09-01", keys=keys, lines=lines, rest=rest)
    (root / "recipes" / "plain-loaf.md").write_text(text, encoding="utf-8")
    later = LOAF.format(title="Later loaf", day="2026-12-01", keys="was: [old/later]\n", lines="", rest=rest)
    (root / "recipes" / "later-loaf.md").write_text(
        later.replace(lines, "") if lines else later, encoding="utf-8"
    )
    return root


def found(result: CheckResult) -> SearchView:
    assert result.site.search is not None
    return result.site.search


def plain(result: CheckResult) -> SearchBake:
    (bake,) = found(result).bakes
    return bake


def test_words_are_folded_once_and_small_words_passed_over() -> None:
    assert search_words("Crème brûlée of the Weiß", "the cook's CREME") == (
        "creme",
        "brulee",
        "weiss",
        "cooks",
    )


def test_an_allergen_of_the_label_is_listed(tmp_path: Path) -> None:
    bake = plain(check_folder(folder(tmp_path), day=DAY))
    assert (bake.contains, bake.finished) == (("wheat",), True)


def test_a_bake_with_a_pack_to_read_is_not_finished(tmp_path: Path) -> None:
    """The script counts what is not finished as listing everything."""
    root = folder(tmp_path, lines="  - 20 g dark chocolate\n", rest=", {water} and {dark chocolate}")
    bakes = {bake.path: bake for bake in found(check_folder(root, day=DAY)).bakes}
    assert bakes["recipes/plain-loaf/"].finished is False


def test_no_bake_of_the_demo_lists_less_than_its_declaration() -> None:
    setting = checked().setting
    site = checked().site
    assert site.allergens is not None
    heads = {head.key: set(head.ids) for head in site.allergens.heads}
    for bake in found(checked()).bakes:
        declared = setting.declarations[bake.path.split("/")[1]]["US"]
        listed = {one for key in (*bake.contains, *bake.may_contain) for one in heads[key]}
        assert {*declared.contains, *declared.may_contain} & {
            one for ids in heads.values() for one in ids
        } <= listed
        assert bake.finished == declared.finished


def test_work_that_is_not_timed_is_not_known_but_in_the_way_of_the_machine(tmp_path: Path) -> None:
    minutes = plain(check_folder(folder(tmp_path), day=DAY)).minutes
    assert [(each.method, each.hands_on, each.total) for each in minutes] == [
        ("dough-cycle", 0, 60),
        ("by-hand", None, 40),
    ]


def test_a_tin_and_its_twin_are_one_choice(tmp_path: Path) -> None:
    metric = plain(check_folder(folder(tmp_path / "a", keys="tin: loaf 23 x 13 x 7 cm\n"), day=DAY))
    inches = plain(check_folder(folder(tmp_path / "b", keys="tin: loaf 9 x 5 x 3 in\n"), day=DAY))
    assert metric.tins[0] == inches.tins[0]
    assert metric.tins[0].times == ""
    assert metric.tins[0].tin.title == "Loaf 23 × 13 × 7 cm (9 × 5 × 3 in)"
    assert all(each.times.endswith("× the recipe") for each in metric.tins[1:])


def test_what_is_scheduled_is_in_no_list_and_its_old_address_leads_nowhere_yet(tmp_path: Path) -> None:
    root = folder(tmp_path, keys="occasions: [Advent]\nwas: [old/plain.html]\n")
    now, then = check_folder(root, day=DAY).site, check_folder(root, day=date(2026, 12, 1)).site
    assert now.search is not None
    assert "later" not in search_text(now.search).casefold()
    assert [link.path for link in now.moved] == ["old/plain.html"]
    assert [link.path for link in then.moved] == ["old/later/", "old/plain.html"]
    shelves = {
        shelf.title: [bake.title for bake in shelf.bakes] for one in now.shelves for shelf in one.shelves
    }
    assert shelves["Advent"] == ["Plain loaf"]
    assert {"Dough cycle", "By hand", "Up to 1 hour"} <= set(shelves)


@pytest.mark.parametrize(
    ("written", "path"),
    [
        ("recipes/old", "recipes/old/"),
        ("/old/", "old/"),
        ("2019/05/loaf.html", "2019/05/loaf.html"),
        ("old/index.html", "old/"),
        ("crème/brûlée", "crème/brûlée/"),
    ],
)
def test_an_old_address_is_read(written: str, path: str) -> None:
    assert read_old_address(written) == (path, "")


@pytest.mark.parametrize(
    "written",
    [
        "https://old.example/x",
        "?p=12",
        "a/../b",
        "a//b",
        "loaf.php",
        "/",
        "index.html",
        "a b",
        "con",
        "x.html/y",
    ],
)
def test_an_address_that_no_page_can_have_is_refused(written: str) -> None:
    path, why = read_old_address(written)
    assert path == ""
    assert why


@pytest.mark.parametrize(
    "taken", ["recipes/plain-loaf", "recipes/Later-Loaf", "kinds/bread", "search", "leaf/x.html", "old/later"]
)
def test_an_old_address_that_is_taken_is_told_at_its_place(tmp_path: Path, taken: str) -> None:
    found = check_folder(folder(tmp_path, keys=f"was: [{taken}]\n"), day=DAY).diagnostics
    places = [(each.code, each.span.line, each.span.column) for each in found if each.code.startswith("S07")]
    place = ("S075", 4, 7) if taken == "old/later" else ("S075", 5, 7)
    assert len(places) == 1
    assert places[0][0] == "S075"
    assert places[0][2] == place[2]


def test_the_data_is_json_that_says_what_may_not_be_forgotten() -> None:
    data = json.loads(search_text(found(checked())))
    assert "no promise" in data["warning"]
    assert len(data["bakes"]) == len(checked().site.recipes)
