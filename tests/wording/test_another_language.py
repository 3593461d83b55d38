"""Another language is only a catalogue file: with one, no word of ours is left in English anywhere."""

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from generator.asked.booklet import Wanted, bind
from generator.asked.card_sheets import lay_cards
from generator.build.cache import Cache
from generator.pipeline import check_folder, make_folder
from generator.publication.making import How
from generator.wording import speech
from tests.making.kitchen import PAPER
from tests.wording.kitchens import OTHER, catalogue, escaped, lay, makers_words, marked, write_catalogue
from tests.wording.outputs import told_in, told_under

DAY = date(2026, 11, 25)
SLOW = frozenset({*PAPER, "pictures"})


@pytest.fixture(scope="module", autouse=True)
def other(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """The one file that makes another language of it."""
    folder = tmp_path_factory.mktemp("catalogues")
    write_catalogue(folder)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(speech, "CATALOGUES", folder)
        speech.voice_of.cache_clear()
        yield
    speech.voice_of.cache_clear()


def _left(content: Path, output: Path, without: frozenset[str]) -> list[str]:
    made = make_folder(content, output=output, day=DAY, how=How(cache=Cache(root=None), without=without))
    assert made.report is not None, [each.message for each in (*made.diagnostics, *made.unproven)]
    own = makers_words(content)
    return list(escaped(told_under(output), lambda word: word not in own))


def test_no_word_of_ours_is_left_on_pages_and_in_texts(tmp_path: Path) -> None:
    assert _left(lay(tmp_path, OTHER), tmp_path / "out", SLOW) == []
    page = (tmp_path / "out/site/recipes/kastenbrot/index.html").read_text(encoding="utf-8")
    assert f"{marked('Weigh out')}" in page
    assert "Σεπτεμβρίου" in page, "days are those of CLDR"


def test_no_word_of_ours_is_left_on_paper_and_pictures(tmp_path: Path) -> None:
    content = lay(tmp_path, OTHER, only="nachtvorteig")
    assert _left(content, tmp_path / "out", frozenset({"pages", "lists", "pictures"})) == []


@pytest.mark.long
def test_no_word_of_ours_is_left_anywhere(tmp_path: Path) -> None:
    content = lay(tmp_path, OTHER)
    assert _left(content, tmp_path / "out", frozenset()) == []


def test_no_word_of_ours_is_left_in_books_and_on_sheets_of_cards(tmp_path: Path) -> None:
    content = lay(tmp_path, OTHER)
    result, own = check_folder(content, day=DAY), makers_words(content)
    names = ("zitronenkuchen",)
    books = {each: bind(result, names, Wanted(epub=each == "epub"), subject="") for each in ("pdf", "epub")}
    texts = [(f"book.{each}", text) for each, book in books.items() for text in told_in(each, book.content)]
    sheets = lay_cards(result, names[:1], subject="")
    texts += [("cards.pdf", text) for text in told_in("pdf", sheets.content)]
    assert list(escaped(texts, lambda word: word not in own)) == []


def test_what_is_not_said_is_found(tmp_path: Path) -> None:
    own = makers_words(lay(tmp_path, OTHER))
    texts = [
        ("a.html", "Κρωστε von Tilda"),
        ("b.html", "Weigh out"),
        ("c.html", "Karte A6 Colorado State University Extension"),
    ]
    found = list(escaped(texts, lambda word: word not in own))
    assert found[0] == "b.html: “Weigh” in “Weigh out”"
    assert {each.partition(":")[0] for each in found} == {"b.html", "c.html"}, found


def test_the_catalogue_has_as_many_forms_as_its_language() -> None:
    assert catalogue().num_plurals == 2
