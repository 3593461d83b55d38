"""The table of who can eat what. In: its view. Out: one page for the desk, which must never be put on the site."""
