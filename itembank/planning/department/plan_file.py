"""A plan: one lesson's starter in a file, so that it can be kept, shared and made again.

::

    class = "8K"
    date = 2026-11-30
    title = "Sharing in a ratio"
    topics = ["ratio.share", { id = "fractions.add-unlike", count = 3 }]
    questions = 8

Only ``topics`` is needed. A topic with a ``count`` gets that many questions; the others share
the rest evenly. What a plan leaves out comes from the class or the command line. It may state
``banks``, ``questions_from``, ``prefer``, ``signed_only`` and ``beyond_year`` as a class may
(:mod:`itembank.planning.department.question_sources`), its banks being named from the plan's own
folder, and ``large_print``, ``paper`` and ``print_tint`` as well.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable, Collection
from pathlib import Path

from itembank.files.toml_table import Table, TomlFile
from itembank.planning.department.department import MOST_FOLLOW_UP, MOST_QUESTIONS
from itembank.planning.department.known_topics import KnownTopics
from itembank.planning.department.large_copies import note_strange_seats, read_large_print
from itembank.planning.department.pack_request import PackRequest, PlannedTopic
from itembank.planning.department.papers import PAPERS
from itembank.planning.department.question_sources import read_sources
from itembank.planning.topic_names import unknown_topic
from itembank.text.characters import shown_value

MOST_VARIANTS = 6
MOST_SEED = 2**31 - 1


def read_plan(
    path: Path,
    known_topics: Collection[str] | None = None,
    banks: tuple[Path, ...] = (),
    seats_of: Callable[[str | None], Collection[str]] | None = None,
) -> PackRequest:
    """Return what a plan states; with `known_topics`, check that each topic is one of them.

    A topic that is not is looked for in the plan's own banks and in `banks`, which are those
    that the class or the command line names. `seats_of` returns the seats of the class that the
    plan names, or of the usual one: they are those that large print can be asked for.

    Raises:
        FileFaults: every fault of the file, each with its line, and those of a bank that had
            to be read.
    """
    file = TomlFile(path)
    top = file.top()
    stated_sources = read_sources(top, path.parent)
    known = None
    if known_topics is not None:
        # Banks are read only once a topic is met that the tool itself does not know.
        known = KnownTopics(known_topics, (*(stated_sources.banks or ()), *banks))
    plan = PackRequest(
        topics=_topics(top, known),
        class_name=top.text("class", "") or None,
        date=_date(top),
        title=top.text("title", "", most=60) or None,
        questions=_whole(top, "questions", 1, MOST_QUESTIONS),
        follow_up=_whole(top, "follow_up", 1, MOST_FOLLOW_UP),
        variants=_whole(top, "variants", 1, MOST_VARIANTS),
        seed=_whole(top, "seed", 0, MOST_SEED),
        large_print=read_large_print(top),
        paper=top.choice("paper", "white", PAPERS) if "paper" in top else None,
        print_tint=top.flag("print_tint", False) if "print_tint" in top else None,
        slips=top.flag("two_up", False) if "two_up" in top else None,
        stated_sources=stated_sources,
    )
    # Absent keys were not read above, but they exist: say so before unknown ones are named.
    for key in ("paper", "print_tint", "two_up", "questions", "follow_up", "variants", "seed"):
        top.known(key)
    if seats_of is not None and plan.large_print is not None:
        note_strange_seats(top, plan.large_print, seats_of(plan.class_name))
    _check_counts(top, plan)
    top.close()
    file.faults += known.faults if known is not None else []
    file.finish()
    return plan


def _whole(top: Table, key: str, low: int, high: int) -> int | None:
    return top.whole(key, low, low, high) if key in top else None


def _date(top: Table) -> datetime.date | None:
    value = top.any("date")
    if isinstance(value, datetime.date) and not isinstance(value, datetime.datetime):
        return value
    if isinstance(value, str):
        try:
            return datetime.date.fromisoformat(value)
        except ValueError:
            pass
    if value is not None:
        top.fault("date", f"‘date’ must be a day such as 2026-11-30, not ‘{value}’.")
    return None


def _topics(top: Table, known: Collection[str] | None) -> tuple[PlannedTopic, ...]:
    found: list[PlannedTopic] = []
    values = top.items("topics")
    if not values:
        top.fault("topics", "There are no topics. List at least one.", matter="no such topic")
    for index, value in enumerate(values):
        if isinstance(value, str):
            topic = PlannedTopic(value)
        elif isinstance(value, dict):
            row = Table(top.file, value, (*top.path, "topics", index))
            count = _whole(row, "count", 1, MOST_QUESTIONS)
            row.known("count")
            topic = PlannedTopic(row.text("id", None), count)
            row.close()
        else:
            top.fault("topics", f"A topic is a name in quotation marks, not {shown_value(value)}.")
            continue
        if topic.id and topic.id in (earlier.id for earlier in found):
            top.fault("topics", f"The topic {topic.id} is listed twice.", topic.id)
        elif topic.id and known is not None and topic.id not in known:
            top.fault("topics", unknown_topic(topic.id, known), topic.id, matter="no such topic")
        found.append(topic)
    return tuple(found)


def _check_counts(top: Table, plan: PackRequest) -> None:
    counted = sum(topic.count or 0 for topic in plan.topics)
    if counted > MOST_QUESTIONS:
        top.fault(
            "topics",
            f"The topics ask for {counted} questions in all; a starter has at most "
            f"{MOST_QUESTIONS}.",
        )
    elif plan.questions is not None and plan.topics:
        free = sum(topic.count is None for topic in plan.topics)
        # Topics without a number share what is left, so that only without any the sum has to be
        # exact.
        if counted > plan.questions or (not free and counted != plan.questions):
            top.fault(
                "questions",
                f"The topics ask for {counted} questions, but ‘questions’ is {plan.questions}. "
                "Change one of them.",
            )
