"""Recipes in a page's data for machines: schema.org terms in JSON-LD (also in @graph and arrays) or in microdata."""

import json
import re
from collections.abc import Iterator
from typing import Any
from xml.etree.ElementTree import Element

MOST_NODES = 5_000
Lines = list[tuple[str, str]]
_TAG = re.compile(r"<[^>]{0,500}>")
_BREAK = re.compile(r"<\s*(?:br|/p|/li|/div|/h\d)\s*/?>", re.I)


def recipe_items(root: Element) -> list[dict[str, Any]]:
    """Every node of type Recipe, JSON-LD first; microdata only where there is no JSON-LD."""
    found = [
        node
        for script in root.iter("script")
        if (script.get("type") or "").split(";")[0].strip().casefold() == "application/ld+json"
        for node in _nodes(_loaded(script.text or ""))
        if _is(node, "Recipe")
    ]
    return found or [each for each in _microdata(root) if _is(each, "Recipe")]


def _loaded(text: str) -> Any:
    """The JSON of a script, None where it is none. A line end inside a text is a common fault of such pages."""
    text = re.sub(r"^\s*(?:<!--|//\s*<!\[CDATA\[)|(?:-->|//\s*\]\]>)\s*$", "", text)
    try:
        return json.loads(text, strict=False)
    except (ValueError, RecursionError):
        return None


def _nodes(data: Any) -> Iterator[dict[str, Any]]:
    """All mappings inside the data, in order, without recursion and bounded."""
    stack, seen = [data], 0
    while stack and seen < MOST_NODES:
        node = stack.pop()
        seen += 1
        if isinstance(node, dict):
            yield node
            stack.extend(reversed([each for each in node.values() if isinstance(each, dict | list)]))
        elif isinstance(node, list):
            stack.extend(reversed(node))


def _is(node: dict[str, Any], name: str) -> bool:
    kinds = node.get("@type")
    listed = kinds if isinstance(kinds, list) else [kinds]
    return any(
        isinstance(each, str) and each.rpartition("/")[2].casefold() == name.casefold() for each in listed
    )


def schema_lines(node: dict[str, Any]) -> Lines:
    """A Recipe as hinted lines, every text it has kept."""
    lines: Lines = []
    _add(lines, "title", node.get("name") or node.get("headline"))
    _add(lines, "lead", node.get("description"))
    _add_yield(lines, node.get("recipeYield") or node.get("yield"))
    for author in _listed(node.get("author")):
        _add_credit(lines, author)
    _add(lines, "kinds", _joined([*_listed(node.get("recipeCategory")), *_listed(node.get("keywords"))]))
    lines.append(("section-ingredients", "Ingredients"))
    for each in _listed(node.get("recipeIngredient") or node.get("ingredients")):
        for text in _texts(each):
            lines.append(("ingredient", text))
    lines.append(("section-method", "Method"))
    _add_steps(lines, node.get("recipeInstructions"), top=True)
    _add_film(lines, node.get("video"))
    for key in (
        "prepTime",
        "cookTime",
        "totalTime",
        "nutrition",
        "recipeCuisine",
        "cookingMethod",
        "datePublished",
    ):
        _add_note(lines, key, node.get(key))
    return lines


def _listed(value: Any) -> list[Any]:
    return value if isinstance(value, list) else [] if value is None else [value]


def _texts(value: Any) -> Iterator[str]:
    """The lines of a text that may hold tags and entities, one for each of its paragraphs."""
    if isinstance(value, dict):
        value = value.get("text") or value.get("name") or value.get("@value")
    if isinstance(value, int | float) and not isinstance(value, bool):
        value = f"{value:g}"
    if not isinstance(value, str):
        return
    from html import unescape

    plain = _TAG.sub("", _BREAK.sub("\n", unescape(value)))
    yield from (" ".join(each.split()) for each in unescape(plain).splitlines() if each.strip())


def _add(lines: Lines, hint: str, value: Any) -> None:
    first, *more = [text for each in _listed(value) for text in _texts(each)] or [""]
    if first:
        lines.append((hint, first))
        lines.extend(("intro", each) for each in more)


def _joined(values: list[Any]) -> str:
    return ", ".join(text for each in values for text in _texts(each))


def _add_yield(lines: Lines, value: Any) -> None:
    told = [text for each in _listed(value) for text in _texts(each)]
    longer = [each for each in told if not each.isdigit()] or told
    for each in dict.fromkeys(longer):
        portions = re.search(r"\b(?:serv|portion|slice|people|person)", each, re.I) or each.isdigit()
        lines.append(("portions" if portions else "makes", each))


def _add_credit(lines: Lines, author: Any) -> None:
    name = next(_texts(author), "")
    url = author.get("url") if isinstance(author, dict) else ""
    address = url if isinstance(url, str) and url.startswith(("http://", "https://")) else ""
    if name:
        lines.append(("credit", f"Recipe\t{name}\t{address}"))


def _add_steps(lines: Lines, value: Any, *, top: bool) -> None:
    stack = list(reversed(_listed(value)))
    seen = 0
    while stack and seen < MOST_NODES:
        node = stack.pop()
        seen += 1
        if isinstance(node, list):
            stack.extend(reversed(node))
        elif isinstance(node, dict) and (_is(node, "HowToSection") or _is(node, "ItemList")):
            _add_section(lines, node)
            stack.extend(reversed(_listed(node.get("itemListElement") or node.get("steps"))))
        elif isinstance(node, dict) and node.get("itemListElement") and not node.get("text"):
            _add_step_name(lines, node)
            stack.extend(reversed(_listed(node.get("itemListElement"))))
        else:
            lines.extend(
                ("step", re.sub(r"^(?:step\s)?\d{1,2}[.)]\s+", "", text, flags=re.I)) for text in _texts(node)
            )


def _add_section(lines: Lines, node: dict[str, Any]) -> None:
    name = next(_texts(node.get("name")), "")
    if not name:
        return
    told = next(_texts(node.get("description")), "")
    lines.append(
        (
            "way" if re.search(r"\bways\b.*\bchoose one\b", told) else "section",
            name.lower() if "ways" in told else name,
        )
    )


def _add_step_name(lines: Lines, node: dict[str, Any]) -> None:
    name = next(_texts(node.get("name")), "")
    if name:
        lines.append(("step", name))


def _add_film(lines: Lines, value: Any) -> None:
    for film in (each for each in _listed(value) if isinstance(each, dict)):
        url = next(
            (each for key in ("url", "embedUrl", "contentUrl") if isinstance(each := film.get(key), str)), ""
        )
        if url.startswith(("http://", "https://")):
            lines.append(("video", url))
        for part in (each for each in _listed(film.get("hasPart")) if isinstance(each, dict)):
            start, name = part.get("startOffset"), next(_texts(part.get("name")), "")
            if isinstance(start, int) and 0 <= start < 360_000 and name:
                stamp = (
                    f"{start // 60}:{start % 60:02}"
                    if start < 3600
                    else f"{start // 3600}:{start // 60 % 60:02}:{start % 60:02}"
                )
                lines.append(("chapter", f"{stamp}\t{name}"))


def _add_note(lines: Lines, key: str, value: Any) -> None:
    words = re.sub(r"(?<=[a-z])(?=[A-Z])", " ", key).capitalize()
    if isinstance(value, dict):
        told = ", ".join(
            f"{name}: {text}"
            for name, each in value.items()
            if not name.startswith("@")
            for text in _texts(each)
        )
        value = told
    lines.extend(("note", f"{words}: {text}") for each in _listed(value) for text in _texts(each))


def _microdata(root: Element) -> Iterator[dict[str, Any]]:
    """Items of `itemscope`, each property with the text that stands in it (HTML, section 5: microdata)."""
    for element in root.iter():
        kind = element.get("itemtype") or ""
        if element.get("itemscope") is not None and kind.rpartition("/")[2] == "Recipe":
            yield _item(element)


def _item(element: Element) -> dict[str, Any]:
    found: dict[str, Any] = {"@type": (element.get("itemtype") or "").rpartition("/")[2]}
    stack = list(reversed(list(element)))
    while stack:
        node = stack.pop()
        names = (node.get("itemprop") or "").split()
        scoped = node.get("itemscope") is not None
        for name in names:
            found.setdefault(name, []).append(_item(node) if scoped else _value(node))
        if not scoped and not names:
            stack.extend(reversed(list(node)))
    return found


def _value(node: Element) -> str:
    for attribute in ("content", "datetime"):
        if node.get(attribute):
            return node.get(attribute) or ""
    if node.tag in ("a", "link") and node.get("href") and not "".join(node.itertext()).strip():
        return node.get("href") or ""
    if node.tag in ("img", "source"):
        return node.get("src") or ""
    items = [each for each in node.iter() if each.tag in ("li", "p")]
    if len(items) > 1:
        return "\n".join(" ".join("".join(each.itertext()).split()) for each in items)
    return "".join(node.itertext())
