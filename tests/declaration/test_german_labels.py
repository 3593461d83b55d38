"""A label in German names every allergen in German, and leaves none out for want of a word."""

import pytest

from generator.catalogue.allergens import ALLERGENS
from generator.declaration.emphasis import in_list
from generator.declaration.regions import REGION_NAMES, region_named
from generator.wording.speech import speaking


def shown(text: str, *needed: str, region: str = "EU") -> str:
    """The list's text with what stands out between stars."""
    with speaking("de"):
        runs = in_list(text, needed, region_named(region))
    return "".join(f"*{run.text}*" if run.strong else run.text for run in runs)


@pytest.mark.parametrize("allergen", ALLERGENS)
@pytest.mark.parametrize("region", ["EU", "UK"])
def test_each_allergen_is_seen_in_a_list_that_does_not_say_it(allergen: str, region: str) -> None:
    rules = region_named(region)
    with speaking("de"):
        words = [rules.word(each) for each in rules.shown_ids(allergen)]
        runs = in_list("Knusperstück", [allergen], rules)
    strong = {run.text for run in runs if run.strong}
    assert set(words) <= strong
    assert words or not rules.ids(allergen)


@pytest.mark.parametrize("region", REGION_NAMES)
def test_each_word_of_a_region_is_german(region: str) -> None:
    rules = region_named(region)
    with speaking("de"):
        german = {each: rules.word(each) for each in rules.words}
    alike = {each for each, word in german.items() if word == rules.english(each)}
    # The same in both languages.
    assert alike <= {"gluten", "tilapia", "triticale"}
    assert all(german.values())


@pytest.mark.parametrize(
    ("text", "needed", "told"),
    [
        ("Weizenmehl", ("wheat",), "*Weizen*mehl"),
        ("Vollmilch", ("milk",), "Voll*milch*"),
        ("Mandeln, gehackt", ("almond",), "*Mandeln*, gehackt"),
        ("wheat flour", ("wheat",), "wheat flour (*Weizen*)"),
        ("butter (cream)", ("milk",), "butter (cream (*Milch*))"),
        ("Eier", ("egg",), "*Eier*"),
        ("something bought", ("sesame", "milk"), "something bought (*Sesam*, *Milch*)"),
    ],
)
def test_what_a_list_says_in_german_stands_out(text: str, needed: tuple[str, ...], told: str) -> None:
    assert shown(text, *needed) == told


def test_english_is_as_it_was() -> None:
    runs = in_list("wheat flour", ["wheat"], region_named("EU"))
    assert [(run.text, run.strong) for run in runs] == [("wheat", True), (" flour", False)]
