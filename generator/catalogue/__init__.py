"""What is known of ingredients: weights, composition, allergens, each with its source.

In: the packaged `data/*.yaml` and the maker's pantry document. Out: frozen `Ingredient` rows, found by name.
"""
