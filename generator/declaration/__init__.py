"""What the eater must be told, derived from the weighed formula and the packs, never typed.

In: `formula.model` values. Out: `model.Declaration` for a region, and what each line carries.
"""
