"""A place of the publication under a title."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class PageLink:
    title: str
    path: str
