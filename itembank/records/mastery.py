"""How well a class knows a topic now: facility over time, and an estimate that fades.

The estimate is the expected recall of the forgetting model that planning uses
(:mod:`itembank.planning.memory`). Its uncertainty is that of the answers: the Wilson interval
of the last :data:`LATEST` occasions together says how far their shares may be from what the
class can do, and both ends are carried through the model to the day asked for. That the model
itself may be wrong is not in it.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from itembank.planning.memory import Memory, Seen, due, recall, remember
from itembank.records.interval import Interval, wilson

LATEST = 3
"""Occasions whose answers give the uncertainty (a judgement, no source)."""
CONFIDENCE = 0.9


@dataclass(frozen=True, slots=True)
class Point:
    """One occasion: the share right with its interval, of `out_of` answers."""

    date: datetime.date
    interval: Interval
    out_of: int


@dataclass(frozen=True, slots=True)
class Mastery:
    """Expected share right on `date`, with the ends of its interval; None where not measured.

    `memory` is what the forgetting model holds, from which any later day follows. `due` is the
    day on which it falls (or fell) to the share at which a topic comes back.
    """

    date: datetime.date
    now: float
    low: float | None
    high: float | None
    memory: Memory
    due: datetime.date

    @property
    def half_life(self) -> float:
        """Return the days after it was last seen in which half of it is forgotten."""
        return self.memory.half_life

    def on(self, date: datetime.date) -> float:
        """Return the share expected right on a later day, unless it is asked before."""
        return recall(self.memory, date)

    def words(self) -> str:
        """Return the estimate in words.

        >>> day = datetime.date(2026, 11, 2)
        >>> mastery(day, [], day).words()
        'about 85 % expected (not measured)'
        """
        if self.low is None or self.high is None:
            return f"about {round(100 * self.now)} % expected (not measured)"
        return (
            f"about {round(100 * self.now)} % ({round(100 * self.low)} to "
            f"{round(100 * self.high)} %)"
        )


def facility_over_time(
    occasions: Iterable[Seen], confidence: float = CONFIDENCE
) -> tuple[Point, ...]:
    """Return the share right on each day with its Wilson interval, in order of days.

    Where only scores were recorded the number of answers stands for whole answers to the topic.

    >>> day = datetime.date(2026, 11, 2)
    >>> [point.out_of for point in facility_over_time([Seen(day, 3, 4), Seen(day, 1, 2)])]
    [6]
    """
    days: dict[datetime.date, tuple[float, float]] = {}
    for one in occasions:
        if one.out_of:
            right, out_of = days.get(one.date, (0.0, 0.0))
            days[one.date] = (right + one.right, out_of + one.out_of)
    return tuple(
        Point(day, wilson(min(right, round(out_of)), round(out_of), confidence), round(out_of))
        for day, (right, out_of) in sorted(days.items())
    )


def mastery(
    taught: datetime.date,
    occasions: Sequence[Seen],
    date: datetime.date,
    confidence: float = CONFIDENCE,
) -> Mastery:
    """Return what a class is expected to know on `date` of a topic taught on a day.

    More right answers on the last occasion never lower it, and it only falls until the topic
    is asked again.

    >>> taught, asked = datetime.date(2026, 11, 2), datetime.date(2026, 11, 9)
    >>> found = mastery(taught, [Seen(asked, 20, 25)], datetime.date(2026, 11, 16))
    >>> found.low < found.now < found.high
    True
    """
    rows = sorted((one for one in occasions if one.date <= date), key=lambda one: one.date)
    memory = remember(taught, rows)
    now = recall(memory, date)
    measured = [one for one in rows if one.out_of][-LATEST:]
    low = high = None
    if measured:
        out_of = round(sum(one.out_of for one in measured))
        right = min(sum(one.right for one in measured), out_of)
        interval = wilson(right, out_of, confidence)
        low, high = (
            recall(_moved(taught, rows, measured[0].date, end - interval.share), date)
            for end in (interval.low, interval.high)
        )
        # What was expected on the way can outweigh a share by a hair: the ends stay around it.
        low, high = min(low, now), max(high, now)
    return Mastery(date, now, low, high, memory, due(memory))


def _moved(taught: datetime.date, rows: Sequence[Seen], since: datetime.date, by: float) -> Memory:
    """Return the memory had the shares right since a day been higher by `by`."""
    moved = []
    for one in rows:
        share = one.share
        if share is not None and one.date >= since:
            one = Seen(one.date, min(max(share + by, 0.0), 1.0) * one.out_of, one.out_of)
        moved.append(one)
    return remember(taught, moved)
