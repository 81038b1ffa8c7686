"""Which rates and times are asked for, and what the mistakes give; the stories they are told in."""

from __future__ import annotations

from fractions import Fraction
from typing import NamedTuple

from generators._turns import by_turns
from generators.ratio._rates import apart, written


class SteadyRate(NamedTuple):
    """Something that goes at a steady rate: what `amount` there is in so much `time`."""

    text: str
    unit: str
    time: str
    low: int
    high: int


# {n} in {t}; rates that are plausible: common practice, without a source.
_STEADY = (
    SteadyRate("{n} of water run from a tap in {t}.", "l", "min", 5, 20),
    SteadyRate("A pump moves {n} of water in {t}.", "l", "min", 20, 90),
    SteadyRate("A gardener is paid {n} for {t}.", "£", "h", 12, 18),
    SteadyRate("A swimming teacher is paid {n} for {t}.", "£", "h", 14, 25),
    SteadyRate("A mower uses {n} of petrol in {t}.", "ml", "min", 15, 60),
    SteadyRate("A lawn roller covers {n} in {t}.", "m^2", "min", 20, 90),
    SteadyRate("A machine packs {n} of seed in {t}.", "g", "s", 20, 90),
    SteadyRate("An oven dries {n} of fruit in {t}.", "kg", "h", 3, 12),
)


def story_for(rate: int, turn: int) -> SteadyRate | None:
    """Return a story in which the rate is plausible, another for the next turn, or None."""
    fits = [story for story in _STEADY if story.low <= rate <= story.high]
    return by_turns(fits, turn) if fits else None


def support_fits(kind: str, rate: int, time: int, other: int) -> bool:
    """Keep the amount for one, and for several from it."""
    if story_for(rate, 0) is None or rate == time:
        return False
    if kind == "one":
        return apart(rate, *one_wrong(rate, time))
    return apart(rate * time, *many_wrong(rate, time))


def one_wrong(rate: int, time: int) -> tuple[Fraction | None, ...]:
    """Return what MULTIPLIES and SUBTRACTS give."""
    return Fraction(rate * time * time), Fraction(abs(rate * time - time))


def many_wrong(rate: int, time: int) -> tuple[Fraction | None, ...]:
    """Return what DIVIDES and SUBTRACTS give."""
    return written(max(rate, time), min(rate, time)), Fraction(abs(rate - time))


def core_fits(kind: str, rate: int, time: int, other: int) -> bool:
    """Keep other times of the same unit, and how long an amount takes."""
    if story_for(rate, 0) is None or time == other or other % time == 0 or time % other == 0:
        return False
    if kind == "other":
        return apart(rate * other, *other_wrong(rate, time, other))
    return apart(other, *long_wrong(rate, time, other))


def other_wrong(rate: int, time: int, other: int) -> tuple[Fraction | None, ...]:
    """Return what NOT_FIRST and ADDITIVE give."""
    return Fraction(rate * time * other), Fraction(rate * time + other - time)


def long_wrong(rate: int, time: int, other: int) -> tuple[Fraction | None, ...]:
    """Return what ADDITIVE and OLD_TIME give: the wrong time."""
    return (
        Fraction(rate * other - rate * time + time),
        written(rate * other, time),
    )


def challenge_fits(kind: str, rate: int, time: int, other: int) -> bool:
    """Keep rates asked for in the longer unit of time, and speeds in another unit."""
    if kind == "longer":
        story = story_for(rate, rate + time + other)
        if story is None or story.time == "h":
            return False
        return apart(60 * rate * other, *longer_wrong(rate, time, other))
    if kind == "to m/s":
        return apart(rate, *metres_wrong(rate))
    return apart(Fraction(18 * rate, 5), *kilometres_wrong(rate))


def longer_wrong(rate: int, time: int, other: int) -> tuple[Fraction | None, ...]:
    """Return what UNITS_LOST, HUNDRED and NOT_FIRST give."""
    return Fraction(rate * other), Fraction(100 * rate * other), Fraction(60 * rate * time * other)


def metres_wrong(rate: int) -> tuple[Fraction | None, ...]:
    """Return what METRES_ONLY, TIME_ONLY and SIXTY_ONCE give for 3.6 × rate in km/h."""
    return Fraction(3600 * rate), written(rate, 1000, 4), Fraction(60 * rate)


def kilometres_wrong(rate: int) -> tuple[Fraction | None, ...]:
    """Return what TIME_ONLY, METRES_ONLY and SIXTY_ONCE give for rate in m/s."""
    return Fraction(3600 * rate), written(rate, 1000, 4), written(60 * rate, 1000)
