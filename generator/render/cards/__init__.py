"""Recipe cards. In: a recipe's view. Out: a PDF for each card size, as many sides as the recipe needs."""
