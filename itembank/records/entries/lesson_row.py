"""The row of a lesson, with the questions that its results are about."""

from __future__ import annotations

from sqlalchemy import Connection, delete, func, insert, select, update

from itembank.records.entries.entries import LessonFacts
from itembank.records.store.store_tables import lesson, of_class, question


def lesson_row(connection: Connection, facts: LessonFacts, asked_anew: bool) -> int:
    """Return the number of the lesson's row, made if it is not there.

    Its questions are written, or brought up to date, when results come in: a pack made again
    since then must not change what earlier results were about.
    """
    where = (
        of_class(facts.class_name),
        lesson.c.date == facts.date,
        lesson.c.period == facts.period,
    )
    # Where older versions made two lessons of one, the one of exactly that name.
    best = (lesson.c.class_name != facts.class_name, lesson.c.id)
    found = connection.scalar(select(lesson.c.id).where(*where).order_by(*best).limit(1))
    values = {"title": facts.title, "out_of": facts.out_of}
    known: int | None = None
    if found is None:
        made = connection.execute(
            insert(lesson).values(
                class_name=facts.class_name, date=facts.date, period=facts.period, **values
            )
        )
        assert made.inserted_primary_key is not None
        found = int(made.inserted_primary_key[0])
    else:
        if asked_anew:
            connection.execute(update(lesson).where(lesson.c.id == found).values(**values))
        known = connection.scalar(select(func.count()).where(question.c.lesson_id == found))
    # A lesson known only by name so far takes the questions that come now.
    if facts.questions and (asked_anew or not known):
        connection.execute(delete(question).where(question.c.lesson_id == found))
        connection.execute(
            insert(question),
            [
                {
                    "lesson_id": found,
                    "number": asked.number,
                    "address": asked.address,
                    "topic": asked.topic,
                    "tier": asked.tier,
                    "prompt": asked.prompt,
                    "marks": asked.marks,
                }
                for asked in facts.questions
            ],
        )
    return found
