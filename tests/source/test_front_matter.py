"""A scalar is the text that was typed, at the place where it was typed."""

from generator.diagnostics.span import Span
from generator.source.document import Mapping, Node, Sequence, Text
from generator.source.read import read_mapping


def _keys(text: str) -> Mapping:
    keys, found = read_mapping("site.yaml", text.encode())
    assert found == ()
    assert keys is not None
    return keys


def _text(node: Node | None) -> Text:
    assert isinstance(node, Text)
    return node


def _on(line: int, column: int, end: int) -> Span:
    return Span(path="site.yaml", line=line, column=column, end_line=line, end_column=end)


def test_nothing_is_resolved() -> None:
    keys = _keys("time: 12:30\ncounts: no\nday: 2026-09-12\nmany: 1_000\nnone: ~\nhex: 0x1F\n")
    assert [_text(value).value for _, value in keys.entries] == [
        "12:30",
        "no",
        "2026-09-12",
        "1_000",
        "~",
        "0x1F",
    ]


def test_places_count_characters_whatever_the_line_ends() -> None:
    for end in ("\n", "\r\n", "\r"):
        keys = _keys(end.join(("é: 𝟙 crème", "b:", "  - c", "")))
        assert _text(keys.get("é")).span == _on(1, 4, 11)
        items = keys.get("b")
        assert isinstance(items, Sequence)
        assert items.items[0].span == _on(3, 5, 6)


def test_a_place_takes_in_the_quotes_and_at_points_behind_them() -> None:
    text = _text(_keys('title: "Plain loaf"\n').get("title"))
    assert (text.quoted, text.span, text.at(0, 5)) == (True, _on(1, 8, 20), _on(1, 9, 14))


def test_an_escape_makes_a_text_that_cannot_be_pointed_into() -> None:
    text = _text(_keys('title: "a\\tb"\n').get("title"))
    assert (text.value, text.inset, text.at(0, 1)) == ("a\tb", None, text.span)


def test_texts_of_several_lines_have_the_place_of_all_their_lines_and_no_more() -> None:
    keys = _keys("a: |\n  one\n  two\n\nb: >\n  one\n  two\nc: one\n  two\n")
    places = {key.value: (_text(value).value, value.span) for key, value in keys.entries}
    assert places["a"] == (
        "one\ntwo\n",
        Span(path="site.yaml", line=1, column=4, end_line=3, end_column=6),
    )
    assert places["b"] == ("one two\n", Span(path="site.yaml", line=5, column=4, end_line=7, end_column=6))
    assert places["c"] == ("one two", Span(path="site.yaml", line=8, column=4, end_line=9, end_column=6))


def test_a_key_can_be_pointed_at_and_a_blank_value_is_a_blank_text() -> None:
    keys = _keys("title:\nvideos:\n  - chapters:\n      0:00: What we bake\n")
    assert keys.keys() == ("title", "videos")
    assert _text(keys.get("title")).value == ""
    key = keys.key("videos")
    assert key is not None
    assert key.span == _on(2, 1, 7)
    assert (keys.get("lead"), keys.key("lead")) == (None, None)


def test_a_file_with_nothing_but_remarks_has_no_keys() -> None:
    assert _keys("# later\n").entries == ()
    assert _keys("").entries == ()


def test_the_places_of_lists_and_mappings_end_with_their_last_item() -> None:
    keys = _keys("a:\n  - b\n  - {c: d}\n\n\ne: f\n")
    items = keys.get("a")
    assert items is not None
    assert items.span == Span(path="site.yaml", line=2, column=3, end_line=3, end_column=11)
