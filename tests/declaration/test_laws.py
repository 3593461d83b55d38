"""Laws that hold for any bake: nothing is ever lost, and nothing is declared without a reason."""

from dataclasses import replace
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from generator.catalogue.allergens import ALLERGENS
from generator.catalogue.load import Pack, built_in, read_pantry
from generator.declaration.claims import claim_spans
from generator.declaration.declare import REGION_NAMES, declare
from generator.declaration.lines import line_allergens, without_pack
from generator.declaration.model import LineAllergens
from generator.declaration.pack import read_pack
from generator.declaration.regions import region_named
from generator.formula.model import Line, Ware
from generator.measure.unit import SPOONS
from generator.source.read import read_mapping
from tests.declaration.bakes import bake, book, line, pack, said
from tests.lots import lots

EMPHASISING = tuple(each for each in REGION_NAMES if region_named(each).emphasis)
NAMES = sorted(built_in().names())
WORDS = (
    "sugar",
    "wheat flour",
    "whey",
    "natural flavor",
    "lecithin (soy)",
    "almonds",
    "nuts",
    "cocoa butter",
)
LABELS = st.lists(st.sampled_from(WORDS), max_size=4).map(", ".join)
TAILS = st.sampled_from(("", ". May contain peanuts, tree nuts", ". Contains: milk", " (gluten-free)"))


@st.composite
def packs(draw: st.DrawFn, name: str) -> Pack:
    ids = st.lists(st.sampled_from(sorted(ALLERGENS)), max_size=2, unique=True)
    return pack(
        name,
        draw(LABELS) + draw(TAILS),
        contains=draw(st.none() | ids),
        may_contain=draw(ids),
    )


@st.composite
def lines(draw: st.DrawFn) -> Line:
    name = draw(st.sampled_from(NAMES))
    row = draw(st.none() | packs(name))
    grams = draw(st.none() | st.integers(1, 900))
    kept = draw(st.none() | st.just(0))
    return line(name, grams, row, kept=kept, optional=draw(st.booleans()))


@given(st.lists(lines(), min_size=1, max_size=5), lines(), st.sampled_from(REGION_NAMES))
@settings(deadline=None, max_examples=lots(200))
def test_adding_a_line_never_removes_an_allergen(some: list[Line], more: Line, region: str) -> None:
    before, after = bake(*some), bake(*some, more)
    less = declare(before, book=book(before), region=region)
    most = declare(after, book=book(after), region=region)
    assert set(less.contains) <= set(most.contains)
    assert set(less.may_contain) <= set(most.may_contain) | set(most.contains)
    assert set(less.unknown) <= set(most.unknown)
    assert less.finished or not most.finished


# Words of a label that leave something open, each of which makes a plain food's pack one that is still to be read.
DOUBTS = (
    "natural flavor",
    "lecithin",
    "margarine",
    "zorble",
    "almnods",
    "Weizenvollkornzorble",
    "vegetable oil",
)
KEYS = ("is", "label", "contains", "may_contain", "checked", "cup", "buy", "note")


def row_text(row: dict[str, str], name: str) -> str:
    return (
        f"{name}:\n" + "".join(f"  {key}: {value}\n" for key, value in row.items()) if row else f"{name}:\n"
    )


@st.composite
def doubtful_rows(draw: st.DrawFn) -> tuple[str, str, dict[str, str]]:
    """A catalogue ingredient, the name by which it is used, and a row of the pantry that leaves something open."""
    item = draw(st.sampled_from(NAMES))
    own = draw(st.booleans())
    label = f"{draw(LABELS) or 'sugar'}, {draw(st.sampled_from(DOUBTS))}"
    row = {
        "label": f'"{label}"',
        "checked": "2026-11-20",
        "cup": "130 g",
        "buy": "the market",
        "note": "blue",
    }
    row |= {"may_contain": "[mustard]"} if draw(st.booleans()) else {}
    row |= {"is": item} if own else {}
    return item, "shelf thing" if own else item, row


def carried(text: str, name: str) -> LineAllergens | None:
    """What a line of that name carries with this pantry; None where nobody knows the name (an error of the maker)."""
    keys, _ = read_mapping("pantry.yaml", text.encode())
    pantry, _ = read_pantry(keys, catalogue=built_in(), spoons=SPOONS["us"])
    pack_of_it = pantry.pack_for(name)
    ingredient = pantry.ingredient(name) or built_in().find(name)
    if ingredient is None:
        return None
    ware = Ware(ingredient=ingredient, packs=(pack_of_it,) if pack_of_it else ())
    return line_allergens(replace(line(name, 100), ware=ware, item=name), book={})


def silent(item: str) -> tuple[str, ...]:
    """What is told as a food without a pack: all but what comes loose."""
    loose = built_in().find(item)
    assert loose is not None
    return () if loose.group in ("water", "fruit", "vegetable", "egg") else (item,)


@given(doubtful_rows(), st.sets(st.sampled_from(KEYS)))
@settings(deadline=None, max_examples=lots(300))
def test_taking_pack_data_away_never_turns_unknown_into_not_stated(
    drawn: tuple[str, str, dict[str, str]], gone: set[str]
) -> None:
    """Whichever keys of a row go, all of them too: the doubt stands as long as the row speaks of a pack.

    A row that weighs a plain food and no more is no pack; such a food is told as one of which no pack is known.
    """
    item, name, row = drawn
    left = {key: value for key, value in row.items() if key not in gone}
    full, poor = carried(row_text(row, name), name), carried(row_text(left, name), name)
    assert full is not None
    assert full.unknown
    assert poor is not None
    if set(left) != {"cup"} or name != item:
        assert poor.unknown
    elif not poor.unknown:
        formula = bake(line(item, 100))
        assert without_pack(formula, book=book(formula)) == silent(item)


@given(doubtful_rows())
@settings(deadline=None, max_examples=lots(200))
def test_a_row_that_goes_whole_leaves_no_silence(drawn: tuple[str, str, dict[str, str]]) -> None:
    """A name of its own is known no more, which is an error; a food that comes in packs is told as one without."""
    item, name, row = drawn
    assert carried(row_text(row, name), name) is not None
    bare = carried("", name)
    if bare is None:
        assert name != item
    elif not bare.unknown:
        formula = bake(line(item, 100))
        assert without_pack(formula, book=book(formula)) == silent(item)


@given(st.data(), st.sampled_from(NAMES))
@settings(deadline=None, max_examples=lots(200))
def test_taking_away_what_was_read_never_finishes_a_label(data: st.DataObject, item: str) -> None:
    row = data.draw(packs(item))
    less = data.draw(
        st.sampled_from(
            (
                replace(row, label=""),
                replace(row, contains=(), contains_given=False),
                replace(row, may_contain=()),
                replace(row, label="", contains=(), contains_given=False),
                replace(row, label="", contains=(), contains_given=False, may_contain=(), checked=None),
            )
        )
    )
    full = line_allergens(line(item, 100, row), book={})
    poor = line_allergens(line(item, 100, less), book={})
    assert not full.unknown or poor.unknown


@given(st.lists(lines(), min_size=1, max_size=5), st.integers(1, 40), st.sampled_from(REGION_NAMES))
@settings(deadline=None, max_examples=lots(200))
def test_scaling_never_changes_a_declaration(some: list[Line], times: int, region: str) -> None:
    factor = Fraction(times, 7)
    small, large = bake(*some), bake(*(_times(each, factor) for each in some))
    less, more = (declare(each, book=book(each), region=region) for each in (small, large))
    assert less == more


def _times(each: Line, factor: Fraction) -> Line:
    return replace(
        each,
        grams=each.grams.scaled(factor) if each.grams else None,
        kept=each.kept.scaled(factor) if each.kept else None,
    )


@given(st.lists(lines(), min_size=1, max_size=4), st.sampled_from(REGION_NAMES))
@settings(deadline=None, max_examples=lots(200))
def test_a_line_in_the_summary_names_all_that_is_contained(some: list[Line], region: str) -> None:
    formula = bake(*some)
    declaration = declare(formula, book=book(formula), region=region)
    rules = region_named(region)
    line_words = "".join(each.text for each in declaration.contains_line)
    named = set(declaration.contains) - rules.summary_leaves_out
    assert bool(declaration.contains_line) is (bool(named) and rules.contains_line != "not allowed")
    assert all(rules.word(each) in line_words for each in named) or not line_words


@given(st.lists(lines(), min_size=1, max_size=5), st.sampled_from(REGION_NAMES))
@settings(deadline=None, max_examples=lots(200))
def test_whatever_is_declared_has_a_trace_and_stands_in_words(some: list[Line], region: str) -> None:
    formula = bake(*some)
    declaration = declare(formula, book=book(formula), region=region)
    rules = region_named(region)
    for state, ids in (("contains", declaration.contains), ("may contain", declaration.may_contain)):
        traced = {
            each for one in declaration.traces if one.state == state for each in rules.ids(one.allergen)
        }
        assert set(ids) <= traced
    assert not set(declaration.contains) & set(declaration.may_contain)
    shown = said(declaration).casefold()
    for allergen in declaration.contains:
        assert any(each.casefold() in shown for each in (*rules.seen_as[allergen], rules.word(allergen)))
    assert all(rules.word(each).casefold() in shown for each in declaration.may_contain)
    assert declaration.finished is not bool(declaration.unfinished)


@given(st.lists(lines(), min_size=1, max_size=4), st.sampled_from(REGION_NAMES))
@settings(deadline=None, max_examples=lots(200))
def test_no_declaration_holds_a_claim(some: list[Line], region: str) -> None:
    formula = bake(*some)
    declaration = declare(formula, book=book(formula), region=region, kitchen_handles=("milk", "egg"))
    assert claim_spans(said(declaration)) == []


@given(st.lists(lines(), min_size=1, max_size=5), st.sampled_from(EMPHASISING))
@settings(deadline=None, max_examples=lots(200))
def test_every_allergen_of_an_emphasised_list_stands_out(some: list[Line], region: str) -> None:
    formula = bake(*some)
    declaration = declare(formula, book=book(formula), region=region)
    strong = " ".join(each.text for each in declaration.ingredients if each.strong).casefold()
    rules = region_named(region)
    for allergen in set(declaration.contains) - rules.summary_adds:
        assert any(word.casefold() in strong for word in (*rules.seen_as[allergen], rules.word(allergen)))


@given(st.text(max_size=120))
@settings(deadline=None, max_examples=lots(300))
def test_no_label_is_a_mistake(label: str) -> None:
    reading = read_pack(label)
    assert claim_spans(reading.text) == []


@given(LABELS, LABELS, st.sampled_from((". ", "; ", ", ", "\n", " (", " [")))
@settings(deadline=None, max_examples=lots(200))
def test_a_longer_label_names_no_fewer_allergens(first: str, second: str, joint: str) -> None:
    kinds = {each.allergen for each in read_pack(first).contains if not ALLERGENS[each.allergen].general}
    assert kinds <= {each.allergen for each in read_pack(first + joint + second).contains}
