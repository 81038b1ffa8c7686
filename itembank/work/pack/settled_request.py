"""What a pack is asked to be: as typed, as planned, as the class has it, else as usual."""

from __future__ import annotations

import datetime
from collections.abc import Collection, Mapping
from dataclasses import replace

from itembank.errors import ItembankError
from itembank.files.faults import FileFaults, join_words
from itembank.people.names_out import refuse_names
from itembank.planning.calendar.days import usual_seed
from itembank.planning.department.department import (
    MOST_FOLLOW_UP,
    MOST_QUESTIONS,
    Department,
    SchoolClass,
)
from itembank.planning.department.known_topics import KnownTopics
from itembank.planning.department.large_copies import no_such_seat, strange_seats
from itembank.planning.department.pack_request import USUAL, PackRequest, PlannedTopic, stated
from itembank.planning.department.papers import PAPERS
from itembank.planning.department.plan_file import MOST_SEED, MOST_VARIANTS
from itembank.planning.department.question_sources import no_bank
from itembank.planning.department.taught import not_yet
from itembank.planning.topic_names import unknown_topic
from itembank.text.characters import name_fault, shown
from itembank.text.in_words import day_month_year

LONGEST_TITLE = 24  # characters that stand whole beside the class and the date on a slide
LONGEST_CLASS = 12


def settle(
    typed: PackRequest,
    plan: PackRequest | None,
    department: Department | None,
    known: Collection[str],
    usual_day: datetime.date,
    taught: Mapping[str, datetime.date | None] | None = None,
) -> PackRequest:
    """Return the request with nothing left open: as typed, as planned, as the class has it.

    `usual_day` is the lesson's where nothing else says.

    Of the class's own topics those are left out that it is `taught` on the day of the lesson or
    later: a starter opens the lesson. A topic that is not one of `known`, which are those of the
    generators, is looked for in the banks that the pack may draw from.

    Raises:
        ItembankError: a value is out of its range, or no topic or class is known.
    """
    asked = typed if plan is None else typed.over(plan)
    for folder in typed.stated_sources.banks or ():
        if (wrong := no_bank(folder)) is not None:
            raise wrong
    group = department.find_class(asked.class_name) if department else None
    name = group.name if group else _class_name(asked.class_name)
    date = asked.date or usual_day
    ids = dict.fromkeys(topic.id.lower() for topic in typed.topics)
    own = bool(asked.topics)
    topics = tuple(map(PlannedTopic, ids)) or asked.topics or _own_topics(group, taught, date)
    asked = replace(asked, class_name=name, date=date, topics=topics)
    request = with_usual(asked, group, department)
    there = KnownTopics(known, request.sources.banks)
    for topic in topics:
        if topic.id not in there:
            raise ItembankError(unknown_topic(topic.id, there), matter="no such topic")
    if there.faults:
        raise FileFaults(there.faults)
    # A class's title speaks of the class's topics, and would be wrong above any others.
    usual = group.title if group and not own else _title_of(topics, there)
    title = usual if request.title is None else request.title
    if not title.strip():
        raise ItembankError("The title is empty. Write one, or leave it out.")
    refuse_names(title, "The title")
    request = replace(
        request,
        title=title,
        questions=_questions(asked.questions, stated(request.questions), topics),
        seed=usual_seed(name, date, title) if request.seed is None else request.seed,
    )
    _check(request)
    own_seats = group.plan.seats if group else ()
    for seat in strange_seats(request.large_print, own_seats):
        raise ItembankError(no_such_seat(seat, own_seats))
    if typed.print_tint and request.paper == "white":
        raise ItembankError(
            "The paper is white, so there is no tint to print. Name a tint, such as cream."
        )
    return request


def with_usual(
    asked: PackRequest, group: SchoolClass | None, department: Department | None
) -> PackRequest:
    """Return what is asked, with what the class and its department have where it is open."""
    for source in (group, department):
        if source is not None:
            asked = asked.over(source.request)
    return asked.over(USUAL)


def _own_topics(
    group: SchoolClass | None,
    taught: Mapping[str, datetime.date | None] | None,
    date: datetime.date,
) -> tuple[PlannedTopic, ...]:
    """Return the class's own topics, without those that it has not been taught by then."""
    if group is None:
        raise ItembankError(
            "There is no department.toml here or above, so no class to take topics from.",
            matter="no topics",
        )
    early = not_yet(group.topics, taught or {}, date)
    topics = tuple(PlannedTopic(name) for name in group.topics if name not in early)
    if not topics and early:
        reasons = "; ".join(f"{topic} {when}" for topic, when in early.items())
        raise ItembankError(
            f"{group.name} has not been taught any of its topics before {day_month_year(date)}: "
            f"{reasons}.",
            matter="nothing taught",
        )
    if not topics:
        raise ItembankError(f"{group.name} has no topics of its own.", matter="nothing taught")
    return topics


def _check(request: PackRequest) -> None:
    """Hold what is asked for to its ranges.

    Raises:
        ItembankError: says which is out of its range.
    """
    follow_up, variants = stated(request.follow_up), stated(request.variants)
    seed, paper = stated(request.seed), stated(request.paper)
    if not 1 <= follow_up <= MOST_FOLLOW_UP:
        raise ItembankError(
            f"A follow-up sheet has 1 to {MOST_FOLLOW_UP} questions, not {follow_up}.",
            matter="questions on a sheet",
        )
    if not 1 <= variants <= MOST_VARIANTS:
        raise ItembankError(
            f"A starter has 1 to {MOST_VARIANTS} versions, not {variants}.", matter="versions"
        )
    if not 0 <= seed <= MOST_SEED:
        raise ItembankError(f"The seed must be from 0 to {MOST_SEED}, not {seed}.")
    if paper not in PAPERS:
        raise ItembankError(f"There is no paper ‘{paper}’. Choose {join_words(PAPERS, 'or')}.")


def _title_of(topics: tuple[PlannedTopic, ...], known: KnownTopics) -> str:
    """Return a title for topics that come without one: a sole topic's, or the strands."""
    if len(topics) == 1:
        from itembank.items.topics.registry import find_topic

        name = topics[0].id
        title = find_topic(name).title if name in known.generated else known.in_banks[name]
        if len(title) <= LONGEST_TITLE:
            return title
    strands = dict.fromkeys(topic.id.partition(".")[0] for topic in topics)
    return join_words(tuple(strands)).capitalize()


def _class_name(wanted: str | None) -> str:
    name = wanted if wanted is not None else "Class"
    long = len(name) > LONGEST_CLASS
    if not name.strip() or long or any(c in name for c in "/\\:\n") or name[0] == ".":
        raise ItembankError(
            f"‘{name}’ cannot be a class's name. Use {LONGEST_CLASS} letters and digits at most, "
            "such as 8K."
        )
    # It goes into folder names, where a person types it again.
    if fault := name_fault(name):
        raise ItembankError(f"‘{shown(name)}’ cannot be a class's name. {fault}")
    return name


def _questions(asked: int | None, usual: int, topics: tuple[PlannedTopic, ...]) -> int:
    """Return how many questions the starter has: as asked, else what the topics' counts need."""
    counted = sum(topic.count or 0 for topic in topics)
    free = sum(topic.count is None for topic in topics)
    wanted = counted if counted and not free else max(usual, counted + free)
    if asked is not None:
        wanted = asked
    if not 1 <= wanted <= MOST_QUESTIONS:
        raise ItembankError(
            f"A starter has 1 to {MOST_QUESTIONS} questions, not {wanted}.", matter="questions"
        )
    if counted + free > wanted or (not free and counted != wanted):
        need = "exactly" if not free else "at least"
        raise ItembankError(
            f"These {len(topics)} topics need {need} {counted + free} questions, not {wanted}.",
            matter="questions for topics",
        )
    return wanted
