"""A publication as a whole: what of a content folder is new, what comes of it, and whether it says what it must.

In: the located files of a content folder and what the last make remembers. Out: what is understood, as a
`CheckResult`, and the tasks of the output, done, read back and written. `pipeline.py` calls these rooms in order.
"""
