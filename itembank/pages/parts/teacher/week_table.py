"""The table of a week: topics down, lessons across."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from itembank.data_class import dataclass
from itembank.pages.engine.faces.fonts import ASCENT, plain
from itembank.pages.engine.page import theme
from itembank.pages.engine.page.page import Page
from itembank.pages.engine.paper import WIDTH, LoosePaper, Part
from itembank.pages.engine.pdf.tagging import Element
from itembank.pages.engine.table_drawn import HEADER, ROW_HEADER
from itembank.pages.engine.text.paragraph import Flow, draw, measure

CELL = (1.7, 3.0)
"""Least and greatest width of a lesson's column, in ems."""
NAMED = 2.2
"""The column that has room for its day's name; narrower ones share it with those of the day."""
BESIDE = 12.5
"""Width of the column of reasons in few words, in ems."""


@dataclass(frozen=True, slots=True)
class LessonColumn:
    """One lesson: its day in short lines, its period where the day has two, its questions."""

    day: tuple[str, ...]
    period: str
    questions: int


@dataclass(frozen=True, slots=True)
class TopicRow:
    """A topic, why it comes, and what stands under each lesson: a number, perhaps with a star.

    `short` says why in few words: when it was taught, when it came last, how that went.
    """

    title: str
    why: str
    cells: tuple[str, ...]
    short: str = ""


@dataclass(frozen=True, slots=True)
class Grid:
    """Where columns stand: `room` for a topic, `beside` for its reason if not below, the cells."""

    room: float
    beside: float
    cell: float
    size: float

    def left(self, place: float) -> float:
        """Return how far from the table's left edge a lesson's column begins."""
        return self.room + self.beside + place * self.cell


def place_table(
    paper: LoosePaper,
    lessons: Sequence[LessonColumn],
    rows: Sequence[TopicRow],
    size: float,
    beside: bool,
) -> None:
    """Draw a table that may go on over the page, between two rows.

    Reasons stand below their topics, or in few words `beside` them.
    """
    widest = NAMED if beside else CELL[1]
    cell = min(widest * size, max(CELL[0] * size, 0.42 * WIDTH / len(lessons)))
    why = BESIDE * size if beside else 0.0
    grid = Grid(WIDTH - why - cell * len(lessons), why, cell, size)
    tables: list[Element] = []

    def row(height: float, show: Callable[[Page, float, float], None]) -> Part:
        def inside(page: Page, x: float, top: float) -> None:
            if not tables:
                with page.document.tag("Table") as table:
                    tables.append(table)
            with page.document.back_in(tables[0]), page.document.tag("TR"):
                show(page, x, top)
            with page.artifact():
                ends = (x, top - height), (x + WIDTH, top - height)
                page.line(*ends, colour=theme.RULE, width=0.6)

        return Part(height, inside)

    paper.place([row(_head_height(lessons, size), _head(lessons, grid))])
    for topic in rows:
        paper.place([row(*_topic(topic, grid))])
    total = TopicRow("Questions", "", tuple(str(lesson.questions) for lesson in lessons))
    paper.place([row(*_topic(total, grid, bold=True))], gap=0.5 * size)


def _head_height(lessons: Sequence[LessonColumn], size: float) -> float:
    lines = max(len(lesson.day) for lesson in lessons) + any(lesson.period for lesson in lessons)
    return lines * 1.2 * size + 4


def _head(lessons: Sequence[LessonColumn], grid: Grid) -> Callable[[Page, float, float], None]:
    size, cell = grid.size, grid.cell
    height = _head_height(lessons, size)
    names = (
        ["Topic", "Taught, last seen, right"] if grid.beside else ["Topic, and why it comes now"]
    )

    def show(page: Page, x: float, top: float) -> None:
        document = page.document
        for name, left in zip(names, (x, x + grid.room), strict=False):
            with document.tag("TH", attributes=HEADER):
                page.text(left, top - height + 5, name, size, bold=True)
        for place, lesson in enumerate(lessons):
            same = [n for n, other in enumerate(lessons) if other.day == lesson.day]
            alone = cell >= NAMED * size or len(same) == 1
            day = lesson.day if alone or place == same[0] else ()
            middle = x + grid.left((place if alone else sum(same) / len(same)) + 0.5)
            with document.tag("TH", attributes=HEADER):
                for number, line in enumerate(day):
                    y = top - (number + ASCENT) * 1.2 * size
                    page.text(middle, y, f"{plain(line)} ", size, bold=not number, align="centre")
                if lesson.period:
                    y = top - (len(lesson.day) + ASCENT) * 1.2 * size
                    own = x + grid.left(place + 0.5)
                    page.text(own, y, plain(lesson.period), size, align="centre")

    return show


def _topic(
    row: TopicRow, grid: Grid, bold: bool = False
) -> tuple[float, Callable[[Page, float, float], None]]:
    size, cell = grid.size, grid.cell
    title = measure(Flow(plain(row.title), bold), grid.room - 8, size)
    said = row.short if grid.beside else row.why
    why = measure(Flow(plain(said)), (grid.beside or grid.room) - 8, size) if said else None
    reason = why.height if why else 0.0
    gap = 2.5 if grid.beside else 3.0
    height = (max(title.height, reason) if grid.beside else title.height + reason) + 2 * gap

    def show(page: Page, x: float, top: float) -> None:
        document = page.document
        with document.tag("TH", attributes=ROW_HEADER):
            draw(page, title, x, top - gap)
            if why and not grid.beside:
                draw(page, why, x, top - gap - title.height, colour=theme.QUIET)
        if grid.beside:
            with document.tag("TD"):
                if why:
                    draw(page, why, x + grid.room, top - gap, colour=theme.QUIET)
        for place, text in enumerate(row.cells):
            left = x + grid.left(place)
            if text and not bold:
                with page.artifact():
                    page.rect(
                        left + 1.5,
                        top - height + gap - 1,
                        cell - 3,
                        height - 2 * gap + 2,
                        fill=theme.tint(theme.ACCENT, 0.12),
                    )
            with document.tag("TD"):
                middle, y = left + cell / 2, top - height / 2 - 0.35 * size
                ink = theme.INK if text else theme.QUIET
                page.text(middle, y, text or "·", size, bold=bool(text), colour=ink, align="centre")

    return height, show
