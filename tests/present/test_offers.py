"""What a page offers is what `tinleaf show` prints for the same size, to the letter."""

import pytest

from generator.formula.tin_text import read_shape
from generator.formula.usual_tins import offers
from generator.present.spots import sized_spots
from generator.present.tins import tin_title
from tests.demo import checked, offered, offers_of, shown


def _amounts(lines: list[dict[str, str]], *, first: str) -> list[tuple[str, str]]:
    """What stands first and second on each line of the docket; what is missing never stands first."""
    pairs = [(line["weight"], line["volume"]) for line in lines]
    ordered = [pair if first == "weight" else pair[::-1] for pair in pairs]
    return [pair if pair[0] else (pair[1], "") for pair in ordered]


def test_every_amount_of_every_size_is_the_one_that_show_prints() -> None:
    wrong, compared = [], 0
    for recipe, offer in offered():
        parts = shown(recipe.name, offer)["parts"]
        assert recipe.sizes is not None
        for first, column in (("weight", offer.by_weight), ("volume", offer.by_volume)):
            words = dict(zip(recipe.sizes.places, column, strict=True))
            for number, part in enumerate(parts, start=1):
                told = [
                    (words[f"line {number}.{row} first"], words[f"line {number}.{row} second"])
                    for row in range(1, len(part["lines"]) + 1)
                ]
                compared += len(told)
                expected = _amounts(part["lines"], first=first)
                wrong += [(recipe.name, offer.id, first, told)] if told != expected else []
    assert wrong == []
    assert compared > 1500


def test_the_recipe_as_written_stands_first_and_changes_nothing() -> None:
    for recipe in checked().site.recipes:
        own = offers_of(recipe)[0]
        assert (own.kind, own.scale, own.notes) == ("written", "", ())
        assert own.by_weight == tuple(words for _, words in sized_spots(recipe))


def test_the_factors_are_fixed_and_only_three_times_is_far() -> None:
    [milk_rolls] = [each for each in checked().site.recipes if each.name == "sunday-milk-rolls"]
    times = [each for each in offers_of(milk_rolls) if each.kind != "tin"]
    assert [(each.id, each.title) for each in times] == [
        ("1", "1 ×"),
        ("1/2", "½ ×"),
        ("3/2", "1½ ×"),
        ("2", "2 ×"),
        ("3", "3 ×"),
    ]
    far = [each.id for each in times if any("more than double" in note for note in each.notes)]
    assert far == ["3"]


def test_only_a_recipe_that_names_its_tin_offers_tins() -> None:
    with_tins = {recipe.name for recipe, offer in offered() if offer.kind == "tin"}
    assert with_tins == {
        "cocoa-sour-cream-ring",
        "crackle-apple-cake",
        "lemon-almond-tart",
        "lemon-poppy-loaf",
        "orange-oat-squares",
        "seeded-tin-loaf",
        "sunday-milk-rolls",
        "tall-tea-brack",
    }


def test_a_chosen_tin_stands_in_the_place_of_the_recipes_own() -> None:
    [cake] = [each for each in checked().site.recipes if each.name == "crackle-apple-cake"]
    assert cake.sizes is not None
    at = cake.sizes.places.index("tin")
    told = {each.id: each.by_weight[at] for each in offers_of(cake)}
    assert told["round 9 in"] == "round 9 in (23 cm)"
    assert told["2"] == "square 9 × 9 × 2 in (23 × 23 × 5 cm), for 1 × the recipe"


@pytest.mark.parametrize(
    ("own", "title"),
    [
        ("round 23 x 5 cm", "round 15 cm (6 in)"),
        ("loaf 9 x 5 x 3 in", "loaf 8½ × 4½ × 2½ in (22 × 11 × 6 cm)"),
        ("2 x round 9 x 2 in", "2 × round 6 in (15 cm)"),
        ("tube 10 x 4 in, hole 2 1/2 in", "ring 9½ × 2¾ in, hole 3¼ in (24 × 7 cm, hole 8 cm)"),
        ("12-cup muffin 7 x 3 cm", "muffin 6 cups"),
    ],
)
def test_a_tin_is_named_with_its_twin(own: str, title: str) -> None:
    shape = read_shape(own)[0]
    assert shape is not None
    assert tin_title(offers(shape)[0]) == title


def test_an_offered_factor_is_that_of_its_tin() -> None:
    for recipe, offer in offered():
        if offer.kind == "tin":
            own = read_shape(checked().setting.book[recipe.name].about.tin)[0]
            assert own is not None
            [tin] = [each for each in offers(own) if each.name == offer.id]
            assert shown(recipe.name, offer)["scaled"]["factor"] == float(tin.factor)
