"""What is of the paper's colour in a picture is so on a dark page, and in the system's colours.

A hollow end of an inequality would be a full one there, and a block of a balance would hide the
number in it.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from itembank.figures.figure import drawn
from itembank.figures.svg import svg
from tests.figures.every_figure import examples, names

AMONG = 30
INSIDE = Path(__file__).parents[2] / "itembank"
STYLES = ("desk/static/board.css", "desk/static/desk.css", "selfmark/page/page.css")
OTHER = """() => {
  const ground = getComputedStyle(document.body).backgroundColor;
  return [...document.querySelectorAll("svg.figure [fill=white]")]
    .map((mark) => getComputedStyle(mark).fill).filter((fill) => fill !== ground);
}"""


@cache
def with_paper() -> tuple[str, ...]:
    """Return a picture of each kind that has something of the paper's colour, each way of it."""
    found = {}
    for name in names():
        for figure in examples(name, AMONG, seed=3):
            marks = {
                (type(mark).__name__, getattr(mark, "fill", ""), getattr(mark, "paper", False))
                for mark in drawn(figure).marks
            }
            for mark in marks:
                if mark[1] == "paper" or mark[2]:
                    found[name, mark] = svg(figure)
    return tuple(found.values())


@pytest.mark.parametrize("style", STYLES)
@pytest.mark.parametrize("dark", [False, True])
@pytest.mark.parametrize("colours", ["none", "active"])
def test_what_is_paper_has_the_colour_of_the_page(browser, style, dark, colours) -> None:
    pictures = with_paper()
    assert any("<circle" in text and 'fill="white"' in text for text in pictures)
    css = (INSIDE / style).read_text("utf-8")
    with browser.new_context(
        forced_colors=colours, color_scheme="dark" if dark else "light"
    ) as context:
        page = context.new_page()
        page.set_content(
            f'<html class="{"dark" if dark else ""}"><style>{css}</style><body>{"".join(pictures)}'
        )
        assert page.locator("svg.figure [fill=white]").count() > 10
        assert page.evaluate(OTHER) == []
