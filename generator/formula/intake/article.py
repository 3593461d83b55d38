"""A journal post's or a standing page's document, read."""

from typing import Literal

from generator.diagnostics.diagnostic import Diagnostics
from generator.formula.article import Article, NamedBake
from generator.formula.intake.about import once
from generator.formula.intake.collect import Collector
from generator.formula.intake.focus import read_focus
from generator.formula.intake.was import read_was
from generator.source.document import Document, Node, Sequence
from generator.source.fields import check_keys, date_of, texts_of

KEYS = ("title", "published", "lead", "kinds", "photo", "photo_text", "photo_focus", "bakes", "was")


def read_article(document: Document) -> tuple[Article, Diagnostics]:
    """The page's words and dates. Whether its bakes exist is for the caller to say, who knows them all."""
    collector, front = Collector(), document.front
    kind: Literal["journal", "standing"] = "standing" if document.kind == "standing" else "journal"
    what = "a journal post" if kind == "journal" else "a standing page"
    collector.add(check_keys(front, KEYS, what=what, needed=("title",)))
    kinds = collector.value(texts_of(front.get("kinds"))) or ()
    photo = front.get("photo")
    article = Article(
        kind=kind,
        name=document.name,
        path=document.path,
        title=collector.words(front, "title"),
        lead=collector.words(front, "lead"),
        published=collector.value(date_of(front.get("published"))),
        kinds=once(kinds),
        photo=collector.words(front, "photo"),
        photo_text=collector.words(front, "photo_text"),
        photo_focus=read_focus(front.get("photo_focus"), collector),
        photo_span=photo.span if photo is not None else front.span,
        focus_span=spot.span if (spot := front.get("photo_focus")) is not None else front.span,
        bakes=_bakes(front.get("bakes"), collector),
        markdown=document.markdown,
        was=read_was(front.get("was"), collector),
    )
    return article, collector.found


def _bakes(node: Node | None, collector: Collector) -> tuple[NamedBake, ...]:
    items = node.items if isinstance(node, Sequence) else () if node is None else (node,)
    texts = tuple(collector.text(item) for item in items)
    return tuple(NamedBake(name=text.value.strip(), span=text.span) for text in texts if text is not None)
