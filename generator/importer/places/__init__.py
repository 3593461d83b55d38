"""Each line of an old text finds its place: its dress taken off, one thing on a line, titles, parts and lists known.

In: numbered lines. Out: the same lines, each with one place, and what is doubtful about it.
"""
