"""Gift tags. In: a recipe's view and a paper size. Out: one sheet of tags, all alike, with cut marks."""
