"""A beginning and a length of time, and the steps from one end to the other over full hours."""

from __future__ import annotations

from typing import NamedTuple

from generators.measures._clocks import clock, length
from itembank.items.item import Step
from itembank.notation import tree as t


class Times(NamedTuple):
    """A question's numbers: minutes after midnight, and minutes that it lasts.

    `halves` tells for beginning and end whether it is by the 12-hour clock.
    """

    begin: int
    lasts: int
    halves: tuple[bool, bool]

    @property
    def end(self) -> int:
        return self.begin + self.lasts


def time_plus(minutes: int, lasts: int, halves: bool) -> t.Relation:
    """Return the line that adds a length of time to a time of day."""
    return t.equals(t.add(clock(minutes, halves), length(lasts)), clock(minutes + lasts, halves))


def time_minus(minutes: int, lasts: int, halves: bool) -> t.Relation:
    return t.equals(t.sub(clock(minutes, halves), length(lasts)), clock(minutes - lasts, halves))


def steps_on(times: Times) -> list[Step]:
    """Return the steps from the beginning to the end: hours first, then over the full hour."""
    at, (hours, minutes), halves = times.begin, divmod(times.lasts, 60), times.halves[0]
    steps = []
    if hours:
        steps.append(Step("Add the hours.", time_plus(at, 60 * hours, halves)))
        at += 60 * hours
    over = 60 - at % 60
    steps.append(Step("Go on to the next full hour.", time_plus(at, over, halves)))
    if minutes > over:
        steps.append(
            Step("Add the rest of the minutes.", time_plus(at + over, minutes - over, halves))
        )
    return steps


def steps_back(times: Times) -> list[Step]:
    """Return the steps from the end to the beginning: hours first, then back over the hour."""
    at, (hours, minutes), halves = times.end, divmod(times.lasts, 60), times.halves[1]
    steps = []
    if hours:
        steps.append(Step("Take away the hours.", time_minus(at, 60 * hours, halves)))
        at -= 60 * hours
    back = at % 60
    steps.append(Step("Go back to the full hour.", time_minus(at, back, halves)))
    steps.append(
        Step("Take away the rest of the minutes.", time_minus(at - back, minutes - back, halves))
    )
    return steps
