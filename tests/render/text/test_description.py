"""The block under a film: what it says, in which order, and what gives way."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.present.views import CorrectionView, LinkView, RecipeView, Run
from generator.render.description.links import UNWORDED
from generator.render.description.plain import address, plain, size
from generator.render.description.render import (
    DISH,
    GIVES_WAY,
    SECTIONS,
    render_description,
)
from tests.render.text.sample import BRAID, CORRECTION, LABEL, SUGAR, film, many

TELL = dict(SECTIONS)

WHOLE = """\
Plum braid: https://plumtin.example/notes/recipes/plum-braid/

I earn a commission if you buy through a paid link.

Corrected September 20, 2026: dough/bread flour 400 g → 430 g, because too wet twice. \
The film still shows 400 g at 1:25.

A braid with plums & patience.

Makes: 1 loaf, 14 slices
Tin: loaf 23 × 13 × 7 cm (9 × 5 × 2¾ in)
Time, Dough cycle: 2 h 20 min (waiting 2 h, baking 20 min)
Time, By hand: 2 h 32 min (hands-on 12 min, waiting 2 h, baking 20 min)

INGREDIENTS
Dough:
240 g (1 cup) water, cool
36 g (2) egg yolks
430 g (3⅓ cups) bread flour
20–25 g (2½–3 tbsp) rye flour
60 g (¼ cup) salted butter, or 60 g margarine
a pinch of cardamom
salt, to taste

Finish:
10 g (2½ tsp) sugar (optional) – coarse

Caution: Do not taste raw dough.
Caution: The syrup is hotter than it looks.

METHOD: choose one of 2 ways
Dough cycle:
1. Put the water (240 g) and the bread flour (430 g) in the pan; start the cycle.

By hand:
1. Mix all. Knead 12 min.

Then, for all ways:
Shape:
1. Braid it.
Bake:
1. Bake 20 min at 350 °F (175 °C), to 88 °C (190 °F).

Temperatures: oven 350 °F (175 °C); core of the bake 88 °C (190 °F)

This list is not finished: the pack of cardamom has not been read.
Contains: WHEAT, MILK, EGG.
Also in it: barley, rye.
May contain: sesame.
May also contain: mustard.
Made in a home kitchen that also handles walnuts.
If you have an allergy, ask the maker before you eat.

Keeps: 3 days in a paper bag

CHAPTERS
0:00 What we bake
1:25 Weighing out
17:50 Cutting it

PAID LINKS
Paid link: Loaf tin: https://shop.example/tin?a=1&b=%3C2%3E

LINKS
How to braid: https://knots.example/braid

CREDITS
The braid: A cookery class, https://class.example/braid
"""


def test_everything_in_its_order() -> None:
    told = render_description(BRAID, limit=5000)
    assert told.text == WHOLE
    assert told.dropped == ()


def test_a_bake_without_most_things_says_only_what_there_is() -> None:
    assert render_description(replace(SUGAR, videos=()), limit=5000).text == (
        "Vanilla sugar: https://plumtin.example/notes/recipes/vanilla-sugar/\n\n"
        "INGREDIENTS\n200 g (1 cup) sugar\n\n"
        "METHOD\n1. Stir the sugar (200 g).\n\n"
        "Ingredients: Sugar\nIf you have an allergy, ask the maker before you eat.\n"
    )


def test_dish_and_link_are_within_what_shows_before_more() -> None:
    assert WHOLE.index(BRAID.url) + len(BRAID.url) <= 100


@given(st.integers(min_value=0, max_value=6000), st.sampled_from([BRAID, SUGAR, many()]))
def test_any_limit_is_kept_and_no_section_is_ever_cut(limit: int, bake: RecipeView) -> None:
    told = render_description(bake, limit=limit)
    assert size(told.text) <= limit
    for name, tell in SECTIONS:
        gone = name in told.dropped or (name == "disclosure" and "paid links" in told.dropped)
        assert gone or tell(bake) in told.text


@given(st.integers(min_value=0, max_value=6000))
def test_a_paid_link_never_stands_without_the_disclosure_before_it(limit: int) -> None:
    text = render_description(BRAID, limit=limit).text
    if "shop.example" in text:
        assert 0 <= text.find(BRAID.paid_words) < text.index("shop.example")


@pytest.mark.parametrize("limit", range(100, 2000, 50))
def test_sections_give_way_in_the_stated_order(limit: int) -> None:
    present = [name for name in GIVES_WAY if TELL[name](BRAID)]
    dropped = render_description(BRAID, limit=limit).dropped
    assert list(dropped) in [present[:count] for count in range(len(present) + 1)] + [[*present, DISH]]


def test_forty_ingredients_and_thirty_steps_lose_the_method_and_keep_every_ingredient() -> None:
    told = render_description(many(), limit=5000)
    assert told.dropped == ("credits", "unpaid links", "method")
    assert all(
        f"{number * 13} g ({number}¾ cups) ingredient number {number}\n" in told.text
        for number in range(1, 41)
    )
    assert f"See its page for the method: {BRAID.url}\n" in told.text
    assert "Contains: WHEAT, MILK, EGG." in told.text


def test_ingredients_give_way_to_one_sentence_and_the_allergens_stay() -> None:
    told = render_description(many(lines=200), limit=5000)
    assert told.dropped[-1] == "ingredients"
    assert f"See its page for the whole recipe: {BRAID.url}\n" in told.text
    assert "INGREDIENTS" not in told.text
    for words in (
        "Corrected September 20",
        "Caution: Do not taste",
        "Contains: WHEAT, MILK, EGG.",
        "not finished",
    ):
        assert words in told.text


def test_three_hundred_bytes_still_hold_link_and_allergens() -> None:
    short = replace(LABEL, unfinished="", may_line=(), kitchen_line="", also_in=(), also_may=())
    told = render_description(replace(many(), label=short), limit=300)
    assert told.text == (
        f"Feast: {BRAID.url}\n\n"
        f"See its page for the whole recipe and the corrections: {BRAID.url}\n\n"
        "Caution: Do not taste raw dough.\n\n"
        "Contains: WHEAT, MILK, EGG.\nIf you have an allergy, ask the maker before you eat.\n"
    )


def test_allergens_that_cannot_fit_are_pointed_at_aloud() -> None:
    told = render_description(BRAID, limit=260)
    assert told.dropped[-1] == "allergens"
    assert told.text.startswith(
        f"Plum braid: {BRAID.url}\n\nBefore you bake, give or eat this, see its page for "
    )
    assert f"the allergens: {BRAID.url}\n" in told.text


@pytest.mark.parametrize(("limit", "text"), [(50, BRAID.url + "\n"), (10, ""), (0, "")])
def test_where_nothing_else_fits_the_bare_link_stands_or_nothing(limit: int, text: str) -> None:
    told = render_description(BRAID, limit=limit)
    assert told.text == text
    assert told.dropped[-1] == DISH


def test_without_a_contains_line_the_whole_list_stands_with_capitals() -> None:
    label = replace(LABEL, contains_line=(), unfinished="", may_line=(), kitchen_line="", advice="")
    told = TELL["allergens"](replace(BRAID, label=label))
    assert told == (
        "Ingredients: bread flour (WHEAT flour), water, rye flour\n"
        "Also in it: barley, rye.\nMay also contain: mustard."
    )


def test_what_no_line_leaves_unsaid_is_not_told_twice() -> None:
    label = replace(LABEL, unfinished="", may_line=(Run(text="May contain: mustard."),), also_may=())
    assert TELL["allergens"](replace(BRAID, label=label)) == (
        "Contains: WHEAT, MILK, EGG.\nAlso in it: barley, rye.\nMay contain: mustard."
    )


def test_a_paid_link_without_words_of_the_maker_is_still_disclosed() -> None:
    assert UNWORDED in render_description(replace(BRAID, paid_words=""), limit=5000).text


def test_without_a_paid_link_there_is_nothing_to_disclose() -> None:
    links = (LinkView(title="A", url="https://a.example/", paid=False),)
    assert BRAID.paid_words not in render_description(replace(BRAID, links=links), limit=5000).text


def test_several_films_have_the_chapters_of_the_first_and_say_so() -> None:
    second = film("second", ("0:00", 0, "Other start"))
    text = render_description(replace(BRAID, videos=(*BRAID.videos, second)), limit=5000).text
    assert "CHAPTERS of https://video.example/w/plum-braid\n0:00 What we bake\n" in text
    assert "MORE FILMS\nPlum braid (September 12, 2026, 18:40): https://video.example/w/second\n" in text
    assert "Other start" not in text


def test_several_corrections_stand_one_a_line() -> None:
    older: CorrectionView = replace(
        CORRECTION, day="May 1, 2026", change="a -> b", why="", because="", film=""
    )
    told = TELL["corrections"](replace(BRAID, corrections=(CORRECTION, older)))
    assert told.splitlines()[1] == "Corrected May 1, 2026: a → b."


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("400 g -> 430 g", "400 g → 430 g"),
        ("400 g->430 g", "400 g→430 g"),
        ("keep at < 5 °C", "keep at less than 5 °C"),
        ("at <5 °C or >-18 °C", "at less than 5 °C or more than -18 °C"),
        ("dough>26 °C", "dough more than 26 °C"),
        ("<= 3 days, >= 2 h, <½ cup", "at most 3 days, at least 2 h, less than ½ cup"),
        ("see <https://a.example/x> now", "see https://a.example/x now"),
        ("<b>bold</b> a<b", "‹b›bold‹/b› a‹b"),
        ("left <- right <-> up", "left ← right ↔ up"),
        ("430\u00a0g\n of\tflour\u202f!", "430 g of flour !"),
        ("soft\u00adhyphen\ufeff\x07", "softhyphen"),
    ],
)
def test_angle_brackets_become_words_or_signs(text: str, told: str) -> None:
    assert plain(text) == told


@given(st.text(alphabet=st.one_of(st.sampled_from("<>=- 5½a\u00a0\n"), st.characters()), max_size=40))
def test_no_text_lets_an_angle_bracket_or_a_second_line_through(text: str) -> None:
    for told in (plain(text), address(text)):
        assert not set("<>\n\r\u00a0") & set(told)
        told.encode("utf-8")


def test_portions_in_the_same_words_as_the_yield_are_not_told_twice() -> None:
    told = TELL["makes"](replace(BRAID, makes="12 rolls", portions="12 rolls", tin=""))
    assert told == "Makes: 12 rolls"
