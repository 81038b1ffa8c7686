"""One browser for every test that looks at a page: Debian's Chromium, driven by Playwright.

The conftest of all tests takes it in: a second driver cannot start beside the first.
"""

import os
import shutil
from pathlib import Path

import pytest

NAMES = ("chromium-headless-shell", "chromium", "chromium-browser", "google-chrome")
"""The first that is there is taken: the shell draws no window around each page, and so takes a
small part of what a whole browser takes to open one.
"""
MISSING = (
    "These tests look at pages in a browser, and there is no Chromium here: install it, on Debian "
    "with apt-get install -y --no-install-recommends chromium-headless-shell, or name one in "
    "ITEMBANK_CHROMIUM."
)


def chromium():
    """Return the path of the browser.

    Raises:
        pytest.fail.Exception: there is none; the message says how to get it.
    """
    named = os.environ.get("ITEMBANK_CHROMIUM")
    found = next(filter(None, map(shutil.which, [named] if named else NAMES)), None)
    if found is None:
        pytest.fail(MISSING, pytrace=False)
    return Path(found)


@pytest.fixture(scope="session")
def browser():
    """Be a browser that stays open for the whole session; each test opens pages of its own."""
    path = chromium()
    try:
        from playwright.sync_api import sync_playwright
    except ImportError:
        pytest.fail("Playwright is missing: pip install 'itembank[test]'.", pytrace=False)
    with sync_playwright() as driver:
        # In a container the browser's own sandbox cannot be set up; pages are the project's own.
        opened = driver.chromium.launch(
            executable_path=str(path),
            args=["--no-sandbox", "--disable-dev-shm-usage", "--disable-gpu"],
        )
        yield opened
        opened.close()
