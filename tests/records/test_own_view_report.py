"""Own views over a term: counted together within lessons, listed only where enough is known."""

import datetime
from itertools import combinations

import numpy as np
import pytest

from itembank.planning.bands.bands import default_scheme
from itembank.records.entries.entries import (
    LEVELS,
    Answers,
    LessonFacts,
    OwnViews,
    QuestionFacts,
    Scores,
)
from itembank.records.entries.recording import record
from itembank.records.reports.class_report import class_report
from itembank.records.reports.own_view_report import FEWEST_SURE, FEWEST_SURE_OF_TOPIC

DAY = datetime.date(2026, 9, 7)
TOPICS = ("ratio.share", "fractions.order")


def term(store, seed, pupils, lessons=9):
    """Record a term and return its answers as (lesson, seat, view, score, {address: right})."""
    rng = np.random.default_rng(seed)
    rows = []
    for step in range(lessons):
        asked = [f"{TOPICS[n % 2]}/core/{rng.integers(3)}" for n in range(8)]
        asked = list(dict.fromkeys(asked))
        questions = tuple(
            QuestionFacts(n, text, *text.split("/")[:2]) for n, text in enumerate(asked, 1)
        )
        facts = LessonFacts("8K", DAY + datetime.timedelta(step), 8, "", "", questions)
        right = {
            f"S{s}": {n: bool(rng.random() < 0.55) for n in range(1, len(asked) + 1)}
            for s in range(pupils)
        }
        scores = {seat: sum(row.values()) for seat, row in right.items()}
        views = {seat: LEVELS[rng.integers(3)] for seat in right if rng.random() < 0.9}
        by_seat = bool(rng.random() < 0.7)
        record(store, facts, Answers(right, {}) if by_seat else Scores(scores))
        record(store, facts, OwnViews(views, {}))
        for seat, view in views.items():
            answers = {asked[n - 1]: good for n, good in right[seat].items()} if by_seat else {}
            rows.append((step, seat, view, scores[seat], answers))
    return rows


def summary(store):
    with store.reading() as connection:
        last = DAY + datetime.timedelta(days=60)
        return class_report(connection, "8K", default_scheme(), DAY, last).views


@pytest.mark.parametrize("seed", range(4))
def test_a_term_is_counted_as_one_would_by_hand(store, seed):
    rows = term(store, seed, pupils=14)
    found = summary(store)
    pairs = [
        (LEVELS.index(a[2]) - LEVELS.index(b[2])) * (a[3] - b[3])
        for a, b in combinations(rows, 2)
        if a[0] == b[0]
    ]
    agree, differ = sum(x > 0 for x in pairs), sum(x < 0 for x in pairs)
    assert found.agreement == pytest.approx((agree - differ) / (agree + differ))
    # The default scheme's cut scores of 8 marks are 5 and 7.
    assert found.over == sum(row[2] == "sure" and row[3] < 5 for row in rows)
    assert found.under == sum(row[2] == "not sure" and row[3] >= 7 for row in rows)
    assert found.sure == sum(row[2] == "sure" for row in rows)
    assert found.lessons == 9
    for fooled, fewest, part in (
        (found.topics, FEWEST_SURE_OF_TOPIC, 0),
        (found.questions, FEWEST_SURE, slice(None)),
    ):
        counts = {}
        for _, _, view, _, answers in rows:
            for address, good in answers.items() if view == "sure" else ():
                key = address.split("/")[0] if part == 0 else address
                wrong, sure = counts.get(key, (0, 0))
                counts[key] = (wrong + (not good), sure + 1)
        expected = {
            key: pair
            for key, pair in counts.items()
            if pair[1] >= fewest and pair[0] >= 2 and pair[0] / pair[1] >= 1 / 3
        }
        assert {one.address or one.topic: (one.wrong, one.sure) for one in fooled} == expected
        lows = [one.interval.low for one in fooled]
        assert lows == sorted(lows, reverse=True)
    assert found.topics


def test_of_a_few_pupils_and_lessons_nothing_is_listed(store):
    term(store, 1, pupils=3, lessons=2)
    found = summary(store)
    assert (found.topics, found.questions, found.agreement) == ((), (), None)
    assert found.noted
