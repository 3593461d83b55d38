"""A kitchen for old texts: the catalogue, an empty pantry, no recipes."""

from functools import cache

from generator.asked.incoming import proof
from generator.formula.shelf import Shelf
from generator.importer.model import Kitchen
from generator.render.print_fonts import no_letters
from tests.formula.kitchen import shelf


@cache
def stock() -> Shelf:
    return shelf()


@cache
def kitchen() -> Kitchen:
    on = stock()
    return Kitchen(
        shelf=on,
        book={},
        kinds=frozenset({"bread", "cake"}),
        proof=lambda name, text: proof(name, text, shelf=on),
        unprintable=no_letters,
    )
