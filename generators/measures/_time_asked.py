"""What is asked about times: when something ends, when it began, how long it lasts."""

from __future__ import annotations

from typing import NamedTuple

from generators.measures._clock_mistakes import (
    HALF_KEPT,
    HOUR_LOST,
    HUNDRED,
    OTHER_WAY,
    SMALL_FROM_LARGE,
    TWELVE_NOT_ADDED,
    WAIT_LEFT_OUT,
)
from generators.measures._clocks import NOON, Event, at_24, clock, length
from generators.measures._time_steps import Times, steps_back, steps_on, time_plus
from itembank.items.item import Misconception, Step
from itembank.notation import tree as t


class Asked(NamedTuple):
    text: str
    shown: dict[str, t.Node]
    target: t.Node
    key: t.Node
    steps: list[Step]
    wrongs: list[tuple[Misconception, t.Node | None]]


def _other_half(minutes: int, halves: bool) -> t.ClockTime | None:
    """Return a time by the 12-hour clock in the wrong half of the day."""
    return clock(minutes + NOON, True) if halves else None


def when_over(told: Event, times: Times) -> Asked:
    """Return the question when something ends."""
    begin, lasts, halves = times.begin, times.lasts, times.halves[0]
    crossed = begin // NOON != times.end // NOON
    start, span = clock(begin, halves), length(lasts)
    return Asked(
        told.begins + told.lasts + told.when_over,
        {"a": start, "d": span},
        t.add(start, span),
        clock(times.end, halves),
        steps_on(times),
        [
            (HOUR_LOST, clock(times.end - 60, halves)),
            (OTHER_WAY, clock(begin - lasts, halves)),
            (HALF_KEPT, _other_half(times.end, halves) if crossed else None),
        ],
    )


def when_begun(told: Event, times: Times) -> Asked:
    """Return the question when something began."""
    end, lasts, halves = times.end, times.lasts, times.halves[1]
    crossed = times.begin // NOON != end // NOON
    over, span = clock(end, halves), length(lasts)
    return Asked(
        told.ends + told.lasted + told.when_begun,
        {"b": over, "d": span},
        t.sub(over, span),
        clock(times.begin, halves),
        steps_back(times),
        [
            (HOUR_LOST, clock(times.begin + 60, halves)),
            (OTHER_WAY, clock(end + lasts, halves)),
            (HALF_KEPT, _other_half(times.begin, halves) if crossed else None),
        ],
    )


def how_long(told: Event, times: Times) -> Asked:
    """Return the question how long something lasts, by one clock or by both."""
    begin, end = times.begin, times.end
    start, over = (clock(at, half) for at, half in zip((begin, end), times.halves, strict=True))
    key = length(times.lasts)
    steps = []
    start_24, end_24 = start, over
    if times.halves[0] != times.halves[1]:
        start_24, end_24 = clock(begin), clock(end)
        what, at = ("ends", end) if times.halves[1] else ("begins", begin)
        steps.append(Step(f"By the 24-hour clock it {what} at {at_24(at)}."))
    halves = times.halves[0] and times.halves[1]
    over_hour = 60 - begin % 60
    next_hour = clock(begin + over_hour, halves)
    first, rest = length(over_hour), length(times.lasts - over_hour)
    steps += [
        Step("Count on to the next full hour.", t.equals(t.sub(next_hour, start_24), first)),
        Step("Count on from there.", t.equals(t.sub(end_24, next_hour), rest)),
        Step("Add the two.", t.equals(t.add(first, rest), key)),
    ]
    # Hours and minutes as they stand side by side, taken away by themselves.
    hours, minutes = end // 60 - begin // 60, begin % 60 - end % 60
    digits = 100 * hours - minutes
    hundred = _parts(*divmod(digits, 100))
    mixed = times.halves[1] and not times.halves[0]
    return Asked(
        told.both + told.how_long,
        {"a": start, "b": over},
        t.sub(over, start),
        key,
        steps,
        [
            (HUNDRED, hundred),
            (SMALL_FROM_LARGE, _parts(hours, minutes)),
            (TWELVE_NOT_ADDED, length(abs(end - NOON - begin)) if mixed else None),
        ],
    )


def _parts(hours: int, minutes: int) -> t.Node:
    """Return hours and minutes as a pupil writes them, carried or not."""
    if not hours:
        return t.Quantity(t.Int(minutes), "min")
    return t.MixedUnits((t.Quantity(t.Int(hours), "h"), t.Quantity(t.Int(minutes), "min")))


def two_legs(begin: int, first: int, wait: int, second: int) -> Asked:
    """Return the question when a bus is back from two legs with a wait between them."""
    start, spans = clock(begin), (length(first), length(wait), length(second))
    at, total = begin, first + wait + second
    steps = []
    for say, span in zip(
        ("It comes to the market.", "It leaves the market.", "It is back at the depot."),
        (first, wait, second),
        strict=True,
    ):
        steps.append(Step(say, time_plus(at, span, False)))
        at += span
    return Asked(
        "A bus leaves the depot at {a} and takes {d} to the market. There its driver waits for "
        "{w}. The drive back takes {e}. At what time is the bus back at the depot?",
        {"a": start, "d": spans[0], "w": spans[1], "e": spans[2]},
        t.add(start, *spans),
        clock(begin + total),
        steps,
        [
            (WAIT_LEFT_OUT, clock(begin + total - wait)),
            (HOUR_LOST, clock(begin + total - 60)),
        ],
    )
