"""The share of marks that a lesson came to, by whatever was recorded of it, worked out by hand."""

import datetime

import pytest

from itembank.planning.bands.bands import default_scheme
from itembank.records.entries.entries import (
    Answers,
    BandCount,
    Bands,
    LessonFacts,
    QuestionFacts,
    Questions,
    Scores,
)
from itembank.records.entries.recording import record
from itembank.records.reports.class_report import class_report

DAY = datetime.date(2026, 11, 30)
MARKS = {1: 1, 2: 3, 3: 4}
FACTS = LessonFacts(
    "8K",
    DAY,
    8,
    questions=tuple(
        QuestionFacts(n, f"ratio.share/core/{n}", "ratio.share", "core", "", marks)
        for n, marks in MARKS.items()
    ),
)
HANDS = Bands(
    (
        BandCount("R", "Rebuild", 0, 4, 10),
        BandCount("S", "Secure", 5, 6, 10),
        BandCount("E", "Extend", 7, 8, 5),
    )
)


def decision(store, what):
    record(store, FACTS, what)
    with store.reading() as connection:
        return class_report(connection, "8K", default_scheme(), DAY, DAY).lessons[0].decision


@pytest.mark.parametrize(
    ("what", "share", "pupils"),
    [
        # 10 hands at 2 marks of 8, 10 at 5½ and 5 at 7½.
        (HANDS, (10 * 2 + 10 * 5.5 + 5 * 7.5) / (25 * 8), 25),
        # A question of 4 marks counts for four of one mark.
        (
            Questions({1: (20, 20), 2: (10, 20), 3: (0, 20)}),
            (1 * 20 + 3 * 10 + 4 * 0) / (8 * 20),
            20,
        ),
        (Scores({"A1": 8, "A2": 1, "A3": 3}), (8 + 1 + 3) / (3 * 8), 3),
        # Whoever was asked less is held to the marks of that alone.
        (
            Answers(
                {"A1": {1: True, 2: True, 3: False}, "A2": {1: True, 2: False}},
                {},
            ),
            (4 / 8 + 1 / 4) / 2,
            2,
        ),
    ],
    ids=["hands", "questions", "scores", "answers"],
)
def test_the_share_of_all_marks(store, what, share, pupils):
    overall = decision(store, what).overall
    assert overall.interval.share == pytest.approx(share)
    assert overall.pupils == pupils


def test_a_pupil_stands_in_the_band_of_the_marks_that_could_be_had(store):
    # 3 of 4 is past half, and 3 of 8 is not.
    right = {"A1": {1: False, 2: True}, "A2": {1: False, 2: True, 3: False}}
    found = decision(store, Answers(right, {}))
    assert {seat: group.letter for group in found.groups for seat in group.seats} == {
        "A1": "S",
        "A2": "R",
    }


def test_as_many_pupils_count_as_answered_the_question_that_most_answered(store):
    found = decision(store, Questions({1: (20, 28), 2: (7, 14), 3: (1, 9)}))
    assert found.overall.pupils == 28
