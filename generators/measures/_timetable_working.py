"""How questions on timetables are worked out, step by step."""

from __future__ import annotations

from generators.measures._buses import HOME, LATE, LATEST, NEXT, READ, TAKES, UNTIL, WAIT, Case
from generators.measures._clocks import at_24, clock, length
from itembank.items.item import Step
from itembank.notation import tree as t


def _on(start: int, end: int) -> list[Step]:
    """Return how to count on from one time to another: to the full hour, and on from there."""
    key = length(end - start)
    if start // 60 == end // 60:
        return [Step("Subtract the minutes.", t.equals(t.sub(clock(end), clock(start)), key))]
    hour = start + 60 - start % 60
    first, rest = length(hour - start), length(end - hour)
    steps = [Step("Count on to the next full hour.", t.equals(_gap(start, hour), first))]
    if end == hour:
        return steps
    return [
        *steps,
        Step("Count on from there.", t.equals(_gap(hour, end), rest)),
        Step("Add the two.", t.equals(t.add(first, rest), key)),
    ]


def _gap(start: int, end: int) -> t.Node:
    return t.sub(clock(end), clock(start))


def _down(case: Case) -> str:
    """Say how the time at the end of the journey is found."""
    names = [case.table.stops[place].name for place in (case.start, case.end)]
    return f"Find {at_24(case.leaves)} in the row of {names[0]}. Go down its column to {names[1]}"


def _read_steps(case: Case, halves: bool) -> list[Step]:
    return [Step(f"{_down(case)}.", clock(case.arrives))]


def _found(case: Case) -> Step:
    return Step(f"{_down(case)}: {at_24(case.arrives)}.")


def _takes_steps(case: Case, halves: bool) -> list[Step]:
    return [_found(case), *_on(case.leaves, case.arrives)]


def _by_24(case: Case, halves: bool) -> list[Step]:
    if not halves:
        return []
    told = clock(case.told, True)
    line = t.equals(told, clock(case.told))
    return [Step("Write the time by the 24-hour clock: add 12 to the hours.", line)]


def _in_time(case: Case, halves: bool) -> list[Step]:
    end = case.table.stops[case.end].name
    say = (
        f"In the row of {end}, find the last time up to {at_24(case.told)}: {at_24(case.arrives)}."
    )
    return [*_by_24(case, halves), Step(say)]


def _up(case: Case) -> str:
    return f"Go up its column to {case.table.stops[case.start].name}"


def _latest_steps(case: Case, halves: bool) -> list[Step]:
    return [*_in_time(case, halves), Step(f"{_up(case)}.", clock(case.leaves))]


def _next_bus(case: Case) -> Step:
    start = case.table.stops[case.start].name
    told, leaves = at_24(case.told), at_24(case.leaves)
    return Step(f"In the row of {start}, find the first time after {told}: {leaves}.")


def _wait_steps(case: Case, halves: bool) -> list[Step]:
    return [_next_bus(case), *_on(case.told, case.leaves)]


def _late_steps(case: Case, halves: bool) -> list[Step]:
    at, late = clock(case.arrives), t.Quantity(t.Int(case.minutes), "min")
    key = clock(case.arrives + case.minutes)
    return [_found(case), Step("It comes later than that.", t.equals(t.add(at, late), key))]


def _next_steps(case: Case, halves: bool) -> list[Step]:
    end = case.table.stops[case.end].name
    last = Step(f"Go down its column to {end}.", clock(case.arrives))
    return [*_by_24(case, halves), _next_bus(case), last]


def _until_steps(case: Case, halves: bool) -> list[Step]:
    end = case.table.stops[case.end].name
    down = Step(f"Go down its column to {end}: {at_24(case.arrives)}.")
    return [_next_bus(case), down, *_on(case.told, case.arrives)]


def _home_steps(case: Case, halves: bool) -> list[Step]:
    at, walk = clock(case.leaves), t.Quantity(t.Int(case.minutes), "min")
    line = t.equals(t.sub(at, walk), clock(case.leaves - case.minutes))
    up = Step(f"{_up(case)}: {at_24(case.leaves)}.")
    return [*_in_time(case, halves), up, Step("Leave home so much earlier.", line)]


STEPS = {
    **{READ: _read_steps, TAKES: _takes_steps, LATEST: _latest_steps, WAIT: _wait_steps},
    **{LATE: _late_steps, NEXT: _next_steps, UNTIL: _until_steps, HOME: _home_steps},
}
"""The steps of each sort of question; the flag says that a time is told by the 12-hour clock."""
