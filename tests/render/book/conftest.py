"""A small publication with what is hard for a book: long and short bakes, a component, a warning, an unread pack."""

import textwrap
from collections.abc import Callable, Mapping
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from generator.pipeline import CheckResult, check_folder
from generator.present.book import BookView, book_view
from generator.render.book.pdf import lay_out_book
from generator.render.paper import to_pdf

SITE = """\
title: A shelf of bakes
maker: Wynne Alder
url: https://shelf.example/
region: US
"""
PANTRY = """\
bread flour:
  label: Bread flour (wheat flour, malted barley flour)
  contains: [wheat, barley]
  checked: 2026-09-01
sugared nuts:
  is: walnuts
  label: Sugared walnuts (walnuts, sugar)
  contains: [walnut]
  may_contain: [sesame]
  checked: 2026-09-01
unread chips:
  is: dark chocolate
"""
PLAIN = """\
---
title: Plain loaf
published: 2026-01-01
kinds: [bread]
tin: loaf 23 x 13 x 7 cm
formula:
  - 500 g bread flour
  - 300 g water
  - 10 g table salt
  - {line: 40 g glaze, recipe: glaze}
corrections:
  - on: 2026-02-03
    change: bread flour 480 g -> 500 g
    why: Too wet.
---
## Method
1. Mix the {bread flour}, {water}, {table salt} and {glaze}. {bake 30 min} at {oven 350 F}.

Caution: The tin is hot.
"""
GLAZE = """\
---
title: Glaze
published: 2026-01-02
kinds: [sweet]
weighs: 100 g
formula:
  - 60 g granulated sugar
  - 40 g water
---
## Method
1. Stir the {granulated sugar} into the {water}.
"""
NUTS = """\
---
title: Nut squares
published: 2026-01-03
kinds: [sweet, bread]
tin: square 20 cm
formula:
  - 100 g sugared nuts
  - 100 g unread chips
  - 50 g water
---
## Method
1. Melt the {unread chips} with the {water}, add the {sugared nuts}.
"""
_LETTERS = "abcdefghijklmnopqrstuvwxyz"


def long_bake(parts: int) -> str:
    """Two lines a part, words of 60 letters, a step for each part: it takes many pages."""
    names = [f"part {_LETTERS[each // 26]}{_LETTERS[each % 26]}" for each in range(parts)]
    formula = "".join(
        f"  {name}:\n    - {10 + at} g water, {'very' * 15} cold\n    - {20 + at} g granulated sugar\n"
        for at, name in enumerate(names)
    )
    steps = "".join(f"{at}. Stir {{{name}}}. Longer words.\n" for at, name in enumerate(names, start=1))
    return (
        "---\ntitle: The longest bake, with a name that goes on and on until no line of any page can hold the whole "
        "of it\npublished: 2026-01-04\nkinds: [feast]\ntin: loaf 23 x 13 x 7 cm\nformula:\n"
        f"{formula}---\n## Method\n{steps}"
    )


RECIPES = {"plain-loaf": PLAIN, "glaze": GLAZE, "nut-squares": NUTS, "the-longest": long_bake(14)}
DAY = date(2026, 10, 1)
ORDER = ("glaze", "the-longest", "nut-squares", "plain-loaf")

Lay = Callable[[Mapping[str, str]], Path]


def lay(root: Path, recipes: Mapping[str, str] = RECIPES) -> Path:
    content = root / "content"
    (content / "recipes").mkdir(parents=True)
    (content / "site.yaml").write_text(SITE)
    (content / "pantry.yaml").write_text(PANTRY)
    for name, text in recipes.items():
        (content / "recipes" / f"{name}.md").write_text(textwrap.dedent(text))
    return content


@pytest.fixture(scope="session")
def shelf(tmp_path_factory: pytest.TempPathFactory) -> CheckResult:
    result = check_folder(lay(tmp_path_factory.mktemp("book")), day=DAY)
    assert set(result.views) == set(RECIPES), [each.message for each in result.diagnostics]
    return result


@pytest.fixture(scope="session")
def book(shelf: CheckResult) -> BookView:
    return book_view([shelf.views[name] for name in ORDER], shelf.setting, title="", subject="4 bakes")


@pytest.fixture(scope="session")
def document(book: BookView) -> Any:
    return lay_out_book(book, pictures={}, size="half")


@pytest.fixture(scope="session")
def content(document: Any) -> bytes:
    return to_pdf(document)
