"""What is asked for one at a time, from what the pipeline understood: for the terminal, the preview and the desk.

In: a checked content folder and a wish. Out: sheets, a book, tags for people, one file of the output, a recipe in the
order of weighing, a bake day, old work brought in. Nothing here belongs to a make.
"""
