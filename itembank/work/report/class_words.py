"""What the report of a class says in sentences, on screen and on paper."""

from __future__ import annotations

from typing import TYPE_CHECKING

from itembank.records.entries.entries import WHOLE
from itembank.records.entries.questions_asked import numbers_said
from itembank.text.in_words import counted, month, plural, short_day
from itembank.work.report.figures import figure, percent

if TYPE_CHECKING:
    from itembank.records.reports.class_report import ClassReport, TopicLine
    from itembank.records.reports.own_view_report import ViewsOverTime

LATEST = 8
"""Lessons shown one by one on screen: the last ones."""
MOST = 5
"""Topics and questions that fooled the confident, shown on screen and on paper."""
TOPICS_UNKNOWN = (
    "What is known of each topic is not told: these lessons were recorded without their packs, so "
    "it is not known what they asked."
)


def advice(line: TopicLine) -> str:
    """Return when a topic should come back."""
    found = line.mastery
    if found.due <= found.date:
        return "now"
    if found.due.year == found.date.year:
        return f"by {short_day(found.due)}"
    return f"by {month(found.due)[:3]} {found.due.year}"


def just_asked(report: ClassReport) -> str:
    """Return in a sentence why some topics have no estimate; empty where all have one."""
    if not any(line.mastery.just_asked for line in report.topics):
        return ""
    return (
        f"Nothing is expected of topics asked on {short_day(report.last)} itself: the class has "
        "just seen the answers."
    )


def only_means(report: ClassReport) -> str:
    """Return in a sentence which lessons say little of any one topic; empty where none do.

    Hands and scores tell how a starter went as a whole.
    """
    some = sum(lesson.decision.kind in WHOLE for lesson in report.lessons)
    if not some:
        return ""
    there = len(report.lessons)
    which = (
        f"{some} of {there} lessons" if some < there else plural(there, "The lesson", "All lessons")
    )
    return (
        f"{which} {plural(some, 'was', 'were')} recorded by band or score only. That tells how "
        "the class did that day and little of any one topic, so such lessons are counted apart and "
        "move what is expected only a little."
    )


def stopped_early(report: ClassReport) -> str:
    """Return which questions were not asked in which lessons; empty where all were.

    Of many lessons the last are named.
    """
    some = [lesson for lesson in report.lessons if lesson.decision.not_asked]
    if not some:
        return ""
    said = [
        f"{short_day(lesson.date)} ({numbers_said(lesson.decision.not_asked)})"
        for lesson in some[-LATEST:]
    ]
    earlier = f"{counted(len(some) - LATEST, 'lesson')} before; " if len(some) > LATEST else ""
    return f"{earlier}{', '.join(said)}. These lessons count out of what was asked."


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
