"""`tinleaf cards` over the real pipeline: what is chosen, where it is written, and what a mistake is told."""

from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader

from generator.build.manifest import NAME as MANIFEST
from generator.cli.main import main
from tests.render.book.conftest import GLAZE, NUTS, PLAIN, lay

Capture = pytest.CaptureFixture[str]
DAY = ["--day", "2026-10-01"]


@pytest.fixture
def kitchen(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    lay(tmp_path, {"plain-loaf": PLAIN, "glaze": GLAZE, "nut-squares": NUTS})
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_a_kind_is_laid_on_sheets_of_the_sites_paper(kitchen: Path, capsys: Capture) -> None:
    assert main(["cards", "kind:bread", *DAY]) == 0
    told = capsys.readouterr()
    assert told.out == "output/desk/cards/kind-bread-4x6.pdf: 2 cards on 1 sheet of letter\n"
    assert "tinleaf: nut-squares: " in told.err
    assert "turned over the long edge" in told.err
    content = (kitchen / "output/desk/cards/kind-bread-4x6.pdf").read_bytes()
    assert len(PdfReader(BytesIO(content)).pages) == 2
    assert (kitchen / "output" / MANIFEST).exists()


def test_size_paper_and_copies_are_the_makers(kitchen: Path, capsys: Capture) -> None:
    words = ["cards", "glaze", "--size", "a6", "--paper", "a4", "--copies", "4", "--output", "mine.pdf"]
    assert main([*words, *DAY]) == 0
    told = capsys.readouterr()
    assert told.out == "mine.pdf: 4 cards on 1 sheet of a4\n"
    assert "no room for marks" in told.err
    assert "long edge" not in told.err


def test_an_unknown_word_and_a_recipe_with_an_error_are_told(kitchen: Path, capsys: Capture) -> None:
    assert main(["cards", "plain-laof", *DAY]) == 1
    assert "Did you mean “plain-loaf”?" in capsys.readouterr().err
    path = kitchen / "content/recipes/glaze.md"
    path.write_text(path.read_text().replace("40 g water", "40 g watre"))
    assert main(["cards", "all", *DAY]) == 1
    assert "the cards cannot be shown before these are mended" in capsys.readouterr().err
    assert not (kitchen / "output").exists()


@pytest.mark.parametrize(
    "words",
    [
        [],
        [""],
        ["all", "--size", "a4"],
        ["all", "--paper", "half"],
        ["all", "--copies", "0"],
        ["all", "--copies", "101"],
        ["all", "--output", "x.png"],
    ],
)
def test_mistakes_on_the_command_line_exit_with_two(kitchen: Path, capsys: Capture, words: list[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        main(["cards", *words])
    assert ended.value.code == 2
    assert capsys.readouterr().err.startswith("tinleaf cards: ")
