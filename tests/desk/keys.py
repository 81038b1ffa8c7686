"""A person at the desk who has a keyboard and nothing else."""

import re

import pytest

CALLED = (
    "(() => { const e = document.activeElement;"
    "return e.getAttribute('aria-label')"
    " || (e.labels && e.labels[0] && e.labels[0].textContent.trim())"
    " || e.textContent.trim().replace(/\\s+/g, ' ') || ''; })()"
)


class Keys:
    """Goes by Tab alone to what is called something, and does there what keys can do."""

    def __init__(self, page, base):
        self.page, self.base = page, base

    def open(self, address):
        """Open a page of the desk."""
        self.page.goto(self.base + address)

    def to(self, name, most=400):
        """Go on by Tab until what has the focus, which can be seen, is called `name`."""
        for _ in range(most):
            self.page.keyboard.press("Tab")
            if re.search(name, self.page.evaluate(CALLED)):
                assert self.page.evaluate("document.activeElement.matches(':focus-visible')")
                return
        pytest.fail(f"Tab never came to ‘{name}’ on {self.page.url}")

    def enter(self, name):
        """Press Enter on a link or a button, and wait for the page that comes."""
        self.to(name)
        with self.page.expect_navigation():
            self.page.keyboard.press("Enter")

    def write(self, name, text):
        """Write into a field, in place of what is there."""
        self.to(name)
        self.page.keyboard.press("ControlOrMeta+a")
        self.page.keyboard.type(text)

    def choose(self, name, beginning):
        """Choose from a list by typing how a line of it begins."""
        self.to(name)
        self.page.keyboard.type(beginning)
        chosen = self.page.evaluate("document.activeElement.selectedOptions[0].textContent.trim()")
        assert chosen.startswith(beginning), chosen

    def sees(self, words):
        """Wait until words are on the page."""
        self.page.get_by_text(words).first.wait_for()
