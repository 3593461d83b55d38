"""A change of the maker's own files by a command. In: the folder as it stands, and what to correct.

Out: the bytes of each file as they should be, what they say differently in a baker's words, or why that cannot be.
"""
