"""Gift tags. In: a tag's view and a paper size. Out: sheets of tags, fronts and backs in turn, with cut marks."""
