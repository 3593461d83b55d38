"""What each command asks of the pipeline, says, and exits with."""

import json
from datetime import date
from pathlib import Path

import pytest

from generator.build.store import WriteReport
from generator.cli.main import main
from tests.cli.conftest import ERROR, WARNING, Cardboard, finding

Capture = pytest.CaptureFixture[str]


@pytest.mark.usefixtures("content")
class TestCheck:
    def test_good_content_exits_with_0(self, pipeline: Cardboard, capsys: Capture) -> None:
        assert main(["check"]) == 0
        assert capsys.readouterr() == ("content: nothing to correct\n", "")
        assert pipeline.asked == [("check", Path("content"), None)]

    def test_errors_exit_with_1_and_stand_on_standard_output(
        self, pipeline: Cardboard, capsys: Capture
    ) -> None:
        pipeline.diagnostics = (
            finding(ERROR, "recipes/oat-braid.md", "first"),
            finding(WARNING, "recipes/rye-loaf.md", "second"),
        )
        assert main(["check", "content"]) == 1
        out, err = capsys.readouterr()
        assert f"content/recipes/oat-braid.md:1:1: error[{ERROR}] first\n" in out
        assert f"content/recipes/rye-loaf.md:1:1: warning[{WARNING}] second\n" in out
        assert out.endswith("content: 1 error, 1 warning in 2 files\n")
        assert err == ""

    def test_warnings_do_not_change_the_exit(self, pipeline: Cardboard) -> None:
        pipeline.diagnostics = (finding(WARNING, "site.yaml", "look"),)
        assert main(["check"]) == 0

    def test_json_is_a_list_of_objects_with_paths_in_the_content_folder(
        self, pipeline: Cardboard, capsys: Capture
    ) -> None:
        pipeline.diagnostics = (finding(ERROR, "site.yaml", "wrong"),)
        assert main(["check", "--format", "json"]) == 1
        assert json.loads(capsys.readouterr().out) == [
            {
                "path": "site.yaml",
                "line": 1,
                "column": 1,
                "end_column": 4,
                "severity": "error",
                "code": ERROR,
                "message": "wrong",
                "hint": "",
            }
        ]

    def test_no_finding_is_an_empty_list(self, pipeline: Cardboard, capsys: Capture) -> None:
        assert main(["check", "--format", "json"]) == 0
        assert json.loads(capsys.readouterr().out) == []

    def test_day_is_handed_on(self, pipeline: Cardboard) -> None:
        main(["check", "--day", "2026-12-24"])
        assert pipeline.asked == [("check", Path("content"), date(2026, 12, 24))]


class TestMake:
    @pytest.fixture(autouse=True)
    def _there(self, content: Path) -> None:
        assert content.is_dir()

    def test_says_what_was_written(self, pipeline: Cardboard, capsys: Capture) -> None:
        pipeline.report = WriteReport(written=("a",), unchanged=("b", "c"), removed=("d",))
        assert main(["make", "--jobs", "2"]) == 0
        assert capsys.readouterr() == (
            "output/: 1 file written, 2 unchanged, 1 removed; as of 2026-09-12\n",
            "",
        )
        assert pipeline.asked == [("make", Path("content"), Path("output"), None, 2)]

    def test_warnings_stand_on_standard_error(self, pipeline: Cardboard, capsys: Capture) -> None:
        pipeline.report = WriteReport(written=("a", "b"))
        pipeline.diagnostics = (finding(WARNING, "site.yaml", "look"),)
        assert main(["make", "content", "--output", "www"]) == 0
        out, err = capsys.readouterr()
        assert out == "www/: 2 files written; as of 2026-09-12\n"
        assert err.startswith(f"content/site.yaml:1:1: warning[{WARNING}] look\n")

    def test_errors_exit_with_1_and_say_that_nothing_was_written(
        self, pipeline: Cardboard, capsys: Capture
    ) -> None:
        pipeline.diagnostics = (finding(ERROR, "site.yaml", "wrong"),)
        assert main(["make"]) == 1
        out, err = capsys.readouterr()
        assert out == ""
        assert err.endswith("tinleaf: nothing was written, because of the errors above\n")

    def test_content_folder_as_output_is_refused_before_any_work(
        self, pipeline: Cardboard, capsys: Capture
    ) -> None:
        assert main(["make", "--output", "content"]) == 2
        expected = "tinleaf: content holds your content; the output needs a folder of its own\n"
        assert capsys.readouterr() == ("", expected)
        assert pipeline.asked == []

    def test_something_in_the_way_exits_with_1(self, pipeline: Cardboard, capsys: Capture) -> None:
        pipeline.report = WriteReport(refused=("output/site stands in the way",))
        assert main(["make"]) == 1
        assert capsys.readouterr().err == (
            "tinleaf: output/site stands in the way\ntinleaf: nothing was written\n"
        )

    def test_file_that_was_kept_is_named(self, pipeline: Cardboard, capsys: Capture) -> None:
        pipeline.report = WriteReport(kept=("site/old.html",))
        assert main(["make"]) == 0
        assert capsys.readouterr().err == (
            "tinleaf: output/site/old.html is needed no more, but was edited by hand, and so was kept\n"
        )


@pytest.mark.usefixtures("content")
@pytest.mark.parametrize("command", ["show", "describe"])
class TestOneRecipe:
    def test_recipe_is_printed(self, pipeline: Cardboard, capsys: Capture, command: str) -> None:
        assert main([command, "oat-braid"]) == 0
        assert capsys.readouterr() == ("shown oat-braid\n", "")
        assert pipeline.asked == [("check", Path("content"), None)]

    def test_unknown_name_gets_the_nearest(self, pipeline: Cardboard, capsys: Capture, command: str) -> None:
        assert main([command, "oat-brade"]) == 1
        expected = "tinleaf: there is no recipe recipes/oat-brade.md. Did you mean “oat-braid”?\n"
        assert capsys.readouterr() == ("", expected)
        assert pipeline.asked

    def test_name_like_none_gets_the_list(self, pipeline: Cardboard, capsys: Capture, command: str) -> None:
        assert main([command, "zzz"]) == 1
        assert capsys.readouterr().err == (
            "tinleaf: there is no recipe recipes/zzz.md. There is: oat-braid, rye-loaf.\n"
        )
        assert pipeline.asked

    def test_error_of_the_recipe_keeps_it_from_being_shown(
        self, pipeline: Cardboard, capsys: Capture, command: str
    ) -> None:
        pipeline.diagnostics = (
            finding(ERROR, "recipes/oat-braid.md", "wrong"),
            finding(ERROR, "recipes/rye-loaf.md", "wrong too"),
        )
        assert main([command, "oat-braid"]) == 1
        out, err = capsys.readouterr()
        assert out == ""
        assert f"recipes/oat-braid.md:1:1: error[{ERROR}] wrong\n" in err
        assert "rye-loaf" not in err

    def test_error_of_another_recipe_does_not(
        self, pipeline: Cardboard, capsys: Capture, command: str
    ) -> None:
        pipeline.diagnostics = (finding(ERROR, "recipes/rye-loaf.md", "wrong"),)
        assert main([command, "oat-braid"]) == 0
        assert capsys.readouterr() == ("shown oat-braid\n", "")

    def test_recipe_that_needs_a_broken_one_tells_which(
        self, pipeline: Cardboard, capsys: Capture, command: str
    ) -> None:
        pipeline.shown = None
        pipeline.diagnostics = (finding(ERROR, "recipes/rye-loaf.md", "wrong"),)
        assert main([command, "oat-braid"]) == 1
        out, err = capsys.readouterr()
        assert out == ""
        assert f"recipes/rye-loaf.md:1:1: error[{ERROR}] wrong\n" in err
        assert err.endswith("tinleaf: oat-braid cannot be shown before these are mended\n")


@pytest.mark.usefixtures("content")
def test_show_as_json(pipeline: Cardboard, capsys: Capture) -> None:
    assert main(["show", "oat-braid", "--format", "json"]) == 0
    assert json.loads(capsys.readouterr().out) == {"name": "oat-braid"}
    assert pipeline.asked
