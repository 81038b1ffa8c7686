"""How hard questions are, whoever answered them: Rasch difficulties with standard errors.

A share of right answers says as much of the class as of the question. Rasch difficulties do
not: pupils are compared only with themselves, over the questions of one starter. Of few
questions each has a difficulty of its own, and a topic and tier the mean of its questions'. Of
many, most were answered too seldom for that: there each topic and tier is taken as one, and a
question is then measured with all others held at the difficulty of their topic and tier, as
new items are calibrated against anchored ones (Kolen & Brennan, *Test Equating, Scaling, and
Linking*; from memory).
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from itembank.data_class import dataclass
from itembank.records.statistics.item_statistics import Answers
from itembank.records.statistics.rasch import (
    FEWEST_EITHER_WAY,
    TooFew,
    group_by_items,
    rasch_of_starters,
    symmetric,
)
from itembank.records.statistics.starter_answers import StarterAnswers

NEWEST = 2000
"""Starters, the newest, that difficulties are taken from: some 60,000 pupils' answers."""
MOST_ITEMS = 40
"""Questions up to which all difficulties are found together; above, topic and tier come first."""

Measured = dict[int, tuple[float, float]]
"""Difficulty and standard error in logits, by the number of a question or topic and tier."""


@dataclass(frozen=True, slots=True)
class Measures:
    """Difficulties of questions and of topics and tiers on one scale, and what they rest on."""

    items: Measured
    kinds: Measured
    note: str


def measure(found: StarterAnswers, kind: NDArray[np.intp], kinds: int) -> Measures:
    """Return difficulties; `kind` gives the topic and tier, by number, of each question."""
    first = max(len(found.starters) - NEWEST, 0)
    total = np.nansum(found.table, axis=1)
    # Who has all right, or all wrong, says nothing of which question is harder.
    some = (total > 0) & (total < (~np.isnan(found.table)).sum(axis=1))
    rows = (found.starter >= first) & some
    table, starter = found.table[rows], found.starter[rows]
    few = len(found.items) <= MOST_ITEMS
    asked = found.asked if few else _by_kind(found.asked, kind)
    number = len(found.items) if few else kinds
    place, kept = _with_both(table, asked[starter], number)
    try:
        fit = rasch_of_starters(table, starter, place[asked], len(kept))
    except TooFew as why:
        return Measures({}, {}, f"There are no Rasch difficulties yet. {why}")
    pairs = zip(fit.values.tolist(), fit.errors.tolist(), strict=True)
    fitted: Measured = dict(zip(kept.tolist(), pairs, strict=True))
    newest = f" of the newest {NEWEST:,} starters" if first else ""
    left = number - len(kept)
    note = (
        f"Rasch difficulties of {'questions' if few else 'topic and tier'} in logits, 0 the mean, "
        f"from {fit.pupils:,} pupils' answers{newest}, each pupil's level left out anew at each "
        "starter."
    )
    if left:
        note += f" Left out with too few right or wrong answers: {left}."
    if few:
        return Measures(fitted, _means(fitted, kind, found), note)
    note += " A question's own: with all others at the difficulty of their topic and tier."
    anchors, errors = np.full(kinds, np.nan), np.full(kinds, np.nan)
    for n, (value, error) in fitted.items():
        anchors[n], errors[n] = value, error
    shifts = anchored(table, starter, found.asked, anchors[kind])
    items = {
        n: (float(anchors[kind[n]]) + shift, float(np.hypot(errors[kind[n]], error)))
        for n, (shift, error) in shifts.items()
    }
    return Measures(items, fitted, note)


def _by_kind(asked: NDArray[np.intp], kind: NDArray[np.intp]) -> NDArray[np.intp]:
    found = asked.copy()
    found[asked >= 0] = kind[asked[asked >= 0]]
    return found


def _with_both(
    table: Answers, met: NDArray[np.intp], number: int
) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """Return where those with enough right and wrong answers go, and which they are.

    One with hardly a right or a wrong answer would spoil the others.
    """
    right, wrong = (
        np.bincount(met[(met >= 0) & (table == mark)], minlength=number) for mark in (1, 0)
    )
    kept = np.flatnonzero(np.minimum(right, wrong) >= FEWEST_EITHER_WAY)
    if len(kept) < 2:
        kept = np.arange(number)
    place = np.full(number + 1, -1, dtype=np.intp)
    place[kept] = np.arange(len(kept))
    return place, kept


def _means(fitted: Measured, kind: NDArray[np.intp], found: StarterAnswers) -> Measured:
    """Return the difficulty of each topic and tier: the mean of its questions, by answers."""
    met = found.asked[found.starter]
    answers = np.bincount(
        met[(met >= 0) & ~np.isnan(found.table)], minlength=len(found.items)
    ).astype(np.float64)
    means: Measured = {}
    for group in set(kind[list(fitted)].tolist()):
        mine = [n for n in fitted if kind[n] == group]
        weight = answers[mine] / answers[mine].sum()
        values, errors = np.array([fitted[n] for n in mine]).T
        means[group] = (float(weight @ values), float(np.sqrt((weight**2) @ (errors**2))))
    return means


def anchored(
    answers: Answers,
    starter: NDArray[np.intp],
    asked: NDArray[np.intp],
    anchors: NDArray[np.float64],
) -> Measured:
    """Return how much harder than its anchor each item is, with the standard error.

    The arguments are those of ``rasch_of_starters``; `anchors` holds for each item the
    difficulty at which the others see it (NaN: not known, and then its answers do not count).
    Given a pupil's score and the anchors of the others, the chance of an item being right
    depends on its own difficulty alone; its likelihood then has one peak. Where all answers
    were right, or all wrong, half an answer the other way keeps it finite.

    >>> import numpy as np
    >>> rng = np.random.default_rng(3)
    >>> hard = np.array([0.0, 0.0, 0.0, 1.5])
    >>> rows = rng.random((900, 4)) < 1 / (1 + np.exp(hard - rng.normal(size=(900, 1))))
    >>> asked, starter = np.arange(4)[None, :], np.zeros(900, np.intp)
    >>> shift, error = anchored(rows * 1.0, starter, asked, np.zeros(4))[3]
    >>> abs(shift - 1.5) < 3 * error
    True
    """
    met = asked[starter]
    known = (met >= 0) & ~np.isnan(anchors)[met]
    table = np.where(known, answers, np.nan)
    total = np.nansum(table, axis=1)
    # Who has all right, or all wrong, says nothing of which question is harder.
    some = (total > 0) & (total < (~np.isnan(table)).sum(axis=1))
    number = len(anchors)
    right = np.zeros(number)
    which, odds, pupils = [], [], []
    for groups in group_by_items(table[some], starter[some], asked):
        np.add.at(right, groups.items, groups.right)
        easy = np.exp(-anchors[groups.items])
        for i in range(easy.shape[1]):
            # Of those with score s: right with s − 1 of the others right, wrong with s of them.
            rest = np.log(symmetric(np.delete(easy, i, axis=1)))
            odds.append((rest[:, :-1] - rest[:, 1:] - anchors[groups.items[:, i], None]).ravel())
            pupils.append(groups.scores[:, 1:-1].ravel())
            which.append(np.repeat(groups.items[:, i], rest.shape[1] - 1))
    if not which:
        return {}
    item, odd, count = (np.concatenate(parts) for parts in (which, odds, pupils))
    item, odd, count = item[count > 0], odd[count > 0], count[count > 0]
    asked_of = np.bincount(item, count, minlength=number)
    measured = np.flatnonzero(asked_of)
    wanted = np.clip(right, 0.5, np.maximum(asked_of - 0.5, 0.5))
    shift = np.zeros(number)
    for _ in range(50):
        chance = 1 / (1 + np.exp(shift[item] - odd))
        expected = np.bincount(item, count * chance, minlength=number)
        spread = np.bincount(item, count * chance * (1 - chance), minlength=number)
        step = np.zeros(number)
        # Newton's method, by a logit at most: from far off it would leap past the peak.
        step[measured] = np.clip((expected - wanted)[measured] / spread[measured], -1, 1)
        shift += step
        if np.abs(step).max() < 1e-6:
            break
    return {n: (float(shift[n]), float(spread[n] ** -0.5)) for n in measured.tolist()}
