"""Entries into a bake record: exactly what was meant is added, every other byte stays, odd forms are refused."""

from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.history.bake_entries import Entry, entered, longer
from generator.history.bake_opening import record_path, record_text
from generator.source.document import Mapping, Node, Sequence, Text
from generator.source.quoting import quoted
from generator.source.read import read_mapping
from tests.lots import lots

FLOUR = Entry(
    key="added", how="add", fields=(("what", "bread flour"), ("amount", "10 g"), ("when", "at 5 min"))
)
ITEM = "{what: bread flour, amount: 10 g, when: at 5 min}"


def values(text: str) -> object:
    keys, found = read_mapping("bakes/x.yaml", text.encode())
    assert keys is not None, found
    return plain(keys)


def plain(node: Node) -> object:
    if isinstance(node, Text):
        return " ".join(node.value.split())
    if isinstance(node, Sequence):
        return [plain(each) for each in node.items]
    assert isinstance(node, Mapping)
    return {key.value: plain(value) for key, value in node.entries}


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("recipe: loaf\n", f"recipe: loaf\nadded:\n  - {ITEM}\n"),
        ("recipe: loaf", f"recipe: loaf\nadded:\n  - {ITEM}"),
        (
            "recipe: loaf # why\r\nday: 2026-11-08\r\n",
            f"recipe: loaf # why\r\nday: 2026-11-08\r\nadded:\r\n  - {ITEM}\r\n",
        ),
        ("\ufeffrecipe: loaf\n", f"\ufeffrecipe: loaf\nadded:\n  - {ITEM}\n"),
        (
            "  recipe: loaf\n  day: 2026-11-08\n",
            f"  recipe: loaf\n  day: 2026-11-08\n  added:\n    - {ITEM}\n",
        ),
        ("added:   # so far\nnote: slow\n", f"added:   # so far\n  - {ITEM}\nnote: slow\n"),
        ("added: []\nnote: slow\n", f"added: [{ITEM}]\nnote: slow\n"),
        (
            "added: [{what: honey, amount: 3 g}] # mine\n",
            f"added: [{{what: honey, amount: 3 g}}, {ITEM}] # mine\n",
        ),
        ("added: {what: honey, amount: 3 g}\n", f"added: [{{what: honey, amount: 3 g}}, {ITEM}]\n"),
        (
            "added:\n- {what: honey, amount: 3 g} # a\n# b\nnote: x\n",
            f"added:\n- {{what: honey, amount: 3 g}} # a\n- {ITEM}\n# b\nnote: x\n",
        ),
        (
            "added:\n    - what: honey\n      amount: 3 g\n\nnote: x\n",
            f"added:\n    - what: honey\n      amount: 3 g\n    - {ITEM}\n\nnote: x\n",
        ),
        (
            "recipe: loaf\n# added: as in\n#   - {what: x}\n# left: as in\nnote: x\n",
            f"recipe: loaf\n# added: as in\n#   - {{what: x}}\nadded:\n  - {ITEM}\n# left: as in\nnote: x\n",
        ),
        (
            "added: # here\n  - {what: honey, amount: 3 g}\n# added: as in\n  - {what: oats, amount: 3 g}\n",
            "added: # here\n  - {what: honey, amount: 3 g}\n# added: as in\n  - {what: oats, amount: 3 g}\n"
            f"  - {ITEM}\n",
        ),
    ],
)
def test_an_addition_goes_where_additions_stand(before: str, after: str) -> None:
    assert entered(before, [FLOUR]) == after


@pytest.mark.parametrize(
    ("before", "entry", "after"),
    [
        ("room: 20 C # wall\n", Entry(key="room", how="set", text="24 C"), "room: 24 C # wall\n"),
        ('room: "20 C"\n', Entry(key="room", how="set", text="24 C"), "room: 24 C\n"),
        ("room:\nnote: x\n", Entry(key="room", how="set", text="24 C"), "room: 24 C\nnote: x\n"),
        ("room: # ?\nnote: x\n", Entry(key="room", how="set", text="24 C"), "room: 24 C # ?\nnote: x\n"),
        ("note: Slow.\n", Entry(key="note", how="more", text="Flat"), "note: Slow. Flat\n"),
        ("note: slow\n", Entry(key="note", how="more", text="a: b # c"), 'note: "slow; a: b # c"\n'),
        (
            "note: |\n  One.\n  Two.\nnext: x\n",
            Entry(key="note", how="more", text="Three."),
            "note: |\n  One.\n  Two.\n  Three.\nnext: x\n",
        ),
        (
            "packs: bread flour\n",
            Entry(key="packs", how="add", text="raisins"),
            "packs: [bread flour, raisins]\n",
        ),
        (
            "packs:\n  - bread flour\n",
            Entry(key="packs", how="add", text="raisins"),
            "packs:\n  - bread flour\n  - raisins\n",
        ),
        (
            "day: 2026-11-08\n",
            Entry(key="times", how="add", text="rise 75 min, cold"),
            'day: 2026-11-08\ntimes: ["rise 75 min, cold"]\n',
        ),
    ],
)
def test_texts_are_set_and_lengthened(before: str, entry: Entry, after: str) -> None:
    assert entered(before, [entry]) == after


@pytest.mark.parametrize(
    "text",
    [
        "",
        "# nothing\n",
        "{recipe: loaf, day: 2026-11-08}\n",
        "added:\n  what: honey\n  amount: 3 g\n",
        "a: [\n",
        "- a\n",
    ],
)
def test_a_form_that_cannot_be_added_to_is_refused(text: str) -> None:
    assert entered(text, [FLOUR]) is None


def test_a_comment_inside_a_text_is_no_prompt() -> None:
    text = "note: |\n  # added: not a prompt\n  more\n"
    assert entered(text, [FLOUR]) == f"{text}added:\n  - {ITEM}\n"


def test_a_new_record_is_whole_and_has_a_free_name() -> None:
    from datetime import date

    text = record_text("loaf", date(2026, 11, 8), revision=2, item="flour: the [first]")
    assert values(text) == {"recipe": "loaf", "day": "2026-11-08", "revision": "2"}
    taken = {"bakes/2026-11-08-loaf.yaml", "bakes/2026-11-08-loaf-3.yaml"}
    path = record_path("loaf", date(2026, 11, 8), taken=taken, recipes={"loaf", "loaf-2"})
    assert path == "bakes/2026-11-08-loaf-4.yaml"


TEXTS = st.text(
    st.characters(codec="utf-8", exclude_categories=("Cc", "Cs", "Cn", "Co", "Zl", "Zp")), max_size=30
)
SAID = TEXTS.map(lambda text: " ".join(text.split())).filter(bool)
COMMENTS = st.sampled_from(("", " # mine", "   # äöü"))
ENDS = st.sampled_from(("\n", "\r\n"))
ENTRIES = st.one_of(
    st.tuples(st.sampled_from(("room", "weather", "dough", "baked")), SAID).map(
        lambda pair: Entry(key=pair[0], how="set", text=pair[1])
    ),
    st.tuples(st.sampled_from(("note", "next")), SAID).map(
        lambda pair: Entry(key=pair[0], how="more", text=pair[1])
    ),
    st.tuples(st.sampled_from(("packs", "times")), SAID).map(
        lambda pair: Entry(key=pair[0], how="add", text=pair[1])
    ),
    st.tuples(st.sampled_from(("added", "left")), SAID, SAID).map(
        lambda one: Entry(key=one[0], how="add", fields=(("what", one[1]), ("amount", one[2])))
    ),
)


@settings(max_examples=lots(150), deadline=None)
@given(entries=st.lists(ENTRIES, min_size=1, max_size=6), end=ENDS, comment=COMMENTS, bom=st.booleans())
def test_whatever_is_entered_reads_back_and_no_line_is_lost(
    entries: list[Entry], end: str, comment: str, bom: bool
) -> None:
    start = ("\ufeff" if bom else "") + end.join(
        [
            "recipe: loaf" + comment,
            "# kept",
            "added:",
            "  - {what: oats, amount: 3 g}" + comment,
            "",
            "# last",
            "",
        ]
    )
    text = entered(start, entries)
    assert text is not None
    for line in start.split(end):
        assert line in text.split(end)
    told = values(text)
    assert isinstance(told, dict)
    assert told["recipe"] == "loaf"
    for entry in entries:
        item = dict(entry.fields) or entry.text
        if entry.how == "add":
            assert item in told[entry.key]
        elif entry.how == "more":
            assert entry.text in told[entry.key]
    last = {entry.key: entry.text for entry in entries if entry.how == "set"}
    assert {key: told[key] for key in last} == last


@settings(max_examples=lots(200), deadline=None)
@given(text=SAID, flow=st.booleans())
def test_what_is_quoted_reads_back(text: str, flow: bool) -> None:
    typed = quoted(text, flow=flow)
    told = values(f"key: [{typed}]\n" if flow else f"key: {typed}\n")
    assert told == {"key": [text] if flow else text}


def test_two_notes_become_one() -> None:
    assert longer("slow", "flat") == "slow; flat"
    assert longer("Slow.", "Flat.") == "Slow. Flat."


OUT = Entry(key="added", how="drop", fields=FLOUR.fields)


@pytest.mark.parametrize(
    ("before", "after"),
    [
        (f"recipe: loaf\nadded:\n  - {ITEM}\n", "recipe: loaf\n"),
        (f"recipe: loaf\nadded:\n  - {ITEM}", "recipe: loaf"),
        (f"recipe: loaf\r\nadded:\r\n  - {ITEM}\r\nnote: x\r\n", "recipe: loaf\r\nnote: x\r\n"),
        (
            f"recipe: loaf\n# added: what went in\nadded:\n  - {ITEM}\n  - {{what: honey, amount: 3 g}} # mine\n",
            "recipe: loaf\n# added: what went in\nadded:\n  - {what: honey, amount: 3 g} # mine\n",
        ),
        (
            f"recipe: loaf\nadded:\n- {ITEM} # first\n- {ITEM}\n# b\nnote: x\n",
            f"recipe: loaf\nadded:\n- {ITEM} # first\n# b\nnote: x\n",
        ),
    ],
)
def test_an_addition_is_taken_back(before: str, after: str) -> None:
    assert entered(before, [OUT]) == after


@pytest.mark.parametrize(
    "text",
    [
        "recipe: loaf\n",
        "recipe: loaf\nadded: slowly\n",
        "recipe: loaf\nadded:\n  - {what: bread flour, amount: 10 g}\n",
        f"recipe: loaf\nadded: [{ITEM}]\n",
        f"recipe: loaf\nadded:\n  - {ITEM} # it was dry\n",
        f"recipe: loaf\nadded: # so far\n  - {ITEM}\n",
        f"recipe: loaf\nadded:\n  # at five\n  - {ITEM}\n",
    ],
)
def test_what_is_not_there_or_has_a_remark_beside_it_is_not_taken_back(text: str) -> None:
    assert entered(text, [OUT]) is None


def test_what_went_in_and_was_taken_back_leaves_no_trace() -> None:
    text = record_text("loaf", date(2026, 11, 8), revision=1, item="bread flour")
    there = entered(text, [FLOUR])
    assert there is not None
    assert there != text
    assert entered(there, [OUT]) == text
    twice = entered(there, [FLOUR])
    assert twice is not None
    assert entered(twice, [OUT]) == there
