"""The pictures with words, read back by their records: to share, tall, and the cards before chapters."""

from collections.abc import Iterator

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.diagnostics.span import whole_file
from generator.present.posters import chapter_cards, page_posters, poster_view
from generator.present.views import RecipeView
from generator.proof.built_text import lines_of
from generator.proof.claim import WORDS, Claim, claim
from generator.proof.compare import compare
from generator.proof.context import Sayings
from generator.proof.expected import Expected
from generator.proof.jpeg_reader import read_jpeg
from generator.proof.png_reader import read_png

_SURE = 60
"""A name of so many letters is never cut, whatever stands beside it."""


def poster_faults(path: str, content: bytes, view: RecipeView, expected: Expected) -> Diagnostics:
    """What a picture says that the recipe does not, or ought to say. ValueError: no picture."""
    cards = tuple(each for each in chapter_cards(view) if path.endswith(f"/{each.file}"))
    known = (expected.sayings(view), Sayings(views=cards))
    return _faults(path, content, tuple(_claims(path, view)), known, expected.remedy)


def page_poster_faults(path: str, content: bytes, expected: Expected) -> Diagnostics:
    """The same for the picture of a page that is no bake's. ValueError: no picture."""
    poster = dict(page_posters(expected.site))[path.removeprefix("site/")]
    claims = claim("the title", poster.title, kind=WORDS, loose=True) if len(poster.title) <= _SURE else ()
    return _faults(path, content, tuple(claims), (expected.lists,), expected.remedy)


def _faults(
    path: str, content: bytes, claims: tuple[Claim, ...], known: tuple[Sayings, ...], remedy: str
) -> Diagnostics:
    record = read_jpeg(content) if path.endswith(".jpg") else read_png(content)
    if record.drawn is None or not record.is_own:
        told = "has no record of what it shows" if record.drawn is None else "is not the one that was drawn"
        message = f"the picture {told}, so nobody can say whether it is right"
        return (Diagnostic(code="A007", message=message, span=whole_file(path), hint=remedy),)
    text = lines_of(path, record.drawn.split("\n"))
    return compare(text, claims, known, remedy=remedy)


def _claims(path: str, view: RecipeView) -> Iterator[Claim]:
    if len(view.title) <= _SURE:
        yield from claim("the title", view.title, kind=WORDS, loose=True)
    for fact in poster_view(view).facts:
        yield from claim(f"“{fact.label}”", f"{fact.label} {fact.words}", needed=False)
    for card in chapter_cards(view):
        if path.endswith(f"/{card.file}"):
            yield from claim("when the chapter begins", f"{card.stamp} {card.count}", kind=WORDS)
            if len(card.title) <= _SURE:
                yield from claim("the chapter", card.title, kind=WORDS, loose=True)
