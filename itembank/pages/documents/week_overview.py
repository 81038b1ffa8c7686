"""A class's week on A4: its lessons, and for each topic the days it comes and why.

Topics go down and lessons across, so that ten lessons fit the page that five do, no title is
cut short, and a topic that comes on four days gives its reason once.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from itembank.data_class import dataclass
from itembank.pages.engine.faces.fonts import plain
from itembank.pages.engine.page import theme
from itembank.pages.engine.paper import WIDTH, LoosePaper, heading_part, list_part, space, text_part
from itembank.pages.parts.teacher.week_table import LessonColumn, TopicRow, place_table
from itembank.planning.bands.caution import CAUTION

NEEDED = "* The topic of that lesson rests on it."
COLUMNS = 12
"""Lessons beside each other; a class that has more in a week gets a second table."""


@dataclass(frozen=True, slots=True)
class WeekData:
    """All that the overview prints; `by_title` says in fewer lines what `titles` do."""

    title: str
    class_name: str
    intro: str
    titles: Sequence[str]
    by_title: Sequence[str]
    lessons: Sequence[LessonColumn]
    topics: Sequence[TopicRow]
    skipped: Sequence[str]
    bands: Sequence[str]
    kinds: str = ""
    """Which lessons ask other kinds of question than plain ones, and which."""


def week_overview(data: WeekData) -> bytes:
    """Return the overview as a tagged PDF. The same data always give the same bytes.

    It hangs on a wall, so it is set as large as one page allows, and never below what sheets are.
    """
    least = theme.PAPER_LEAST
    # Late in the year a week has thirty topics; then reasons stand in few words beside them.
    below, few = (
        [(theme.PAPER_TEXT, False), (13.0, False), (least, False)],
        [(13.0, True), (least, True)],
    )
    for size, beside in (*below, *few):
        paper = _filled(data, size, beside)
        if len(paper.document.pages) == 1:
            return paper.finish()
    return _filled(data, least, beside=False).finish()


def _filled(data: WeekData, size: float, beside: bool) -> LoosePaper:
    paper = LoosePaper(data.title, f"Week  •  {data.class_name}", size)
    paper.place([heading_part(data.title, size, 1), text_part(data.intro, WIDTH, size)])
    for line in data.skipped:
        paper.place([text_part(line, WIDTH, size, bold=True)])
    if beside:
        paper.place(
            [text_part(plain(words), WIDTH, size) for words in data.by_title], gap=0.5 * size
        )
    else:
        paper.place([space(0.5 * size), heading_part("Lessons", size)])
        lessons = [plain(title) for title in data.titles]
        paper.place([list_part(lessons, WIDTH, size, between=0.1)], gap=0.6 * size)
    paper.place([heading_part("Questions on each topic", size)])
    for start in range(0, len(data.lessons), COLUMNS):
        part = slice(start, start + COLUMNS)
        rows = [
            replace(topic, cells=topic.cells[part])
            for topic in data.topics
            if any(topic.cells[part])
        ]
        place_table(paper, data.lessons[part], rows, size, beside)
    starred = any("*" in cell for row in data.topics for cell in row.cells)
    notes = [NEEDED] if starred else []
    kinds = [plain(data.kinds)] if data.kinds else []
    parts = [text_part(note, WIDTH, size) for note in (*notes, *kinds, *data.bands)]
    paper.place([*parts, text_part(CAUTION, WIDTH, size, bold=True)])
    return paper
