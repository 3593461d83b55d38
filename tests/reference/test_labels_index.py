"""The worked cases and rules of labels, and the test that holds each: an index, checked to lead somewhere.

Sources stand beside the tests; the marks here say whether a case is a regulator's own example or derived from a rule.
"""

from importlib import import_module

import pytest

EXAMPLE, DERIVED = "a regulator's example", "derived from the rule"
US_EU, OTHERS, MAP = "test_labels", "test_labels_regions", "test_labels_map"

# case | mark | tests, each "module:function" of tests/ (a bare module stands in tests/reference)
CASES = (
    # worked cases
    ("caseinate, whey, yolks, peanut flavor: all or nothing", EXAMPLE,
     f"{US_EU}:test_a_contains_line_names_all_or_nothing {OTHERS}:test_all_sources_stand_in_the_contains_line"),
    ("flour, lecithin (soy), whey: sources in brackets", EXAMPLE,
     f"{US_EU}:test_sources_in_brackets {OTHERS}:test_sources_in_brackets"),
    ("hen and duck egg", EXAMPLE,
     f"{US_EU}:test_the_bird_is_named_in_the_us_and_not_in_the_eu {OTHERS}:test_eggs_of_all_birds_are_egg"),
    ("wine, gluten, milk powder", EXAMPLE,
     f"{US_EU}:test_wine_gluten_and_milk_powder {OTHERS}:test_wine_gluten_and_milk_powder"),
    ("shortbread of enriched flour, and the share of its butter", DERIVED,
     f"{US_EU}:test_shortbread {OTHERS}:test_shortbread {OTHERS}:test_the_share_of_what_the_name_speaks_of"),
    ("chocolate chip cookies: tail and precaution", DERIVED,
     f"{US_EU}:test_chocolate_chip_cookies {OTHERS}:test_precautions_have_the_words_of_each_region"),
    ("refined oil beside lecithin", DERIVED,
     f"{US_EU}:test_a_refined_oil_does_not_name_the_source_of_the_lecithin"),
    ("halva", DERIVED, f"{US_EU}:test_halva {OTHERS}:test_halva_names_the_nut"),
    ("precaution in a bake with frangipane", DERIVED,
     f"{US_EU}:test_precaution_in_a_tart {OTHERS}:test_what_is_contained_is_not_warned_of"),
    ("water in bread", DERIVED, f"{US_EU}:test_water_in_bread {OTHERS}:test_water_in_bread"),
    ("net weights of 681, 680, 341 and 227 g", EXAMPLE,
     f"{OTHERS}:test_net_weight_is_rounded_down render.paper.test_tag_sizes:test_the_net_weight_stands_higher"),
    ("flavor, gelatin, lecithin, margarine without a pack", DERIVED,
     f"{US_EU}:test_without_a_pack_the_state_is_unknown {OTHERS}:test_without_a_pack_the_state_is_unknown"),
    # the map of words to allergens, five regions
    ("every row of the map", DERIVED, f"{MAP}:test_words_of_a_pack_by_region"),
    ("every question of the map, on a pack and without one", DERIVED,
     f"{MAP}:test_words_that_leave_a_label_unfinished {MAP}:test_ingredients_that_leave_a_label_unfinished"),
    ("every row of the catalogue in every region", DERIVED,
     f"{MAP}:test_nothing_of_the_catalogue_is_declared_as_less_than_it_is"),
    ("sulphites in a US list", DERIVED, f"{MAP}:test_sulphites_are_seen_in_a_us_list"),
    # regions
    ("every gluten source in Canada", DERIVED, f"{OTHERS}:test_every_gluten_source_is_in_the_canadian_line"),
    ("grain in the list, gluten in the summary", DERIVED,
     f"{OTHERS}:test_the_grain_is_in_the_list_and_gluten_in_the_summary"),
    ("kinds by their names", DERIVED, f"{OTHERS}:test_a_class_word_is_no_name_where_kinds_are_wanted"),
    ("spelling", DERIVED, f"{OTHERS}:test_names_are_spelt_as_the_region_spells_them"),
    # precaution
    ("the union, never diluted, discarded things included", DERIVED,
     "declaration.test_lines:test_a_component_carries_all_that_touches_it"),
    ("only like cancels like: other tree nuts, other cereals containing gluten", DERIVED,
     "declaration.test_lines:test_a_precaution_is_dropped_for_the_same_allergen_only "
     f"{OTHERS}:test_a_warning_of_gluten_beside_wheat_is_kept_since_it_may_mean_another_grain"),
    ("facility, traces, shared equipment", DERIVED,
     "declaration.test_pack_texts:test_no_allergen_word_is_missed_and_few_alarms_are_false"),
    ("the kitchen's own list", DERIVED, f"{OTHERS}:test_the_kitchen_speaks_the_words_of_the_region"),
    ("no claim of absence", DERIVED, "agreement.test_no_promise:test_no_output_anywhere_holds_a_claim"),
    ("nothing taken away settles a doubt", DERIVED,
     "declaration.test_laws:test_taking_pack_data_away_never_turns_unknown_into_not_stated"),
    ("adding never removes", DERIVED, "declaration.test_laws:test_adding_a_line_never_removes_an_allergen"),
    ("scaling never changes", DERIVED, "declaration.test_laws:test_scaling_never_changes_a_declaration"),
    ("a trace for each", DERIVED, "declaration.test_laws:test_whatever_is_declared_has_a_trace_and_stands_in_words"),
    # heights of letters
    ("1/16 in on the o, 1.2 and 0.9 mm on the x", DERIVED,
     "render.paper.test_tag_sizes:test_letters_stand_as_high_as_the_region_asks"),
    # cautions
    ("raw flour and egg", DERIVED,
     "present.test_cautions:test_without_any_heat_the_caution_is_a_stronger_one "
     "present.test_cautions:test_baked_dough_is_not_to_be_tasted_raw"),
    ("egg fillings, chilled fillings, cooling", DERIVED,
     "present.test_cautions:test_custard_and_cream_cheese_fillings_are_chilled "
     "present.test_cautions:test_a_filling_that_was_cooked_is_cooled_fast"),
    ("honey", DERIVED, "present.test_cautions:test_honey_is_told_of_even_inside_what_is_bought"),
    ("garlic and herbs in oil", DERIVED,
     "present.test_cautions:test_garlic_and_herbs_in_oil_are_told_of_heated_or_not "
     "present.test_cautions:test_a_dough_that_is_baked_with_oil_and_garlic_is_no_garlic_oil"),
    ("whole nuts and hard pieces", DERIVED,
     "present.test_cautions:test_whole_nuts_can_choke_and_ground_ones_do_not_count"),
    ("lye, xylitol", DERIVED, "present.test_cautions:test_lye_and_xylitol_are_known_by_their_names"),
    ("candied peel", DERIVED,
     "present.test_cautions:test_candied_peel_that_is_made_here_is_kept_dry_and_bought_peel_raises_nothing"),
    ("starter discard", DERIVED, "present.test_cautions:test_starter_that_is_taken_off_is_raw_flour"),
    ("alcohol", DERIVED, "present.test_cautions:test_alcohol_remains_and_more_so_without_heat"),
    ("sugar alcohols, lupin, royal jelly", DERIVED,
     "present.test_cautions:test_lupin_royal_jelly_and_sugar_alcohols_are_told_to_whoever_eats_them"),
    ("hot sugar and fat", DERIVED, "present.test_cautions:test_hot_sugar_and_hot_fat_are_told_apart"),
    ("a caution goes for a recorded reason only", DERIVED,
     "present.test_cautions:test_a_caution_goes_for_a_recorded_reason_only"),
)  # fmt: skip


@pytest.mark.parametrize(("case", "mark", "tests"), CASES, ids=[each[0] for each in CASES])
def test_every_case_has_its_tests(case: str, mark: str, tests: str) -> None:
    assert mark in (EXAMPLE, DERIVED)
    for each in tests.split():
        module, _, function = each.partition(":")
        found = getattr(
            import_module(f"tests.{module if '.' in module else f'reference.{module}'}"), function
        )
        assert callable(found), (case, each)
