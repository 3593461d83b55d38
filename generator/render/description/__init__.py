"""The block of text under a recipe's film.

In: a recipe's view and a limit in bytes. Out: plain text inside the limit, and the names of what did not fit.
"""
