"""A browser, and the sample publication as a host would serve it: from a folder below the root."""

import shutil
import threading
from collections.abc import Iterator
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

import pytest
from playwright.sync_api import Browser, sync_playwright

from generator.render.site.publication import render_site
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


@pytest.fixture(scope="session")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder that holds the sample's "site/", with files of the other renderers as empty stand-ins."""
    folder = tmp_path_factory.mktemp("publication")
    made = render_site(
        sample_site(), media=media, structured=lambda view: '{"@context": "https://schema.org"}'
    )
    for product in made:
        target = folder / product.path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(product.content)
    return folder


@pytest.fixture(scope="session")
def page_paths(built: Path) -> tuple[str, ...]:
    """Every page, from the root of the site."""
    root = built / "site"
    return tuple(sorted(path.relative_to(root).as_posix() for path in root.rglob("*.html")))


@pytest.fixture(scope="session")
def served(built: Path) -> Iterator[str]:
    """The address of the site on loopback, with a slash at its end."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(_Quiet, directory=str(built)))
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    yield f"http://127.0.0.1:{server.server_port}/site/"
    server.shutdown()
    server.server_close()
    thread.join()
