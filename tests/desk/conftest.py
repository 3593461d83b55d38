"""The running desk, and one recipe of its folder."""

from pathlib import Path

import pytest

from tests.desk.served import Served


@pytest.fixture(scope="session")
def served(running_desk: Served) -> Served:
    return running_desk


@pytest.fixture
def recipe(served: Served) -> Path:
    return served.root / "recipes" / "saturday-tin-loaf.md"
