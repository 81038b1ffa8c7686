"""The class report on A4: topics by week, what is known now, bands over time, own views, clarity.

It reads in grey and without pictures: every figure stands in its cell as text, and lightness
and bars only repeat it.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from itembank.data_class import dataclass
from itembank.pages.engine.faces.fonts import plain
from itembank.pages.engine.page import theme
from itembank.pages.engine.page.page import Page
from itembank.pages.engine.paper import WIDTH, LoosePaper, Paper, heading_part, text_part
from itembank.pages.engine.table_drawn import Cell, Contents
from itembank.pages.parts.teacher.heat_map import SCORED, STEPS, Shown, heat_map, legend_part
from itembank.pages.parts.teacher.views_part import (
    ClarityPart,
    ViewsPart,
    draw_clarity,
    draw_table,
    draw_views,
)
from itembank.planning.bands.caution import CAUTION

BAR = 78.0
"""Width of a bar from 0 to 100 %, in points."""


@dataclass(frozen=True, slots=True)
class TopicRow:
    """A topic: the share right in each week or None, of all answers, the estimate, advice.

    Shares run from 0 to 1; an interval is (low, high). `share` is None where the topic was asked
    and no answers to it were counted, `now` on the day it was asked. `scored` tells for each week
    whether it was only part of a score then, and `in_scores` in how many starters.
    """

    title: str
    weeks: Sequence[float | None]
    share: float | None
    interval: tuple[float, float]
    now: float | None
    now_interval: tuple[float, float] | None
    advice: str
    scored: Sequence[bool] = ()
    in_scores: int = 0


@dataclass(frozen=True, slots=True)
class BandRow:
    """A lesson, or a week: when, pupils in each band (lowest first), the mean share of marks."""

    when: str
    bands: Sequence[tuple[str, int]]
    share: float | None


@dataclass(frozen=True, slots=True)
class ReportData:
    """All that the report prints.

    `weeks` are short names of the weeks of the heat map; `by_week` says that `bands` are by week.
    `asked_on` is the day for which estimates are made, `topics_note` a sentence on what they
    rest on; `missing` says what was not recorded.
    """

    title: str
    intro: str
    class_name: str
    asked_on: str
    weeks: Sequence[tuple[str, str]]
    topics: Sequence[TopicRow]
    bands: Sequence[BandRow]
    by_week: bool
    band_names: Sequence[tuple[str, str]]
    views: ViewsPart
    clarity: ClarityPart
    missing: Sequence[str] = ()
    topics_note: str = ""


def class_report(data: ReportData) -> bytes:
    """Return the report as a tagged PDF. The same data always give the same bytes."""
    paper = LoosePaper(data.title, f"Class report  •  {data.class_name}")
    size = paper.size
    paper.place(
        [
            heading_part(data.title, size, 1),
            text_part(data.intro, WIDTH, size, after=0.4 * size),
            text_part(CAUTION, WIDTH, size, bold=True),
        ],
        gap=1.2 * size,
    )
    if data.topics:
        # Of one week the map would only say again what stands in the list, and of scores alone
        # it would have no figure.
        if len(data.weeks) > 1 and any(x is not None for topic in data.topics for x in topic.weeks):
            _heat(paper, data)
        _topics(paper, data)
    if data.bands:
        _bands(paper, data)
    draw_views(paper, data.views)
    draw_clarity(paper, data.clarity)
    if data.missing:
        head = heading_part("Not in this report", size)
        paper.place([head, *(text_part(line, WIDTH, size) for line in data.missing)])
    return paper.finish()


def _heat(paper: Paper, data: ReportData) -> None:
    size = paper.size
    words = (
        "Per cent right in each week that asked the topic; weeks by their Monday. The darker, the "
        "fewer were right; a dot: not asked. Topics come weakest first."
    )
    if any(topic.in_scores for topic in data.topics):
        words += (
            f" {SCORED}: asked, but seen only as part of a score, which says nothing of one topic."
        )
    head = [
        heading_part("Topics by week", size),
        text_part(words, WIDTH, size, after=0.5 * size),
        legend_part(size),
    ]
    rows = [(topic.title, _cells(topic)) for topic in data.topics]
    for made in heat_map(data.weeks, rows, size):
        # A stretch of weeks that fits on a page is never divided.
        height = sum(part.height for part in (*head, *made.rows))
        together = len(made.rows) if height <= paper.full else 1
        paper.place([*head, *made.rows[:together]])
        paper.place_apart(made.rows[together:], "Topics by week (continued)", made.again)
        paper.y -= size
        head = []
    paper.y -= 0.2 * size


def _cells(row: TopicRow) -> list[Shown]:
    """Return a topic's cell of each week: its share, the sign of a score, or nothing."""
    scored = row.scored or [False] * len(row.weeks)
    return [SCORED if part else share for share, part in zip(row.weeks, scored, strict=True)]


def _topics(paper: Paper, data: ReportData) -> None:
    scores = ""
    if any(topic.in_scores for topic in data.topics):
        scores = " (scores: in how many starters the topic was only part of a score)"
    words = (
        f"Right: per cent of the answers seen by question, with its interval{scores}. Expected on "
        f"{data.asked_on}: per cent by the forgetting model from all that is known, weakest topic "
        "first. The bar runs from 0 to 100 %: the stroke is the estimate, the box its interval. "
        f"Intervals are at 90 %. {data.topics_note}"
    ).strip()
    rows: list[list[Contents | Cell]] = [
        [
            topic.title,
            _right(topic),
            Cell(_estimate(topic), BAR + 8, _interval(topic, topic.now))
            if topic.now is not None
            else "–",
            topic.advice,
        ]
        for topic in data.topics
    ]
    draw_table(
        paper,
        "What is known, and what to bring back",
        words,
        ("Topic", "Right", f"Expected on {data.asked_on}", "Bring back"),
        rows,
        (184.0, 78.0, 160.0, WIDTH - 422.0),
        "Topics",
    )


def _right(row: TopicRow) -> str:
    """Return the share of the answers, and in how many scores the topic had a part."""
    share = "–" if row.share is None else _with_interval(row.share, row.interval)
    return f"{share}, scores: {row.in_scores}" if row.in_scores else share


def _estimate(row: TopicRow) -> str:
    if row.now is None:
        return "–"
    if row.now_interval is None:
        return f"{round(100 * row.now)}"
    return _with_interval(row.now, row.now_interval)


def _with_interval(share: float, interval: tuple[float, float]) -> str:
    low, high = interval
    return f"{round(100 * share)} ({round(100 * low)}–{round(100 * high)})"


def _interval(row: TopicRow, now: float) -> Callable[[Page, float, float], None]:
    def show(page: Page, x: float, y: float) -> None:
        with page.artifact():
            page.line((x, y + 4), (x + BAR, y + 4), colour=theme.RULE, width=0.8)
            for part in (0.0, 0.5, 1.0):
                at = x + part * BAR
                page.line((at, y + 1), (at, y + 7), colour=theme.RULE, width=0.8)
            if row.now_interval is not None:
                low, high = row.now_interval
                fill = theme.tint(theme.ACCENT, 0.3)
                width = max((high - low) * BAR, 1.0)
                page.rect(x + low * BAR, y, width, 8, fill=fill, stroke=theme.ACCENT, line=0.8)
            at = x + now * BAR
            page.line((at, y - 1.5), (at, y + 9.5), colour=theme.INK, width=2.0)

    return show


def _bands(paper: Paper, data: ReportData) -> None:
    letters = [letter for letter, _ in data.band_names]
    names = ", ".join(f"{letter} {name}" for letter, name in data.band_names)
    when = "week by week, counted at each lesson" if data.by_week else "lesson by lesson"
    words = (
        f"Pupils in each band, {when}: {names}. The bar shares them out in the same order, the "
        "lowest band darkest. Lessons recorded by question only have no bands."
    )
    rows: list[list[Contents | Cell]] = []
    for band in data.bands:
        counts = dict(band.bands)
        cells: list[Contents | Cell] = [str(counts.get(letter, 0)) for letter in letters]
        share = "" if band.share is None else f"{round(100 * band.share)} %"
        bar = Cell(share, 190.0, _stacked([counts.get(letter, 0) for letter in letters], letters))
        rows.append([band.when, *cells, bar])
    narrow = 34.0
    rest = WIDTH - 100 - narrow * len(letters)
    heads = ("Week" if data.by_week else "Lesson", *letters, "Bands, and the mean share of marks")
    widths = (100.0, *(narrow for _ in letters), rest)
    draw_table(paper, "Bands over time", words, heads, rows, widths)


def _stacked(counts: Sequence[int], letters: Sequence[str]) -> Callable[[Page, float, float], None]:
    total = sum(counts) or 1
    most = max(len(counts) - 1, 1)

    def show(page: Page, x: float, y: float) -> None:
        with page.artifact():
            for place, (count, letter) in enumerate(zip(counts, letters, strict=True)):
                width = 180.0 * count / total
                if not count:
                    continue
                fill, ink = STEPS[round(place * (len(STEPS) - 1) / most)]
                page.rect(x, y - 3, width, 14, fill=fill, stroke=theme.INK, line=0.8)
                if width >= 14:
                    page.text(x + width / 2, y, plain(letter), 12.0, colour=ink, align="centre")
                x += width

    return show


__all__ = ["BandRow", "ReportData", "TopicRow", "class_report"]
