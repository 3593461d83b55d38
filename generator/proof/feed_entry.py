"""What a reader of a feed meets of one bake or post."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class FeedEntry:
    url: str
    title: str
    published: str
    updated: str
    summary: str
    html: str
