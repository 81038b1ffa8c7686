"""Times of day and lengths of time: by both clocks, over the hour, over noon and over midnight.

England's programme of study for key stage 3 (2013): "use standard units of mass, length, time,
money and other measures" and "change freely between related standard units (for example time …)"
(from memory).
"""

from __future__ import annotations

from typing import Any

from generators._scatter import unlike
from generators.measures._both_clocks import TEN_FOR_TWELVE, TWELVE_WRONG, kept, matched
from generators.measures._clock_mistakes import (
    HALF_KEPT,
    HOUR_LOST,
    HUNDRED,
    OTHER_WAY,
    SMALL_FROM_LARGE,
    TWELVE_NOT_ADDED,
    WAIT_LEFT_OUT,
)
from generators.measures._clocks import DAY, EVENTS, NOON, Event
from generators.measures._time_asked import Asked, how_long, two_legs, when_begun, when_over
from generators.measures._time_on_cards import with_cards
from generators.measures._time_steps import Times
from generators.ratio._units_mistakes import BY_NUMBER
from itembank.items.item import Draft, Find, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

END, START, LENGTH, LEGS = range(4)
"""What is asked for: when it ends, when it began, how long it lasts, the end of two legs."""


def _likely(event: Event, times: Times) -> bool:
    hour = times.begin // 60
    return event.first <= hour <= event.last and times.lasts <= event.longest


def _carries(times: Times) -> bool:
    """Tell whether the minutes go past a full hour, and are not those of an hour."""
    start, end = times.begin % 60, times.end % 60
    # 20 minutes apart, two mistakes come to one answer: 80 min, and 1 h 20 min.
    return 0 < end < start and start - end != 20 and times.lasts % 60 != 0


def _times(tier: Tier, kind: int, event: int, number: int) -> Times:
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
    return Times(at, lasts, halves)


def _support(kind: int, event: int, number: int) -> bool:
    times = _times(Tier.SUPPORT, kind, event, number)
    # Half an hour too far and half an hour the wrong way come to one time.
    plain = _likely(EVENTS[event], times) and times.lasts != 30
    return plain and _carries(times) and _one_half(times)


def _one_half(times: Times) -> bool:
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
        *(TWELVE_NOT_ADDED, TWELVE_WRONG, TEN_FOR_TWELVE, BY_NUMBER),
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
    spaces = with_cards(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, event, number = values
        times, told = _times(tier, kind, event, number), EVENTS[event]
        build = {END: when_over, START: when_begun, LENGTH: how_long}[kind]
        return _draft(build(told, times), (tier.value, *values))

    def legs(self, first: int, wait: int, second: int, number: int) -> Draft:
        """Return a question about a journey of two legs with a wait between them."""
        made = two_legs(_leg_begin(number), first, wait, second)
        return _draft(made, ("legs", first, wait, second, number))


def _draft(made: Asked, twin: tuple[Any, ...]) -> Draft:
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
