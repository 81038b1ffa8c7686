"""A pupil's page on A4, for a talk with parents: topics, slips in thinking, each starter.

Everything is text, so it reads in grey and aloud.
"""

from __future__ import annotations

from collections.abc import Sequence

from itembank.data_class import dataclass
from itembank.pages.engine.paper import WIDTH, LoosePaper, heading_part, text_part
from itembank.pages.engine.table_drawn import Cell, Contents
from itembank.pages.parts.teacher.views_part import draw_table
from itembank.text.true_minus import printed


@dataclass(frozen=True, slots=True)
class StarterRows:
    """A starter: which, how it went, and for each question number, text, outcome and slip."""

    title: str
    result: str
    rows: Sequence[tuple[str, str, str, str]]


@dataclass(frozen=True, slots=True)
class PupilData:
    """All that the pages print; `starters` come newest first."""

    title: str
    intro: Sequence[str]
    caution: str
    topics: Sequence[tuple[str, str, str, str]]
    rule: str
    mistakes: Sequence[tuple[str, str, str]]
    starters: Sequence[StarterRows]
    not_kept: str


def pupil_pages(data: PupilData) -> bytes:
    """Return the pages as a tagged PDF. The same data always give the same bytes."""
    paper = LoosePaper(data.title, data.title)
    size = paper.size
    paper.place(
        [
            heading_part(data.title, size, 1),
            *(text_part(line, WIDTH, size, after=0.3 * size) for line in data.intro),
            text_part(data.caution, WIDTH, size, bold=True),
        ],
        gap=1.2 * size,
    )
    if data.topics:
        rows: list[list[Contents | Cell]] = [list(row) for row in data.topics]
        heads4 = ("Topic", "Right", "How it stands", "Last asked")
        widths4 = (WIDTH - 290.0, 70.0, 130.0, 90.0)
        draw_table(paper, "Topics, weakest first", data.rule, heads4, rows, widths4, "Topics")
    if data.mistakes:
        rows = [list(row) for row in data.mistakes]
        heads3 = ("Topic", "What an answer pointed to", "Times")
        words = "An answer can point to a slip in thinking, and prove none. Ask how it was found."
        widths3 = (200.0, WIDTH - 260.0, 60.0)
        draw_table(
            paper, "Slips in thinking that may be behind answers", words, heads3, rows, widths3
        )
    for starter in data.starters:
        if not starter.rows:
            head = heading_part(starter.title, size)
            paper.place([head, text_part(starter.result, WIDTH, size)], gap=size)
            continue
        rows = [[number, printed(text), went, slip] for number, text, went, slip in starter.rows]
        heads: tuple[str, ...] = ("No.", "Question", "Answer", "May point to")
        widths: tuple[float, ...] = (34.0, WIDTH - 294.0, 75.0, 185.0)
        if not any(slip for *_, slip in starter.rows):
            heads, widths = heads[:3], (34.0, WIDTH - 109.0, 75.0)
            rows = [row[:3] for row in rows]
        draw_table(paper, starter.title, starter.result, heads, rows, widths)
    paper.place([heading_part("Not on this page", size), text_part(data.not_kept, WIDTH, size)])
    return paper.finish()
