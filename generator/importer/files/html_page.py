"""A saved page as lines of a source: its data for machines where it has any, else its text.

The page is foreign: nothing in it is run or fetched, and no more of it is read than the limits say.
"""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from html.parser import HTMLParser
from xml.etree.ElementTree import Element

import tinyhtml5

from generator.importer.files.cells import straighten
from generator.importer.files.own_page import own_lines
from generator.importer.files.schema import recipe_items, schema_lines
from generator.importer.model import SourceLine

MOST_DEPTH = 200
MOST_TAGS = 60_000
_VOID = frozenset(
    ["area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "track", "wbr"]
)
_LOOSE = frozenset(
    [
        "p",
        "li",
        "dt",
        "dd",
        "option",
        "tr",
        "td",
        "th",
        "thead",
        "tbody",
        "tfoot",
        "rt",
        "rp",
        "colgroup",
        "body",
        "html",
        "head",
    ]
)
_UNREAD = frozenset(
    [
        "script",
        "style",
        "noscript",
        "template",
        "svg",
        "math",
        "iframe",
        "object",
        "canvas",
        "nav",
        "form",
        "select",
        "button",
        "head",
    ]
)
_AROUND = frozenset(["header", "footer", "aside"])
_BLOCKS = frozenset(
    [
        "p",
        "div",
        "li",
        "dt",
        "dd",
        "tr",
        "h1",
        "h2",
        "h3",
        "h4",
        "h5",
        "h6",
        "section",
        "article",
        "main",
        "ul",
        "ol",
        "dl",
        "table",
        "blockquote",
        "figcaption",
        "figure",
        "pre",
        "header",
        "footer",
        "aside",
        "summary",
        "details",
        "caption",
        "tbody",
        "thead",
        "label",
        "fieldset",
        "address",
    ]
)
_ROW = 120
"""Letters of a name and its text that may be one row of a table."""
_SEAM = "\x1f"
_HEADINGS = frozenset(["h1", "h2", "h3", "h4", "h5", "h6", "dt", "caption"])


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """The recipes of a page, each as lines; `said` tells what of the page was not read, and why."""

    recipes: tuple[tuple[SourceLine, ...], ...]
    said: tuple[str, ...] = ()
    refused: str = ""


class _Depth(HTMLParser):
    """Counts before anything is built: a page nested a thousand deep would take its parser minutes."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.depth = 0
        self.deepest = 0
        self.tags = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags += 1
        if tag not in _VOID and tag not in _LOOSE:
            self.depth += 1
            self.deepest = max(self.deepest, self.depth)

    def handle_endtag(self, tag: str) -> None:
        if tag not in _VOID and tag not in _LOOSE:
            self.depth = max(self.depth - 1, 0)


def read_page(text: str) -> Page:
    """The recipes of a page; `refused` says why it was not read at all."""
    measured = _Depth()
    measured.feed(text)
    if measured.deepest > MOST_DEPTH:
        return Page(recipes=(), refused=f"its parts are nested more than {MOST_DEPTH} deep")
    if measured.tags > MOST_TAGS:
        return Page(recipes=(), refused=f"it has more than {MOST_TAGS:,} tags")
    root = tinyhtml5.parse(text, namespace_html_elements=False)
    straighten(root)
    if own := own_lines(root):
        return Page(recipes=(_numbered(own),))
    return _read(root)


def _numbered(lines: list[tuple[str, str]]) -> tuple[SourceLine, ...]:
    return tuple(SourceLine(number=n, text=text, hint=hint) for n, (hint, text) in enumerate(lines, start=1))


def _read(root: Element) -> Page:
    data = recipe_items(root)
    body = _main(root)
    shown = list(_shown(body))
    around = sum(1 for each in _text_lines(root)) - len(shown)
    said = (f"{around} lines around the page's text: menus, forms, footers",) if around > 0 else ()
    if not data:
        lines = _with_title(shown, root)
        return Page(recipes=(_numbered(lines),) if lines else (), said=said)
    recipes = tuple(_numbered(_merged(schema_lines(each), shown, alone=len(data) == 1)) for each in data)
    return Page(recipes=recipes, said=said)


def _with_title(shown: list[tuple[str, str]], root: Element) -> list[tuple[str, str]]:
    """The first heading is the title, but where it names the site and the page's own title another heading."""
    title = next((" ".join(each.text.split()) for each in root.iter("title") if each.text), "")
    pieces = [_key(each) for each in re.split(r"\s[|–—·»:-]\s", title)]
    if any(hint == "title" for hint, _ in shown):
        named = [n for n, (hint, text) in enumerate(shown) if hint == "heading" and _key(text) in pieces]
        site = [n for n, (hint, text) in enumerate(shown) if hint == "title" and _key(text) in pieces[1:]]
        if not site or not named or _key(shown[named[0]][1]) != pieces[0]:
            return shown
        told = dict.fromkeys(site, "") | {named[0]: "title"}
        return [(told.get(n, hint), text) for n, (hint, text) in enumerate(shown)]
    return [("title", re.split(r"\s[|–—]\s", title)[0]), *shown] if title else shown


def _main(root: Element) -> Element:
    """The part of a page that is its text: `main`, a lone `article`, else the body."""
    for tag in ("main", "article"):
        found = list(root.iter(tag))
        if len(found) == 1:
            return found[0]
    return next(root.iter("body"), root)


def _shown(element: Element) -> Iterator[tuple[str, str]]:
    titled = False
    for tag, text in _with_described(_text_lines(element, around=True)):
        hint = "heading" if tag in _HEADINGS else ""
        if tag == "h1" and not titled:
            hint, titled = "title", True
        yield hint, text


def _with_described(lines: Iterable[tuple[str, str]]) -> Iterator[tuple[str, str]]:
    """A list of names, each with one short text (`dl`), is a table of two columns."""
    every = list(lines)
    at = 0
    while at < len(every):
        tag, text = every[at]
        after = every[at + 1 : at + 3]
        alone = len(after) < 2 or after[1][0] != "dd"
        if tag == "dt" and after and after[0][0] == "dd" and alone and len(text) + len(after[0][1]) < _ROW:
            yield "dd", f"{text}\t{after[0][1]}"
            at += 2
            continue
        yield tag, text
        at += 1


def _text_lines(root: Element, *, around: bool = False) -> Iterator[tuple[str, str]]:
    """Each block's text in order, with the tag it stands in. Walks without recursion: pages may be deep."""
    skipped = _UNREAD | _AROUND if around else _UNREAD - {"nav", "form", "select", "button"}
    words: list[str] = []
    block = ""
    stack: list[tuple[Element | str, str]] = [(root, "")]
    while stack:
        node, tag = stack.pop()
        if isinstance(node, str):
            if tag == "text":
                words.append(node)
            else:
                if text := _squeezed(words):
                    yield block, text
                words, block = [], node
            continue
        name = node.tag if callable(node.tag) is False else ""
        after = [(node.tail or "", "text")] if node is not root else []
        if name in skipped or not name:
            stack.extend(after)
            continue
        inside: list[tuple[Element | str, str]] = [
            (node.text or "", "text"),
            *((child, "") for child in node),
        ]
        if name == "br":
            inside = [(block, "block")]
        elif name == "span":
            # Two spans side by side are two words, wherever the page's styles put the gap between them.
            inside = [(_SEAM, "text"), *inside, (_SEAM, "text")]
        elif name in ("td", "th"):
            inside = [*inside, ("\t", "text")]
        elif name == "a" and (node.get("href") or "").startswith(("http://", "https://")):
            inside = [*inside, (f" {node.get('href')} ", "text")]
        elif name in _BLOCKS:
            inside = [(name, "block"), *inside, (block, "block")]
        stack.extend(reversed([*inside, *after]))
    if text := _squeezed(words):
        yield block, text


def _squeezed(words: list[str]) -> str:
    joined = re.sub(rf"(?<=\w){_SEAM}+(?=\w)", " ", "".join(words)).replace(_SEAM, "")
    cells = [" ".join(each.split()) for each in joined.split("\t")]
    return "\t".join(each for each in cells if each)


def _merged(
    data: list[tuple[str, str]], shown: list[tuple[str, str]], *, alone: bool
) -> list[tuple[str, str]]:
    """The data's lines, with the headings that the page shows between its ingredients, then what else it says.

    What the page shows and its data does not have is kept as notes, unless another recipe's data has it.
    """
    places = {_key(text): index for index, (_, text) in reversed(list(enumerate(shown)))}
    out: list[tuple[str, str]] = []
    last = -1
    used: set[int] = set()
    for hint, text in data:
        at = places.get(_key(text))
        if at is not None:
            used.add(at)
        if hint == "ingredient" and at is not None:
            between = [n for n in range(max(last, at - 3) + 1, at) if n > last and shown[n][0] == "heading"]
            fresh = [n for n in between if n not in used and not _is_list_heading(shown[n][1])]
            if fresh:
                out.append(("part", shown[fresh[-1]][1]))
                used.add(fresh[-1])
            last = at
        out.append((hint, text))
    if alone:
        told = {_key(text) for _, text in out}
        whole = " ".join(_key(text) for _, text in data)
        rest = [
            text
            for n, (_, text) in enumerate(shown)
            if n not in used and _key(text) not in told and _key(text) not in whole
        ]
        out += [("section-notes", "Notes"), *(("", text) for text in rest)] if rest else []
    return out


def _is_list_heading(text: str) -> bool:
    return (
        re.match(r"(?:ingredients|zutaten|ingr[eé]dients|ingredientes|ingredienti)\b", text, re.I) is not None
    )


def _key(text: str) -> str:
    return re.sub(r"[^\w]+", " ", text).strip().casefold()
