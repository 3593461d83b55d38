"""Layouts that nobody named: the reader finds by itself what lines have in common and where the amounts are."""

import pytest

from generator.importer.bring import bring
from generator.importer.files.sources import Refused, sources_of
from generator.importer.line.fields import by_fields
from generator.importer.line.preparations import is_preparation
from generator.importer.model import Brought
from generator.importer.places.lists import listed
from generator.importer.places.worth import Worth
from tests.importer.kitchen import kitchen, stock

LINES = ("500 g bread flour", "2 tbsp honey", "3 large eggs, beaten", "1 1/3 cup water", "1 tsp salt")
STEPS = (
    "Mix everything and knead for 10 minutes.",
    "Let it rise for 1 hour.",
    "Bake at 200 °C for 30 minutes.",
)


def read(text: str) -> Brought:
    found = sources_of("a.txt", text.encode())
    assert not isinstance(found, Refused)
    brought = bring(found[0], kitchen())
    assert brought is not None
    return brought


def amounts(brought: Brought) -> list[tuple[str, str, str]]:
    return [
        (
            " ".join(each.text.strip() for each in line.written.measures),
            line.written.item,
            line.written.preparation,
        )
        for line in brought.lines
    ]


WANTED = [
    ("500 g", "bread flour", ""),
    ("2 tbsp", "honey", ""),
    ("3", "eggs", "beaten"),
    ("1 1/3 cup", "water", ""),
    ("1 tsp", "salt", ""),
]


def whole(lines: tuple[str, ...], steps: tuple[str, ...] = STEPS) -> str:
    return "\n".join(("Honey bread", "", *lines, "", *steps))


DRESSED = {
    "a name and a time": whole(tuple(f"09:{10 + n} Wren: {each}" for n, each in enumerate(LINES))),
    "a date": whole(tuple(f"2025-11-03 18:{10 + n} – {each}" for n, each in enumerate(LINES))),
    "a label": whole(tuple(f"NEEDED {n} - {each}" for n, each in enumerate(LINES, start=1))),
    "a bare number": whole(tuple(f"{n:02d} {each}" for n, each in enumerate(LINES, start=1))),
    "a tag": whole(tuple(f"<thing>{each}</thing>" for each in LINES)),
    "a mark behind": whole(tuple(f"{each} | have" for each in LINES)),
    "every line numbered": "\n".join(
        f"{n:03d}  {each}" for n, each in enumerate(whole(LINES).split("\n"), 1)
    ),
    "a box": "\n".join(f"| {each:<60} |" for each in whole(LINES).split("\n")),
    "one line": whole((" // ".join(LINES),)),
    "times on lines of their own": "\n".join(
        f"{n}\n00:00:{10 + n},000 --> 00:00:{11 + n},000\n{each}\n"
        for n, each in enumerate((*LINES, *STEPS), start=1)
    ),
}


@pytest.mark.parametrize("text", DRESSED.values(), ids=DRESSED)
def test_what_lines_have_in_common_is_taken_off(text: str) -> None:
    brought = read(text)
    assert amounts(brought) == WANTED
    assert len([each for each in brought.source if each.role == "step"]) == len(STEPS)


def test_what_was_taken_off_is_told_and_its_words_stand_in_the_file() -> None:
    brought = read(DRESSED["a name and a time"])
    assert any("Wren:" in each for each in brought.left_out)
    assert "Wren:" in brought.text


def test_an_amount_is_never_taken_for_the_number_of_a_line() -> None:
    steps = tuple(f"{n} {each}" for n, each in enumerate(STEPS, start=1))
    lines = (
        "250 g potatoes",
        "1 lemon, zest only",
        "120 ml milk or 120 ml oat drink",
        "1 tsp flaky sea salt",
    )
    told = amounts(read(whole(lines, steps)))
    assert [each[0] for each in told] == ["250 g", "1", "120 ml", "1 tsp"]


def test_an_amount_over_or_under_its_name_is_put_to_it() -> None:
    pairs = [("500 g", "bread flour"), ("2 tbsp", "honey"), ("3", "large eggs"), ("1 tsp", "salt")]
    for way in (1, -1):
        text = whole(tuple(each for pair in pairs for each in pair[::way]))
        assert [each[0] for each in amounts(read(text))] == ["500 g", "2 tbsp", "3", "1 tsp"]


NAMES = ("bread flour", "honey", "eggs", "walnuts", "salt")
AMOUNTS = ("500 g", "2 tbsp", "3", "50 g", "1 tsp")
APART = {
    "a counted word before each name": [
        each
        for n, pair in enumerate(zip(NAMES, AMOUNTS, strict=True), 1)
        for each in (f"row {n}: {pair[0]}", pair[1])
    ],
    "a counted word before both": [
        f"item {n} - {each}" for n, pair in enumerate(zip(NAMES, AMOUNTS, strict=True), 1) for each in pair
    ],
    "all names, then all amounts": [*NAMES, "", *AMOUNTS],
    "all names counted, then all amounts": [
        *(f"Row {n}. {each}" for n, each in enumerate(NAMES, 1)),
        *AMOUNTS,
    ],
    "names on one line": ["; ".join(NAMES), *AMOUNTS],
    "names on one line behind a label": [f"row 1: {', '.join(NAMES)}", *AMOUNTS],
    "a table on its side": [f"What | {' | '.join(NAMES)}", f"How much | {' | '.join(AMOUNTS)}"],
}


@pytest.mark.parametrize("lines", APART.values(), ids=APART)
def test_names_and_amounts_that_stand_apart_come_together(lines: list[str]) -> None:
    told = amounts(read(whole(tuple(lines))))
    assert [each[:2] for each in told] == list(zip(AMOUNTS, NAMES, strict=True))


def test_amounts_that_only_count_the_lines_are_asked_about() -> None:
    brought = read(whole(("1 bread flour", "2 honey", "3 walnuts", "4 salt")))
    asked = [each.message for each in brought.doubts if "count the lines" in each.message]
    assert len(asked) == len(brought.lines) == 4


def test_a_count_that_is_no_run_is_an_amount() -> None:
    brought = read(whole(("1 egg", "1 lemon", "2 apples", "500 g bread flour", "3 bananas")))
    assert not any("count the lines" in each.message for each in brought.doubts)


@pytest.mark.parametrize(
    ("text", "read_as"),
    [
        ("Eggs (3)", "3 Eggs"),
        ("[3] large eggs", "3 large eggs"),
        ("butter [125 g] – melted", "125 g butter, melted"),
        ("125 g | butter | melted", "125 g butter, melted"),
        ("flour ____ 4 cups (500 g)", "4 cups (500 g) flour"),
        ("salt > 1 TL", "1 tsp salt"),
        ("2 medium (350 g) | oranges, unpeeled", "2 medium (350 g) oranges, unpeeled"),
        ("moonberry flour - 100 g", "100 g moonberry flour"),
        ("100 g flour - 50 g of it later", ""),
        ("butter - eggs - 100 g", ""),
    ],
)
def test_a_line_is_read_by_its_fields(text: str, read_as: str) -> None:
    assert by_fields(text, stock()) == read_as


@pytest.mark.parametrize(
    "text", ["melted and cooled", "in small cubes", "very soft", "finely grated", "at room temperature"]
)
def test_words_of_preparation_are_known_by_their_form(text: str) -> None:
    assert is_preparation(text)


@pytest.mark.parametrize("text", ["almond", "the one left over", "from the mill", "plus 1 tsp for the tin"])
def test_other_words_are_no_preparation(text: str) -> None:
    assert not is_preparation(text)


def test_one_thing_with_several_signs_is_no_list() -> None:
    worth = Worth(stock())
    assert listed("115 g / 8 tbsp / 1 stick butter, melted, cooled", worth) is None
    found = listed("Dough: 500 g flour + 2 eggs + 1 tsp salt", worth)
    assert found is not None
    assert (found.head, found.pieces) == ("Dough", ("500 g flour", "2 eggs", "1 tsp salt"))
