"""What a class still knows of a topic: a forgetting model with few, stated parameters.

The share of the class expected to answer a question on a topic falls by half for every
*half-life* that passes since the topic was last seen::

    recall = level × 2^(−days / half_life)

Exponential forgetting with a half-life that grows with each success is the model of Settles
& Meeder ("A trainable spaced repetition model for language learning", *Proceedings of ACL*,
2016; from memory). How it changes when a starter asks the topic:

* each pupil who is right has the half-life multiplied by 1 + GROWTH × (1 − recall): a success
  counts for more the more there was time to forget, which is the spacing effect (Cepeda, Vul,
  Rohrer, Wixted & Pashler, *Psychological Science* 19, 2008);
* each pupil who is wrong has it multiplied by SHRINK;
* the class's half-life becomes the geometric mean over its pupils. Pupils who were wrong see
  the answer and the repair that follows, and RELEARN of them have it for now.

The numbers are judgements (common practice, no source) chosen so that a topic comes back at
about 80 % expected recall (Rosenshine, *American Educator*, Spring 2012; from memory): after
one, two, three … successes that is after about 2, 3, 5, 7, 10 … days, a gap that grows.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterable
from dataclasses import dataclass
from math import exp, log, log2

FIRST_HALF_LIFE = 6.0
"""Days in which recall halves after a topic was taught and not yet brought back."""
FIRST_LEVEL = 0.85
"""Share of a class expected to be right straight after a topic was taught."""
GROWTH = 2.5
SHRINK = 0.6
RELEARN = 0.6
SHORTEST, LONGEST = 2.0, 400.0
TARGET = 0.8
"""Expected recall at which a topic is due again."""


@dataclass(frozen=True, slots=True)
class Seen:
    """One occasion on which a class was asked a topic: right answers out of answers given.

    `out_of` is 0 where the topic was asked and nothing was recorded.
    """

    date: datetime.date
    right: float
    out_of: float

    @property
    def share(self) -> float | None:
        """Return the share right, or None where nothing was recorded."""
        return self.right / self.out_of if self.out_of else None


@dataclass(frozen=True, slots=True)
class Memory:
    """What a class knows of a topic: recall at `last`, and the days in which it halves."""

    level: float
    half_life: float
    last: datetime.date


def after_teaching(date: datetime.date) -> Memory:
    """Return what a class knows of a topic on the day it was taught."""
    return Memory(FIRST_LEVEL, FIRST_HALF_LIFE, date)


def recall(memory: Memory, date: datetime.date) -> float:
    """Return the share of the class expected to be right on `date`, between 0 and 1.

    >>> taught = after_teaching(datetime.date(2026, 10, 1))
    >>> recall(taught, datetime.date(2026, 10, 7)) == FIRST_LEVEL / 2
    True
    """
    days = max((date - memory.last).days, 0)
    return float(memory.level * 2 ** (-days / memory.half_life))


def asked(memory: Memory, date: datetime.date, share: float | None = None) -> Memory:
    """Return what a class knows after a starter asked the topic on `date`.

    `share` is the share right; where it is not known, the expected recall stands in for it.
    A share pulls the level as well: what the class showed counts, not what was expected.

    >>> day = datetime.date(2026, 10, 7)
    >>> taught = after_teaching(datetime.date(2026, 10, 1))
    >>> asked(taught, day, 1.0).half_life > taught.half_life > asked(taught, day, 0.0).half_life
    True
    """
    expected = recall(memory, date)
    right = expected if share is None else share
    grown = 1 + GROWTH * (1 - expected)
    half_life = memory.half_life * exp(right * log(grown) + (1 - right) * log(SHRINK))
    level = right + (1 - right) * RELEARN
    return Memory(level, min(max(half_life, SHORTEST), LONGEST), date)


def remember(taught: datetime.date, occasions: Iterable[Seen]) -> Memory:
    """Return what a class knows of a topic taught on a day and asked on the occasions since.

    >>> day = datetime.date(2026, 10, 1)
    >>> remember(day, []) == after_teaching(day)
    True
    """
    memory = after_teaching(taught)
    for seen in sorted(occasions, key=lambda one: one.date):
        memory = asked(memory, max(seen.date, memory.last), seen.share)
    return memory


def due(memory: Memory, target: float = TARGET) -> datetime.date:
    """Return the first day on which expected recall has fallen to `target`.

    >>> taught = after_teaching(datetime.date(2026, 10, 1))
    >>> recall(taught, due(taught)) <= TARGET < FIRST_LEVEL
    True
    """
    if memory.level <= target:
        return memory.last
    days = memory.half_life * log2(memory.level / target)
    whole = int(days) + (days > int(days))
    return memory.last + datetime.timedelta(days=whole)


def saved(memory: Memory, date: datetime.date, days: int) -> float:
    """Return the share of the class more that will know the topic if it is asked on `date`.

    It is the mean over the `days` that follow: little for a topic just seen, which would be
    known anyway; most for one that is half forgotten, sooner where the half-life is short.

    Raises:
        ValueError: `days` is not at least 1.

    >>> taught = after_teaching(datetime.date(2026, 10, 1))
    >>> early, late = datetime.date(2026, 10, 2), datetime.date(2026, 10, 9)
    >>> saved(taught, early, 21) < saved(taught, late, 21)
    True
    """
    if days < 1:
        raise ValueError(f"recall is saved over one day or more, not {days}")
    return _mean(asked(memory, date), date, days) - _mean(memory, date, days)


def _mean(memory: Memory, date: datetime.date, days: int) -> float:
    """Return mean recall over the `days` after `date`: the integral of the curve over them."""
    rate = log(2) / memory.half_life
    return recall(memory, date) * (1 - exp(-rate * days)) / (rate * days)
