"""A class's week on A4: its lessons, and for each topic the days it comes and why.

Topics go down and lessons across, so that ten lessons fit the page that five do, no title is
cut short, and a topic that comes on four days gives its reason once.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from . import theme
from .fonts import ASCENT, plain
from .page import Page
from .paper import WIDTH, LoosePaper, Part, heading_part, list_part, space, text_part
from .table import HEADER, ROW_HEADER
from .tagging import Element
from .text import Flow, draw, measure

CAUTION = "Bands are a teaching aid, not a grade. Your judgement decides."
NEEDED = "* The topic of that lesson rests on it."
CELL = (1.7, 3.0)
"""Least and greatest width of a lesson's column, in ems."""
NAMED = 2.4
"""The column that has room for its day's name; narrower ones share it with those of the day."""
COLUMNS = 12
"""Lessons beside each other; a class that has more in a week gets a second table."""


@dataclass(frozen=True, slots=True)
class LessonColumn:
    """One lesson: its day in short lines, its period where the day has two, its questions."""

    day: tuple[str, ...]
    period: str
    questions: int


@dataclass(frozen=True, slots=True)
class TopicRow:
    """A topic, why it comes, and what stands under each lesson: a number, perhaps with a star."""

    title: str
    why: str
    cells: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class WeekData:
    """All that the overview prints."""

    title: str
    class_name: str
    intro: str
    titles: Sequence[str]
    lessons: Sequence[LessonColumn]
    topics: Sequence[TopicRow]
    skipped: Sequence[str]
    bands: Sequence[str]


def week_overview(data: WeekData) -> bytes:
    """Return the overview as a tagged PDF. The same data always give the same bytes.

    It hangs on a wall, so it is set as large as one page allows, and never below what sheets are.
    """
    for size in (theme.PAPER_TEXT, 13.0):
        paper = _filled(data, size)
        if len(paper.document.pages) == 1:
            return paper.finish()
    return _filled(data, theme.PAPER_LEAST).finish()


def _filled(data: WeekData, size: float) -> LoosePaper:
    paper = LoosePaper(data.title, f"Week  •  {data.class_name}", size)
    paper.place([heading_part(data.title, size, 1), text_part(data.intro, WIDTH, size)])
    for line in data.skipped:
        paper.place([text_part(line, WIDTH, size, bold=True)])
    paper.place([space(0.5 * size), heading_part("Lessons", size)])
    paper.place(
        [list_part([plain(one) for one in data.titles], WIDTH, size, between=0.1)], gap=0.6 * size
    )
    paper.place([heading_part("Questions on each topic", size)])
    for start in range(0, len(data.lessons), COLUMNS):
        part = slice(start, start + COLUMNS)
        rows = [
            TopicRow(one.title, one.why, one.cells[part])
            for one in data.topics
            if any(one.cells[part])
        ]
        _place_table(paper, data.lessons[part], rows, size)
    starred = any("*" in cell for row in data.topics for cell in row.cells)
    notes = [NEEDED] if starred else []
    parts = [text_part(note, WIDTH, size) for note in (*notes, *data.bands)]
    paper.place([*parts, text_part(CAUTION, WIDTH, size, bold=True)])
    return paper


def _place_table(
    paper: LoosePaper, lessons: Sequence[LessonColumn], rows: Sequence[TopicRow], size: float
) -> None:
    """Draw a table that may go on over the page, between two rows."""
    cell = min(CELL[1] * size, max(CELL[0] * size, 0.42 * WIDTH / len(lessons)))
    room = WIDTH - cell * len(lessons)
    tables: list[Element] = []

    def row(kind: str, height: float, show: Callable[[Page, float, float, str], None]) -> Part:
        def inside(page: Page, x: float, top: float) -> None:
            if not tables:
                with page.document.tag("Table") as table:
                    tables.append(table)
            with page.document.back_in(tables[0]), page.document.tag("TR"):
                show(page, x, top, kind)
            with page.artifact():
                ends = (x, top - height), (x + WIDTH, top - height)
                page.line(*ends, colour=theme.RULE, width=0.6)

        return Part(height, inside)

    paper.place([row("TH", _head_height(lessons, size), _head(lessons, room, cell, size))])
    for one in rows:
        paper.place([row("TD", *_topic(one, room, cell, size))])
    total = TopicRow("Questions", "", tuple(str(one.questions) for one in lessons))
    paper.place([row("TD", *_topic(total, room, cell, size, bold=True))], gap=0.5 * size)


def _head_height(lessons: Sequence[LessonColumn], size: float) -> float:
    lines = max(len(one.day) for one in lessons) + any(one.period for one in lessons)
    return lines * 1.2 * size + 4


def _head(
    lessons: Sequence[LessonColumn], room: float, cell: float, size: float
) -> Callable[[Page, float, float, str], None]:
    height = _head_height(lessons, size)

    def show(page: Page, x: float, top: float, _kind: str) -> None:
        document = page.document
        with document.tag("TH", attributes=HEADER):
            page.text(x, top - height + 5, "Topic, and why it comes now", size, bold=True)
        for place, one in enumerate(lessons):
            same = [n for n, other in enumerate(lessons) if other.day == one.day]
            alone = cell >= NAMED * size or len(same) == 1
            day = one.day if alone or place == same[0] else ()
            middle = x + room + ((place if alone else sum(same) / len(same)) + 0.5) * cell
            with document.tag("TH", attributes=HEADER):
                for number, line in enumerate(day):
                    y = top - (number + ASCENT) * 1.2 * size
                    page.text(middle, y, f"{plain(line)} ", size, bold=not number, align="centre")
                if one.period:
                    y = top - (len(one.day) + ASCENT) * 1.2 * size
                    own = x + room + (place + 0.5) * cell
                    page.text(own, y, plain(one.period), size, align="centre")

    return show


def _topic(
    one: TopicRow, room: float, cell: float, size: float, bold: bool = False
) -> tuple[float, Callable[[Page, float, float, str], None]]:
    title = measure(Flow(plain(one.title), bold), room - 8, size)
    why = measure(Flow(plain(one.why)), room - 8, size) if one.why else None
    height = title.height + (why.height if why else 0) + 6

    def show(page: Page, x: float, top: float, kind: str) -> None:
        document = page.document
        with document.tag("TH", attributes=ROW_HEADER):
            draw(page, title, x, top - 3)
            if why:
                draw(page, why, x, top - 3 - title.height, colour=theme.QUIET)
        for place, text in enumerate(one.cells):
            left = x + room + place * cell
            if text and not bold:
                with page.artifact():
                    page.rect(
                        left + 1.5,
                        top - height + 2,
                        cell - 3,
                        height - 4,
                        fill=theme.tint(theme.ACCENT, 0.12),
                    )
            with document.tag(kind):
                middle, y = left + cell / 2, top - height / 2 - 0.35 * size
                ink = theme.INK if text else theme.QUIET
                page.text(middle, y, text or "·", size, bold=bool(text), colour=ink, align="centre")

    return height, show
