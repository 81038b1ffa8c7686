"""Rates: so much a minute, an hour, a litre; and speeds in another unit.

Key stage 3, ratio (England, 2013): "use compound units such as speed, unit pricing and density to
solve problems" (from memory). To change between related compound units is named by key stage 4
(2014, from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.ratio._parts import amount
from generators.ratio._rates import wrong_amounts
from generators.ratio._rates_mistakes import (
    ADDITIVE,
    DIVIDES,
    HUNDRED,
    METRES_ONLY,
    MULTIPLIES,
    NOT_FIRST,
    OLD_TIME,
    SIXTY_ONCE,
    SUBTRACTS,
    TIME_ONLY,
    UNITS_LOST,
)
from generators.ratio._rates_numbers import (
    SteadyRate,
    challenge_fits,
    core_fits,
    kilometres_wrong,
    long_wrong,
    longer_wrong,
    many_wrong,
    metres_wrong,
    one_wrong,
    other_wrong,
    story_for,
    support_fits,
)
from itembank.items import kinds
from itembank.items.item import Draft, Find, Slip, Step, Tier, prompt
from itembank.items.measures.years import COMPOUND_UNITS, Part
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_X = t.Sym("x")
_PER = {"h": "hour", "min": "minute", "s": "second"}
_LONGER = {"min": "h", "s": "min"}


def _for(story: SteadyRate) -> str:
    return "to earn" if story.unit == "£" else "for"


@register
class CompoundUnits(Topic):
    """For one, and from one; other amounts; longer times and speeds in another unit."""

    id = "ratio.compound-units"
    title = "Rates and compound units"
    statements = ("ratio.compound-units",)
    misconceptions = (
        MULTIPLIES,
        DIVIDES,
        OLD_TIME,
        SUBTRACTS,
        NOT_FIRST,
        ADDITIVE,
        UNITS_LOST,
        HUNDRED,
        METRES_ONLY,
        TIME_ONLY,
        SIXTY_ONCE,
    )
    prerequisites = ("ratio.unit-form",)
    later = {
        Tier.CHALLENGE: (Part(COMPOUND_UNITS, lambda kind, rate, time, other: kind != "longer"),)
    }
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(
                support_fits,
                kind=("one", "many"),
                rate=(*range(3, 26), 30, 35, 40, 45, 50, 60, 75, 80, 90),
                time=(2, 3, 4, 5, 6, 8, 10),
                other=(0,),
            )
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(
                core_fits,
                kind=("other", "long"),
                rate=(*range(3, 26), 30, 35, 40, 45, 50, 60, 80),
                time=(3, 4, 5, 6, 8),
                other=(5, 7, 9, 10, 11, 12),
            )
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                challenge_fits,
                kind=("longer",),
                rate=(*range(5, 26), 30, 35, 40, 45, 50, 60, 75, 80, 90),
                time=(3, 4, 5, 6, 8),
                other=(2, 3, 4, 5),
            )
            .then(challenge_fits, kind=("to m/s",), rate=range(5, 41, 5), time=(0,), other=(0,))
            .then(challenge_fits, kind=("to km/h",), rate=range(2, 42), time=(0,), other=(0,))
        ),
    }
    spare = "Speeds that change to a whole number of metres a second are few."

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, rate, time, other = values
        if kind == "to m/s":
            return self._to_metres(rate)
        if kind == "to km/h":
            return self._to_kilometres(rate)
        story = story_for(rate, rate + time + other)
        assert story is not None
        if kind == "one":
            return self._one(story, rate, time)
        if kind == "many":
            return self._many(story, rate, time)
        if kind == "other":
            return self._other(story, rate, time, other)
        if kind == "long":
            return self._long(story, rate, time, other)
        return self._longer(story, rate, time, other)

    def _one(self, story: SteadyRate, rate: int, time: int) -> Draft:
        steps = (_for_one(story, rate, time),)
        slips = wrong_amounts(story.unit, rate, (MULTIPLIES, SUBTRACTS), one_wrong(rate, time))
        single = amount(1, story.time)
        return _how_much(story, rate, time, single, rate, steps, slips, ("one", rate, time))

    def _many(self, story: SteadyRate, rate: int, time: int) -> Draft:
        given, key = amount(rate, story.unit), rate * time
        steps = (_times(time, given, amount(key, story.unit)),)
        slips = wrong_amounts(story.unit, key, (DIVIDES, SUBTRACTS), many_wrong(rate, time))
        shown = amount(time, story.time)
        return _how_much(story, rate, 1, shown, key, steps, slips, ("many", rate, time))

    def _other(self, story: SteadyRate, rate: int, time: int, other: int) -> Draft:
        key = rate * other
        last = _times(other, amount(rate, story.unit), amount(key, story.unit))
        steps = (_for_one(story, rate, time), last)
        wrong = other_wrong(rate, time, other)
        slips = wrong_amounts(story.unit, key, (NOT_FIRST, ADDITIVE), wrong)
        asked, twin = amount(other, story.time), ("other", rate, time, other)
        return _how_much(story, rate, time, asked, key, steps, slips, twin)

    def _long(self, story: SteadyRate, rate: int, time: int, other: int) -> Draft:
        given, shown = amount(rate * time, story.unit), amount(time, story.time)
        wanted, single = amount(rate * other, story.unit), amount(rate, story.unit)
        key = amount(other, story.time)
        return Draft(
            prompt(
                f"{story.text} How long does it take {_for(story)} {{w}}, at the same rate?",
                n=given,
                t=shown,
                w=wanted,
            ),
            Find(_X, (t.equals(t.Ratio((given, wanted)), t.Ratio((shown, _X))),)),
            key,
            "quantity",
            (
                _for_one(story, rate, time),
                Step(
                    "Find how many times it goes into the new amount.",
                    t.equals(t.divide(wanted, single), t.Int(other)),
                ),
                Step(
                    "It takes that long.",
                    t.equals(t.times(t.Int(other), amount(1, story.time)), key),
                ),
            ),
            wrong_amounts(story.time, other, (ADDITIVE, OLD_TIME), long_wrong(rate, time, other)),
            ("long", rate, time, other),
        )

    def _longer(self, story: SteadyRate, rate: int, time: int, other: int) -> Draft:
        asked, in_small = amount(other, _LONGER[story.time]), amount(60 * other, story.time)
        key = 60 * rate * other
        steps = (
            _for_one(story, rate, time),
            Step("Write the time in the same unit.", t.equals(asked, in_small)),
            _times(60 * other, amount(rate, story.unit), amount(key, story.unit)),
        )
        wrong = longer_wrong(rate, time, other)
        slips = wrong_amounts(story.unit, key, (UNITS_LOST, HUNDRED, NOT_FIRST), wrong)
        twin = ("longer", rate, time, other)
        return _how_much(story, rate, time, asked, key, steps, slips, twin)

    def _to_metres(self, rate: int) -> Draft:
        given, key = amount(Fraction(18 * rate, 5), "km/h"), amount(rate, "m/s")
        metres = amount(3600 * rate, "m")
        length, hour = amount(Fraction(18 * rate, 5), "km"), amount(1, "h")
        return Draft(
            prompt("Change {v} to metres per second.", v=given),
            Find(given),
            key,
            "quantity",
            (
                Step("Write the distance of one hour in metres.", t.equals(length, metres)),
                Step("Write the hour in seconds.", t.equals(hour, amount(3600, "s"))),
                Step("Divide.", t.equals(t.divide(metres, amount(3600, "s")), key)),
            ),
            wrong_amounts("m/s", rate, (METRES_ONLY, TIME_ONLY, SIXTY_ONCE), metres_wrong(rate)),
            ("to m/s", rate),
        )

    def _to_kilometres(self, rate: int) -> Draft:
        given, key = amount(rate, "m/s"), Fraction(18 * rate, 5)
        metres, kilometres = amount(3600 * rate, "m"), amount(key, "km")
        return Draft(
            prompt("Change {v} to kilometres per hour.", v=given),
            Find(given),
            amount(key, "km/h"),
            "quantity",
            (
                Step(
                    "There are 3600 seconds in an hour, so multiply.",
                    t.equals(t.times(t.Int(3600), amount(rate, "m")), metres),
                ),
                Step("Write the metres in kilometres.", t.equals(metres, kilometres)),
                Step(
                    "That is the distance of one hour.",
                    t.equals(t.divide(kilometres, amount(1, "h")), amount(key, "km/h")),
                ),
            ),
            wrong_amounts(
                "km/h", key, (TIME_ONLY, METRES_ONLY, SIXTY_ONCE), kilometres_wrong(rate)
            ),
            ("to km/h", rate),
        )


def _how_much(
    story: SteadyRate,
    rate: int,
    time: int,
    asked: t.Node,
    key: int,
    steps: tuple[Step, ...],
    slips: tuple[Slip, ...],
    twin: tuple[Any, ...],
) -> Draft:
    """Return the question how much there is in the time asked, from what there is in `time`."""
    given, shown = amount(rate * time, story.unit), amount(time, story.time)
    rest = "?" if twin[0] in ("one", "many") else ", at the same rate?"
    return Draft(
        prompt(f"{story.text} How much is that in {{s}}{rest}", n=given, t=shown, s=asked),
        Find(_X, (t.equals(t.Ratio((shown, asked)), t.Ratio((given, _X))),)),
        amount(key, story.unit),
        "amount",
        steps,
        slips,
        twin,
    )


def _for_one(story: SteadyRate, rate: int, time: int) -> Step:
    given, single = amount(rate * time, story.unit), amount(rate, story.unit)
    return Step(
        f"Divide to find the amount for 1 {_PER[story.time]}.",
        t.equals(t.divide(given, t.Int(time)), single),
    )


def _times(count: int, single: t.Node, key: t.Node) -> Step:
    return Step(f"Multiply by {count}.", t.equals(t.times(t.Int(count), single), key))
