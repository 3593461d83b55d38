"""How many examples a law is tried on: some in every run, all of them in `make long`."""

import os

ALL = bool(os.environ.get("TINLEAF_LONG"))


def lots(examples: int) -> int:
    """So many in the long run, and a quarter of them, but no fewer than thirty, in every other."""
    return examples if ALL else max(30, examples // 4)
