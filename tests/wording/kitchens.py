"""The folder `backstube/` made in any language, and a language that exists nowhere: what it says cannot be English.

Its catalogue says each text of ours in letters of another alphabet, one for each of ours. Whatever still stands in
our alphabet afterwards, and is no word of the maker's, was never asked of the catalogue.
"""

import re
import shutil
import unicodedata
from collections.abc import Callable, Iterable, Iterator
from functools import cache
from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.pofile import write_po

from tests.wording.test_catalogue import wanted
from tests.wording.texts import ROOT, Text

HERE = Path(__file__).resolve().parent / "backstube"
PEOPLE = """\
Mechthild:
  avoids: [Haselnuss, Milch]
  note: schwer
Korbinian:
  avoids: [Schalenfrüchte, Kiwi]
"""
OTHER = "el"
"""A language of another alphabet that CLDR knows and that has no catalogue: its days and lists come from there."""
_LETTERS = str.maketrans(
    "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ",
    "αβκδεφγηιξκλμνοπθρστυωωχψζΑΒΚΔΕΦΓΗΙΞΚΛΜΝΟΠΘΡΣΤΥΩΩΧΨΖ",
)
_PLACE = re.compile(r"\{[a-z_0-9]*\}|%\([a-z_0-9]+\)s|<[^>]+>|&\w+;")
BOTH = frozenset({"tag", "in"})
"""Words of ours that are words of the maker's other language too."""
NAMES = ("Colorado State University Extension", "Summer Gardiner", "Sue Wilson", "The Inquisitive Cook")
_WORD = re.compile(r"[A-Za-z\u00c0-\u024f]*[A-Za-z][A-Za-z\u00c0-\u024f]*")
_PAPERS = re.compile(r"\bA[4-7]\b")


def lay(root: Path, language: str, *, only: str = "") -> Path:
    """The content folder in a language. `only` leaves all bakes but one, and what speaks of them."""
    content = root / "content"
    shutil.copytree(HERE, content)
    for path in content.rglob("*.*") if only else ():
        if path.parent.name in ("recipes", "bakes", "journal") and only not in path.name:
            path.unlink()
    (content / "private").mkdir()
    (content / "private/people.yaml").write_text(PEOPLE, encoding="utf-8")
    (content / "media").mkdir()
    shutil.copy(ROOT / "content/media/seeded-tin-loaf.jpg", content / "media/brot.jpg")
    site = (content / "site.yaml").read_text(encoding="utf-8")
    (content / "site.yaml").write_text(
        site.replace("language: de", f"language: {language}"), encoding="utf-8"
    )
    return content


@cache
def texts() -> frozenset[Text]:
    return frozenset(wanted())


def marked(text: str) -> str:
    """The text in other letters; values and marks of a page stay."""
    found, at = "", 0
    for place in _PLACE.finditer(text):
        found += text[at : place.start()].translate(_LETTERS) + place[0]
        at = place.end()
    return found + text[at:].translate(_LETTERS)


def catalogue() -> Catalog:
    made = Catalog(locale=OTHER)
    for text in sorted(texts(), key=lambda each: (not each.many, each.context, each.one)):
        context = text.context or None
        if made.get(text.one, context) is None:
            forms = (marked(text.one), marked(text.many)) if text.many else marked(text.one)
            made.add((text.one, text.many) if text.many else text.one, forms, context=context)
    return made


def write_catalogue(folder: Path) -> None:
    with (folder / f"{OTHER}.po").open("wb") as file:
        write_po(file, catalogue())


def words_of(texts: Iterable[str]) -> frozenset[str]:
    return frozenset(word.casefold() for text in texts for word in _WORD.findall(text))


@cache
def our_words() -> frozenset[str]:
    return words_of(_PLACE.sub(" ", each) for text in texts() for each in (text.one, text.many))


def makers_words(content: Path) -> frozenset[str]:
    """What the maker wrote, and as the search folds it; but no word that is ours too, save a few of both."""
    files = (path for path in content.rglob("*") if path.suffix in (".md", ".yaml"))
    typed = words_of(path.read_text(encoding="utf-8") for path in files) - our_words()
    return typed | BOTH | {_folded(each) for each in typed}


def _folded(word: str) -> str:
    apart = unicodedata.normalize("NFKD", word.replace("ß", "ss"))
    return "".join(each for each in apart if not unicodedata.combining(each))


def escaped(texts: Iterable[tuple[str, str]], is_ours: Callable[[str], bool]) -> Iterator[str]:
    """Each word in a language that is not spoken, with its file and what stands around it."""
    for name, whole in texts:
        text = _PAPERS.sub(" ", whole)
        for each in NAMES:
            text = text.replace(each, " ")
        for found in _WORD.finditer(text):
            if is_ours(found[0].casefold()):
                around = text[max(0, found.start() - 40) : found.end() + 40]
                yield f"{name}: “{found[0]}” in “{' '.join(around.split())}”"
