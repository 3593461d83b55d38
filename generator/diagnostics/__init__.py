"""What is wrong in a maker's files, where, and what to type instead.

In: places (`span`), a code from the one table (`codes`). Out: text for a terminal or plain objects for JSON.
"""
