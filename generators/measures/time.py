"""Times of day and lengths of time: by both clocks, over the hour, over noon and over midnight.

England's programme of study for key stage 3 (2013): "use standard units of mass, length, time,
money and other measures" and "change freely between related standard units (for example time …)"
(from memory).
"""

from __future__ import annotations

from typing import Any, NamedTuple

from generators._scatter import unlike
from generators.measures._both_clocks import TEN_FOR_TWELVE, TWELVE_WRONG, kept, matched
from generators.measures._clock_mistakes import (
    HOUR_LOST,
    HUNDRED,
    SMALL_FROM_LARGE,
    WAIT_LEFT_OUT,
)
from generators.measures._clocks import DAY, EVENTS, NOON, Event, clock, length
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

OTHER_WAY = Misconception(
    "measures.time-other-way",
    "goes the wrong way through the day",
    "Is the answer earlier or later than the time you know?",
)
HALF_KEPT = Misconception(
    "measures.time-half-kept",
    "goes past 12 and does not change between am and pm",
    "What comes after 11:59 am? What comes after 11:59 pm?",
)
TWELVE_NOT_ADDED = Misconception(
    "measures.time-twelve-not-added",
    "reads an afternoon time as if it were before noon",
    "What is that time by the 24-hour clock?",
)

END, START, LENGTH, LEGS = range(4)
"""What is asked for: when it ends, when it began, how long it lasts, the end of two legs."""


class _Times(NamedTuple):
    """A question's numbers: minutes after midnight, and minutes that it lasts.

    `halves` tells for beginning and end whether it is by the 12-hour clock.
    """

    begin: int
    lasts: int
    halves: tuple[bool, bool]

    @property
    def end(self) -> int:
        return self.begin + self.lasts


def _likely(event: Event, times: _Times) -> bool:
    hour = times.begin // 60
    return event.first <= hour <= event.last and times.lasts <= event.longest


def _carries(times: _Times) -> bool:
    """Tell whether the minutes go past a full hour, and are not those of an hour."""
    start, end = times.begin % 60, times.end % 60
    # 20 minutes apart, two mistakes come to one answer: 80 min, and 1 h 20 min.
    return 0 < end < start and start - end != 20 and times.lasts % 60 != 0


def _times(tier: Tier, kind: int, event: int, number: int) -> _Times:
    """Return the times of a question: those that one number stands for, the same for ever."""
    told = EVENTS[event]
    if tier is Tier.SUPPORT:
        low, high = 15, 55
    elif tier is Tier.CORE:
        low, high = 65, min(told.longest, 235)
    else:
        low, high = 65, min(told.longest, 415)
    first, last = told.first, told.last
    if tier is Tier.CHALLENGE and kind in (END, START):
        first, last = 20, max(last, 20)
    hours, spans = last - first + 1, max(1, (high - low) // 5 + 1)
    # Each number stands for other times: what there is is counted through in wide steps.
    (rest,) = unlike(number + 17 * kind, 1, 0, hours * 12 * spans * 2 - 1)
    rest, half = divmod(rest, 2)
    rest, minute = divmod(rest, 12)
    span, hour = divmod(rest, hours)
    at, lasts = 60 * (first + hour) + 5 * minute, 5 * (-(-low // 5) + span)
    halves = (half == 0,) * 2
    if tier is Tier.CHALLENGE and kind == LENGTH:
        # One time by each clock, so that they have to be put alike.
        halves = (True, False) if half == 0 else (False, True)
    return _Times(at, lasts, halves)


def _support(kind: int, event: int, number: int) -> bool:
    times = _times(Tier.SUPPORT, kind, event, number)
    # Half an hour too far and half an hour the wrong way come to one time.
    plain = _likely(EVENTS[event], times) and times.lasts != 30
    return plain and _carries(times) and _one_half(times)


def _one_half(times: _Times) -> bool:
    return times.begin // NOON == times.end // NOON


def _core(kind: int, event: int, number: int) -> bool:
    times = _times(Tier.CORE, kind, event, number)
    over_noon = times.begin < NOON < times.end < NOON + 12 * 60
    return (
        _likely(EVENTS[event], times)
        and _carries(times)
        and times.end < DAY
        and (over_noon or not times.halves[0])
    )


def _challenge(kind: int, event: int, number: int) -> bool:
    times = _times(Tier.CHALLENGE, kind, event, number)
    if not _likely(EVENTS[event], times) or not _carries(times):
        return False
    if kind == LENGTH:
        # The afternoon time is the one by the 12-hour clock or after it.
        return times.end < DAY and times.begin < NOON and times.end >= NOON + 60
    return times.begin < DAY < times.end and times.end % DAY != 0


def _legs(first: int, wait: int, second: int, number: int) -> bool:
    """Keep two legs with a wait that end on the same day, past full hours."""
    begin = _leg_begin(number)
    return (
        first != second
        and begin + first + wait + second < DAY - 30
        and (begin + first + wait + second) % 60 not in (0, begin % 60)
        and (first * 7 + wait * 3 + second + number) % 5 == 0
    )


def _leg_begin(number: int) -> int:
    (rest,) = unlike(number, 1, 0, 13 * 12 - 1)
    return 60 * (6 + rest // 12) + 5 * (rest % 12)


@register
class Time(Topic):
    """Minutes over the hour; hours and minutes, over noon; over midnight, by both clocks, waits."""

    id = "measures.time"
    title = "Time of day and lengths of time"
    statements = ("number.units", "ratio.units")
    prerequisites = ("ratio.convert-units",)
    misconceptions = (
        *(HOUR_LOST, HUNDRED, SMALL_FROM_LARGE, OTHER_WAY, HALF_KEPT, WAIT_LEFT_OUT),
        *(TWELVE_NOT_ADDED, TWELVE_WRONG, TEN_FOR_TWELVE),
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support, kind=(END, LENGTH), event=range(len(EVENTS)), number=range(1, 110)
        ).also(matched, kept, number=range(1, 161)),
        Tier.CORE: Space(
            _core, kind=(END, START, LENGTH), event=range(len(EVENTS)), number=range(1, 110)
        ),
        Tier.CHALLENGE: Space(
            _challenge, kind=(END, START, LENGTH), event=range(len(EVENTS)), number=range(1, 70)
        ).also(
            lambda topic, tier, *values: topic.legs(*values),
            _legs,
            first=range(25, 60, 5),
            wait=range(10, 30, 5),
            second=range(65, 130, 5),
            number=range(1, 9),
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, event, number = values
        times, told = _times(tier, kind, event, number), EVENTS[event]
        build = {END: _when_over, START: _when_begun, LENGTH: _how_long}[kind]
        return _draft(build(told, times), (tier.value, *values))

    def legs(self, first: int, wait: int, second: int, number: int) -> Draft:
        """Return a question about a journey of two legs with a wait between them."""
        made = _two_legs(_leg_begin(number), first, wait, second)
        return _draft(made, ("legs", first, wait, second, number))


class _Made(NamedTuple):
    text: str
    shown: dict[str, t.Node]
    target: t.Node
    key: t.Node
    steps: list[Step]
    wrongs: list[tuple[Misconception, t.Node | None]]


def _draft(made: _Made, twin: tuple[Any, ...]) -> Draft:
    form = "value" if isinstance(made.key, t.ClockTime) else "quantity"
    return Draft(
        prompt(made.text, **made.shown),
        Find(made.target),
        made.key,
        form,
        tuple(made.steps),
        slips(*made.wrongs, key=made.key),
        twin,
        constants=(60,),
    )


def _plus(minutes: int, lasts: int, halves: bool) -> t.Relation:
    """Return the line that adds a length of time to a time of day."""
    return t.equals(t.add(clock(minutes, halves), length(lasts)), clock(minutes + lasts, halves))


def _minus(minutes: int, lasts: int, halves: bool) -> t.Relation:
    return t.equals(t.sub(clock(minutes, halves), length(lasts)), clock(minutes - lasts, halves))


def _on(times: _Times) -> list[Step]:
    """Return the steps from the beginning to the end: hours first, then over the full hour."""
    at, (hours, minutes), halves = times.begin, divmod(times.lasts, 60), times.halves[0]
    steps = []
    if hours:
        steps.append(Step("Add the hours.", _plus(at, 60 * hours, halves)))
        at += 60 * hours
    over = 60 - at % 60
    steps.append(Step("Go on to the next full hour.", _plus(at, over, halves)))
    if minutes > over:
        steps.append(Step("Add the rest of the minutes.", _plus(at + over, minutes - over, halves)))
    return steps


def _back(times: _Times) -> list[Step]:
    """Return the steps from the end to the beginning: hours first, then back over the hour."""
    at, (hours, minutes), halves = times.end, divmod(times.lasts, 60), times.halves[1]
    steps = []
    if hours:
        steps.append(Step("Take away the hours.", _minus(at, 60 * hours, halves)))
        at -= 60 * hours
    back = at % 60
    steps.append(Step("Go back to the full hour.", _minus(at, back, halves)))
    steps.append(
        Step("Take away the rest of the minutes.", _minus(at - back, minutes - back, halves))
    )
    return steps


def _other_half(minutes: int, halves: bool) -> t.ClockTime | None:
    """Return a time by the 12-hour clock in the wrong half of the day."""
    return clock(minutes + NOON, True) if halves else None


def _when_over(told: Event, times: _Times) -> _Made:
    begin, lasts, halves = times.begin, times.lasts, times.halves[0]
    crossed = begin // NOON != times.end // NOON
    start, span = clock(begin, halves), length(lasts)
    return _Made(
        told.begins + told.lasts + told.when_over,
        {"a": start, "d": span},
        t.add(start, span),
        clock(times.end, halves),
        _on(times),
        [
            (HOUR_LOST, clock(times.end - 60, halves)),
            (OTHER_WAY, clock(begin - lasts, halves)),
            (HALF_KEPT, _other_half(times.end, halves) if crossed else None),
        ],
    )


def _when_begun(told: Event, times: _Times) -> _Made:
    end, lasts, halves = times.end, times.lasts, times.halves[1]
    crossed = times.begin // NOON != end // NOON
    over, span = clock(end, halves), length(lasts)
    return _Made(
        told.ends + told.lasted + told.when_begun,
        {"b": over, "d": span},
        t.sub(over, span),
        clock(times.begin, halves),
        _back(times),
        [
            (HOUR_LOST, clock(times.begin + 60, halves)),
            (OTHER_WAY, clock(end + lasts, halves)),
            (HALF_KEPT, _other_half(times.begin, halves) if crossed else None),
        ],
    )


def _how_long(told: Event, times: _Times) -> _Made:
    begin, end = times.begin, times.end
    start, over = (clock(at, half) for at, half in zip((begin, end), times.halves, strict=True))
    key = length(times.lasts)
    steps = []
    start_24, end_24 = start, over
    if times.halves[0] != times.halves[1]:
        start_24, end_24 = clock(begin), clock(end)
        what, at = ("ends", end) if times.halves[1] else ("begins", begin)
        steps.append(Step(f"By the 24-hour clock it {what} at {_said(at)}."))
    halves = times.halves[0] and times.halves[1]
    over_hour = 60 - begin % 60
    next_hour = clock(begin + over_hour, halves)
    first, rest = length(over_hour), length(times.lasts - over_hour)
    steps += [
        Step("Count on to the next full hour.", t.equals(t.sub(next_hour, start_24), first)),
        Step("Count on from there.", t.equals(t.sub(end_24, next_hour), rest)),
        Step("Add the two.", t.equals(t.add(first, rest), key)),
    ]
    # Hours and minutes as they stand side by side, taken away by themselves.
    hours, minutes = end // 60 - begin // 60, begin % 60 - end % 60
    digits = 100 * hours - minutes
    hundred = _parts(*divmod(digits, 100))
    mixed = times.halves[1] and not times.halves[0]
    return _Made(
        told.both + told.how_long,
        {"a": start, "b": over},
        t.sub(over, start),
        key,
        steps,
        [
            (HUNDRED, hundred),
            (SMALL_FROM_LARGE, _parts(hours, minutes)),
            (TWELVE_NOT_ADDED, length(abs(end - NOON - begin)) if mixed else None),
        ],
    )


def _parts(hours: int, minutes: int) -> t.Node:
    """Return hours and minutes as a pupil writes them, carried or not."""
    if not hours:
        return t.Quantity(t.Int(minutes), "min")
    return t.MixedUnits((t.Quantity(t.Int(hours), "h"), t.Quantity(t.Int(minutes), "min")))


def _said(minutes: int) -> str:
    return f"{minutes // 60:02d}:{minutes % 60:02d}"


def _two_legs(begin: int, first: int, wait: int, second: int) -> _Made:
    start, spans = clock(begin), (length(first), length(wait), length(second))
    at, total = begin, first + wait + second
    steps = []
    for say, span in zip(
        ("It comes to the market.", "It leaves the market.", "It is back at the depot."),
        (first, wait, second),
        strict=True,
    ):
        steps.append(Step(say, _plus(at, span, False)))
        at += span
    return _Made(
        "A bus leaves the depot at {a} and takes {d} to the market. There its driver waits for "
        "{w}. The drive back takes {e}. At what time is the bus back at the depot?",
        {"a": start, "d": spans[0], "w": spans[1], "e": spans[2]},
        t.add(start, *spans),
        clock(begin + total),
        steps,
        [
            (WAIT_LEFT_OUT, clock(begin + total - wait)),
            (HOUR_LOST, clock(begin + total - 60)),
        ],
    )
