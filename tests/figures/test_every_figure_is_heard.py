"""Pages with figures of every kind: no open checker of files or of web pages objects to any."""

from __future__ import annotations

from html import escape
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe

from itembank.figures.figure import Figure, words
from itembank.figures.svg import svg
from itembank.packs.data.convert import picture
from itembank.pages.engine.page.page import Document
from itembank.pages.engine.text.picture import draw_picture
from tests.depth import cases, left, whole
from tests.figures.every_figure import examples, names
from tests.pages.checkers import assert_accessible

EACH = cases(1, 3, 3)
"""Figures of a kind."""
NARROW, WIDE = 480, 1100


def figures() -> list[tuple[str, Figure]]:
    return [(name, figure) for name in names() for figure in examples(name, EACH, seed=12)]


@whole
@pytest.mark.parametrize("name", names())
def test_a_page_with_a_figure_is_heard_without_a_warning(name: str, tmp_path: Path) -> None:
    document = Document(f"Figures: {name}")
    for number, figure in enumerate(examples(name, EACH, seed=12), start=1):
        page = document.page((595.28, 841.89))
        with document.tag("H1"):
            page.text(60, 740, f"Figure {number}", 18, bold=True)
        draw_picture(page, picture(figure), 60, 420, 14)
    assert_accessible(document.finish(), tmp_path / "figures.pdf")


@whole
@pytest.mark.parametrize("width", [NARROW, left(WIDE)])
def test_axe_finds_nothing_on_a_page_of_all_figures(browser, width: int) -> None:
    shown = "".join(
        f"<section><h2>{escape(name)} {number}</h2>{svg(figure)}</section>"
        for number, (name, figure) in enumerate(figures())
    )
    page = browser.new_page(viewport={"width": width, "height": 900})
    page.set_content(
        "<!DOCTYPE html><html lang='en-GB'><head><title>Figures</title>"
        f"<meta name='viewport' content='width=device-width'></head><body><main><h1>Figures</h1>"
        f"{shown}</main></body></html>"
    )
    try:
        assert Axe().run(page).response["violations"] == []
        heard = page.eval_on_selector_all("svg", "all => all.map(s => s.ariaLabel)")
        assert heard == [words(figure) for _, figure in figures()]
    finally:
        page.close()
