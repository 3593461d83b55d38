"""Mends the tags that the layout engine writes, where they are not what PDF/UA-1 asks for.

ISO 14289-1, 7.5: a header cell says whether it heads its column or its row. 7.6 with ISO 32000-1, 14.8.4.3.3: a list
holds items, and an item holds a label and a body; the engine leaves the groups of a list of terms as they are.
"""

from typing import Any

_SCOPES = {"/THead": "/Column", "/TBody": "/Row", "/TFoot": "/Row"}


def mend_tags(pdf: Any) -> None:
    """Changes the structure elements of a document that is about to be written."""
    elements: dict[Any, Any] = {each.reference: each for each in pdf.objects if _is_element(each)}
    for element in elements.values():
        if element["S"] == "/TH":
            _scope(element, elements)
        elif element["S"] == "/Div" and _parent(element, elements).get("S") == "/L":
            _item(element, elements)
    for element in elements.values():
        if element["S"] == "/LI" and not any(_kind(kid, elements) == "/LBody" for kid in element["K"]):
            _body(element, elements, pdf)


def _is_element(thing: Any) -> bool:
    return isinstance(thing, dict) and thing.get("Type") == "/StructElem"


def _parent(element: Any, elements: dict[Any, Any]) -> Any:
    return elements.get(element.get("P"), {})


def _kind(kid: Any, elements: dict[Any, Any]) -> str:
    """What a kid of an element is; "" for text and for links, which are no elements."""
    return str(elements[kid]["S"]) if kid in elements else ""


def _scope(cell: Any, elements: dict[Any, Any]) -> None:
    """By the part of the table that the cell stands in."""
    above = _parent(cell, elements)
    while above and above["S"] not in _SCOPES:
        above = _parent(above, elements)
    if above:
        cell["A"]["Scope"] = _SCOPES[above["S"]]


def _item(group: Any, elements: dict[Any, Any]) -> None:
    """A term and what is said of it: each was an item of its own, with a body."""
    group["S"] = "/LI"
    kids = [elements[kid] for kid in group["K"] if kid in elements]
    for at, kid in enumerate(kids):
        kid["S"] = "/Lbl" if at == 0 and len(kids) > 1 else "/LBody"
        for inner in kid["K"]:
            if inner in elements and elements[inner]["S"] == "/LBody":
                elements[inner]["S"] = "/NonStruct"


def _body(item: Any, elements: dict[Any, Any], pdf: Any) -> None:
    """Puts all of an item but its number into a body."""
    labels = [kid for kid in item["K"] if _kind(kid, elements) == "/Lbl"]
    rest = [kid for kid in item["K"] if kid not in labels]
    element, kids = type(item), type(item["K"])
    body = element(
        {"Type": "/StructElem", "S": "/LBody", "K": kids(rest), "Pg": item["Pg"], "P": item.reference}
    )
    pdf.add_object(body)
    for kid in rest:
        if kid in elements:
            elements[kid]["P"] = body.reference
    item["K"] = kids([*labels, body.reference])
