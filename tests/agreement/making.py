"""Makes the outputs of a content folder, those that a law looks at and no more."""

import json
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from functools import partial
from pathlib import Path

from generator.diagnostics.diagnostic import Severity
from generator.pipeline import CheckResult, check_folder, describe_text
from generator.present.data import recipe_data
from generator.present.views import RecipeView
from generator.render.bench_sheets.render import render_bench_sheet
from generator.render.cards.render import render_cards
from generator.render.recipe_json import render_recipe_json
from generator.render.site.frame import frame_of
from generator.render.site.page import page_product
from generator.render.site.pages import recipe_page
from generator.render.structured_data.render import structured_data
from generator.render.tag_sheets.render import render_tags
from tests.agreement.claims import Data
from tests.agreement.reading import (
    Output,
    read_description,
    read_page,
    read_sheet,
    read_structured_data,
    read_tags,
)
from tests.agreement.writing import Drawn

DAY = date(2026, 7, 1)
_CARD = frozenset({"rows", "steps", "times", "label"})
_BENCH = frozenset({"rows", "steps"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Baked:
    """A checked folder and one recipe of it, with what its recipe.json says."""

    result: CheckResult
    view: RecipeView
    data: Data

    @property
    def region(self) -> str:
        """Whose label the outputs carry: the site's own, or the nearest where that has none yet."""
        region = self.result.setting.settings.region
        return region if region in self.data["labels"] else "EU"

    @property
    def first(self) -> str:
        return self.result.setting.settings.first


def lay_folder(root: Path, drawn: Drawn) -> Path:
    (root / "recipes").mkdir(parents=True)
    (root / "recipes" / "drawn.md").write_text(drawn.recipe, encoding="utf-8")
    (root / "site.yaml").write_text(drawn.site, encoding="utf-8")
    return root


def baked(root: Path, name: str) -> Baked:
    """The recipe `name` of the content folder, which must be free of errors."""
    result = check_folder(root, day=DAY)
    errors = [each for each in result.diagnostics if each.severity is Severity.ERROR]
    assert errors == []
    view = next(each for each in result.site.all_recipes if each.name == name)
    return Baked(result=result, view=view, data=json.loads(data_of(result, name)))


def data_of(result: CheckResult, name: str) -> bytes:
    """The recipe.json of one recipe, as it is written."""
    return render_recipe_json(name, recipe_data(result.setting.book[name], result.setting)).content


def texts_of(bake: Baked) -> Iterator[Output]:
    """The page, its JSON-LD and the block under the video."""
    site = bake.result.site
    page = recipe_page(bake.view, structured=partial(structured_data, site=site))
    content = page_product(page, frame_of(site)).content
    yield read_page(content)
    yield read_structured_data(content)
    yield read_description(describe_text(bake.result, bake.view.name))


def sheets_of(bake: Baked) -> Iterator[Output]:
    """The four cards, the bench sheet and the tags, read back from their PDFs."""
    settings = bake.result.setting.settings
    for card in render_cards(bake.view, theme=settings.theme):
        yield read_sheet(card.content, name=Path(card.path).stem, claims=_CARD)
    sheet = render_bench_sheet(bake.view, paper=settings.paper, theme=settings.theme)
    yield read_sheet(sheet.content, name="bench sheet", claims=_BENCH)
    tags = render_tags(bake.view, paper=settings.paper, theme=settings.theme)
    yield read_tags(tags.content)
