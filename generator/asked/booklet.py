"""A selection of bakes as a booklet or an EPUB, from what the pipeline understood."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from generator.present.addresses import slug
from generator.present.book import EVERYTHING, KIND, BookView, Chosen, book_view, chosen
from generator.publication.checked import CheckResult
from generator.render.book.epub import render_book_epub
from generator.render.book.page_size import usual_size
from generator.render.book.pdf import render_book_pdf
from generator.render.photographs import encoded
from generator.render.print_fonts import missing_glyphs
from generator.wording.speech import say, say_many

# Long enough for a name that says what is in the file, short enough for any disk.
_NAME = 80


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """How the book is to be. `title` is "" for that of the publication, `size` "" for half of the site's paper."""

    title: str = ""
    epub: bool = False
    size: str = ""
    bleed: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Bound:
    """The book, or why there is none. `told` is for the maker."""

    content: bytes = b""
    bakes: int = 0
    told: tuple[str, ...] = ()
    refused: str = ""


def choose(result: CheckResult, words: Sequence[str]) -> Chosen:
    """What a selection names, among the recipes that are free of errors."""
    return chosen(words, result.site, result.setting.book)


def words_to_choose(result: CheckResult) -> tuple[str, ...]:
    """Every word that a selection may hold: names of files, `kind:NAME`, `all`."""
    names = [path[len("recipes/") : -len(".md")] for path in result.texts if path.startswith("recipes/")]
    kinds = {f"{KIND}{slug(kind.title)}" for view in result.site.recipes for kind in view.kinds}
    return (*sorted(names), *sorted(kinds), EVERYTHING)


def file_name(words: Sequence[str], *, ending: str) -> str:
    """`kind-bread.pdf`, `tall-tea-brack-and-2-more.epub`; `ending` is all that follows the words."""
    first = slug(words[0])[:_NAME].strip("-")
    more = f"-and-{len(words) - 1}-more" if len(words) > 1 else ""
    return f"{first}{more}{ending}"


def bind(result: CheckResult, names: Sequence[str], wanted: Wanted, *, subject: str) -> Bound:
    """The book of these recipes, which are free of errors, in their order."""
    views = [result.views[name] for name in names]
    settings = result.setting.settings
    book = book_view(views, result.setting, title=wanted.title, subject=subject)
    lost = missing_glyphs(f"{book.title}{book.subject}{book.maker}{book.contact}")
    if lost:
        marks = ", ".join(f"U+{ord(mark):04X}" for mark in lost)
        return Bound(refused=f"the title or the maker's name has characters that cannot be printed: {marks}")
    pictures, told = {}, list(_unpublished(book))
    for bake in book.bakes:
        photo = bake.view.photo
        try:
            if photo:
                data = result.media(photo.source)
                pictures[bake.anchor] = encoded(data, width=photo.width, height=photo.height)
        except OSError:
            told.append(f"{bake.view.name} goes without its photograph, which cannot be read")
    if wanted.epub:
        content = render_book_epub(book, pictures=pictures, theme=settings.theme)
    else:
        size = wanted.size or usual_size(settings.paper)
        content = render_book_pdf(
            book, pictures=pictures, size=size, bleed=wanted.bleed, theme=settings.theme
        )
    return Bound(content=content, bakes=len(views), told=tuple(told))


def subject_of(words: Sequence[str], bakes: int) -> str:
    """What stands under the title: `All bakes`, `Bread`, `3 bakes`."""
    if EVERYTHING in words:
        return say("All bakes")
    if len(words) == 1 and words[0].startswith(KIND):
        kind = words[0].removeprefix(KIND).replace("-", " ").strip()
        return kind[:1].upper() + kind[1:]
    return say_many("One bake", "{count} bakes", bakes)


def _unpublished(book: BookView) -> Iterator[str]:
    for bake in book.bakes:
        if not bake.view.on_site:
            yield f"{bake.view.name} is not published: its pages have no code to look up what changed"
        if bake.view.label.unfinished:
            yield f"{bake.view.name}: {bake.view.label.unfinished}"
