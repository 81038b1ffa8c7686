"""The map of topics on paper: lists on A4 that say all of it, then the map on one large page.

The large page is as big as its type needs: a printer's "fit to page" makes it any size.
"""

from __future__ import annotations

from collections.abc import Sequence

from itembank.data_class import dataclass
from itembank.figures.drawing import Drawing
from itembank.pages.engine.page import theme
from itembank.pages.engine.paper import WIDTH, LoosePaper, heading_part, text_part
from itembank.pages.engine.table_drawn import Cell, Contents
from itembank.pages.engine.text.picture import draw_marks
from itembank.pages.parts.teacher.views_part import draw_table

EDGE = 0.06
"""Room around the map, as a share of its width and height: a figure that filled its page would
be taken for a scan by who listens to it."""
HEAD = 24.0
"""Size of the heading above it."""


@dataclass(frozen=True, slots=True)
class StrandRows:
    """A strand, and for each of its topics the title, what it rests on, and when it is taught."""

    strand: str
    rows: Sequence[tuple[str, str, str]]


@dataclass(frozen=True, slots=True)
class TopicMapData:
    """All that is printed. `words` say where the map's lists are."""

    title: str
    intro: str
    strands: Sequence[StrandRows]
    drawing: Drawing
    words: str


def topic_map_pages(data: TopicMapData) -> bytes:
    """Return the pages as a tagged PDF. The same data always give the same bytes."""
    paper = LoosePaper(data.title, data.title)
    size = paper.size
    paper.place(
        [heading_part(data.title, size, 1), text_part(data.intro, WIDTH, size)], gap=1.2 * size
    )
    when = any(row[2] for strand in data.strands for row in strand.rows)
    for strand in data.strands:
        heads: tuple[str, ...] = ("Topic", "Rests on", "Taught")
        widths: tuple[float, ...] = (205.0, WIDTH - 315.0, 110.0)
        rows: list[list[Contents | Cell]] = [list(row) for row in strand.rows]
        if not when:
            heads, widths = heads[:2], (230.0, WIDTH - 230.0)
            rows = [row[:2] for row in rows]
        draw_table(paper, strand.strand, "", heads, rows, widths)
    wide, high = ((float(room) + 0.2) * size for room in (data.drawing.width, data.drawing.height))
    left, foot = EDGE * wide, EDGE * high
    page = paper.document.page((wide + 2 * left, high + 2 * foot + 2 * HEAD))
    with paper.document.tag("H2"):
        page.text(left, foot + high + HEAD, data.title, HEAD, bold=True, colour=theme.ACCENT)
    draw_marks(page, data.drawing, data.words, left, foot, size)
    return paper.finish()
