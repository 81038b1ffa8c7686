"""Buses told by their times without a timetable: waits, how long they take, and late ones."""

from __future__ import annotations

from collections.abc import Mapping

from generators._turns import by_turns
from generators.measures._clock_mistakes import HOUR_LOST, HUNDRED, SMALL_FROM_LARGE
from generators.measures._clocks import clock, length
from generators.measures._timetable_mistakes import BETWEEN, EARLY, GONE, LATE_LEFT_OUT
from itembank.items.item import Draft, Find, Slip, Step, Tier, prompt
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_WAIT = (
    "Buses leave at {a} and {b}. You get there at {n}. How long do you wait?",
    "You get to the stop at {n}. Buses leave at {a} and {b}. How long is your wait?",
)
_TAKES = (
    "A bus leaves at {a} and arrives at {b}. How long does it take?",
    "A coach leaves the depot at {a} and is back at {b}. How long is it out?",
)
_LATE = (
    "A bus is due at {a}. It is {m} late. When does it come?",
    "The {a} bus is {m} late today. At what time does it leave?",
)
_LATE_AND_ON = "A bus is due at {a}, comes {m} late and then takes {d}. When does it arrive?"


def _waits(hour: int, first: int, gap: int, come: int) -> bool:
    """Keep waits within one hour, where going by the bus that has gone shows."""
    after = come - first
    return (
        first < come < first + gap < 60
        and len({after, gap - after, gap}) == 3
        and (hour + first + gap + come) % 17 == 0
    )


def _over(hour: int, minute: int, lasts: int) -> bool:
    """Keep journeys over a full hour, where both wrong ways show."""
    end = minute + lasts
    hours, rest = divmod(end, 60)
    if not hours or not 0 < rest < minute or minute - rest == 20 or lasts % 60 == 0:
        return False
    hundred = lasts + 40 * hours
    small = 60 * (hours - 1) + minute - rest
    return len({lasts, hundred, small}) == 3 and small > 0 and (hour + minute + lasts) % 4 == 0


def _late_then(hour: int, minute: int, late: int, lasts: int) -> bool:
    end = minute + late + lasts
    return 60 < end < 120 and end % 60 != 0 and (hour + minute + 2 * late + lasts) % 23 == 0


def _late_over(hour: int, minute: int, late: int) -> bool:
    return 60 < minute + late < 85 and (hour + minute + late) % 4 == 0


def _draft(
    text: str,
    shown: dict[str, t.Node],
    target: t.Node,
    key: t.Node,
    steps: tuple[Step, ...],
    wrong: tuple[Slip, ...],
    twin: tuple[object, ...],
) -> Draft:
    form = "value" if isinstance(key, t.ClockTime) else "quantity"
    return Draft(
        prompt(text, **shown), Find(target), key, form, steps, wrong, twin, constants=(60,)
    )


def _wait(topic: Topic, tier: Tier, hour: int, first: int, gap: int, come: int) -> Draft:
    """Return how long one waits for the next bus."""
    start = 60 * hour
    gone, leaves, now = clock(start + first), clock(start + first + gap), clock(start + come)
    wait = length(first + gap - come)
    return _draft(
        by_turns(_WAIT, first + gap + come),
        {"a": gone, "b": leaves, "n": now},
        t.sub(leaves, now),
        wait,
        (
            Step("The first bus has gone: wait for the second."),
            Step("Subtract the times.", t.equals(t.sub(leaves, now), wait)),
        ),
        slips((GONE, length(come - first)), (BETWEEN, length(gap)), key=wait),
        ("told wait", hour, first, gap, come),
    )


def _takes(topic: Topic, tier: Tier, hour: int, minute: int, lasts: int) -> Draft:
    """Return how long a bus takes, over the hour."""
    begin, end = 60 * hour + minute, 60 * hour + minute + lasts
    full = begin + 60 - minute
    start, stop, key = clock(begin), clock(end), length(lasts)
    hours = end // 60 - hour
    rest = end % 60
    first, last = length(full - begin), length(end - full)
    return _draft(
        by_turns(_TAKES, hour + lasts),
        {"a": start, "b": stop},
        t.sub(stop, start),
        key,
        (
            Step("Count on to the next full hour.", t.equals(t.sub(clock(full), start), first)),
            Step("Count on from there.", t.equals(t.sub(stop, clock(full)), last)),
            Step("Add the two.", t.equals(t.add(first, last), key)),
        ),
        slips(
            (HUNDRED, length(lasts + 40 * hours)),
            (SMALL_FROM_LARGE, length(60 * (hours - 1) + minute - rest)),
            key=key,
        ),
        ("told takes", hour, minute, lasts),
    )


def _late(topic: Topic, tier: Tier, hour: int, minute: int, late: int) -> Draft:
    """Return when a late bus comes, over the hour."""
    due = 60 * hour + minute
    at, span, key = clock(due), length(late), clock(due + late)
    to_hour = 60 - minute
    return _draft(
        by_turns(_LATE, hour + late),
        {"a": at, "m": span},
        t.add(at, span),
        key,
        (
            Step(f"{to_hour} of the minutes go to the full hour, and {late - to_hour} are left."),
            Step("Add.", t.equals(t.add(at, span), key)),
        ),
        slips((LATE_LEFT_OUT, at), (EARLY, clock(due - late)), (HOUR_LOST, clock(due + late - 60))),
        ("told late", hour, minute, late),
    )


def _late_and_on(topic: Topic, tier: Tier, hour: int, minute: int, late: int, lasts: int) -> Draft:
    """Return when a late bus arrives."""
    due = 60 * hour + minute
    at, span, ride = clock(due), length(late), length(lasts)
    leaves, key = clock(due + late), clock(due + late + lasts)
    return _draft(
        _LATE_AND_ON,
        {"a": at, "m": span, "d": ride},
        t.add(at, span, ride),
        key,
        (
            Step("When does it leave?", t.equals(t.add(at, span), leaves)),
            Step("Add how long it takes.", t.equals(t.add(leaves, ride), key)),
        ),
        slips(
            (LATE_LEFT_OUT, clock(due + lasts)),
            (EARLY, clock(due - late + lasts)),
            (HOUR_LOST, clock(due + late + lasts - 60)),
            key=key,
        ),
        ("told late on", hour, minute, late, lasts),
    )


def with_told(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of timetables with buses told by their times at their ends."""
    day = range(7, 20)
    return {
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(
            _wait,
            _waits,
            hour=day,
            first=range(4, 30, 3),
            gap=range(15, 45, 5),
            come=range(7, 50, 4),
        ),
        Tier.CORE: spaces[Tier.CORE]
        .also(_takes, _over, hour=day, minute=range(25, 60, 6), lasts=range(25, 160, 9))
        .also(_late, _late_over, hour=day, minute=range(46, 60, 3), late=range(8, 26, 3)),
        Tier.CHALLENGE: spaces[Tier.CHALLENGE].also(
            _late_and_on,
            _late_then,
            hour=day,
            minute=range(21, 60, 4),
            late=range(6, 22, 3),
            lasts=range(25, 55, 5),
        ),
    }
