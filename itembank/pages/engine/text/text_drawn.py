"""Draws text that is broken into lines, its formulas and its figures, tagged in reading order."""

from __future__ import annotations

from contextlib import nullcontext

from itembank.pages.engine.page.page import Page
from itembank.pages.engine.page.theme import INK
from itembank.pages.engine.pdf.tagging import Element
from itembank.pages.engine.text.flow import FORMULA_SCALE
from itembank.pages.engine.text.picture import draw_picture
from itembank.pages.engine.text.text_block import Block, Placed


def draw(page: Page, block: Block, x: float, top: float, *, colour: str = INK) -> None:
    """Draw a block from its top left corner, inside the element that is open.

    Words go straight into that element, or into a ``Span`` where formulas stand among them,
    so that the tags are in reading order.
    """
    document = page.document
    size = block.size
    formulas: dict[int, Element] = {}
    for number, line in enumerate(block.lines):
        last = number == len(block.lines) - 1
        y = top - line.baseline
        for place, placed in enumerate(line.placed):
            atom = placed.atom
            if atom.picture is not None:
                scaled = size * placed.scale
                draw_picture(page, atom.picture, x + placed.x, y, scaled, atom.other, size)
                continue
            if atom.maths is not None:
                _draw_maths(page, placed, x, y, size, colour, formulas)
                continue
            text = atom.text
            if place == len(line.placed) - 1 and not last and atom.layout is None:
                # A line's end is a space to whoever copies or reads the text.
                text += " "
            with document.tag("Span") if block.has_formula else nullcontext():
                if atom.layout is not None:
                    page.borrowed(x + placed.x, y, atom.layout, size * placed.scale, text, colour)
                else:
                    page.text(x + placed.x, y, text, size, bold=atom.bold, colour=colour)


def _draw_maths(
    page: Page,
    placed: Placed,
    x: float,
    y: float,
    size: float,
    colour: str,
    elements: dict[int, Element],
) -> None:
    """Draw a formula, or a later piece of one into the element of its first."""
    atom = placed.atom
    maths = atom.maths
    assert maths is not None
    document = page.document
    # Pieces of one formula are one element, so that it is read out once and whole.
    if atom.first:
        element = elements[id(maths)] = document.formula(maths)
    else:
        element = elements[id(maths)]
    with document.back_in(element):
        if atom.layout is None:
            page.formula_text(
                x + placed.x, y, atom.text, size * placed.scale, bold=atom.bold, colour=colour
            )
        else:
            page.formula(
                x + placed.x,
                y,
                atom.layout,
                size * FORMULA_SCALE * placed.scale,
                colour=colour,
            )
