"""Timetables: when a bus is where, how long it takes, which one to catch, and how long to wait.

England's programme of study for key stage 3 (2013): "use standard units of mass, length, time,
money and other measures" and "change freely between related standard units (for example time …)"
(from memory); timetables are where pupils meet both.
"""

from __future__ import annotations

from typing import Any

from generators._scatter import scattered
from generators.measures._buses import (
    BUSES,
    HOME,
    LATE,
    LATEST,
    NEXT,
    READ,
    ROUTES,
    TAKES,
    UNTIL,
    WAIT,
    Buses,
    Case,
    buses,
)
from generators.measures._buses_told import with_told
from generators.measures._clock_mistakes import (
    HOUR_LOST,
    HUNDRED,
    SMALL_FROM_LARGE,
    WAIT_LEFT_OUT,
)
from generators.measures._clocks import NOON, clock, length
from generators.measures._timetable_mistakes import (
    ARRIVAL,
    BETWEEN,
    DEPARTURE,
    EARLY,
    GONE,
    LATE_LEFT_OUT,
    ONLY_WAIT,
    OTHER_BUS,
    OTHER_STOP,
    TOO_LATE,
    WALK_ADDED,
    WALK_LEFT_OUT,
)
from generators.measures._timetable_working import STEPS
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Misconception, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_PAIRS = ((0, 1), (0, 2), (0, 3), (1, 2), (1, 3), (2, 3))


def _case(tier: Tier, kind: int, route: int, seed: int) -> Case | None:
    """Return the numbers of a question, None where they make none."""
    table = buses(route, seed, tier is not Tier.SUPPORT and seed % 2 == 0)
    lot = scattered(31 * seed + 7 * kind + route, 4, 0, 9999)
    start, end = _PAIRS[lot[0] % len(_PAIRS)]
    if kind in (UNTIL, HOME) and end - start < 2:
        start, end = 0, 2 + lot[0] % 2
    first, last = {LATEST: (0, 1), HOME: (0, 1), WAIT: (1, 2), NEXT: (1, 2), UNTIL: (1, 2)}.get(
        kind, (0, BUSES - 1)
    )
    bus = first + lot[1] % (last - first + 1)
    if not table.calls(bus, start, end):
        return None
    case = Case(table, bus, start, end)
    if kind in (LATEST, HOME):
        after = case.other(1, end)
        if after is None or case.other(1, start) is None or after - case.arrives < 8:
            return None
        case = case._replace(told=case.arrives + 3 + lot[2] % (after - case.arrives - 5))
    if kind in (WAIT, NEXT, UNTIL):
        # A bus that goes past a stop does not count there.
        if not table.calls(bus - 1, start, end):
            return None
        gap = case.leaves - table.at(bus - 1, start)
        case = case._replace(told=case.leaves - 5 - lot[2] % (gap - 8))
    minutes = (5 + lot[3] % 20) if kind in (LATE, HOME) else 0
    return case._replace(minutes=minutes)


def _over(start: int, end: int) -> bool:
    """Tell whether a full hour lies between two times, and the minutes have to be carried."""
    return 0 < end % 60 < start % 60


def _fits(tier: Tier, kind: int, case: Case) -> bool:
    """Tell whether the hours are as a tier has them: within one hour, over the hour, by pm."""
    if kind == TAKES:
        return _over(case.leaves, case.arrives) is (tier is not Tier.SUPPORT) and (
            tier is not Tier.SUPPORT or case.leaves // 60 == case.arrives // 60
        )
    if kind == LATEST and tier is not Tier.SUPPORT:
        return case.told >= NOON + 60
    if kind == WAIT:
        return _over(case.told, case.leaves)
    if kind == LATE:
        return _over(case.arrives, case.arrives + case.minutes)
    if kind == UNTIL:
        return _over(case.told, case.arrives)
    if kind == NEXT:
        return case.told >= NOON + 60
    if kind == HOME:
        return case.told >= NOON + 60 and _over(case.leaves - case.minutes, case.leaves)
    return True


def _kept(tier: Tier) -> Any:
    def kept(kind: int, route: int, seed: int) -> bool:
        case = _case(tier, kind, route, seed)
        if case is None or not _fits(tier, kind, case):
            return False
        key, wrongs = _answers(kind, case)
        found = [wrong for _, wrong in wrongs if wrong is not None]
        return key not in found and len({*found}) == len(found) >= 2

    return kept


_Wrong = tuple[Misconception, int | None]


def _answers(kind: int, case: Case) -> tuple[int, list[_Wrong]]:
    """Return the minutes that the answer comes to, and those of likely mistakes."""
    return _ANSWERS[kind](case)


def _neighbour(case: Case) -> int | None:
    """Return when the bus is at the stop beside the one that is asked for."""
    beside = case.end + 1 if case.end + 1 < len(case.table.stops) else case.end - 1
    return None if beside == case.start else case.table.times[case.bus][beside]


def _beside(case: Case, stop: int) -> int | None:
    """Return when the bus in the next column is at a stop, or in the one before."""
    after = case.other(1, stop)
    return case.other(-1, stop) if after is None else after


def _read(case: Case) -> tuple[int, list[_Wrong]]:
    return case.arrives, [(OTHER_BUS, _beside(case, case.end)), (OTHER_STOP, _neighbour(case))]


def _minus(later: int | None, earlier: int) -> int | None:
    return None if later is None or later <= earlier else later - earlier


def _digits(start: int, end: int) -> int:
    """Return the minutes between two times for who reads 09:50 as 950."""
    return 100 * (end // 60 - start // 60) + end % 60 - start % 60


def _apart(start: int, end: int) -> list[_Wrong]:
    """Return the wrong lengths of time from one time to another, over the hour."""
    if not _over(start, end):
        return []
    hours = end // 60 - start // 60 - 1
    return [
        (HUNDRED, _digits(start, end)),
        (SMALL_FROM_LARGE, 60 * hours + start % 60 - end % 60),
    ]


def _takes(case: Case) -> tuple[int, list[_Wrong]]:
    start, end = case.leaves, case.arrives
    wrongs = _apart(start, end)
    if not wrongs:
        wrongs = [(OTHER_BUS, _minus(case.other(1, case.end), start))]
        wrongs.append((OTHER_STOP, _minus(_neighbour(case), start)))
    return end - start, wrongs


def _latest(case: Case) -> tuple[int, list[_Wrong]]:
    return case.leaves, [(TOO_LATE, case.other(1, case.start)), (ARRIVAL, case.arrives)]


def _wait(case: Case) -> tuple[int, list[_Wrong]]:
    gone = case.other(-1, case.start)
    wrongs: list[_Wrong] = [(GONE, None if gone is None else case.told - gone)]
    return case.leaves - case.told, [*wrongs, *_apart(case.told, case.leaves)]


def _late(case: Case) -> tuple[int, list[_Wrong]]:
    at, late = case.arrives, case.minutes
    return at + late, [(LATE_LEFT_OUT, at), (EARLY, at - late), (HOUR_LOST, at + late - 60)]


def _next(case: Case) -> tuple[int, list[_Wrong]]:
    return case.arrives, [(GONE, case.other(-1, case.end)), (DEPARTURE, case.leaves)]


def _until(case: Case) -> tuple[int, list[_Wrong]]:
    return case.arrives - case.told, [
        (WAIT_LEFT_OUT, case.arrives - case.leaves),
        (ONLY_WAIT, case.leaves - case.told),
        *_apart(case.told, case.arrives),
    ]


def _home(case: Case) -> tuple[int, list[_Wrong]]:
    late = case.other(1, case.start)
    return case.leaves - case.minutes, [
        (WALK_LEFT_OUT, case.leaves),
        (WALK_ADDED, case.leaves + case.minutes),
        (TOO_LATE, None if late is None else late - case.minutes),
    ]


_ANSWERS = {
    **{READ: _read, TAKES: _takes, LATEST: _latest, WAIT: _wait},
    **{LATE: _late, NEXT: _next, UNTIL: _until, HOME: _home},
}
_QUESTIONS = {
    READ: "At what time does the {a} bus from [from] arrive at [to]?",
    TAKES: "How long does the {a} bus from [from] take to get to [to]?",
    LATEST: "What is the latest time you can leave [from] by bus to be at [to] by {a}?",
    WAIT: "If you get to [from] at {a}, how long do you wait for the next bus to [to]?",
    LATE: "The {a} bus from [from] is {m} late all the way, so at what time does it arrive at "
    "[to]?",
    NEXT: "If you get to [from] at {a} and take the next bus, at what time do you arrive at [to]?",
    UNTIL: "If you get to [from] at {a} and take the next bus, how long is it from then until you "
    "arrive at [to]?",
    HOME: "If it takes you {m} to walk to [from], what is the latest time you can leave home to be "
    "at [to] by {a}?",
}
_LENGTHS = (TAKES, WAIT, UNTIL)
"""What is answered by a length of time."""
_BY_TWELVE = (LATEST, NEXT, HOME)
"""What tells a time by the 12-hour clock, after support."""


@register
class Timetables(Topic):
    """A time, a journey, the latest bus; over the hour, waits, pm; several of these at once."""

    id = "measures.timetables"
    title = "Timetables"
    statements = ("number.units", "ratio.units")
    prerequisites = ("measures.time",)
    misconceptions = (
        *(OTHER_BUS, OTHER_STOP, TOO_LATE, ARRIVAL, DEPARTURE, GONE, LATE_LEFT_OUT, EARLY),
        *(WALK_LEFT_OUT, WALK_ADDED, WAIT_LEFT_OUT, ONLY_WAIT, HOUR_LOST, HUNDRED),
        *(SMALL_FROM_LARGE, BETWEEN),
    )
    spaces = {
        tier: Space(_kept(tier), kind=asked, route=range(len(ROUTES)), seed=range(1, most))
        for tier, asked, most in (
            (Tier.SUPPORT, (READ, TAKES, LATEST), 60),
            (Tier.CORE, (TAKES, LATEST, WAIT, LATE, NEXT), 100),
            (Tier.CHALLENGE, (UNTIL, HOME), 200),
        )
    }
    spaces = with_told(kinds.with_statements(spaces))

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, route, seed = values
        case = _case(tier, kind, route, seed)
        assert case is not None, "the filter keeps what makes a question"
        halves = tier is not Tier.SUPPORT and kind in _BY_TWELVE
        told = clock(case.leaves if kind in (READ, TAKES, LATE) else case.told, halves)
        shown: dict[str, t.Node] = {"a": told}
        if case.minutes:
            shown["m"] = t.Quantity(t.Int(case.minutes), "min")
        question = _QUESTIONS[kind]
        for name, said in case.way.items():
            question = question.replace(f"[{name}]", said)
        text = prompt(f"The timetable shows buses {_route(case.table)}. {question}", **shown)
        value, wrongs = _answers(kind, case)
        write = length if kind in _LENGTHS else clock
        figure = case.table.figure
        key = write(value)
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "quantity" if kind in _LENGTHS else "value",
            tuple(STEPS[kind](case, halves)),
            slips(*((m, None if n is None else write(n)) for m, n in wrongs), key=key),
            (tier.value, kind, route, seed),
            figure=figure,
            constants=(60,),
        )


def _route(table: Buses) -> str:
    return f"from {table.stops[0].said} to {table.stops[-1].said}"
