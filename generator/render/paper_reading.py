"""What a printed page tells whoever listens, where the layout engine's own tags would tell it wrong.

Letters that run to the left are drawn from left to right: each line of them carries its text in the order in which
it is read (ISO 32000-1, 14.9.4). The heads and feet that the engine prints on every side are no part of the text, and
are marked as such (14.8.2.2, ISO 14289-1, 7.8); the engine leaves them with tags that hang in no tree.
"""

from typing import Any

from generator.render.far_faces import GUIDES, runs_leftward, unguided


class HeardPage:
    """A page of a laid-out document that keeps in mind which line has which number in the tags."""

    def __init__(self, page: Any) -> None:
        self._page = page
        self.stream: Any = None
        self.lines: dict[int, Any] = {}
        self.bookmarks = [(level, unguided(label), *rest) for level, label, *rest in page.bookmarks]

    def __getattr__(self, name: str) -> Any:
        return getattr(self._page, name)

    def paint(self, stream: Any, scale: float = 1) -> None:
        self._page.paint(stream, scale)
        self.stream = stream
        self.lines = {told["mcid"]: box for box, told in (stream._tags or {}).items()}


def heard(document: Any) -> Any:
    """The document, whose pages can be asked by `tell_in_order` after they are drawn."""
    again = document.copy([HeardPage(page) for page in document.pages])
    if again.metadata.title:
        again.metadata.title = unguided(again.metadata.title)
    return again


def tell_in_order(document: Any, pdf: Any) -> None:
    """Changes the tags of a document that is about to be written. Its pages are those that `heard` gave."""
    elements = {each.reference: each for each in pdf.objects if _is_element(each)}
    lines = {
        (element["Pg"], kid): element
        for element in elements.values()
        for kid in element["K"]
        if isinstance(kid, int)
    }
    held = _held(elements)
    for page, reference in zip(document.pages, pdf.page_references, strict=True):
        heads = set()
        for number, box in page.lines.items():
            element, text = lines[reference, number], getattr(box, "text", "")
            if element.reference not in held:
                heads.add(number)
            elif runs_leftward(text) or not GUIDES.isdisjoint(text):
                element["ActualText"] = type(pdf.catalog["Lang"])(unguided(text))
        _mark_heads(page.stream, heads)
    _drop(pdf, {reference for reference in elements if reference not in held})


def _is_element(thing: Any) -> bool:
    return isinstance(thing, dict) and thing.get("Type") == "/StructElem"


def _held(elements: dict[Any, Any]) -> set[Any]:
    """The elements that the tree of the document holds."""
    found = set()
    left = [reference for reference, each in elements.items() if each["S"] == "/Document"]
    while left:
        reference = left.pop()
        found.add(reference)
        left += [kid for kid in elements[reference]["K"] if kid in elements]
    return found


def _mark_heads(stream: Any, numbers: set[int]) -> None:
    for at, operand in enumerate(stream.stream):
        if isinstance(operand, dict) and operand.get("MCID") in numbers:
            stream.stream[at - 1] = "/Artifact"
            operand.clear()
            operand["Type"] = "/Pagination"


def _drop(pdf: Any, references: set[Any]) -> None:
    """Takes elements out of the file, and out of the table that leads from the page to them (14.7.4.4)."""
    if not references:
        return
    for each in pdf.objects:
        if isinstance(each, dict) and "Nums" in each:
            for kids in each["Nums"]:
                if isinstance(kids, list):
                    kids[:] = ["null" if kid in references else kid for kid in kids]
        elif _is_element(each) and each.reference in references:
            each.free = "f"
