"""`tinleaf bring`, from the command line to the files."""

import subprocess
import sys
from pathlib import Path

import pytest

from generator.cli.main import main

OLD = (
    "Plain loaf\n\nIngredients\n500 g bread flour\n330 g water\n10 g salt\n\nMethod\n1. Mix "
    "the bread flour, water and salt.\n2. Bake at 220 C for 40 minutes.\n"
)


@pytest.fixture
def content(tmp_path: Path) -> Path:
    assert main(["start", str(tmp_path / "c"), "--day", "2026-01-01"]) == 0
    return tmp_path / "c"


def old(tmp_path: Path, text: str = OLD, name: str = "old.txt") -> str:
    (tmp_path / name).write_text(text, encoding="utf-8")
    return str(tmp_path / name)


def run(content: Path, *words: str) -> int:
    return main(["bring", *words, "--content", str(content)])


def test_a_text_becomes_a_file_that_check_takes(
    content: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    capsys.readouterr()
    assert run(content, old(tmp_path)) == 0
    told = capsys.readouterr()
    assert told.out == f"{content.as_posix()}/recipes/plain-loaf.md\n"
    assert "  3 ingredient lines: 3 sure\n  2 lines of steps\n  no questions\n" in told.err
    text = (content / "recipes/plain-loaf.md").read_text(encoding="utf-8")
    assert "2. Bake at {oven 220 C} for {bake 40 min}.\n" in text
    assert "published:" not in text
    assert main(["check", str(content)]) == 0


def test_a_file_that_is_there_is_never_written_over(
    content: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(content, old(tmp_path)) == 0
    target = content / "recipes/plain-loaf.md"
    target.write_text("mine", encoding="utf-8")
    capsys.readouterr()
    assert run(content, old(tmp_path)) == 1
    assert (
        "plain-loaf.md is there already and is not written over; name another with --as NAME\n"
        in capsys.readouterr().err
    )
    assert target.read_text(encoding="utf-8") == "mine"


def test_another_name(content: Path, tmp_path: Path) -> None:
    assert run(content, old(tmp_path), "--as", "old-loaf") == 0
    assert (content / "recipes/old-loaf.md").exists()


def test_a_dry_run_prints_and_writes_nothing(
    content: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = sorted(each.name for each in content.rglob("*"))
    capsys.readouterr()
    assert run(content, old(tmp_path), "--dry-run") == 0
    assert capsys.readouterr().out.startswith("---\n# Brought in from ")
    assert sorted(each.name for each in content.rglob("*")) == before


def test_standard_input_is_printed(content: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "generator.cli", "bring", "-", "--content", str(content)]
        if (Path(__file__).parents[2] / "generator/cli/__main__.py").exists()
        else [
            sys.executable,
            "-c",
            f"import sys; from generator.cli.main import main; sys.exit(main(['bring', '-', "
            f"'--content', {str(content)!r}]))",
        ],
        input=OLD.encode(),
        capture_output=True,
        cwd=Path(__file__).parents[2],
        check=False,
    )
    assert (done.returncode, done.stdout.decode().splitlines()[2]) == (0, "title: Plain loaf")
    assert not (content / "recipes/plain-loaf.md").exists()


UNKNOWN = OLD.replace("10 g salt", "10 g salt\n60 g moonberries")


def test_what_nobody_knows_is_set_aside_with_a_caution(
    content: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    pantry = (content / "pantry.yaml").read_bytes()
    assert run(content, old(tmp_path, UNKNOWN)) == 0
    text = (content / "recipes/plain-loaf.md").read_text(encoding="utf-8")
    assert "  # ? - 60 g moonberries\n" in text
    assert "Caution: Not yet in the amounts or on the label: 60 g moonberries.\n" in text
    assert (content / "pantry.yaml").read_bytes() == pantry
    assert "for pantry.yaml (--pantry adds them):\n    moonberries:" in capsys.readouterr().err
    assert main(["check", str(content)]) == 0


def test_rows_go_to_the_pantry_where_it_is_asked_for(content: Path, tmp_path: Path) -> None:
    pantry = (content / "pantry.yaml").read_bytes()
    assert run(content, old(tmp_path, UNKNOWN), "--pantry") == 0
    assert (content / "pantry.yaml").read_bytes().startswith(pantry)
    assert "\n  - 60 g moonberries\n" in (content / "recipes/plain-loaf.md").read_text(encoding="utf-8")
    assert main(["check", str(content)]) == 0


GERMAN = (
    "Apfelkuchen\n\nZutaten\n250 g Mehl\n2 EL Zucker\n1 Prise Salz\n\nZubereitung\nMehl, "
    "Zucker und Salz mischen.\n"
)


def test_a_text_of_which_nothing_is_known_asks_for_the_pantry(
    content: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(content, old(tmp_path, GERMAN)) == 1
    assert "Nothing in it is known: try --pantry." in capsys.readouterr().err
    assert not (content / "recipes/apfelkuchen.md").exists()
    assert run(content, old(tmp_path, GERMAN), "--pantry") == 0
    assert "mehl:\n  is: all-purpose flour\n" in (content / "pantry.yaml").read_text(encoding="utf-8")
    assert main(["check", str(content)]) == 0


def test_a_folder_brings_all_it_holds(
    content: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = tmp_path / "old"
    folder.mkdir()
    old(folder)
    old(folder, OLD.replace("Plain", "Other"), "b.md")
    old(folder, "nothing", ".hidden.txt")
    (folder / "photo.jpg").write_bytes(b"\xff\xd8")
    capsys.readouterr()
    assert run(content, str(folder)) == 0
    told = capsys.readouterr()
    assert [Path(each).name for each in told.out.splitlines()] == ["other-loaf.md", "plain-loaf.md"]
    assert "photo.jpg is passed over: it is no text, page or table\n" in told.err


def test_a_likeness_is_told(content: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(content, old(tmp_path)) == 0
    capsys.readouterr()
    assert run(content, old(tmp_path, OLD.replace("500 g", "470 g").replace("Plain", "Next"))) == 0
    assert "looks like your Plain loaf, with 30 g less bread flour\n" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (("nowhere.txt",), "there is no file or folder nowhere.txt"),
        (
            ("FILE", "--as", "No Name"),
            "“No Name” cannot be the name of a file: lower-case letters, digits and single hyphens only",
        ),
        (
            ("FILE", "--as", "../out"),
            "“../out” cannot be the name of a file: lower-case letters, digits and single hyphens only",
        ),
    ],
)
def test_usage_mistakes(
    words: tuple[str, ...], message: str, content: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    given = [old(tmp_path) if each == "FILE" else each for each in words]
    with pytest.raises(SystemExit) as ended:
        run(content, *given)
    assert ended.value.code == 2
    assert message in capsys.readouterr().err


def test_binary_is_refused_in_words(
    content: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "x.txt").write_bytes(b"\x00\x01")
    assert run(content, str(tmp_path / "x.txt")) == 1
    assert (
        "x.txt: it is no text: it holds bytes that no text has. Save it as plain text first."
        in capsys.readouterr().err
    )
