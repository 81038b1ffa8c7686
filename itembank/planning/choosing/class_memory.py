"""What a class knows of its topics together: from answers by question, and from scores.

Right answers to a topic tell of it alone. Scores and hands counted by band tell how a class did
that day on eight topics together: little of any one of them. What they tell is worked out so:

* each topic of the starter is first drawn towards the day's share of marks, as far as less is
  known of it than how topics of a class differ: its logit is expected around that of the day's
  share with a variance of :data:`BETWEEN`, and the two estimates are put together by their
  variances (shrinkage, after Efron & Morris, *Journal of the American Statistical Association*
  70, 1975; from memory);
* the share of marks is the mean of its questions' shares and chance. What it is above or below
  their expected mean is shared out among the topics by how doubtful each is: the update of a
  Kalman filter (Kalman, *Journal of Basic Engineering* 82, 1960; from memory) in which topics
  are taken to be independent. Of eight equally doubtful topics none becomes much less doubtful.

So scores move what is expected of topics up or down together, keep the differences that answers
by question showed, and leave every interval wide. That topics are independent of one another
after an update, and the constant, are ours.

In the simulated years (``bench/simulate_depths.py``; 30 seeds, a usual and a plain year) a class
planned from scores or hands alone is expected to know as much as when the mean of each starter
stood for every topic of it (within 0.1 points of a hundred), and intervals at 90 % held what is
true in 87 to 94 % of cases: 88 and 92 % by question, 89 and 94 % by scores, 88 and 87 % by bands.
On thirty seeds that no constant was chosen on it is the same within a point.
"""

from __future__ import annotations

import datetime
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import field

from itembank.data_class import dataclass
from itembank.planning.choosing.memory import (
    Memory,
    Seen,
    after_asking,
    after_teaching,
    by_day,
    estimate,
)
from itembank.planning.choosing.odds import logit, share_at, slope

BETWEEN = 4.0
"""Variance of the logits of a class's topics on one day about that of their mean share."""


@dataclass(frozen=True, slots=True)
class Scored:
    """One starter of which a class's scores are known, and nothing by question.

    `share` is the mean share of marks with the `variance` of that mean; `marks` gives the marks
    of each topic in it.
    """

    date: datetime.date
    share: float
    variance: float
    marks: Mapping[str, int]


@dataclass(frozen=True, slots=True)
class History:
    """What is on record of a class: the occasions of each topic, and the starters with scores."""

    seen: Mapping[str, tuple[Seen, ...]] = field(default_factory=dict)
    scored: tuple[Scored, ...] = ()


def remember_class(
    taught: Mapping[str, datetime.date],
    seen: Mapping[str, Sequence[Seen]],
    scored: Iterable[Scored] = (),
) -> dict[str, Memory]:
    """Return what a class knows of each topic taught on a day, after all it was asked since.

    `seen` holds every occasion of a topic, those too on which it was only part of a score.

    >>> day = datetime.date
    >>> taught = {topic: day(2026, 10, 1) for topic in ("ratio.share", "ratio.scale")}
    >>> seen = {topic: [Seen(day(2026, 10, 8), 0, 0, scored=True)] for topic in taught}
    >>> marks = {"ratio.share": 4, "ratio.scale": 4}
    >>> low, high = (
    ...     remember_class(taught, seen, [Scored(day(2026, 10, 8), share, 0.002, marks)])
    ...     for share in (0.3, 0.9)
    ... )
    >>> low["ratio.share"].level < high["ratio.share"].level
    True
    """
    memories = {topic: after_teaching(day) for topic, day in taught.items()}
    days: dict[datetime.date, dict[str, Seen]] = defaultdict(dict)
    for topic in taught:
        # Of topics outside the scheme nobody asks what is remembered.
        for occasion in by_day(seen.get(topic, ())):
            days[occasion.date][topic] = occasion
    starters: dict[datetime.date, list[Scored]] = defaultdict(list)
    for starter in scored:
        starters[starter.date].append(starter)
    for date in sorted(days):
        found: dict[str, tuple[float, float]] = {}
        # First what each topic's own answers say; scores then share out what these leave open.
        # Asked before it was taught, by a pin, a topic counts from its teaching on.
        at = {topic: max(date, memories[topic].last) for topic in days[date]}
        for topic, occasion in days[date].items():
            found[topic] = estimate(memories[topic], at[topic], occasion.share, occasion.out_of)
        for starter in starters[date]:
            share_out(starter, found)
        for topic, (right, doubt) in found.items():
            alone = days[date][topic].share is not None
            memories[topic] = after_asking(memories[topic], at[topic], right, doubt, alone)
    return memories


def share_out(starter: Scored, found: dict[str, tuple[float, float]]) -> None:
    """Bring the shares expected of topics, with their doubts, up to date by a starter's score.

    A topic of which nothing is expected (it is in no scheme) may be anything near the mean.

    >>> found = {"a": (0.8, 1.0), "b": (0.6, 0.1)}
    >>> share_out(Scored(datetime.date(2026, 10, 8), 0.5, 0.001, {"a": 4, "b": 4}), found)
    >>> [(topic, round(right, 2), round(doubt, 2)) for topic, (right, doubt) in found.items()]
    [('a', 0.43, 0.21), ('b', 0.54, 0.08)]
    """
    there: dict[str, tuple[float, float]] = {}
    for topic in starter.marks:
        if topic in found:
            right, doubt = found[topic]
            # Precisions add up; a doubt of 0 (a share taken as it is) stays next to nothing.
            near = 1 / (1 / max(doubt, 1e-9) + 1 / BETWEEN)
            value = logit(right) + near / BETWEEN * (logit(starter.share) - logit(right))
            there[topic] = share_at(value), near
        else:
            there[topic] = starter.share, BETWEEN
    total = sum(starter.marks.values())
    expected = sum(n / total * there[topic][0] for topic, n in starter.marks.items())
    # How much each topic's logit goes with the mean share of marks: their covariance.
    pull = {t: n / total * there[t][1] * slope(there[t][0]) for t, n in starter.marks.items()}
    whole = starter.variance + sum(
        n / total * slope(there[topic][0]) * pull[topic] for topic, n in starter.marks.items()
    )
    for topic in found.keys() & starter.marks.keys():
        right, doubt = there[topic]
        value = logit(right) + pull[topic] / whole * (starter.share - expected)
        found[topic] = share_at(value), doubt - pull[topic] ** 2 / whole
