"""Every text that readers are told, read from the code, the templates and the tables of data."""

import ast
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml
from jinja2.ext import babel_extract

from generator.catalogue.load import built_in
from generator.declaration.words import meanings

ROOT = Path(__file__).resolve().parents[2]
SAYING = {"say": (0,), "later": (0,), "say_many": (0, 1), "say_of": (0, 1)}
"""The functions that say a text, and which of their arguments are the texts; of `say_of` the first is its context."""


@dataclass(frozen=True, slots=True)
class Text:
    """An English text with its context, and the one for many, "" for most."""

    context: str
    one: str
    many: str = ""


def in_code() -> dict[Text, str]:
    """Each text with the first place where it is said."""
    found: dict[Text, str] = {}
    for path in sorted((ROOT / "generator").rglob("*.py")):
        code = path.read_text(encoding="utf-8")
        # A command has a `say` of its own, which speaks to the maker.
        for node in ast.walk(ast.parse(code)) if "generator.wording.speech import" in code else ():
            if isinstance(node, ast.Call) and (text := _said(node)):
                found.setdefault(text, f"{path.relative_to(ROOT)}:{node.lineno}")
    return found


def _said(call: ast.Call) -> Text | None:
    name = call.func.id if isinstance(call.func, ast.Name) else ""
    places = SAYING.get(name, ())
    texts = [
        each.value for each in call.args if isinstance(each, ast.Constant) and isinstance(each.value, str)
    ]
    if not places or len(texts) < len(places):
        return None
    if name == "say_of":
        return Text(texts[0], texts[1])
    return Text("", texts[0], texts[1] if name == "say_many" else "")


def in_templates() -> dict[Text, str]:
    """Templates, styles and scripts. Those of `view/` speak to the maker."""
    found: dict[Text, str] = {}
    for path in sorted((ROOT / "themes").rglob("*")):
        if path.suffix in (".js", ".css"):
            said = _MARKED.findall(path.read_text(encoding="utf-8"))
            found |= {Text("", text): f"{path.relative_to(ROOT)}" for text in said}
        if path.suffix not in (".html", ".xhtml", ".opf", ".svg"):
            continue
        with path.open("rb") as file:
            for line, function, message, _ in babel_extract(file, _NAMES, [], _OPTIONS):
                for text in _messages(function or "", message):
                    found.setdefault(text, f"{path.relative_to(ROOT)}:{line}")
    return found


_MARKED = re.compile(r'_\("((?:[^"\\]|\\.)*)"\)')
_NAMES = ("gettext", "ngettext", "_", "pgettext", "npgettext")
_OPTIONS = {"trimmed": "true", "silent": "false", "extensions": "jinja2.ext.i18n,jinja2.ext.do"}


def _messages(function: str, message: Any) -> Iterator[Text]:
    texts = [each for each in (message if isinstance(message, tuple | list) else (message,)) if each]
    if function == "pgettext":
        yield Text(texts[0], texts[1])
    elif function == "npgettext":
        yield Text(texts[0], texts[1], texts[2])
    elif function == "ngettext":
        yield Text("", texts[0], texts[1])
    elif texts:
        yield Text("", texts[0])


def in_packs() -> dict[Text, str]:
    """What rows of the catalogue and words of packs ask: why a label is not finished."""
    found = {Text("", each): "catalogue/data" for row in built_in() for each in row.ask}
    return found | {Text("", each.ask): "words.yaml" for each in meanings().values() if each.ask}


def in_regions() -> dict[Text, str]:
    """What the files of the regions hold in words: sentences, and the words of what an allergen is called."""
    found: dict[Text, str] = {}
    for path in sorted((ROOT / "generator/declaration/regions").glob("*.yaml")):
        data = yaml.safe_load(path.read_text(encoding="utf-8"))
        keys = ("heading", "contains_words", "may_words", "kitchen_words", "small_amounts_words")
        words = (*(data.get(key, "") for key in keys), *data.get("others", {}).values())
        for each in words:
            if each:
                found.setdefault(Text("", each), f"{path.relative_to(ROOT)}")
    return found
