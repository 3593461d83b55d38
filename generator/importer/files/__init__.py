"""From the bytes of a file, a saved page or a table to the numbered lines of the recipes that stand in it."""
