"""Distance–time graphs: places and stops read off, speeds of stages, average speeds, meetings.

England's programme of study for key stage 3 (2013) asks pupils to interpret "graphs of real
situations" and to "use compound units such as speed" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any, NamedTuple

from generators.graphs._journeys import (
    COLUMNS,
    ROWS,
    TRAVELLERS,
    Spot,
    Traveller,
    graph,
    number,
    spots,
)
from itembank.figures.kinds.coordinate_grid import CoordinateGrid
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t
from itembank.text.in_words import counted

COUNTS_SQUARES = Misconception(
    "graphs.journey-counts-squares",
    "counts squares, and does not look at the scale",
    "How much is one square worth along this axis?",
)
END_READ = Misconception(
    "graphs.journey-end-read",
    "reads off the end of the journey",
    "Which part of the journey is the question about? Put your finger on it.",
)
STOP_ENDS = Misconception(
    "graphs.journey-stop-ends",
    "says when the stop ends, not how long it lasts",
    "When does the stop begin? When does it end? How long is that?",
)
STOP_BEGINS = Misconception(
    "graphs.journey-stop-begins",
    "says when the stop begins, not how long it lasts",
    "When does the stop begin? When does it end? How long is that?",
)
MINUTES_KEPT = Misconception(
    "graphs.journey-minutes-kept",
    "divides by minutes and calls it an hour",
    "Your speed is for each minute. How far is that in an hour?",
)
DISTANCE_GIVEN = Misconception(
    "graphs.journey-distance-given",
    "gives the distance as the speed",
    "How long did it take to go that far? How far is it in one unit of time?",
)
SINCE_START = Misconception(
    "graphs.journey-time-since-start",
    "divides by the time since the start",
    "When does this stage begin, and when does it end?",
)
FROM_PLACE = Misconception(
    "graphs.journey-distance-from-start",
    "takes the distance from the start for the length of the stage",
    "How far is it from the start when this stage begins?",
)
ONE_WAY = Misconception(
    "graphs.journey-one-way",
    "counts the way there and not the way back",
    "Where does the journey end? How did it get there?",
)
OTHER_AXIS = Misconception(
    "graphs.journey-other-axis",
    "reads the other axis",
    "Which axis shows what you are asked for?",
)
SINCE_LATER_START = Misconception(
    "graphs.journey-since-later-start",
    "counts the time from when the second one sets off",
    "From when does the axis count the time?",
)
STOP_LEFT_OUT = Misconception(
    "graphs.journey-stop-left-out",
    "leaves the stop out of the time",
    "How long is it from the start to the end? Does the clock stop when the journey does?",
)
MEAN_OF_SPEEDS = Misconception(
    "graphs.journey-mean-of-speeds",
    "finds the mean of the two speeds",
    "How far is it in all? How long does it all take?",
)


class _Made(NamedTuple):
    """A question, the numbers in it, its figure, key, working and wrong answers."""

    text: str
    shown: dict[str, t.Node]
    figure: CoordinateGrid
    key: Fraction
    steps: list[Step]
    wrongs: list[tuple[Misconception, Fraction | int | None]]


def _thin(every: int, *values: int) -> bool:
    """Keep about one point in so many, and those that lie apart."""
    mixed = 0
    for value in values:
        mixed = mixed * 31 + value + 8
    return mixed % every == 0


def _told(made: _Made) -> bool:
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
            (_first_speed, _last_speed, _in_all)[ask](TRAVELLERS[who], along, up, stop, more, on)
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
    return kept and _told((_average, _later_speed)[ask](traveller, along, up, stop, more, on))


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
            lambda topic, tier, *values: topic.made(tier, _meeting(*values), ("meet", *values)),
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
    spaces = kinds.with_statements(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        ask, who, *sizes = values
        builds = {
            Tier.SUPPORT: (_where, _how_long, _when),
            Tier.CORE: (_first_speed, _last_speed, _in_all),
            Tier.CHALLENGE: (_average, _later_speed),
        }[tier]
        return self.made(tier, builds[ask](TRAVELLERS[who], *sizes), values)

    def made(self, tier: Tier, made: _Made, twin: tuple[Any, ...]) -> Draft:
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


def _lead(who: Traveller) -> str:
    return f"The graph shows the journey of a {who.who} from the {who.place}. "


def _where(who: Traveller, along: int, up: int, stop: int, more: int, on: int) -> _Made:
    """Ask for the distance halfway through the first stage, or in the middle of the stop."""
    at_stop = (along + up + more) % 3 == 0
    time = Fraction(2 * along + stop, 2) if at_stop else Fraction(along, 2)
    high = Fraction(up) if at_stop else Fraction(up, 2)
    if (2 * time).denominator != 1:
        time = Fraction(along)
        high = Fraction(up)
    key = high * who.y_step
    shown = time * who.x_step
    text = _lead(who) + f"How many {who.unit} from the {who.place} is the {who.who} after {{n}} "
    return _Made(
        f"{text}{who.time}?",
        {"n": number(shown)},
        graph(who, ("", spots(along, up, stop, more, on))),
        key,
        [
            Step(f"Go up from {_said(shown)} {who.time} to the graph."),
            Step(f"Go across to the distance. A square is {who.y_step} {who.symbol}.", number(key)),
        ],
        [
            (COUNTS_SQUARES, high),
            (END_READ, (up + on) * who.y_step),
            (OTHER_AXIS, shown),
        ],
    )


def _how_long(who: Traveller, along: int, up: int, stop: int, more: int, on: int) -> _Made:
    starts, ends = along * who.x_step, (along + stop) * who.x_step
    key = Fraction(stop * who.x_step)
    return _Made(
        _lead(who) + f"For how many {who.time} does the {who.who} stop?",
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


def _when(who: Traveller, along: int, up: int, stop: int, more: int, on: int) -> _Made:
    """Ask for the time at the middle of the first stage, or at the end of the journey."""
    last = (along + stop + on) % 2 == 0
    time = Fraction(along + stop + more) if last else Fraction(along, 2)
    high = Fraction(up + on) if last else Fraction(up, 2)
    shown, key = high * who.y_step, time * who.x_step
    ends = (along + stop + more) * who.x_step
    return _Made(
        _lead(who)
        + f"After how many {who.time} is the {who.who} {{n}} {who.unit} from the {who.place}?",
        {"n": number(shown)},
        graph(who, ("", spots(along, up, stop, more, on))),
        key,
        [
            Step(f"Go across from {_said(shown)} {who.symbol} to the graph."),
            Step(
                f"Go down to the time. A square is {counted(who.x_step, who.time[:-1])}.",
                number(key),
            ),
        ],
        [(COUNTS_SQUARES, time), (END_READ, ends), (OTHER_AXIS, shown)],
    )


def _speed_steps(who: Traveller, way: int, time: int, key: Fraction) -> list[Step]:
    """Return how a speed is worked out from a distance and a time of the axes."""
    divided = t.divide(t.Int(way), t.Int(time))
    if who.factor == 1:
        return [Step("Speed is distance ÷ time.", t.equals(divided, number(key)))]
    hours = Fraction(time, 60)
    return [
        Step(
            f"Change {time} minutes to hours.",
            t.equals(t.divide(t.Int(time), t.Int(60)), t.frac(hours.numerator, hours.denominator)),
        )
        if hours.denominator > 1
        else Step(
            f"Change {time} minutes to hours.",
            t.equals(t.divide(t.Int(time), t.Int(60)), t.Int(int(hours))),
        ),
        Step(
            "Speed is distance ÷ time.",
            t.equals(
                t.divide(t.Int(way), t.frac(hours.numerator, hours.denominator))
                if hours.denominator > 1
                else t.divide(t.Int(way), t.Int(int(hours))),
                number(key),
            ),
        ),
    ]


def _asked(who: Traveller, stage: str, average: str = "") -> str:
    return (
        f"{_lead(who)}What is the {average}speed of the {who.who}, in {who.unit} per {who.each}, "
        f"{stage}?"
    )


def _kept(who: Traveller, way: int, time: int) -> Fraction | None:
    return Fraction(way, time) if who.factor > 1 else None


def _first_speed(who: Traveller, along: int, up: int, stop: int, more: int, on: int) -> _Made:
    way, time = up * who.y_step, along * who.x_step
    key = who.speed(up, along)
    return _Made(
        _asked(who, f"in the first {{n}} {who.time}"),
        {"n": t.Int(time)},
        graph(who, ("", spots(along, up, stop, more, on))),
        key,
        [
            Step(f"In {time} {who.time} the {who.who} goes {way} {who.symbol}."),
            *_speed_steps(who, way, time, key),
        ],
        [
            (MINUTES_KEPT, _kept(who, way, time)),
            (DISTANCE_GIVEN, way),
            (SINCE_START, who.speed(up, along + stop)),
        ],
    )


def _last_speed(who: Traveller, along: int, up: int, stop: int, more: int, on: int) -> _Made:
    way, time = on * who.y_step, more * who.x_step
    key = who.speed(on, more)
    before, after = up * who.y_step, (up + on) * who.y_step
    return _Made(
        _asked(who, f"in the last {{n}} {who.time}"),
        {"n": t.Int(time)},
        graph(who, ("", spots(along, up, stop, more, on))),
        key,
        [
            Step(
                f"It goes from {before} {who.symbol} to {after} {who.symbol}.",
                t.equals(t.sub(t.Int(after), t.Int(before)), t.Int(way)),
            ),
            *_speed_steps(who, way, time, key),
        ],
        [
            (MINUTES_KEPT, _kept(who, way, time)),
            (FROM_PLACE, who.speed(up + on, more)),
            (DISTANCE_GIVEN, way),
        ],
    )


def _in_all(who: Traveller, along: int, up: int, stop: int, more: int, on: int) -> _Made:
    way = up * who.y_step
    return _Made(
        f"{_lead(who)}How many {who.unit} does the {who.who} travel altogether?",
        {},
        graph(who, ("", spots(along, up, stop, more, on))),
        Fraction(2 * way),
        [
            Step(f"The {who.who} goes {way} {who.symbol} there, and the same way back."),
            Step("Add the two.", t.equals(t.add(t.Int(way), t.Int(way)), t.Int(2 * way))),
        ],
        [
            (ONE_WAY, way),
            (COUNTS_SQUARES, 2 * up),
            (OTHER_AXIS, (along + stop + more) * who.x_step),
        ],
    )


def _average(who: Traveller, along: int, up: int, stop: int, more: int, on: int) -> _Made:
    parts = (up * who.y_step, abs(on) * who.y_step)
    way, time = sum(parts), (along + stop + more) * who.x_step
    key = who.speed(up + abs(on), along + stop + more)
    middle = (who.speed(up, along) + who.speed(on, more)) / 2
    found = (
        f"There are {parts[0]} {who.symbol} before the stop and {parts[1]} {who.symbol} after it."
    )
    return _Made(
        _asked(who, "for the whole journey", "average "),
        {},
        graph(who, ("", spots(along, up, stop, more, on))),
        key,
        [
            Step(found, t.equals(t.add(*map(t.Int, parts)), t.Int(way))),
            Step(f"From the start to the end it takes {time} {who.time}, stop and all."),
            *_speed_steps(who, way, time, key),
        ],
        [
            (STOP_LEFT_OUT, who.speed(up + abs(on), along + more)),
            (MEAN_OF_SPEEDS, middle),
            (MINUTES_KEPT, _kept(who, way, time)),
            (ONE_WAY, who.speed(up, along + stop + more) if on < 0 else None),
        ],
    )


def _later_speed(who: Traveller, along: int, up: int, stop: int, more: int, on: int) -> _Made:
    way, time = abs(on) * who.y_step, more * who.x_step
    start, end = (along + stop) * who.x_step, (along + stop + more) * who.x_step
    key = who.speed(on, more)
    low, high = sorted((up * who.y_step, (up + on) * who.y_step))
    return _Made(
        _asked(who, "on the way back" if on < 0 else "after the stop"),
        {},
        graph(who, ("", spots(along, up, stop, more, on))),
        key,
        [
            Step(
                f"It goes {way} {who.symbol}: between {low} {who.symbol} and {high} {who.symbol}.",
                t.equals(t.sub(t.Int(high), t.Int(low)), t.Int(way)),
            ),
            Step(
                f"That takes from {start} to {end} {who.time}.",
                t.equals(t.sub(t.Int(end), t.Int(start)), t.Int(time)),
            ),
            *_speed_steps(who, way, time, key),
        ],
        [
            (SINCE_START, who.speed(on, along + stop + more)),
            (FROM_PLACE, who.speed(up + on, more) if on > 0 else None),
            (MINUTES_KEPT, _kept(who, way, time)),
            (DISTANCE_GIVEN, way),
        ],
    )


def _meeting(who: int, at: int, high: int, late: int, longer: int) -> _Made:
    """Ask when two meet that set off one after the other."""
    traveller = TRAVELLERS[who]
    end = high * longer // 2
    first: tuple[Spot, ...] = ((0, 0), (at * longer // 2, end))
    second: tuple[Spot, ...] = ((late, 0), (late + (at - late) * longer // 2, end))
    key = Fraction(at * traveller.x_step)
    name = traveller.who
    return _Made(
        f"The graph shows the journeys of {name} A and {name} B from the {traveller.place}. "
        f"After how many {traveller.time} does {name} B overtake {name} A?",
        {},
        graph(traveller, ("A", first), ("B", second)),
        key,
        [
            Step("They are at one place at one time where the graphs of A and B cross."),
            Step("Read the time there.", number(key)),
        ],
        [
            (OTHER_AXIS, high * traveller.y_step),
            (END_READ, (late + (at - late) * longer // 2) * traveller.x_step),
            (SINCE_LATER_START, (at - late) * traveller.x_step),
        ],
    )


def _said(value: Fraction) -> str:
    return str(float(value)).removesuffix(".0")
