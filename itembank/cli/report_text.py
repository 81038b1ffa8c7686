"""The words and tables of reports, on screen in 80 columns and as rows for CSV files."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from typing import TYPE_CHECKING, TypeAlias

from itembank.cli.text import paragraph, table

if TYPE_CHECKING:
    from itembank.records.class_report import ClassReport, DepartmentReport, LessonLine, TopicLine
    from itembank.records.interval import Interval
    from itembank.records.item_report import ItemReport, Line

Rows: TypeAlias = tuple[Sequence[str], list[Sequence[object]]]
LATEST, MOST, LONGEST = 8, 20, 30
AHEAD = (0, 7, 14, 28)
"""Days ahead for which a topic's fading is shown."""


def short_day(date: datetime.date) -> str:
    """Return a day in few letters.

    >>> short_day(datetime.date(2026, 11, 3))
    '3 Nov'
    """
    return f"{date.day} {date:%b}"


def _cut(text: str, most: int = LONGEST) -> str:
    return text if len(text) <= most else text[: most - 1].rstrip() + "…"


def _share(interval: Interval) -> str:
    low, high = round(100 * interval.low), round(100 * interval.high)
    return f"{round(100 * interval.share)} % ({low}–{high})"


def _figure(value: float | None) -> str:
    return "–" if value is None else f"{value:.2f}".replace("-", "−")


def advice(line: TopicLine) -> str:
    """Return when a topic should come back."""
    found = line.mastery
    return "now" if found.due <= found.date else f"by {short_day(found.due)}"


def class_text(one: ClassReport, topic: str | None = None) -> list[str]:
    """Return the report of a class as lines."""
    head = f"{one.class_name}, {one.first} to {one.last}: {len(one.lessons)} lessons."
    if topic is not None:
        line = next(found for found in one.topics if found.topic == topic)
        return [head, *_topic(line)]
    lines = [head, "", *_lessons(one.lessons[-LATEST:])]
    if one.topics:
        rows = [
            (_cut(t.topic), str(t.out_of), _share(t.interval), _now(t), advice(t))
            for t in one.topics
        ]
        heads = ("topic", "answers", "right", "expected now", "bring back")
        lines += ["", table(heads, rows, right={1})]
        lines += paragraph(
            "",
            "Right: all answers, with the Wilson interval at 90 %. Expected now: the forgetting "
            "model carried on from the last answers, weakest first.",
        ).splitlines()
    return [*lines, *_unclear(one.lessons)]


def _now(line: TopicLine) -> str:
    found = line.mastery
    if found.low is None or found.high is None:
        return f"{round(100 * found.now)} %, not measured"
    return f"{round(100 * found.now)} % ({round(100 * found.low)}–{round(100 * found.high)})"


def _lessons(lessons: Sequence[LessonLine]) -> list[str]:
    rows = []
    for one in lessons:
        done = one.decision
        bands = " ".join(f"{group.letter} {group.pupils}" for group in done.groups)
        share = f"{round(100 * done.overall.interval.share)} %" if done.overall else "–"
        view = done.views
        sure = (
            f"{len(view.over)} / {len(view.under)}" if view and view.agreement is not None else "–"
        )
        rows.append(
            (
                short_day(one.date),
                _cut(one.title, 18),
                bands or "–",
                share,
                _figure(view.agreement if view else None),
                sure,
                "–" if done.clarity is None else str(done.clarity[0]),
            )
        )
    heads = ("lesson", "title", "bands", "marks", "own view γ", "over/under", "asked")
    return [
        "Last lessons:",
        table(heads, rows, right={3, 4, 5, 6}),
        *paragraph(
            "",
            "Own view γ: 1, the surer scored higher; 0, no relation. Over/under: pupils sure but "
            "low, not sure but high. Asked: pupils who asked what to do.",
        ).splitlines(),
    ]


def is_unclear(one: LessonLine) -> bool:
    """Tell whether a lesson's instructions needed clarifying."""
    from itembank.records.class_report import UNCLEAR_FROM

    return one.unclear is not None and one.unclear >= UNCLEAR_FROM


def _unclear(lessons: Sequence[LessonLine]) -> list[str]:
    found = [one for one in lessons if is_unclear(one)]
    if not found:
        return []
    lines = ["", "Lessons whose instructions needed clarifying (a fifth or more asked):"]
    for one in found:
        assert one.decision.clarity is not None
        asked, there, note = one.decision.clarity
        text = f"{_cut(one.title)}: {asked} of {there or one.decision.pupils}"
        lines += paragraph(
            f"  {short_day(one.date):<7} ", text + (f" ({note})" if note else "")
        ).splitlines()
    return lines


def _topic(line: TopicLine) -> list[str]:
    from itembank.planning.memory import Memory, recall

    rows = [(str(p.date), str(p.out_of), _share(p.interval)) for p in line.points]
    found = line.mastery
    level = found.now
    memory = Memory(level, found.half_life, found.date)
    ahead = ", ".join(
        f"{round(100 * recall(memory, found.date + datetime.timedelta(days=days)))} % "
        + ("today" if not days else f"in {days} days")
        for days in AHEAD
    )
    return [
        "",
        f"{line.topic}: {_share(line.interval)} of all answers right.",
        table(("day", "answers", "right"), rows, right={1}),
        "",
        *paragraph("Expected: ", f"{found.words()}.").splitlines(),
        *paragraph(
            "Fading:   ", f"{ahead}, unless it is asked; half in {found.half_life:.0f} days."
        ).splitlines(),
        f"Bring back {advice(line)}.",
    ]


def class_tables(one: ClassReport) -> dict[str, Rows]:
    """Return the tables of a class report by file name; no seat codes are in them."""
    from itembank.records.class_report import by_week

    topics = [
        (
            one.class_name,
            t.topic,
            t.out_of,
            *(round(x, 4) for x in t.interval),
            *(None if x is None else round(x, 4) for x in _ends(t)),
            round(t.mastery.half_life, 1),
            t.mastery.due,
        )
        for t in one.topics
    ]
    weeks = [
        (one.class_name, t.topic, week, round(right, 2), out_of)
        for t in one.topics
        for week, (right, out_of) in by_week(t).items()
    ]
    lessons = [
        (
            one.class_name,
            each.date,
            each.period,
            each.title,
            each.decision.pupils,
            " ".join(f"{group.letter}:{group.pupils}" for group in each.decision.groups),
            each.decision.overall and round(each.decision.overall.interval.share, 4),
            each.decision.views and each.decision.views.agreement,
            each.decision.clarity and each.decision.clarity[0],
        )
        for each in one.lessons
    ]
    return {
        "topics.csv": (
            [
                "class",
                "topic",
                "answers",
                "right",
                "low",
                "high",
                "now",
                "now_low",
                "now_high",
                "half_life",
                "due",
            ],
            list(topics),
        ),
        "topic-weeks.csv": (["class", "topic", "week", "right", "answers"], list(weeks)),
        "lessons.csv": (
            ["class", "date", "period", "title", "pupils", "bands", "share", "agreement", "asked"],
            list(lessons),
        ),
    }


def _ends(line: TopicLine) -> tuple[float | None, ...]:
    return line.mastery.now, line.mastery.low, line.mastery.high


def department_text(whole: DepartmentReport, topic: str | None = None) -> list[str]:
    """Return the report of all classes as lines."""
    from itembank.records.interval import wilson

    if topic is not None:
        rows = [
            (name, str(out_of), _share(wilson(right, out_of, 0.9)))
            for name, (right, out_of) in sorted(whole.topics.get(topic, {}).items())
            if out_of
        ]
        return [f"{topic}, by class:", table(("class", "answers", "right"), rows, right={1})]
    rows4 = [
        (
            one.class_name,
            str(one.lessons),
            short_day(one.last),
            f"{one.out_of:,}",
            _share(wilson(one.right, one.out_of, 0.9)) if one.out_of else "–",
        )
        for one in whole.classes
    ]
    lines = [table(("class", "lessons", "last", "answers", "right"), rows4, right={1, 3})]
    topics = []
    for name, by_class in whole.topics.items():
        right, out_of = (sum(pair[k] for pair in by_class.values()) for k in (0, 1))
        if out_of:
            topics.append((right / out_of, name, len(by_class), right, out_of))
    rows5 = [
        (_cut(name), str(count), f"{out_of:,}", _share(wilson(right, out_of, 0.9)))
        for _, name, count, right, out_of in sorted(topics)
    ]
    heads = ("topic", "classes", "answers", "right")
    return [*lines, "", "Topics, hardest first:", table(heads, rows5, right={1, 2})]


def department_tables(whole: DepartmentReport) -> dict[str, Rows]:
    """Return the tables of the department's report by file name."""
    rows: list[Sequence[object]] = [
        (name, topic, right, out_of)
        for topic, by_class in sorted(whole.topics.items())
        for name, (right, out_of) in sorted(by_class.items())
    ]
    return {"class-topics.csv": (["class", "topic", "right", "answers"], rows)}


def items_text(result: ItemReport, by_question: bool = False) -> list[str]:
    """Return the statistics of items as lines; of one starter, its questions."""
    lines = []
    if not by_question:
        rows = [_row(f"{one.topic}/{one.tier}", one) for one in result.generators]
        lines += ["By topic and tier:", table(("", *_HEADS), rows, right={1, 3, 4, 5})]
    reliable = sorted(one.kr20 for one in result.starters if one.kr20 is not None)
    if reliable:
        what = "this starter" if len(reliable) == 1 else "a starter, the median"
        value = _figure(reliable[len(reliable) // 2])
        lines += ["", f"Reliability of {what} (KR-20): {value}."]
    shown = list(result.items)
    words = "Questions:"
    if not by_question:
        shown = sorted(shown, key=lambda one: -one.out_of)[:MOST]
        words = f"Questions with most answers ({len(shown)} of {len(result.items):,}; --csv: all):"
    rows = [_row(one.address, one) for one in shown]
    lines += ["", words, table(("", *_HEADS), rows, right={1, 3, 4, 5})]
    for one in shown if by_question else result.generators:
        lines += _mistakes(one)
    lines += ["", *paragraph("", result.note).splitlines(), *_doubted(result)]
    return [
        *lines,
        *paragraph(
            "",
            "Right: Wilson interval at 95 %. r: correlation with the rest of the starter. U−L: "
            "best 27 % less weakest 27 %. –: too few answers by seat.",
        ).splitlines(),
    ]


_HEADS = ("answers", "right", "r", "U−L", "Rasch")


def _row(name: str, one: Line) -> tuple[str, ...]:
    hard = _figure(one.difficulty)
    if one.error is not None:
        hard += f" ±{one.error:.2f}"
    apart = (_figure(one.correlation), _figure(one.upper_lower))
    return (_cut(name, 32), f"{one.out_of:,}", _share(one.interval), *apart, hard)


def _mistakes(one: Line) -> list[str]:
    names = sorted(one.misconceptions.items(), key=lambda pair: -pair[1])
    text = "; ".join(f"{name} {round(100 * share)} %" for name, share in names)
    name = one.address or f"{one.topic}/{one.tier}"
    return paragraph(f"  {_cut(name, 32)}: ", text).splitlines() if text else []


def _doubted(result: ItemReport) -> list[str]:
    if not result.contradictions:
        return ["No item with enough answers contradicts its tier."]
    lines = ["", f"Against their tier ({len(result.contradictions)}):"]
    for one in result.contradictions[:MOST]:
        name = one.line.address or f"all of {one.line.topic}/{one.line.tier}"
        lines += paragraph("  ", f"{name}: {one.words()}.").splitlines()
    return lines


def items_tables(result: ItemReport) -> dict[str, Rows]:
    """Return the statistics of items by file name."""
    heads = [
        "item",
        "topic",
        "tier",
        "right",
        "answers",
        "share",
        "low",
        "high",
        "correlation",
        "upper_lower",
        "rasch",
        "rasch_error",
        "misconceptions",
    ]

    def rows(lines: Sequence[Line]) -> list[Sequence[object]]:
        return [
            (
                one.address,
                one.topic,
                one.tier,
                one.right,
                one.out_of,
                *(round(x, 4) for x in one.interval),
                one.correlation,
                one.upper_lower,
                one.difficulty,
                one.error,
                "; ".join(f"{name} {share:.3f}" for name, share in one.misconceptions.items()),
            )
            for one in lines
        ]

    starters: list[Sequence[object]] = [
        (one.class_name, one.date, one.kr20) for one in result.starters
    ]
    return {
        "items.csv": (heads, rows(result.items)),
        "generators.csv": (heads, rows(result.generators)),
        "starters.csv": (["class", "date", "kr20"], starters),
    }
