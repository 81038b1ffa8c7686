"""Item statistics over many starters: each pupil is compared with those who sat the same one.

Within one starter they are those of :mod:`itembank.records.statistics.item_statistics`. An item
that was in several has its statistics pooled within starters, because starters differ in how hard
they are and classes in how strong: sums of squares and products about each starter's own means for
the correlation, the mean weighted by pupils for the upper–lower difference.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from itembank.records.statistics.item_statistics import FEWEST_FOR_CORRELATION, UPPER_LOWER, Answers

Cells = NDArray[np.float64]
"""A figure for each starter (row) and question (column)."""


class Pooled(NamedTuple):
    """Statistics of each item; NaN where there are too few answers."""

    right: NDArray[np.float64]
    out_of: NDArray[np.float64]
    correlation: NDArray[np.float64]
    upper_lower: NDArray[np.float64]


def pool(table: Answers, starter: NDArray[np.intp], asked: NDArray[np.intp], items: int) -> Pooled:
    """Return the statistics of items; the arguments are as in ``StarterAnswers``.

    >>> answers = np.array([[1.0, 1.0], [1.0, 0.0], [0.0, 0.0]])
    >>> pool(answers, np.zeros(3, np.intp), np.array([[0, 1]]), 2).right.tolist()
    [2.0, 1.0]
    """
    return pool_cells(count_cells(table, starter, asked), asked, items)


class Counted(NamedTuple):
    """What each question of each starter adds to its item."""

    counts: Cells
    sums: Cells
    own2: Cells
    rest2: Cells
    cross: Cells
    apart: Cells


def count_cells(table: Answers, starter: NDArray[np.intp], asked: NDArray[np.intp]) -> Counted:
    """Return what each starter says of its questions; the arguments are those of :func:`pool`."""
    starters = len(asked)
    here = ~np.isnan(table)
    right = np.nan_to_num(table)
    number, total = here.sum(axis=1), right.sum(axis=1)
    share = np.divide(total, number, out=np.zeros(len(table)), where=number > 0)
    order = np.lexsort((share, starter))
    shape = asked.shape
    counts, sums = np.zeros(shape), np.zeros(shape)
    own2, rest2, cross, apart = (np.zeros(shape) for _ in range(4))
    for k in range(shape[1]):
        rows = order[here[order, k]]
        own, group = right[rows, k], starter[rows]
        counts[:, k] = np.bincount(group, minlength=starters)
        sums[:, k] = np.bincount(group, own, minlength=starters)
        apart[:, k] = _apart(own, share[rows], group, starters)
        more = number[rows] > 1
        own, group = own[more], group[more]
        rest = (total[rows][more] - own) / (number[rows][more] - 1)
        own2[:, k], rest2[:, k], cross[:, k] = _about_means(own, rest, group, starters)
    return Counted(counts, sums, own2, rest2, cross, apart)


def pool_cells(cells: Counted, asked: NDArray[np.intp], items: int) -> Pooled:
    """Return the statistics of items from what each starter says of its questions."""
    counts, sums, own2, rest2, cross, apart = cells
    enough = counts >= FEWEST_FOR_CORRELATION

    def by_item(values: Cells, where: NDArray[np.bool_]) -> NDArray[np.float64]:
        used = where & (asked >= 0)
        return np.bincount(asked[used], values[used], minlength=items).astype(np.float64)

    always = np.ones(asked.shape, dtype=bool)
    spread = np.sqrt(by_item(own2, enough) * by_item(rest2, enough))
    weight = by_item(counts, enough)
    return Pooled(
        by_item(sums, always),
        by_item(counts, always),
        _ratio(by_item(cross, enough), spread),
        _ratio(by_item(apart * counts, enough), weight),
    )


def _ratio(part: NDArray[np.float64], other: NDArray[np.float64]) -> NDArray[np.float64]:
    # Sums of squares that should be 0 come out as 1e-16: nothing is known from them either.
    found = np.full(len(part), np.nan)
    np.divide(part, other, out=found, where=other > 1e-9)
    return found


def _about_means(
    own: NDArray[np.float64],
    rest: NDArray[np.float64],
    group: NDArray[np.intp],
    groups: int,
) -> tuple[NDArray[np.float64], NDArray[np.float64], NDArray[np.float64]]:
    """Return the sums of squares and of products about the means of each group."""
    count = np.maximum(np.bincount(group, minlength=groups), 1)
    a = own - (np.bincount(group, own, minlength=groups) / count)[group]
    b = rest - (np.bincount(group, rest, minlength=groups) / count)[group]
    own_squares, other, both = (
        np.bincount(group, values, minlength=groups).astype(np.float64)
        for values in (a * a, b * b, a * b)
    )
    return own_squares, other, both


def _apart(
    own: NDArray[np.float64],
    share: NDArray[np.float64],
    group: NDArray[np.intp],
    groups: int,
) -> NDArray[np.float64]:
    """Return facility among the best less among the weakest pupils of each group.

    Rows come in order of group, then of share. Pupils level with the last place count in part.
    """
    if not len(own):
        return np.zeros(groups)
    new = np.append(True, (np.diff(group) > 0) | (np.diff(share) > 0))
    level = np.cumsum(new) - 1
    of_level = group[new]  # the group of each level of shares, the weakest first
    people, good = np.bincount(level), np.bincount(level, own)
    size = UPPER_LOWER * np.bincount(group, minlength=groups)
    done = np.cumsum(people)
    first = np.searchsorted(of_level, np.arange(groups))
    start = np.append(0, done)[first]
    below = done - people - start[of_level]
    whole = np.bincount(group, minlength=groups)[of_level]
    above = whole - below - people
    found = np.zeros(groups)
    for ahead, sign in ((above, 1), (below, -1)):
        part = np.clip((size[of_level] - ahead) / people, 0, 1)
        found += sign * np.bincount(of_level, part * good, minlength=groups)
    found[size > 0] /= size[size > 0]
    return found


def reliabilities(
    table: Answers, starter: NDArray[np.intp], asked: NDArray[np.intp]
) -> NDArray[np.float64]:
    """Return KR-20 of each starter, over its pupils who were asked every question; NaN if none."""
    starters = len(asked)
    wanted = asked >= 0
    here = ~np.isnan(table)
    whole = (here | ~wanted[starter]).all(axis=1)
    right, group = np.nan_to_num(table[whole]), starter[whole]
    count = np.bincount(group, minlength=starters).astype(np.float64)
    safe = np.maximum(count, 1)
    spread = np.zeros(starters)
    for k in range(table.shape[1]):
        share = np.bincount(group, right[:, k], minlength=starters) / safe
        spread += share * (1 - share)
    total = right.sum(axis=1)
    mean = np.bincount(group, total, minlength=starters) / safe
    variance = np.bincount(group, (total - mean[group]) ** 2, minlength=starters) / safe
    items = wanted.sum(axis=1)
    fit = (items > 1) & (count > 1) & (variance > 1e-12)
    found = np.full(starters, np.nan)
    found[fit] = items[fit] / (items[fit] - 1) * (1 - spread[fit] / variance[fit])
    return found
