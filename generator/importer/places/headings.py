"""Which section a line opens, and what else it says: `Ingredients (makes 12)`, `Dough ingredients`, `Method: mix`."""

import re
from dataclasses import dataclass

from generator.importer.places.facts import URL
from generator.importer.places.line_looks import COUNTED_PART
from generator.importer.places.words import PARTS, SECTIONS, plain

_BESIDE = re.compile(r"\s*[(\[].*$|\s(?:for|für|pour|para|per|voor|of)\s.*$")
_NOT_WITH_WORDS = (
    "preparation",
    "note",
    "tip",
    "recipe",
    "source",
    "formula",
    "making",
    "assembly",
    "process",
)
_SAYS = re.compile(
    r"\b(?:(?P<ingredients>ingredients?|zutaten|ingrédients|ingredientes|ingredienti|shopping list)"
    r"|(?P<method>method|instructions?|directions|procedure|zubereitung|préparation|preparazione|preparación))\b",
    re.I,
)
_AROUND = re.compile(r"^(?:for|of|in|the|and|[\W_])+\s*|\s*(?:list|needed|for)$")
_LONGEST = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class Opened:
    """`name` is the section; `rest` is text of it on the same line, `beside` words in its brackets.

    `part` names whose ingredients they are.
    """

    name: str
    rest: str = ""
    beside: str = ""
    part: str = ""


def opened(bared: str, *, heading: bool) -> Opened | None:
    """The section that a line opens, None where it opens none."""
    words = plain(bared)
    if words in SECTIONS:
        return Opened(name=SECTIONS[words])
    head, colon, tail = bared.partition(":")
    if colon and len(head) < _LONGEST and tail.strip():
        return _with_words(head, tail.strip())
    if len(words) >= _LONGEST + 10 and not heading:
        return None
    short = plain(_BESIDE.sub("", bared))
    name = SECTIONS.get(short) if len(bared) < _LONGEST + 10 and not bared.endswith(".") else None
    if name in ("ingredients", "method"):
        return Opened(name=name)
    return _says(bared, words)


def _with_words(head: str, tail: str) -> Opened | None:
    words = plain(head)
    name = SECTIONS.get(words)
    if name is None and re.search(r"[(\[]", head):
        name = SECTIONS.get(plain(re.sub(r"\s*[(\[].*$", "", head)))
        name = name if name in ("ingredients", "method") else None
    if name is None or words in _NOT_WITH_WORDS or (URL.search(tail) and name != "notes"):
        return None
    bracket = re.search(r"[(\[]([^()\[\]]+)[)\]]", head)
    return Opened(name=name, rest=tail, beside=bracket[1] if bracket else "")


def _says(bared: str, words: str) -> Opened | None:
    """`Dough ingredients`, `Ingredients – filling`, `The method, step by step`: a short line that names a section."""
    found = _SAYS.search(bared)
    if (
        found is None
        or len(words.split()) > 6
        or bared.endswith((".", "!", "?"))
        or any(map(str.isdigit, bared))
    ):
        return None
    if found["method"]:
        return Opened(name="method") if len(words.split()) <= 4 or bared.isupper() else None
    left = plain(f"{bared[: found.start()]} {bared[found.end() :]}")
    left = COUNTED_PART.sub(
        "", re.sub(r"^(?:for|of|in|the|and|[\W_])+\s*|\s*(?:list|needed|for)$", "", left)
    ).strip(" :–—-")
    return Opened(name="ingredients", part=left if left and left.split()[-1] in PARTS else "")
