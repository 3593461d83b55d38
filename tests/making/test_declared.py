"""A task names every file of the theme that its work reads: what it does not name could change unseen."""

from pathlib import Path

import pytest

from generator.build.works import value_of
from generator.pipeline import check_folder
from generator.publication.outputs import tasks_of
from generator.publication.understanding import publication_of
from generator.render import theme
from generator.render.theme_files import files_behind
from tests.making.kitchen import lay
from tests.tasks import NOTHING

THEMES = Path(__file__).parents[2] / "themes"


@pytest.mark.long
def test_every_file_that_a_task_reads_is_named(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    checked = check_folder(lay(tmp_path), only=frozenset({"oat-squares"}))
    read: set[Path] = set()
    open_file = Path.read_text

    def watched(path: Path, *words: str, **named: str) -> str:
        read.add(path)
        return open_file(path, *words, **named)

    monkeypatch.setattr(Path, "read_text", watched)
    for task in tasks_of(publication_of(checked, NOTHING)):
        for kind in ("site", "paper", "desk"):
            environment = theme.templates("docket", kind)
            assert environment.cache is not None
            environment.cache.clear()
        read.clear()
        loaded = _templates_of(task.title, task.work, task.inputs)
        named = set(files_behind("docket", task.themes))
        assert {each for each in read | loaded if each.is_relative_to(THEMES)} <= named, task.title


def _templates_of(title: str, work: object, inputs: tuple[object, ...]) -> set[Path]:
    """The templates that are loaded while the work is done."""
    assert callable(work), title
    work(*(value_of(each, NOTHING) for each in inputs))
    found = set()
    for kind in ("site", "paper", "desk"):
        cache = theme.templates("docket", kind).cache
        found |= {
            Path(each.filename) for each in (cache.values() if cache is not None else ()) if each.filename
        }
    return found
