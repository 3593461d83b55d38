"""A German kitchen published in German: no English word of ours is left, and no less is declared than in English."""

from collections.abc import Iterator, Mapping
from datetime import date
from pathlib import Path

import pytest

from generator.build.cache import Cache
from generator.declaration.regions import region_named
from generator.pipeline import check_folder, make_folder
from generator.publication.checked import CheckResult
from generator.publication.making import How
from generator.wording.speech import CATALOGUES, speaking
from tests.making.kitchen import PAPER
from tests.wording.kitchens import escaped, lay, makers_words, our_words, words_of
from tests.wording.outputs import told_under
from tests.wording.test_catalogue import entries

DAY = date(2026, 11, 25)
REGION = "EU"


def german_words() -> frozenset[str]:
    """What the catalogue and the names of a region's law say in German."""
    forms = (message.string or "" for message in entries(CATALOGUES / "de.po").values())
    said = (text for each in forms for text in ((each,) if isinstance(each, str) else each))
    return words_of((*said, *region_named(REGION).names["de"].values()))


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    root = tmp_path_factory.mktemp("backstube")
    content = lay(root, "de")
    how = How(cache=Cache(root=None), without=frozenset({*PAPER, "pictures"}))
    # The gate reads every new file back and holds it against the recipes: nothing is written where one disagrees.
    result = make_folder(content, output=root / "output", day=DAY, how=how)
    assert result.report is not None, [each.message for each in (*result.diagnostics, *result.unproven)]
    return root


def _english(root: Path) -> list[str]:
    ours = our_words() - german_words() - makers_words(root / "content")
    return list(escaped(told_under(root / "output"), lambda word: word in ours))


def test_no_english_word_of_ours_is_left(made: Path) -> None:
    assert _english(made) == []
    page = (made / "output/site/recipes/kastenbrot/index.html").read_text(encoding="utf-8")
    assert "Abwiegen" in page
    assert "Weigh out" not in page


@pytest.mark.long
def test_no_english_word_of_ours_is_left_on_paper(tmp_path: Path) -> None:
    content = lay(tmp_path, "de")
    result = make_folder(content, output=tmp_path / "output", day=DAY, how=How(cache=Cache(root=None)))
    assert result.report is not None, [each.message for each in (*result.diagnostics, *result.unproven)]
    assert result.unproven == ()
    assert _english(tmp_path) == []


@pytest.fixture(scope="module")
def checked(tmp_path_factory: pytest.TempPathFactory) -> Mapping[str, CheckResult]:
    def check(language: str) -> CheckResult:
        return check_folder(lay(tmp_path_factory.mktemp(language), language), day=DAY)

    return {each: check(each) for each in ("en-GB", "de")}


def _carried(result: CheckResult) -> Iterator[tuple[object, ...]]:
    for name, regions in sorted(result.setting.declarations.items()):
        for region, each in sorted(regions.items()):
            yield name, region, each.contains, each.may_contain, each.unknown, each.finished


def test_no_language_declares_less_than_another(checked: Mapping[str, CheckResult]) -> None:
    english, german = (tuple(_carried(checked[each])) for each in ("en-GB", "de"))
    assert german == english
    assert any(each[2] for each in german)
    assert any(not each[5] for each in german)


def test_each_allergen_stands_in_german_in_the_list_and_in_the_warning(
    checked: Mapping[str, CheckResult],
) -> None:
    rules = region_named(REGION)
    with speaking("de"):
        for name, regions in checked["de"].setting.declarations.items():
            each = regions[REGION]
            listed = "".join(run.text for run in each.ingredients if run.strong)
            for allergen in each.contains:
                assert any(word.casefold() in listed.casefold() for word in rules.seen(allergen)), (
                    name,
                    allergen,
                )
            warned = "".join(run.text for run in each.may_line)
            for allergen in each.may_contain:
                assert rules.word(allergen).casefold() in warned.casefold(), (name, allergen)


def test_what_a_person_avoids_may_be_written_in_german(
    checked: Mapping[str, CheckResult], made: Path
) -> None:
    people = {eater.name: [each.ids for each in eater.avoids] for eater in checked["de"].people}
    assert people["Mechthild"] == [("hazelnut",), ("milk",)]
    assert people["Korbinian"] == [("tree nuts",), ()]
    page = (made / "output/desk/people/index.html").read_text(encoding="utf-8")
    assert "Walnusskerne: kann Haselnüsse enthalten" in page
    assert "„Kiwi“ ist kein Allergen" in page
