"""Speeds read off a distance–time graph: of a stage, of all, and of a stage drawn later."""

from __future__ import annotations

from fractions import Fraction

from generators.graphs._distance_time_mistakes import (
    COUNTS_SQUARES,
    DISTANCE_GIVEN,
    FROM_PLACE,
    MEAN_OF_SPEEDS,
    MINUTES_KEPT,
    ONE_WAY,
    OTHER_AXIS,
    SINCE_START,
    STOP_LEFT_OUT,
)
from generators.graphs._journey_asked import Asked, lead_of
from generators.graphs._journeys import Traveller, graph, number, spots
from itembank.items.item import Step
from itembank.notation import tree as t


def _speed_steps(who: Traveller, way: int, time: int, key: Fraction) -> list[Step]:
    """Return how a speed is worked out from a distance and a time of the axes."""
    divided = t.divide(t.Int(way), t.Int(time))
    if who.factor == 1:
        return [Step("Speed is distance ÷ time.", t.equals(divided, number(key)))]
    hours = Fraction(time, 60)
    return [
        Step(
            f"Change {time} minutes to hours.",
            t.equals(t.divide(t.Int(time), t.Int(60)), t.frac(hours.numerator, hours.denominator)),
        )
        if hours.denominator > 1
        else Step(
            f"Change {time} minutes to hours.",
            t.equals(t.divide(t.Int(time), t.Int(60)), t.Int(int(hours))),
        ),
        Step(
            "Speed is distance ÷ time.",
            t.equals(
                t.divide(t.Int(way), t.frac(hours.numerator, hours.denominator))
                if hours.denominator > 1
                else t.divide(t.Int(way), t.Int(int(hours))),
                number(key),
            ),
        ),
    ]


def _asked(who: Traveller, stage: str, average: str = "") -> str:
    return (
        f"{lead_of(who)}What is the {average}speed of the {who.who}, in {who.unit} per {who.each}, "
        f"{stage}?"
    )


def _kept(who: Traveller, way: int, time: int) -> Fraction | None:
    return Fraction(way, time) if who.factor > 1 else None


def first_speed(who: Traveller, along: int, up: int, stop: int, more: int, on: int) -> Asked:
    """Return the question for the speed of the first stage."""
    way, time = up * who.y_step, along * who.x_step
    key = who.speed(up, along)
    return Asked(
        _asked(who, f"in the first {{n}} {who.time}"),
        {"n": t.Int(time)},
        graph(who, ("", spots(along, up, stop, more, on))),
        key,
        [
            Step(f"In {time} {who.time} the {who.who} goes {way} {who.symbol}."),
            *_speed_steps(who, way, time, key),
        ],
        [
            (MINUTES_KEPT, _kept(who, way, time)),
            (DISTANCE_GIVEN, way),
            (SINCE_START, who.speed(up, along + stop)),
        ],
    )


def last_speed(who: Traveller, along: int, up: int, stop: int, more: int, on: int) -> Asked:
    """Return the question for the speed of the last stage."""
    way, time = on * who.y_step, more * who.x_step
    key = who.speed(on, more)
    before, after = up * who.y_step, (up + on) * who.y_step
    return Asked(
        _asked(who, f"in the last {{n}} {who.time}"),
        {"n": t.Int(time)},
        graph(who, ("", spots(along, up, stop, more, on))),
        key,
        [
            Step(
                f"It goes from {before} {who.symbol} to {after} {who.symbol}.",
                t.equals(t.sub(t.Int(after), t.Int(before)), t.Int(way)),
            ),
            *_speed_steps(who, way, time, key),
        ],
        [
            (MINUTES_KEPT, _kept(who, way, time)),
            (FROM_PLACE, who.speed(up + on, more)),
            (DISTANCE_GIVEN, way),
        ],
    )


def distance_in_all(who: Traveller, along: int, up: int, stop: int, more: int, on: int) -> Asked:
    """Return the question how far it is altogether."""
    way = up * who.y_step
    return Asked(
        f"{lead_of(who)}How many {who.unit} does the {who.who} travel altogether?",
        {},
        graph(who, ("", spots(along, up, stop, more, on))),
        Fraction(2 * way),
        [
            Step(f"The {who.who} goes {way} {who.symbol} there, and the same way back."),
            Step("Add the two.", t.equals(t.add(t.Int(way), t.Int(way)), t.Int(2 * way))),
        ],
        [
            (ONE_WAY, way),
            (COUNTS_SQUARES, 2 * up),
            (OTHER_AXIS, (along + stop + more) * who.x_step),
        ],
    )


def average_speed(who: Traveller, along: int, up: int, stop: int, more: int, on: int) -> Asked:
    """Return the question for the average speed of the whole journey."""
    parts = (up * who.y_step, abs(on) * who.y_step)
    way, time = sum(parts), (along + stop + more) * who.x_step
    key = who.speed(up + abs(on), along + stop + more)
    middle = (who.speed(up, along) + who.speed(on, more)) / 2
    found = (
        f"There are {parts[0]} {who.symbol} before the stop and {parts[1]} {who.symbol} after it."
    )
    return Asked(
        _asked(who, "for the whole journey", "average "),
        {},
        graph(who, ("", spots(along, up, stop, more, on))),
        key,
        [
            Step(found, t.equals(t.add(*map(t.Int, parts)), t.Int(way))),
            Step(f"From the start to the end it takes {time} {who.time}, stop and all."),
            *_speed_steps(who, way, time, key),
        ],
        [
            (STOP_LEFT_OUT, who.speed(up + abs(on), along + more)),
            (MEAN_OF_SPEEDS, middle),
            (MINUTES_KEPT, _kept(who, way, time)),
            (ONE_WAY, who.speed(up, along + stop + more) if on < 0 else None),
        ],
    )


def later_speed(who: Traveller, along: int, up: int, stop: int, more: int, on: int) -> Asked:
    """Return the question for the speed of the stage after the stop, or of the way back."""
    way, time = abs(on) * who.y_step, more * who.x_step
    start, end = (along + stop) * who.x_step, (along + stop + more) * who.x_step
    key = who.speed(on, more)
    low, high = sorted((up * who.y_step, (up + on) * who.y_step))
    return Asked(
        _asked(who, "on the way back" if on < 0 else "after the stop"),
        {},
        graph(who, ("", spots(along, up, stop, more, on))),
        key,
        [
            Step(
                f"It goes {way} {who.symbol}: between {low} {who.symbol} and {high} {who.symbol}.",
                t.equals(t.sub(t.Int(high), t.Int(low)), t.Int(way)),
            ),
            Step(
                f"That takes from {start} to {end} {who.time}.",
                t.equals(t.sub(t.Int(end), t.Int(start)), t.Int(time)),
            ),
            *_speed_steps(who, way, time, key),
        ],
        [
            (SINCE_START, who.speed(on, along + stop + more)),
            (FROM_PLACE, who.speed(up + on, more) if on > 0 else None),
            (MINUTES_KEPT, _kept(who, way, time)),
            (DISTANCE_GIVEN, way),
        ],
    )
