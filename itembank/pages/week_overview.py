"""A class's week on A4: each lesson with its topics and why they are there."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from .paper import WIDTH, LoosePaper, heading_part, text_part
from .slides import shortened

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


def week_overview(data: WeekData) -> bytes:
    """Return the overview as a tagged PDF. The same data always give the same bytes.

    A line for each topic, so that five lessons of eight questions stand on one page; titles and
    reasons that are too long for theirs are cut short, and stand whole in the plan.
    """
    paper = LoosePaper(data.title, f"Week  •  {data.class_name}")
    size = paper.size
    paper.place([heading_part(data.title, size, 1), text_part(data.intro, WIDTH, size)])
    for line in data.skipped:
        paper.place([text_part(line, WIDTH, size, bold=True)])
    paper.y -= 0.5 * size
    for lesson in data.lessons:
        head = shortened(f"{lesson.day}: {lesson.title}", WIDTH, 1.2 * size)
        lines = [
            text_part(_line(title, count, why, size), WIDTH, size, after=1.5)
            for title, count, why in lesson.topics
        ]
        # A lesson that fits on a page is never divided.
        paper.place([heading_part(head, 0.85 * size), *lines], gap=0.35 * size)
    paper.place([text_part(data.bands, WIDTH, size), text_part(CAUTION, WIDTH, size, bold=True)])
    return paper.finish()


def _line(title: str, count: int, why: str, size: float) -> str:
    several = f"{count} × " if count > 1 else ""
    # What it is needed for stands in the lesson's heading.
    before, needed, _ = why.partition("needed today")
    return shortened(
        f"{several}{shortened(title, 0.44 * WIDTH, size)}: {before}{needed}", WIDTH, size
    )
