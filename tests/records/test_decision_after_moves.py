"""A lesson's groups show the seats of now: whoever is in the class no more stands in none."""

import datetime

from itembank.planning.bands.bands import default_scheme
from itembank.records.entries.entries import Answers, LessonFacts, OwnViews, QuestionFacts
from itembank.records.entries.recording import record
from itembank.records.pupils.homes import Move, Stay, place
from itembank.records.pupils.moves import move_seats
from itembank.records.reports.class_report import class_report

DAY = datetime.date(2026, 11, 30)
LATER = DAY + datetime.timedelta(days=7)
FACTS = LessonFacts(
    "8K",
    DAY,
    4,
    questions=tuple(
        QuestionFacts(n, f"ratio.share/core/{n}", "ratio.share", "core") for n in range(1, 5)
    ),
)
WRONG, RIGHT = dict.fromkeys(range(1, 5), False), dict.fromkeys(range(1, 5), True)


def decision(store):
    with store.reading() as connection:
        return class_report(connection, "8K", default_scheme(), DAY, DAY).lessons[0].decision


def groups(found):
    return {group.letter: group.seats for group in found.groups if group.seats}


def test_a_pupil_who_went_to_another_class_left_no_seat_behind(store):
    rows = {"A1": WRONG, "A2": WRONG, "A3": WRONG, "A4": RIGHT}
    record(store, FACTS, Answers(rows, {}))
    record(store, FACTS, OwnViews({"A1": "sure", "A2": "sure", "A3": "sure"}, {}))
    before = decision(store)
    assert groups(before) == {"R": ("A1", "A2", "A3"), "E": ("A4",)}
    assert before.views.over == ("A1", "A2", "A3")
    move_seats(
        store,
        [
            Move("8K", "A1", "8L", "B2", LATER),
            Move("8K", "A2", "", "", LATER),
            Move("8K", "A3", "8K", "C4", LATER),
        ],
    )
    found = decision(store)
    assert groups(found) == {"R": ("C4",), "E": ("A4",)}
    assert found.scores == {"C4": 0, "A4": 4}
    assert found.views.over == ("C4",)
    assert {question.wrong for question in found.questions} == {("C4",)}
    assert found.moved == ("A1 is now 8L/B2", "A2 left", "A3 is now C4")
    # They were there, and count.
    assert found.overall == before.overall
    assert [group.pupils for group in found.groups] == [group.pupils for group in before.groups]


def test_the_day_of_a_move_is_the_first_of_the_new_seat():
    eve = LATER - datetime.timedelta(days=1)
    seat = place("8K", "A1")
    before, after = Stay(seat, end=LATER), Stay(seat, first=LATER)
    assert [before.holds(seat, day) for day in (DAY, eve, LATER)] == [True, True, False]
    assert [after.holds(seat, day) for day in (DAY, eve, LATER)] == [False, False, True]
    assert not before.holds(place("8K", "A10"), DAY)
