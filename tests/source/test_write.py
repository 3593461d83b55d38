"""A maker's file keeps every byte that was not named."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.diagnostics.span import Span
from generator.source.lines import Places
from generator.source.write import replace_spans


def _span(line: int, column: int, end: int) -> Span:
    return Span(path="", line=line, column=column, end_line=line, end_column=end)


def test_several_places_at_once_with_byte_order_mark_and_line_ends_kept() -> None:
    text = "\ufefftitle: A\r\nlead: B\r\n# end\n"
    changes = [(_span(2, 7, 8), "Bee"), (_span(1, 8, 9), "Ay")]
    assert replace_spans(text, changes) == "\ufefftitle: Ay\r\nlead: Bee\r\n# end\n"


def test_a_place_without_width_is_where_to_insert() -> None:
    assert replace_spans("a\nb\n", [(_span(2, 1, 1), "new\n")]) == "a\nnew\nb\n"


@pytest.mark.parametrize("span", [_span(9, 1, 2), _span(1, 5, 6), _span(1, 2, 1)])
def test_a_place_outside_the_text_is_our_own_mistake(span: Span) -> None:
    with pytest.raises(ValueError, match=r"line|column|overlap"):
        replace_spans("abc\n", [(span, "x")])


def test_places_that_overlap_are_our_own_mistake() -> None:
    with pytest.raises(ValueError, match="overlap"):
        replace_spans("abcdef", [(_span(1, 1, 4), "x"), (_span(1, 3, 5), "y")])


@given(st.text(alphabet="a\n\r\ufeffé ", max_size=30), st.integers(0, 30), st.integers(1, 5))
def test_a_place_replaced_by_its_own_text_changes_nothing(text: str, start: int, width: int) -> None:
    places = Places("", text)
    first = 1 if text.startswith("\ufeff") else 0
    start = min(max(start, first), len(text))
    end = min(start + width, len(text))
    if "\r" in text[start:end] or "\n" in text[start:end] or start == end:
        return
    span = places.span(start, end)
    assert replace_spans(text, [(span, text[start:end])]) == text
    assert replace_spans(text, [(span, "")]) == text[:start] + text[end:]
