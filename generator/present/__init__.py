"""Decides what the reader sees; the last place that computes or rounds.

In: checked formulas, declarations, settings. Out: `views`, in which every number is already words,
and `data`, the exact numbers of recipe.json.
"""
