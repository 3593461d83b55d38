"""A journal post or a standing page, understood."""

from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass
from datetime import date
from typing import Literal

from generator.diagnostics.diagnostic import Diagnostic, did_you_mean
from generator.diagnostics.span import Span
from generator.formula.old_address import OldAddress


@dataclass(frozen=True, slots=True, kw_only=True)
class NamedBake:
    """A recipe that a page names under `bakes`."""

    name: str
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Article:
    """`kind` tells the folder: a dated post or an undated page."""

    kind: Literal["journal", "standing"]
    name: str
    path: str
    title: str
    lead: str
    published: date | None
    kinds: tuple[str, ...]
    photo: str
    photo_text: str
    photo_span: Span
    bakes: tuple[NamedBake, ...]
    markdown: str
    was: tuple[OldAddress, ...] = ()
    photo_focus: tuple[int, int] | None = None
    focus_span: Span | None = None


def unknown_bakes(articles: Iterable[Article], names: Collection[str]) -> Iterator[Diagnostic]:
    """An error for each recipe that a page names and nobody has written."""
    for named in (named for article in articles for named in article.bakes if named.name not in names):
        message = f"there is no recipe called “{named.name}”"
        hint = (
            did_you_mean(named.name, names) or "The name of a recipe is the name of its file without “.md”."
        )
        yield Diagnostic(code="F040", message=message, span=named.span, hint=hint)
