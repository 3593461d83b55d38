"""A bake without a formula is not known, in every region: silence must not read as "nothing stated"."""

from pathlib import Path

from generator.diagnostics.diagnostic import has_errors
from generator.pipeline import check_folder

SITE = "title: T\nmaker: M\nurl: https://t.example/\n"


def test_without_a_formula_or_a_title_the_declaration_is_unfinished_everywhere(tmp_path: Path) -> None:
    (tmp_path / "recipes").mkdir()
    (tmp_path / "site.yaml").write_text(SITE)
    (tmp_path / "recipes" / "plain-loaf.md").write_text("---\nlead: Later.\n---\nHello.\n")
    result = check_folder(tmp_path)
    assert not has_errors(result.diagnostics)
    assert [each.code for each in result.diagnostics] == ["F011", "F018", "R001"]
    assert result.setting.book["plain-loaf"].about.title == "Plain loaf"
    for declaration in result.setting.declarations["plain-loaf"].values():
        assert not declaration.finished
        assert declaration.unknown == ("Plain loaf has no formula yet: what is in it is not known.",)
