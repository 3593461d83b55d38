"""The release gate of `make`, and `check --built` on the command line."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from generator.build.task import Task
from generator.cli.main import main
from generator.cli.options import OUR_BUG, USAGE_MISTAKE
from generator.publication import plan
from generator.render.output import Product
from tests.proof.building import BRAID, Files, lay, papers, texts

PAGE = f"site/recipes/{BRAID}/index.html"
DAY = ["--day", "2026-10-01"]
Capture = pytest.CaptureFixture[str]
Rendered = Callable[[Files], None]


def as_products(files: Files) -> tuple[Product, ...]:
    return tuple(Product(path=path, content=content) for path, content in files.items())


@pytest.fixture
def content(tmp_path: Path) -> Path:
    return lay(tmp_path / "content")


@pytest.fixture
def rendered(monkeypatch: pytest.MonkeyPatch) -> Rendered:
    """Lets the renderers have made these files, right or wrong."""

    def made(files: Files) -> None:
        given = Task(title="given", work=as_products, inputs=(dict(files),))
        monkeypatch.setattr(plan, "tasks_of", lambda _: (given,))

    return made


def tampered() -> Files:
    page = texts()[PAGE].decode()
    assert "PT35M" in page
    return {**texts(), PAGE: page.replace("PT35M", "PT45M").encode()}


def tree(folder: Path) -> dict[str, bytes]:
    return {
        each.relative_to(folder).as_posix(): each.read_bytes() for each in folder.rglob("*") if each.is_file()
    }


def test_files_that_agree_pass_the_gate(content: Path, tmp_path: Path, rendered: Rendered) -> None:
    rendered(texts())
    assert main(["make", str(content), *DAY]) == 0
    assert (tmp_path / "output" / PAGE).read_bytes() == texts()[PAGE]


def test_a_file_that_disagrees_keeps_everything_from_being_written(
    content: Path, tmp_path: Path, rendered: Rendered, capsys: Capture
) -> None:
    rendered(texts())
    assert main(["make", str(content), *DAY]) == 0
    before = tree(tmp_path / "output")
    rendered(tampered())
    assert main(["make", str(content), *DAY]) == OUR_BUG
    assert tree(tmp_path / "output") == before
    told = capsys.readouterr().err
    assert f"{PAGE}:1:1: error[A005] cookTime in the data for search engines: it says “PT45M”" in told
    assert "this is a fault of the program, not of your files; nothing was written" in told


def test_nothing_at_all_is_written_where_there_was_no_output(
    content: Path, tmp_path: Path, rendered: Rendered
) -> None:
    rendered(tampered())
    assert main(["make", str(content), *DAY]) == OUR_BUG
    assert not (tmp_path / "output").exists()


@pytest.fixture
def built(tmp_path: Path, content: Path) -> Path:
    """The sample's output without the desk of the peel and three cards."""
    for path, file in {**texts(), **papers()}.items():
        (tmp_path / "out put" / path).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / "out put" / path).write_bytes(file)
    return tmp_path / "out put"


def test_check_built_names_the_file_both_values_and_what_to_type(
    content: Path, built: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(content.parent)
    path = built / "desk" / BRAID / "description.txt"
    path.write_text(path.read_text().replace("430 g (3⅓ cups) bread", "400 g (3⅓ cups) bread"))
    assert main(["check", "--built", "out put", *DAY]) == 1
    told = capsys.readouterr().out
    line = path.read_text().splitlines().index("400 g (3⅓ cups) bread flour") + 1
    assert (
        f"out put/desk/{BRAID}/description.txt:{line}:1: error[A002] the line of bread flour: "
        "it says “400 g”, the recipe “430 g”\n"
        f"    {line} | 400 g (3⅓ cups) bread flour\n"
        "       | ^^^^^\n"
    ) in told
    assert "hint: `tinleaf make content --output 'out put' --day 2026-10-01` writes it anew." in told
    assert "out put: " in told


def test_check_built_as_json_gives_paths_that_can_be_opened(
    content: Path, built: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(content.parent)
    assert main(["check", "--built", "out put", "--format", "json", *DAY]) == 1
    found = json.loads(capsys.readouterr().out)
    gone = [each["path"] for each in found if each["code"] == "A008"]
    assert "out put/desk/candied-lemon-peel/description.txt" in gone
    assert set(found[0]) == {"path", "line", "column", "end_column", "severity", "code", "message", "hint"}


def test_content_with_errors_is_not_compared(content: Path, built: Path, capsys: Capture) -> None:
    recipe = content / "recipes" / f"{BRAID}.md"
    recipe.write_text(recipe.read_text().replace("430 g (3 1/3 cups) bread flour", "430 g unobtainium"))
    assert main(["check", str(content), "--built", str(built), *DAY]) == 1
    told = capsys.readouterr().out
    assert "F043" in told
    assert f"{built.as_posix()}: not compared, because of the errors above" in told


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("nowhere", "there is no folder"),
        ("content/site.yaml", "is a file; name the output folder that it lies in"),
        ("empty", "is empty; `tinleaf make` writes an output folder"),
        ("content", "is no output of ours"),
    ],
)
def test_a_folder_that_is_no_output_is_a_mistake_on_the_command_line(
    name: str, says: str, content: Path, tmp_path: Path, capsys: Capture
) -> None:
    (tmp_path / "empty").mkdir()
    with pytest.raises(SystemExit) as ended:
        main(["check", str(content), "--built", str(tmp_path / name)])
    assert ended.value.code == USAGE_MISTAKE
    assert says in capsys.readouterr().err


def test_built_asks_for_a_folder(content: Path, capsys: Capture) -> None:
    with pytest.raises(SystemExit) as ended:
        main(["check", str(content), "--built"])
    assert ended.value.code == USAGE_MISTAKE
    assert "expected one argument" in capsys.readouterr().err
