"""Distance–time graphs: places and stops read off, speeds of stages, average speeds, meetings.

England's programme of study for key stage 3 (2013) asks pupils to interpret "graphs of real
situations" and to "use compound units such as speed" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.graphs._distance_time_mistakes import (
    COUNTS_SQUARES,
    DISTANCE_GIVEN,
    END_READ,
    FROM_PLACE,
    MEAN_OF_SPEEDS,
    MINUTES_KEPT,
    ONE_WAY,
    OTHER_AXIS,
    SINCE_LATER_START,
    SINCE_START,
    STOP_BEGINS,
    STOP_ENDS,
    STOP_LEFT_OUT,
)
from generators.graphs._journey_asked import Asked, lead_of, said
from generators.graphs._journey_speeds import (
    average_speed,
    distance_in_all,
    first_speed,
    last_speed,
    later_speed,
)
from generators.graphs._journeys import COLUMNS, ROWS, TRAVELLERS, Traveller, graph, number, spots
from generators.graphs._journeys_meeting import meeting
from generators.graphs._journeys_told import with_told
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.kinds import line_edits as e
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t
from itembank.text.in_words import counted


def _thin(every: int, *values: int) -> bool:
    """Keep about one point in so many, and those that lie apart."""
    mixed = 0
    for value in values:
        mixed = mixed * 31 + value + 8
    return mixed % every == 0


def _told(made: Asked) -> bool:
    """Tell whether at least two mistakes show, each by an answer of its own.

    A question that names 1 would need its unit in the singular, and is left out.
    """
    if t.Int(1) in made.shown.values():
        return False
    return len({wrong for _, wrong in made.wrongs if _shown(wrong)} - {made.key}) > 1


def _shown(wrong: Fraction | int | None) -> bool:
    return bool(wrong) and 1000 % Fraction(wrong or 1).denominator == 0


def _one(who: int, along: int, up: int, stop: int, more: int, on: int) -> bool:
    """Tell whether a journey with one stop is likely, and on the graph."""
    traveller = TRAVELLERS[who]
    speeds = (traveller.speed(up, along), traveller.speed(on, more))
    return (
        along + stop + more <= COLUMNS
        and up + on <= ROWS
        and all(map(traveller.fits, speeds))
        and speeds[0] != speeds[1]
    )


def _support(ask: int, who: int, along: int, up: int, stop: int, more: int, on: int) -> bool:
    return (
        _one(who, along, up, stop, more, on)
        # The stop is not as long as the way to it, so that reading one end of it shows.
        and along != stop
        and _thin(3, ask, who, along, up, stop, more, on)
        and _told((_where, _how_long, _when)[ask](TRAVELLERS[who], along, up, stop, more, on))
    )


def _core(ask: int, who: int, along: int, up: int, stop: int, more: int, on: int) -> bool:
    return (
        _one(who, along, up, stop, more, on)
        and (ask == 2) == (on < 0)
        and (on > 0 or up + on == 0)
        and _thin(3, ask, who, along, up, stop, more, on)
        and _told(
            (first_speed, last_speed, distance_in_all)[ask](
                TRAVELLERS[who], along, up, stop, more, on
            )
        )
    )


def _challenge(ask: int, who: int, along: int, up: int, stop: int, more: int, on: int) -> bool:
    traveller = TRAVELLERS[who]
    if not _one(who, along, up, stop, more, on) or not (on > 0 or up + on == 0):
        return False
    whole = traveller.speed(up + abs(on), along + stop + more)
    middle = (traveller.speed(up, along) + traveller.speed(on, more)) / 2
    if ask == 0:
        kept = whole.denominator == 1 and whole != middle and _thin(2, who, along, up, stop, more)
    else:
        kept = _thin(3, ask, who, along, up, stop, more, on)
    return kept and _told((average_speed, later_speed)[ask](traveller, along, up, stop, more, on))


def _meet(who: int, at: int, high: int, late: int, longer: int) -> bool:
    """Tell whether two set off, the second later and faster, and meet on the graph."""
    traveller = TRAVELLERS[who]
    # Lines that run close to each other leave no room for their letters.
    if late >= at or late < 2 or (at == 8 and late < 4):
        return False
    speeds = (traveller.speed(high, at), traveller.speed(high, at - late))
    end = Fraction(at * longer, 2), Fraction(high * longer, 2)
    return (
        all(map(traveller.fits, speeds))
        and end[0] <= COLUMNS
        and end[1] <= ROWS
        and all(part.denominator == 1 for part in (*end, Fraction((at - late) * longer, 2)))
        and at * traveller.x_step != high * traveller.y_step
    )


@register
class DistanceTime(Topic):
    """Readings; speeds of stages, whole ways and meetings; then average speeds and late stages."""

    id = "graphs.distance-time"
    title = "Distance–time graphs"
    statements = ("algebra.real-life-graphs", "ratio.compound-units")
    prerequisites = ("graphs.coordinates", "ratio.speed")
    misconceptions = (
        *(COUNTS_SQUARES, END_READ, STOP_ENDS, STOP_BEGINS, MINUTES_KEPT, DISTANCE_GIVEN),
        *(SINCE_START, FROM_PLACE, ONE_WAY, OTHER_AXIS, STOP_LEFT_OUT, MEAN_OF_SPEEDS),
        SINCE_LATER_START,
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support,
            ask=range(3),
            who=range(len(TRAVELLERS)),
            along=range(2, 6),
            up=range(2, 6),
            stop=range(1, 4),
            more=range(2, 5),
            on=range(1, 5),
        ),
        Tier.CORE: Space(
            _core,
            ask=range(3),
            who=range(len(TRAVELLERS)),
            along=range(2, 7),
            up=range(2, 7),
            stop=range(1, 4),
            more=range(2, 6),
            on=(1, 2, 3, 4, -2, -3, -4, -5, -6),
        ).also(
            lambda topic, tier, *values: topic.made(tier, meeting(*values), ("meet", *values)),
            _meet,
            who=range(len(TRAVELLERS)),
            at=range(4, 11),
            high=range(2, 7),
            late=range(1, 5),
            longer=(3, 4),
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            ask=range(2),
            who=range(len(TRAVELLERS)),
            along=range(2, 7),
            up=range(2, 7),
            stop=range(1, 4),
            more=range(2, 6),
            on=(1, 2, 3, 4, -2, -3, -4, -5, -6),
        ),
    }
    spaces = with_told(kinds.with_statements(spaces))
    spaces = kinds.with_working_spotted(
        spaces,
        "graphs.distance-time",
        kinds.working_goes_wrong(
            {
                MINUTES_KEPT: (e.everywhere(e.left_out),),
                SINCE_START: (e.everywhere(e.left_out),),
                FROM_PLACE: (e.everywhere(e.left_out),),
            }
        ),
    )
    spaces = kinds.with_people_asked(spaces, "graphs.distance-time")

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        ask, who, *sizes = values
        builds = {
            Tier.SUPPORT: (_where, _how_long, _when),
            Tier.CORE: (first_speed, last_speed, distance_in_all),
            Tier.CHALLENGE: (average_speed, later_speed),
        }[tier]
        return self.made(tier, builds[ask](TRAVELLERS[who], *sizes), values)

    def made(self, tier: Tier, made: Asked, twin: tuple[Any, ...]) -> Draft:
        """Return the draft of a question."""
        text = prompt(made.text, **made.shown)
        key = number(made.key)
        wrongs = [
            (mistake, number(wrong) if wrong is not None and _shown(wrong) else None)
            for mistake, wrong in made.wrongs
        ]
        return Draft(
            text,
            of_figure(made.figure, text),
            key,
            "value",
            tuple(made.steps),
            slips(*wrongs, key=key),
            (tier.value, *twin),
            constants=(60,),
            figure=made.figure,
        )


def _where(who: Traveller, along: int, up: int, stop: int, more: int, on: int) -> Asked:
    """Ask for the distance halfway through the first stage, or in the middle of the stop."""
    at_stop = (along + up + more) % 3 == 0
    time = Fraction(2 * along + stop, 2) if at_stop else Fraction(along, 2)
    high = Fraction(up) if at_stop else Fraction(up, 2)
    if (2 * time).denominator != 1:
        time = Fraction(along)
        high = Fraction(up)
    key = high * who.y_step
    shown = time * who.x_step
    text = lead_of(who) + f"How many {who.unit} from the {who.place} is the {who.who} after {{n}} "
    return Asked(
        f"{text}{who.time}?",
        {"n": number(shown)},
        graph(who, ("", spots(along, up, stop, more, on))),
        key,
        [
            Step(f"Go up from {said(shown)} {who.time} to the graph."),
            Step(f"Go across to the distance. A square is {who.y_step} {who.symbol}.", number(key)),
        ],
        [
            (COUNTS_SQUARES, high),
            (END_READ, (up + on) * who.y_step),
            (OTHER_AXIS, shown),
        ],
    )


def _how_long(who: Traveller, along: int, up: int, stop: int, more: int, on: int) -> Asked:
    starts, ends = along * who.x_step, (along + stop) * who.x_step
    key = Fraction(stop * who.x_step)
    return Asked(
        lead_of(who) + f"For how many {who.time} does the {who.who} stop?",
        {},
        graph(who, ("", spots(along, up, stop, more, on))),
        key,
        [
            Step(f"Where the graph is level, the {who.who} does not move."),
            Step(
                f"It is level from {starts} to {ends} {who.time}.",
                t.equals(t.sub(t.Int(ends), t.Int(starts)), number(key)),
            ),
        ],
        [(STOP_ENDS, ends), (STOP_BEGINS, starts), (COUNTS_SQUARES, stop)],
    )


def _when(who: Traveller, along: int, up: int, stop: int, more: int, on: int) -> Asked:
    """Ask for the time at the middle of the first stage, or at the end of the journey."""
    last = (along + stop + on) % 2 == 0
    time = Fraction(along + stop + more) if last else Fraction(along, 2)
    high = Fraction(up + on) if last else Fraction(up, 2)
    shown, key = high * who.y_step, time * who.x_step
    ends = (along + stop + more) * who.x_step
    return Asked(
        lead_of(who)
        + f"After how many {who.time} is the {who.who} {{n}} {who.unit} from the {who.place}?",
        {"n": number(shown)},
        graph(who, ("", spots(along, up, stop, more, on))),
        key,
        [
            Step(f"Go across from {said(shown)} {who.symbol} to the graph."),
            Step(
                f"Go down to the time. A square is {counted(who.x_step, who.time[:-1])}.",
                number(key),
            ),
        ],
        [(COUNTS_SQUARES, time), (END_READ, ends), (OTHER_AXIS, shown)],
    )
