"""The formula sheet on paper: figures of the trade read back from the PDF, and a document that machines can read."""

from dataclasses import replace
from functools import cache
from io import BytesIO
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest
from pypdf import PdfReader

from generator.present.views import RecipeView
from generator.render.formula_sheets.render import lay_out_formula_sheet, render_formula_sheets
from generator.settings import Paper
from tests.present.worked import (
    LEVAIN,
    MACHINE,
    MACHINE_METHOD,
    POOLISH,
    PUBLISHED_POOLISH,
    view_of,
)
from tests.render.paper.reading import POINT, lost, overprinted, root_of, structure_of, texts_of
from tests.render.paper.structure import structure_faults

BOTH = "dough_temperature: 78 F\nfriction: {machine: 35 F, hand: 5 F}\n"
BRAID = MACHINE.replace("{flour}", "430")
LONG = "\n".join(f"- {n}00 mg table salt" for n in range(1, 41)) + "\n- 1 kg bread flour"


@cache
def _view(formula: str, *, method: str = "", site: str = "") -> RecipeView:
    with TemporaryDirectory() as folder:
        return view_of(Path(folder) / "content", formula, method=method, site=site)


@cache
def _printed(formula: str, *, method: str = "", site: str = "", paper: Paper = "letter") -> bytes:
    desk, page = render_formula_sheets(_view(formula, method=method, site=site), paper=paper)
    assert desk.content == page.content
    assert (desk.path, page.path) == ("desk/worked/formula.pdf", "site/recipes/worked/formula.pdf")
    return desk.content


def test_poolish_figures_read_back() -> None:
    # 30 % of the flour in a poolish of 100 %: 54.29, 2.857, 0.814 and 85.76 % on the final dough's 700 g of flour.
    rows = [
        "bread flour 700 g 70 % 100 %",
        "poolish 600.3 g 60.03 % 85.76 %",
        "water 380 g 38 % 54.29 %",
        "table salt 20 g 2 % 2.857 %",
        "instant yeast 5.7 g 0.57 % 0.814 %",
        "water 680 g 68 %",
        "Together 1706 g 170.6 %",
    ]
    assert lost(rows, _printed(POOLISH)) == []


def test_published_poolish_figures_read_back() -> None:
    # Water, salt, yeast and prefermented flour of a published tutorial's weights.
    figures = [
        "Hydration 68.42 %",
        "Salt 1.974 %",
        "Prefermented flour 34.21 %",
        "instant yeast 9.3 g 0.68 %",
    ]
    assert lost(figures, _printed(PUBLISHED_POOLISH)) == []


def test_levain_figures_read_back() -> None:
    # 400 g by 1 : 2 : 2 (arithmetic).
    rows = ["To build the levain", "seed 80 g", "flour 160 g", "water 160 g", "levain 400 g 40 % 50 %"]
    assert lost([*rows, "Together 1720 g"], _printed(LEVAIN)) == []


def test_water_times_and_loading_stand_on_it() -> None:
    content = _printed(BRAID, method=MACHINE_METHOD, site=BOTH)
    words = ["Water for a dough of 78 °F (26 °C)", "68 °F (20 °C) 63 °F (17 °C) 93 °F (34 °C)"]
    assert lost([*words, "Dough cycle", "1 h 20 min", "Wanted dough temperature"], content) == []


@pytest.mark.parametrize(("paper", "size"), [("letter", (612, 792)), ("a4", (595.28, 841.89))])
def test_the_sheet_has_the_size_of_the_paper(paper: Paper, size: tuple[float, float]) -> None:
    (page,) = PdfReader(BytesIO(_printed(POOLISH, paper=paper))).pages
    assert (float(page.mediabox.width), float(page.mediabox.height)) == pytest.approx(size, abs=0.01)


def test_the_document_is_tagged_titled_and_dated_by_its_content() -> None:
    content = _printed(POOLISH)
    root = root_of(content)
    told: Any = PdfReader(BytesIO(content)).metadata
    assert root["/Lang"] == "en-US"
    assert root["/MarkInfo"] == {"/Marked": True}
    assert b'pdfuaid:part="1"' in root["/Metadata"].get_data()
    assert told["/Title"] == "A worked bake – formula sheet"
    assert told["/CreationDate"] == "D:20260110120000Z"


def test_tables_have_head_cells_and_headings_skip_no_level() -> None:
    content = _printed(POOLISH, site=BOTH)
    assert structure_faults(content) == []
    kinds = [str(node["/S"]) for node in structure_of(content)]
    assert kinds.count("/Table") >= 3
    assert kinds.count("/TH") >= 3 * 4


@pytest.mark.parametrize(
    ("formula", "method", "site"),
    [(POOLISH, "", BOTH), (BRAID, MACHINE_METHOD, BOTH), (LONG, "", "")],
    ids=["poolish", "machine", "long"],
)
@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_nothing_is_clipped_overprinted_or_too_small(
    formula: str, method: str, site: str, paper: Paper
) -> None:
    document = lay_out_formula_sheet(_view(formula, method=method, site=site), paper=paper)
    texts = texts_of(document)
    assert list(overprinted(texts)) == []
    assert min(text.size for text in texts) >= 8 * POINT - 0.001
    for text in texts:
        page = document.pages[text.page]
        assert text.left >= 15, text
        assert text.right <= page.width - 15, text
        assert text.low <= page.height - 15, text


def test_a_long_formula_loses_no_line() -> None:
    view = _view(LONG)
    assert view.sheet is not None
    rows = [f"{row.item} {row.weight} {row.of_all}" for table in view.sheet.tables for row in table.rows]
    assert lost(rows, _printed(LONG)) == []


def test_what_is_not_on_the_site_has_its_sheet_on_the_desk_alone() -> None:
    hidden = replace(_view(POOLISH), on_site=False)
    assert [each.path for each in render_formula_sheets(hidden, paper="letter")] == [
        "desk/worked/formula.pdf"
    ]


def test_a_view_without_a_sheet_gives_none() -> None:
    assert list(render_formula_sheets(replace(_view(POOLISH), sheet=None), paper="letter")) == []
