"""Laws of the ledger: appending changes nothing before it, reading gives it back, numbers are never used twice,
and no nonsense in it loses a line or breaks a comparison."""

from datetime import date

from hypothesis import given, settings
from hypothesis import strategies as st

from generator.history.changes import compare
from generator.history.copies import differences, fingerprint, normal
from generator.history.ledger import (
    CAUSES,
    Event,
    Gone,
    PantryChange,
    Posted,
    Revision,
    appended,
    read_ledger,
)
from generator.present.changed import effects, told_changes

SOME = settings(max_examples=40, deadline=None)
TEXT = st.text(st.characters(codec="utf-8"), max_size=12)
NAME = st.sampled_from(["loaf", "braid", "päckchen"])
PLACE = st.sampled_from(["page", "card", "tags", "description https://video.example/w/x"])
DAY = st.dates(min_value=date(2000, 1, 1))
NUMBER = st.integers(min_value=0, max_value=10**6) | st.floats(allow_nan=False, allow_infinity=False)
JSON = st.recursive(
    st.none() | st.booleans() | NUMBER | TEXT,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(TEXT, inner, max_size=3),
    max_leaves=8,
)
KEYS = st.sampled_from(
    [
        *("lines", "dough", "makes", "method", "contains", "may contain", "unknown", "kitchen", "cautions"),
        *("own cautions", "words", "label", "finished"),
    ]
)
LINE = st.fixed_dictionaries(
    {"grams": JSON | st.lists(NUMBER, min_size=2, max_size=2), "amount": JSON, "or": JSON}
)
ENTRY = st.lists(st.sampled_from(["", "bake", "oven", "5-3 min", "350 F", "extra x"]), max_size=3)
REGIONS = st.dictionaries(st.sampled_from(["any", "US"]), st.lists(TEXT, max_size=2))
FACTS = st.dictionaries(
    KEYS,
    JSON | REGIONS | st.dictionaries(TEXT, LINE, max_size=2) | st.lists(ENTRY, max_size=3),
    max_size=3,
)
BARE = st.builds(Revision, recipe=NAME, number=st.integers(1, 40), on=DAY, cause=st.sampled_from(CAUSES))
REVISION = st.builds(
    Revision,
    recipe=NAME,
    number=st.integers(1, 40),
    on=DAY,
    cause=st.sampled_from(CAUSES),
    what=TEXT,
    why=TEXT,
    corrections=st.integers(0, 9),
    facts=FACTS,
    text=TEXT,
)
EVENT: st.SearchStrategy[Event] = st.one_of(
    REVISION,
    st.builds(PantryChange, on=DAY, what=TEXT, why=TEXT, text=TEXT),
    st.builds(
        Posted,
        recipe=NAME,
        place=PLACE,
        revision=st.integers(1, 40),
        on=DAY,
        to=TEXT,
        fingerprint=TEXT,
        own=st.booleans(),
        facts=FACTS,
    ),
    st.builds(Gone, recipe=NAME, place=PLACE, on=DAY, why=TEXT, to=TEXT),
)


def rising(events: list[Event]) -> list[Event]:
    """The events without revisions whose numbers do not rise: the tool never writes such a one."""
    newest: dict[str, int] = {}
    kept = []
    for each in events:
        if isinstance(each, Revision):
            if each.number <= newest.get(each.recipe, 0):
                continue
            newest[each.recipe] = each.number
        kept.append(each)
    return kept


@SOME
@given(st.lists(EVENT, max_size=6).map(rising), st.integers(0, 6))
def test_what_is_appended_in_any_portions_is_read_back(events: list[Event], cut: int) -> None:
    data = appended(appended(b"", events[:cut]), events[cut:])
    assert data == appended(b"", events)
    ledger, found = read_ledger(data.decode())
    assert (ledger.events, found) == (tuple(events), ())


@SOME
@given(st.binary(max_size=60), st.lists(EVENT, max_size=3).map(rising))
def test_whatever_stands_before_stays_and_spoils_nothing_after_it(before: bytes, events: list[Event]) -> None:
    after = appended(before, events)
    assert after.startswith(before)
    ledger, _ = read_ledger(after.decode("utf-8", "replace"))
    assert ledger.events[len(ledger.events) - len(events) :] == tuple(events)


@SOME
@given(st.lists(EVENT, min_size=1, max_size=5).map(rising), st.data())
def test_a_line_edited_into_nonsense_loses_no_other_and_frees_no_number(
    events: list[Event], data: st.DataObject
) -> None:
    lines = appended(b"", events).decode().split("\n")[:-1]
    at = data.draw(st.integers(0, len(lines) - 1))
    spoilt = lines[at][: data.draw(st.integers(0, len(lines[at]) - 1))] + "\x00}"
    ledger, found = read_ledger("\n".join((*lines[:at], spoilt, *lines[at + 1 :])))
    assert ledger.events == (*events[:at], *events[at + 1 :])
    assert [each.span.line for each in found] == [at + 1]
    lost = events[at]
    if isinstance(lost, Revision) and '"revision": ' in spoilt and f'"revision": {lost.number},' in spoilt:
        assert ledger.next_number(lost.recipe, shown=1) > lost.number


@SOME
@given(st.lists(BARE, max_size=6), st.integers(1, 50))
def test_a_new_number_is_above_all_others(revisions: list[Revision], shown: int) -> None:
    ledger, _ = read_ledger(appended(b"", revisions).decode())
    number = ledger.next_number("loaf", shown=shown)
    assert number > shown
    assert all(number > each.number for each in revisions if each.recipe == "loaf")


@SOME
@given(st.text(max_size=200))
def test_no_text_breaks_the_reading(text: str) -> None:
    ledger, found = read_ledger(text)
    assert len(ledger.events) + len(found) <= text.count("\n") + 1


@SOME
@given(FACTS, FACTS)
def test_no_facts_break_a_comparison(before: dict[str, object], after: dict[str, object]) -> None:
    assert compare(before, before) == ()
    told = told_changes(before, after)
    assert all(each.words.strip() for each in told)
    assert all(isinstance(each, str) for each in effects(before, after))


LINES = st.lists(
    st.sampled_from(["430 g flour", "Bake at 350 °F", "Contains: wheat", "", "One", "Two "]), max_size=8
)


@SOME
@given(LINES, LINES)
def test_two_texts_differ_exactly_where_their_fingerprints_do(left: list[str], right: list[str]) -> None:
    one, other = "\n".join(left), "\r\n".join(right)
    found = differences(one, other, allergens=lambda line: frozenset({"wheat"} & set(line.split())))
    assert (not found) == (fingerprint(one) == fingerprint(other)) == (normal(one) == normal(other))
