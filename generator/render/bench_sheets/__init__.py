"""The sheet for the bench. In: a recipe's view and a paper size. Out: a PDF in large print to write on."""
