"""Difficulties do not depend on who answered: simulated schools whose truth is known."""

import datetime

import numpy as np
import pytest

from itembank.records.entries.entries import Answers, LessonFacts, QuestionFacts
from itembank.records.entries.recording import record
from itembank.records.reports.item_report import contradictions, item_report
from itembank.records.results.scope import Scope
from itembank.records.statistics.item_difficulty import MOST_ITEMS, anchored
from itembank.records.statistics.rasch import rasch
from tests.depth import left

DAY = datetime.date(2026, 9, 7)
TIERS = {"support": -0.8, "core": 0.0, "challenge": 0.8}
STRONG, WEAK = 1.4, -1.4


def truth(each, odd=()):
    """Return the difficulty of each item of a topic, `each` to a tier, but for odd ones."""
    found = {
        f"ratio.share/{tier}/{n}": hard for tier, hard in TIERS.items() for n in range(1, each + 1)
    }
    return found | dict(odd)


def teach(store, rng, hard, plan, starters=12, pupils=28):
    """Record starters: each class of the plan, with its ability, is asked most of one tier."""
    for name, (ability, most) in plan.items():
        able = rng.normal(ability, 0.8, pupils)
        for step in range(starters):
            mine = [one for one in hard if f"/{most}/" in one]
            core = [one for one in hard if "/core/" in one]
            asked = [*rng.choice(mine, 5, replace=False), *rng.choice(core, 3, replace=False)]
            chance = 1 / (1 + np.exp(np.array([hard[one] for one in asked]) - able[:, None]))
            table = rng.random(chance.shape) < chance
            rows = {
                f"S{s}": {n: bool(x) for n, x in enumerate(row, 1)} for s, row in enumerate(table)
            }
            questions = tuple(
                QuestionFacts(n, one, *one.split("/")[:2]) for n, one in enumerate(asked, 1)
            )
            date = DAY + datetime.timedelta(days=step)
            record(store, LessonFacts(name, date, 8, "", "", questions), Answers(rows, {}))


def reported(store):
    """Return the report, and what facility alone would have said."""
    with store.reading() as connection:
        found = item_report(connection, Scope())
    bare = [
        [line._replace(difficulty=None, error=None) for line in lines]
        for lines in (found.items, found.generators)
    ]
    return found, contradictions(*bare)


def names(found):
    return [one.line.address or f"{one.line.topic}/{one.line.tier}" for one in found]


SCHOOLS = [(0, 6), (1, 30), *map(left, [(1, 6), (2, 6), (0, 30), (2, 30)])]
"""Seeds and numbers of questions a tier: a few, each with its own difficulty, and many."""


@pytest.mark.parametrize(("seed", "each"), SCHOOLS)
def test_strong_classes_with_the_hard_tier_contradict_nothing(store, seed, each):
    rng = np.random.default_rng(seed)
    plan = {"7M": (WEAK, "support"), "8K": (STRONG, "challenge"), "9S": (WEAK, "support")}
    teach(store, rng, truth(each), plan)
    found, by_facility = reported(store)
    assert (len(found.items) > MOST_ITEMS) == (each == 30)
    # The strong got the challenge items right more often than the weak the support items.
    assert "ratio.share/support" in names(by_facility)
    assert names(found.contradictions) == []


@pytest.mark.parametrize(("seed", "each"), SCHOOLS)
def test_an_item_too_hard_is_found_though_the_strong_were_asked_it(store, seed, each):
    rng = np.random.default_rng(seed)
    odd = "ratio.share/support/1"
    plan = {"7M": (STRONG, "support"), "8K": (WEAK, "challenge"), "9S": (STRONG, "support")}
    teach(store, rng, truth(each, [(odd, 2.6)]), plan)
    found, by_facility = reported(store)
    assert names(found.contradictions) == [odd]
    assert "harder than" in found.contradictions[0].words()
    assert "whoever answered" in found.contradictions[0].words()
    assert not any(one.other == "challenge" for one in by_facility)


@pytest.mark.parametrize("seed", [0, left(1), left(2)])
def test_tiers_the_wrong_way_round_are_found_whoever_answered(store, seed):
    rng = np.random.default_rng(seed)
    hard = {one: -value for one, value in truth(30).items()}
    plan = {"7M": (STRONG, "support"), "8K": (WEAK, "challenge")}
    teach(store, rng, hard, plan, starters=20)
    found, by_facility = reported(store)
    both = {"ratio.share/support", "ratio.share/challenge"}
    assert not both & set(names(by_facility))
    assert both <= set(names(found.contradictions))


def test_a_question_of_many_has_its_own_difficulty_near_the_truth(store):
    rng = np.random.default_rng(5)
    hard = {one: value + rng.normal(0, 0.7) for one, value in truth(20).items()}
    plan = {
        f"8{letter}": (0.3, tier) for letter, tier in zip("KLMN", [*TIERS, "core"], strict=True)
    }
    teach(store, rng, hard, plan, starters=30)
    found, _ = reported(store)
    measured = np.array([[hard[item.address], item.difficulty, item.error] for item in found.items])
    right, value, error = measured.T
    off = value - right - (value - right).mean()
    assert len(found.items) == 60
    # The others are held at their tier, not at their own difficulty: near, not exact.
    assert np.sqrt((off**2).mean()) < 0.3
    assert np.corrcoef(right, value)[0, 1] > 0.95
    assert (np.abs(off) < 3 * error + 0.3).all()


@pytest.mark.parametrize("seed", range(3))
def test_with_true_anchors_shifts_are_nothing_and_errors_those_of_rasch(seed):
    rng = np.random.default_rng(seed)
    hard = np.array([-1.0, -0.4, 0.0, 0.5, 0.9])
    answers = (rng.random((800, 5)) < 1 / (1 + np.exp(hard - rng.normal(size=(800, 1))))) * 1.0
    fit = rasch(answers)
    asked, starter = np.arange(5)[None, :], np.zeros(800, np.intp)
    found = anchored(answers, starter, asked, fit.values)
    assert sorted(found) == [0, 1, 2, 3, 4]
    for n, (shift, error) in found.items():
        # At the joint peak of the likelihood each item alone is at its peak as well.
        assert shift == pytest.approx(0, abs=1e-5)
        # Of n items about equally well known, those of one alone are n / (n − 1) of those of all.
        assert error == pytest.approx(fit.errors[n] * 5 / 4, rel=0.02)


def test_all_right_or_all_wrong_stays_finite_and_unknown_anchors_are_left_out():
    rng = np.random.default_rng(1)
    answers = (rng.random((60, 4)) < 0.5) * 1.0
    answers[:, 3] = 1.0
    found = anchored(
        answers, np.zeros(60, np.intp), np.arange(4)[None, :], np.array([0.0, 0.0, np.nan, 0.0])
    )
    assert set(found) == {0, 1, 3}
    assert found[3][0] < -2
    assert np.isfinite(found[3]).all()
