"""Rates: so much a minute, an hour, a litre; and speeds in another unit.

Key stage 3, ratio (England, 2013): "use compound units such as speed, unit pricing and density to
solve problems" (from memory). To change between related compound units is named by key stage 4
(2014, from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any, NamedTuple

from generators._turns import by_turns
from generators.ratio._parts import amount
from generators.ratio._rates import apart, written, wrong_amounts
from itembank.items import kinds
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.measures.years import COMPOUND_UNITS, Part
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

MULTIPLIES = Misconception(
    "ratio.rates-multiplies",
    "multiplies where it should divide",
    "Is the answer for one more or less than the amount for several?",
)
DIVIDES = Misconception(
    "ratio.rates-divides",
    "divides where it should multiply",
    "Is the answer for several more or less than the amount for one?",
)
OLD_TIME = Misconception(
    "ratio.rates-old-time",
    "divides by the time, and not by the amount for one",
    "What does your answer count: a time, or an amount for each minute, hour or second?",
)
SUBTRACTS = Misconception(
    "ratio.rates-subtracts",
    "subtracts the numbers",
    "What happens to the amount when the time doubles? Does subtracting show that?",
)
NOT_FIRST = Misconception(
    "ratio.rates-not-for-one",
    "multiplies without finding the amount for one",
    "Is the amount in the question for one, or for several?",
)
ADDITIVE = Misconception(
    "ratio.rates-additive",
    "adds the same number to both amounts, or takes it from both",
    "If one amount doubles, what happens to the other? Does your method do that?",
)
UNITS_LOST = Misconception(
    "ratio.rates-units-ignored",
    "works with two times as they stand, whatever their units",
    "Are both times in the same unit?",
)
HUNDRED = Misconception(
    "ratio.rates-hundred-minutes",
    "takes 100 for 60 between hours and minutes, or minutes and seconds",
    "How many minutes are there in an hour? And seconds in a minute?",
)
METRES_ONLY = Misconception(
    "ratio.rates-length-only",
    "changes the unit of length and not the unit of time",
    "You have metres. Are they for an hour or for a second?",
)
TIME_ONLY = Misconception(
    "ratio.rates-time-only",
    "changes the unit of time and not the unit of length",
    "Your time fits. Are the lengths metres or kilometres?",
)
SIXTY_ONCE = Misconception(
    "ratio.rates-sixty-once",
    "multiplies or divides by 60 once, not twice",
    "How many seconds are there in a minute? And in an hour?",
)

_X = t.Sym("x")


class _Rate(NamedTuple):
    """Something that goes at a steady rate: what `amount` there is in so much `time`."""

    text: str
    unit: str
    time: str
    low: int
    high: int


# {n} in {t}; rates that are plausible: common practice, without a source.
_STEADY = (
    _Rate("{n} of water run from a tap in {t}.", "l", "min", 5, 20),
    _Rate("A pump moves {n} of water in {t}.", "l", "min", 20, 90),
    _Rate("A gardener is paid {n} for {t}.", "£", "h", 12, 18),
    _Rate("A swimming teacher is paid {n} for {t}.", "£", "h", 14, 25),
    _Rate("A mower uses {n} of petrol in {t}.", "ml", "min", 15, 60),
    _Rate("A lawn roller covers {n} in {t}.", "m^2", "min", 20, 90),
    _Rate("A machine packs {n} of seed in {t}.", "g", "s", 20, 90),
    _Rate("An oven dries {n} of fruit in {t}.", "kg", "h", 3, 12),
)
_PER = {"h": "hour", "min": "minute", "s": "second"}
_LONGER = {"min": ("h", 60), "s": ("min", 60), "h": ("min", 60)}


def _story(rate: int, turn: int) -> _Rate | None:
    fits = [story for story in _STEADY if story.low <= rate <= story.high]
    return by_turns(fits, turn) if fits else None


def _for(story: _Rate) -> str:
    return "to earn" if story.unit == "£" else "for"


def _support(kind: str, rate: int, time: int, other: int) -> bool:
    """Keep the amount for one, and for several from it."""
    if _story(rate, 0) is None or rate == time:
        return False
    if kind == "one":
        return apart(rate, *_one_wrong(rate, time))
    return apart(rate * time, *_many_wrong(rate, time))


def _one_wrong(rate: int, time: int) -> tuple[Fraction | None, ...]:
    return Fraction(rate * time * time), Fraction(abs(rate * time - time))


def _many_wrong(rate: int, time: int) -> tuple[Fraction | None, ...]:
    return written(max(rate, time), min(rate, time)), Fraction(abs(rate - time))


def _core(kind: str, rate: int, time: int, other: int) -> bool:
    """Keep other times of the same unit, and how long an amount takes."""
    if _story(rate, 0) is None or time == other or other % time == 0 or time % other == 0:
        return False
    if kind == "other":
        return apart(rate * other, *_other_wrong(rate, time, other))
    return apart(other, *_long_wrong(rate, time, other))


def _other_wrong(rate: int, time: int, other: int) -> tuple[Fraction | None, ...]:
    """Return what NOT_FIRST and ADDITIVE give."""
    return Fraction(rate * time * other), Fraction(rate * time + other - time)


def _long_wrong(rate: int, time: int, other: int) -> tuple[Fraction | None, ...]:
    """Return what ADDITIVE and OLD_TIME give: the wrong time."""
    return (
        Fraction(rate * other - rate * time + time),
        written(rate * other, time),
    )


def _challenge(kind: str, rate: int, time: int, other: int) -> bool:
    """Keep rates asked for in the longer unit of time, and speeds in another unit."""
    if kind == "longer":
        story = _story(rate, rate + time + other)
        if story is None or story.time == "h":
            return False
        return apart(60 * rate * other, *_longer_wrong(rate, time, other))
    if kind == "to m/s":
        return apart(rate, *_metres_wrong(rate))
    return apart(Fraction(18 * rate, 5), *_kilometres_wrong(rate))


def _longer_wrong(rate: int, time: int, other: int) -> tuple[Fraction | None, ...]:
    """Return what UNITS_LOST, HUNDRED and NOT_FIRST give."""
    return Fraction(rate * other), Fraction(100 * rate * other), Fraction(60 * rate * time * other)


def _metres_wrong(rate: int) -> tuple[Fraction | None, ...]:
    """Return what METRES_ONLY, TIME_ONLY and SIXTY_ONCE give for 3.6 × rate in km/h."""
    return Fraction(3600 * rate), written(rate, 1000, 4), Fraction(60 * rate)


def _kilometres_wrong(rate: int) -> tuple[Fraction | None, ...]:
    """Return what TIME_ONLY, METRES_ONLY and SIXTY_ONCE give for rate in m/s."""
    return Fraction(3600 * rate), written(rate, 1000, 4), written(60 * rate, 1000)


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
                _support,
                kind=("one", "many"),
                rate=(*range(3, 26), 30, 35, 40, 45, 50, 60, 75, 80, 90),
                time=(2, 3, 4, 5, 6, 8, 10),
                other=(0,),
            )
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(
                _core,
                kind=("other", "long"),
                rate=(*range(3, 26), 30, 35, 40, 45, 50, 60, 80),
                time=(3, 4, 5, 6, 8),
                other=(5, 7, 9, 10, 11, 12),
            )
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                _challenge,
                kind=("longer",),
                rate=(*range(5, 26), 30, 35, 40, 45, 50, 60, 75, 80, 90),
                time=(3, 4, 5, 6, 8),
                other=(2, 3, 4, 5),
            )
            .then(_challenge, kind=("to m/s",), rate=range(5, 41, 5), time=(0,), other=(0,))
            .then(_challenge, kind=("to km/h",), rate=range(2, 42), time=(0,), other=(0,))
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
        story = _story(rate, rate + time + other)
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

    def _one(self, story: _Rate, rate: int, time: int) -> Draft:
        given, shown = amount(rate * time, story.unit), amount(time, story.time)
        single, key = amount(1, story.time), amount(rate, story.unit)
        return Draft(
            prompt(f"{story.text} How much is that in {{s}}?", n=given, t=shown, s=single),
            Find(_X, (t.equals(t.Ratio((shown, single)), t.Ratio((given, _X))),)),
            key,
            "amount",
            (
                Step(
                    f"Divide to find the amount for 1 {_PER[story.time]}.",
                    t.equals(t.divide(given, t.Int(time)), key),
                ),
            ),
            wrong_amounts(story.unit, rate, (MULTIPLIES, SUBTRACTS), _one_wrong(rate, time)),
            ("one", rate, time),
        )

    def _many(self, story: _Rate, rate: int, time: int) -> Draft:
        single, given = amount(1, story.time), amount(rate, story.unit)
        shown, key = amount(time, story.time), amount(rate * time, story.unit)
        return Draft(
            prompt(f"{story.text} How much is that in {{s}}?", n=given, t=single, s=shown),
            Find(_X, (t.equals(t.Ratio((single, shown)), t.Ratio((given, _X))),)),
            key,
            "amount",
            (Step(f"Multiply by {time}.", t.equals(t.times(t.Int(time), given), key)),),
            wrong_amounts(story.unit, rate * time, (DIVIDES, SUBTRACTS), _many_wrong(rate, time)),
            ("many", rate, time),
        )

    def _other(self, story: _Rate, rate: int, time: int, other: int) -> Draft:
        given, shown = amount(rate * time, story.unit), amount(time, story.time)
        asked, single = amount(other, story.time), amount(rate, story.unit)
        key = amount(rate * other, story.unit)
        return Draft(
            prompt(
                f"{story.text} How much is that in {{s}}, at the same rate?",
                n=given,
                t=shown,
                s=asked,
            ),
            Find(_X, (t.equals(t.Ratio((shown, asked)), t.Ratio((given, _X))),)),
            key,
            "amount",
            (
                Step(
                    f"Divide to find the amount for 1 {_PER[story.time]}.",
                    t.equals(t.divide(given, t.Int(time)), single),
                ),
                Step(f"Multiply by {other}.", t.equals(t.times(t.Int(other), single), key)),
            ),
            wrong_amounts(
                story.unit, rate * other, (NOT_FIRST, ADDITIVE), _other_wrong(rate, time, other)
            ),
            ("other", rate, time, other),
        )

    def _long(self, story: _Rate, rate: int, time: int, other: int) -> Draft:
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
                Step(
                    f"Divide to find the amount for 1 {_PER[story.time]}.",
                    t.equals(t.divide(given, t.Int(time)), single),
                ),
                Step(
                    "Find how many times it goes into the new amount.",
                    t.equals(t.divide(wanted, single), t.Int(other)),
                ),
                Step(
                    "It takes that long.",
                    t.equals(t.times(t.Int(other), amount(1, story.time)), key),
                ),
            ),
            wrong_amounts(story.time, other, (ADDITIVE, OLD_TIME), _long_wrong(rate, time, other)),
            ("long", rate, time, other),
        )

    def _longer(self, story: _Rate, rate: int, time: int, other: int) -> Draft:
        unit, _ = _LONGER[story.time]
        given, shown = amount(rate * time, story.unit), amount(time, story.time)
        asked, in_small = amount(other, unit), amount(60 * other, story.time)
        single, key = amount(rate, story.unit), amount(60 * rate * other, story.unit)
        return Draft(
            prompt(
                f"{story.text} How much is that in {{s}}, at the same rate?",
                n=given,
                t=shown,
                s=asked,
            ),
            Find(_X, (t.equals(t.Ratio((shown, asked)), t.Ratio((given, _X))),)),
            key,
            "amount",
            (
                Step(
                    f"Divide to find the amount for 1 {_PER[story.time]}.",
                    t.equals(t.divide(given, t.Int(time)), single),
                ),
                Step("Write the time in the same unit.", t.equals(asked, in_small)),
                Step(
                    f"Multiply by {60 * other}.", t.equals(t.times(t.Int(60 * other), single), key)
                ),
            ),
            wrong_amounts(
                story.unit,
                60 * rate * other,
                (UNITS_LOST, HUNDRED, NOT_FIRST),
                _longer_wrong(rate, time, other),
            ),
            ("longer", rate, time, other),
        )

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
            wrong_amounts("m/s", rate, (METRES_ONLY, TIME_ONLY, SIXTY_ONCE), _metres_wrong(rate)),
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
                "km/h", key, (TIME_ONLY, METRES_ONLY, SIXTY_ONCE), _kilometres_wrong(rate)
            ),
            ("to km/h", rate),
        )
