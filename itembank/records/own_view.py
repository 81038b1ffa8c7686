"""Pupils' own view against their score: who was sure, and who had reason to be.

Before marking, each pupil signals how sure they are: *sure*, *partly* or *not sure*. How well
that agrees with the scores is measured by Goodman and Kruskal's γ, the usual measure of how
well people judge their own knowledge (Nelson, *Psychological Bulletin* 95, 1984; from memory):
of all pairs of pupils that differ in both, the share in which the surer one has the higher
score, less the share in which it is the other way about.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations

from itembank.records.interval import Interval, wilson

LEVELS = ("not sure", "partly", "sure")
FEWEST_FOR_AGREEMENT = 8
"""Pupils below which no agreement is given (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class OwnView:
    """How a class's own view went with its scores; seats are listed in the order given."""

    agreement: float | None
    over: tuple[str, ...]
    under: tuple[str, ...]
    counts: Mapping[str, int]


def compare_views(
    views: Mapping[str, str], scores: Mapping[str, float], middle: float, top: float
) -> OwnView:
    """Return how own views and scores agree, for the pupils who gave both.

    A pupil who is sure and below `middle`, the cut score of the middle band, is
    over-confident; one who is not sure and at `top` or above, the cut score of the highest
    band, is under-confident.

    Raises:
        ValueError: a view is not one of :data:`LEVELS`.

    >>> found = compare_views({"A1": "sure", "A2": "not sure"}, {"A1": 2, "A2": 8}, 5, 7)
    >>> found.over, found.under, found.agreement
    (('A1',), ('A2',), None)
    """
    for seat, view in views.items():
        if view not in LEVELS:
            raise ValueError(f"{seat}: a view is {', '.join(LEVELS)}, not {view!r}")
    both = [seat for seat in views if seat in scores]
    return OwnView(
        agreement([LEVELS.index(views[seat]) for seat in both], [scores[seat] for seat in both]),
        tuple(seat for seat in both if views[seat] == "sure" and scores[seat] < middle),
        tuple(seat for seat in both if views[seat] == "not sure" and scores[seat] >= top),
        {level: sum(view == level for view in views.values()) for level in LEVELS},
    )


def agreement(sure: Sequence[float], scores: Sequence[float]) -> float | None:
    """Return Goodman and Kruskal's γ, from −1 to 1, or None where it says nothing.

    It says nothing of fewer than :data:`FEWEST_FOR_AGREEMENT` pupils, or where no two pupils
    differ both in view and in score.

    >>> agreement([2, 2, 2, 2, 0, 0, 0, 0], [8, 7, 8, 7, 3, 2, 1, 3])
    1.0
    """
    if len(sure) < FEWEST_FOR_AGREEMENT:
        return None
    signs = [
        (sure[a] - sure[b]) * (scores[a] - scores[b]) for a, b in combinations(range(len(sure)), 2)
    ]
    same, other = sum(sign > 0 for sign in signs), sum(sign < 0 for sign in signs)
    return (same - other) / (same + other) if same + other else None


@dataclass(frozen=True, slots=True)
class Fooled:
    """A question that pupils who were sure got wrong."""

    number: int
    wrong: int
    sure: int
    interval: Interval


def fooled_the_confident(
    views: Mapping[str, str], answers: Mapping[str, Mapping[int, bool]], fewest: int = 2
) -> list[Fooled]:
    """Return the questions that at least `fewest` sure pupils got wrong, the worst first.

    `answers` gives for each seat whether each question, by number, is right.

    >>> rows = {"A1": {1: True, 2: False}, "A2": {1: True, 2: False}, "A3": {1: False, 2: True}}
    >>> views = {"A1": "sure", "A2": "sure", "A3": "not sure"}
    >>> [(one.number, one.wrong, one.sure) for one in fooled_the_confident(views, rows)]
    [(2, 2, 2)]
    """
    confident: Iterable[str] = [seat for seat, view in views.items() if view == "sure"]
    rows = [answers[seat] for seat in confident if seat in answers]
    found = []
    for number in sorted({number for row in rows for number in row}):
        asked = [row[number] for row in rows if number in row]
        wrong = asked.count(False)
        if wrong >= fewest:
            found.append(Fooled(number, wrong, len(asked), wilson(wrong, len(asked))))
    return sorted(found, key=lambda one: (-one.interval.share, one.number))
