"""A few bakes of the demo as a content folder of their own, under another theme."""

import shutil
from datetime import date
from pathlib import Path

from generator.pipeline import MakeResult, make_folder
from generator.publication.making import How
from tests.making.kitchen import PAPER

CONTENT = Path(__file__).parents[2] / "content"
DAY = date(2026, 11, 25)
BAKES = ("cardamom-orange-braid", "candied-orange-peel", "brown-soda-bread")


def lay_small(root: Path, *, theme: str, bakes: tuple[str, ...] = BAKES) -> Path:
    """The content folder, without the journal and the ledger, which tell of other bakes."""
    (root / "recipes").mkdir(parents=True)
    for name in bakes:
        shutil.copy(CONTENT / "recipes" / f"{name}.md", root / "recipes")
    shutil.copytree(CONTENT / "media", root / "media")
    shutil.copy(CONTENT / "pantry.yaml", root)
    settings = (CONTENT / "site.yaml").read_text(encoding="utf-8")
    (root / "site.yaml").write_text(f"{settings}theme: {theme}\n", encoding="utf-8")
    return root


def make_small(folder: Path, *, theme: str, without: frozenset[str] = PAPER, jobs: int = 1) -> MakeResult:
    """Makes them into `folder/output`; a page that does not say what its recipe says keeps all from being written."""
    content = lay_small(folder / "content", theme=theme)
    return make_folder(content, output=folder / "output", day=DAY, jobs=jobs, how=How(without=without))
