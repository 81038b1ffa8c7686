"""What is recorded beside something else: added answers, other periods, what was taken back."""

from __future__ import annotations

import datetime
import shutil

import pytest

from itembank.errors import ItembankError
from itembank.planning.bands.bands import default_scheme
from itembank.records.entries.details import tallies_by_question
from itembank.records.entries.entries import Answers, Cancelled, Scores
from itembank.records.entries.recording import record
from itembank.records.entries.undoing import last_recorded, undo
from itembank.records.forget.forgetting import forget
from itembank.records.pupils.whom import Whom
from itembank.records.reports.decision import decide
from itembank.records.results.lessons import lessons
from itembank.records.store import store_tables as tables
from itembank.records.store.store import open_store
from itembank.records.unite.uniting import unite

from .stores import DAY, counting, facts

MOMENT = datetime.datetime(2026, 11, 30, 9, 0)


@pytest.fixture
def store(tmp_path):
    with open_store(str(tmp_path / "results.sqlite3")) as opened:
        yield opened


def prompts(store):
    with store.reading() as connection:
        return [row.prompt for row in connection.execute(tables.question.select())]


def test_what_is_added_does_not_change_what_a_lesson_asked(store):
    record(store, facts(), Answers({"A1": {1: True, 2: True}}, {}))
    import dataclasses

    said_again = dataclasses.replace(facts(), title="Another title")
    record(store, said_again, Answers({"A2": {1: False, 2: True}}, {}), add=True)
    with store.reading() as connection:
        (lesson,) = lessons(connection)
        title = connection.scalar(tables.lesson.select().with_only_columns(tables.lesson.c.title))
        assert title == facts().title
        assert tallies_by_question(connection, lesson.entry_id)[1] == (1, 2)


def test_a_lesson_that_fell_out_without_a_period_has_no_results_under_one(store):
    record(store, facts(), Cancelled(""))
    with pytest.raises(ItembankError, match="had no lesson"):
        record(store, facts(period="3"), Scores({"A1": 3}))
    undo(store, "8K")
    record(store, facts(period="3"), Scores({"A1": 3}))


def test_taking_back_by_a_period_finds_what_was_recorded_without_one(store):
    record(store, facts(), Scores({"A1": 3}))
    assert last_recorded(store, "8K", DAY, "3").kinds == ("scores",)
    undo(store, "8K", DAY, period="3")
    assert counting(store) == []


def test_nothing_is_asked_about_an_undo_before_something_new_was_recorded(store):
    long_ago = MOMENT - datetime.timedelta(days=90)
    record(store, facts(), Scores({"A1": 3}), now=long_ago)
    record(store, facts(), Scores({"A1": 4}), replace=True, now=long_ago)
    undo(store, "8K")
    assert last_recorded(store, "8K").asked_about  # the older one would go further back
    record(store, facts(), Scores({"A1": 2}), replace=True)
    assert not last_recorded(store, "8K").asked_about


def test_what_both_files_took_back_was_taken_back_at_the_earlier_moment(tmp_path):
    mine, copy = tmp_path / "mine.sqlite3", tmp_path / "copy.sqlite3"
    with open_store(str(mine)) as store:
        record(store, facts(), Scores({"A1": 3}), now=MOMENT)
    shutil.copy(mine, copy)
    for place, at in ((copy, 5), (mine, 9)):
        with open_store(str(place)) as store, store.writing() as connection:
            when = MOMENT + datetime.timedelta(minutes=at)
            connection.execute(tables.entry.update().values(undone_at=when))
    with open_store(str(mine)) as store:
        unite(store, copy)
        with store.reading() as connection:
            (row,) = connection.execute(tables.entry.select()).all()
    assert row.undone_at == MOMENT + datetime.timedelta(minutes=5)


def test_counts_that_come_in_are_without_the_seat_that_was_forgotten_here(tmp_path):
    mine, copy = tmp_path / "mine.sqlite3", tmp_path / "copy.sqlite3"
    two = {"A1": {1: True, 2: False}, "A2": {1: True, 2: True}}
    with open_store(str(mine)) as store:
        record(store, facts(), Answers(two, {}), now=MOMENT)
    shutil.copy(mine, copy)
    with open_store(str(copy)) as store:
        later = facts(DAY + datetime.timedelta(days=1))
        record(store, later, Answers(two, {}), now=MOMENT + datetime.timedelta(days=1))
    with open_store(str(mine)) as store:
        forget(store, Whom("8K", "A2"))
        unite(store, copy)
        with store.reading() as connection:
            for lesson in lessons(connection):
                counts = tallies_by_question(connection, lesson.entry_id)
                assert counts == {1: (1, 1), 2: (0, 1)}, lesson.date


def test_pupils_who_were_asked_fewer_questions_stand_by_what_they_were_asked(store):
    right = {"A1": {1: True, 2: True}, "A2": {1: True, 2: True, 3: False, 4: False}}
    record(store, facts(), Answers(right, {}))
    with store.reading() as connection:
        (lesson,) = lessons(connection)
        found = decide(connection, lesson, default_scheme())
    assert found.unlike
    bands = {seat: group.letter for group in found.groups for seat in group.seats}
    assert bands == {"A1": "E", "A2": "R"}


def test_a_class_that_was_asked_alike_is_not_called_unlike(store):
    record(store, facts(), Answers({"A1": dict.fromkeys(range(1, 5), True)}, {}))
    with store.reading() as connection:
        (lesson,) = lessons(connection)
        assert not decide(connection, lesson, default_scheme()).unlike
