"""An item that the shelf does not know as it stands, settled by moving words that are no part of its name.

Each way is tried in its order, and only one that ends in a name the shelf knows is taken: never a nearest name, and
no word goes. What stays unknown stays as it was written, and is asked about.
"""

import re
from collections.abc import Callable, Iterator

from generator.formula.model import Written
from generator.formula.shelf import Shelf
from generator.importer.line.known import known, without_cuts
from generator.importer.line.surface import percent_before, percent_behind
from generator.importer.line.tidy import SIGNS
from generator.importer.line.work import written_of
from generator.measure.quantity import read_quantity

_PURPOSE = re.compile(
    r"\s+(?=(?:for|to|at|plus|cut|that|from|until|weighed|straight|as|left|about|into|in|per|so)\s)", re.I
)
_MORE = re.compile(
    r"^(?:plus\s+)?(?P<how>extra|more|additional|some|a little|a bit of)\s+(?:of\s+)?(?P<name>.+)$", re.I
)
_PART_OF = re.compile(
    r"^(?P<part>whites?|yolks?)\s+(?:of|from)\s+(?P<many>\d+|one|two|three|four|five|six)\s+(?:(?P<size>large|medium|small)\s+)?eggs?\b",
    re.I,
)
_TAKEN = re.compile(r"^(?P<part>seeds|flesh|leaves|pulp|needles)\s+(?:of|from)\s+(?P<rest>.+)$", re.I)
_AND = re.compile(r"\s*,?\s+(?:\+|plus|and|&|\+\s*also|as well as)\s+(?=\d|an?\s|one\s)", re.I)
_YOLK = re.compile(r"\b(?<!egg )(yolks?|whites?)\b", re.I)


def settled(text: str, shelf: Shelf) -> str:
    """The line with an item that is known, or as it was."""
    written = written_of(text, shelf)
    if not written.item or known(written.item, shelf):
        return text
    for way in _WAYS:
        for other in way(text, written, shelf):
            again = written_of(other, shelf)
            if known(again.item, shelf):
                return other
    return text


def and_another(text: str, shelf: Shelf) -> tuple[str, ...]:
    """`1 egg + 1 yolk` is two lines; `1 tbsp oil, plus 1 tsp for the tin` is one."""
    written = written_of(text, shelf)
    if known(written.item, shelf) and not _AND.search(text):
        return ()
    for found in _AND.finditer(text):
        left, right = text[: found.start()], text[found.end() :]
        if "egg" in left.casefold():
            right = _YOLK.sub(lambda each: f"egg {each[1].lower()}", right)
        ours, theirs = written_of(left, shelf), written_of(right, shelf)
        if _whole(ours, shelf) and _whole(theirs, shelf):
            return left, right
    return ()


def _whole(written: Written, shelf: Shelf) -> bool:
    return bool(written.measures) and known(written.item, shelf) is not None


def _head(text: str, shelf: Shelf) -> tuple[str, str]:
    """The amount and the rest."""
    found = read_quantity(text, spoons=shelf.spoons)
    end = found[1] if found else 0
    while bracket := re.match(
        r"\s*\([^()]*\)|\s*(?:of|large|medium|small|packed|heaped|level)\s", text[end:]
    ):
        end += bracket.end()
    return text[:end].strip(), text[end:].strip()


def _percent(text: str, written: Written, shelf: Shelf) -> Iterator[str]:
    head, rest = _head(text, shelf)
    yield percent_behind(text)
    yield f"{head} {percent_before(rest)}".strip()


def _purpose(text: str, written: Written, shelf: Shelf) -> Iterator[str]:
    """`1 egg for egg wash`, `Oil for frying`: the purpose goes behind a comma, the longest name first."""
    for found in reversed(list(_PURPOSE.finditer(text))):
        yield f"{text[: found.start()]}, {text[found.end() :]}"


def _more(text: str, written: Written, shelf: Shelf) -> Iterator[str]:
    head, rest = _head(text, shelf)
    if found := _MORE.match(rest):
        name, comma, more = found["name"].partition(",")
        told = found["how"].lower()
        yield f"{head} {name}, {told}{comma}{more}".strip()
        for at in reversed(list(_PURPOSE.finditer(name))):
            yield f"{head} {name[: at.start()]}, {told} {name[at.end() :]}{comma}{more}".strip()


def _parts(text: str, written: Written, shelf: Shelf) -> Iterator[str]:
    if found := _PART_OF.match(text):
        one = "" if found["many"] in ("1", "one") else "s"
        size = f" {found['size']}" if found["size"] else ""
        yield f"{found['many']}{size} egg {found['part'].lower().rstrip('s')}{one}{text[found.end() :]}"
    if found := _TAKEN.match(text):
        name, comma, more = found["rest"].partition(",")
        yield f"{name}, {found['part'].lower()} only{comma}{more}"


def _same_in_two_words(text: str, written: Written, shelf: Shelf) -> Iterator[str]:
    """`plain/all-purpose flour` is one flour; `walnuts/pecans` are two, of which one is taken."""
    left, slash, right = (each.strip() for each in written.item.partition("/"))
    if not slash or not left or not right:
        return
    words = right.split()
    shared = [f"{left} {' '.join(words[most:])}" for most in range(1, len(words))]
    for name in [left] if known(left, shelf) else shared:
        ours, theirs = known(name, shelf), known(right, shelf)
        if ours is not None and theirs is not None and ours.ingredient.name == theirs.ingredient.name:
            yield text.replace(written.item, f"{name} ({right})", 1)


def _cuts_first(text: str, written: Written, shelf: Shelf) -> Iterator[str]:
    """`toasted, chopped walnuts`."""
    parted = without_cuts(f"{written.item}, {written.preparation}", shelf) if written.preparation else None
    at = text.find(written.item)
    if parted is not None and at >= 0:
        yield f"{text[:at]}{parted[0]}, {parted[1]}"


def _plain_signs(text: str, written: Written, shelf: Shelf) -> Iterator[str]:
    """Signs around the name that nobody thought of."""
    bare = re.sub(r"^[^\w(]+|[^\w)%.]+$", "", written.item)
    if bare and bare != written.item and written.item in text:
        yield text.replace(written.item, bare, 1)
    if " - " in text or " – " in text or " — " in text:
        head, _, tail = re.split(r"\s([-–—])\s", text, maxsplit=1)
        yield f"{head}, {tail}"
    if ":" in written.item:
        yield re.sub(r"\s*:\s*", ", ", text, count=1)
    if ";" in text:
        yield text.replace(";", ",", 1)


def _count_behind(text: str, written: Written, shelf: Shelf) -> Iterator[str]:
    """`large eggs 3, beaten`: a bare count behind the name."""
    if found := re.fullmatch(rf"(?P<name>[^,\d]+?)\s+(?P<many>\d{{1,2}}|[{SIGNS}])(?P<rest>\s*,.*)?", text):
        yield f"{found['many']} {found['name']}{found['rest'] or ''}"


Way = Callable[[str, Written, Shelf], Iterator[str]]
_WAYS: tuple[Way, ...] = (
    _count_behind,
    _percent,
    _parts,
    _same_in_two_words,
    _cuts_first,
    _more,
    _purpose,
    _plain_signs,
)
