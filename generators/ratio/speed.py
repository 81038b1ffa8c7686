"""Speed, distance and time.

Key stage 3, ratio (England, 2013): "use compound units such as speed, unit pricing and density to
solve problems" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any, NamedTuple

from generators._turns import by_turns
from generators.ratio._parts import amount
from generators.ratio._rates import apart, written, wrong_amounts
from itembank.items import kinds
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

MULTIPLIES = Misconception(
    "ratio.speed-multiplies",
    "multiplies where it should divide",
    "How far does it go in one hour, or in one second? How do you find that?",
)
DIVIDES = Misconception(
    "ratio.speed-divides",
    "divides where it should multiply",
    "How far does it go in the first hour, or second? And after that?",
)
SUBTRACTS = Misconception(
    "ratio.speed-subtracts",
    "subtracts the numbers",
    "What does the unit of the speed tell you to do with distance and time?",
)
MINUTES = Misconception(
    "ratio.speed-minutes-as-hours",
    "uses the minutes as if they were hours",
    "In what unit is the time? In what unit does the speed want it?",
)
CLOCK = Misconception(
    "ratio.speed-clock-decimal",
    "reads minutes as hundredths of an hour",
    "How many minutes are there in an hour? What is half an hour as a decimal?",
)
PART_HOUR = Misconception(
    "ratio.speed-part-hour",
    "uses the whole hours only",
    "What happened to the minutes?",
)
MEAN = Misconception(
    "ratio.speed-mean-of-speeds",
    "takes the mean of the two speeds",
    "Does it spend the same time at each speed?",
)
HALF_WAY = Misconception(
    "ratio.speed-half-the-way",
    "divides one part of the distance by all of the time",
    "How far is it altogether?",
)
STOP_COUNTED = Misconception(
    "ratio.speed-stop-counted",
    "counts the stop as time spent moving",
    "Is it moving for all of that time?",
)
STOP_ADDED = Misconception(
    "ratio.speed-stop-added",
    "adds the stop to the time of the journey",
    "Is the stop part of the time that is given?",
)
HOURS_KEPT = Misconception(
    "ratio.speed-hours-as-minutes",
    "gives the hours as minutes",
    "Is your answer in hours or in minutes? Which does the question ask for?",
)


class _Mover(NamedTuple):
    """Something that moves, with plausible speeds: common practice, without a source."""

    name: str
    slow: int
    fast: int


_BY_ROAD = (
    _Mover("A bus", 18, 60),
    _Mover("A coach", 40, 90),
    _Mover("A lorry", 40, 80),
    _Mover("A tractor", 12, 40),
    _Mover("A cyclist", 10, 30),
    _Mover("A train", 60, 160),
    _Mover("A ferry", 16, 40),
    _Mover("A minibus", 30, 80),
    _Mover("A walker", 3, 6),
)
_ON_FOOT = (
    _Mover("A swimmer", 1, 2),
    _Mover("A runner", 3, 8),
    _Mover("A cyclist", 3, 10),
    _Mover("A pigeon", 12, 25),
    _Mover("A scooter rider", 2, 6),
)
_X = t.Sym("x")


def _mover(speed: int, unit: str, turn: int) -> str | None:
    movers = _BY_ROAD if unit == "km/h" else _ON_FOOT
    fits = [mover.name for mover in movers if mover.slow <= speed <= mover.fast]
    return by_turns(fits, turn) if fits else None


def _support(kind: str, speed: int, time: int, unit: str) -> bool:
    """Keep whole hours, or seconds, at speeds that something has."""
    if _mover(speed, unit, 0) is None or speed == time or (unit == "m/s") is not (time > 9):
        return False
    if unit == "km/h" and speed * time > 480:
        return False
    return apart(_key(kind, speed, time), *_support_wrong(kind, speed, time))


def _key(kind: str, speed: int, time: int) -> int:
    return {"speed": speed, "distance": speed * time, "time": time}[kind]


def _support_wrong(kind: str, speed: int, time: int) -> tuple[Fraction | int | None, ...]:
    """Return what the likely mistakes of a kind give, in the order of :data:`_MISTAKES`."""
    distance = speed * time
    if kind == "speed":
        return distance * time, distance - time
    if kind == "distance":
        return written(max(speed, time), min(speed, time)), abs(speed - time)
    return distance * speed, distance - speed


_MISTAKES = {
    "speed": (MULTIPLIES, SUBTRACTS),
    "distance": (DIVIDES, SUBTRACTS),
    "time": (MULTIPLIES, SUBTRACTS),
}


def _core(kind: str, speed: int, minutes: int, unit: str) -> bool:
    """Keep times in minutes, or in hours and minutes, whose distances have a decimal at most."""
    if _mover(speed, unit, 0) is None or speed * minutes % 6 or speed * minutes < 120:
        return False
    if kind == "mixed" and (minutes < 60 or minutes % 60 == 0 or speed * minutes > 18_000):
        return False
    if kind != "mixed" and minutes >= 60:
        return False
    if kind == "minutes" and speed * minutes % 60:
        return False
    key = {"distance": Fraction(speed * minutes, 60), "minutes": Fraction(minutes)}.get(
        kind, Fraction(speed)
    )
    return apart(key, *_core_wrong(kind, speed, minutes))


def _core_wrong(kind: str, speed: int, minutes: int) -> tuple[Fraction | int | None, ...]:
    """Return what MINUTES and CLOCK give, PART_HOUR too for hours and minutes."""
    product = speed * minutes
    if kind == "distance":
        return product, written(product, 100)
    if kind == "minutes":
        hours = written(minutes, 60)
        return hours, None if hours is None else 100 * hours
    whole, rest = divmod(minutes, 60)
    clock = written(100 * product, 60 * (100 * whole + rest))
    if kind == "speed":
        return written(product, 60 * minutes), clock
    return written(product, 60 * minutes), clock, written(product, 60 * whole)


def _challenge(kind: str, first: int, second: int, distance: int) -> bool:
    """Keep two equal parts at two speeds, two parts of different length, and stops."""
    if kind == "two speeds":
        if _mover(first, "km/h", 0) is None or _mover(second, "km/h", 0) is None:
            return False
        # Each part takes a whole number of quarters of an hour.
        if distance > 3 * min(first, second) or 4 * distance % first or 4 * distance % second:
            return False
        average = written(2 * first * second, first + second)
        if first == second or average is None or _two_mover(first, second, 0) is None:
            return False
        return apart(average, *_two_wrong(first, second))
    if kind == "two parts":
        # first and second are minutes; the distance is of both, the first part a multiple of 5.
        if (first + second) % 30 or first == second:
            return False
        average = written(60 * distance, first + second, 0)
        near = 5 * (distance * first // (first + second) // 5)
        if average is None or not 12 <= average <= 90 or near < 5 or near == distance:
            return False
        speeds = (60 * near / first, 60 * (distance - near) / second)
        if not 8 <= min(speeds) <= max(speeds) <= 100:
            return False
        return apart(average, *_parts_wrong(first, second, near, distance))
    # A stop of `second` minutes in `first` minutes in all.
    if second >= 31 or first <= 60 or (first - second) % 15 or first % 60 == 0:
        return False
    average = written(60 * distance, first - second, 0)
    if average is None or not 15 <= average <= 80:
        return False
    return apart(average, *_stop_wrong(first, second, distance))


def _two_mover(first: int, second: int, turn: int) -> str | None:
    fits = [
        mover.name
        for mover in _BY_ROAD
        if mover.slow <= min(first, second) and max(first, second) <= mover.fast
    ]
    return by_turns(fits, turn) if fits else None


def _two_wrong(first: int, second: int) -> tuple[Fraction | None, ...]:
    return written(first + second, 2), written(first * second, first + second)


def _parts_wrong(first: int, second: int, near: int, distance: int) -> tuple[Fraction | None, ...]:
    """Return what MEAN, HALF_WAY and MINUTES give."""
    mean = 30 * (near * second + (distance - near) * first)
    return (
        written(mean, first * second),
        written(60 * (distance - near), first + second),
        written(distance, first + second),
    )


def _stop_wrong(total: int, stop: int, distance: int) -> tuple[Fraction | None, ...]:
    """Return what STOP_COUNTED, STOP_ADDED and MINUTES give."""
    return (
        written(60 * distance, total),
        written(60 * distance, total + stop),
        written(distance, total - stop),
    )


@register
class Speed(Topic):
    """In whole hours or seconds; with minutes; two parts at two speeds, and stops."""

    id = "ratio.speed"
    title = "Speed, distance and time"
    statements = ("ratio.compound-units",)
    misconceptions = (
        MULTIPLIES,
        DIVIDES,
        SUBTRACTS,
        MINUTES,
        CLOCK,
        PART_HOUR,
        MEAN,
        HALF_WAY,
        STOP_COUNTED,
        STOP_ADDED,
        HOURS_KEPT,
    )
    prerequisites = ("ratio.unit-form",)
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(
                _support,
                kind=("speed", "distance", "time"),
                speed=(
                    4,
                    5,
                    12,
                    15,
                    18,
                    20,
                    24,
                    25,
                    30,
                    35,
                    40,
                    45,
                    50,
                    60,
                    65,
                    70,
                    75,
                    80,
                    90,
                    120,
                ),
                time=(2, 3, 4, 5),
                unit=("km/h",),
            ).then(
                _support,
                kind=("speed", "distance", "time"),
                speed=(2, 3, 4, 5, 6, 7, 8, 9, 12, 15, 18, 20),
                time=(10, 12, 15, 20, 25, 30, 40, 50, 60, 80),
                unit=("m/s",),
            )
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(
                _core,
                kind=("distance", "minutes", "speed"),
                speed=(4, 5, 6, *range(12, 81, 2), 15, 25, 35, 45, 55, 65, 75, 90, 100, 120),
                minutes=(5, 6, 10, 12, 15, 18, 20, 24, 30, 36, 40, 42, 45, 48, 50, 54),
                unit=("km/h",),
            ).then(
                _core,
                kind=("mixed",),
                speed=(4, 5, *range(12, 81, 4), 15, 30, 45, 50, 70, 75, 90, 120),
                minutes=(66, 75, 80, 84, 90, 100, 105, 108, 135, 150, 165, 192, 195, 210),
                unit=("km/h",),
            )
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                _challenge,
                kind=("two speeds",),
                first=(12, 15, 16, 18, 20, 24, 30, 40, 45, 48, 50, 60, 72, 75, 80, 90, 120),
                second=(
                    12,
                    15,
                    16,
                    18,
                    20,
                    24,
                    30,
                    36,
                    40,
                    45,
                    48,
                    50,
                    60,
                    72,
                    75,
                    80,
                    90,
                    120,
                ),
                distance=range(10, 151, 5),
            )
            .then(
                _challenge,
                kind=("two parts",),
                first=(15, 20, 25, 30, 40, 45, 50, 60, 70, 75),
                second=(15, 20, 30, 35, 45, 50, 60, 70, 75, 80, 90),
                distance=range(12, 130),
            )
            .then(
                _challenge,
                kind=("stop",),
                first=(
                    70,
                    75,
                    80,
                    85,
                    90,
                    95,
                    100,
                    105,
                    110,
                    115,
                    125,
                    130,
                    140,
                    145,
                    155,
                    165,
                    170,
                ),
                second=(5, 10, 15, 20, 25, 30),
                distance=range(20, 130, 2),
            )
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._plain(*values)
        if tier is Tier.CORE:
            kind, speed, minutes, _ = values
            if kind == "minutes":
                return self._in_minutes(speed, minutes)
            if kind == "distance":
                return self._distance(speed, minutes)
            return self._speed(kind, speed, minutes)
        kind, first, second, distance = values
        if kind == "two speeds":
            return self._two_speeds(first, second, distance)
        if kind == "two parts":
            return self._two_parts(first, second, distance)
        return self._stop(first, second, distance)

    def _plain(self, kind: str, speed: int, time: int, unit: str) -> Draft:
        length, period = unit.split("/")
        mover = _mover(speed, unit, speed // 2 + time)
        how_far, how_long, rate = (
            amount(speed * time, length),
            amount(time, period),
            amount(speed, unit),
        )
        many = ("kilometres", "hours") if unit == "km/h" else ("metres", "seconds")
        if kind == "speed":
            text = f"{mover} travels {{d}} in {{t}}. Work out the average speed in {unit}."
            shown, asked, key = {"d": how_far, "t": how_long}, t.divide(how_far, how_long), rate
            say = "Speed is distance divided by time."
        elif kind == "distance":
            text = f"{mover} moves at a steady {{v}} for {{t}}. How many {many[0]} is that?"
            shown, asked, key = {"v": rate, "t": how_long}, t.times(rate, how_long), how_far
            say = "Distance is speed times time."
        else:
            text = f"{mover} travels {{d}} at a steady {{v}}. How many {many[1]} does it take?"
            shown, asked, key = {"d": how_far, "v": rate}, t.divide(how_far, rate), how_long
            say = "Time is distance divided by speed."
        value = _key(kind, speed, time)
        return Draft(
            prompt(text, **shown),
            Find(_X, (t.equals(_X, asked),)),
            key,
            "quantity",
            (Step(say, t.equals(asked, key)),),
            wrong_amounts(
                {"speed": unit, "distance": length, "time": period}[kind],
                value,
                _MISTAKES[kind],
                _support_wrong(kind, speed, time),
            ),
            (kind, speed, time, unit),
        )

    def _distance(self, speed: int, minutes: int) -> Draft:
        rate, shown, hours = amount(speed, "km/h"), amount(minutes, "min"), _hours(minutes)
        key = Fraction(speed * minutes, 60)
        asked = t.times(rate, shown)
        return Draft(
            prompt(
                f"{_mover(speed, 'km/h', speed // 2 + minutes)} moves at a steady {{v}} for {{t}}. "
                "How many kilometres is that?",
                v=rate,
                t=shown,
            ),
            Find(_X, (t.equals(_X, asked),)),
            amount(key, "km"),
            "quantity",
            (
                Step("Write the time in hours.", t.equals(shown, hours)),
                Step(
                    "Multiply the speed by the time.",
                    t.equals(t.times(rate, hours), amount(key, "km")),
                ),
            ),
            wrong_amounts("km", key, (MINUTES, CLOCK), _core_wrong("distance", speed, minutes)),
            ("distance", speed, minutes),
        )

    def _in_minutes(self, speed: int, minutes: int) -> Draft:
        rate, far, hours = (
            amount(speed, "km/h"),
            amount(speed * minutes // 60, "km"),
            _hours(minutes),
        )
        asked = t.divide(far, rate)
        return Draft(
            prompt(
                f"{_mover(speed, 'km/h', speed // 2 + minutes)} travels {{d}} at a steady {{v}}. "
                "How many minutes does it take?",
                d=far,
                v=rate,
            ),
            Find(_X, (t.equals(_X, asked),)),
            amount(minutes, "min"),
            "quantity",
            (
                Step("Time is distance divided by speed.", t.equals(asked, hours)),
                Step("Multiply by 60 for minutes.", t.equals(hours, amount(minutes, "min"))),
            ),
            wrong_amounts(
                "min", minutes, (HOURS_KEPT, CLOCK), _core_wrong("minutes", speed, minutes)
            ),
            ("minutes", speed, minutes),
        )

    def _speed(self, kind: str, speed: int, minutes: int) -> Draft:
        far, rate = amount(Fraction(speed * minutes, 60), "km"), amount(speed, "km/h")
        shown = _clock_time(minutes) if kind == "mixed" else amount(minutes, "min")
        hours = _hours(minutes)
        mistakes = (MINUTES, CLOCK, PART_HOUR) if kind == "mixed" else (MINUTES, CLOCK)
        return Draft(
            prompt(
                f"{_mover(speed, 'km/h', speed // 2 + minutes)} travels {{d}} in {{t}}. "
                "Work out the average speed in km/h.",
                d=far,
                t=shown,
            ),
            Find(_X, (t.equals(_X, t.divide(far, shown)),)),
            rate,
            "quantity",
            (
                Step("Write the time in hours.", t.equals(shown, hours)),
                Step("Divide the distance by the time.", t.equals(t.divide(far, hours), rate)),
            ),
            wrong_amounts("km/h", speed, mistakes, _core_wrong(kind, speed, minutes)),
            (kind, speed, minutes),
        )

    def _two_speeds(self, first: int, second: int, distance: int) -> Draft:
        mover = _two_mover(first, second, first + second + distance // 5)
        far, v, w = amount(distance, "km"), amount(first, "km/h"), amount(second, "km/h")
        times = [amount(Fraction(distance, speed), "h") for speed in (first, second)]
        total = amount(Fraction(distance, first) + Fraction(distance, second), "h")
        average = Fraction(2 * first * second, first + second)
        whole, time = t.add(far, far), t.add(t.divide(far, v), t.divide(far, w))
        return Draft(
            prompt(
                f"{mover} goes {{d}} at {{v}} and comes back the same way at {{w}}. Work out the "
                "average speed for the whole journey, in km/h.",
                d=far,
                v=v,
                w=w,
            ),
            Find(_X, (t.equals(_X, t.divide(t.Bracket(whole), t.Bracket(time))),)),
            amount(average, "km/h"),
            "quantity",
            (
                Step("Find the time there.", t.equals(t.divide(far, v), times[0])),
                Step("Find the time back.", t.equals(t.divide(far, w), times[1])),
                Step("Add the times.", t.equals(t.add(*times), total)),
                Step("Add the distances.", t.equals(whole, amount(2 * distance, "km"))),
                Step(
                    "Divide all of the distance by all of the time.",
                    t.equals(t.divide(amount(2 * distance, "km"), total), amount(average, "km/h")),
                ),
            ),
            wrong_amounts("km/h", average, (MEAN, HALF_WAY), _two_wrong(first, second)),
            ("two speeds", first, second, distance),
        )

    def _two_parts(self, first: int, second: int, distance: int) -> Draft:
        near = 5 * (distance * first // (first + second) // 5)
        average = Fraction(60 * distance, first + second)
        mover = _mover(int(average), "km/h", first + second + distance) or "A bus"
        far, further = amount(near, "km"), amount(distance - near, "km")
        shown, then = amount(first, "min"), amount(second, "min")
        minutes, whole = amount(first + second, "min"), amount(distance, "km")
        hours, time = _hours(first + second), t.add(shown, then)
        return Draft(
            prompt(
                f"{mover} travels {{d}} in {{t}} and then {{e}} in {{u}}. Work out the average "
                "speed for the whole journey, in km/h.",
                d=far,
                t=shown,
                e=further,
                u=then,
            ),
            Find(
                _X,
                (t.equals(_X, t.divide(t.Bracket(t.add(far, further)), t.Bracket(time))),),
            ),
            amount(average, "km/h"),
            "quantity",
            (
                Step("Add the distances.", t.equals(t.add(far, further), whole)),
                Step("Add the times.", t.equals(time, minutes)),
                Step("Write the time in hours.", t.equals(minutes, hours)),
                Step(
                    "Divide all of the distance by all of the time.",
                    t.equals(t.divide(whole, hours), amount(average, "km/h")),
                ),
            ),
            wrong_amounts(
                "km/h",
                average,
                (MEAN, HALF_WAY, MINUTES),
                _parts_wrong(first, second, near, distance),
            ),
            ("two parts", first, second, distance),
        )

    def _stop(self, total: int, stop: int, distance: int) -> Draft:
        average = Fraction(60 * distance, total - stop)
        far, shown, pause = amount(distance, "km"), _clock_time(total), amount(stop, "min")
        all_of_it, moving = amount(total, "min"), amount(total - stop, "min")
        hours = _hours(total - stop)
        return Draft(
            prompt(
                "A bus journey of {d} takes {t}, with a stop of {s} on the way. Work out the "
                "average speed of the bus while it is moving, in km/h.",
                d=far,
                t=shown,
                s=pause,
            ),
            Find(_X, (t.equals(_X, t.divide(far, t.Bracket(t.sub(shown, pause)))),)),
            amount(average, "km/h"),
            "quantity",
            (
                Step("Write the time in minutes.", t.equals(shown, all_of_it)),
                Step("Subtract the stop.", t.equals(t.sub(all_of_it, pause), moving)),
                Step("Write the time in hours.", t.equals(moving, hours)),
                Step(
                    "Divide the distance by the time.",
                    t.equals(t.divide(far, hours), amount(average, "km/h")),
                ),
            ),
            wrong_amounts(
                "km/h",
                average,
                (STOP_COUNTED, STOP_ADDED, MINUTES),
                _stop_wrong(total, stop, distance),
            ),
            ("stop", total, stop, distance),
        )


def _hours(minutes: int) -> t.Node:
    """Return a number of minutes in hours: as a decimal where it ends, else as a fraction."""
    value = Fraction(minutes, 60)
    if 100 % value.denominator == 0:
        return amount(value, "h")
    whole, rest = divmod(minutes, 60)
    part = Fraction(rest, 60)
    top, bottom = part.numerator, part.denominator
    return t.Quantity(t.Mixed(whole, top, bottom) if whole else t.frac(top, bottom), "h")


def _clock_time(minutes: int) -> t.Node:
    """Return a length of time in hours and minutes."""
    hours, rest = divmod(minutes, 60)
    return t.MixedUnits((t.Quantity(t.Int(hours), "h"), t.Quantity(t.Int(rest), "min")))
