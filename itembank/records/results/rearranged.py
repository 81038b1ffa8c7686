"""A class as its pupils sit now: what those who came bring along, and what those who went take.

Answers and scores by seat follow the pupil (:mod:`itembank.records.pupils.moves`); hands that were
counted name nobody, and stay where they were counted.
"""

from __future__ import annotations

import datetime
from collections import defaultdict
from collections.abc import Mapping
from typing import TYPE_CHECKING

from sqlalchemy import ColumnElement, Connection, Table, and_, or_, select, tuple_

from itembank.planning.choosing.class_memory import Scored
from itembank.records.entries.details import unpack_answers
from itembank.records.entries.questions_asked import unpack_asked
from itembank.records.pupils.homes import Homes
from itembank.records.pupils.moved_rows import Moved, moved_rows
from itembank.records.pupils.moves import moves_there
from itembank.records.results.scope import Scope
from itembank.records.results.whole_scores import Wholes, of_scores
from itembank.records.store.store_tables import question
from itembank.text.folding import folded

if TYPE_CHECKING:
    from itembank.records.results.results import TopicResult

Tallies = dict[int | None, dict[int, tuple[int, int]]]


class Rearranged:
    """The moves of a class's pupils up to a day; nothing of it costs anything without moves."""

    def __init__(
        self, connection: Connection, class_name: str, last: datetime.date | None = None
    ) -> None:
        key = folded(class_name)
        rows = moved_rows(connection, last)
        self.left: dict[int, list[Moved]] = defaultdict(list)
        self.came: dict[int, list[Moved]] = defaultdict(list)
        for row in rows:
            home = row.home.class_key if row.home is not None else ""
            # Who moved within the class left nothing and brought nothing: only the seat is new.
            if row.class_key == key and home != key:
                self.left[row.entry_id].append(row)
            elif row.class_key != key and home == key:
                self.came[row.entry_id].append(row)
        self.arrivals = Homes(moves_there(connection, last)).arrivals(key)

    def came_within(self, scope: Scope) -> list[Moved]:
        """Return the answers by seat that those who came gave elsewhere, on the days in scope."""
        return [
            row
            for rows in self.came.values()
            for row in rows
            if row.answers
            and (scope.first is None or scope.first <= row.date)
            and (scope.last is None or row.date <= scope.last)
        ]

    def seated(self, table: Table, scope: Scope) -> ColumnElement[bool]:
        """Return the condition that a row by entry and seat is of a pupil of the class in scope."""
        row = tuple_(table.c.entry_id, table.c.seat)
        found: ColumnElement[bool] = table.c.entry_id.in_(scope.entries())
        if gone := [(moved.entry_id, moved.seat) for rows in self.left.values() for moved in rows]:
            found = and_(found, row.not_in(gone))
        if came := [(moved.entry_id, moved.seat) for moved in self.came_within(scope)]:
            found = or_(found, row.in_(came))
        return found

    def take_out(self, tallies: Tallies, wholes: Wholes) -> None:
        """Take those who went out of counts by question, and out of scores of whole starters."""
        for entry_id, rows in self.left.items():
            if entry_id in tallies:
                for row in rows:
                    for number, right in unpack_answers(row.answers).items():
                        good, out_of = tallies[entry_id].get(number, (0, 0))
                        tallies[entry_id][number] = (good - right, out_of - 1)
            elif entry_id in wholes:
                whole = wholes[entry_id].without(row.marks for row in rows)
                # A lesson of which everybody left says nothing of this class any more, not even
                # that 0 were right.
                if whole.pupils:
                    wholes[entry_id] = whole
                else:
                    del wholes[entry_id]

    def size(
        self, here: Mapping[int | None, int], dates: Mapping[int | None, datetime.date]
    ) -> int:
        """Return how many pupils the class has now, as far as results show it.

        `here` are the pupils of each lesson who are still in the class.
        """
        # Of each lesson: who was there and is still here, and who came later. The fullest one is
        # nearest, since absent pupils are counted nowhere.
        sizes = [count + self._after(dates[entry_id]) for entry_id, count in here.items() if count]
        brought = max(map(len, self.came.values()), default=0)
        # Never 0: shares are taken of it.
        return max([*sizes, len(self.arrivals), brought, 1])

    def _after(self, date: datetime.date) -> int:
        return sum(arrival > date for arrival in self.arrivals)

    def part(self, date: datetime.date, size: int) -> float:
        """Return the share of the class, as it is now, that was in it on a day."""
        return max(1 - self._after(date) / size, 0.0)

    def brought_along(
        self, connection: Connection, size: int
    ) -> tuple[list[TopicResult], list[Scored]]:
        """Return what those who came were asked in their former classes, and how it went."""
        from itembank.records.results.results import TopicResult

        lessons = {rows[0].lesson_id for rows in self.came.values()}
        there: dict[int, dict[int, tuple[str, int]]] = defaultdict(dict)
        if lessons:
            for row in connection.execute(
                select(
                    question.c.lesson_id, question.c.number, question.c.topic, question.c.marks
                ).where(question.c.lesson_id.in_(sorted(lessons)))
            ):
                there[row.lesson_id][row.number] = (row.topic, row.marks)
        found, scored = [], []
        for rows in self.came.values():
            first = rows[0]
            asked = there[first.lesson_id]
            answers = [unpack_answers(row.answers) for row in rows if row.answers]
            marks = [row.marks for row in rows if not row.answers and row.out_of]
            topics: dict[str, list[int]] = defaultdict(list)
            for number in unpack_asked(first.asked, asked):
                topics[asked[number][0]].append(number)
            # What three of thirty were asked elsewhere is no occasion on which the class was asked.
            part = min(len(rows) / size, 1.0)
            for topic, numbers in topics.items():
                given = [row[n] for row in answers for n in numbers if n in row]
                if given or marks:
                    by_score = bool(marks)
                    found.append(
                        TopicResult(topic, first.date, sum(given), len(given), part, by_score)
                    )
            # Scores alone say of no topic how it went: the model shares them out over all that was
            # asked.
            if marks and topics:
                whole = of_scores(marks, first.out_of)
                worth = {t: sum(asked[n][1] for n in numbers) for t, numbers in topics.items()}
                scored.append(Scored(first.date, whole.share, whole.variance, worth))
        return found, scored


def moved_answers(connection: Connection, scope: Scope) -> list[tuple[str, str, int, int]]:
    """Return what moved from class to class within a scope, as amounts to add to counts.

    Each is the key of a class, a topic, right answers and answers: below 0 for the class that
    was left. Only answers by question are in such counts.
    """
    rows = [
        row
        for row in moved_rows(connection, scope.last)
        if row.kind == "answers" and (scope.first is None or scope.first <= row.date)
        if scope.last is None or row.date <= scope.last
    ]
    topics: dict[int, dict[int, str]] = defaultdict(dict)
    ids = sorted({row.lesson_id for row in rows})
    if ids:
        for row in connection.execute(
            select(question.c.lesson_id, question.c.number, question.c.topic).where(
                question.c.lesson_id.in_(ids)
            )
        ):
            topics[row.lesson_id][row.number] = row.topic
    found = []
    for moved in rows:
        home = moved.home.class_key if moved.home is not None else ""
        for number, right in unpack_answers(moved.answers).items():
            topic = topics[moved.lesson_id].get(number)
            # A question of which no row is kept has no topic, and is in no count to be changed.
            if topic is not None and home != moved.class_key:
                found.append((moved.class_key, topic, -int(right), -1))
                found.append((home, topic, int(right), 1))
    return found
