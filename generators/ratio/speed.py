"""Speed, distance and time.

Key stage 3, ratio (England, 2013): "use compound units such as speed, unit pricing and density to
solve problems" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.ratio._lengths_of_time import hours_and_minutes, in_hours
from generators.ratio._movers import mover_at
from generators.ratio._parts import amount
from generators.ratio._rates import by_formula, wrong_amounts
from generators.ratio._speed_mistakes import (
    CLOCK,
    DIVIDES,
    HALF_WAY,
    HOURS_KEPT,
    MEAN,
    MINUTES,
    MULTIPLIES,
    PART_HOUR,
    STOP_ADDED,
    STOP_COUNTED,
    SUBTRACTS,
)
from generators.ratio._speed_numbers import (
    MISTAKES,
    challenge_fits,
    core_fits,
    core_wrong,
    key_of,
    support_fits,
    support_wrong,
)
from generators.ratio._whole_journeys import in_two_parts, there_and_back, with_a_stop
from itembank.items import kinds
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_ON_THE_ROAD = (
    4, 5, 12, 15, 18, 20, 24, 25, 30, 35, 40, 45, 50, 60, 65, 70, 75, 80, 90, 120,
)  # fmt: skip
_BACK_AT = (
    12, 15, 16, 18, 20, 24, 30, 36, 40, 45, 48, 50, 60, 72, 75, 80, 90, 120,
)  # fmt: skip
_WITH_A_STOP = (
    70, 75, 80, 85, 90, 95, 100, 105, 110, 115, 125, 130, 140, 145, 155, 165, 170,
)  # fmt: skip
_X = t.Sym("x")


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
                support_fits,
                kind=("speed", "distance", "time"),
                speed=_ON_THE_ROAD,
                time=(2, 3, 4, 5),
                unit=("km/h",),
            ).then(
                support_fits,
                kind=("speed", "distance", "time"),
                speed=(2, 3, 4, 5, 6, 7, 8, 9, 12, 15, 18, 20),
                time=(10, 12, 15, 20, 25, 30, 40, 50, 60, 80),
                unit=("m/s",),
            )
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(
                core_fits,
                kind=("distance", "minutes", "speed"),
                speed=(4, 5, 6, *range(12, 81, 2), 15, 25, 35, 45, 55, 65, 75, 90, 100, 120),
                minutes=(5, 6, 10, 12, 15, 18, 20, 24, 30, 36, 40, 42, 45, 48, 50, 54),
                unit=("km/h",),
            ).then(
                core_fits,
                kind=("mixed",),
                speed=(4, 5, *range(12, 81, 4), 15, 30, 45, 50, 70, 75, 90, 120),
                minutes=(66, 75, 80, 84, 90, 100, 105, 108, 135, 150, 165, 192, 195, 210),
                unit=("km/h",),
            )
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                challenge_fits,
                kind=("two speeds",),
                first=(12, 15, 16, 18, 20, 24, 30, 40, 45, 48, 50, 60, 72, 75, 80, 90, 120),
                second=_BACK_AT,
                distance=range(10, 151, 5),
            )
            .then(
                challenge_fits,
                kind=("two parts",),
                first=(15, 20, 25, 30, 40, 45, 50, 60, 70, 75),
                second=(15, 20, 30, 35, 45, 50, 60, 70, 75, 80, 90),
                distance=range(12, 130),
            )
            .then(
                challenge_fits,
                kind=("stop",),
                first=_WITH_A_STOP,
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
            return there_and_back(first, second, distance)
        if kind == "two parts":
            return in_two_parts(first, second, distance)
        return with_a_stop(first, second, distance)

    def _plain(self, kind: str, speed: int, time: int, unit: str) -> Draft:
        length, period = unit.split("/")
        mover = mover_at(speed, unit, speed // 2 + time)
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
        value = key_of(kind, speed, time)
        result = {"speed": unit, "distance": length, "time": period}[kind]
        likely = wrong_amounts(result, value, MISTAKES[kind], support_wrong(kind, speed, time))
        return by_formula(text, shown, asked, key, say, likely, (kind, speed, time, unit))

    def _distance(self, speed: int, minutes: int) -> Draft:
        rate, shown, hours = amount(speed, "km/h"), amount(minutes, "min"), in_hours(minutes)
        key = Fraction(speed * minutes, 60)
        asked = t.times(rate, shown)
        return Draft(
            prompt(
                f"{mover_at(speed, 'km/h', speed // 2 + minutes)} moves at a steady {{v}} for "
                "{t}. How many kilometres is that?",
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
            wrong_amounts("km", key, (MINUTES, CLOCK), core_wrong("distance", speed, minutes)),
            ("distance", speed, minutes),
        )

    def _in_minutes(self, speed: int, minutes: int) -> Draft:
        rate, far, hours = (
            amount(speed, "km/h"),
            amount(speed * minutes // 60, "km"),
            in_hours(minutes),
        )
        asked = t.divide(far, rate)
        return Draft(
            prompt(
                f"{mover_at(speed, 'km/h', speed // 2 + minutes)} travels {{d}} at a steady {{v}}. "
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
                "min", minutes, (HOURS_KEPT, CLOCK), core_wrong("minutes", speed, minutes)
            ),
            ("minutes", speed, minutes),
        )

    def _speed(self, kind: str, speed: int, minutes: int) -> Draft:
        far, rate = amount(Fraction(speed * minutes, 60), "km"), amount(speed, "km/h")
        shown = hours_and_minutes(minutes) if kind == "mixed" else amount(minutes, "min")
        hours = in_hours(minutes)
        mistakes = (MINUTES, CLOCK, PART_HOUR) if kind == "mixed" else (MINUTES, CLOCK)
        return Draft(
            prompt(
                f"{mover_at(speed, 'km/h', speed // 2 + minutes)} travels {{d}} in {{t}}. "
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
            wrong_amounts("km/h", speed, mistakes, core_wrong(kind, speed, minutes)),
            (kind, speed, minutes),
        )
