"""Where the maker's other words still state the amount that was corrected."""

from collections.abc import Iterator

from generator.amend.answer import Former, Worked
from generator.amend.lines import full_name
from generator.amend.plain_text import notes_of_lines, spoken_keys, stated_in_body, stated_in_keys, told
from generator.amend.standing import PANTRY, path_of
from generator.catalogue.lookup import fold
from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.pipeline import CheckResult
from generator.source.document import Document, Mapping, Node
from generator.source.read import read_document, read_mapping


def still_said(after: CheckResult, recipe: str, worked: Worked) -> Diagnostics:
    """In the recipe's own text, in posts that name it, and in the notes of the packs that the line is made of."""
    found: list[Diagnostic] = []
    document, _ = read_document(path_of(recipe), after.texts[path_of(recipe)].encode(), "recipe")
    if document is not None:
        found += _in_page(after, document, worked.former)
    for article in after.articles:
        if recipe in {named.name for named in article.bakes}:
            post, _ = read_document(article.path, after.texts[article.path].encode(), "journal")
            found += _in_page(after, post, worked.former) if post is not None else ()
    found += _in_pantry(after, recipe, worked)
    return told(found)


def _in_page(after: CheckResult, page: Document, former: tuple[Former, ...]) -> Iterator[Diagnostic]:
    spoons, start = after.shelf.spoons, len(page.text) - len(page.markdown)
    yield from stated_in_body(page.path, page.text, start, former, spoons=spoons)
    nodes = (*spoken_keys(page.front), *notes_of_lines(page))
    yield from stated_in_keys(page.path, page.text, nodes, former, spoons=spoons)


def _in_pantry(after: CheckResult, recipe: str, worked: Worked) -> Iterator[Diagnostic]:
    lines = (each for each in after.setting.book[recipe].lines if full_name(each) == worked.what)
    packs = {fold(pack.name) for line in lines if line.ware for pack in line.ware.packs}
    text = after.texts.get(PANTRY, "")
    pantry = read_mapping(PANTRY, text.encode())[0] if packs and text else None
    rows = (row for key, row in pantry.entries if fold(key.value) in packs) if pantry else ()
    notes: list[Node] = [
        note for row in rows if isinstance(row, Mapping) and (note := row.get("note")) is not None
    ]
    yield from stated_in_keys(PANTRY, text, notes, worked.former, spoons=after.shelf.spoons)
