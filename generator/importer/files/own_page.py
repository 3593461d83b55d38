"""Our own recipe page brought back in: its docket, its ways and its steps are known by their classes."""

from collections.abc import Iterator
from xml.etree.ElementTree import Element

Lines = list[tuple[str, str]]


def own_lines(root: Element) -> Lines:
    """The hinted lines of a page of ours, none where it is not one."""
    article = next((each for each in root.iter("article") if each.get("data-docket")), None)
    if article is None:
        return []
    lines: Lines = []
    for tag, name, hint in (("h1", "", "title"), ("p", "lead", "lead")):
        lines += [(hint, _words(each)) for each in article.iter(tag) if name in _classes(each) or not name][
            :1
        ]
    lines += [("intro", _words(each)) for part in _of(article, "intro") for each in part.iter("p")]
    lines += list(_facts(article))
    lines.append(("section-ingredients", "Ingredients"))
    for part in _of(article, "part"):
        lines += _part(part)
    lines.append(("section-method", "Method"))
    for method in _of(article, "method"):
        lines += list(_method(method))
    return lines


def _classes(element: Element) -> tuple[str, ...]:
    return tuple((element.get("class") or "").split())


def _of(element: Element, name: str) -> Iterator[Element]:
    return (each for each in element.iter() if name in _classes(each))


def _first(element: Element, name: str) -> Element | None:
    return next(_of(element, name), None)


def _words(element: Element | None) -> str:
    """The text of an element, in one line; words for the ear alone are left out."""
    if element is None:
        return ""
    pieces: list[str] = [element.text or ""]
    for child in element:
        if "aside-word" not in _classes(child) and isinstance(child.tag, str):
            pieces.append(_words_raw(child))
        pieces.append(child.tail or "")
    return " ".join("".join(pieces).split())


def _words_raw(element: Element) -> str:
    return "".join(element.itertext())


def _facts(article: Element) -> Iterator[tuple[str, str]]:
    for each in article.iter("div"):
        told = {child.tag: _words(child) for child in each if child.tag in ("dt", "dd")}
        hint = {"Makes": "makes", "Portions": "portions", "Tin": "tin"}.get(told.get("dt", ""))
        if hint and told.get("dd"):
            yield hint, told["dd"]
    for box in _of(article, "tear-off"):
        heading = ""
        for each in box:
            if each.tag == "h3":
                heading = _words(each)
            elif each.tag == "p" and heading == "Keeping":
                yield "keeps", _words(each)


def _part(part: Element) -> Lines:
    head = _first(part, "part-head")
    name = (
        next((_words(each) for each in head if "part-weight" not in _classes(each)), "")
        if head is not None
        else ""
    )
    lines = [("part", name)] if name else []
    for row in _of(part, "lines"):
        lines += [("ingredient", text) for item in row if item.tag == "li" and (text := _line(item))]
    return lines


def _line(item: Element) -> str:
    first, second = _words(_first(item, "first")), _words(_first(item, "second"))
    thing = _first(item, "item")
    if thing is None:
        return ""
    name = _words(next(thing.iter("b"), None))
    preparation = _words(next(thing.iter("i"), None))
    note = _words(next(thing.iter("small"), None))
    optional = " (optional)" if any(_words(each) == "optional" for each in _of(thing, "mark")) else ""
    measure = f"{first} ({second})" if first and second else first or second
    cut = f", {preparation}" if preparation else ""
    return f"{measure} {name}{cut}{optional}{f' – {note}' if note else ''}".strip()


def _method(method: Element) -> Iterator[tuple[str, str]]:
    for each in method.iter():
        classes = _classes(each)
        if "way" in classes and each.tag == "section":
            yield "way", (each.get("data-way") or "").casefold()
        elif "way-common" in classes:
            yield "way", "Then, for every way"
        elif each.tag == "h4" or (each.tag == "h3" and not _is_way_head(each, method)):
            yield "section", _words(each)
        elif "step-words" in classes:
            yield "step", " ".join(_words(part) for part in each)
        elif "caution" in classes:
            yield "caution", " ".join(_words(part) for part in each if "caution-word" not in _classes(part))


def _is_way_head(heading: Element, method: Element) -> bool:
    sections = [each for each in method.iter("section") if {"way", "way-common"} & set(_classes(each))]
    return any(heading in list(section) for section in sections)
