"""Files as they come: encodings, pages, tables, and what is no recipe at all."""

import json
import time

import pytest

from generator.asked.incoming import Arrival, arrive
from generator.importer.files.html_page import read_page
from generator.importer.files.sources import Refused, sources_of
from generator.importer.model import Brought
from tests.importer.kitchen import kitchen

PLAIN = (
    "Oat loaf\n\nIngredients\n300 g bread flour\n200 g water\n5 g salt\n\nMethod\n1. Mix the "
    "bread flour, water and salt.\n"
)


def arrival(name: str, data: bytes) -> Arrival:
    return arrive(name, data, kitchen())


def only(name: str, data: bytes) -> Brought:
    (recipe,) = arrival(name, data).recipes
    return recipe


def refusal(name: str, data: bytes) -> str:
    found = sources_of(name, data)
    assert isinstance(found, Refused), found
    return f"{found.message}. {found.hint}".rstrip(". ")


REFUSED = [
    ("a.txt", b"", "it is empty"),
    ("a.txt", b" \n\t\n", "it is empty"),
    ("a.txt", b"x" * 10_000_000, "it is larger than 2 MB. A recipe is a few kilobytes: save its text alone"),
    (
        "a.txt",
        b"\x89PNG\r\n\x1a\n\x00\x00",
        "it is no text: it holds bytes that no text has. Save it as plain text first",
    ),
    (
        "a.txt",
        "Süß".encode("cp1252"),
        "it is not UTF-8: line 1, byte 2 (0xFC) is no character. Save it as UTF-8 in your editor (“Save with"
        " encoding”), or type: iconv -f WINDOWS-1252 -t UTF-8 OLD.txt > NEW.txt, and look at its fractions and"
        " accents",
    ),
    (
        "a.txt",
        PLAIN.encode("utf-16")[:-1],
        "it is UTF-16, and cut off or damaged. Save it as UTF-8 in your editor (“Save with encoding”)",
    ),
    (
        "a.txt",
        PLAIN.encode("utf-32"),
        "it is UTF-32, not UTF-8. Save it as UTF-8 in your editor (“Save with encoding”)",
    ),
    (
        "a.txt",
        b"\x01\x02\x03\x04\x05" * 50,
        "it is no text: it is full of control characters. Save it as plain text first",
    ),
    ("a.txt", b"\n" * 6000 + b"x", "it has more than 5,000 lines. No recipe is this long: split it"),
    (
        "a.txt",
        b"word " * 10_000,
        "one of its lines has 50,000 letters. Give each ingredient a line of its own",
    ),
    (
        "a.html",
        b"<div>" * 100_000,
        "its parts are nested more than 200 deep. Copy the recipe's text out of the page, and bring that",
    ),
    (
        "a.html",
        b"<p>x</p>" * 70_000,
        "it has more than 60,000 tags. Copy the recipe's text out of the page, and bring that",
    ),
    (
        "a.csv",
        b'name,text\n"open',
        "it is no table: unexpected end of data. The first line names the columns: name,text",
    ),
    (
        "a.csv",
        b"one\ntwo\n",
        "it needs two columns, “name” and “text”. The first line names the columns: name,text",
    ),
]


@pytest.mark.parametrize(("name", "data", "message"), REFUSED, ids=range(len(REFUSED)))
def test_what_cannot_be_read_is_refused_at_once(name: str, data: bytes, message: str) -> None:
    started = time.process_time()
    assert refusal(name, data) == message
    assert time.process_time() - started < 5


@pytest.mark.parametrize(
    "text", [PLAIN, "\ufeff" + PLAIN, PLAIN.replace("\n", "\r\n"), PLAIN.replace("\n", "\r")]
)
def test_line_ends_and_marks_make_no_difference(text: str) -> None:
    assert only("oat.txt", text.encode()).text == only("oat.txt", PLAIN.encode()).text


def test_the_whole_file_of_a_plain_text() -> None:
    assert only("oat.txt", PLAIN.encode()).text == (
        "---\n"
        "# Brought in from oat.txt. Every “# ?” is a question: answer it, then delete it.\n"
        "# ? the text names “Oat”, and no ingredient that was read has oats. "
        "If it goes in, add its line to the formula, so that the label names it.\n"
        "title: Oat loaf\n"
        "formula:\n"
        "  - 300 g bread flour\n"
        "  - 200 g water\n"
        "  - 5 g salt\n"
        "---\n"
        "## Method\n"
        "1. Mix the {bread flour}, {water} and {salt}.\n"
    )


def page(data: object, body: str = "") -> bytes:
    return (
        f'<html><head><script type="application/ld+json">{json.dumps(data)}</script></head><body>'
        f"{body}</body></html>"
    ).encode()


RECIPE = {
    "@type": "Recipe",
    "name": "Oat loaf",
    "recipeIngredient": ["300 g bread flour", "200 g water"],
    "recipeInstructions": "Mix the bread flour and water.",
}


@pytest.mark.parametrize(
    "data",
    [
        RECIPE,
        [RECIPE],
        {"@graph": [{"@type": "WebPage"}, RECIPE]},
        {"@type": "WebPage", "mainEntity": RECIPE},
        {**RECIPE, "@type": ["Thing", "http://schema.org/Recipe"]},
    ],
)
def test_data_for_machines_is_found_wherever_it_stands(data: object) -> None:
    recipe = only("page.html", page(data))
    assert (recipe.title, [each.text for each in recipe.lines]) == (
        "Oat loaf",
        ["300 g bread flour", "200 g water"],
    )
    assert recipe.steps == ("Mix the {bread flour} and {water}.",)


def test_two_recipes_of_one_page_are_two_files() -> None:
    found = arrival("page.html", page([RECIPE, {**RECIPE, "name": "Other loaf"}])).recipes
    assert [each.name for each in found] == ["oat-loaf", "other-loaf"]


def test_broken_data_leaves_the_page_to_be_read() -> None:
    body = (
        "<h1>Oat loaf</h1><h2>Ingredients</h2><ul><li>300 g bread flour<li>200 g water</ul><h2>"
        "Method</h2><p>Mix the flour and water."
    )
    text = f'<script type="application/ld+json">{{"@type": "Recipe", </script>{body}'
    recipe = only("page.html", text.encode())
    assert (recipe.title, len(recipe.lines), len(recipe.steps)) == ("Oat loaf", 2, 1)


def test_what_the_page_says_beside_its_data_is_kept() -> None:
    body = "<nav>All recipes</nav><main><h1>Oat loaf</h1><p>The dough holds walnuts in our family.</p></main>"
    recipe = only("page.html", page(RECIPE, body))
    assert "The dough holds walnuts in our family." in recipe.text
    assert recipe.left_out == ("1 lines around the page's text: menus, forms, footers",)


def test_data_nested_without_end_is_no_fault() -> None:
    deep = '{"a":' * 3000 + "1" + "}" * 3000
    found = read_page(f'<script type="application/ld+json">{deep}</script><p>Nothing here</p>')
    assert found.refused == ""


SCRIPT = "<script>alert(1)</script>{butter} *x* [a](javascript:x)"


def test_scripts_in_every_field_are_words() -> None:
    data = {
        "@type": "Recipe",
        "name": f"Loaf {SCRIPT}",
        "description": SCRIPT,
        "author": SCRIPT,
        "recipeYield": f"1 loaf {SCRIPT}",
        "recipeIngredient": ["300 g bread flour", f"10 g {SCRIPT}", "200 g water"],
        "recipeInstructions": [f"Mix the bread flour and water. {SCRIPT}"],
        "keywords": SCRIPT,
    }
    text = json.dumps(data).replace("</", "<\\/")
    recipe = only("page.html", f'<script type="application/ld+json">{text}</script>'.encode())
    assert recipe.wrong == ()
    assert "<script" not in recipe.text
    assert "\\{butter\\}" in recipe.text
    plain = (
        f"Loaf\n\nIngredients\n300 g bread flour\n200 g water\n\nMethod\nMix the flour and water. "
        f"{SCRIPT}\n\nNotes\n{SCRIPT}\n"
    )
    written = only("a.txt", plain.encode())
    assert written.wrong == ()
    assert written.text.count("\\<script\\>alert(1)\\</script\\>\\{butter\\}") == 2


def test_a_table_holds_several_recipes() -> None:
    rows = f'name,text,url\nOne,"{PLAIN}",https://pages.example/1\nTwo,"{PLAIN}",\nNone,just words,\n'
    found = arrival("old.csv", rows.encode())
    assert [each.name for each in found.recipes] == ["one", "two"]
    assert found.empty == ("old.csv, row from line 22",)
    assert 'url: "https://pages.example/1"' in found.recipes[0].text


@pytest.mark.parametrize(
    "text", ["Dear diary,\ntoday it rained.\n", "# A heading\n", "<html></html>", "🍞🍞🍞", "a\nb\nc"]
)
def test_a_text_without_ingredients_gives_no_recipe(text: str) -> None:
    found = arrival("a.html" if text.startswith("<") else "a.txt", text.encode())
    assert (found.recipes, found.refused) == ((), None)


def test_letters_that_cannot_be_printed_are_kept_in_comments() -> None:
    text = PLAIN.replace("Method", "注意:これはパンです\n\nMethod").replace("Oat loaf", "Oat loaf 🍞")
    recipe = only("a.txt", text.encode())
    assert (recipe.title, recipe.wrong) == ("Oat loaf", ())
    assert "# kept from line 8: 注意:これはパンです\n" in recipe.text
    assert recipe.left_out == (
        "pictures and signs, left out: 🍞",
        "lines in letters of other scripts: kept in comments of the file",
    )


def test_a_text_whose_mark_says_utf_16_is_read_as_such() -> None:
    for name in ("utf-16", "utf-8-sig"):
        found = sources_of("a.txt", PLAIN.encode(name))
        assert not isinstance(found, Refused)
        assert [each.text for each in found[0].lines] == PLAIN.splitlines()


def test_columns_that_name_the_parts_of_a_recipe_are_read_as_such() -> None:
    row = 'Honey loaf;1 loaf;"500 g bread flour\n2 tbsp honey";Mix and bake.;4'
    table = f"Name;Yield;Ingredients;Directions;Rating\n{row}\n"
    found = sources_of("a.csv", table.encode())
    assert not isinstance(found, Refused)
    assert [each.text for each in found[0].lines] == [
        "Honey loaf",
        "Yield: 1 loaf",
        "",
        "Ingredients",
        "500 g bread flour",
        "2 tbsp honey",
        "",
        "Directions",
        "Mix and bake.",
        "Rating: 4",
    ]


ROWS = {
    "amount and unit apart": "ingredient,amount,unit\nflour,500,g\nsugar,100,g\neggs,2,\n",
    "amount first, semicolons": "amount;unit;ingredient\n500;g;flour\n100;g;sugar\n2;;eggs\n",
    "a whole amount": "Ingredient\tQuantity\nflour\t500 g\nsugar\t100 g\neggs\t2\n",
}


@pytest.mark.parametrize("text", ROWS.values(), ids=ROWS)
def test_a_table_with_an_ingredient_on_each_row_is_one_recipe(text: str) -> None:
    brought = only("plum-braid.csv", text.encode())
    assert [each.text for each in brought.lines] == ["500 g flour", "100 g sugar", "2 eggs"]
    assert brought.title == "Plum braid"
    assert [each.code for each in brought.doubts] == ["I010"]


def test_such_a_table_names_parts_preparations_steps_and_recipes() -> None:
    text = (
        "recipe,part,ingredient,weight (g),preparation,step,shop\n"
        "Plum braid,Dough,flour,500,sifted,Knead the dough.,mill\n"
        ",Dough,butter,80,,,\n"
        ",Filling,walnuts,50,chopped,Bake it for an hour.,\n"
        "Oat bars,,rolled oats,200,,,\n"
    )
    braid, bars = arrive("all.csv", text.encode(), kitchen()).recipes
    assert [(each.part, each.text) for each in braid.lines] == [
        ("dough", "500 g flour, sifted"),
        ("dough", "80 g butter"),
        ("filling", "50 g walnuts, chopped"),
    ]
    assert (braid.title, len(braid.steps)) == ("Plum braid", 2)
    assert "mill" in braid.text
    assert (bars.title, [each.text for each in bars.lines]) == ("Oat bars", ["200 g rolled oats"])


def test_a_list_that_stands_in_prose_alone_is_said_not_to_be_found() -> None:
    text = "Plum cake\n\nRub 100 g butter into 500 g flour. Then stir in two eggs and bake it for an hour.\n"
    arrival = arrive("prose.txt", text.encode(), kitchen())
    assert (arrival.recipes, arrival.empty) == ((), ("prose.txt",))
