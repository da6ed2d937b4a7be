"""A real Chromium, as Debian packages it: every test of this folder drives it."""

import os
import shutil
from pathlib import Path

import pytest

from tests.browser.screens import TABLET

# Playwright's loop runs in the thread of the test, where Django would refuse its database.
os.environ.setdefault("DJANGO_ALLOW_ASYNC_UNSAFE", "true")

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(items):
    for item in items:
        if Path(__file__).parent in item.path.parents:
            item.add_marker("browser")


@pytest.fixture(scope="session")
def browser_type_launch_args(browser_type_launch_args):
    if CHROMIUM is None:
        pytest.skip("no chromium on the PATH; on Debian: apt-get install chromium")
    return {**browser_type_launch_args, "executable_path": CHROMIUM, "args": ARGUMENTS}


@pytest.fixture(scope="session")
def base_url(live_server):
    """Let tests write ``page.goto("/organs/")``."""
    return live_server.url


@pytest.fixture
def screen():
    """Give the size of the window: a tablet's, unless a test is told ``on_every_screen``."""
    return TABLET


@pytest.fixture
def javascript():
    """Tell whether scripts run; a test may be told ``with_and_without_javascript``."""
    return True


@pytest.fixture
def browser_context_args(browser_context_args, base_url, screen, javascript):
    return {
        **browser_context_args,
        "base_url": base_url,
        "viewport": screen,
        "java_script_enabled": javascript,
    }


@pytest.fixture
def page(page):
    """Give a page on which no script may fail and nothing may offend the security policy."""
    faults = []
    page.on("pageerror", lambda error: faults.append(str(error)))
    page.on("console", lambda message: faults.append(message.text) if _is_fault(message) else None)
    yield page
    assert faults == []


def _is_fault(message):
    # A form that is answered 422 is reported as a failed resource; that is no fault of the page.
    return message.type == "error" and "the server responded with a status of 4" not in message.text


@pytest.fixture
def sign_in(context, base_url):
    """Give what takes over the session of one of Django's signed-in test clients."""

    def take_over(client):
        session = client.cookies["sessionid"].value
        context.add_cookies([{"name": "sessionid", "value": session, "url": base_url}])

    return take_over
