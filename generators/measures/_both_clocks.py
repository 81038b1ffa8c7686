"""Times by the 24-hour clock and the 12-hour clock, to be matched with each other."""

from __future__ import annotations

from generators._scatter import unlike
from generators.measures._clocks import NOON, clock
from itembank.items import kinds
from itembank.items.item import Draft, Misconception, Step, Tier
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

TWELVE_WRONG = Misconception(
    "measures.time-twelve-wrong",
    "takes midnight for noon, or noon for midnight",
    "What comes one minute before 12 pm?",
)
TEN_FOR_TWELVE = Misconception(
    "measures.time-ten-for-twelve",
    "takes 10 away from the hours instead of 12",
    "What is 13:00 by the 12-hour clock? How far is that from 13?",
)


def _times(number: int) -> tuple[int, int, int]:
    """Return a time in the morning, one in the afternoon, and one in the hour from 12."""
    morning, afternoon, twelve, half = unlike(number, 4, 0, 11)
    # From 13:00 to 21:00, so that who takes 10 away finds a time of the 12-hour clock.
    return (
        60 * (1 + morning % 9) + 5 * afternoon,
        NOON + 60 * (1 + afternoon % 9) + 5 * morning,
        NOON * (half % 2) + 5 * twelve,
    )


def matched(topic: Topic, tier: Tier, number: int) -> Draft:
    """Return three times to match with the same by the other clock, and two that match none."""
    times = _times(number)
    _, afternoon, twelve = times
    pairs = [(clock(at), clock(at, True)) for at in times]
    spare = (clock(twelve + NOON, True), clock(afternoon + 120, True))
    steps = [Step(_why(at), t.equals(clock(at), clock(at, True))) for at in times]
    return kinds.match_pairs(
        pairs,
        spare,
        card="time",
        partner="the same time by the other clock",
        mistakes=(
            kinds.CardMistake(TWELVE_WRONG, 2, 3),
            kinds.CardMistake(TEN_FOR_TWELVE, 1, 4),
        ),
        steps=tuple(steps),
        twin=("clocks", *times),
    )


def _why(at: int) -> str:
    if at < 60:
        return "The hour after midnight is 12, am."
    if at < NOON:
        return "Before noon the hours stay as they are."
    return (
        "The hour after noon is 12, pm." if at < NOON + 60 else "Take 12 from the hours after 12."
    )


def kept(number: int) -> bool:
    """Keep times that differ in their minutes, and in their hours."""
    times = _times(number)
    shown = [*times, times[2] + NOON, times[1] + 120]
    return len({at % 60 for at in times}) == 3 and len({at % (2 * NOON) for at in shown}) == 5
