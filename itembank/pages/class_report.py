"""The class report on A4: topics by week, what is known now, bands over time, own views, clarity.

It reads in grey and without pictures: every figure stands in its cell as text, and lightness
and bars only repeat it.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from . import theme
from .heat_map import STEPS, heat_map
from .page import Page
from .paper import WIDTH, LoosePaper, Paper, heading_part, text_part
from .slides import shortened
from .table import Cell, Contents, table_pieces

CAUTION = "Bands and figures are a teaching aid, not a grade."
BAR = 100.0
"""Width of a bar from 0 to 100 %, in points."""


@dataclass(frozen=True, slots=True)
class TopicRow:
    """A topic: its weeks as (share, answers) or None, all answers, the estimate, advice.

    Shares run from 0 to 1; an interval is (low, high).
    """

    title: str
    weeks: Sequence[float | None]
    share: float
    interval: tuple[float, float]
    now: float
    now_interval: tuple[float, float] | None
    advice: str


@dataclass(frozen=True, slots=True)
class LessonRow:
    """A lesson: its day in short, pupils in each band (lowest first), and what else was noted."""

    day: str
    pupils: int
    bands: Sequence[tuple[str, int]]
    share: float | None
    agreement: float | None
    over: int | None
    under: int | None
    asked: str
    unclear: bool


@dataclass(frozen=True, slots=True)
class ReportData:
    """All that the report prints; `weeks` are short names of the weeks of the heat map."""

    title: str
    intro: str
    class_name: str
    weeks: Sequence[tuple[str, str]]
    topics: Sequence[TopicRow]
    lessons: Sequence[LessonRow]
    band_names: Sequence[tuple[str, str]]


def class_report(data: ReportData) -> bytes:
    """Return the report as a tagged PDF. The same data always give the same bytes."""
    paper = LoosePaper(data.title, f"Class report  •  {data.class_name}")
    size = paper.size
    paper.place(
        [
            heading_part(data.title, size, 1),
            text_part(data.intro, WIDTH, size, after=0.4 * size),
            text_part(f"{CAUTION} Your judgement decides.", WIDTH, size, bold=True),
        ],
        gap=1.2 * size,
    )
    if data.topics:
        _heat(paper, data)
        _topics(paper, data)
    if data.lessons:
        _bands(paper, data)
        _views(paper, data)
    return paper.finish()


def _heat(paper: Paper, data: ReportData) -> None:
    size = paper.size
    words = (
        "Per cent right in each week that asked the topic; weeks by their Monday. The darker, the "
        "fewer were right; a dot: not asked."
    )
    head = [heading_part("Topics by week", size), text_part(words, WIDTH, size, after=0.6 * size)]
    rows = [(one.title, one.weeks) for one in data.topics]
    for parts in heat_map(data.weeks, rows, size):
        paper.place([*head, parts[0]])
        for part in parts[1:]:
            paper.place([part])
        paper.y -= size
        head = []
    paper.y -= 0.2 * size


def _topics(paper: Paper, data: ReportData) -> None:
    size = paper.size
    words = (
        "Right: per cent of all answers, with its interval. Now: per cent expected today by the "
        "forgetting model, weakest topic first. The bar runs from 0 to 100 %: the stroke is the "
        "estimate, the box its interval. Intervals are at 90 %."
    )
    rows: list[list[Contents | Cell]] = [
        [
            shortened(one.title, 136, size),
            _with_interval(one.share, one.interval),
            Cell(_estimate(one), BAR + 10, _interval(one)),
            one.advice,
        ]
        for one in data.topics
    ]
    _table(
        paper,
        "What is known now, and what to bring back",
        words,
        ("Topic", "Right", "Now, with its interval", "Bring back"),
        rows,
        (148.0, 92.0, 194.0, WIDTH - 434.0),
    )


def _estimate(one: TopicRow) -> str:
    if one.now_interval is None:
        return f"{round(100 * one.now)}"
    return _with_interval(one.now, one.now_interval)


def _with_interval(share: float, interval: tuple[float, float]) -> str:
    low, high = interval
    return f"{round(100 * share)} ({round(100 * low)}–{round(100 * high)})"


def _interval(one: TopicRow) -> Callable[[Page, float, float], None]:
    def show(page: Page, x: float, y: float) -> None:
        with page.artifact():
            page.line((x, y + 4), (x + BAR, y + 4), colour=theme.RULE, width=0.8)
            for part in (0.0, 0.5, 1.0):
                at = x + part * BAR
                page.line((at, y + 1), (at, y + 7), colour=theme.RULE, width=0.8)
            if one.now_interval is not None:
                low, high = one.now_interval
                fill = theme.tint(theme.ACCENT, 0.3)
                width = max((high - low) * BAR, 1.0)
                page.rect(x + low * BAR, y, width, 8, fill=fill, stroke=theme.ACCENT, line=0.8)
            at = x + one.now * BAR
            page.line((at, y - 1.5), (at, y + 9.5), colour=theme.INK, width=2.0)

    return show


def _bands(paper: Paper, data: ReportData) -> None:
    letters = [letter for letter, _ in data.band_names]
    found = [one for one in data.lessons if one.bands]
    if not found or not letters:
        return
    names = ", ".join(f"{letter} {name}" for letter, name in data.band_names)
    words = (
        f"Pupils in each band, lesson by lesson: {names}. The bar shares the class out in the "
        "same order, the lowest band darkest."
    )
    rows: list[list[Contents | Cell]] = []
    for one in found:
        counts = dict(one.bands)
        each: list[Contents | Cell] = [str(counts.get(letter, 0)) for letter in letters]
        share = "" if one.share is None else f"{round(100 * one.share)} %"
        bar = Cell(share, 190.0, _stacked([counts.get(letter, 0) for letter in letters], letters))
        rows.append([one.day, *each, bar])
    narrow = 34.0
    rest = WIDTH - 90 - narrow * len(letters)
    heads = ("Lesson", *letters, "Bands, and the mean share of marks")
    widths = (90.0, *(narrow for _ in letters), rest)
    _table(paper, "Bands over time", words, heads, rows, widths)


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
                    page.text(x + width / 2, y, letter, 12.0, colour=ink, align="centre")
                x += width

    return show


def _views(paper: Paper, data: ReportData) -> None:
    size = paper.size
    noted = [one for one in data.lessons if one.over is not None or one.asked]
    if not noted:
        return
    words = (
        "Agreement is Goodman and Kruskal’s γ: 1, the surer pupils scored higher; 0, no relation. "
        "Sure but low, and not sure but high, are numbers of pupils. Where a fifth or more had to "
        "ask what to do, the instructions needed clarifying."
    )
    rows: list[list[Contents | Cell]] = [
        [
            one.day,
            "–" if one.agreement is None else f"{one.agreement:.2f}".replace("-", "−"),
            "–" if one.over is None else str(one.over),
            "–" if one.under is None else str(one.under),
            (one.asked or "–") + (", unclear" if one.unclear else ""),
        ]
        for one in noted
    ]
    heads = ("Lesson", "Agreement", "Sure, low", "Not sure, high", "Asked what to do")
    _table(
        paper,
        "Own view against score, and clarity",
        words,
        heads,
        rows,
        (90.0, 85.0, 85.0, 110.0, WIDTH - 370.0),
    )
    paper.y -= size


def _table(
    paper: Paper,
    title: str,
    words: str,
    heads: Sequence[str],
    rows: Sequence[Sequence[Contents | Cell]],
    widths: Sequence[float],
) -> None:
    size = paper.size
    made = table_pieces(heads, rows, widths, size, row_headers=True)
    head = [heading_part(title, size), text_part(words, WIDTH, size, after=0.5 * size)]
    paper.place([*head, made.rows[0]])
    paper.place_apart(made.rows[1:], f"{title} (continued)", made.again)
    paper.y -= 1.6 * size


__all__ = ["LessonRow", "ReportData", "TopicRow", "class_report"]
