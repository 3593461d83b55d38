"""What every test has: settled conditions, so that a result depends on the code alone."""

import os
from collections.abc import Generator, Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from xdist.remote import Producer
from xdist.scheduler import LoadScopeScheduling

from generator.wording.speech import NOTATION, speak

if TYPE_CHECKING:
    from tests.desk.served import Served

ROOT = Path(__file__).resolve().parent.parent


@pytest.fixture
def project() -> Path:
    """The top folder of the checkout."""
    return ROOT


@pytest.fixture(scope="session", autouse=True)
def _own_cache(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """A cache folder for this run alone, for what is made once for several tests: what the person who runs them has
    made answers for nothing, and nothing is left there. Cut fonts, translated templates and what other programs keep
    are the same in every run and take long: they stay where they are."""
    usual = Path(os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache")
    ours = tmp_path_factory.mktemp("cache")
    (ours / "tinleaf").mkdir()
    for name in ("fonts", "templates"):
        (usual / "tinleaf" / name).mkdir(parents=True, exist_ok=True)
        (ours / "tinleaf" / name).symlink_to(usual / "tinleaf" / name)
    for each in usual.iterdir():
        if each.name != "tinleaf":
            (ours / each.name).symlink_to(each)
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", str(ours))
        patch.setenv("TINLEAF_CACHE_BYTES", "500000000")
        yield


@pytest.fixture(autouse=True)
def _settled(monkeypatch: pytest.MonkeyPatch) -> None:
    """No colour from the person's own terminal, no clock zone but the content's, and nothing made before."""
    for name in ("NO_COLOR", "FORCE_COLOR", "TINLEAF_TRACEBACK"):
        monkeypatch.delenv(name, raising=False)
    # What another run has made must not answer for this one; a test of the cache brings its own.
    monkeypatch.setenv("TINLEAF_CACHE_BYTES", "0")
    # A test that reads a folder in another language must not leave it spoken.
    speak(NOTATION)


@pytest.fixture(scope="session")
def running_desk(tmp_path_factory: pytest.TempPathFactory) -> Iterator["Served"]:
    """One running desk, on a folder as `tinleaf start` makes it, for every test that asks one."""
    from generator.cli.main import main
    from tests.desk.served import viewing

    root = tmp_path_factory.mktemp("desk") / "baking"
    assert main(["start", str(root)]) == 0
    with viewing(root) as running:
        yield running


class ByFile(LoadScopeScheduling):  # type: ignore[misc]
    """What is made for one test of a file serves the others in the same process; so do a browser and its sites."""

    def _split_scope(self, nodeid: str) -> str:
        path = nodeid.partition("::")[0]
        together = ("tests/browser", "tests/render/paper")
        return next((folder for folder in together if path.startswith(f"{folder}/")), path)


def pytest_xdist_make_scheduler(config: pytest.Config, log: Producer) -> LoadScopeScheduling:
    return ByFile(config, log)


def is_ci() -> bool:
    return os.environ.get("CI", "").lower() not in ("", "0", "false")


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(item: pytest.Item) -> Generator[None, pytest.TestReport, pytest.TestReport]:
    """In CI a browser test that cannot run is a failure, not a skip."""
    report = yield
    if is_ci() and report.skipped and item.get_closest_marker("browser"):
        report.outcome = "failed"
        report.longrepr = f"a browser test must run in CI, but was skipped: {report.longrepr}"
    return report
