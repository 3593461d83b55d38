"""The samples, laid out and printed once for all tests."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import Any

import pytest

from generator.render.bench_sheets.render import lay_out_bench_sheet
from generator.render.cards.render import CARD_SIZES, card_code, lay_out_card
from generator.render.paper import to_pdf
from generator.render.tag_sheets.render import lay_out_tags
from generator.settings import Paper
from tests.render.paper.sample import LONG, TINY, TYPICAL

Sheets = Mapping[tuple[str, str], Any]
VIEWS = {view.name: view for view in (TYPICAL, TINY, LONG)}


class Made(Mapping[tuple[str, str], Any]):
    """What is made when it is first asked for, and then kept: a test that looks at one sheet lays out that one."""

    def __init__(self, keys: Iterable[tuple[str, str]], make: Callable[[tuple[str, str]], Any]) -> None:
        self._made: dict[tuple[str, str], Any] = dict.fromkeys(keys)
        self._make = make

    def __getitem__(self, key: tuple[str, str]) -> Any:
        if self._made[key] is None:
            self._made[key] = self._make(key)
        return self._made[key]

    def __iter__(self) -> Iterator[tuple[str, str]]:
        return iter(self._made)

    def __len__(self) -> int:
        return len(self._made)


def _keys() -> Iterator[tuple[str, str]]:
    for name in VIEWS:
        yield from ((name, f"card-{size.name}") for size in CARD_SIZES)
        yield from ((name, "tags-letter"), (name, "bench-letter"))
    yield from ((TYPICAL.name, "tags-a4"), (TYPICAL.name, "bench-a4"))


def _lay_out(key: tuple[str, str]) -> Any:
    view, (sheet, _, size) = VIEWS[key[0]], key[1].partition("-")
    if sheet == "card":
        return lay_out_card(
            view, next(each for each in CARD_SIZES if each.name == size), code=card_code(view)
        )
    paper: Paper = "a4" if size == "a4" else "letter"
    return (lay_out_tags if sheet == "tags" else lay_out_bench_sheet)(view, paper=paper)


@pytest.fixture(scope="session")
def documents() -> Sheets:
    """Laid-out documents by recipe and sheet."""
    return Made(_keys(), _lay_out)


@pytest.fixture(scope="session")
def printed(documents: Sheets) -> Mapping[tuple[str, str], bytes]:
    return Made(documents, lambda key: to_pdf(documents[key]))
