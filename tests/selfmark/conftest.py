"""What the tests of the page share: the one browser of the run."""

from tests.browser import browser as browser
