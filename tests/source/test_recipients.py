"""Lists of names: what a spreadsheet saves is read, and every mistake has its line and column."""

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.source.recipients import MOST_PEOPLE, read_recipients


def people(text: str | bytes) -> list[tuple[str, str, str]]:
    data = text if isinstance(text, bytes) else text.encode()
    found, wrong, _ = read_recipients("names.csv", data)
    assert wrong == ()
    return [(each.to, each.sender, each.note) for each in found]


def told(text: str | bytes) -> list[str]:
    data = text if isinstance(text, bytes) else text.encode()
    _, wrong, _ = read_recipients("names.csv", data)
    return [f"{each.span.line}:{each.span.column} {each.code} {each.message}" for each in wrong]


@pytest.mark.parametrize("mark", [b"", b"\xef\xbb\xbf"])
@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize("sign", [",", ";"])
def test_marks_line_ends_and_separators_do_not_matter(mark: bytes, end: str, sign: str) -> None:
    rows = [["to", "from", "note"], ["Odalys", "Me", '"Eat; soon, ""now"""'], ["", "", ""], ["Åse", "", ""]]
    text = end.join(sign.join(row) for row in rows)
    assert people(mark + text.encode()) == [("Odalys", "Me", 'Eat; soon, "now"'), ("Åse", "", "")]


def test_columns_stand_in_any_order_and_capitals_do_not_matter() -> None:
    assert people("Note, TO\nhello, Ilka\n") == [("Ilka", "", "hello")]


def test_letters_in_two_pieces_are_put_together_and_lines_in_a_cell_joined() -> None:
    assert people('to\n"Zoe\u0308\nvan  Dyk"\n') == [("Zoë van Dyk", "", "")]


def test_a_quote_inside_a_plain_cell_is_itself() -> None:
    assert people('to,note\nBo "the baker" Ek,hi\n') == [('Bo "the baker" Ek', "", "hi")]


@pytest.mark.parametrize(
    ("text", "findings"),
    [
        ("", ["1:1 G008 this list is empty"]),
        ("to,from\n", ["1:1 G008 nobody stands on this list"]),
        ("name,from\nIlka,Me\n", ["1:1 G001 no column is called “to”", "1:1 G002 there is no column “name”"]),
        ("to,form\nIlka,Me\n", ["1:4 G002 there is no column “form”"]),
        ("to,to\nIlka,Me\n", ["1:4 G003 the column “to” is given twice"]),
        ("to,note\nIlka,hi,there\n", ["2:9 G004 this row has more cells than the heading"]),
        ('to\n"Ilka\n', ["2:1 G005 the quote that opens here never closes"]),
        ('to,note\n"Ilka" B,hi\n', ["2:7 G006 text stands after the closing quote"]),
        ("to,note\nIlka,hi\n  ,hello\n", ["3:3 G007 this row does not say whom the tag is for"]),
        ("\ufeffto,form\n", ["1:1 G008 nobody stands on this list", "1:4 G002 there is no column “form”"]),
        ("to\nIl\x07ka\n", ["2:3 S002 this control character U+0007 does not belong in a text"]),
        (
            "to\nIlka\u202e\n",
            ["2:5 S025 an invisible character stands here: U+202E (right-to-left override)"],
        ),
    ],
)
def test_each_mistake_stands_at_its_place(text: str, findings: list[str]) -> None:
    assert told(text) == findings


def test_what_is_not_utf8_is_told() -> None:
    assert told("to\nJosé\n".encode("latin-1")) == [
        "2:4 S001 this file is not UTF-8: byte 0xE9 is no character"
    ]


def test_too_long_a_list_is_told() -> None:
    text = "to\n" + "Ilka\n" * (MOST_PEOPLE + 1)
    assert told(text) == [f"{MOST_PEOPLE + 2}:1 G008 this list is too long"]


WORDS = st.text(
    st.characters(exclude_categories=["Cc", "Cs", "Co", "Cn", "Cf", "Zl", "Zp"], exclude_characters="\ufeff"),
    min_size=1,
    max_size=20,
).map(lambda text: " ".join(text.split()) or "x")


@given(st.lists(st.tuples(WORDS, WORDS), min_size=1, max_size=8), st.sampled_from([",", ";"]))
def test_what_a_spreadsheet_writes_is_read_back(rows: list[tuple[str, str]], sign: str) -> None:
    import unicodedata

    written = io.StringIO()
    writer = csv.writer(written, delimiter=sign, quoting=csv.QUOTE_ALL)
    writer.writerow(["to", "note"])
    writer.writerows(rows)
    composed = [tuple(" ".join(unicodedata.normalize("NFC", each).split()) for each in row) for row in rows]
    assert [(to, note) for to, _, note in people(written.getvalue())] == composed


@given(st.binary(max_size=300))
def test_no_bytes_raise(data: bytes) -> None:
    read_recipients("names.csv", data)
