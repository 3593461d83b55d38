"""The packaged tables, parsed: by the C reader of YAML where it is there, which takes a tenth of the time."""

from typing import Any

import yaml

_LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


def parsed_table(text: str) -> Any:
    """The content of a table of ours; both readers build the same values."""
    return yaml.load(text, Loader=_LOADER)
