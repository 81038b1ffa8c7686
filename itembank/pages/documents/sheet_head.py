"""The head of a paper: whose it is, the lesson, and places for the seat code and the score."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from itembank.packs.data.pack import Band, Pack
from itembank.pages.documents.slides import lesson_line
from itembank.pages.engine.faces.fonts import ASCENT, CAP_HEIGHT, face, plain
from itembank.pages.engine.page import theme
from itembank.pages.engine.page.page import Page
from itembank.pages.engine.page.signs import least_side, sign
from itembank.pages.engine.paper import LEFT, RIGHT, WIDTH, Paper, Part, text_part
from itembank.pages.engine.text.paragraph import Block, Flow, draw, measure

SCORE_LINE = 2.6
"""Length of the line to write a score on, in ems."""


class Head(NamedTuple):
    """What stands above the questions: a name, whose bands it is for, words, and the marks."""

    name: str
    bands: Sequence[Band]
    words: Sequence[str]
    marks: int


def draw_head(paper: Paper, pack: Pack, head: Head) -> None:
    """Draw the sheet's name, whose bands it is for, the lesson, and places for code and score."""
    page, size = paper.page, paper.size
    document = page.document
    large = size + 8
    y = paper.y - large * CAP_HEIGHT - 4
    with document.tag("H1"):
        page.text(LEFT, y, head.name, large, bold=True, colour=theme.ACCENT)
    x = LEFT + face(True).width(head.name) * large + 1.2 * size
    label = "Seat code"
    line = max(4.3 * size, face(True).width(plain(paper.seat)) * size + 0.5 * size)
    right = RIGHT - line - 6
    room = right - face().width(label) * size - size - x
    if not paper.large:
        _signs(page, head.bands, x, y, size, room)
    with document.tag("P"):
        page.text(right, y, label, size, align="right")
        if paper.seat:
            middle = RIGHT - line / 2
            page.text(middle, y, plain(paper.seat), size, bold=True, align="centre")
    with page.artifact():
        page.line((RIGHT - line, y - 2), (RIGHT, y - 2), width=1.0)
    paper.y = y - 0.75 * size
    if paper.large and head.bands:
        paper.place([_large_signs(head.bands, size)])
    lesson = text_part([lesson_line(pack.lesson)], WIDTH, size, colour=theme.QUIET)
    lesson.draw(page, LEFT, paper.y)
    paper.y -= lesson.height + 0.35 * size
    paper.y -= _score(paper, head) + 0.45 * size
    with page.artifact():
        page.rect(LEFT, paper.y, WIDTH, 1.8, fill=theme.ACCENT)
    paper.y -= 1.1 * size


def _score(paper: Paper, head: Head) -> float:
    """Draw what a question is worth, and a place for the score; return the height taken."""
    page, size = paper.page, paper.size
    out_of = f"out of {head.marks}"
    x = RIGHT - face().width(out_of) * size - 6
    start = x - SCORE_LINE * size
    room = start - face().width("Score") * size - 6 - 1.5 * size - LEFT
    words = "\n".join(filter(None, head.words))
    width = measure(Flow(words or " "), room, paper.least)
    baseline = max(width.baseline, ASCENT * size)
    low = paper.y - baseline
    if words:
        with page.document.tag("P"):
            draw(page, width, LEFT, low + width.baseline, colour=theme.QUIET)
    with page.document.tag("P"):
        page.text(start - 6, low, "Score", size, align="right")
        page.text(RIGHT, low, out_of, size, align="right")
    with page.artifact():
        page.line((start, low - 2), (x, low - 2), width=1.0)
    return baseline + max(0.25 * size, width.height - width.baseline)


def _signs(page: Page, bands: Sequence[Band], x: float, y: float, size: float, room: float) -> None:
    """Draw the signs of bands, with their names where there is room, inside `room` points."""
    side = 1.75 * size
    names = [measure(Flow(band.name), 1e6, size) for band in bands]
    named = sum(side + 0.4 * size + name.width + size for name in names) - size <= room
    for band, name in zip(bands, names, strict=True):
        if room < side:
            return
        sign(page, band, x, y - 0.5 * size, side)
        step = side + 0.6 * size
        if named:
            with page.document.tag("P"):
                draw(page, name, x + side + 0.4 * size, y + name.baseline)
            step = side + 0.4 * size + name.width + size
        x += step
        room -= step


def _large_signs(bands: Sequence[Band], size: float) -> Part:
    """Return a row of signs, each so large that its letter is no smaller than the text."""
    side = max(least_side(band, size) for band in bands)
    names = [measure(Flow(band.name), WIDTH - side - 0.5 * size, size) for band in bands]
    placed: list[list[tuple[Band, Block]]] = [[]]
    room = WIDTH
    for band, name in zip(bands, names, strict=True):
        need = side + 0.5 * size + name.width + 1.2 * size
        if need - 1.2 * size > room:
            placed.append([])
            room = WIDTH
        placed[-1].append((band, name))
        room -= need
    high = max(side, *(name.height for name in names)) + 0.4 * size

    def show(page: Page, x: float, top: float) -> None:
        for row in placed:
            at = x
            for band, name in row:
                sign(page, band, at, top - (high + side) / 2, side)
                at += side + 0.5 * size
                with page.document.tag("P"):
                    draw(page, name, at, top - (high - name.height) / 2)
                at += name.width + 1.2 * size
            top -= high

    return Part(high * len(placed) + 0.3 * size, show)
