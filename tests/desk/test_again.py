"""A reading that takes what it can from the one before gives what a whole reading gives."""

import shutil
from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from generator.asked.again import read_again
from generator.asked.preview import Piece, pieces_of
from generator.desk.state import Desk
from generator.pipeline import check_folder
from generator.publication.checked import CheckResult
from generator.publication.sources_apart import ledger_marks
from generator.render.output import Product

DAY = date(2026, 11, 25)
CONTENT = Path(__file__).parents[2] / "content"
COMPONENT = "night-sponge"


@pytest.fixture(scope="module")
def root(tmp_path_factory: pytest.TempPathFactory) -> Path:
    copy = tmp_path_factory.mktemp("again") / "content"
    shutil.copytree(CONTENT, copy)
    return copy


@pytest.fixture(scope="module")
def before(root: Path) -> CheckResult:
    return check_folder(root, day=DAY)


@pytest.fixture
def edited(root: Path) -> Iterator[dict[str, bytes]]:
    """Files to put back: a test sets what stood there."""
    kept: dict[str, bytes] = {}
    yield kept
    for path, data in kept.items():
        (root / path).write_bytes(data)


def edit(root: Path, path: str, kept: dict[str, bytes], old: str, new: str) -> None:
    data = (root / path).read_bytes()
    assert old.encode() in data
    kept[path] = data
    (root / path).write_bytes(data.replace(old.encode(), new.encode(), 1))


def same(root: Path, before: CheckResult, *paths: str) -> None:
    marks = ledger_marks(root / "ledger.jsonl")
    again = read_again(root, before, paths, day=DAY, ledgers=(ledger_marks(CONTENT / "ledger.jsonl"), marks))
    whole = check_folder(root, day=DAY)
    assert again.diagnostics == whole.diagnostics
    assert (again.setting, again.bakes, dict(again.texts)) == (whole.setting, whole.bakes, dict(whole.texts))
    assert dict(again.views) == dict(whole.views)
    assert again.site == whole.site
    ours, theirs = pieces_of(again, root), pieces_of(whole, root)
    assert list(ours) == list(theirs)


def test_a_component_that_changes_reaches_what_is_made_with_it(
    root: Path, before: CheckResult, edited: dict[str, bytes]
) -> None:
    edit(root, f"recipes/{COMPONENT}.md", edited, "title: ", "title: Other ")
    same(root, before, f"recipes/{COMPONENT}.md")


@pytest.mark.long
def test_a_recipe_that_is_broken_is_out_and_so_is_what_is_made_with_it(
    root: Path, before: CheckResult, edited: dict[str, bytes]
) -> None:
    edit(root, f"recipes/{COMPONENT}.md", edited, "formula:", "formulas:")
    same(root, before, f"recipes/{COMPONENT}.md")


@pytest.mark.long
@pytest.mark.parametrize("name", sorted(path.stem for path in (CONTENT / "recipes").glob("*.md")))
def test_any_recipe_changed_in_any_way(
    root: Path, before: CheckResult, edited: dict[str, bytes], name: str
) -> None:
    path = f"recipes/{name}.md"
    data = (root / path).read_bytes()
    for old, new in (
        ("title: ", "title: Other "),
        ("formula:", "formulas:"),
        ("\n---\n", "\n---\nA word.\n\n"),
    ):
        edit(root, path, edited, old, new)
        same(root, before, path)
        (root / path).write_bytes(data)


@pytest.mark.long
def test_a_bake_record_and_a_line_of_the_ledger(
    root: Path, before: CheckResult, edited: dict[str, bytes]
) -> None:
    record = next(each.path for each in before.bakes)
    edit(root, record, edited, "recipe:", "note: Warm day.\nrecipe:")
    same(root, before, record)
    (root / record).write_bytes(edited[record])
    lines = (root / "ledger.jsonl").read_bytes()
    edited["ledger.jsonl"] = lines
    (root / "ledger.jsonl").write_bytes(b"\n".join(lines.splitlines()[:-1]) + b"\n")
    same(root, before, "ledger.jsonl")


def test_a_sheet_that_is_being_made_keeps_nobody_from_a_page(root: Path) -> None:
    """While one file's making waits, another file is handed out."""
    desk = Desk(root, day=DAY)
    known = desk.now()
    asked: list[bytes | None] = []

    def slow() -> tuple[Product, ...]:
        from threading import Thread

        other = Thread(target=lambda: asked.append(desk.file("site/robots.txt")))
        other.start()
        other.join(timeout=20)
        return (Product(path="slow.pdf", content=b"slow"),)

    pieces = {**known.pieces, "slow.pdf": Piece(made_from="slow", work=slow)}
    object.__setattr__(known, "pieces", pieces)
    assert desk.file("slow.pdf") == b"slow"
    assert asked
    assert asked[0]
