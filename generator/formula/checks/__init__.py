"""One file a check. A check takes the formula, the recipe as written, the shelf and the other formulas, and yields
diagnostics; its docstring is its manual. `listing` names them all in the order in which they run."""
