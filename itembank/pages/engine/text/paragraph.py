"""Running text with formulas in it: broken into lines, measured, then drawn.

    flow = Flow(item.prompt)
    block = measure(flow, width=400, size=28)
    draw(page, block, x=36, top=500)

A line is as high as the tallest thing in it. Text is set ragged right; a number and its unit
stay together (:mod:`.line_breaking`); a figure stands below its words or beside them, whichever
is lower and still reads well. Blocks are drawn by :mod:`.text_drawn`.
"""

from __future__ import annotations

from collections.abc import Iterable
from math import inf

from itembank.pages.engine.faces.fonts import face
from itembank.pages.engine.text.flow import Atom, Flow, Piece, Strong, as_text
from itembank.pages.engine.text.line_breaking import lines_of
from itembank.pages.engine.text.text_block import Block, Line, answered
from itembank.pages.engine.text.text_drawn import draw

__all__ = [
    "Atom",
    "Block",
    "Flow",
    "Line",
    "Piece",
    "Strong",
    "after_figure",
    "answered",
    "as_text",
    "draw",
    "measure",
    "one_line",
]

GAP = 0.28
"""Room between the lowest ink of a line and the highest of the next, in ems."""

AXIS = 0.25
"""Height of the middle of a minus and of a fraction's bar above the baseline, in ems."""


def measure(
    flow: Flow,
    width: float,
    size: float,
    gap: float = GAP,
    pictures: float = 1.0,
    lowest: bool = False,
) -> Block:
    """Break `flow` into lines no wider than `width` points, at `size` points.

    `gap` is the room between the lowest ink of a line and the highest of the next, in ems. Figures
    are set at `pictures` times the size of the words. A figure stands right of its words where that
    is lower and still reads well; to have the `lowest` block, however it reads.
    """
    below = lines_of(flow, width / size, pictures).block(flow, size, gap)
    if len(flow.clusters) > 1 and (last := flow.clusters[-1].atoms[-1]).picture is not None:
        most = len(flow.clusters) if lowest else MOST_BESIDE
        beside = _beside(last, flow, (width, size, gap, pictures), most)
        if beside is not None and beside.height < below.height:
            return beside
    return below


PICTURE_GAP = 1.0
"""Room between words and the figure that stands right of them, in ems."""
LEAST_BESIDE = 7.0
"""The least room for words beside a figure, in ems."""
MOST_BESIDE = 5
"""Most lines of words in a narrow column beside a figure: with more, eyes jump back too often."""
EASY_BESIDE = 16.0
"""The room for words beside a figure in which any number of lines reads well, in ems: some 35
characters, the least that printers set running text in (common practice, no source)."""


def _beside(
    atom: Atom, flow: Flow, measures: tuple[float, float, float, float], most: int
) -> Block | None:
    """Return words with their figure to the right of them, or None where there is no room.

    In a narrow column stand no more than `most` lines.
    """
    width, size, gap, scale = measures
    wide, high = atom.width * scale, atom.ascent * scale
    room = width / size - wide - PICTURE_GAP
    if room < LEAST_BESIDE:
        return None
    lines = lines_of(flow, room, words=True)
    if lines.cramped or (room < EASY_BESIDE and len(lines.broken) > most):
        return None
    _, stacked, widest, height, first, *_ = lines.block(flow, size, gap)
    space = face(flow.bold).space
    # As near as the longest line lets it stand, so that eyes need not travel.
    x = widest / size + PICTURE_GAP
    picture = Line(high * size, (x + wide) * size, [(x, atom, scale)], size, space)
    tall = max(height, high * size)
    whole = picture.width
    return Block(size, [*stacked, picture], whole, tall, first, False, flow.has_formula)


def after_figure(
    flow: Flow,
    width: float,
    size: float,
    gap: float = GAP,
    pictures: float = 1.0,
    most: float = inf,
) -> tuple[Block, float] | None:
    """Return words with their figure to the left of them, and how high the words alone are.

    None where there is no figure, no room for words beside it, or more than `most` points of
    height are needed.
    """
    last = flow.clusters[-1].atoms[-1]
    if last.picture is None or len(flow.clusters) == 1:
        return None
    wide, high = last.width * pictures, last.ascent * pictures
    room = width / size - wide - PICTURE_GAP
    if room < LEAST_BESIDE:
        return None
    lines = lines_of(flow, room, words=True)
    if lines.cramped:
        return None
    _, stacked, widest, height, first, *_ = lines.block(flow, size, gap)
    tall = max(height, high * size)
    if tall > most:
        return None
    space = face(flow.bold).space
    by = wide + PICTURE_GAP
    # The words come first all the same for whoever hears or copies them.
    moved = [line.moved(by) for line in stacked]
    figure = Line(high * size, wide * size, [(0.0, last, pictures)], size, space)
    whole = widest + by * size
    return Block(size, [*moved, figure], whole, tall, first, False, flow.has_formula), height


def one_line(runs: str | Iterable[Piece], size: float, bold: bool = False) -> Block:
    """Return the runs set on one line, however long."""
    return measure(Flow(runs, bold), 1e6, size)
