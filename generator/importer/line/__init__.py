"""One ingredient line of an old text becomes a line that our own reader takes, or a question."""
