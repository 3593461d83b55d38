"""The commands over the real pipeline: from nothing to a publication, and what a mistake does to it."""

import json
import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from generator.build.manifest import NAME as MANIFEST
from generator.cli.main import main

Capture = pytest.CaptureFixture[str]
DAY = ["--day", "2026-02-01"]
RECIPE = "saturday-tin-loaf"


def laid(folder: Path) -> Path:
    assert main(["start", str(folder), "--day", "2026-01-01"]) == 0
    return folder


def contents(folder: Path) -> dict[str, bytes]:
    return {
        each.relative_to(folder).as_posix(): each.read_bytes() for each in folder.rglob("*") if each.is_file()
    }


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    """A folder with the starter in `content/` and what was made of it in `output/`; read only."""
    folder = tmp_path_factory.mktemp("made")
    laid(folder / "content")
    assert main(["make", str(folder / "content"), *DAY, "--jobs", "1"]) == 0
    before = contents(folder)
    yield folder
    assert contents(folder) == before


def findings(content: Path, capsys: Capture) -> list[str]:
    capsys.readouterr()
    main(["check", str(content), *DAY, "--format", "json"])
    objects = json.loads(capsys.readouterr().out)
    return [
        f"{each['path']}:{each['line']}:{each['column']} {each['code']} {each['message']}" for each in objects
    ]


def test_starter_gives_no_finding(tmp_path: Path, capsys: Capture) -> None:
    assert findings(laid(tmp_path / "mine"), capsys) == []


def test_first_recipe_of_the_readme_is_clean_once_its_pack_is_read(
    project: Path, tmp_path: Path, capsys: Capture
) -> None:
    content = laid(tmp_path / "mine")
    readme = (project / "README.md").read_text()
    (recipe,) = re.findall(r"```markdown\n(.*?)```", readme, re.DOTALL)
    (pantry,) = re.findall(r"```yaml\n(.*?)```", readme, re.DOTALL)
    (content / "recipes" / "butter-rounds.md").write_text(recipe)
    assert [each.split()[1] for each in findings(content, capsys)] == ["L004"]
    with (content / "pantry.yaml").open("a") as file:
        file.write(pantry)
    assert findings(content, capsys) == []


def test_make_writes_what_the_readme_promises(made: Path) -> None:
    site = [
        "index.html",
        "404.html",
        "feed.xml",
        "feed.json",
        "sitemap.xml",
        "robots.txt",
        "about/index.html",
    ]
    site += ["recipes/index.html", "journal/a-first-loaf/index.html", "corrections/index.html"]
    recipe = ["index.html", "recipe.json", "card-4x6.pdf", "card-5x7.pdf", "card-a6.pdf", "card-a5.pdf"]
    recipe += ["formula.pdf", "share.jpg"]
    desk = ["description.txt", "tags.pdf", "bench-sheet.pdf", "overlay.png", "formula.pdf", "tall.jpg"]
    wanted = {f"site/{each}" for each in site}
    wanted |= {f"site/recipes/{RECIPE}/{each}" for each in recipe} | {
        f"desk/{RECIPE}/{each}" for each in desk
    }
    assert wanted - set(contents(made / "output")) == set()


def test_second_make_writes_nothing(made: Path, capsys: Capture) -> None:
    capsys.readouterr()
    assert main(["make", str(made / "content"), *DAY, "--jobs", "1"]) == 0
    assert re.search(r"output/: 0 files written, \d+ unchanged; as of 2026-02-01\n$", capsys.readouterr().out)


def test_same_content_gives_the_same_bytes_elsewhere_and_in_parallel(made: Path, tmp_path: Path) -> None:
    shutil.copytree(made / "content", tmp_path / "elsewhere" / "book")
    output = tmp_path / "there"
    assert (
        main(["make", str(tmp_path / "elsewhere" / "book"), "--output", str(output), *DAY, "--jobs", "2"])
        == 0
    )
    assert contents(output) == contents(made / "output")


def test_make_with_an_error_leaves_the_old_output_as_it_was(
    made: Path, tmp_path: Path, capsys: Capture
) -> None:
    shutil.copytree(made, tmp_path / "mine")
    recipe = tmp_path / "mine" / "content" / "recipes" / f"{RECIPE}.md"
    recipe.write_text(recipe.read_text().replace("10 g table salt", "10 g unobtainium"))
    assert main(["make", str(tmp_path / "mine" / "content"), *DAY]) == 1
    assert "nothing was written" in capsys.readouterr().err
    assert contents(tmp_path / "mine" / "output") == contents(made / "output")


def test_make_with_an_error_writes_nothing_at_all_the_first_time(tmp_path: Path) -> None:
    content = laid(tmp_path / "content")
    (content / "recipes" / f"{RECIPE}.md").write_text("no front matter\n")
    assert main(["make", str(content), *DAY]) == 1
    assert not (tmp_path / "output").exists()


def test_withdrawn_recipe_leaves_the_output(made: Path, tmp_path: Path) -> None:
    shutil.copytree(made, tmp_path / "mine")
    content, output = tmp_path / "mine" / "content", tmp_path / "mine" / "output"
    (content / "recipes" / f"{RECIPE}.md").unlink()
    (content / "journal" / "a-first-loaf.md").unlink()
    assert main(["make", str(content), *DAY, "--jobs", "1"]) == 0
    left = contents(output)
    assert [path for path in left if path != MANIFEST and RECIPE.encode() in left[path]] == []
    assert [path for path in left if RECIPE in path] == []


def test_describe_prints_the_text_of_the_desk(made: Path, capsys: Capture) -> None:
    capsys.readouterr()
    assert main(["describe", RECIPE, "--content", str(made / "content"), *DAY]) == 0
    on_the_desk = (made / "output" / "desk" / RECIPE / "description.txt").read_text()
    assert capsys.readouterr().out.rstrip("\n") == on_the_desk.rstrip("\n")
    assert "Saturday tin loaf" in on_the_desk.splitlines()[0]


@pytest.mark.parametrize(
    ("option", "file"),
    [("--short", "short.txt"), ("--comment", "comment.txt")],
)
def test_describe_prints_the_other_texts_of_the_desk(
    made: Path, capsys: Capture, option: str, file: str
) -> None:
    assert main(["describe", RECIPE, option, "--content", str(made / "content"), *DAY]) == 0
    printed = capsys.readouterr().out.rstrip("\n")
    assert printed == (made / "output" / "desk" / RECIPE / file).read_text().rstrip("\n")


def test_describe_writes_every_text_and_nothing_over_what_is_not_its_own(
    made: Path, tmp_path: Path, capsys: Capture
) -> None:
    words = ["describe", RECIPE, "--all", "--into", str(tmp_path), "--content", str(made / "content"), *DAY]
    assert main(words) == 0
    desk = made / "output" / "desk" / RECIPE
    for path in tmp_path.iterdir():
        assert path.read_bytes() == (desk / path.name).read_bytes()
    assert {"description.txt", "short.txt", "comment.txt"} <= {path.name for path in tmp_path.iterdir()}
    assert main(words) == 0
    (tmp_path / "short.txt").write_text("a letter of mine", encoding="utf-8")
    assert main(words) == 1
    assert (tmp_path / "short.txt").read_text() == "a letter of mine"
    assert "is no text of ours, and is not written over" in capsys.readouterr().err


def test_describe_copies_with_the_tool_there_is_and_prints_where_there_is_none(
    made: Path, tmp_path: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    words = ["describe", RECIPE, "--short", "--copy", "--content", str(made / "content"), *DAY]
    short = (made / "output" / "desk" / RECIPE / "short.txt").read_text().rstrip("\n")
    tool = tmp_path / "pbcopy"
    tool.write_text(f"#!/bin/sh\n/bin/cat > {tmp_path}/held\n", encoding="utf-8")
    tool.chmod(0o755)
    monkeypatch.setenv("PATH", str(tmp_path))
    assert main(words) == 0
    assert (tmp_path / "held").read_text() == short
    assert capsys.readouterr().out == ""
    tool.unlink()
    assert main(words) == 0
    told = capsys.readouterr()
    assert told.out.rstrip("\n") == short
    assert "not copied: there is no clipboard tool" in told.err


def test_without_a_film_there_is_no_chapter_file(made: Path, capsys: Capture) -> None:
    assert main(["describe", RECIPE, "--chapters", "--content", str(made / "content"), *DAY]) == 1
    assert capsys.readouterr().err.endswith("no chapter file of saturday-tin-loaf: it has no film\n")
    assert not (made / "output" / "desk" / RECIPE / "chapters.vtt").exists()


def test_a_film_that_is_not_there_is_told(made: Path, capsys: Capture) -> None:
    words = ["describe", RECIPE, "--video", "9", "--content", str(made / "content"), *DAY]
    assert main(words) == 1
    assert "has no film under “videos:”" in capsys.readouterr().err


def test_show_as_json_is_the_data_of_the_site(made: Path, capsys: Capture) -> None:
    capsys.readouterr()
    assert main(["show", RECIPE, "--content", str(made / "content"), *DAY, "--format", "json"]) == 0
    on_the_site = (made / "output" / "site" / "recipes" / RECIPE / "recipe.json").read_text()
    assert json.loads(capsys.readouterr().out) == json.loads(on_the_site)


def test_show_tells_the_amounts(made: Path, capsys: Capture) -> None:
    capsys.readouterr()
    assert main(["show", RECIPE, "--content", str(made / "content"), *DAY]) == 0
    out, err = capsys.readouterr()
    assert err == ""
    for words in ("Saturday tin loaf", "500 g", "bread flour", "66 %", "330 g", "35 min", "WHEAT"):
        assert words in out.replace("\N{NO-BREAK SPACE}", " ").replace("\N{NARROW NO-BREAK SPACE}", " ")
