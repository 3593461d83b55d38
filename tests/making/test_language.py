"""The demo's bakes published in German agree with everything that is made of them; what a change of language does.

A kitchen that is German throughout stands in `tests/wording`.
"""

import re
import shutil
from pathlib import Path

import pytest

from generator.build.cache import Cache
from generator.pipeline import MakeResult, make_folder
from generator.publication.making import How
from tests.making.kitchen import PAPER, Kitchen

BAKES = ("kettle-boule", "lemon-poppy-loaf", "candied-orange-peel")
"""With a levain, with a tin and a correction, and a component."""
PICTURES = frozenset({"pictures", "style and fonts"})


def german(root: Path, project: Path) -> Path:
    """Three bakes of the demo in a folder of their own, with their pictures, for readers of German in the EU."""
    content = root / "content"
    demo = project / "content"
    for name in BAKES:
        (content / "recipes").mkdir(parents=True, exist_ok=True)
        shutil.copy(demo / "recipes" / f"{name}.md", content / "recipes" / f"{name}.md")
    shutil.copy(demo / "pantry.yaml", content / "pantry.yaml")
    shutil.copytree(demo / "media", content / "media")
    site = (demo / "site.yaml").read_text(encoding="utf-8")
    site = re.sub(r"^language: .*$", "language: de", site, flags=re.M)
    (content / "site.yaml").write_text(
        re.sub(r"^region: .*$", "region: EU", site, flags=re.M), encoding="utf-8"
    )
    return content


def made(content: Path, output: Path, without: frozenset[str]) -> MakeResult:
    # The gate reads every new file back and holds it against the recipes: nothing is written where one disagrees.
    return make_folder(content, output=output, how=How(cache=Cache(root=None), without=without))


@pytest.mark.long
def test_everything_in_german_agrees_with_the_recipes(tmp_path: Path, project: Path) -> None:
    content = german(tmp_path, project)
    result = made(content, tmp_path / "output", frozenset())
    assert result.report is not None
    assert result.unproven == ()
    assert (tmp_path / "output/site/recipes/kettle-boule/card-4x6.pdf").is_file()


def test_another_language_makes_every_page_anew(tmp_path: Path) -> None:
    kitchen = Kitchen(tmp_path, PAPER | PICTURES | {"lists"})
    assert kitchen.make().report is not None
    site = kitchen.content / "site.yaml"
    site.write_text(f"{site.read_text(encoding='utf-8')}language: de\n", encoding="utf-8")
    result = kitchen.make()
    assert result.report is not None
    pages = {path.relative_to(kitchen.output).as_posix() for path in kitchen.output.rglob("*.html")}
    assert pages <= {str(each) for each in result.report.written}
    said = (kitchen.output / "site/recipes/plain-loaf/index.html").read_text(encoding="utf-8")
    assert "Abwiegen" in said
    assert "Weigh out" not in said


def test_a_language_without_words_is_told_and_stays_english(tmp_path: Path) -> None:
    kitchen = Kitchen(tmp_path, PAPER | PICTURES | {"lists"})
    site = kitchen.content / "site.yaml"
    site.write_text(f"{site.read_text(encoding='utf-8')}language: fr-CA\n", encoding="utf-8")
    result = kitchen.make()
    (told,) = (each for each in result.diagnostics if each.code == "S076")
    assert told.message == "there are no words in “fr-CA”, so pages keep their English ones"
    assert told.hint == "There are words in: de, en. Another language is one file, see docs/languages.md."
    page = next(kitchen.output.rglob("recipes/*/index.html")).read_text(encoding="utf-8")
    assert re.search(r"<html[^>]* lang=[\"']?fr-CA", page)
    assert "Weigh out" in page
