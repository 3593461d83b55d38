"""The command `tinleaf`: `main` reads the command line, one module for each command does the work.

In: words typed by a person. Out: text for that person, and an exit: 0 well, 1 mistakes in the content,
2 a mistake on the command line.
"""
