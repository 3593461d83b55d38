"""Where each worked figure of the trade is tested: the case, its source, and the test that holds us to it.

Cases are numbered; what a number is about stands beside it, and its source beside the test itself. A test that is
renamed or lost is found here.
"""

import ast
from functools import cache
from pathlib import Path

import pytest

HERE = Path(__file__).parent

# Number, what it says, file and test.
CASES = """
1  | a US cup is 236.5882365 ml | units | volumes_that_are_published_or_follow
2  | the cup of labels is 240 ml | units | volumes_that_are_published_or_follow
3  | a US tablespoon is 14.78676 ml | units | volumes_that_are_published_or_follow
5  | an imperial fluid ounce is 28.4130625 ml | units | volumes_that_are_published_or_follow
6  | 1 lb 4 oz is 566.990 g | units | weights_that_are_published_or_follow
7  | 250 g is 8.8185 oz | units | weights_that_are_published_or_follow
9  | 350 °F is 176.67 °C, printed 175 or 180 | temperatures | rounding_once
10 | 425 °F is 218.33 °C, printed 220 | temperatures | fahrenheit_and_celsius
11 | 220 °C is 428 °F, in steps of 25 it is 425 | temperatures | rounding_once
13 | 24 °F of difference are 13.33 °C | temperatures | a_difference_is_no_temperature
14 | gas 4, 6 and 9 are 350, 400 and 475 °F | temperatures | a_gas_mark
15 | 180 °C are 160 °C with a fan | temperatures | a_fan_temperature_is_not_lowered_again
17 | a third of a cup is 5 tbsp and 1 tsp | units | two_ways_to_measure_one_volume
18 | 2¼ tsp x 1.5 is 1 tbsp and ⅜ tsp | units | a_half_as_much_again_of_spoons_and_cups
19 | ¾ cup x 1.5 is 1 cup and 2 tbsp | units | a_half_as_much_again_of_spoons_and_cups
21 | ⅔ cup in three is 3 tbsp and 1⅔ tsp | units | two_ways_to_measure_one_volume
22 | a third of a teaspoon prints as ⅜ tsp | amounts | teaspoons
23 | ⅞ cup of water is 207 g | units | seven_eighths_of_a_cup_of_water_weigh_207_grams
25 | lean dough for 1000 g: 386.90, 11.90, 5.95 | scaling | a_lean_dough_for_two_loaves
26 | 377.5 % for 3000 g is 794.70 g of flour | scaling | flour_for_a_wanted_dough
27 | 1.75 % of 40 lb is 11.2 oz | formulas | single_percentages
29 | 1.75 oz of salt on 5.25 lb is 2.083 % | formulas | single_percentages
30 | a soft dough of 189.4 % | formulas | soft_sandwich_dough
31 | its true hydration is 61.68 % | formulas | soft_sandwich_dough
33 | brioche of 230 %, true hydration 56.56 % | formulas | brioche
34 | honey loaf: 61.7 %, 714 g, 178.5 % | formulas | honey_loaf
35 | a poolish of 30 % of 1000 g is 600.3 g | formula_sheet | poolish_in_percent_and_both_tables
37 | the water of its final dough is 54.29 % | formula_sheet | poolish_in_percent_and_both_tables
38 | a published poolish dough: 68.42, 1.974, 34.21 % | formula_sheet | a_published_poolish_dough_in_both_tables
39 | a textbook's: 65.0, 2.0, 32.5 % | formula_sheet | a_textbook_poolish_in_pounds_in_the_total_formula
41 | a levain of 400 g by 1:2:2 is 80, 160, 160 | levain | a_levain_of_400_g_by_one_two_two
42 | 200 g of starter in 1000 and 700: 72.73 %, 9.09 % | formulas | the_trap_of_the_percent_of_starter
43 | 160 g of starter at 60 % is 100 and 60 | levain | a_stiff_starter
45 | water of 87 °F | dough_temperature | water_for_a_straight_dough
46 | water of 65 °F | dough_temperature | water_for_a_straight_dough
47 | water of 88 °F | dough_temperature | water_for_a_straight_dough
49 | water of 18 °C | dough_temperature | the_class_notes_in_celsius
50 | friction of 25 °F | dough_temperature | friction_from_a_measured_dough
51 | 87 °F reckoned wholly in °C is 30.56 | dough_temperature | the_class_notes_in_celsius
53 | 20 g of fresh yeast are 8.0 and 6.6 g | yeast | twenty_grams_of_fresh_yeast
54 | 7 g of instant are 21.2 g of fresh | yeast | seven_grams_of_instant_yeast
55 | 9 g of active dry are 6.75 g of instant by x 0.75 | yeast | nine_grams_of_active_dry_by_another_ratio
57 | 20 to 23 cm is 1.3225 | tins | ratio_of_two_tins_by_depth
58 | 8 in square to 13 x 9 is 1.8281 | tins | ratio_of_two_tins_by_depth
59 | 9 in round to 8 in square is 0.9940 | tins | ratio_of_two_tins_by_depth
61 | a box of 9 x 5 x 3 in holds 2212.3 ml | tins | a_box_in_millilitres
62 | a tapering loaf tin holds 1366.95 ml | tins | a_loaf_tin_that_tapers
63 | a ring holds 2814.9 ml | tins | a_ring
65 | 450 g in 84 in³ are 771.4 g in 144 | tins | dough_for_another_tin
66 | 7.6 in³ an ounce are 4.393 cm³ a gram | tins | cubic_inches_an_ounce
67 | 60 % of 1420 g of water is 852 g | tins | dough_from_the_water_a_tin_holds
69 | 3 eggs x 1.5 are 4 and 25 g | scaling | three_eggs_one_and_a_half_times
70 | a US large egg is 56.7 g in its shell | scaling | us_eggs_in_the_shell
71 | EU classes of 64, 63.0 and 52.9 g: L, L, S | scaling | eu_egg_classes
73 | 500 g baked at 12 % is 568.18 g of dough | scaling | dough_for_a_baked_weight
74 | 500 lb at 13 % is 574.71 lb | scaling | dough_for_a_baked_weight
75 | 750 g of dough at 12 % is 660 g | scaling | what_a_dough_weighs_when_it_is_baked
77 | 314 g to 267 g is 14.97 % | formulas | bake_loss
78 | 16 oz of eggs at 7500 ft are 18.4 oz | altitude | eggs_at_7500_feet
79 | 2 tsp of baking powder at 5000 ft, by two tables | altitude | baking_powder_at_5000_feet_by_each_table
81 | 150 °F is 65.6 °C | temperatures | fahrenheit_and_celsius
82 | a dough cycle of 5, 20 and 55 is 80 min | machine | dough_cycle_of_5_20_and_55_minutes_is_80
83 | 6 cups for a machine of 3 is a half | machine | six_cups_in_a_machine_for_three_are_made_by_half
85 | 2.6 g of cinnamon on 360 g is 0.722 % | formulas | single_percentages
86 | 12 % of sugar is above the threshold of 10 | yeast | twelve_percent_of_sugar_is_above_the_threshold
87 | chapters of 5 s are not shown | film_and_paper | chapters_that_a_films_page_passes_over
89 | chapters begin at 0:00 | film_and_paper | chapters_that_a_films_page_passes_over
90 | bytes of 350°F, ½ cup and ⅓ cup: 6, 6, 7 | amounts | signs_take_more_bytes_than_letters
91 | 3 x 5 in are 76.2 x 127.0 mm | units | a_three_by_five_card_in_millimetres
93 | 21 of 63.5 x 38.1 on A4: 7.25 and 15.15 mm | film_and_paper | twenty_one_on_a4
94 | A7 and A6 on A4: 8 and 4 | film_and_paper | a7_and_a6_on_a4
95 | 3 g on a scale of 1 g steps: 16.7 % | yeast | what_a_scale_makes_of_little
97 | 1-1/2, 1–1½ and 11/2 | units | a_hyphen_joins_a_mixed_number_and_a_dash_a_range
98 | 1 8-oz block is 226.796 g | bad_data | a_block_of_eight_ounces
99 | a published formula of 192.875 % | bad_data | the_percents_of_a_published_sponge_roll
"""


def _rows() -> list[tuple[str, str, str]]:
    cells = [[cell.strip() for cell in line.split("|")] for line in CASES.strip().splitlines()]
    return [(number, file, name) for number, _, file, name in cells]


@cache
def _tests(file: str) -> frozenset[str]:
    tree = ast.parse((HERE / f"test_{file}.py").read_text(encoding="utf-8"))
    return frozenset(node.name for node in tree.body if isinstance(node, ast.FunctionDef))


@pytest.mark.parametrize(("number", "file", "name"), _rows())
def test_each_case_has_its_test(number: str, file: str, name: str) -> None:
    assert f"test_{name}" in _tests(file), number


def test_no_case_stands_twice() -> None:
    numbers = [number for number, _, _ in _rows()]
    assert len(numbers) == len(set(numbers))
    assert numbers == sorted(numbers, key=int)
