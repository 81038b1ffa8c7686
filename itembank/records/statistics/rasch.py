"""Rasch difficulties of items by conditional maximum likelihood.

In the Rasch model a pupil of ability θ gets an item of difficulty β right with probability
1 / (1 + exp(β − θ)). Given how many answers of a pupil are right, which ones does not depend
on θ, so the difficulties can be found without any assumption about the class (Andersen,
*Journal of the Royal Statistical Society* B 34, 1972; from memory). The likelihood needs the
elementary symmetric functions of exp(−β), summed up here item by item with positive terms
only (Gustafsson, *British Journal of Mathematical and Statistical Psychology* 33, 1980; from
memory).
Pupils may have been asked different items: those asked the same ones form a group with
symmetric functions of its own; groups of one size are worked out together.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from itembank.data_class import dataclass
from itembank.records.statistics.item_statistics import Answers, as_answers

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
class Groups:
    """Groups asked equally many items; of their pupils, those with some but not all right.

    A row is a group: its items, right answers to each, pupils with score 0 … number of items.
    """

    items: NDArray[np.intp]
    right: NDArray[np.float64]
    scores: NDArray[np.float64]


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
    table = as_answers(answers)
    columns = np.arange(table.shape[1])[None, :]
    return rasch_of_starters(table, np.zeros(len(table), np.intp), columns, table.shape[1])


def rasch_of_starters(
    answers: Answers, starter: NDArray[np.intp], asked: NDArray[np.intp], items: int
) -> Difficulties:
    """Return difficulties of items met in many starters, each pupil at each starter a row.

    Row r of `answers` was given in the starter `starter[r]`, whose column k asked the item
    ``asked[starter[r], k]`` (−1: none that counts). A pupil's ability may change from starter
    to starter: it is left out anew each time.

    Raises:
        TooFew: as :func:`rasch`.
    """
    table = np.where(asked[starter] >= 0, answers, np.nan)
    number = (~np.isnan(table)).sum(axis=1)
    total = np.nansum(table, axis=1)
    some = (total > 0) & (total < number)
    table, starter = table[some], starter[some]
    right, wrong, beats = _against(table, asked[starter], items)
    _check(len(table), right, wrong, beats)
    sizes = group_by_items(table, starter, asked)
    values = -np.log(right / wrong)
    values -= values.mean()
    change = np.vstack([np.eye(items - 1), -np.ones(items - 1)])
    best, slope, information = _likelihood(values, sizes, items)
    for _ in range(60):
        inverse = np.linalg.inv(change.T @ information @ change)
        step = change @ (inverse @ (change.T @ slope))
        if np.abs(step).max() < 1e-9:
            break
        # The likelihood has one peak: Newton's step, halved while it leads too far, climbs it.
        for _ in range(40):
            tried, slope, information = _likelihood(values + step, sizes, items)
            if tried >= best - 1e-9 * abs(best):
                break
            step = step / 2
        values, best = values + step, tried
    errors = np.sqrt(np.diag(change @ inverse @ change.T))
    return Difficulties(values, errors, len(table), best)


def _against(
    table: Answers, which: NDArray[np.intp], items: int
) -> tuple[NDArray[np.float64], NDArray[np.float64], NDArray[np.bool_]]:
    """Return right and wrong answers to each item, and which item was right where which was not."""
    right, wrong = table == 1, table == 0
    counts = [
        np.bincount(which[hits], minlength=items).astype(np.float64) for hits in (right, wrong)
    ]
    beats = np.zeros((items, items), dtype=bool)
    for i in range(table.shape[1]):
        for j in range(table.shape[1]):
            both = right[:, i] & wrong[:, j]
            beats[which[both, i], which[both, j]] = True
    return counts[0], counts[1], beats


def _check(
    pupils: int, right: NDArray[np.float64], wrong: NDArray[np.float64], beats: NDArray[np.bool_]
) -> None:
    items = len(right)
    if items < 2:
        raise TooFew("Difficulties compare items: there must be two or more.")
    if pupils < FEWEST_PUPILS:
        raise TooFew(
            f"Only {pupils} pupils got some but not all right; difficulties need "
            f"{FEWEST_PUPILS} or more."
        )
    scarce = np.flatnonzero(np.minimum(right, wrong) < FEWEST_EITHER_WAY)
    if scarce.size:
        raise TooFew(
            f"{scarce.size} of {items} items have fewer than {FEWEST_EITHER_WAY} right or "
            "wrong answers."
        )
    # Every two items must be linked both ways by pupils right on one and wrong on the other, or
    # the likelihood has no highest point (Fischer, *Psychometrika* 46, 1981; from memory).
    if not _linked(beats):
        raise TooFew("No pupil answered items of both sets, so they cannot be compared.")


def _linked(beats: NDArray[np.bool_]) -> bool:
    """Whether one can go from every item to every other along `beats`."""
    for ways in (beats, beats.T):
        reached = np.zeros(len(beats), dtype=bool)
        reached[0] = True
        while (more := reached | ways[reached].any(axis=0)).sum() > reached.sum():
            reached = more
        if not reached.all():
            return False
    return True


def group_by_items(
    table: Answers, starter: NDArray[np.intp], asked: NDArray[np.intp]
) -> list[Groups]:
    """Return the pupils who were asked the same items together, as in ``rasch_of_starters``."""
    here = ~np.isnan(table)
    bits = np.packbits(here, axis=1)
    keys = np.ascontiguousarray(
        np.column_stack([starter.astype(">u4").view(np.uint8).reshape(-1, 4), bits])
    )
    # Rows as one value each: far quicker to compare than rows of columns.
    flat = keys.view(np.dtype((np.void, keys.shape[1]))).ravel()
    _, first, which = np.unique(flat, return_index=True, return_inverse=True)
    which = which.ravel()
    patterns, starters, numbers = here[first], starter[first], here[first].sum(axis=1)
    found = []
    for number in np.unique(numbers):
        some = np.flatnonzero(numbers == number)
        place = np.full(len(first), -1)
        place[some] = np.arange(len(some))
        rows = place[which] >= 0
        group = place[which[rows]]
        columns = np.argsort(~patterns[some], axis=1, kind="stable")[:, :number]
        answers = np.take_along_axis(table[rows], columns[group], axis=1)
        right = np.zeros((len(some), number))
        np.add.at(right, group, answers)
        scores = np.zeros((len(some), number + 1))
        np.add.at(scores, (group, answers.sum(axis=1).astype(int)), 1)
        items = np.take_along_axis(asked[starters[some]], columns, axis=1)
        found.append(Groups(items, right, scores))
    return found


def symmetric(easiness: NDArray[np.float64]) -> NDArray[np.float64]:
    """Return the elementary symmetric functions of orders 0 to n of n positive numbers.

    Of an array, those of each row.

    >>> symmetric(np.array([1.0, 2.0, 3.0])).tolist()
    [1.0, 6.0, 11.0, 6.0]
    """
    number = easiness.shape[-1]
    sums = np.zeros((*easiness.shape[:-1], number + 1))
    sums[..., 0] = 1
    for k in range(number):
        sums[..., 1 : k + 2] += easiness[..., k, None] * sums[..., : k + 1]
    return sums


def _likelihood(
    values: NDArray[np.float64], sizes: list[Groups], items: int
) -> tuple[float, NDArray[np.float64], NDArray[np.float64]]:
    """Return the conditional log-likelihood, its slope, and the information."""
    total, slope = 0.0, np.zeros(items)
    information = np.zeros((items, items))
    for groups in sizes:
        hard = values[groups.items]
        easy = np.exp(-hard)
        count, n = easy.shape
        gamma = symmetric(easy)
        total -= float((groups.right * hard).sum() + (groups.scores * np.log(gamma)).sum())
        # Chance of each item being right, given the score (axes: group, item, score).
        chance = np.zeros((count, n, n + 1))
        for i in range(n):
            rest = symmetric(np.delete(easy, i, axis=1))
            chance[:, i, 1:] = easy[:, i, None] * rest / gamma[:, 1:]
        expected = np.einsum("gis,gs->gi", chance, groups.scores)
        np.add.at(slope, groups.items, expected - groups.right)
        joint = np.zeros((count, n, n))
        joint[:, np.arange(n), np.arange(n)] = expected
        weight = groups.scores[:, 2:] / gamma[:, 2:]
        for i in range(n):
            for j in range(i):
                rest = symmetric(np.delete(easy, [i, j], axis=1))
                both = easy[:, i] * easy[:, j] * (rest * weight).sum(axis=1)
                joint[:, i, j] = joint[:, j, i] = both
        joint -= np.einsum("gis,gjs,gs->gij", chance, chance, groups.scores, optimize=True)
        np.add.at(information, (groups.items[:, :, None], groups.items[:, None, :]), joint)
    return total, slope, information
