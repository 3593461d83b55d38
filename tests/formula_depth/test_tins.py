"""Tins: reading them, refusing those that make no sense, and the laws of their sizes."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.formula.tin_text import read_shape
from generator.formula.tins import (
    CM3_PER_G,
    PI,
    By,
    TinShape,
    capacity_note,
    cm3_per_g_from,
    depth_ratio,
    dough_for,
    factor_between,
)
from generator.formula.usual_tins import USUAL_TINS, offers
from tests.lots import lots

F = Fraction


def shape(text: str) -> TinShape:
    tin, faults = read_shape(text)
    assert tin is not None, faults
    assert faults == ()
    return tin


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("round 23 x 5 cm", {"kind": "round", "top": "23", "depth": "5"}),
        ("round 9-inch, 2 in deep", {"kind": "round", "top": "22.86", "depth": "5.08"}),
        ("9-inch round", {"kind": "round", "top": "22.86"}),
        ("2 x round 20 x 4 cm, lined", {"kind": "round", "top": "20", "depth": "4", "count": 2}),
        ("round 23 x 5 cm, base 20 cm", {"kind": "round", "top": "23", "base": "20", "depth": "5"}),
        ("square 20 cm (deep)", {"kind": "square", "top": "20 20"}),
        ("square 8 x 8 in", {"kind": "square", "top": "20.32 20.32"}),
        ("square 8 x 2 in", {"kind": "square", "top": "20.32 20.32", "depth": "5.08"}),
        ("square 8 x 8 x 2 in", {"kind": "square", "top": "20.32 20.32", "depth": "5.08"}),
        ("rectangle 33 x 23 cm", {"kind": "rectangle", "top": "33 23"}),
        (
            "loaf 23 x 13 x 7 cm holds 1.9 L",
            {"kind": "loaf", "top": "23 13", "depth": "7", "capacity": "1900"},
        ),
        ("loaf 23 x 13 cm, holds 1420 g of water", {"kind": "loaf", "top": "23 13", "capacity": "1420"}),
        (
            "loaf 20 x 10 x 6 cm tapering to 18 x 8",
            {"kind": "loaf", "top": "20 10", "base": "18 8", "depth": "6"},
        ),
        ("cylinder 170 x 120 mm", {"kind": "cylinder", "top": "17", "depth": "12"}),
        ("tube 25 x 10 cm, hole 6 cm", {"kind": "tube", "top": "25", "depth": "10", "hole": "6"}),
        ("ring 24 x 7 cm with a hole of 8 cm", {"kind": "ring", "top": "24", "depth": "7", "hole": "8"}),
        ("ring 24 x 7 cm, 8 cm hole", {"kind": "ring", "top": "24", "depth": "7", "hole": "8"}),
        ("ring holds 2 L", {"kind": "ring", "capacity": "2000"}),
        ("12-cup muffin 7 x 3 cm", {"kind": "muffin", "count": 12, "top": "7", "depth": "3"}),
        ("muffin 12 cups, each holds 100 ml", {"kind": "muffin", "count": 12, "capacity": "100"}),
        ("muffin 6 cups of 100 ml", {"kind": "muffin", "count": 6, "capacity": "100"}),
        ("muffin 24 cups", {"kind": "muffin", "count": 24}),
    ],
)
def test_a_written_tin_becomes_a_shape(text: str, expected: dict[str, object]) -> None:
    tin = shape(text)

    def sides(name: str) -> tuple[Fraction, ...]:
        return tuple(F(each) for each in str(expected.get(name, "")).split())

    assert (tin.kind, tin.count, tin.words) == (expected["kind"], expected.get("count", 1), text)
    assert (tin.top, tin.base) == (sides("top"), sides("base"))
    for name in ("depth", "hole", "capacity"):
        assert getattr(tin, name) == (F(str(expected[name])) if name in expected else None)


@pytest.mark.parametrize(
    ("text", "kind", "message"),
    [
        ("", "unreadable", "this names no tin that can be measured"),
        ("a cake pan", "unreadable", "this names no tin that can be measured"),
        ("x" * 300 + " round 9 in", "unreadable", "this names no tin that can be measured"),
        ("round 9", "unreadable", "“round 9” does not read as a tin with its sides"),
        (
            "loaf 9 x 5 x 3 x 2 in",
            "unreadable",
            "“loaf 9 x 5 x 3 x 2 in” does not read as a tin with its sides",
        ),
        ("ring 24 x 7 cm, hole eight", "unreadable", "“eight” is no measure of a tin"),
        ("round -5 x 3 cm", "negative", "a side of a tin cannot be negative"),
        ("round 20 x −3 cm", "negative", "a side of a tin cannot be negative"),
        ("round 0 cm", "zero", "a side of a tin must be more than nothing"),
        ("loaf 23 x 0 x 7 cm", "zero", "a side of a tin must be more than nothing"),
        ("round 8-9 in", "range", "a tin has one size, not from one to another"),
        ("round 120 cm", "too large", "a tin of more than 1 m fits in no oven"),
        ("round tin", "missing side", "a round tin needs its size"),
        ("loaf 9 in", "missing side", "a loaf tin needs its length and its width"),
        ("ring 25 x 9 cm", "missing side", "a ring tin needs its hole"),
        ("round 9 x 2 x 3 in", "too many sides", "a round tin has fewer sides"),
        ("round 9 x 2 in, 3 in deep", "too many sides", "a round tin has fewer sides"),
        ("square 8 x 9 x 2 in", "uneven", "the sides of a square tin differ"),
        ("round 20 x 5 cm, base 30 cm", "base", "the base does not fit under the top"),
        ("loaf 20 x 10 x 5 cm, base 8 cm", "base", "the base does not fit under the top"),
        ("ring 24 x 7 cm, hole 24 cm", "hole", "the hole does not fit into the tin"),
        ("round 9 in, hole 2 in", "hole", "the hole does not fit into the tin"),
        ("round 9 in, holds 0 ml", "capacity", "“0 ml” does not say what a tin holds"),
        ("round 9 in, holds plenty", "capacity", "“plenty” does not say what a tin holds"),
        ("0 round 9 in", "count", "there must be at least one tin"),
        ("muffin", "count", "a muffin tin needs the number of its cups"),
    ],
)
def test_a_tin_that_makes_no_sense_is_refused_in_words(text: str, kind: str, message: str) -> None:
    tin, faults = read_shape(text)
    assert tin is None
    assert [(each.kind, each.message) for each in faults] == [(kind, message)]
    assert all(each.hint for each in faults)


PIECES = st.sampled_from(
    [
        "round",
        "loaf",
        "ring",
        "muffin",
        "9",
        "x",
        "in",
        "cm",
        ",",
        "hole",
        "base",
        "holds",
        "of",
        "-",
        "L",
        "½",
        "²",
    ]
)


@given(st.one_of(st.text(max_size=60), st.lists(PIECES, max_size=14).map(" ".join)))
@settings(max_examples=lots(500))
def test_no_text_raises(text: str) -> None:
    tin, faults = read_shape(text)
    assert (tin is None) == bool(faults)


def test_what_cannot_be_known_is_none() -> None:
    flat = shape("round 23 cm")
    assert flat.area == PI * 23 * 23 / 4
    assert (flat.volume, flat.box) == (None, None)
    ring = shape("ring 24 x 7 cm, holds 2.5 L")
    assert (ring.area, ring.box, ring.volume) == (None, None, 2500)
    assert factor_between(flat, ring, by="fill") is None
    assert factor_between(flat, ring, by="depth") is None
    assert depth_ratio(flat, ring, F(1)) is None
    assert dough_for(flat, cm3_per_g=F(3)) is None
    assert dough_for(ring, cm3_per_g=F(0)) is None


def test_a_stated_capacity_overrides_the_sides() -> None:
    stated, drawn = shape("2 x loaf 23 x 13 x 7 cm holds 1.9 L"), shape("2 x loaf 23 x 13 x 7 cm")
    assert (stated.volume, drawn.volume) == (3800, 2 * 23 * 13 * 7)
    assert stated.area == drawn.area


def test_what_is_said_of_a_volume() -> None:
    note = capacity_note(shape("loaf 23 x 13 x 7 cm"))
    assert note is not None
    assert note.kind == "capacity from sides"
    assert "82 to 91 %" in note.says
    assert capacity_note(shape("loaf 23 x 13 x 7 cm holds 1.9 L")) is None
    note = capacity_note(shape("loaf 23 x 13 x 7 cm holds 1 L"))
    assert note is not None
    assert note.kind == "capacity far from sides"
    assert capacity_note(shape("round 23 cm")) is None


def test_the_depth_that_batter_has_in_another_tin() -> None:
    one, other = shape("square 20 x 20 x 5 cm"), shape("rectangle 40 x 20 x 5 cm")
    assert depth_ratio(one, other, F(1)) == F(1, 2)
    assert depth_ratio(one, other, F(2)) == 1


SIDE = st.fractions(min_value=1, max_value=49, max_denominator=20)
KINDS = st.sampled_from(["round", "square", "rectangle", "loaf", "tapered", "cylinder", "ring", "muffin"])


@st.composite
def tins(draw: st.DrawFn) -> TinShape:
    kind, a, b, depth = draw(KINDS), draw(SIDE), draw(SIDE), draw(SIDE)
    count = draw(st.integers(1, 24))
    top = {"rectangle": (a, b), "loaf": (a, b), "tapered": (a, b), "square": (a, a)}.get(kind, (a,))
    return TinShape(
        kind="loaf" if kind == "tapered" else kind,
        words="",
        count=count,
        top=top,
        base=(a * F(4, 5), b * F(9, 10)) if kind == "tapered" else (),
        depth=depth,
        hole=a / 3 if kind == "ring" else None,
    )


def enlarged(tin: TinShape, k: Fraction) -> TinShape:
    return replace(
        tin,
        top=tuple(k * each for each in tin.top),
        base=tuple(k * each for each in tin.base),
        depth=None if tin.depth is None else k * tin.depth,
        hole=None if tin.hole is None else k * tin.hole,
    )


@given(tins(), SIDE)
@settings(max_examples=lots(300))
def test_areas_grow_with_the_square_and_volumes_with_the_cube(tin: TinShape, k: Fraction) -> None:
    assert tin.area is not None
    assert tin.volume is not None
    assert enlarged(tin, k).area == k**2 * tin.area
    assert enlarged(tin, k).volume == k**3 * tin.volume


BY: st.SearchStrategy[By] = st.sampled_from(["depth", "fill"])


@given(tins(), tins(), BY)
@settings(max_examples=lots(300))
def test_there_and_back_is_one(one: TinShape, other: TinShape, by: By) -> None:
    there, back = factor_between(one, other, by=by), factor_between(other, one, by=by)
    assert there is not None
    assert back is not None
    assert there * back == 1


@given(tins(), tins(), tins(), BY)
@settings(max_examples=lots(200))
def test_by_way_of_a_third_tin_is_the_same(a: TinShape, b: TinShape, c: TinShape, by: By) -> None:
    ab, bc, ac = (factor_between(*pair, by=by) for pair in ((a, b), (b, c), (a, c)))
    assert ab is not None
    assert bc is not None
    assert ab * bc == ac


@given(tins())
@settings(max_examples=lots(200))
def test_the_same_fill_in_a_tin_of_the_same_depth_is_the_same_depth(tin: TinShape) -> None:
    other = replace(tin, count=tin.count + 1)
    assert factor_between(tin, other, by="fill") == factor_between(tin, other, by="depth")


def decimal(tenths: int, scale: Fraction) -> str:
    """Exactly, for a number of tenths times 1 or 2.54 has at most three decimals."""
    return str(float(F(tenths, 10) * scale))


@given(st.sampled_from(["loaf", "rectangle"]), st.lists(st.integers(10, 390), min_size=3, max_size=3))
@settings(max_examples=lots(200))
def test_inches_and_centimetres_give_the_same_tin(kind: str, tenths: list[int]) -> None:
    inches = " x ".join(decimal(each, F(1)) for each in tenths)
    centimetres = " x ".join(decimal(each, F("2.54")) for each in tenths)
    one, other = shape(f"{kind} {inches} in"), shape(f"{kind} {centimetres} cm")
    assert (one.top, one.depth) == (other.top, other.depth)
    assert (one.area, one.volume) == (other.area, other.volume)


def test_usual_tins_read_as_what_they_are_called() -> None:
    for family, usual in USUAL_TINS.items():
        for each in usual:
            metric, inches = shape(each.metric), shape(each.inches)
            assert (metric.stated, inches.stated) == ("cm", "in")
            assert metric.kind == inches.kind
            assert family in {tin.metric.split()[0] for tin in usual}
            for by in ("depth", "fill"):
                factor = factor_between(metric, inches, by=by)
                assert factor is None or F(9, 10) < factor < F(11, 10)


def test_a_recipe_is_compared_with_tins_in_its_own_unit() -> None:
    inch = {each.name: each.factor for each in offers(shape("round 9 x 2 in"))}
    assert list(inch) == [
        *("round 6 in", "round 7 in", "round 8 in", "round 10 in", "square 8 in", "square 9 in"),
        "rectangle 13 x 9 in",
    ]
    assert inch["round 8 in"] == F(64, 81)
    metric = {each.name: each for each in offers(shape("round 23 x 5 cm"))}
    assert metric["round 20 cm"].factor == F(400, 529)
    assert metric["round 20 cm"].other_name == "round 8 in"
    assert "round 23 cm" not in metric


def test_two_layers_are_offered_two_tins() -> None:
    found = offers(shape("2 x round 20 x 4 cm"))
    assert found[0].name == "2 x round 15 cm"
    assert found[0].factor == F(9, 16)
    assert shape(found[0].name) == found[0].shape


def test_loaves_are_compared_by_fill_where_they_can() -> None:
    assert {each.by for each in offers(shape("loaf 23 x 13 x 7 cm"))} == {"fill"}
    assert {each.by for each in offers(shape("loaf 23 x 13 cm"))} == {"depth"}
    assert offers(shape("loaf 23 x 13 x 7 cm"))[0].factor == F(22 * 11 * 6, 23 * 13 * 7)


def test_muffins_are_offered_in_other_numbers() -> None:
    assert [(each.name, each.factor) for each in offers(shape("12-cup muffin"))] == [
        ("muffin 6 cups", F(1, 2)),
        ("muffin 24 cups", F(2)),
    ]


def test_nothing_is_offered_where_nothing_can_be_compared() -> None:
    assert offers(shape("rectangle holds 3 L")) == ()


@pytest.mark.parametrize(
    "text", ["round 23 x 5 cm", "square 8 x 8 x 2 in", "loaf 9 x 5 x 3 in", "tube 10 x 4 in, hole 2 1/2 in"]
)
def test_offers_are_few_and_each_name_reads_back(text: str) -> None:
    found = offers(shape(text))
    assert 0 < len(found) <= 8
    for each in found:
        assert read_shape(each.name)[0] == each.shape
        assert factor_between(shape(text), each.shape, by=each.by) == each.factor
        assert F(1, 3) <= each.factor <= 3


def test_the_figures_for_dough_lie_far_apart() -> None:
    assert max(CM3_PER_G.values()) / min(CM3_PER_G.values()) > F(5, 2)
    assert cm3_per_g_from(F(0)) == 0
