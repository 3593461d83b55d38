"""An output folder as a whole: what is missing, what nothing explains, what was changed, what is of other content."""

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

import pytest

from generator.asked.card_sheets import lay_cards
from generator.build.fingerprint import fingerprint
from generator.build.manifest import NAME, as_bytes
from generator.diagnostics.diagnostic import Severity
from generator.proof.folder import MANIFEST, prove_folder, why_unreadable
from generator.proof.papers import _stands_in_pieces, book_faults, card_sheet_faults, own_tags_faults
from tests.proof.building import BRAID, Change, lay, papers, sample, texts, understood

REMEDY = "`tinleaf make` writes it anew."
BRAIDS = f"site/recipes/{BRAID}/"


def written(root: Path, changed: Mapping[str, bytes | None] | None = None, *, noted: bool = True) -> Path:
    """The sample's output on the disk, with files changed, added or, with None, left out."""
    files = {**texts(), **papers()}
    if noted:
        files[NAME] = as_bytes({path: fingerprint(content) for path, content in files.items()})
    for path, content in {**files, **(changed or {})}.items():
        if content is not None:
            (root / path).parent.mkdir(parents=True, exist_ok=True)
            (root / path).write_bytes(content)
    return root


def findings(root: Path, code: str) -> list[tuple[str, str]]:
    """Path and message of every finding of a code."""
    proved = prove_folder(root, replace(sample().expected, remedy=REMEDY))
    return [(each.span.path, each.message) for each in proved.diagnostics if each.code == code]


def test_the_name_of_the_manifest_is_one() -> None:
    assert MANIFEST == NAME


def test_what_was_left_out_is_missing_and_nothing_else_is_said(tmp_path: Path) -> None:
    """Three sizes of card and the desk of the peel were not built for this test."""
    proved = prove_folder(written(tmp_path), sample().expected)
    assert {each.code for each in proved.diagnostics} == {"A008"}
    gone = {each.span.path for each in proved.diagnostics if each.message == "this file is not there"}
    cards = {f"{BRAIDS}card-{size}.pdf" for size in ("4x6", "5x7", "a5")}
    desk = (
        "description.txt",
        "short.txt",
        "comment.txt",
        "tags.pdf",
        "tags.txt",
        "bench-sheet.pdf",
        "formula.pdf",
        "overlay.png",
        "tall.jpg",
    )
    assert gone == cards | {f"desk/candied-lemon-peel/{name}" for name in desk}


def test_a_link_to_a_file_that_is_gone_is_named_at_its_line(tmp_path: Path) -> None:
    gone = f"{BRAIDS}recipe.json", "site/leaf/docket.css"
    root = written(tmp_path, dict.fromkeys(gone))
    told = findings(root, "A008")
    assert (gone[0], "this file is not there") in told
    assert ("site/index.html", f"a link leads to {gone[1]}, and there is no such file") in told


FOREIGN = (
    "desk/candied-lemon-peel/overlay-2.png",
    "desk/honey-oat-braid/.DS_Store",
    "site/holiday.html",
    "site/media/other.jpg",
    f"{BRAIDS}card-4x6 (1).pdf",
    "site/recipes/rye/index.html",
)


def test_foreign_files_are_named(tmp_path: Path) -> None:
    root = written(tmp_path, dict.fromkeys(FOREIGN, b"strange"))
    told = "nothing in the content explains this file, and no make wrote it"
    assert set(findings(root, "A006")) == {(path, told) for path in FOREIGN}


def test_the_page_of_a_bake_that_is_gone_is_told_from_a_foreign_file(tmp_path: Path) -> None:
    page = "site/recipes/rye/index.html"
    files = {**texts(), **papers(), page: b"rye"}
    marks = {path: fingerprint(content) for path, content in files.items()}
    root = written(tmp_path, {page: b"rye", NAME: as_bytes(marks)})
    told = "an earlier make wrote this file, and nothing in the content asks for it any more"
    assert findings(root, "A006") == [(page, told)]


def test_a_link_out_of_the_folder_is_not_followed(tmp_path: Path) -> None:
    root = written(tmp_path / "output")
    (tmp_path / "secret.txt").write_text("400 g")
    (root / "site" / "secret.txt").symlink_to(tmp_path / "secret.txt")
    assert findings(root, "A006") == [("site/secret.txt", "this is a link to another place")]


def test_a_file_that_was_changed_without_an_amount_is_named(tmp_path: Path) -> None:
    sheet = texts()["site/leaf/docket.css"] + b"\n.caution { display: none }\n"
    root = written(tmp_path, {"site/leaf/docket.css": sheet})
    ((path, message),) = findings(root, "A010")
    assert (path, "changed after it was made" in message) == ("site/leaf/docket.css", True)


def test_what_is_found_in_a_file_is_told_once(tmp_path: Path) -> None:
    path = f"desk/{BRAID}/description.txt"
    text = papers()[path].replace(b"430 g (3", b"400 g (3", 1)
    root = written(tmp_path, {path: text})
    assert findings(root, "A010") == []
    assert [each for each, _ in findings(root, "A002")] == [path]


def test_a_file_that_differs_in_everything_is_told_in_a_few_lines(tmp_path: Path) -> None:
    path = f"{BRAIDS}index.html"
    root = written(tmp_path, {path: b"<!doctype html><title>x</title>"})
    proved = prove_folder(root, sample().expected)
    told = [each for each in proved.diagnostics if each.span.path == path]
    assert len(told) == 9
    assert sum("more differences than these" in each.message for each in told) == 1
    assert {each.code for each in told} == {"A003"}


def test_tags_for_people_are_explained(tmp_path: Path) -> None:
    path = f"desk/{BRAID}/tags-for.pdf"
    root = written(tmp_path, {path: papers()[f"desk/{BRAID}/tags.pdf"]})
    assert findings(root, "A006") == []
    assert findings(root, "A009") == []


def test_tags_for_people_of_an_older_recipe_are_a_warning() -> None:
    newer = understood(Change(path=f"recipes/{BRAID}.md", old="salted butter", new="lard"))
    tags = papers()[f"desk/{BRAID}/tags.pdf"]
    (found,) = own_tags_faults("desk/tags-for.pdf", tags, newer.tag(BRAID), command="Print them anew.")
    assert (found.code, found.severity, found.hint) == ("A009", Severity.WARNING, "Print them anew.")


def test_a_booklet_of_an_older_recipe_is_a_warning(tmp_path: Path) -> None:
    """A card stands for the pages of a booklet: it has the same lines."""
    path = "desk/books/all.pdf"
    root = written(tmp_path, {path: papers()[f"{BRAIDS}card-a6.pdf"]})
    assert findings(root, "A006") == []
    assert findings(root, "A009") == []
    newer = understood(Change(path=f"recipes/{BRAID}.md", old="50 g rolled oats", new="80 g rolled oats"))
    (found,) = book_faults(path, papers()[f"{BRAIDS}card-a6.pdf"], newer.expected)
    assert (found.code, found.severity) == ("A009", Severity.WARNING)
    assert found.message.endswith("“Honey oat braid” than the recipe does now: the line of rolled oats")


def test_a_sheet_of_older_cards_is_a_warning(tmp_path: Path) -> None:
    path, card = "desk/cards/all-a6.pdf", papers()[f"{BRAIDS}card-a6.pdf"]
    root = written(tmp_path, {path: card})
    assert findings(root, "A006") == []
    assert findings(root, "A009") == []
    newer = understood(Change(path=f"recipes/{BRAID}.md", old="50 g rolled oats", new="80 g rolled oats"))
    (found,) = card_sheet_faults(path, card, newer.expected)
    assert (found.code, found.hint) == ("A009", "Print it anew with `tinleaf cards`.")
    assert found.message.startswith("a card says otherwise of “Honey oat braid”")


@pytest.mark.parametrize(
    ("old", "new", "what"),
    [
        ("malted barley flour)", "malted barley flour, soya flour)", "the list of ingredients"),
        ("contains: [wheat, barley]", "contains: [wheat, barley, soya]", "what it contains"),
    ],
)
def test_a_sheet_of_cards_printed_before_a_pack_changed_is_a_warning(old: str, new: str, what: str) -> None:
    """The recipe is the same, and so is every line of the card: only what the pack says is another."""
    newer = understood(Change(path="pantry.yaml", old=old, new=new))
    (found,) = card_sheet_faults("desk/cards/all-a6.pdf", papers()[f"{BRAIDS}card-a6.pdf"], newer.expected)
    assert (found.code, found.severity) == ("A009", Severity.WARNING)
    assert found.message == f"a card says otherwise of “Honey oat braid” than the recipe does now: {what}"


def test_cards_that_lie_on_their_side_on_the_sheet_are_read() -> None:
    """Four of 4 × 6 in fit a sheet of Letter only so; their words cross the sheet."""
    made = lay_cards(sample(), [BRAID], size="4x6", paper="letter", subject="all")
    assert card_sheet_faults("desk/cards/all-4x6.pdf", made.content, sample().expected) == ()
    newer = understood(
        Change(path="pantry.yaml", old="malted barley flour)", new="malted barley flour, soya)")
    )
    (found,) = card_sheet_faults("desk/cards/all-4x6.pdf", made.content, newer.expected)
    assert found.message.endswith("the list of ingredients")


def test_a_declaration_that_goes_on_on_another_side_is_still_there() -> None:
    said = "ingredientsbreadflourwheatflourmaltedbarleyflourwatersugarhoney"
    torn = f"{said[:30]}card2of2honeyoatbraid{said[30:]}"
    assert _stands_in_pieces(torn, said)
    assert not _stands_in_pieces(torn, said.replace("water", "soyaflourwater"))
    assert not _stands_in_pieces(torn, said + "milk")


def test_without_a_manifest_everything_is_still_read(tmp_path: Path) -> None:
    path = f"{BRAIDS}index.html"
    root = written(tmp_path, {path: texts()[path].replace(b"wheat, milk, egg</b>", b"egg</b>")}, noted=False)
    assert [each for each, _ in findings(root, "A003")] == [path]


def test_output_of_other_content_is_said_once(tmp_path: Path) -> None:
    root = written(tmp_path / "output")
    site = lay(tmp_path / "content")
    for path in (site / "recipes").iterdir():
        path.rename(path.with_name(f"other-{path.name}"))
    braid = site / "recipes" / f"other-{BRAID}.md"
    braid.write_text(braid.read_text().replace("recipe: candied", "recipe: other-candied"))
    from generator.pipeline import check_folder
    from tests.proof.building import DAY

    other = check_folder(site, day=DAY)
    (found,) = prove_folder(root, other.expected).diagnostics
    assert found.message == "this output was made of other content: none of its bakes is in recipes/"


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("nowhere", "there is no folder"),
        ("file", "is a file"),
        ("empty", "is empty"),
        ("strange", "is no output of ours"),
        ("output/site", "is a part of an output"),
    ],
)
def test_what_is_no_output_is_said(name: str, says: str, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("x")
    (tmp_path / "empty").mkdir()
    (tmp_path / "strange").mkdir()
    (tmp_path / "strange" / "letter.txt").write_text("x")
    (tmp_path / "output" / "site").mkdir(parents=True)
    (tmp_path / "output" / NAME).write_bytes(as_bytes({}))
    assert says in why_unreadable(tmp_path / name)
    assert why_unreadable(tmp_path / "output") == ""
