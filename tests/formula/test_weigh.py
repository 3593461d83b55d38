"""From a line's measures to grams: what wins, what must agree, what cannot be weighed."""

from fractions import Fraction

import pytest

from tests.formula.kitchen import F, codes, grams, shelf, weigh


def _near(text: str) -> float:
    found = grams(text)
    assert found is not None
    assert found[0] == found[1]
    return float(found[0])


@pytest.mark.parametrize(
    "text",
    [
        "430 g (3 1/3 cups) bread flour",
        "3 1/3 cups (430 g) bread flour",
        "430 g bread flour (3 1/3 cups)",
        "3 1/3 cups bread flour (430 g)",
        "3 1/3 cups/430 g bread flour",
    ],
)
def test_a_stated_weight_wins_wherever_it_stands(text: str) -> None:
    line, found = weigh(text, on=shelf("bread flour:\n  cup: 128 g\n  contains: [wheat]\n"))
    assert found == ()
    assert line.grams is not None
    assert (line.grams.low, line.grams.high) == (430, 430)


def test_measures_more_than_five_percent_apart_are_an_error_unless_accepted() -> None:
    kept, found = weigh("400 g (3 1/3 cups) bread flour", on=shelf("bread flour:\n  cup: 128 g\n"))
    assert codes(found) == ["F030"]
    assert found[0].message == "the measures of this line are 7 % apart: 400 g and 427 g of bread flour"
    kept, found = weigh(
        "400 g (3 1/3 cups) bread flour", on=shelf("bread flour:\n  cup: 128 g\n"), agree=False
    )
    assert found == ()
    assert kept.grams is not None
    assert kept.grams.mid == 400


def test_measures_that_differ_by_five_percent_or_less_agree() -> None:
    assert grams("100 g (105 g) water") == (100, 100)
    assert codes(weigh("100 g (105.1 g) water")[1]) == ["F030"]


def test_two_volumes_are_compared_without_an_ingredient() -> None:
    # 4 US cups are 946 ml, 5.7 % less than a litre.
    found = weigh("4 cups (1 L) water, boiling")[1]
    assert codes(found) == ["F030"]
    assert found[0].message == "the measures of this line are 5.7 % apart: 946 ml and 1000 ml"


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        # Filling and form: USDA SR28 19334 (brown sugar, packed 220 g a cup), 20081 (flour 125 g a cup).
        ("1 cup packed brown sugar", 220),
        ("1 cup firmly packed brown sugar", 220),
        ("1 cup brown sugar, packed", 220),
        ("1 cup all-purpose flour", 125),
        # USDA SR28 01123 to 01125: egg 50 g, yolk 17 g, white 33 g, large.
        ("2 eggs", 100),
        ("2 egg yolks", 34),
        ("1 egg white", 33),
        ("3 medium eggs", 132),
        # A quarter of a pound is 113.398 g (NIST SP 811).
        ("1 stick unsalted butter", 113.398),
        ("½ stick (55 g) unsalted butter, melted", 55),
        ("115g/8 tbsp/1 stick butter", 115),
        # A packet of dry yeast is 7 g, 2 1/4 tsp (common practice).
        ("1 packet instant yeast", 7),
        ("2 1/4 tsp instant yeast", 7),
        ("2¼ tsp (1 packet / 7 g) instant yeast", 7),
        ("1 lb. 4 oz. bread flour (567 g)", 567),
        ("1 1/2 tsp table salt", 9),
        ("3 cloves garlic", 9),
        ("1 lemon, zested then juiced (about 3 tbsp)", 58),
        ("1 (14 oz) can sweetened condensed milk", 396.893),
        ("1 8-oz block cream cheese, softened", 226.796),
        ("7/8 cup water", 207.0),
        # A dry pint: USDA SR28 09302, 1 pint as purchased yields 312 g.
        ("1 pint raspberries", 312),
    ],
)
def test_lines_come_to_these_grams(text: str, expected: float) -> None:
    assert _near(text) == pytest.approx(expected, abs=0.02)


def test_the_order_of_words_tells_a_form_from_a_preparation() -> None:
    assert _near("1 cup chopped pecans") == pytest.approx(109, abs=0.1)  # USDA SR28 12142, chopped
    assert _near("1 cup pecans, chopped") == pytest.approx(99, abs=0.1)  # USDA SR28 12142, halves


def test_a_stick_is_a_weight_for_fats_only() -> None:
    line, found = weigh("2 sticks cinnamon")
    assert line.grams is None
    assert codes(found) == ["F032"]
    assert found[0].message == "the weight of a stick of cinnamon is not known"
    assert _near("2 sticks margarine") == pytest.approx(226.796, abs=0.001)


def test_two_stated_weights_are_compared_though_one_is_a_stick() -> None:
    assert codes(weigh("1 stick (200 g) butter")[1]) == ["F030"]


def test_an_egg_without_a_size_is_the_size_of_the_settings() -> None:
    assert grams("2 eggs", on=shelf(egg="medium")) == (88, 88)
    assert grams("2 large eggs", on=shelf(egg="medium")) == (100, 100)


def test_flour_follows_the_setting_for_how_a_cup_is_filled() -> None:
    dipped = grams("1 cup all-purpose flour", on=shelf(flour_cup="dipped"))
    assert dipped is not None
    assert float(dipped[0]) == pytest.approx(137)


def test_cups_are_those_of_the_settings() -> None:
    assert grams("1 cup water", on=shelf(cup="metric")) == (250, 250)
    assert grams("1 tbsp water", on=shelf(cup="australian")) == (20, 20)


def test_ranges_keep_both_ends() -> None:
    assert grams("20-25 g honey") == (20, 25)
    assert grams("2-3 eggs") == (100, 150)


@pytest.mark.parametrize("item", ["coarse salt", "kosher salt"])
def test_coarse_salt_is_not_weighed_by_the_spoon(item: str) -> None:
    line, found = weigh(f"1 tsp {item}")
    assert line.grams is None
    assert codes(found) == ["F031"]
    assert grams(f"6 g {item}") == (6, 6)


def test_spelt_flour_is_not_weighed_by_the_cup_unless_the_maker_weighed_one() -> None:
    # USDA SR28 weighs a cup of the grain (20140), not of its flour: no guess is made.
    line, found = weigh("1 cup spelt flour")
    assert (line.grams, codes(found)) == (None, ["F031"])
    assert grams("1 cup spelt flour", on=shelf("spelt flour:\n  cup: 110 g\n")) == (110, 110)


def test_the_makers_own_weighing_wins() -> None:
    own = shelf("bread flour:\n  cup: 128 g\n")
    assert grams("3 cups bread flour", on=own) == (384, 384)
    assert grams("1 lemon", on=shelf("lemon:\n  piece: 90 g\n")) == (90, 90)


@pytest.mark.parametrize("text", ["salt, to taste", "a pinch of salt", "bread flour, for dusting"])
def test_where_no_weight_can_be_known_there_is_none(text: str) -> None:
    line, found = weigh(text)
    assert (line.grams, found) == (None, ())
    assert not line.flour


def test_flour_for_dusting_is_no_flour_and_extra_for_dusting_takes_nothing_away() -> None:
    assert not weigh("20 g bread flour, for dusting")[0].flour
    assert weigh("500 g bread flour, plus extra for dusting")[0].flour


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("water", "F033"),
        ("1 heaped tbsp cocoa powder", "F034"),
        ("1 rounded tbsp cocoa powder", "F034"),
        ("2 cans (400 g) sweetened condensed milk", "F036"),
        ("1 cinnamon stick", "F032"),
        ("3 cloves", "F032"),
        ("500 g flower", "F043"),
        ("2 tbsp each cinnamon and sugar", "F043"),
    ],
)
def test_what_cannot_be_weighed_for_certain_is_said(text: str, code: str) -> None:
    found = weigh(text)[1]
    assert codes(found) == [code]
    assert found[0].hint


def test_a_weight_beside_a_vague_measure_settles_it() -> None:
    line, found = weigh("1 heaped tbsp (8 g) cocoa powder")
    assert found == ()
    assert line.grams is not None
    assert line.grams.mid == 8


def test_packs_of_a_stated_size_need_no_question() -> None:
    assert weigh("2 (400 g) cans sweetened condensed milk")[1] == ()
    assert grams("2 (400 g) cans sweetened condensed milk") == (800, 800)
    assert grams("2 cans (800 g) sweetened condensed milk") == (800, 800)


def test_grams_are_exact_fractions() -> None:
    line, _ = weigh("1/3 cup water")
    assert line.grams is not None
    assert line.grams.low == F(231, 48) * F("2.54") ** 3
    assert isinstance(line.grams.low, Fraction)
