"""Notes what a class was asked instead of its own starter."""

from __future__ import annotations

import datetime
from collections import Counter
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.text.in_words import day_month_year
from itembank.work.lesson.lesson_day import (
    parallel,
    refuse_day_without_lesson,
    refuse_to_come,
    the_period,
)
from itembank.work.lesson.lesson_starter import Starter, no_pack_of_other, starter_by_store
from itembank.work.lesson.results_store import open_results

if TYPE_CHECKING:
    from itembank.planning.department.department import Department, SchoolClass
    from itembank.records.entries.entries import LessonFacts, QuestionFacts


@dataclass(frozen=True, slots=True)
class CoverRequest:
    """What was asked in a lesson instead: topics, or the starter of a pack or another class.

    A topic is one with the number of its questions, or a text with both: "ratio.share 4".
    `any_day` says that a day on which the class has no lesson is meant all the same.
    """

    date: datetime.date
    class_name: str | None = None
    topics: tuple[str | tuple[str, int], ...] = ()
    pack: Path | None = None
    same_as: str | None = None
    period: str | None = None
    packs: Path = Path()
    replace: bool = False
    any_day: bool = False

    @property
    def sources(self) -> tuple[str, ...]:
        """Return the fields that say what was asked; only one of them may be given."""
        given = {
            "topic": bool(self.topics),
            "pack": self.pack is not None,
            "same_as": self.same_as is not None,
        }
        return tuple(name for name, there in given.items() if there)


@dataclass(frozen=True, slots=True)
class Covered:
    """The lesson, in words whose questions it was asked, and how many there were on each topic."""

    lesson: LessonFacts
    source: str
    counts: Mapping[str, int]


def cover(department: Department, request: CoverRequest) -> Covered:
    """Note what a class was asked instead of its starter.

    Raises:
        ItembankError: what is wrong; nothing was noted. The matters "no lesson that day"
            (`any_day`) and "noted already" (`replace`) are questions.
    """
    from itembank.records.entries.entries import Cover, LessonFacts
    from itembank.records.entries.recording import record

    if len(request.sources) > 1:
        raise ItembankError(
            "What was asked is said in several ways.",
            matter="several sources",
            fields=request.sources,
        )
    if not request.sources:
        raise ItembankError(
            "Say what was asked: topics, a pack, or the class whose starter it was.",
            matter="no source",
        )
    refuse_to_come(request.date)
    group = department.find_class(request.class_name)
    if request.topics:
        questions, source = questions_on(request.topics, group), "questions of their own"
    else:
        questions, source = _of_pack(department, group, request)
    lesson = LessonFacts(
        group.name,
        request.date,
        sum(question.marks for question in questions),
        group.title,
        the_period(department, group, request.date, request.period),
        questions,
    )
    with open_results(department) as store:
        if not request.any_day:
            refuse_day_without_lesson(store, department, group, lesson)
        record(store, lesson, Cover(source), replace=request.replace)
    topics = [question.topic for question in questions]
    return Covered(lesson, source, {name: topics.count(name) for name in dict.fromkeys(topics)})


@dataclass(frozen=True, slots=True)
class AskedInstead:
    """What a class was asked instead of its own starter: in words whose, and the starter."""

    source: str
    starter: Starter

    @property
    def counts(self) -> Mapping[str, int]:
        """Return how many questions there were on each topic."""
        return Counter(question.topic for question in self.starter.facts.questions)


def asked_instead(
    department: Department, class_name: str, date: datetime.date, period: str | None = None
) -> AskedInstead | None:
    """Return what is noted that a class was asked instead; None where nothing is noted.

    The period is only needed where the class has several lessons that day.
    """
    from itembank.records.results.happened import cover_of
    from itembank.work.lesson.record_request import RecordRequest

    group = department.find_class(class_name)
    try:
        with open_results(department, make=False) as store:
            with store.reading() as connection:
                source = cover_of(connection, group.name, (date, period or ""))
            if source is None:
                return None
            request = RecordRequest(group.name, date=date, period=period)
            return AskedInstead(source, starter_by_store(department, group, request, store))
    except ItembankError:  # there is no store, so nothing is noted
        return None


def questions_on(
    topics: Sequence[str | tuple[str, int]], group: SchoolClass
) -> tuple[QuestionFacts, ...]:
    """Return questions of which only the topics are known.

    Raises:
        ItembankError: every topic there is not, and every number that cannot be.
    """
    from itembank.items.topics.registry import topic_ids
    from itembank.planning.department.department import MOST_QUESTIONS
    from itembank.planning.department.known_topics import KnownTopics
    from itembank.planning.topic_names import unknown_topic
    from itembank.records.entries.entries import QuestionFacts
    from itembank.text.whole_number import whole_number

    known = KnownTopics(tuple(topic_ids()), group.stated_sources.banks or ())
    faults: list[str] = []
    names: list[str] = []
    for topic in topics:
        if isinstance(topic, str):
            words = topic.replace(",", " ").split()
            count = whole_number(words[1]) if len(words) == 2 else 1
        else:
            words, count = [topic[0]], topic[1]
        if len(words) not in (1, 2) or not count or count < 1:
            typed = topic if isinstance(topic, str) else f"{topic[0]} {topic[1]}"
            faults.append(f'‘{typed}’: write a topic and a number of questions: "ratio.share 4".')
        elif words[0].lower() not in known:
            faults.append(unknown_topic(words[0], known))
        else:
            names += [words[0].lower()] * min(count, MOST_QUESTIONS + 1)
    if len(names) > MOST_QUESTIONS:
        faults.append(f"A starter has 1 to {MOST_QUESTIONS} questions.")
    if faults:
        raise ItembankError("\n".join(faults))
    said = "a question of the teacher’s own"
    return tuple(QuestionFacts(number, "", name, "", said) for number, name in enumerate(names, 1))


def _of_pack(
    department: Department, group: SchoolClass, request: CoverRequest
) -> tuple[tuple[QuestionFacts, ...], str]:
    """Return the questions of a pack, and words for whose it is."""
    from itembank.packs.data.pack_place import packs_of
    from itembank.records.entries.lesson_pack import choose_pack, read_pack_facts

    if request.pack is not None:
        lesson = read_pack_facts(request.pack).lesson
        when = day_month_year(lesson.date)
        return lesson.questions, f"the starter of {lesson.class_name} for {when}"
    model = parallel(department, group, request.same_as or "")
    place = choose_pack(packs_of(request.packs, model), request.date, request.date)
    if place is None:
        raise no_pack_of_other(model, request.date, request.packs, group.name)
    return read_pack_facts(place.path).lesson.questions, f"the starter of {model}"
