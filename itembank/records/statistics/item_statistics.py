"""Classical statistics of right and wrong answers: how hard an item is and what it tells.

Answers are an array with a row for each pupil and a column for each item: 1 for right, 0 for
wrong, NaN where the pupil was not asked. The formulae are those of classical test theory
(Lord & Novick, *Statistical Theories of Mental Test Scores*, 1968; from memory).

>>> import numpy as np
>>> answers = np.array([[1, 1, 1], [1, 1, 0], [1, 0, 0], [0, 0, 0]])
>>> facility(answers).tolist()
[0.75, 0.5, 0.25]
>>> round(kr20(answers), 3)
0.75
"""

from __future__ import annotations

from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

Answers: TypeAlias = NDArray[np.float64]

UPPER_LOWER = 0.27
"""Share of pupils in each extreme group (Kelley, *Journal of Educational Psychology* 30, 1939;
from memory)."""
FEWEST_FOR_CORRELATION = 10
"""Fewer pupils than this give no correlation worth showing (common practice, no source)."""


def as_answers(answers: object) -> Answers:
    """Return answers as an array of 0, 1 and NaN.

    Raises:
        ValueError: it is not a table, or holds anything else.
    """
    table = np.asarray(answers, dtype=np.float64)
    if table.ndim != 2:
        raise ValueError("answers are a table: a row for each pupil, a column for each item")
    if not np.isin(table[~np.isnan(table)], (0.0, 1.0)).all():
        raise ValueError("an answer is 1 (right), 0 (wrong) or missing")
    return table


def facility(answers: object) -> Answers:
    """Return the share of right answers to each item, NaN where nobody was asked."""
    table = as_answers(answers)
    asked = (~np.isnan(table)).sum(axis=0)
    right = np.nansum(table, axis=0)
    share = np.full(table.shape[1], np.nan)
    np.divide(right, asked, out=share, where=asked > 0)
    return share


def kr20(answers: object) -> float:
    """Return the reliability of the whole quiz by Kuder and Richardson's formula 20.

    k/(k − 1) × (1 − Σ p q / variance of the scores), over pupils who were asked every item;
    for right and wrong answers it is Cronbach's α (Kuder & Richardson, *Psychometrika* 2,
    1937; from memory). The variances are those of the pupils at hand (divided by n). NaN where
    it has no meaning: fewer than two items or pupils, or all scores the same.
    """
    table = as_answers(answers)
    # Scores over different questions have no one variance.
    table = table[~np.isnan(table).any(axis=1)]
    pupils, items = table.shape
    if items < 2 or pupils < 2:
        return float("nan")
    spread = float(table.sum(axis=1).var())
    if not spread:
        return float("nan")
    return float(items / (items - 1) * (1 - table.var(axis=0).sum() / spread))


def corrected_correlation(answers: object) -> Answers:
    """Return each item's correlation with the score on all the other items.

    The item itself is left out of the score, or it would be compared with itself (Henrysson,
    *Psychometrika* 28, 1963; from memory). A pupil counts where asked the item; the score is the
    share right of the other items that pupil was asked. NaN where there are too few pupils, or
    no differences between them.
    """
    table = as_answers(answers)
    asked = ~np.isnan(table)
    right = np.nansum(table, axis=1)
    number = asked.sum(axis=1)
    found = np.full(table.shape[1], np.nan)
    for item in range(table.shape[1]):
        # Who was asked this item alone has no other score to compare it with.
        here = asked[:, item] & (number > 1)
        if here.sum() < FEWEST_FOR_CORRELATION:
            continue
        own = table[here, item]
        rest = (right[here] - own) / (number[here] - 1)
        # Where all were right there is nothing to correlate.
        if own.std() and rest.std():
            found[item] = np.corrcoef(own, rest)[0, 1]
    return found


def upper_lower(answers: object, share: float = UPPER_LOWER) -> Answers:
    """Return each item's discrimination: facility among the best pupils less among the weakest.

    The groups are the best and the weakest `share` of the pupils asked the item by the share
    of all their answers that is right. Pupils level with the last place of a group count in
    part, so that the order of the rows makes no difference. NaN where fewer than
    :data:`FEWEST_FOR_CORRELATION` pupils were asked.

    Raises:
        ValueError: the share is not above 0 and at most one half.
    """
    if not 0 < share <= 0.5:
        raise ValueError(f"a group is above 0 and at most half of the pupils, not {share}")
    table = as_answers(answers)
    asked = ~np.isnan(table)
    number = asked.sum(axis=1)
    score = np.divide(np.nansum(table, axis=1), number, out=np.zeros(len(table)), where=number > 0)
    found = np.full(table.shape[1], np.nan)
    for item in range(table.shape[1]):
        here = asked[:, item]
        if here.sum() < FEWEST_FOR_CORRELATION:
            continue
        own, level = table[here, item], score[here]
        size = share * len(own)
        found[item] = _group_facility(own, -level, size) - _group_facility(own, level, size)
    return found


def _group_facility(own: Answers, order: Answers, size: float) -> float:
    """Return the share right among the first `size` pupils by `order`, ties counted in part."""
    last = np.sort(order)[int(np.ceil(size)) - 1]
    inside, level = order < last, order == last
    # What is left of the group's size, spread over all who stand level at its end.
    weight = (size - inside.sum()) / level.sum()
    return float((own[inside].sum() + weight * own[level].sum()) / size)
