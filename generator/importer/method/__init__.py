"""The prose of a method: its steps, its times and heats, and where it names the lines of the formula."""
