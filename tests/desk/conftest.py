"""One running desk for all tests of a process."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from generator.cli.main import main
from tests.desk.served import Served, viewing


@pytest.fixture(scope="session")
def served(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    root = tmp_path_factory.mktemp("desk") / "baking"
    assert main(["start", str(root)]) == 0
    with viewing(root) as running:
        yield running


@pytest.fixture
def recipe(served: Served) -> Path:
    return next((served.root / "recipes").glob("*.md"))
