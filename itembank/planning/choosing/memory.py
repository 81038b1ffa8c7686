"""What a class still knows of a topic: a forgetting model with few, stated parameters.

The share of the class expected to answer a question falls as a power of the time since the
topic was last seen::

    recall = level × (1 + K × days / half_life) ^ −FADING        K = 2^(1 / FADING) − 1

It is Wickelgren's power law, λ(1 + βt)^−ψ, as Wixted & Carpenter state it ("The Wickelgren
power law and the Ebbinghaus savings function", *Psychological Science* 18, 2007; from memory),
with β written as K / half_life, so that after `half_life` days half of the level is left. It
falls fast at first and then ever more slowly: what was learnt in September is not nothing in
June. How it changes when a starter asks the topic, `right` being the share right:

* each pupil who is right multiplies the half-life by 1 + GROWTH × (1 − recall / level)²: a
  success counts for more the more there was time to forget, and for nothing on the same day,
  which is the spacing effect (Cepeda, Vul, Rohrer, Wixted & Pashler, *Psychological Science* 19,
  2008; from memory);
* each pupil who is wrong multiplies it by SHRINK; the class's is the geometric mean over them;
* pupils who were wrong see the answer and the repair that follows. Those who once had the topic
  and forgot it have it again, RELEARN of them, which is Ebbinghaus's saving; of those who never
  had it, LEARN. How many once had it follows from the share right, as that of a topic taught and
  never brought back would have fallen in the same time. So a class that fails is not taken to
  know the topic because it was shown the answer.

What few answers show is drawn towards what was expected, as if PRIOR more answers had been as
expected; answers to one topic on one day count together.

The numbers are judgements (common practice, no source), chosen so that

* a topic that is taught and never brought back is known by 85 % on the day, some 60 % after
  ten days, 40 % after a term and 30 % after the school year; after three well-spaced successes
  it is still known by over 70 % a month later;
* bringing it back once does most, five and ten weeks later, if it is done after about two
  weeks, and more than on the day of the teaching (Cepeda and others, 2008, found 11 and 21
  days; from memory);
* where the class is 95 % right each time, a topic is due 4 days after its teaching and then
  after gaps that about double: 14, 26, 50, 95 days;
* more right answers on any day never lower what is expected later.

How far an estimate may be off is kept beside it, as the variance of its logit (the *doubt*). It
is large when a topic was taught, grows by a share of what is forgotten, shrinks with every
count of right answers as two normal estimates do when they are put together, and part of it
goes when the class is shown the answers. Its constants are ours: chosen on the simulation of
a year (``bench/simulate_depths.py``) so that about nine in ten intervals at 90 % hold what is
true, however little was recorded. What scores of whole starters
tell of their topics is in :mod:`itembank.planning.choosing.class_memory`.

In the simulated year, whose pupils forget by another model, what is expected and what is true
lie 6 to 7 points apart on average and are correlated by 0.93 or more (four seeds, random
topics).
"""

from __future__ import annotations

import datetime
from collections.abc import Iterable
from math import ceil, exp, log, sqrt
from statistics import NormalDist

from itembank.data_class import dataclass
from itembank.planning.choosing.odds import logit, share_at, slope

FADING = 0.2
"""The power ψ with which recall falls; the smaller, the heavier the tail."""
K = 2 ** (1 / FADING) - 1
FIRST_HALF_LIFE = 60.0
"""Days in which recall halves after a topic was taught and not yet brought back."""
FIRST_LEVEL = 0.85
"""Share of a class expected to be right straight after a topic was taught."""
GROWTH = 12.0
SHRINK = 0.4
RELEARN = 0.95
LEARN = 0.3
PRIOR = 3.0
SHORTEST, LONGEST = 1e-3, 1e5
"""Bounds that only keep the arithmetic sound: a dozen occasions on end do not reach them."""
FIRST_DOUBT = 2.0
"""Variance of the logit of recall when a topic was taught: topics and classes differ."""
FIRST_DRIFT, DRIFT = 0.42, 0.24
"""How far a fall of the logit may be off, as a share of it: while a topic was never seen alone,
and from then on."""
ITEM = 0.02
"""Variance of a logit that comes of which question was asked on a topic."""
KEPT = 0.85
"""What is left of the doubt after the class saw the answers."""
SHOWN, UNSEEN = 0.05, 0.15
"""Variance that seeing the answers adds: where it is known how many were wrong, and where not."""
TARGET = 0.7
"""Expected recall at which a topic is due again: hard enough to be worth remembering, easy
enough that most are right (a judgement, no source)."""


@dataclass(frozen=True, slots=True)
class Seen:
    """One occasion on which a class was asked a topic: right answers out of answers given.

    `out_of` is 0 where the topic was asked and nothing was recorded of it alone; `scored` says
    that it was part of a starter of which only the score is known.
    """

    date: datetime.date
    right: float
    out_of: float
    scored: bool = False

    @property
    def share(self) -> float | None:
        """Return the share right, or None where nothing was recorded."""
        return self.right / self.out_of if self.out_of else None


@dataclass(frozen=True, slots=True)
class Memory:
    """What a class knows of a topic: recall at `last`, and the days in which it halves.

    `doubt` is the variance of the estimate at `last`, on the scale of the logit; `alone` says
    that answers to the topic were counted at least once.
    """

    level: float
    half_life: float
    last: datetime.date
    doubt: float = FIRST_DOUBT
    alone: bool = False


def after_teaching(date: datetime.date) -> Memory:
    """Return what a class knows of a topic on the day it was taught."""
    return Memory(FIRST_LEVEL, FIRST_HALF_LIFE, date)


def recall(memory: Memory, date: datetime.date) -> float:
    """Return the share of the class expected to be right on `date`, between 0 and 1.

    >>> taught = after_teaching(datetime.date(2026, 9, 10))
    >>> [round(recall(taught, datetime.date(2026, month, 10)), 2) for month in (9, 10, 12)]
    [0.85, 0.49, 0.39]
    """
    days = max((date - memory.last).days, 0)
    return float(memory.level * (1 + K * days / memory.half_life) ** -FADING)


def asked(
    memory: Memory,
    date: datetime.date,
    share: float | None = None,
    answers: float | None = None,
) -> Memory:
    """Return what a class knows after a starter asked the topic on `date`.

    `share` is the share right; where it is not known, the expected recall stands in for it.
    `answers` is the number of answers it rests on; without it the share is taken as it is.

    >>> day = datetime.date(2026, 10, 7)
    >>> taught = after_teaching(datetime.date(2026, 10, 1))
    >>> asked(taught, day, 1.0).half_life > taught.half_life > asked(taught, day, 0.0).half_life
    True
    """
    right, doubt = estimate(memory, date, share, answers)
    return after_asking(memory, date, right, doubt, share is not None)


def doubt_on(memory: Memory, date: datetime.date) -> float:
    """Return the variance of the recall expected on `date`, on the scale of the logit.

    >>> taught = after_teaching(datetime.date(2026, 9, 10))
    >>> doubt_on(taught, datetime.date(2026, 12, 10)) > doubt_on(taught, taught.last)
    True
    """
    # The more was forgotten, the more the speed of forgetting matters, which is a guess.
    drop = logit(memory.level) - logit(recall(memory, date))
    return memory.doubt + ((DRIFT if memory.alone else FIRST_DRIFT) * drop) ** 2


def estimate(
    memory: Memory, date: datetime.date, share: float | None, answers: float | None = None
) -> tuple[float, float]:
    """Return the share that knew a topic when it was asked, and the variance of its logit.

    The arguments are those of :func:`asked`.
    """
    expected, doubt = recall(memory, date), doubt_on(memory, date)
    # Nothing was counted, so nothing is learnt about the class.
    if share is None:
        return expected, doubt
    if answers is None:
        return share, 0.0
    right = (answers * share + PRIOR * expected) / (answers + PRIOR)
    # The variance of a share is p(1 − p)/n; on the scale of the logit it is 1/(n p(1 − p)).
    chance = 1 / (answers * slope(right)) + ITEM
    # Two independent normal estimates: their precisions, 1/variance, add up.
    return right, doubt * chance / (doubt + chance)


def after_asking(
    memory: Memory, date: datetime.date, right: float, doubt: float, alone: bool = False
) -> Memory:
    """Return what a class knows after a starter asked the topic, `right` of it being right.

    `doubt` is the variance of the logit of `right`; `alone` says that answers were counted.
    """
    expected = recall(memory, date)
    # By what was expected and not by what came: else a class that fails would seem to gain most.
    grown = 1 + GROWTH * (1 - expected / memory.level) ** 2
    # A mean of logarithms is the logarithm of the geometric mean over the pupils.
    by = right * log(grown) + (1 - right) * log(SHRINK)
    half_life = min(max(memory.half_life * exp(by), SHORTEST), LONGEST)
    # Of pupils who once had it, this share would still know it had it never been brought back.
    kept = (1 + K * max((date - memory.last).days, 0) / FIRST_HALF_LIFE) ** -FADING
    had = min(right / kept, 1.0)
    level = right + RELEARN * (had - right) + LEARN * (1 - had)
    doubt = KEPT * doubt + (SHOWN if alone else UNSEEN)
    return Memory(level, half_life, date, doubt, memory.alone or alone)


def by_day(occasions: Iterable[Seen]) -> tuple[Seen, ...]:
    """Return the occasions in order of date, those of one day added up.

    >>> day = datetime.date(2026, 10, 1)
    >>> by_day([Seen(day, 20, 28), Seen(day, 25, 28)])[0].share
    0.8035714285714286
    """
    found: dict[datetime.date, Seen] = {}
    for occasion in occasions:
        old = found.get(occasion.date)
        found[occasion.date] = (
            occasion
            if old is None
            else Seen(
                occasion.date,
                old.right + occasion.right,
                old.out_of + occasion.out_of,
                old.scored or occasion.scored,
            )
        )
    return tuple(found[date] for date in sorted(found))


def remember(taught: datetime.date, occasions: Iterable[Seen]) -> Memory:
    """Return what a class knows of a topic taught on a day and asked on the occasions since.

    >>> day = datetime.date(2026, 10, 1)
    >>> remember(day, []) == after_teaching(day)
    True
    """
    memory = after_teaching(taught)
    for seen in by_day(occasions):
        # Asked before it was taught, by a pin: it counts from the teaching on.
        memory = asked(memory, max(seen.date, memory.last), seen.share, seen.out_of)
    return memory


def interval_on(
    memory: Memory, date: datetime.date, confidence: float = 0.9
) -> tuple[float, float]:
    """Return the ends of the interval of the recall expected on `date`.

    >>> taught = after_teaching(datetime.date(2026, 9, 10))
    >>> [round(end, 2) for end in interval_on(taught, datetime.date(2026, 9, 20))]
    [0.1, 0.95]
    """
    middle = logit(recall(memory, date))
    room = NormalDist().inv_cdf((1 + confidence) / 2) * sqrt(doubt_on(memory, date))
    return share_at(middle - room), share_at(middle + room)


def due(memory: Memory, target: float = TARGET) -> datetime.date:
    """Return the first day on which expected recall has fallen to `target`.

    >>> taught = after_teaching(datetime.date(2026, 10, 1))
    >>> due(taught)
    datetime.date(2026, 10, 5)
    """
    # It never was known well enough, so it is due at once.
    if memory.level <= target:
        return memory.last
    # The power law solved for the days.
    days = memory.half_life * ((memory.level / target) ** (1 / FADING) - 1) / K
    return memory.last + datetime.timedelta(days=ceil(days))
