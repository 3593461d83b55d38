"""Old work comes in: a text, a saved page or a table goes in, recipe files with every doubt marked come out.

Nothing here reads a folder or writes a file; what a maker's kitchen knows is handed in as a `Kitchen`.
"""
