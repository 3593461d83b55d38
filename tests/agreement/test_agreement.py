"""One law above all: whatever shows an amount, a temperature or a time of a recipe shows the same one."""

from collections.abc import Iterable
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import HealthCheck, given, settings

from tests.agreement.claims import inner_disagreements
from tests.agreement.comparing import disagreements
from tests.agreement.making import Baked, baked, lay_folder, sheets_of, texts_of
from tests.agreement.reading import Output
from tests.agreement.writing import Drawn, drawn_recipes

KITCHENS = Path(__file__).resolve().parent.parent / "golden" / "kitchens"
BAKES = sorted(
    path for path in KITCHENS.glob("*/content/recipes/*.md") if "published:" in path.read_text("utf-8")
)

lots = settings(
    derandomize=True,
    deadline=None,
    database=None,
    print_blob=False,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)


def all_wrong(bake: Baked, outputs: Iterable[Output]) -> list[str]:
    found = list(inner_disagreements(bake.data))
    for output in outputs:
        found += disagreements(bake.data, output, region=bake.region, first=bake.first)
    return found


@settings(lots, max_examples=25)
@given(drawn_recipes())
def test_page_structured_data_and_description_say_what_recipe_json_says(drawn: Drawn) -> None:
    with TemporaryDirectory() as folder:
        bake = baked(lay_folder(Path(folder) / "content", drawn), "drawn")
        assert all_wrong(bake, texts_of(bake)) == []


@settings(lots, max_examples=2)
@given(drawn_recipes())
def test_cards_and_bench_sheet_say_what_recipe_json_says(drawn: Drawn) -> None:
    with TemporaryDirectory() as folder:
        bake = baked(lay_folder(Path(folder) / "content", drawn), "drawn")
        assert all_wrong(bake, sheets_of(bake)) == []


@pytest.mark.parametrize("path", BAKES, ids=lambda path: path.stem)
def test_the_recipes_worked_out_by_hand_are_shown_as_they_are(path: Path) -> None:
    bake = baked(path.parent.parent, path.stem)
    assert all_wrong(bake, texts_of(bake)) == []


@pytest.mark.long
@settings(lots, max_examples=300)
@given(drawn_recipes())
def test_three_hundred_recipes_are_shown_as_they_are(drawn: Drawn) -> None:
    with TemporaryDirectory() as folder:
        bake = baked(lay_folder(Path(folder) / "content", drawn), "drawn")
        assert all_wrong(bake, (*texts_of(bake), *sheets_of(bake))) == []
