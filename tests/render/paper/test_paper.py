"""The paper engine: the same bytes always, our fonts only, and no silence about a loss."""

import hashlib
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from generator.render.bench_sheets.render import render_bench_sheet
from generator.render.cards.render import render_cards
from generator.render.images.overlay import render_overlay
from generator.render.paper import PaperFault, lay_out, pdf_moment, to_pdf
from generator.render.print_fonts import MissingGlyph, missing_glyphs, unprintable
from generator.render.tag_sheets.render import render_tags
from tests.render.paper.reading import lost
from tests.render.paper.sample import TINY, TYPICAL, line, rich, said

_PRINT = """
import hashlib
from tests.render.paper.sample import TYPICAL
from tests.render.paper.test_paper import everything
print(hashlib.sha256(everything(TYPICAL)).hexdigest())
"""


def everything(view: object) -> bytes:
    """One of each printed output of a recipe, in one."""
    assert isinstance(view, type(TYPICAL))
    products = [
        next(render_cards(view)),
        render_tags(view, paper="letter"),
        render_bench_sheet(view, paper="a4"),
    ]
    return b"".join(product.content for product in [*products, *render_overlay(view)])


@pytest.mark.long
def test_two_runs_and_two_processes_give_the_same_bytes(project: Path) -> None:
    first = everything(TYPICAL)
    environment = {
        "PYTHONPATH": str(project),
        "PYTHONHASHSEED": "4711",
        "TZ": "Pacific/Auckland",
        "PATH": "/usr/bin:/bin",
    }
    other = subprocess.run(
        [sys.executable, "-c", _PRINT],
        cwd=project,
        env=environment,
        capture_output=True,
        text=True,
        check=True,
        timeout=120,
    )
    assert other.stdout.strip() == hashlib.sha256(first).hexdigest()
    assert everything(TYPICAL) == first


def test_a_character_without_a_glyph_is_named() -> None:
    assert missing_glyphs("⅓ cup – 5 °C, crème, 10\u202f000 × ẞ\u00ad\u200b") == ()
    assert missing_glyphs("rise ✓ then ☐ and ✓") == ("☐", "✓")


def test_a_view_tells_where_such_a_character_stands() -> None:
    bad = replace(TINY, parts=(replace(TINY.parts[0], lines=(line("sugar ✓", "1 g"),)),), title="Sugar ☐")
    found = unprintable(bad)
    assert found == (
        MissingGlyph(character="☐", where="title"),
        MissingGlyph(character="✓", where="parts[0].lines[0].item"),
    )
    assert [each.words for each in found] == ["U+2610 BALLOT BOX", "U+2713 CHECK MARK"]
    assert unprintable(TYPICAL) == ()


def test_paper_refuses_a_character_that_would_vanish() -> None:
    with pytest.raises(PaperFault, match=r"no face has U\+2713"):
        lay_out('<html lang="en"><title>x</title><p>✓')


@pytest.mark.parametrize(
    "address",
    ["https://elsewhere.example/x.png", "file:///etc/hostname", "data:image/png;base64,AAAA", "x.png"],
)
def test_paper_fetches_nothing(address: str) -> None:
    with pytest.raises(PaperFault, match=r"only our own fonts|Relative URI|base URI"):
        lay_out(f'<html lang="en"><title>x</title><p><img src="{address}" alt="a picture">')


def test_paper_refuses_a_style_that_is_not_understood() -> None:
    with pytest.raises(PaperFault, match="Ignored"):
        lay_out('<html lang="en"><title>x</title><style>p { colour: red }</style><p>text')


def test_a_document_without_a_date_has_none() -> None:
    assert pdf_moment(None) == ""
    content = to_pdf(lay_out('<html lang="en"><title>x</title><p>text'))
    assert b"CreationDate" not in content


def test_a_picture_in_a_step_becomes_its_words_and_a_link_shows_its_address() -> None:
    block = TINY.common
    assert block is not None
    step = block.sections[0].blocks[0]
    words = rich(
        "Look: ![the skin](media/skin.jpg) and [a film](https://film.example/a). @.", said("rest 5 min")
    )
    section = replace(block.sections[0], blocks=(replace(step, words=words),))
    card = next(render_cards(replace(TINY, common=replace(block, sections=(section,)))))
    assert lost(["Look: the skin and a film (https://film.example/a)."], card.content) == []
