"""The feeds of a publication.

In: the view of the whole publication. Out: `site/feed.xml` (Atom) and `site/feed.json` (JSON Feed 1.1), both
made from the same entries, newest first.
"""
