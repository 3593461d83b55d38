"""What a page says to programs: JSON-LD in the vocabulary of schema.org.

In: the view of a page and of the publication. Out: a text for a script element, "" for a page without any. Only
what is truly known is said: no rating, no nutrition, no diet, no category that nobody stated.
"""
