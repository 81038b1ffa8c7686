"""Own views and the clarity check in the report of a class, on screen and as CSV tables."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from itembank.cli.report.in_figures import (
    Rows,
    figure,
    named_table,
    percent,
    places,
    rounded,
    share_words,
)
from itembank.cli.words.wrapped import paragraph
from itembank.text.in_words import counted, short_day

if TYPE_CHECKING:
    from itembank.cli.report.titles import Titles
    from itembank.records.reports.class_report import ClassReport
    from itembank.records.reports.own_view_report import FooledBy, ViewsOverTime

MOST = 5
"""Topics and questions that fooled the confident, shown on screen and on paper."""


def views_summary(views: ViewsOverTime) -> list[str]:
    """Return in sentences how own views went with scores; nothing where none were recorded."""
    if not views.noted:
        return []
    if not views.lessons:
        return [
            f"Own views were recorded in {counted(views.hands, 'lesson')}, but not both they and "
            "the scores by seat: only then can the two be compared."
        ]
    more = f" ({views.hands} more without)" if views.hands else ""
    said = [f"{counted(views.lessons, 'lesson')} with own views and scores by seat{more}."]
    if views.agreement is not None:
        said.append(
            f"Agreement γ {figure(views.agreement)} (1: the surer scored higher; 0: no relation)."
        )
    else:
        said.append("Too few pupils to say how well the two agree.")
    said.append(
        f"Of those sure, {percent(views.over, views.sure)} scored low; of those not sure, "
        f"{percent(views.under, views.unsure)} scored high."
    )
    return [" ".join(said)]


def fooled_summary(views: ViewsOverTime) -> str:
    """Return in a sentence what the list of what fooled the confident holds, or why it is empty."""
    from itembank.records.reports.own_view_report import FEWEST_SURE, FEWEST_SURE_OF_TOPIC
    from itembank.records.statistics.own_view import FEWEST_WRONG

    if views.topics or views.questions:
        return (
            "Wrong: of the answers by pupils who were sure, with the Wilson interval at 90 %. "
            f"Listed where a third or more were wrong, of {FEWEST_SURE_OF_TOPIC} such answers or "
            f"more to a topic, {FEWEST_SURE} or more to a question."
        )
    if views.compared:
        return (
            f"No topic or question fooled the confident: nowhere were a third of those sure, and "
            f"{FEWEST_WRONG} or more, wrong."
        )
    return (
        "Which questions fooled the confident is not known: too few pupils who were sure have "
        "their answers recorded by seat and question."
    )


def views_text(one: ClassReport, titles: Titles) -> list[str]:
    """Return own views over the report's time as lines."""
    found = one.views
    lines = [line for said in views_summary(found) for line in paragraph("", said).splitlines()]
    if not lines:
        return []
    lines = ["", "Own view against score:", *lines]
    if not found.lessons:
        return lines
    for name, fooled in (("topics", found.topics), ("questions", found.questions)):
        if fooled:
            rows = [
                (_name(each, titles), f"{each.wrong} of {each.sure}", share_words(each.interval))
                for each in fooled[:MOST]
            ]
            heads = (f"Fooled the confident, {name}", "wrong", "share")
            lines += ["", named_table(heads, rows, right={1})]
    return [*lines, *paragraph("", fooled_summary(found)).splitlines()]


def _name(one: FooledBy, titles: Titles) -> str:
    if not one.address:
        return titles.of(one.topic)
    return f"{one.prompt} [{one.address}]" if one.prompt else one.address


def clarity_text(one: ClassReport) -> list[str]:
    """Return the lessons whose instructions needed clarifying as lines."""
    lines: list[str] = []
    for each in one.unclear:
        assert each.decision.clarity is not None
        asked, there, note = each.decision.clarity
        text = f"{each.title}: {asked} of {there or each.decision.pupils} asked"
        lines += paragraph(
            f"  {short_day(each.date):<7} ", text + (f" ({note})" if note else "")
        ).splitlines()
    noted = sum(each.decision.clarity is not None for each in one.lessons)
    if lines:
        head = "Lessons whose instructions needed clarifying (a fifth or more asked what to do):"
        return ["", *paragraph("", head).splitlines(), *lines]
    if noted:
        said = f"Clarity was noted in {counted(noted, 'lesson')}; in none did a fifth or more ask."
        return ["", *paragraph("", said).splitlines()]
    return []


def views_tables(one: ClassReport, titles: Titles) -> dict[str, Rows]:
    """Return own views over the report's time as tables by file name; no seat codes are in them."""
    found = one.views
    summary: list[Sequence[object]] = []
    if found.noted:
        summary.append(
            (
                one.class_name,
                one.first,
                one.last,
                found.lessons,
                places(found.agreement),
                found.sure,
                found.over,
                found.unsure,
                found.under,
            )
        )
    fooled: list[Sequence[object]] = [
        (
            one.class_name,
            each.topic,
            titles.of(each.topic),
            each.address,
            each.prompt,
            each.wrong,
            each.sure,
            *rounded(each.interval),
        )
        for each in (*found.topics, *found.questions)
    ]
    return {
        "report-own-views.csv": (
            [
                "class",
                "first",
                "last",
                "lessons",
                "agreement",
                "sure",
                "sure_but_low",
                "not_sure",
                "not_sure_but_high",
            ],
            summary,
        ),
        "report-fooled.csv": (
            [
                "class",
                "topic",
                "title",
                "question",
                "prompt",
                "wrong",
                "sure",
                "share",
                "low",
                "high",
            ],
            fooled,
        ),
    }
