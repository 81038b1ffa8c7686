"""How well a class knows a topic now: facility over time, and an estimate that fades.

The estimate is the expected recall of the forgetting model that planning uses
(:mod:`itembank.planning.choosing.memory`). Its interval is the model's own: how few answers there
were, how long ago, and how far the model itself was off in a simulated year are in it. A topic that
was only part of scores has a wide one (:mod:`itembank.planning.choosing.class_memory`).
"""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Sequence

from itembank.data_class import dataclass
from itembank.planning.choosing.memory import Memory, Seen, due, interval_on, recall, remember
from itembank.records.statistics.interval import Interval, wilson

CONFIDENCE = 0.9


@dataclass(frozen=True, slots=True)
class Point:
    """One occasion: the share right with its interval, of `out_of` answers."""

    date: datetime.date
    interval: Interval
    out_of: int


@dataclass(frozen=True, slots=True)
class Mastery:
    """Expected share right on `date`, with the ends of its interval; None where nothing is known.

    `memory` is what the forgetting model holds, from which any later day follows. `due` is the
    day on which it falls (or fell) to the share at which a topic comes back. `only_scored` says
    that no answers to the topic alone were ever counted, only scores of whole starters.
    """

    date: datetime.date
    now: float
    low: float | None
    high: float | None
    memory: Memory
    due: datetime.date
    only_scored: bool = False

    @property
    def half_life(self) -> float:
        """Return the days after it was last seen in which half of it is forgotten."""
        return self.memory.half_life

    @property
    def just_asked(self) -> bool:
        """Tell whether the class was asked on `date` itself.

        What is expected then is of pupils who have just seen the answers, which tells nothing of
        what stays: it is not to be shown.
        """
        return self.memory.last >= self.date

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
        how = ", seen only as part of scores" if self.only_scored else ""
        return (
            f"about {round(100 * self.now)} % ({round(100 * self.low)} to "
            f"{round(100 * self.high)} %{how})"
        )


def facility_over_time(
    occasions: Iterable[Seen], confidence: float = CONFIDENCE
) -> tuple[Point, ...]:
    """Return the share right on each day with its Wilson interval, in order of days.

    Days on which a topic was only part of a score are none of them.

    >>> day = datetime.date(2026, 11, 2)
    >>> [point.out_of for point in facility_over_time([Seen(day, 3, 4), Seen(day, 1, 2)])]
    [6]
    """
    days: dict[datetime.date, tuple[float, float]] = {}
    for occasion in occasions:
        if occasion.out_of:
            right, out_of = days.get(occasion.date, (0.0, 0.0))
            days[occasion.date] = (right + occasion.right, out_of + occasion.out_of)
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
    # What came later must not change what was expected then: reports show past days as they were.
    rows = [occasion for occasion in occasions if occasion.date <= date]
    return mastery_of(remember(taught, rows), rows, date, confidence)


def mastery_of(
    memory: Memory,
    occasions: Sequence[Seen],
    date: datetime.date,
    confidence: float = CONFIDENCE,
) -> Mastery:
    """Return what is expected on `date` of a topic of which `memory` came of the occasions."""
    scored = any(occasion.scored for occasion in occasions)
    low = high = None
    # With neither, nothing was measured, and an interval would look as if something had been.
    if memory.alone or scored:
        low, high = interval_on(memory, date, confidence)
    only_scored = scored and not memory.alone
    return Mastery(date, recall(memory, date), low, high, memory, due(memory), only_scored)
