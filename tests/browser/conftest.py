"""A real server and a real Chromium, for the few tests that nothing less can make."""

import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
from browsing import Served
from playwright.sync_api import Browser, Page, sync_playwright
from waitress.server import create_server

from trainer import create_app, web
from trainer.cli.demo import demo_config, fill

CHROMIUM = Path("/usr/bin/chromium")
PHONE = {"width": 360, "height": 740}
DESKTOP = {"width": 1280, "height": 900}
_SWITCHES = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
]


@pytest.fixture(scope="session")
def served(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    """The demo, on a free port."""
    app = create_app(demo_config(tmp_path_factory.mktemp("instance")))
    web.prepare(app)
    fill(app)
    server = create_server(app, host="127.0.0.1", port=0, threads=4)
    thread = threading.Thread(target=server.run, daemon=True)
    thread.start()
    yield Served(f"http://127.0.0.1:{server.effective_port}", app)
    server.close()
    thread.join(5)


@pytest.fixture(scope="session")
def chromium() -> Iterator[Browser]:
    """Debian's Chromium; tests are left out loudly where it isn't installed."""
    if not CHROMIUM.exists():
        pytest.skip("Chromium isn't installed: apt-get install chromium.")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=_SWITCHES)
        yield browser
        browser.close()


@pytest.fixture
def phone(chromium: Browser, served: Served) -> Iterator[Page]:
    """A phone held upright, touched with a thumb."""
    yield from _opened(chromium, served, viewport=PHONE, has_touch=True, is_mobile=True)


@pytest.fixture
def plain_phone(chromium: Browser, served: Served) -> Iterator[Page]:
    """The same phone with scripts off."""
    yield from _opened(chromium, served, viewport=PHONE, java_script_enabled=False)


@pytest.fixture
def desk(chromium: Browser, served: Served) -> Iterator[Page]:
    """A desktop window."""
    yield from _opened(chromium, served, viewport=DESKTOP)


def _opened(chromium: Browser, served: Served, **settings: object) -> Iterator[Page]:
    context = chromium.new_context(base_url=served.address, **settings)  # type: ignore[arg-type]
    context.set_default_timeout(10_000)
    yield context.new_page()
    context.close()
