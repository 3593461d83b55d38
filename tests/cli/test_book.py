"""`tinleaf book` over the real pipeline: what is chosen, where it is written, and what a mistake is told."""

from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader

from generator.build.manifest import NAME as MANIFEST
from generator.cli.main import main
from tests.render.book.conftest import GLAZE, NUTS, PLAIN, lay

Capture = pytest.CaptureFixture[str]
DAY = ["--day", "2026-10-01"]
FEW = {"plain-loaf": PLAIN, "glaze": GLAZE, "nut-squares": NUTS}


@pytest.fixture
def kitchen(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    lay(tmp_path, FEW)
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_a_kind_is_bound_by_title_and_an_unread_pack_is_told(kitchen: Path, capsys: Capture) -> None:
    assert main(["book", "kind:bread", "--epub", *DAY]) == 0
    told = capsys.readouterr()
    assert told.out == "output/desk/books/kind-bread.epub: 2 bakes\n"
    assert "tinleaf: nut-squares: " in told.err
    assert (kitchen / "output/desk/books/kind-bread.epub").read_bytes()[:2] == b"PK"
    assert (kitchen / "output" / MANIFEST).exists()


def test_a_booklet_is_a_pdf(kitchen: Path, capsys: Capture) -> None:
    assert main(["book", "glaze", "--title", "Sweet things", "--output", "mine.pdf", *DAY]) == 0
    assert capsys.readouterr().out == "mine.pdf: 1 bake\n"
    content = (kitchen / "mine.pdf").read_bytes()
    assert content.startswith(b"%PDF")
    told = PdfReader(BytesIO(content)).metadata
    assert told is not None
    assert told.title == "Sweet things"


def test_each_bake_stands_once_and_all_is_all(kitchen: Path, capsys: Capture) -> None:
    assert main(["book", "glaze", "all", "glaze", "kind:sweet", "--epub", *DAY]) == 0
    assert capsys.readouterr().out == "output/desk/books/glaze-and-3-more.epub: 3 bakes\n"


def test_a_name_is_taken_before_it_is_published_and_all_is_not(kitchen: Path, capsys: Capture) -> None:
    assert main(["book", "all", "--epub", "--day", "2026-01-01"]) == 0
    assert capsys.readouterr().out.endswith(": 1 bake\n")
    assert main(["book", "glaze", "--epub", "--day", "2026-01-01"]) == 0
    assert "glaze is not published" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["plain-laof"], "nothing is called “plain-laof”. Did you mean “plain-loaf”?"),
        (["kind:bred"], "nothing is called “kind:bred”. Did you mean “kind:bread” or"),
        (["glaze", "zzzz"], "nothing is called “zzzz”. There is: glaze, nut-squares, plain-loaf, "),
    ],
)
def test_an_unknown_word_gets_the_nearest(
    kitchen: Path, capsys: Capture, words: list[str], told: str
) -> None:
    assert main(["book", *words, *DAY]) == 1
    said = capsys.readouterr()
    assert told in said.err
    assert said.out == ""
    assert not (kitchen / "output").exists()


def test_a_recipe_with_an_error_is_told_and_nothing_is_written(kitchen: Path, capsys: Capture) -> None:
    path = kitchen / "content/recipes/glaze.md"
    path.write_text(path.read_text().replace("40 g water", "40 g watre"))
    assert main(["book", "glaze", *DAY]) == 1
    assert "content/recipes/glaze.md:" in capsys.readouterr().err
    assert main(["book", "all", *DAY]) == 1
    assert "the book cannot be shown before these are mended" in capsys.readouterr().err
    assert not (kitchen / "output").exists()


@pytest.mark.parametrize(
    "words",
    [
        [],
        [""],
        ["kind:"],
        ["all", "--paper", "a3"],
        ["all", "--epub", "--bleed"],
        ["all", "--epub", "--paper", "a5"],
        ["all", "--output", "x.epub"],
        ["all", "--epub", "--output", "x.pdf"],
        ["all", "--title", "  "],
        ["all", "--content", "nowhere"],
    ],
)
def test_mistakes_on_the_command_line_exit_with_two(kitchen: Path, capsys: Capture, words: list[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        main(["book", *words])
    assert ended.value.code == 2
    assert capsys.readouterr().err.startswith("tinleaf book: ")


def test_another_kind_of_file_is_never_written_over(kitchen: Path, capsys: Capture) -> None:
    (kitchen / "mine.epub").write_bytes(b"PK\x03\x04 a letter of somebody")
    assert main(["book", "glaze", "--epub", "--output", "mine.epub", *DAY]) == 1
    assert "mine.epub is no EPUB file, and is not written over" in capsys.readouterr().err
    assert (kitchen / "mine.epub").read_bytes() == b"PK\x03\x04 a letter of somebody"


def test_a_title_that_cannot_be_printed_is_told(kitchen: Path, capsys: Capture) -> None:
    assert main(["book", "glaze", "--title", "\u9762", *DAY]) == 1
    assert "cannot be printed: U+9762" in capsys.readouterr().err
