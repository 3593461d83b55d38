"""The samples, laid out and printed once for all tests."""

from collections.abc import Mapping
from typing import Any

import pytest

from generator.render.bench_sheets.render import lay_out_bench_sheet
from generator.render.cards.render import CARD_SIZES, card_code, lay_out_card
from generator.render.paper import to_pdf
from generator.render.tag_sheets.render import lay_out_tags
from tests.render.paper.sample import LONG, TINY, TYPICAL

Sheets = Mapping[tuple[str, str], Any]


@pytest.fixture(scope="session")
def documents() -> Sheets:
    """Laid-out documents by recipe and sheet."""
    made: dict[tuple[str, str], Any] = {}
    for view in (TYPICAL, TINY, LONG):
        code = card_code(view)
        for size in CARD_SIZES:
            made[view.name, f"card-{size.name}"] = lay_out_card(view, size, code=code)
        made[view.name, "tags-letter"] = lay_out_tags(view, paper="letter")
        made[view.name, "bench-letter"] = lay_out_bench_sheet(view, paper="letter")
    made[TYPICAL.name, "tags-a4"] = lay_out_tags(TYPICAL, paper="a4")
    made[TYPICAL.name, "bench-a4"] = lay_out_bench_sheet(TYPICAL, paper="a4")
    return made


@pytest.fixture(scope="session")
def printed(documents: Sheets) -> dict[tuple[str, str], bytes]:
    return {key: to_pdf(document) for key, document in documents.items()}
