"""A content folder as text. In: files. Out: located documents, the maker's settings, and what is wrong.

Nothing here knows an ingredient or an amount; `write` is the only room that changes a maker's file.
"""
