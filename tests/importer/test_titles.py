"""Which line of an old text is its title: never a menu, a greeting, the head of a mail or a word of a form."""

import pytest

from generator.importer.bring import bring
from generator.importer.files.sources import Refused, sources_of
from generator.importer.model import Brought
from tests.importer.kitchen import kitchen

LIST = "\n\nIngredients\n\n500 g flour\n2 eggs\n1 tsp salt\n\nMethod\n\n1. Mix everything well.\n"
PAGE = "<h2>Ingredients</h2><ul><li>500 g flour</li><li>2 eggs</li></ul><h2>Method</h2><ol><li>Mix it all.</li></ol>"


def bringing(text: str, name: str) -> Brought:
    found = sources_of(name, text.encode())
    assert not isinstance(found, Refused)
    brought = bring(found[0], kitchen())
    assert brought is not None
    return brought


TEXTS = {
    "a mail's head": (
        "From: Wren <wren@post.example>\nTo: Ida\nSubject: Fwd: Re: Plum braid\n\nHello Ida!",
        "mail.txt",
    ),
    "a greeting": ("Hello everyone!\n\nPlum braid", "a.txt"),
    "a word of a card": ("(side A)\nPlum braid", "card.txt"),
    "a menu": ("Home\nAll recipes\nAbout me\n\nPlum braid\n\nWe eat it on Sundays.", "plum-braid.txt"),
    "a field": ("Nr ........ 12\nName ...... Plum braid", "a.txt"),
    "a message": (
        "[2024-03-02 18:02] Ida: which one was it?\n[2024-03-02 18:05] Wren: *Plum braid*",
        "chat.txt",
    ),
    "capitals between rules": (
        "THE KITCHEN PAPER\nNo. 12\n\n-----------\nPLUM BRAID\n-----------",
        "paper.txt",
    ),
    "first words of a line": ("Plum braid! We eat it on Sundays, still warm.", "plum-braid.txt"),
    "words before a colon": ("This week I am baking: Plum braid", "week.txt"),
    "a name that is no bake": ("Plum braid\nby Wren", "2024-03-02.txt"),
}


@pytest.mark.parametrize(("text", "name"), TEXTS.values(), ids=TEXTS)
def test_the_line_that_is_worth_most_is_the_title(text: str, name: str) -> None:
    brought = bringing(text + LIST, name)
    assert brought.title.casefold() == "plum braid"
    assert len(brought.lines) == 3
    for word in ("Wren", "Ida", "everyone", "Sundays", "which"):
        assert (word in text) <= (word in brought.text)


PAGES = {
    "a menu over it": "<title>Plum braid | Oven hours</title><li>Home</li><li>Archive</li><h1>Plum braid</h1>",
    "the site's name over it": "<title>Plum braid – Oven hours</title><h1>Oven hours</h1><h2>Plum braid</h2>",
    "the page's title alone": "<title>Plum braid – Oven hours</title><p>We eat it on Sundays.</p>",
}


@pytest.mark.parametrize("head", PAGES.values(), ids=PAGES)
def test_the_title_of_a_page_is_the_bake_and_not_the_site(head: str) -> None:
    brought = bringing(f"<html><head>{head}{PAGE}</html>", "page.html")
    assert brought.title == "Plum braid"
    assert ("Oven hours" in head.partition("</title>")[2]) <= ("Oven hours" in brought.text)


@pytest.mark.parametrize("text", ["Dear Ida,\n\nhere it is, as promised.", "Yesterday\nTomorrow"])
def test_a_title_that_is_not_clear_is_asked_about(text: str) -> None:
    brought = bringing(text + LIST, "scan-0012.txt")
    assert [each.code for each in brought.doubts] == ["I010"]


def test_a_clear_title_is_not_asked_about() -> None:
    assert bringing("Plum braid\n\nWe eat it on Sundays." + LIST, "a.txt").doubts == ()
