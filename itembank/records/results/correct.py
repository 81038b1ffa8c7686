"""Corrects one seat or one question of what was recorded, by an entry that replaces it."""

from __future__ import annotations

import datetime
from collections.abc import Callable, Mapping, Sequence

from sqlalchemy import Connection, select

from itembank.errors import ItembankError, SeveralErrors
from itembank.files.faults import join_words
from itembank.records.entries.details import answers_of, misconceptions_of, scores_of
from itembank.records.entries.entries import Answers, LessonFacts, QuestionFacts, Scores
from itembank.records.entries.questions_asked import not_asked_said, unpack_asked
from itembank.records.entries.recording import record_in
from itembank.records.results.lessons import LessonResult, lessons
from itembank.records.store.store import Store
from itembank.records.store.store_tables import question
from itembank.text.in_words import day_month_year

Change = tuple[str, int | None, int | bool]
"""Seat, question or None, and the score or whether the answer is right."""
Periods = Callable[[datetime.date], Sequence[str]]
"""Tells in which periods a class has its lessons of a day."""


def lesson_facts(connection: Connection, result: LessonResult) -> LessonFacts:
    """Return a recorded lesson with all questions of its starter, as it was recorded."""
    rows = connection.execute(
        select(question).where(question.c.lesson_id == result.lesson_id).order_by(question.c.number)
    )
    questions = tuple(
        QuestionFacts(row.number, row.address, row.topic, row.tier, row.prompt, row.marks)
        for row in rows
    )
    return LessonFacts(
        result.class_name, result.date, result.starter_marks, result.title, result.period, questions
    )


def find_lesson(
    connection: Connection,
    class_name: str,
    date: datetime.date | None,
    period: str | None = None,
    with_results: bool = True,
    held: Periods | None = None,
) -> LessonResult:
    """Return the lesson of a class on a day, or the last one that has results.

    The only lesson of a day is recorded without its period; by what is `held` it is found by that.

    Raises:
        ItembankError: there is none, or there are two on that day.
    """
    known = lessons(connection, class_name, date, date)
    # A lesson of which only own views or a cancellation are known has nothing to put right.
    if with_results:
        known = [result for result in known if result.entry_id is not None]
    if period is not None:
        exact = {result.date for result in known if result.period == period}
        known = [
            result
            for result in known
            if result.period == period
            or (
                not (result.period or result.date in exact)
                and held is not None
                and list(held(result.date)) == [period]
            )
        ]
    if not known:
        day = f" on {day_month_year(date)}" if date else ""
        raise ItembankError(
            f"Nothing is recorded for {class_name}{day}.",
            matter="nothing recorded",
            class_name=class_name,
        )
    same = [result for result in known if result.date == known[-1].date]
    # Without a date the last lesson is meant, as whoever has just recorded it says; with one,
    # nobody can tell which of two.
    if len(same) > 1 and date is not None:
        raise several_lessons(class_name, date, [lesson.period for lesson in same])
    return known[-1]


def several_lessons(class_name: str, date: datetime.date, periods: Sequence[str]) -> ItembankError:
    """Return the error that one of several lessons of a day has to be named.

    >>> print(several_lessons("8K", datetime.date(2026, 11, 30), ["2", "5"]))
    8K has 2 lessons on 30 November 2026, in period 2 and in period 5.
    """
    where = join_words(
        [f"in period {period}" if period else "in a period not noted" for period in periods]
    )
    return ItembankError(
        f"{class_name} has {len(periods)} lessons on {day_month_year(date)}, {where}.",
        matter="several lessons",
        periods=tuple(periods),
    )


def correct(
    store: Store,
    class_name: str,
    date: datetime.date | None,
    changes: Sequence[Change],
    period: str | None = None,
    held: Periods | None = None,
) -> tuple[LessonFacts, int]:
    """Record a lesson's answers or scores again with some of them changed.

    `held` tells in which periods the class has its lessons of a day.

    Returns the lesson and the number of the new entry; the earlier one is kept, replaced.

    Raises:
        ItembankError: nothing is recorded by seat, or a change does not fit it: all such
            faults at once, and nothing is changed.
    """
    with store.writing() as connection:
        lesson = find_lesson(connection, class_name, date, period, held=held)
        assert lesson.entry_id is not None
        facts = lesson_facts(connection, lesson)
        what: Answers | Scores
        if lesson.kind == "answers":
            right = answers_of(connection, lesson.entry_id)
            shown = misconceptions_of(connection, lesson.entry_id)
            faults = _change_answers(right, shown, changes, len(facts.questions))
            what = Answers(right, shown)
        elif lesson.kind == "scores":
            scores = scores_of(connection, lesson.entry_id)
            faults = _change_scores(scores, changes, lesson.out_of)
            asked = unpack_asked(lesson.asked, [facing.number for facing in facts.questions])
            what = Scores(scores, asked)
        else:
            raise ItembankError(
                f"{facts} was counted by hands, so no seat can be corrected.",
                matter="counted by hands",
            )
        if faults:
            raise SeveralErrors([*faults, ItembankError("Nothing was changed.")])
        return facts, record_in(connection, facts, what, replace=True)


def _change_answers(
    right: dict[str, dict[int, bool]],
    shown: dict[tuple[str, int], str],
    changes: Sequence[Change],
    questions: int,
) -> list[ItembankError]:
    faults = []
    numbers = sorted({number for row in right.values() for number in row})
    for seat, number, value in changes:
        if number is None:
            said = f"Correct a question, as in: {seat} q1 right."
            faults.append(ItembankError(f"{seat} was recorded answer by answer. {said}"))
        # It is on the slide and nobody was asked it, which is another slip than a number past the
        # end.
        elif number not in numbers and 0 < number <= questions:
            faults.append(ItembankError(not_asked_said([number]), matter="not asked"))
        elif number not in numbers:
            there = questions or len(numbers)
            faults.append(ItembankError(f"There is no question {number}. There are {there}."))
        elif seat not in right:
            faults.append(_absent(seat, right))
        else:
            # The mistake that was noted is of the answer as it was: a right one shows none, and of
            # another wrong one nobody said which it shows.
            right[seat][number] = bool(value)
            shown.pop((seat, number), None)
    return faults


def _change_scores(
    scores: dict[str, int], changes: Sequence[Change], out_of: int
) -> list[ItembankError]:
    faults = []
    for seat, number, value in changes:
        if number is not None:
            said = f"Only scores were recorded. Correct {seat}’s, as in: {seat} 6."
            faults.append(ItembankError(said))
        elif value > out_of:
            faults.append(ItembankError(f"The score {value} is not between 0 and {out_of}."))
        elif seat not in scores:
            faults.append(_absent(seat, scores))
        else:
            scores[seat] = int(value)
    return faults


def _absent(seat: str, there: Mapping[str, object]) -> ItembankError:
    from itembank.records.entries.teacher_text import near_seats

    near = near_seats(seat, list(there))
    advice = f" Did you mean {join_words(near, 'or')}?" if near else ""
    return ItembankError(f"Nothing is recorded for seat {seat} that day.{advice}")
