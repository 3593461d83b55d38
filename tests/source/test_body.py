"""A recipe's text becomes ways, steps, cautions and chapters, each reference with its columns."""

from hypothesis import given
from hypothesis import strategies as st

from generator.diagnostics.diagnostic import Diagnostics
from generator.diagnostics.span import Span
from generator.source.body import read_body
from generator.source.document import Aside, Body, Passage, Step, mark
from generator.source.lines import Places
from generator.source.references import Line, read_passage

BODY = """Intro with {water}.

And more.

## Method: By hand
First this.
1. Mix {water}, the {bread
   flour: half} and \\{salt}.

   Caution: the bowl is hot.

   - a sub-item {5 min}
2. Rest.

CAUTION: mind {240 F} syrup.
It splutters.

1. Again.
7. And again.
### Bake
3) Bake.
## Method
- Cool {1 h}
- Cut

| a | b |
|---|---|
| {2 min} | c |

<!-- for me: {nothing} -->
## Notes ##
### Keeping
Text.

Questions
---------
"""


def _read(text: str) -> tuple[Body, Diagnostics]:
    return read_body(Places("recipes/a.md", text), 0)


def _told(block: Step | Aside) -> tuple[object, str]:
    return (block.number if isinstance(block, Step) else block.kind, block.passage.markdown)


def test_ways_sections_and_steps() -> None:
    body, found = _read(BODY)
    assert found == ()
    assert body.intro.markdown == f"Intro with {mark(0)}.\n\nAnd more."
    assert [method.name for method in body.methods] == ["By hand", ""]
    hand, common = body.methods
    assert [section.title for section in hand.sections] == ["", "Bake"]
    assert [_told(block) for block in hand.sections[0].blocks] == [
        ("text", "First this."),
        (1, f"Mix {mark(0)}, the {mark(1)} and {{salt}}.\n\n\n- a sub-item {mark(2)}"),
        ("caution", "the bowl is hot."),
        (2, "Rest."),
        ("caution", f"mind {mark(0)} syrup.\nIt splutters."),
        (1, "Again."),
        (2, "And again."),
    ]
    assert [_told(block) for block in hand.sections[1].blocks] == [(3, "Bake.")]
    assert [_told(block) for block in common.sections[0].blocks] == [
        ("text", f"- Cool {mark(0)}\n- Cut"),
        ("text", f"| a | b |\n|---|---|\n| {mark(0)} | c |"),
    ]


def test_other_headings_are_chapters_with_their_text() -> None:
    body, _ = _read(BODY)
    assert [(chapter.title, chapter.markdown) for chapter in body.chapters] == [
        ("Notes", "### Keeping\nText."),
        ("Questions", ""),
    ]


def test_references_know_their_text_and_place() -> None:
    body, _ = _read(BODY)
    step = body.methods[0].sections[0].blocks[1]
    assert [(each.text, each.span) for each in step.passage.references] == [
        ("water", Span(path="recipes/a.md", line=7, column=8, end_line=7, end_column=15)),
        ("bread flour: half", Span(path="recipes/a.md", line=7, column=21, end_line=8, end_column=16)),
        ("5 min", Span(path="recipes/a.md", line=12, column=17, end_line=12, end_column=24)),
    ]


def test_cautions_in_bold_and_whole_steps_that_are_cautions() -> None:
    body, found = _read("## Method\n1. **Caution:** hot.\n2. Bake.\n\n**Caution**: still hot.\n")
    assert found == ()
    assert [_told(block) for block in body.methods[0].sections[0].blocks] == [
        ("caution", "hot."),
        (1, "Bake."),
        ("caution", "still hot."),
    ]


def test_a_caution_that_would_lose_its_box_is_told() -> None:
    _, found = _read("## Method\n- Caution: hot.\n\n1. Bake.\n   **Caution: hot.**\n\n> Caution: hot.\n")
    assert [(each.code, each.span.line, each.span.column) for each in found] == [
        ("S045", 2, 3),
        ("S045", 5, 6),
        ("S045", 7, 3),
    ]


def test_a_body_without_text_has_an_empty_introduction() -> None:
    body, found = read_body(Places("recipes/a.md", "---\na: b\n---\n"), 13)
    assert (body.intro.markdown, body.methods, body.chapters, found) == ("", (), (), ())


def _passage(lines: list[str], column: int) -> Passage:
    numbered = (Line(text=text, line=row + 1, column=column) for row, text in enumerate(lines))
    at = Span(path="a", line=1, column=1, end_line=1, end_column=2)
    return read_passage("a", numbered, at=at)[0]


@given(st.lists(st.text(alphabet="ab {}\\é", max_size=12), min_size=1, max_size=5), st.integers(1, 9))
def test_every_character_of_a_passage_is_found_again_in_the_file(lines: list[str], column: int) -> None:
    passage = _passage(lines, column)
    for index, character in enumerate(passage.markdown):
        span = passage.span_at(index, index + 1)
        row = lines[span.line - 1] + "\n"
        there = row[span.column - column : span.end_column - column]
        if character not in "\ue000\ue001" and not character.isdigit():
            assert there in (character, f"\\{character}")
    for reference in passage.references:
        assert lines[reference.span.line - 1][reference.span.column - column] == "{"
        assert lines[reference.span.end_line - 1][reference.span.end_column - column - 1] == "}"


def test_a_stretch_over_a_reference_and_a_line_end_has_one_place() -> None:
    passage = _passage(["Mix {water} and", "salt now"], 4)
    start, end = passage.markdown.index("Mix"), passage.markdown.index(" now")
    assert passage.span_at(start, end) == Span(path="a", line=1, column=4, end_line=2, end_column=8)
