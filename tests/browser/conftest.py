"""A browser, and two publications as a host would serve them, from a folder below the root: sample and demo."""

import shutil
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

import pytest
from playwright.sync_api import Browser, sync_playwright

from generator.render.output import Product
from generator.render.site.publication import render_site
from generator.render.structured_data.render import structured_data
from tests.demo import checked
from tests.render.site.sample import media, sample_site

NAMES = ("chromium", "chromium-browser", "google-chrome")


class _Quiet(SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: object) -> None:
        """Says nothing: a test's output is its own."""


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Headless Chromium. Where there is none the tests fail, since unseen pages are not known to be right."""
    found = next((path for name in NAMES if (path := shutil.which(name))), None)
    if found is None:
        pytest.fail("no Chromium on this machine: install the package chromium")
    with sync_playwright() as playwright:
        started = playwright.chromium.launch(
            executable_path=found, args=["--no-sandbox", "--disable-gpu", "--disable-quic"]
        )
        yield started
        started.close()


def _sample() -> Iterator[Product]:
    return render_site(
        sample_site(), media=media, structured=lambda view: '{"@context": "https://schema.org"}'
    )


def _demo() -> Iterator[Product]:
    """The pages of the demo as they stand on a fixed day."""
    site = checked().site
    return render_site(site, media=checked().media, structured=partial(structured_data, site=site))


@pytest.fixture(scope="session")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder that holds the sample's "site/"."""
    return _written(_sample(), tmp_path_factory.mktemp("sample"))


@pytest.fixture(scope="session")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder that holds the demo's "site/"."""
    return _written(_demo(), tmp_path_factory.mktemp("demo"))


def _written(products: Iterator[Product], folder: Path) -> Path:
    for product in products:
        target = folder / product.path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(product.content)
    return folder


@contextmanager
def serving(folder: Path) -> Iterator[str]:
    """The address of the site in `folder` on loopback, with a slash at its end."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(_Quiet, directory=str(folder)))
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    try:
        yield f"http://127.0.0.1:{server.server_port}/site/"
    finally:
        server.shutdown()
        server.server_close()
        thread.join()


@pytest.fixture(scope="session")
def served(built: Path) -> Iterator[str]:
    """The address of the sample."""
    with serving(built) as address:
        yield address


@pytest.fixture(scope="session")
def served_demo(demo: Path) -> Iterator[str]:
    """The address of the demo."""
    with serving(demo) as address:
        yield address
