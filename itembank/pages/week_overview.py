"""A class's week on A4: each lesson with its topics and why they are there."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from . import theme
from .fonts import plain
from .page import Document
from .paper import FOOT, LEFT, TOP, WIDTH, Paper, heading_part, text_part
from .table import Cell, Contents, table_pieces

CAUTION = "Bands are a teaching aid, not a grade. Your judgement decides."


@dataclass(frozen=True, slots=True)
class LessonPart:
    """One lesson: its day and period, its title, and a line for each topic (title, number, why)."""

    day: str
    title: str
    topics: Sequence[tuple[str, int, str]]


@dataclass(frozen=True, slots=True)
class WeekData:
    """All that the overview prints."""

    title: str
    class_name: str
    intro: str
    lessons: Sequence[LessonPart]
    skipped: Sequence[str]
    bands: str


class _WeekPaper(Paper):
    """Pages of an overview, which belongs to no one pack."""

    def __init__(self, data: WeekData) -> None:
        self.document = Document(data.title)
        self.size = self.least = theme.PAPER_LEAST
        self.bottom = FOOT + self.least + 12
        self._colour = theme.WHITE
        self._footer = plain(f"Week  •  {data.class_name}")
        self.y = TOP
        self.page = self.document.page(theme.A4, self._colour)


def week_overview(data: WeekData) -> bytes:
    """Return the overview as a tagged PDF. The same data always give the same bytes."""
    paper = _WeekPaper(data)
    size = paper.size
    paper.place(
        [heading_part(data.title, size, 1), text_part(data.intro, WIDTH, size)], gap=0.8 * size
    )
    for line in data.skipped:
        paper.place([text_part(line, WIDTH, size, bold=True)], gap=0.4 * size)
    widths = (190.0, 36.0, WIDTH - 226.0)
    for lesson in data.lessons:
        rows: list[list[Contents | Cell]] = [
            [title, str(count), why] for title, count, why in lesson.topics
        ]
        made = table_pieces(("Topic", "No.", "Why it is here"), rows, widths, size)
        heading = heading_part(f"{lesson.day}: {lesson.title}", size)
        # A lesson that fits on a page is never divided.
        paper.place([heading, *made.rows], x=LEFT, gap=0.9 * size)
    paper.place([text_part(data.bands, WIDTH, size), text_part(CAUTION, WIDTH, size, bold=True)])
    return paper.finish()
