"""Distance–time graphs told by their corners: stops, speeds of stages and average speeds."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from generators._amounts import length, said_question
from generators._turns import by_turns
from generators.graphs._distance_time_mistakes import (
    DISTANCE_GIVEN,
    FROM_PLACE,
    MEAN_OF_SPEEDS,
    OTHER_AXIS,
    SINCE_START,
    STOP_BEGINS,
    STOP_ENDS,
    STOP_LEFT_OUT,
)
from itembank.items.item import Draft, Step, Tier
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_LEVEL = (
    "A distance–time graph is level from {a} to {b}, at {y}. How long is the stop?",
    "From {a} to {b} a distance–time graph stays at {y}. How long is the stop?",
)
_STAGE = (
    "A distance–time graph goes from {u} at {p} to {v} at {q}. What is the speed?",
    "On its graph a bus is at {u} after {p} and at {v} after {q}. What is its speed?",
)
_WHOLE = (
    "A bus goes {u} in {p}, stops for {q} and goes {v} in {r}. What is its average speed?",
    "A van goes {u} in {p}, rests for {q}, then goes {v} in {r}. What is its average speed?",
)


def _stop(begins: int, lasts: int, far: int) -> bool:
    """Keep stops whose length is neither when they begin or end, nor how far away they are."""
    ends = begins + lasts
    return len({begins, ends, lasts, far}) == 4 and (begins // 5 + lasts // 5 + far) % 6 == 0


def _climb(x: int, y: int, run: int, speed: int) -> bool:
    """Keep stages that begin after the start and away from it, where each wrong way shows."""
    up = speed * run
    wrong = {Fraction(y + up, run), Fraction(up, x + run), Fraction(up), Fraction(speed)}
    return len(wrong) == 4 and (x + y // 5 + run + speed // 5) % 4 == 0


def _journey(first: int, stop: int, more: int, slow: int, fast: int) -> bool:
    """Keep journeys with a stop whose average speed is a whole number."""
    far = slow * first + fast * more
    time = first + stop + more
    if slow == fast or far % time or (first + stop + slow // 5 + 2 * more) % 4:
        return False
    wrong = {Fraction(far, first + more), Fraction(slow + fast, 2), Fraction(far, time)}
    return len(wrong) == 3


def _short(value: Fraction) -> Fraction | None:
    """Return what can be written with two decimal places, None for any other."""
    return value if 100 % value.denominator == 0 else None


def _how_long(topic: Topic, tier: Tier, begins: int, lasts: int, far: int) -> Draft:
    """Return how long a journey stops."""
    ends = begins + lasts
    start, end = length(begins, "min"), length(ends, "min")
    return said_question(
        by_turns(_LEVEL, begins // 5 + far),
        t.sub(end, start),
        length(lasts, "min"),
        [
            Step("Where the graph is level, the distance stays the same: that is the stop."),
            Step("Subtract the times.", t.equals(t.sub(end, start), length(lasts, "min"))),
        ],
        [(STOP_ENDS, ends), (STOP_BEGINS, begins), (OTHER_AXIS, far)],
        ("told stop", begins, lasts, far),
        a=start,
        b=end,
        y=length(far, "km"),
    )


def _how_fast(topic: Topic, tier: Tier, x: int, y: int, run: int, speed: int) -> Draft:
    """Return the speed of a stage from the points where it begins and ends."""
    up = speed * run
    places = length(y, "km"), length(y + up, "km")
    times = length(x, "h"), length(x + run, "h")
    way, time = t.sub(places[1], places[0]), t.sub(times[1], times[0])
    key = length(speed, "km/h")
    return said_question(
        by_turns(_STAGE, x + run + speed // 5),
        t.divide(t.Bracket(way), t.Bracket(time)),
        key,
        [
            Step("How far is it?", t.equals(way, length(up, "km"))),
            Step("How long does it take?", t.equals(time, length(run, "h"))),
            Step(
                "Speed is distance ÷ time.",
                t.equals(t.divide(length(up, "km"), length(run, "h")), key),
            ),
        ],
        [
            (FROM_PLACE, _short(Fraction(y + up, run))),
            (SINCE_START, _short(Fraction(up, x + run))),
            (DISTANCE_GIVEN, up if run > 1 else None),
        ],
        ("told stage", x, y, run, speed),
        u=places[0],
        v=places[1],
        p=times[0],
        q=times[1],
    )


def _on_average(
    topic: Topic, tier: Tier, first: int, stop: int, more: int, slow: int, fast: int
) -> Draft:
    """Return the average speed of a journey with a stop."""
    near, on = slow * first, fast * more
    far, time = near + on, first + stop + more
    ways = length(near, "km"), length(on, "km")
    times = [length(hours, "h") for hours in (first, stop, more)]
    key = length(far // time, "km/h")
    return said_question(
        by_turns(_WHOLE, first + stop + slow // 5),
        t.divide(t.Bracket(t.add(*ways)), t.Bracket(t.add(*times))),
        key,
        [
            Step("How far is it in all?", t.equals(t.add(*ways), length(far, "km"))),
            Step("How long is it, the stop included?", t.equals(t.add(*times), length(time, "h"))),
            Step("Divide.", t.equals(t.divide(length(far, "km"), length(time, "h")), key)),
        ],
        [
            (STOP_LEFT_OUT, _short(Fraction(far, first + more))),
            (MEAN_OF_SPEEDS, _short(Fraction(slow + fast, 2))),
        ],
        ("told journey", first, stop, more, slow, fast),
        u=ways[0],
        v=ways[1],
        p=times[0],
        q=times[1],
        r=times[2],
    )


def _two_wrong(first: int, stop: int, more: int, slow: int, fast: int) -> bool:
    far = slow * first + fast * more
    return (
        _journey(first, stop, more, slow, fast)
        and 100 % (Fraction(far, first + more).denominator) == 0
    )


def _two_shown(x: int, y: int, run: int, speed: int) -> bool:
    if not _climb(x, y, run, speed):
        return False
    wrong = (Fraction(y + speed * run, run), Fraction(speed * run, x + run))
    return sum(100 % value.denominator == 0 for value in wrong) + (run > 1) > 1


def with_told(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of distance–time graphs with graphs told in words at their ends."""
    return {
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(
            _how_long, _stop, begins=range(10, 75, 5), lasts=range(5, 45, 5), far=range(3, 19)
        ),
        Tier.CORE: spaces[Tier.CORE].also(
            _how_fast,
            _two_shown,
            x=range(1, 4),
            y=range(10, 65, 5),
            run=range(1, 5),
            speed=range(15, 85, 5),
        ),
        Tier.CHALLENGE: spaces[Tier.CHALLENGE].also(
            _on_average,
            _two_wrong,
            first=range(1, 5),
            stop=range(1, 4),
            more=range(1, 5),
            slow=range(10, 65, 5),
            fast=range(15, 95, 5),
        ),
    }
