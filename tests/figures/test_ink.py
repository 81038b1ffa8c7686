"""On the page itself: no label shares an inked dot with anything, and none is small.

Each label is set alone, and everything but the labels alone, and what comes out of the PDF is laid
over each other. So hatchings, arrowheads, the bars of fractions and the real letters count, of
which the drawing's own boxes know nothing.
"""

from __future__ import annotations

import io
from dataclasses import replace
from functools import cache

import pikepdf
import pypdfium2
import pytest
from PIL import Image, ImageChops

from itembank.figures.drawing import Mark, Text, text_box
from itembank.figures.figure import Figure, drawn
from itembank.packs.data.convert import picture
from itembank.pages.engine.maths.formula import scripts_at_least
from itembank.pages.engine.page.page import Document, Page
from itembank.pages.engine.text.picture import MARGIN, _Pen, draw_marks, draw_picture
from tests.depth import cases, left, whole
from tests.figures.every_figure import examples, names

AMONG = cases(20, 40, 40)
"""Of so many examples of a kind those are drawn whose labels want most room."""
SIZES = {
    "sheet": (14.0, 0.0),
    "large print": (18.0, 1.0),
    "slide": (24.0, 0.0),
    "small": (18.0, 0.0),
}
"""Type of the figure in points, and the least size of powers as a share of it."""
LINES = {"small": 24.0}
"""A small figure on a slide has lines as thick as a large one."""
DOTS = 2.0
"""Dots of a rendered page to a point."""
INKED = 160
"""A dot darker than this is inked: paler ones are the soft edges of strokes."""

each_kind_on_a_surface = pytest.mark.parametrize(
    ("name", "surface"),
    [
        (name, surface) if (kind + place) % len(SIZES) == 0 else left(name, surface)
        for kind, name in enumerate(names())
        for place, surface in enumerate(SIZES)
    ],
)
"""In `make test` each kind on one surface, and each surface with many kinds."""


@cache
def crowded(name: str) -> list[Figure]:
    """Return the examples of a kind whose labels want most room, each way of wanting it."""
    found = list(examples(name, AMONG, seed=7))

    def labels(figure: Figure) -> list[Text]:
        return [mark for mark in drawn(figure).marks if isinstance(mark, Text)]

    def widest(figure: Figure) -> object:
        return max(
            (text_box(label).right - text_box(label).left for label in labels(figure)), default=0
        )

    return [
        max(found, key=widest),
        max(found, key=lambda figure: len(labels(figure))),
        max(found, key=lambda figure: len(drawn(figure).marks)),
    ]


def layers(figure: Figure, size: float, monkeypatch, lines: float = 0.0) -> bytes:
    """Return a page with all of a figure but its labels, and a page for each label alone."""
    made = drawn(figure)
    across = ((float(made.width) + 2 * MARGIN) * size, (float(made.height) + 2 * MARGIN) * size)
    document = Document("Ink")

    def page() -> Page:
        return document.page(across)

    rest = page()
    with monkeypatch.context() as patch, document.tag("Figure", alt="all but the labels"):
        # The patch of paper under a label stays: it belongs to what the label stands on.
        patch.setattr(Page, "text", lambda *_, **__: None)
        patch.setattr(Page, "label_formula", lambda *_: None)
        pen = _Pen(rest, made, MARGIN * size, MARGIN * size, size, lines)
        for mark in made.marks:
            pen.mark(mark)
        pen.finish_line()
    for mark in made.marks:
        if isinstance(mark, Text):
            alone = page()
            with document.tag("Figure", alt="a label"):
                _Pen(alone, made, MARGIN * size, MARGIN * size, size).mark(mark)
    return document.finish()


def ink(data: bytes) -> list[Image.Image]:
    """Return the inked dots of each page."""
    with pypdfium2.PdfDocument(data) as document:
        return [
            page.render(scale=DOTS).to_pil().convert("L").point(lambda tone: 255 * (tone < INKED))
            for page in document
        ]


@whole
@each_kind_on_a_surface
def test_no_label_shares_an_inked_dot(name: str, surface: str, monkeypatch) -> None:
    size, scripts = SIZES[surface]
    with scripts_at_least(scripts):
        for figure in crowded(name):
            labels = [mark for mark in drawn(figure).marks if isinstance(mark, Text)]
            rest, *alone = ink(layers(figure, size, monkeypatch, LINES.get(surface, 0.0)))
            for mark, page in zip(labels, alone, strict=True):
                assert page.getbbox(), (figure, mark.content)
                assert not ImageChops.darker(rest, page).getbbox(), (figure, mark.content)
                rest = ImageChops.lighter(rest, page)


@whole
@each_kind_on_a_surface
def test_no_type_is_smaller_than_its_page_allows(name: str, surface: str) -> None:
    size, scripts = SIZES[surface]
    with scripts_at_least(scripts):
        document = Document("Type")
        for figure in crowded(name):
            draw_picture(document.page((500, 400)), picture(figure), 10, 10, size)
    found = [
        float(operands[1])
        for page in pikepdf.open(io.BytesIO(document.finish())).pages
        for operands, operator in pikepdf.parse_content_stream(page)
        if str(operator) == "Tf"
    ]
    # Powers stand at 0.7 of the type on slides and sheets (STIX Two Math's own share).
    assert all(each >= size * (scripts or 0.7) for each in found)
    whole = [each for each in found if each >= size]
    assert bool(whole) is bool(found)


ON_GRIDS = {
    "coordinate grid": ("upright", "level"),
    "scatter graph": ("upright", "level"),
    "line graph": ("upright", "line", "small line"),
    "bar chart": ("line", "small line"),
    "net": ("square line",),
    "sample space": ("cell box",),
}
"""The strokes of a kind that make its grid; of a chart the line at nought is its axis."""


@pytest.mark.parametrize("name", ON_GRIDS)
def test_a_grid_stands_back_behind_what_is_drawn_on_it(name: str) -> None:
    """On a slide shown 480 dots wide no stroke is under a dot: the grid has to be paler."""

    of_grid = ON_GRIDS[name]

    def axis(mark: Mark) -> bool:
        return mark.role == "line" and all(point.y == 0 for point in mark.points)

    def darkest(figure: Figure, faint: bool) -> int:
        made = drawn(figure)
        marks = [m for m in made.marks if not isinstance(m, Text)]
        kept = [m for m in marks if (m.role in of_grid and not axis(m)) is faint]
        document = Document("Grid")
        across = (float(made.width + 2) * 18, float(made.height + 2) * 18)
        draw_marks(document.page(across), replace(made, marks=tuple(kept)), "x", 0, 0, 18.0, 24.0)
        with pypdfium2.PdfDocument(document.finish()) as opened:
            tones = opened[0].render(scale=0.5).to_pil().convert("L").getextrema()
        return int(tones[0])

    shown = [
        figure for figure in crowded(name) if any(m.role in of_grid for m in drawn(figure).marks)
    ]
    assert shown
    for figure in shown:
        assert darkest(figure, faint=False) < 60
        assert 100 <= darkest(figure, faint=True) < 200


def test_a_label_on_a_stroke_is_found(monkeypatch) -> None:
    """The test itself: a figure with a stroke through its label fails it."""
    from itembank.figures.drawing import Point, Stroke, drawing

    figure = next(examples("number line", 1))
    label = Text(Point(2, 0), "14")
    made = drawing((Stroke((Point(0, 0), Point(4, 0))), label))
    monkeypatch.setattr("tests.figures.test_ink.drawn", lambda _: made)
    rest, alone = ink(layers(figure, 24.0, monkeypatch))
    assert ImageChops.darker(rest, alone).getbbox()
    on_paper = drawing((Stroke((Point(0, 0), Point(4, 0))), replace(label, paper=True)))
    monkeypatch.setattr("tests.figures.test_ink.drawn", lambda _: on_paper)
    rest, alone = ink(layers(figure, 24.0, monkeypatch))
    assert not ImageChops.darker(rest, alone).getbbox()
