"""A make after any edits gives, byte for byte, what a first make without a cache gives; and it does less."""

import random
import shutil
from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest

from generator.build import program
from generator.diagnostics.codes import CODES
from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.diagnostics.span import whole_file
from generator.pipeline import check_folder, make_folder
from generator.publication.making import How, Made, Order, make
from generator.render import theme
from tests.making.kitchen import EDITS, Kitchen, files_in

CODE = next(iter(CODES))
THEMES = Path(__file__).parents[2] / "themes"


@pytest.fixture
def kitchen(tmp_path: Path) -> Kitchen:
    return Kitchen(tmp_path)


@pytest.fixture
def themes(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    """A copy of the themes that may be edited."""
    copy = tmp_path / "themes"
    shutil.copytree(THEMES, copy)
    monkeypatch.setattr(theme, "_HOMES", (copy,))
    monkeypatch.setattr(program, "_TREES", (copy,))
    theme.templates.cache_clear()
    yield copy / "docket"
    theme.templates.cache_clear()


def agrees(kitchen: Kitchen) -> None:
    made = kitchen.make()
    assert kitchen.same()
    files, found = kitchen.clean()
    assert made.diagnostics == found
    assert files_in(kitchen.output) == files


def made_in(kitchen: Kitchen) -> set[str]:
    """The files that a make writes."""
    report = kitchen.make().report
    assert report is not None
    return set(report.written)


def walk(kitchen: Kitchen, names: list[str], chance: random.Random) -> None:
    agrees(kitchen)
    for name in names:
        EDITS[name](kitchen, chance)
        assert name == "day" or not kitchen.same()
        agrees(kitchen)


def test_edits_in_any_order_give_what_a_clean_make_gives(kitchen: Kitchen) -> None:
    walk(kitchen, ["amount of a component", "pack no longer read", "add or delete", "day"], random.Random(1))


@pytest.mark.long
@pytest.mark.parametrize("seed", range(10, 16))
def test_many_edits_in_any_order(kitchen: Kitchen, seed: int) -> None:
    chance = random.Random(seed)
    names = sorted(EDITS)
    chance.shuffle(names)
    walk(kitchen, [*names, *(chance.choice(names) for _ in range(25))], chance)


@pytest.mark.long
def test_edits_with_everything_on_paper(tmp_path: Path) -> None:
    chance = random.Random(3)
    walk(Kitchen(tmp_path, frozenset()), [chance.choice(sorted(EDITS)) for _ in range(12)], chance)


def test_each_edit_reaches_what_it_concerns_and_no_more(kitchen: Kitchen) -> None:
    chance = random.Random(7)
    kitchen.make()
    assert made_in(kitchen) == set()
    EDITS["amount"](kitchen, chance)
    own = "site/recipes/oat-squares/"
    feeds = {"site/feed.xml", "site/feed.json"}
    assert made_in(kitchen) == {
        f"{own}index.html",
        f"{own}recipe.json",
        "desk/oat-squares/description.txt",
        "desk/oat-squares/short.txt",
        *feeds,
    }
    EDITS["pantry row"](kitchen, chance)
    assert made_in(kitchen) == {f"{own}index.html", f"{own}recipe.json", *feeds}
    EDITS["amount of a component"](kitchen, chance)
    reached = {path.split("/")[2] for path in made_in(kitchen) if path.startswith("site/recipes/")}
    assert reached == {"plain-loaf", "night-sponge"}


def test_only_what_is_reached_is_understood_again(kitchen: Kitchen) -> None:
    chance = random.Random(8)
    assert kitchen.make().profile.rows[0].made == 3
    for name, anew in {
        "amount": 1,
        "amount of a component": 2,
        "pantry row": 1,
        "setting": 3,
        "touched": 0,
    }.items():
        EDITS[name](kitchen, chance)
        row = kitchen.make().profile.rows[0]
        assert (name, row.went_in, row.made) == (name, 3, anew)


def test_template_reaches_only_its_own_outputs(kitchen: Kitchen, themes: Path) -> None:
    kitchen.make()
    file = themes / "site" / "recipe.html"
    file.write_text(file.read_text(encoding="utf-8").replace("<h1", "<h1 data-new", 1), encoding="utf-8")
    theme.templates.cache_clear()
    assert not kitchen.same()
    made = kitchen.make()
    assert made.profile.rows[0].made == 0
    assert made.report is not None
    names = ("night-sponge", "oat-squares", "plain-loaf")
    assert set(made.report.written) == {f"site/recipes/{name}/index.html" for name in names}
    agrees(kitchen)


def test_spoilt_cache_is_noticed_and_made_anew(kitchen: Kitchen) -> None:
    kitchen.make()
    chance = random.Random(9)
    for number, file in enumerate(
        sorted(path for path in (kitchen.folder / "cache").rglob("*") if path.is_file())
    ):
        data = bytearray(file.read_bytes())
        data[chance.randrange(len(data))] ^= 1 << chance.randrange(8)
        if number % 3:
            file.write_bytes(data)
        else:
            file.unlink()
    EDITS["amount"](kitchen, chance)
    EDITS["output edited"](kitchen, chance)
    agrees(kitchen)


def test_lost_cache_with_a_kept_memory_is_made_anew(kitchen: Kitchen) -> None:
    """What was remembered names inputs that are no longer there."""
    kitchen.make()
    chance = random.Random(4)
    from generator.publication.memory import _key

    kept = {_key(what, kitchen.content, kitchen.output) for what in ("memory", "last")}
    for file in (path for path in (kitchen.folder / "cache").rglob("*") if path.is_file()):
        if file.parent.name + file.name not in kept:
            file.unlink()
    shutil.rmtree(kitchen.output)
    EDITS["amount of a user"](kitchen, chance)
    agrees(kitchen)


def test_mistake_keeps_all_from_being_written_until_it_is_corrected(kitchen: Kitchen) -> None:
    kitchen.make()
    before = files_in(kitchen.output)
    kitchen.change("recipes/oat-squares.md", "100 g honey", "100 g hny")
    made = kitchen.make()
    assert made.report is None
    assert files_in(kitchen.output) == before
    assert made.diagnostics == kitchen.clean()[1]
    kitchen.change("recipes/oat-squares.md", "100 g hny", "90 g honey")
    agrees(kitchen)


def test_keep_going_writes_the_others_and_leaves_the_faulty_one(kitchen: Kitchen) -> None:
    kitchen.make()
    page = "site/recipes/oat-squares/index.html"
    before = files_in(kitchen.output)[page]
    kitchen.change("recipes/oat-squares.md", "100 g honey", "100 g hny")
    EDITS["amount of a user"](kitchen, random.Random(5))
    how = How(cache=kitchen.cache, without=kitchen.without, keep_going=True)
    made = make_folder(kitchen.content, output=kitchen.output, day=kitchen.day, how=how)
    assert made.report is not None
    assert "site/recipes/plain-loaf/index.html" in made.report.written
    assert files_in(kitchen.output)[page] == before
    assert not kitchen.same()
    kitchen.change("recipes/oat-squares.md", "100 g hny", "100 g honey")
    agrees(kitchen)


def test_check_only_writes_nothing_and_says_what_it_would(kitchen: Kitchen) -> None:
    how = How(cache=kitchen.cache, without=kitchen.without, check_only=True)

    def would() -> set[str]:
        made = make_folder(kitchen.content, output=kitchen.output, day=kitchen.day, how=how)
        assert made.report is not None
        return set(made.report.written)

    first = would()
    assert not kitchen.output.exists()
    assert made_in(kitchen) == first
    assert would() == set()
    EDITS["lead"](kitchen, random.Random(6))
    before = files_in(kitchen.output)
    assert would() != set()
    assert files_in(kitchen.output) == before


def test_file_that_changes_within_the_same_moment_is_seen(
    kitchen: Kitchen, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Same size, same times: what was young at the last look is read again."""
    import os

    file = kitchen.content / "recipes" / "oat-squares.md"
    kitchen.make()
    about = file.stat()
    file.write_text(
        file.read_text(encoding="utf-8").replace("200 g rolled", "201 g rolled"), encoding="utf-8"
    )
    os.utime(file, ns=(about.st_atime_ns, about.st_mtime_ns))
    assert not kitchen.same()
    agrees(kitchen)


def test_what_cannot_be_proved_is_neither_written_nor_kept(kitchen: Kitchen) -> None:
    """A fault of ours: new files do not say what the recipes say."""
    page = "site/recipes/oat-squares/index.html"
    seen: list[str] = []

    def make_with(*, faulty: bool) -> Made:
        def prove(files: Mapping[str, bytes], *_: object) -> Diagnostics:
            seen.extend(files)
            wrong = [each for each in files if each == page and faulty]
            return tuple(
                Diagnostic(code=CODE, message="says 2 g for 200 g", span=whole_file(each)) for each in wrong
            )

        order = Order(
            root=kitchen.content,
            output=kitchen.output,
            check=lambda only: check_folder(kitchen.content, day=kitchen.day, only=only),
            day=kitchen.day,
            how=How(cache=kitchen.cache, without=kitchen.without),
            prove=prove,
        )
        return make(order)

    assert [each.span.path for each in make_with(faulty=True).unproven] == [page]
    assert not kitchen.output.exists()
    seen.clear()
    again = make_with(faulty=False)
    assert seen == [page]
    assert again.report is not None
    assert page in again.report.written
