"""A located recipe document becomes a checked formula: exact amounts, percentages, steps and times.

In: `source` documents, the catalogue and the pantry. Out: `model.Formula` values and diagnostics.
"""
