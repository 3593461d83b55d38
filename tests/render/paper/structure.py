"""What the tags of a PDF must be so that it can be read aloud: ISO 14289-1:2014 (PDF/UA-1) and ISO 32000-1, 14.8.4.

Written down from the standards' clauses, and agreed with a checker of them that was run by hand; see docs/decisions.
"""

import re
from collections.abc import Iterator
from io import BytesIO
from itertools import pairwise
from typing import Any

from pypdf import PdfReader
from pypdf.generic import DictionaryObject

from tests.render.paper.reading import root_of, structure_of

# ISO 32000-1, tables 336 and 337: in what a part of a list or of a table may stand.
_WITHIN = {
    "/LI": {"/L"},
    "/Lbl": {"/LI"},
    "/LBody": {"/LI"},
    "/TR": {"/Table", "/THead", "/TBody", "/TFoot"},
    "/TH": {"/TR"},
    "/TD": {"/TR"},
    "/THead": {"/Table"},
    "/TBody": {"/Table"},
    "/TFoot": {"/Table"},
}
_HOLDS = {
    "/L": {"/LI", "/L", "/Caption"},
    "/LI": {"/Lbl", "/LBody"},
    "/TR": {"/TH", "/TD"},
    "/Table": {"/TR", "/THead", "/TBody", "/TFoot", "/Caption"},
}


def structure_faults(content: bytes, *, titles: int = 1) -> list[str]:
    """What is amiss with the tags; there must be so many headings of the first level."""
    root = root_of(content)
    found = []
    if root.get("/MarkInfo") != {"/Marked": True} or not root.get("/Lang"):
        found.append("the file is not tagged, or tells no language")
    nodes = structure_of(content)
    for node in nodes:
        found += _node_faults(node)
    found += _loose_links(content, nodes)
    levels = [int(kind[2]) for node in nodes if re.fullmatch(r"/H\d", kind := str(node["/S"]))]
    if levels.count(1) != titles or levels[:1] != [1]:
        found.append(f"{levels.count(1)} titles, and the first heading is of level {levels[:1]}")
    found += [
        f"a heading of level {after} follows one of {before}"
        for before, after in pairwise(levels)
        if after > before + 1
    ]
    return found


def _loose_links(content: bytes, nodes: list[DictionaryObject]) -> Iterator[str]:
    """A link on the page that no element of the tags holds (ISO 14289-1, 7.18.5)."""
    held = {
        kid.raw_get("/Obj").idnum
        for node in nodes
        if str(node["/S"]) == "/Link"
        for kid in _objects(node)
        if "/Obj" in kid
    }
    for page in PdfReader(BytesIO(content)).pages:
        links: Any = page.get("/Annots", [])
        loose = [
            each for each in links if each.idnum not in held and each.get_object()["/Subtype"] == "/Link"
        ]
        if loose:
            yield f"{len(loose)} links of a page are not in the tags"


def _node_faults(node: DictionaryObject) -> Iterator[str]:
    kind, above = str(node["/S"]), str(_object(node["/P"]).get("/S"))
    kids = [str(kid["/S"]) for kid in _kids(node)]
    if kind in _WITHIN and above not in _WITHIN[kind]:
        yield f"{kind} stands in {above}"
    if kind in _HOLDS and not set(kids) <= _HOLDS[kind]:
        yield f"{kind} holds {kids}"
    if kind == "/LI" and kids.count("/LBody") != 1:
        yield f"an item holds {kids}"
    if kind == "/TH" and _object(node["/A"]).get("/Scope") not in ("/Column", "/Row"):
        yield "a head cell has no scope"
    if kind == "/Figure" and not node.get("/Alt"):
        yield "a figure has no words"
    if kind == "/Link" and not any("/Obj" in kid for kid in _objects(node)):
        yield "a link leads nowhere"


def _kids(node: DictionaryObject) -> list[Any]:
    return [kid for kid in _objects(node) if "/S" in kid]


def _objects(node: DictionaryObject) -> list[Any]:
    kids = _object(node.get("/K", []))
    listed = kids if isinstance(kids, list) else [kids]
    return [each for each in map(_object, listed) if isinstance(each, DictionaryObject)]


def _object(value: Any) -> Any:
    return value.get_object() if hasattr(value, "get_object") else value
