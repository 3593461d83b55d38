"""A minute of changed inputs at each door, guided by what they reach: none of them is a traceback or a hang."""

import pytest

from tests.hostile.fuzz import fuzz, targets


@pytest.mark.long
@pytest.mark.parametrize("name", targets())
def test_no_changed_input_raises(name: str) -> None:
    tried, kept, faults = fuzz(name, seconds=60, seed=11)
    assert faults == []
    assert tried > kept > 1
