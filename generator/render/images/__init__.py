"""Pictures that the project draws itself. In: a recipe's view. Out: PNG files for the maker's desk."""
