"""The ledger's bytes: what is appended, what is read back, and what a hand may have done to it."""

from datetime import date

import pytest

from generator.history.ledger import (
    Event,
    Gone,
    Ledger,
    PantryChange,
    Posted,
    Revision,
    appended,
    read_ledger,
)

FIRST = Revision(
    recipe="loaf",
    number=1,
    on=date(2026, 9, 12),
    cause="first",
    facts={"lines": {"dough/water": {"grams": [240, 240.5]}}},
    text="\ufeff---\r\ntitle: Loaf “one”\r\n---\r\n",
)
SECOND = Revision(
    recipe="loaf",
    number=2,
    on=date(2026, 9, 20),
    cause="correction",
    what="dough/water 240 g -> 230 g",
    why="Too wet.",
    corrections=1,
    text="---\ntitle: Loaf\n---\n",
)
PANTRY = PantryChange(on=date(2026, 9, 13), text="bread flour: {contains: [wheat]}\n")
POSTED = Posted(
    recipe="loaf",
    place="description",
    revision=1,
    on=date(2026, 9, 12),
    fingerprint="sha256:" + "0" * 64,
    facts={"makes": "1 loaf"},
)
TAG = Posted(recipe="loaf", place="tags", to="Ada", revision=2, on=date(2026, 9, 21), own=False)
LOST = Gone(recipe="loaf", place="tags", to="Ada", on=date(2026, 9, 25), why="eaten")
ALL: tuple[Event, ...] = (FIRST, POSTED, PANTRY, SECOND, TAG, LOST)


def test_what_was_appended_is_read_back() -> None:
    ledger, found = read_ledger(appended(b"", ALL).decode())
    assert found == ()
    assert ledger.events == ALL


def test_an_event_is_one_readable_line_with_its_keys_in_order() -> None:
    assert appended(b"", [TAG, LOST]).decode().splitlines() == [
        '{"event": "posted", "recipe": "loaf", "place": "tags", "to": "Ada", "revision": 2, "on": "2026-09-21", '
        '"fingerprint": "", "own": false, "facts": {}}',
        '{"event": "gone", "recipe": "loaf", "place": "tags", "to": "Ada", "on": "2026-09-25", "why": "eaten"}',
    ]


@pytest.mark.parametrize(
    "before", [b"", b"{}\n", b"{}\r\n", b"\xef\xbb\xbf", b'{"event": "rev', b"\xff\xfe\n"]
)
def test_what_stands_before_is_never_changed(before: bytes) -> None:
    after = appended(before, [SECOND])
    assert after.startswith(before)
    assert appended(before, []) == before
    ledger, _ = read_ledger(after.decode("utf-8", "replace"))
    assert ledger.events == (SECOND,)


def test_line_ends_are_those_of_the_file() -> None:
    assert appended(b"{}\r\n", [LOST, LOST]).count(b"\r\n") == 3
    assert b"\r" not in appended(b"{}\n", [LOST, LOST])


def test_the_ledger_knows_the_newest_of_each() -> None:
    ledger = Ledger(events=ALL)
    assert ledger.revision("loaf") == SECOND
    assert ledger.revision("braid") is None
    assert ledger.pantry() == PANTRY
    assert ledger.posted("loaf") == (POSTED,)
    assert ledger.postings("loaf") == (POSTED, TAG)
    assert ledger.latest_day("loaf") == date(2026, 9, 25)
    assert ledger.recipes() == ("loaf",)


def test_a_number_is_above_all_that_were_used_or_are_shown() -> None:
    assert Ledger(events=ALL).next_number("loaf", shown=2) == 3
    assert Ledger(events=ALL).next_number("loaf", shown=5) == 6
    assert Ledger().next_number("loaf", shown=1) == 2


DAY = '"on": "2026-02-01"'
GONE = '{"event": "gone", "recipe": "a", "place": "page"'
POST = '{"event": "posted", "recipe": "a", "place": "page", "revision": '
REVISION = '{"event": "revision", "recipe": "a", "revision": 1, '
LEFT_OUT = "this line is left out"
NONSENSE = [
    (
        "{",
        "1:1: H001 this line is no JSON (expecting property name enclosed in double quotes); it is left out",
    ),
    ('{"event": "gone",}', None),
    ("[" * 100_000, None),
    ("[1, 2]", "1:1: H001 this line is not an event in braces; it is left out"),
    ('{"event": "revisoin"}', "1:11: H002 “revisoin” is no event of the ledger; it is left out"),
    ('{"event": ["gone"]}', None),
    ('{"recipe": "loaf"}', "1:1: H002 this line names no event of the ledger; it is left out"),
    (
        GONE + ', "place": "x"}',
        "1:1: H001 this line cannot be read (“place” stands in it twice); it is left out",
    ),
    (GONE.replace('"a"', "7") + f", {DAY}}}", f"1:29: H003 “recipe” is not a text; {LEFT_OUT}"),
    (GONE + ', "on": "2026-02-30"}', f"1:57: H003 “on” is not a day such as 2026-09-20; {LEFT_OUT}"),
    (GONE + "}", f"1:1: H003 “on” is missing; {LEFT_OUT}"),
    (POST + f"true, {DAY}}}", f"1:65: H003 “revision” is not a whole number from 1 on; {LEFT_OUT}"),
    (POST + f"0, {DAY}}}", f"1:65: H003 “revision” is not a whole number from 1 on; {LEFT_OUT}"),
    (POST + f"1e400, {DAY}}}", f"1:65: H003 “revision” is not a whole number from 1 on; {LEFT_OUT}"),
    (POST + f"NaN, {DAY}}}", "1:1: H001 this line cannot be read (NaN is no number); it is left out"),
    (POST + f"{'9' * 5000}, {DAY}}}", None),
    (POST + f'1, {DAY}, "facts": []}}', f"1:97: H003 “facts” is not a table of facts; {LEFT_OUT}"),
    (POST + f'1, {DAY}, "own": "no"}}', f"1:95: H003 “own” is not true or false; {LEFT_OUT}"),
    (
        POST + f'1, {DAY}, "to": "\\ud800"}}',
        "1:1: H001 this line cannot be read (an escape that is no character); it is left out",
    ),
    (REVISION + f'{DAY}, "cause": "corection"}}', "1:82: H003 “corection” is no cause of a revision"),
    (f'{{"event": "pantry", {DAY}, "text": null}}', f"1:49: H003 “text” is not a text; {LEFT_OUT}"),
]


@pytest.mark.parametrize(("line", "told"), NONSENSE)
def test_nonsense_is_told_at_its_place_and_the_rest_counts(line: str, told: str | None) -> None:
    after = appended(line.encode(), [SECOND]).decode()
    ledger, (fault,) = read_ledger(after)
    assert ledger.events == (SECOND,)
    if told is not None:
        assert f"{fault.span.line}:{fault.span.column}: {fault.code} {fault.message}" == told


def test_numbers_that_go_back_or_repeat_are_told_and_left_out() -> None:
    text = appended(b"", [SECOND, FIRST, SECOND]).decode()
    ledger, found = read_ledger(text)
    assert ledger.events == (SECOND,)
    assert [(each.span.line, each.span.column, each.message) for each in found] == [
        (2, 53, "revision 1 of loaf stands after revision 2; this line is left out"),
        (3, 53, "revision 2 of loaf is there already; this line is left out"),
    ]


def test_a_spoilt_line_keeps_its_number_taken() -> None:
    spoilt = appended(b"", [SECOND]).decode().replace('"cause"', "cause")
    ledger, found = read_ledger(spoilt)
    assert ledger.events == ()
    assert len(found) == 1
    assert ledger.next_number("loaf", shown=1) == 3


def test_an_empty_line_is_no_mistake() -> None:
    assert read_ledger("\ufeff\n\r\n  \n") == (Ledger(), ())
