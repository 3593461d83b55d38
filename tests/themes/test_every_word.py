"""Every word of ours that a theme shows can be said in another language, and is said in German."""

import re
from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest
from babel.messages.pofile import read_po
from jinja2.ext import extract_from_ast

from generator.render.worded import WORDED, messages_of
from generator.wording.speech import CATALOGUES
from tests.themes.words import (
    ENGINE,
    SAYS,
    bare_words,
    imported,
    in_script,
    in_style,
    in_template,
    said_too_early,
)

THEMES = Path(__file__).resolve().parents[2] / "themes"
# The maker's own desk in a browser is for the maker, like the command line: in English.
_FOR_THE_MAKER = frozenset({"view"})
_TEMPLATES = frozenset({".html", ".xhtml", ".opf"})
FILES = tuple(
    path
    for path in sorted(THEMES.rglob("*"))
    if path.suffix in _TEMPLATES | {".js", ".css"} and path.relative_to(THEMES).parts[1] not in _FOR_THE_MAKER
)
_NAMES = [path.relative_to(THEMES).as_posix() for path in FILES]

# No words, though they have letters: names of elements, widths of pictures (CSS), what a script tells the browser.
_NO_WORD = re.compile(r"ol|ul|\(min-width: .*|use strict|\.allergens .*")
_STATES = frozenset({"contains", "may contain", "to be read", "unknown", "not stated"})
# Keys by which a template finds or passes something on: classes, states, kinds of offers, fields of a form; in the
# package file the words of schema.org.
_KEYS: Mapping[str, frozenset[str]] = {
    "book/bake.html": frozenset({"section", "title"}),
    "book/book.html": frozenset({" left", " tight"}),
    "book/lists.html": frozenset({"page", "to"}),
    "book/package.opf": frozenset({"textual", "visual", "none"}),
    "desk/people.html": _STATES,
    "paper/card-labels.html": frozenset({" first"}),
    "paper/card-sheet.html": frozenset({" level", "width", "height"}),
    "site/allergens.html": _STATES,
    "site/docket.html": frozenset({"times", "tin", "weight", "volume", "f", "c"}),
    "site/search.html": frozenset({"kind", "occasion", "time", "work", "method", "tin"}),
}


@pytest.mark.parametrize("path", FILES, ids=_NAMES)
def test_no_word_of_ours_stands_in_a_theme_as_it_is(path: Path) -> None:
    keys = _KEYS.get("/".join(path.relative_to(THEMES).parts[1:]), frozenset())
    assert [each for each in bare_words(path) if each not in keys and not _NO_WORD.fullmatch(each)] == []


_SAID = re.compile(r'{{ _\("([^"]*)"\) }}')


@pytest.mark.parametrize("path", FILES, ids=_NAMES)
def test_each_word_would_be_found_if_it_stood_there_bare(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    said = _SAID.findall(text) if path.suffix in _TEMPLATES else list(messages_of(text))
    find = {".js": in_script, ".css": in_style}.get(path.suffix, in_template)
    bare = _SAID.sub(r"\1", text) if path.suffix in _TEMPLATES else WORDED.sub(r"\1", text)
    found = " | ".join(find(bare))
    assert [each for each in said if " ".join(each.split()) not in found] == []


@pytest.mark.parametrize(
    ("find", "text", "words"),
    [
        (in_template, "<p>Weigh {{ it }} out</p>", ["Weigh out"]),
        (in_template, "<p>{{ left or 'nothing' }}</p>", ["nothing"]),
        (in_template, "{{ 'In order' if ordered else _('By kind') }}", ["In order"]),
        (in_template, "{% set heads = ['Makes', _('Tin')] %}", ["Makes"]),
        (in_template, "{{ blank('Room', 41) }}", ["Room"]),
        (
            in_template,
            '<nav aria-label="Ways">{% if a %}<b>or</b>{% endif %}</nav>',
            ["aria-label=Ways", "or"],
        ),
        (in_template, "<p>{% trans a=b %}Said with {{ a }}{% endtrans %}</p><p>Bare</p>", ["Bare"]),
        (
            in_template,
            "<style>p { color: red }</style><a href=\"{{ to('about/') }}\">{{ _('About') }}</a>",
            [],
        ),
        (in_script, 'b.textContent = "all"; key === "ArrowLeft"; a.append(_("Said so"));', ["all"]),
        (in_script, "c.textContent = `All ${n} bakes`; // A remark of ours", ["All ${n} bakes"]),
        (
            in_style,
            'a { content: "side " counter(page); } b { content: _("side {page}") "\\2192"; }',
            ["side "],
        ),
    ],
)
def test_words_that_stand_bare_are_found(find: object, text: str, words: list[str]) -> None:
    assert callable(find)
    assert list(find(text)) == words


def test_a_template_that_others_import_says_nothing_outside_its_macros() -> None:
    early = []
    for path in (each for each in FILES if each.suffix in _TEMPLATES):
        for name in imported(path.read_text(encoding="utf-8")):
            other = path.parent / name
            if other.is_file():
                early += [f"{name} {each}" for each in said_too_early(other.read_text(encoding="utf-8"))]
    assert early == []
    assert list(
        said_too_early("{% set word = _('Early') %}{% macro m() %}{{ _('Late') }}{% endmacro %}")
    ) == ["line 1"]


Key = tuple[str, str]


def _messages(path: Path) -> Iterator[Key]:
    """Context and text of all that one file says."""
    text = path.read_text(encoding="utf-8")
    if path.suffix not in _TEMPLATES:
        yield from (("", each) for each in messages_of(text))
        return
    for _line, name, found in extract_from_ast(ENGINE.parse(text), tuple(SAYS), babel_style=True):
        words = tuple(each for each in (found if isinstance(found, tuple) else (found,)) if each)
        # What stands in a variable is a word of a view, which the code that made it has to offer.
        if words:
            yield (words[0], words[1]) if "pgettext" in name else ("", words[0])


def _german() -> Mapping[Key, str]:
    with (CATALOGUES / "de.po").open("rb") as file:
        found = read_po(file, abort_invalid=True)
    return {
        (each.context or "", each.id): str(each.string)
        for each in found
        if isinstance(each.id, str) and each.id
    }


# A place that is filled, a tag of HTML, a sign that would end a text of HTML or of a script.
_HELD = re.compile(r"%\(\w+\)s|\{\w+\}|<[^>]*>|[\"\\&<>]")


def test_every_word_of_a_theme_is_said_in_german_with_the_same_places_and_tags() -> None:
    german = _german()
    asked = {key for path in FILES for key in _messages(path)}
    assert len(asked) > 250
    assert sorted(asked - german.keys()) == []
    assert [key for key in sorted(asked) if not german[key].strip()] == []
    assert [key for key in sorted(asked) if _held(key[1]) != _held(german[key])] == []
    # A full stop or a colon at the end is part of how the words stand on the page.
    assert [key for key in sorted(asked) if (key[1][-1] in ".:") != (german[key][-1] in ".:")] == []


def _held(text: str) -> list[str]:
    return sorted(_HELD.findall(text))
