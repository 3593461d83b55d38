"""Tags of a stated size: every word on some side, and no letter lower than the region asks."""

from dataclasses import replace
from functools import cache
from io import BytesIO
from math import ceil
from pathlib import Path

import pytest
import zxingcpp
from pypdf import PdfReader

from generator.declaration.regions import region_named
from generator.present.net_weight import net_weight
from generator.present.tag_views import NetWeight, Person, TagView
from generator.present.views import RecipeView
from generator.render.tag_sheets.letters import required_mm, required_net_mm
from generator.render.tag_sheets.sheets import TagSheets, render_tag_sheets
from generator.render.tag_sheets.sizes import PAPERS_MM, SIZE_NAMES, SIZES, Grid, size_named
from generator.settings import Paper
from tests.render.paper.glyphs import glyphs_of, lowest
from tests.render.paper.reading import label_words, picture, squeezed, text_of
from tests.render.paper.sample import LONG, TINY, TYPICAL

HONEY = "Honey is not for babies under 12 months, not even baked."
PACKS = "Packs of the day: bread flour. Others assumed, as last read: rolled oats (Sep 1, 2026) and 2 more."
SMALL = "acemnorsuvwxz"
# Two sizes of tag in every run, the others in the long one.
SOME_SIZES = [
    name if name in ("ten", "folded") else pytest.param(name, marks=pytest.mark.long) for name in SIZE_NAMES
]


def tag(view: RecipeView, *, region: str = "US", grams: int = 812) -> TagView:
    return TagView(
        recipe=replace(view, eater_cautions=(HONEY,)),
        letters=region_named(region).letters,
        net=net_weight(grams, region),  # type: ignore[arg-type]
        baked_on="November 8, 2026",
        best_before="November 11, 2026",
        packs=PACKS,
    )


@cache
def sheets(name: str, size: str, region: str = "US", paper: Paper = "letter") -> TagSheets:
    view = {each.name: each for each in (TYPICAL, TINY, LONG)}[name]
    return render_tag_sheets(tag(view, region=region), size=size, paper=paper)


def test_every_region_asks_for_one_of_two_heights_of_letters() -> None:
    rules = {region: region_named(region).letters for region in ("US", "CA", "ANZ", "EU", "UK")}
    assert rules == dict.fromkeys(("US", "CA", "ANZ"), "american") | dict.fromkeys(("EU", "UK"), "european")


@pytest.mark.parametrize("region", ["US", "EU"])
@pytest.mark.parametrize("size", SOME_SIZES)
def test_letters_stand_as_high_as_the_region_asks(size: str, region: str) -> None:
    """21 CFR 101.2(c): 1/16 in on the o. Reg. (EU) 1169/2011 Art. 13: 1.2 mm on the x, 0.9 mm below 80 cm²."""
    made = sheets(TYPICAL.name, size, region)
    assert made.size is not None
    european = region == "EU"
    asked = {True: 1.2 if made.size.face_cm2 >= 80 else 0.9, False: 25.4 / 16}[european]
    assert required_mm(region_named(region).letters, made.size.face_cm2) == asked
    assert lowest(made.content, SMALL if european else "o") >= asked
    # Nothing of ours is printed below 8 pt: its x stands 1.48 mm high.
    assert lowest(made.content, SMALL) >= 1.48


@pytest.mark.parametrize(
    ("size", "region", "grams", "asked"),
    [
        ("ten", "US", 812, 3.175),
        ("folded", "CA", 40, 3.175),
        ("folded", "EU", 50, 2),
        pytest.param("folded", "EU", 51, 3, marks=pytest.mark.long),
        pytest.param("ten", "UK", 812, 4, marks=pytest.mark.long),
        ("ten", "EU", 1001, 6),
    ],
)
def test_the_net_weight_stands_higher(size: str, region: str, grams: int, asked: float) -> None:
    """16 CFR 500.21 and 21 CFR 101.7(h): 1/8 in; Directive 76/211/EEC, annex I: figures of 2, 3, 4 and 6 mm."""
    rule, face = region_named(region).letters, size_named(size).face_cm2
    assert required_net_mm(rule, grams=grams, face_cm2=face) == pytest.approx(asked)
    made = render_tag_sheets(tag(TINY, region=region, grams=grams), size=size, paper="letter")
    letters = {glyph.high for glyph in glyphs_of(made.content) if glyph.character == "g"}
    figures = sorted(glyph.high for glyph in glyphs_of(made.content) if glyph.character in "0123456789")
    assert letters
    if region in ("EU", "UK"):
        own = str(grams)
        high = [each for each in figures if each >= asked]
        assert len(high) >= len(own)
    else:
        assert len([each for each in figures if each >= asked]) >= 2


@pytest.mark.parametrize("paper", ["letter", pytest.param("a4", marks=pytest.mark.long)])
@pytest.mark.parametrize("size", SIZE_NAMES)
@pytest.mark.parametrize("view", [TYPICAL, TINY], ids=lambda view: view.name)
def test_every_word_is_on_one_side_or_the_other_of_every_tag(
    view: RecipeView, size: str, paper: Paper
) -> None:
    made = sheets(view.name, size, "US", paper)
    assert made.size is not None
    assert made.plan is not None
    text = text_of(made.content)
    words = [*label_words(view), view.keeps, view.statement_of_place, HONEY, PACKS, view.maker]
    for each in filter(None, [*words, "Baked on", "Best before", "November 8, 2026", "Net wt"]):
        assert text.count(squeezed(each)) >= made.tags, each
    assert made.tags == Grid(size=made.size, paper=paper).tags
    assert made.sheets == (2 if made.plan.second else 1)
    assert len(PdfReader(BytesIO(made.content)).pages) == made.sheets


def test_what_does_not_fit_goes_to_the_back_and_the_maker_is_told() -> None:
    made = sheets(TYPICAL.name, "a7")
    assert made.size == size_named("a7")
    assert made.plan is not None
    assert made.plan.second
    assert made.told[0].endswith("on the back: the front has no room.")
    assert "Print on both sides, turned over the long edge." in made.told
    fronts, backs = PdfReader(BytesIO(made.content)).pages
    listed = squeezed("".join(run.text for run in TYPICAL.label.ingredients))
    assert listed not in squeezed(fronts.extract_text())
    assert squeezed(backs.extract_text()).count(listed) == made.tags


def test_what_fits_no_side_takes_a_larger_tag_and_the_maker_is_told() -> None:
    label = replace(TYPICAL.label, ingredients=TYPICAL.label.ingredients * 5)
    made = render_tag_sheets(tag(replace(TYPICAL, label=label)), size="ten", paper="letter")
    assert made.size is not None
    assert made.size.name != "ten"
    assert made.told[0] == (
        f"The words do not fit on 3.5 × 2 in, ten to a sheet; these are {made.size.words}."
    )


@pytest.mark.long
def test_words_longer_than_any_tag_take_sheets_of_their_own_and_lose_nothing() -> None:
    people = (Person(to="Ottokar"), Person(to="Brynhild"))
    label = replace(LONG.label, ingredients=LONG.label.ingredients * 3)
    made = render_tag_sheets(tag(replace(LONG, label=label)), size="ten", people=people, paper="letter")
    assert made.size is None
    assert "nor on any larger tag" in made.told[0]
    text = text_of(made.content)
    assert text.count("ingredientnumber39") == 6
    assert "ToOttokar" in text
    assert "ToBrynhild" in text


def test_a_long_list_fills_both_halves_of_the_inside_and_stays_within() -> None:
    made = sheets(LONG.name, "folded")
    assert made.size == size_named("folded")
    places = Grid(size=size_named("folded"), paper="letter").places(second=True)
    page = PdfReader(BytesIO(made.content)).pages[1]
    halves = set()
    for glyph in (each for each in glyphs_of(made.content) if each.page == 1 and each.character.strip()):
        x, y = glyph.x * 25.4 / 72, (float(page.mediabox.height) - glyph.y) * 25.4 / 72
        inside = [each for each in places if 0 < x - each.left < 148 and 5 < y - each.top < 100.5]
        assert len(inside) == 1, glyph
        halves.add(x - inside[0].left > 74)
    assert halves == {False, True}


def test_the_list_is_inside_a_folded_tag() -> None:
    made = sheets(TYPICAL.name, "folded")
    outside, inside = (squeezed(page.extract_text()) for page in PdfReader(BytesIO(made.content)).pages)
    assert "Ingredientsinside." in outside
    assert squeezed("Ingredients: Bread flour") in inside
    assert squeezed("Ingredients: Bread flour") not in outside


def test_a_second_side_lies_behind_its_front() -> None:
    for size in SIZES:
        for paper in PAPERS_MM:
            grid = Grid(size=size, paper=paper)
            for front, back in zip(grid.places(second=False), grid.places(second=True), strict=True):
                width = PAPERS_MM[paper][0]
                assert back.left == pytest.approx(width - front.left - size.open_width)
                assert back.top == front.top


def test_sheets_hold_as_many_tags_as_they_say() -> None:
    tags = {(size.name, paper): Grid(size=size, paper=paper).tags for size in SIZES for paper in PAPERS_MM}
    assert tags == {
        ("ten", "letter"): 10,
        ("ten", "a4"): 10,
        ("a7", "letter"): 6,
        ("a7", "a4"): 8,
        ("card", "letter"): 4,
        ("card", "a4"): 4,
        ("folded", "letter"): 2,
        ("folded", "a4"): 2,
    }


@pytest.mark.parametrize("count", [1, 5, pytest.param(9, marks=pytest.mark.long)])
def test_every_person_has_a_tag_and_no_sheet_spills(count: int) -> None:
    people = tuple(Person(to=f"Person {number:02}", sender="Me", note="Enjoy") for number in range(count))
    made = render_tag_sheets(tag(TYPICAL), size="card", people=people, paper="letter")
    assert made.size is not None
    assert made.plan is not None
    per = Grid(size=made.size, paper="letter").tags
    pages = PdfReader(BytesIO(made.content)).pages
    assert made.tags == count
    assert len(pages) == made.sheets == ceil(count / per) * (2 if made.plan.second else 1)
    text = text_of(made.content)
    assert [text.count(squeezed(f"To Person {number:02}")) for number in range(count)] == [1] * count
    assert text.count("FromMe") == text.count("Enjoy") == count


@pytest.mark.parametrize("size", SIZE_NAMES)
def test_a_long_name_wraps_and_stays_on_its_tag(size: str) -> None:
    name = "Maximiliana-Theodosia Featherstonehaugh-Cholmondeley and all of the house " + "w" * 70
    made = render_tag_sheets(tag(TINY), size=size, people=(Person(to=name),), paper="letter")
    assert squeezed(name) in text_of(made.content)
    assert made.size is not None
    grid = Grid(size=made.size, paper="letter")
    place = grid.places(second=False)[0]
    left = place.left + (made.size.width if made.size.folded else 0)
    page = PdfReader(BytesIO(made.content)).pages[0]
    high = float(page.mediabox.height)
    for glyph in glyphs_of(made.content):
        if glyph.page == 0 and glyph.character.strip():
            assert left <= glyph.x * 25.4 / 72 <= left + made.size.width
            assert place.top <= (high - glyph.y) * 25.4 / 72 <= place.top + made.size.height


def test_the_codes_of_named_tags_can_be_read(tmp_path: Path) -> None:
    made = sheets(TYPICAL.name, "card")
    codes = [
        code.text
        for page in range(1, made.sheets + 1)
        for code in zxingcpp.read_barcodes(picture(made.content, tmp_path, page=page))
    ]
    assert codes == [TYPICAL.url] * made.tags


def test_blank_lines_stand_where_nothing_is_known() -> None:
    plain = TagView(recipe=TINY, letters="american", net=NetWeight())
    made = render_tag_sheets(plain, size="ten", paper="letter")
    text = text_of(made.content)
    assert text.count("ToFrom") == text.count("BakedonBestbefore") == 10
    assert "Netwt" not in text
