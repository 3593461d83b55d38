"""The second theme makes all that the first makes: its own pages, and cards, tags, sheets and books of `docket`."""

from pathlib import Path

import pytest

from generator.cli.main import main
from generator.render.theme import theme_file, theme_folders
from generator.render.theme_check import KINDS
from generator.render.theme_files import files_behind
from tests.themes.small import lay_small, make_small


def test_what_the_rack_does_not_have_is_the_docket_s() -> None:
    assert theme_file("rack", "site", "recipe.html").parts[-3:] == ("rack", "site", "recipe.html")
    assert theme_file("rack", "site", "formula.html").parts[-3:] == ("docket", "site", "formula.html")
    # What adds to ours names it, whatever the theme.
    assert theme_file("rack", "site", "docket/recipe.html").parts[-3:] == ("docket", "site", "recipe.html")
    for kind in KINDS:
        assert theme_folders("rack", kind)[-1].parts[-2:] == ("docket", kind)


def test_the_engine_knows_every_file_behind_a_bake_on_the_rack() -> None:
    """Its own templates, ours that they build on by name, and ours that fill in for what it lacks."""
    files = {"/".join(each.parts[-3:]) for each in files_behind("rack", ("site/recipe.html",))}
    assert {"rack/site/recipe.html", "rack/site/rack.html", "rack/site/needs.html"} <= files
    assert {"docket/site/recipe.html", "docket/site/docket.html", "docket/site/base.html"} <= files
    assert {"docket/site/formula.html", "docket/site/machine.html", "docket/site/kitchen.html"} <= files
    assert "docket/site/method.html" in files
    assert "docket/site/needs.html" not in files


@pytest.mark.long
def test_pages_and_paper_under_the_rack_agree_with_the_recipes(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """All the way: made with cards, tags, sheets and pictures, then read back by the command."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    made = make_small(tmp_path, theme="rack", without=frozenset())
    assert made.report is not None
    for path in ("card-4x6.pdf", "card-a5.pdf", "index.html", "recipe.json"):
        assert f"site/recipes/brown-soda-bread/{path}" in made.report.written
    for path in ("bench-sheet.pdf", "tags.pdf", "formula.pdf"):
        assert f"desk/brown-soda-bread/{path}" in made.report.written
    content, output = str(tmp_path / "content"), str(tmp_path / "output")
    assert main(["check", content, "--built", output, "--day", "2026-11-25"]) == 0
    assert f"{len(made.report.written)} files agree with the recipes" in capsys.readouterr().out


@pytest.mark.long
def test_a_book_under_the_rack(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    content = lay_small(tmp_path / "content", theme="rack")
    for suffix in ("pdf", "epub"):
        words = ["book", "all", "--content", str(content), "--output", str(tmp_path / f"book.{suffix}")]
        assert main([*words, *(["--epub"] if suffix == "epub" else []), "--day", "2026-11-25"]) == 0
        assert (tmp_path / f"book.{suffix}").stat().st_size > 10_000
