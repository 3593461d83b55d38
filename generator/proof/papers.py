"""Printed sheets and pictures, each read back and held against its view."""

from bisect import bisect_right
from collections.abc import Iterator

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.diagnostics.span import whole_file
from generator.present.tag_views import TagView
from generator.present.views import RecipeView
from generator.proof.built_text import BuiltText, lines_of
from generator.proof.claim import DECLARATION, WORDS, Claim, claim
from generator.proof.compare import compare, quoted
from generator.proof.declared_claims import label_claims
from generator.proof.docket_claims import (
    card_times,
    caution_claims,
    correction_claims,
    docket_claims,
    fact_claims,
    head_claims,
    line_claims,
    oven_claims,
    picture_claims,
    revision_claims,
    sheet_times,
)
from generator.proof.expected import Expected
from generator.proof.method_claims import method_claims
from generator.proof.pdf_reader import read_pdf
from generator.proof.png_reader import read_png
from generator.proof.sheet_claims import (
    batch_claims,
    equipment_claims,
    sheet_claims,
    water_claims,
    yeast_claims,
)
from generator.proof.squeeze import find, letters_of
from generator.wording.speech import gettext, shown


def paper_faults(path: str, content: bytes, kind: str, view: RecipeView, expected: Expected) -> Diagnostics:
    """A card, a bench sheet or a formula sheet. ValueError: no PDF."""
    day = view.updated_day or view.published_day
    running = shown("Revision %(number)s", number=view.revision) + (f" · {day}" if day else "")
    text = read_pdf(path, content, running=running)
    claims = (*_head(view), *_CLAIMS[kind](view))
    return compare(text, claims, (expected.sayings(view),), remedy=expected.remedy)


def _head(view: RecipeView) -> Iterator[Claim]:
    yield from claim("the title", view.title, kind=WORDS, loose=True)
    yield from revision_claims(view)
    yield from head_claims(view)
    if view.finished_words:
        yield from claim("the finished weight", f"{gettext('Weight')} {view.finished_words}", loose=True)


def _card(view: RecipeView) -> Iterator[Claim]:
    yield from caution_claims(view.cautions)
    yield from docket_claims(view, percents=True)
    yield from fact_claims(view)
    yield from card_times(view)
    yield from method_claims(view)
    yield from oven_claims(view)
    yield from label_claims(view.label)
    yield from correction_claims(view)


def _bench(view: RecipeView) -> Iterator[Claim]:
    yield from claim("that the label is not finished", view.label.unfinished, kind=DECLARATION, loose=True)
    yield from caution_claims(view.cautions)
    yield from docket_claims(view)
    if view.sheet and view.sheet.water:
        yield from water_claims(view.sheet.water)
    yield from method_claims(view, when=True, machine=True)


def _formula(view: RecipeView) -> Iterator[Claim]:
    yield from claim("that the label is not finished", view.label.unfinished, kind=DECLARATION, loose=True)
    if view.sheet is None:
        return
    yield from sheet_claims(view.sheet)
    yield from sheet_times(view)
    yield from batch_claims(view.sheet)
    if view.sheet.yeast:
        yield from yeast_claims(view.sheet.yeast)
    if view.sheet.water:
        yield from water_claims(view.sheet.water)
    if view.sheet.equipment:
        yield from equipment_claims(view.sheet.equipment)


_CLAIMS = {"card": _card, "bench-sheet": _bench, "formula sheet": _formula}


def tag_faults(path: str, content: bytes, tag: TagView, expected: Expected) -> Diagnostics:
    """A sheet of tags: each of them says the whole declaration. ValueError: no PDF."""
    text = read_pdf(path, content, running="")
    claims = tuple(tag_claims(tag))
    found = compare(text, claims, (expected.sayings(tag),), remedy=expected.remedy)
    return found or _too_few(text, claims, expected.remedy)


def tag_claims(tag: TagView) -> Iterator[Claim]:
    view, net = tag.recipe, tag.net
    yield from claim("the title", view.title, kind=WORDS, loose=True)
    yield from label_claims(view.label, advice=False)
    yield from caution_claims(view.eater_cautions)
    yield from claim("the statement of the place", view.statement_of_place, kind=DECLARATION, loose=True)
    yield from claim("the packs", tag.packs, kind=WORDS, loose=True)
    if net.large:
        yield from claim("the net weight", f"{net.lead} {net.large} {net.beside}", loose=True)
    for lead, day in (("Baked on", tag.baked_on), ("Best before", tag.best_before)):
        yield from claim(
            f"the day of “{lead}”", f"{gettext(lead)} {day}" if day else "", kind=WORDS, loose=True
        )


def _too_few(text: BuiltText, claims: tuple[Claim, ...], remedy: str) -> Diagnostics:
    """What stands on some of the tags only. A sentence may be on both sides of each, so its number is a multiple."""
    tags = max(1, _count(text, letters_of(gettext("Best before"))))
    found = []
    for each in (each for each in claims if each.kind == DECLARATION):
        count = sum(_count(text, letters) for letters in each.spellings)
        if count % tags:
            message = f"{each.what} stands {count} times on {tags} tags: some do not say {quoted(each.says)}"
            found.append(Diagnostic(code="A003", message=message, span=whole_file(text.path), hint=remedy))
    return tuple(found)


def _count(text: BuiltText, letters: str) -> int:
    count, at = 0, find(text.squeezed, letters)
    while at >= 0:
        count, at = count + 1, find(text.squeezed, letters, at + len(letters))
    return count


def picture_faults(contents: dict[str, bytes], view: RecipeView, expected: Expected) -> Diagnostics:
    """The pictures to lay over a film, all together, by their record. ValueError: no picture."""
    lines: list[str] = []
    for path, content in contents.items():
        record = read_png(content)
        if record.drawn is None or not record.is_own:
            told = (
                "has no record of what it shows" if record.drawn is None else "is not the one that was drawn"
            )
            message = f"the picture {told}, so nobody can say whether it is right"
            return (Diagnostic(code="A007", message=message, span=whole_file(path), hint=expected.remedy),)
        lines.extend(record.drawn.split("\n"))
    text = lines_of(next(iter(contents)), lines)
    return compare(text, tuple(picture_claims(view)), (expected.sayings(view),), remedy=expected.remedy)


def book_faults(path: str, content: bytes, expected: Expected) -> Diagnostics:
    """A booklet that was printed by hand: the recipes in it that say otherwise today. ValueError: no PDF."""
    return _outdated(path, content, expected, what="the booklet", command="tinleaf book")


def card_sheet_faults(path: str, content: bytes, expected: Expected) -> Diagnostics:
    """Sheets of cards that were printed by hand. ValueError: no PDF."""
    return _outdated(path, content, expected, what="a card", command="tinleaf cards", in_pieces=True)


def _outdated(
    path: str, content: bytes, expected: Expected, *, what: str, command: str, in_pieces: bool = False
) -> Diagnostics:
    """`in_pieces`: the whole declaration stands there, and may go on on another side; a card may lie on its side."""
    text = read_pdf(path, content, running="", turns=(0, 90, 270) if in_pieces else (0,))
    found = []
    for view in expected.site.all_recipes:
        claims = tuple(each for part in view.parts for line in part.lines for each in line_claims(line))
        claims += tuple(label_claims(view.label, listed=in_pieces, advice=False))
        gone = [each for each in claims if not _is_said(text, each, in_pieces=in_pieces)]
        in_it = find(text.squeezed, letters_of(view.title)) >= 0 and 2 * len(gone) <= len(claims)
        if in_it and gone:
            message = f"{what} says otherwise of “{view.title}” than the recipe does now: {gone[0].what}"
            hint = f"Print it anew with `{command}`."
            found.append(Diagnostic(code="A009", message=message, span=whole_file(path), hint=hint))
    return tuple(found)


_PIECES = 3
_PIECE = 12
"""A list on a card goes on on at most so many sides, and with at least so many letters on each."""


def _is_said(text: BuiltText, each: Claim, *, in_pieces: bool) -> bool:
    if any(find(text.squeezed, one) >= 0 for one in each.spellings):
        return True
    broken = in_pieces and each.kind == DECLARATION
    return broken and any(_stands_in_pieces(text.squeezed.letters, one) for one in each.spellings)


def _stands_in_pieces(letters: str, wanted: str) -> bool:
    """Whether the words stand there in a few long pieces, each as much of them as stands together."""
    for _ in range(_PIECES):
        most = bisect_right(range(1, len(wanted) + 1), 0, key=lambda end: int(wanted[:end] not in letters))
        if most == len(wanted):
            return True
        # A piece that ends by chance with the same letters as its follower begins with is cut a little earlier.
        ends = (
            end for end in range(most, max(most - _PIECE, 0), -1) if wanted[end : end + _PIECE] in letters
        )
        end = next(ends, 0)
        if end < _PIECE or len(wanted) - end < _PIECE:
            return False
        wanted = wanted[end:]
    return False


def own_tags_faults(path: str, content: bytes, tag: TagView, *, command: str) -> Diagnostics:
    """Tags that were printed for people: whether they still say what is in the bake. ValueError: no PDF."""
    text = read_pdf(path, content, running="")
    wanted = label_claims(tag.recipe.label, advice=False)
    gone = [
        each for each in wanted if not any(letters_of(one) in text.squeezed.letters for one in (each.says,))
    ]
    if not gone:
        return ()
    message = f"the tags for people say otherwise than the recipe does now: {gone[0].what}"
    return (Diagnostic(code="A009", message=message, span=whole_file(path), hint=command),)
