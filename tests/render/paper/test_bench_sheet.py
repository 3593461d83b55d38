"""The bench sheet: large print, and room to write."""

from collections.abc import Mapping
from dataclasses import replace
from io import BytesIO

import pytest
from pypdf import PdfReader

from generator.render.bench_sheets.render import render_bench_sheet
from tests.render.paper.conftest import Sheets
from tests.render.paper.reading import POINT, lost, squeezed, text_of, texts_of
from tests.render.paper.sample import TINY, TYPICAL


@pytest.mark.parametrize(("paper", "size"), [("letter", (612, 792)), ("a4", (595.28, 841.89))])
def test_the_sheet_has_the_size_of_the_paper(
    printed: Mapping[tuple[str, str], bytes], paper: str, size: tuple[float, float]
) -> None:
    pages = PdfReader(BytesIO(printed[TYPICAL.name, f"bench-{paper}"])).pages
    assert len(pages) == 2
    for page in pages:
        assert (float(page.mediabox.width), float(page.mediabox.height)) == pytest.approx(size, abs=0.01)


def test_the_day_has_its_blanks(printed: Mapping[tuple[str, str], bytes]) -> None:
    blanks = ["Day", "Room", "Weather", "Flour temperature", "Dough temperature", "What I really added"]
    assert (
        lost(
            [*blanks, "Dough weight", "Baked weight", "Packs used", "Notes"],
            printed[TINY.name, "bench-letter"],
        )
        == []
    )


def test_times_and_heat_stand_beside_their_step() -> None:
    text = text_of(render_bench_sheet(TYPICAL, paper="letter").content)
    beside = (
        "bake 20 min bake 12–15 min cool 1 h oven 350 °F (175 °C) oven 325 °F (165 °C) core 88 °C (190 °F)"
    )
    assert squeezed(beside) in text


def test_amounts_are_read_at_arms_length(documents: Sheets) -> None:
    weights = {line.amount.weight.replace(" ", "\u00a0") for part in TYPICAL.parts for line in part.lines}
    sizes = [
        text.size / POINT
        for text in texts_of(documents[TYPICAL.name, "bench-letter"])
        if text.text in weights
    ]
    assert sizes.count(max(sizes)) == sum(len(part.lines) for part in TYPICAL.parts)
    assert max(sizes) >= 16


def test_packs_that_are_not_read_are_said_aloud() -> None:
    unfinished = "Not finished: the pack of the vanilla is still to be read."
    view = replace(TINY, label=replace(TINY.label, unfinished=unfinished))
    assert lost([unfinished], render_bench_sheet(view, paper="a4").content) == []
