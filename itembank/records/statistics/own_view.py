"""Pupils' own view against their score: who was sure, and who had reason to be.

Before marking, each pupil signals how sure they are: *sure*, *partly* or *not sure*. How well
that agrees with the scores is measured by Goodman and Kruskal's γ, the usual measure of how
well people judge their own knowledge (Nelson, *Psychological Bulletin* 95, 1984; from memory):
of all pairs of pupils that differ in both, the share in which the surer one has the higher
score, less the share in which it is the other way about.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections import defaultdict
from collections.abc import Collection, Mapping, Sequence
from itertools import combinations
from typing import NamedTuple

from itembank.data_class import dataclass
from itembank.records.entries.entries import LEVELS
from itembank.records.statistics.interval import Interval, wilson

FEWEST_FOR_AGREEMENT = 8
"""Pupils below which no agreement is given (common practice, no source)."""
FEWEST_WRONG = 2
"""Sure pupils who must be wrong before a question is said to have fooled the confident."""
FOOLED_FROM = 1 / 3
"""Share of the sure pupils who must be wrong for it (a judgement, no source)."""


class Pairs(NamedTuple):
    """Pairs of pupils that differ in view and in score: how many agree, and how many do not."""

    agree: int
    differ: int

    @property
    def gamma(self) -> float | None:
        """Return Goodman and Kruskal's γ, from −1 to 1, or None where there are no pairs."""
        both = self.agree + self.differ
        return (self.agree - self.differ) / both if both else None


@dataclass(frozen=True, slots=True)
class OwnView:
    """How a class's own view went with its scores; seats are listed in the order given.

    `counts` are of all who gave a view; `sure`, `unsure` and `pupils` of those with a score.
    """

    pairs: Pairs
    over: tuple[str, ...]
    under: tuple[str, ...]
    counts: Mapping[str, int]
    sure: int = 0
    unsure: int = 0
    pupils: int = 0

    @property
    def agreement(self) -> float | None:
        """Return γ, or None of fewer than :data:`FEWEST_FOR_AGREEMENT` pupils."""
        return self.pairs.gamma if self.pupils >= FEWEST_FOR_AGREEMENT else None


def compare_views(
    views: Mapping[str, str],
    scores: Mapping[str, float],
    lowest: Collection[str],
    highest: Collection[str],
) -> OwnView:
    """Return how own views and scores agree, for the pupils who gave both.

    A pupil who is sure and among the seats of the `lowest` band is over-confident; one who is
    not sure and in the `highest` band is under-confident.

    Raises:
        ValueError: a view is not one of :data:`LEVELS`.

    >>> found = compare_views({"A1": "sure", "A2": "not sure"}, {"A1": 2, "A2": 8}, ["A1"], ["A2"])
    >>> found.over, found.under, found.agreement
    (('A1',), ('A2',), None)
    """
    for seat, view in views.items():
        if view not in LEVELS:
            raise ValueError(f"{seat}: a view is {', '.join(LEVELS)}, not {view!r}")
    both = [seat for seat in views if seat in scores]
    sure = [seat for seat in both if views[seat] == "sure"]
    unsure = [seat for seat in both if views[seat] == "not sure"]
    return OwnView(
        count_pairs([LEVELS.index(views[seat]) for seat in both], [scores[seat] for seat in both]),
        tuple(seat for seat in sure if seat in lowest),
        tuple(seat for seat in unsure if seat in highest),
        {level: sum(view == level for view in views.values()) for level in LEVELS},
        len(sure),
        len(unsure),
        len(both),
    )


def count_pairs(sure: Sequence[float], scores: Sequence[float]) -> Pairs:
    """Return the pairs of pupils that differ in both, by whether the surer scored higher.

    >>> count_pairs([2, 1, 1], [8, 3, 5])
    Pairs(agree=2, differ=0)
    """
    by_view: dict[float, list[float]] = defaultdict(list)
    for view, mark in sorted(zip(sure, scores, strict=True)):
        by_view[view].append(mark)
    agree = differ = 0
    # In order of views, so the second of two holds the surer pupils; their marks are in order.
    for less, more in combinations(by_view.values(), 2):
        agree += sum(len(more) - bisect_right(more, mark) for mark in less)
        differ += sum(bisect_left(more, mark) for mark in less)
    return Pairs(agree, differ)


def agreement(sure: Sequence[float], scores: Sequence[float]) -> float | None:
    """Return Goodman and Kruskal's γ, from −1 to 1, or None where it says nothing.

    It says nothing of fewer than :data:`FEWEST_FOR_AGREEMENT` pupils, or where no two pupils
    differ both in view and in score.

    >>> agreement([2, 2, 2, 2, 0, 0, 0, 0], [8, 7, 8, 7, 3, 2, 1, 3])
    1.0
    """
    return count_pairs(sure, scores).gamma if len(sure) >= FEWEST_FOR_AGREEMENT else None


@dataclass(frozen=True, slots=True)
class Fooled:
    """A question that pupils who were sure got wrong."""

    number: int
    wrong: int
    sure: int
    interval: Interval


def confident_answers(
    views: Mapping[str, str], answers: Mapping[str, Mapping[int, bool]]
) -> dict[int, tuple[int, int]]:
    """Return for each question how many of the sure pupils were wrong, and how many answered.

    `answers` gives for each seat whether each question, by number, is right.

    >>> rows = {"A1": {1: True, 2: False}, "A2": {1: True, 2: False}, "A3": {1: False, 2: True}}
    >>> confident_answers({"A1": "sure", "A2": "sure", "A3": "not sure"}, rows)
    {1: (0, 2), 2: (2, 2)}
    """
    rows = [answers[seat] for seat, view in views.items() if view == "sure" and seat in answers]
    found: dict[int, tuple[int, int]] = {}
    for number in sorted({number for row in rows for number in row}):
        asked = [row[number] for row in rows if number in row]
        found[number] = (asked.count(False), len(asked))
    return found


def fooled(wrong: int, sure: int) -> bool:
    """Tell whether sure pupils were wrong often enough to say that they were fooled.

    >>> fooled(2, 5), fooled(1, 2), fooled(2, 20)
    (True, False, False)
    """
    return wrong >= FEWEST_WRONG and wrong >= FOOLED_FROM * sure


def fooled_the_confident(
    confident: Mapping[int, tuple[int, int]], confidence: float = 0.9
) -> list[Fooled]:
    """Return the questions that fooled the confident, the worst first.

    `confident` is what :func:`confident_answers` counts.

    >>> [question.number for question in fooled_the_confident({1: (0, 2), 2: (2, 3), 3: (2, 2)})]
    [3, 2]
    """
    found = [
        Fooled(number, wrong, sure, wilson(wrong, sure, confidence))
        for number, (wrong, sure) in confident.items()
        if fooled(wrong, sure)
    ]
    return sorted(found, key=lambda view: (-view.interval.share, view.number))
