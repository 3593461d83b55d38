"""Each case file: the findings of the checker are those written beside the lines, no more and no fewer."""

from collections.abc import Mapping
from datetime import date
from pathlib import Path

import pytest

from generator.diagnostics.diagnostic import Diagnostics
from generator.pipeline import check_folder
from tests.cases.reading import Case, finding_of, read_case

HERE = Path(__file__).parent
DAY = date(2026, 10, 1)
FILES = sorted(HERE.glob("**/*.case"))


def _diagnose(root: Path) -> tuple[Diagnostics, Mapping[str, str]]:
    """What the checker finds in a content folder on `DAY`, and the texts it found it in."""
    checked = check_folder(root, day=DAY)
    return checked.diagnostics, checked.texts


@pytest.fixture(params=FILES, ids=lambda file: str(file.relative_to(HERE)))
def case(request: pytest.FixtureRequest) -> Case:
    return read_case(request.param.read_text(encoding="utf-8"))


def test_findings_are_those_beside_the_lines(case: Case, tmp_path: Path) -> None:
    case.write(tmp_path / "content")
    diagnostics, _ = _diagnose(tmp_path / "content")
    found = sorted(map(finding_of, diagnostics))
    assert list(map(str, found)) == list(map(str, case.expected)), case.about
    assert [each for each in diagnostics if not each.hint] == []


def test_there_are_cases() -> None:
    assert len(FILES) >= 90
