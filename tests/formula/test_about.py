"""Front matter beside the formula: films with chapters, corrections, losses."""

from datetime import date

import pytest

from tests.formula.kitchen import bake, formula_of, recipe


def _codes(more: str) -> list[str]:
    return list(bake(bake=recipe("- 500 g bread flour", "1. {bread flour}", more=more)).codes)


def _film(chapters: str, length: str = "18:40") -> str:
    lines = "".join(f"      {each}\n" for each in chapters.split("|"))
    return f"videos:\n  - url: https://video.example/w/x\n    length: {length}\n    chapters:\n{lines}"


@pytest.mark.parametrize(
    ("chapters", "codes"),
    [
        ("0:00: One|1:25: Two|17:50: Three", []),
        # Starts at 0:00, three or more, ascending, ten seconds each (common practice of video platforms).
        ("0:00: One|0:05: Two|1:00: Three", ["T013"]),
        ("0:01: One|1:25: Two|17:50: Three", ["T012"]),
        ("0:00: One|1:25: Two", ["T013"]),
        ("0:00: One|5:25: Two|1:50: Three", ["T012"]),
        ("0:00: One|1:25: Two|18:40: Three", ["T012"]),
        ("0:00: One|1:25: Two|18:35: Three", ["T013"]),
        ("0:00: One|1.25: Two|2:00: Three|3:00: Four", ["T010"]),
        ("0:00: One|1:75: Two|2:00: Three|3:00: Four", ["T010"]),
    ],
)
def test_chapters(chapters: str, codes: list[str]) -> None:
    assert _codes(_film(chapters)) == codes


def test_the_length_of_a_film_is_a_time() -> None:
    assert _codes(_film("0:00: One|1:25: Two|17:50: Three", length="long")) == ["T010"]
    film = formula_of(
        recipe("- 500 g bread flour", more=_film("0:00: One|1:25: Two|17:50: Three"))
    ).about.videos[0]
    assert (film.seconds, [each.seconds for each in film.chapters]) == (1120, [0, 85, 1070])


def test_corrections_are_told_in_the_makers_words() -> None:
    more = (
        "corrections:\n  - on: 2026-09-20\n    change: bread flour 400 g -> 500 g\n"
        "    why: Too wet.\n    film: 400 g at 1:25\n"
    )
    (only,) = formula_of(recipe("- 500 g bread flour", more=more)).about.corrections
    assert (only.on, only.change) == (date(2026, 9, 20), "bread flour 400 g -> 500 g")
    assert (only.why, only.film) == ("Too wet.", "400 g at 1:25")


@pytest.mark.parametrize(
    ("more", "codes"),
    [
        ("corrections:\n  - on: 2026-09-20\n    change: less salt\n", ["S061"]),
        ("corrections:\n  - on: last week\n    change: less salt\n    why: too salty\n", ["S063"]),
        ("corrections:\n  - change: less salt\n    why: too salty\n", ["S061"]),
        ("corrections:\n  - less salt\n", ["F016"]),
        ("weighs: 260 g\nbakes_off: 12 %\n", ["F020"]),
        ("weighs: a lot\n", ["F021"]),
        ("weighs: 2 cups\n", ["F021"]),
        ("bakes_off: 100 %\n", ["F022"]),
        ("bakes_off: much\n", ["S067"]),
        ("links:\n  - title: A tin\n", ["S061"]),
        ("links:\n  - {title: A tin, url: 'shop tin'}\n", ["S069"]),
    ],
)
def test_mistakes_of_the_front_matter(more: str, codes: list[str]) -> None:
    assert _codes(more) == codes
