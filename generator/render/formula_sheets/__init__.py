"""Formula sheets. In: the view of one recipe. Out: a PDF for its page, and one for the desk."""
