"""Rasch difficulties of items by conditional maximum likelihood.

In the Rasch model a pupil of ability θ gets an item of difficulty β right with probability
1 / (1 + exp(β − θ)). Given how many answers of a pupil are right, which ones does not depend
on θ, so the difficulties can be found without any assumption about the class (Andersen,
*Journal of the Royal Statistical Society* B 34, 1972). The conditional likelihood needs the
elementary symmetric functions of exp(−β), summed up here item by item with positive terms
only (Gustafsson, *British Journal of Mathematical and Statistical Psychology* 33, 1980).
Pupils may have been asked different items: those asked the same ones form a group with
symmetric functions of its own.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from itembank.records.item_statistics import Answers, as_answers

FEWEST_PUPILS = 30
"""Pupils, not all wrong nor all right, below which no difficulties are given: about thirty put
them within one logit (Linacre, *Rasch Measurement Transactions* 7, 1994; from memory)."""
FEWEST_EITHER_WAY = 5
"""Right and wrong answers each that an item needs (common practice, no source)."""


class TooFew(ValueError):
    """There are not enough answers for difficulties; the message says what is missing."""


@dataclass(frozen=True, slots=True)
class Difficulties:
    """Rasch difficulties in logits, summing to zero, with their standard errors."""

    values: NDArray[np.float64]
    errors: NDArray[np.float64]
    pupils: int
    log_likelihood: float


@dataclass(frozen=True, slots=True)
class _Group:
    """Pupils who were asked the same items and got some but not all right."""

    items: NDArray[np.intp]
    right: NDArray[np.float64]  # right answers to each item
    scores: NDArray[np.float64]  # number of pupils with score 0 … number of items


def rasch(answers: object) -> Difficulties:
    """Return the difficulty of each item and its standard error, in logits.

    Raises:
        TooFew: pupils or answers are too few, or the items fall into sets that no pupil links.

    >>> import numpy as np
    >>> rng = np.random.default_rng(5)
    >>> chance = 1 / (1 + np.exp(np.array([-1.0, 0.0, 1.0]) - rng.normal(size=(2000, 1))))
    >>> found = rasch(rng.random((2000, 3)) < chance)
    >>> bool(np.all(np.abs(found.values - [-1, 0, 1]) < 4 * found.errors))
    True
    """
    from scipy.optimize import minimize

    table = as_answers(answers)
    number = (~np.isnan(table)).sum(axis=1)
    total = np.nansum(table, axis=1)
    table = table[(total > 0) & (total < number)]
    _check(table)
    groups = _groups(table)
    items = table.shape[1]

    def loss(free: NDArray[np.float64]) -> tuple[float, NDArray[np.float64]]:
        value, slope, _ = _likelihood(np.append(free, -free.sum()), groups, items, False)
        return -value, -(slope[:-1] - slope[-1])

    start = -np.log(np.nansum(table, axis=0) / np.nansum(1 - table, axis=0))
    start -= start.mean()
    fit = minimize(loss, start[:-1], jac=True, method="BFGS", options={"gtol": 1e-7})
    free = np.asarray(fit.x)
    # BFGS may stop at the limit of its line search: Newton's method takes the last steps.
    change = np.vstack([np.eye(items - 1), -np.ones(items - 1)])
    for _ in range(20):
        values = np.append(free, -free.sum())
        best, slope, information = _likelihood(values, groups, items, True)
        inverse = np.linalg.inv(change.T @ information @ change)
        step = inverse @ (change.T @ slope)
        free = free + step
        if np.abs(step).max() < 1e-9:
            break
    errors = np.sqrt(np.diag(change @ inverse @ change.T))
    return Difficulties(np.append(free, -free.sum()), errors, len(table), best)


def _check(table: Answers) -> None:
    pupils, items = table.shape
    if items < 2:
        raise TooFew("Difficulties compare items: there must be two or more.")
    if pupils < FEWEST_PUPILS:
        raise TooFew(
            f"Only {pupils} pupils got some but not all right; difficulties need "
            f"{FEWEST_PUPILS} or more."
        )
    right, wrong = np.nansum(table, axis=0), np.nansum(1 - table, axis=0)
    scarce = np.flatnonzero(np.minimum(right, wrong) < FEWEST_EITHER_WAY)
    if scarce.size:
        raise TooFew(
            f"{scarce.size} of {items} items have fewer than {FEWEST_EITHER_WAY} right or "
            "wrong answers."
        )
    if not _linked(table):
        raise TooFew("No pupil answered items of both sets, so they cannot be compared.")


def _linked(table: Answers) -> bool:
    """Whether every two items are linked both ways by pupils right on one and wrong on the other.

    Without it the likelihood has no highest point (Fischer, *Psychometrika* 46, 1981).
    """
    from scipy.sparse.csgraph import connected_components

    right, wrong = np.nan_to_num(table), np.nan_to_num(1 - table)
    beats = right.T @ wrong > 0
    count, _ = connected_components(beats, directed=True, connection="strong")
    return int(count) == 1


def _groups(table: Answers) -> list[_Group]:
    asked = ~np.isnan(table)
    patterns, which = np.unique(asked, axis=0, return_inverse=True)
    groups = []
    for place, pattern in enumerate(patterns):
        items = np.flatnonzero(pattern)
        part = table[which.ravel() == place][:, items]
        scores = np.bincount(part.sum(axis=1).astype(int), minlength=len(items) + 1)
        groups.append(_Group(items, part.sum(axis=0), scores.astype(np.float64)))
    return groups


def symmetric(easiness: NDArray[np.float64]) -> NDArray[np.float64]:
    """Return the elementary symmetric functions of orders 0 to n of n positive numbers.

    >>> symmetric(np.array([1.0, 2.0, 3.0])).tolist()
    [1.0, 6.0, 11.0, 6.0]
    """
    sums = np.zeros(len(easiness) + 1)
    sums[0] = 1
    for count, value in enumerate(easiness, 1):
        sums[1 : count + 1] += value * sums[:count]
    return sums


def _likelihood(
    values: NDArray[np.float64], groups: list[_Group], items: int, second: bool
) -> tuple[float, NDArray[np.float64], NDArray[np.float64]]:
    """Return the conditional log-likelihood, its slope, and the information where asked for."""
    total, slope = 0.0, np.zeros(items)
    information = np.zeros((items, items))
    for group in groups:
        easy = np.exp(-values[group.items])
        n = len(easy)
        gamma = symmetric(easy)
        total -= float(group.right @ values[group.items] + group.scores @ np.log(gamma))
        # Chance of each item being right, given the score (rows: items; columns: scores).
        chance = np.zeros((n, n + 1))
        for i in range(n):
            chance[i, 1:] = easy[i] * symmetric(np.delete(easy, i)) / gamma[1:]
        expected = chance @ group.scores
        slope[group.items] += expected - group.right
        if not second:
            continue
        joint = np.diag(expected)
        for i in range(n):
            for j in range(i):
                both = np.zeros(n + 1)
                both[2:] = easy[i] * easy[j] * symmetric(np.delete(easy, [i, j])) / gamma[2:]
                joint[i, j] = joint[j, i] = both @ group.scores
        here = np.ix_(group.items, group.items)
        information[here] += joint - (chance * group.scores) @ chance.T
    return total, slope, information
