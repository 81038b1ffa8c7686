"""The page of all parts shows each of them, so that the tests of pages meet every state."""

import re

from itembank.desk.replying.replies import TEMPLATES

BY_THEIR_PAGES = {"answers", "outlook", "question", "question_faults", "results"}
"""Parts whose own pages, which the tests of pages go through, show all their states."""


def test_every_part_is_shown_in_every_class_it_gives(looking):
    page = looking.get("/shown-parts")
    assert page.status_code == 200
    shown = (TEMPLATES / "shown_parts.html").read_text()
    for path in sorted((TEMPLATES / "parts").glob("*.html")):
        text = path.read_text()
        if path.stem in BY_THEIR_PAGES or "{% macro" not in text:
            continue
        for name in re.findall(r"{% macro (\w+)\(", text):
            assert f"{name}(" in shown, f"{path.name}: {name} is not shown"
        for state in re.findall(r'class="(?:state )?(state-\w+)"', text):
            assert state in page.text, f"{path.name}: {state} is not shown"


def test_no_page_links_to_it(looking):
    for address in ("/", "/set-up", "/class/8K", "/questions"):
        assert "shown-parts" not in looking.get(address).text
