"""A point that is missing on a line graph: at which number it should stand, by what is told."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from generators._scatter import unlike
from generators.statistics import _chart_mistakes as m
from generators.statistics._charts import Wrongs
from generators.statistics._line_graphs_in_brief import CHANGE_ALONE
from itembank.figures.kinds.line_graph import LineGraph
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Misconception, Step, Tier, prompt
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t
from itembank.text.in_words import in_full

CHANGE_WRONG_WAY = Misconception(
    "statistics.change-wrong-way",
    "adds where it falls, or takes away where it rises",
    "Is the missing point higher or lower than the one it is told by?",
)
NO_CHANGE = Misconception(
    "statistics.no-change-made",
    "draws the point as high as the one it is told by",
    "Are the two alike? What does the question say about them?",
)
ADDS_TIMES = Misconception(
    "statistics.adds-for-times",
    "adds 2 for twice, or 3 for three times",
    "What is twice 10? And twice 50?",
)
TIMES_WRONG_WAY = Misconception(
    "statistics.times-wrong-way",
    "halves where it should double, or doubles where it should halve",
    "Which of the two is the larger? So is the missing point above or below it?",
)
MEAN_FOR_POINT = Misconception(
    "statistics.mean-for-point",
    "gives the mean of all for the one that is missing",
    "If all of them were as high as the mean, what would they come to? What do the others come to?",
)
MEAN_OF_DRAWN = Misconception(
    "statistics.mean-of-drawn",
    "gives the mean of the points that are drawn",
    "Does the mean you were told belong to the drawn points alone, or to all of them?",
)
CHANGE_ONCE = Misconception(
    "statistics.change-once",
    "takes the other change once where it is to be taken twice",
    "How large was the other change? What is twice that?",
)
MISSING_MISTAKES = (
    *(CHANGE_WRONG_WAY, NO_CHANGE, ADDS_TIMES, TIMES_WRONG_WAY, MEAN_FOR_POINT, MEAN_OF_DRAWN),
    *(CHANGE_ONCE, m.SUM_OF_SHOWN, m.TOTAL_FOR_MISSING),
)


class _Story(NamedTuple):
    """What goes up, in which unit it is said, what goes along, and what is shown.

    `scale` is the step of the axis; a point stands at a numbered line or halfway between two
    (plausible numbers, no source).
    """

    counts: str
    what: str
    unit: str
    along: str
    places: tuple[str, ...]
    where: str
    shows: str
    scale: int

    def at(self, place: int) -> str:
        """Return a place as a sentence has it: *on Thursday*."""
        return f"{self.where} {self.name(place)}"

    def name(self, place: int) -> str:
        """Return the name of a place whole."""
        return in_full(self.places[place])


_DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri")
_SPRING = ("Mar", "Apr", "May", "June", "July")
_AUTUMN = ("Sep", "Oct", "Nov", "Dec")
_MORNING = ("08:00", "10:00", "12:00", "14:00")
_AFTERNOON = ("12:00", "14:00", "16:00", "18:00")
_STORIES = (
    _Story("Temperature (°C)", "temperature", "degrees", "Time", _MORNING, "at",
           "the temperature in a greenhouse", 8),
    _Story("Temperature (°C)", "temperature", "degrees", "Day", _DAYS, "on",
           "the temperature in a garden at noon", 4),
    _Story("Rainfall (mm)", "rainfall", "mm", "Month", _SPRING, "in",
           "the rainfall in a garden", 20),
    _Story("Depth (cm)", "depth", "cm", "Day", _DAYS, "on",
           "the depth of the water in a rain barrel", 20),
    _Story("Height (cm)", "height", "cm", "Time", _AFTERNOON, "at",
           "the height of the water at a jetty", 40),
    _Story("Visitors", "number of visitors", "", "Day", _DAYS, "on",
           "the visitors to a garden", 40),
    _Story("Passengers", "number of passengers", "", "Time", _MORNING, "at",
           "the passengers on the buses that leave a depot", 8),
    _Story("Lengths", "number of lengths", "", "Day", _DAYS, "on",
           "the lengths of a pool that a swimmer swam", 10),
    _Story("Trays", "number of trays", "", "Month", _AUTUMN, "in",
           "the trays of plants that a garden sold", 100),
)  # fmt: skip
_LINES, _BETWEEN = 4, 2
_WORDS = {2: "twice", 3: "three times"}
_COUNTS = {4: "four", 5: "five"}


class Told:
    """By what the missing point is told."""

    CHANGE, TIMES, HALF, TOTAL, MEAN, AS_MUCH = range(6)


def _values(story: int, seed: int) -> list[int]:
    told = _STORIES[story]
    steps = unlike(story + len(_STORIES) * seed + 3, len(told.places), 1, _LINES * _BETWEEN)
    return [step * told.scale // _BETWEEN for step in steps]


def _two(story: int, seed: int) -> tuple[int, int]:
    """Return the place that is missing, and another one."""
    count = len(_STORIES[story].places)
    at = seed % count
    return at, (at + 1 + seed // count % (count - 1)) % count


def _beside(story: int, seed: int) -> tuple[int, int]:
    """Return the place that is missing, and one next to it."""
    count = len(_STORIES[story].places)
    at = seed % count
    other = at + (1 if seed // count % 2 else -1)
    return at, other if 0 <= other < count else 2 * at - other


def _run(story: int, seed: int) -> tuple[int, int, int]:
    """Return three places side by side, of which the last is missing."""
    at = 2 + seed % (len(_STORIES[story].places) - 2)
    return at - 2, at - 1, at


def point_values(told: int, story: int, seed: int) -> tuple[tuple[int, ...], int]:
    """Return the heights of all points, and which of them is missing."""
    values, scale = _values(story, seed), _STORIES[story].scale
    at, other = _two(story, seed)
    match told:
        case Told.TIMES:
            values[at] = values[other] * (2 + seed // 7 % 2)
        case Told.HALF:
            values[at] = values[other] // 2
        case Told.CHANGE:
            at, other = _beside(story, seed)
        case Told.AS_MUCH:
            first, second, at = _run(story, seed)
            values[at] = values[second] + (values[second] - values[first]) * (1 + seed // 3 % 2)
        case Told.MEAN:  # the last one makes the mean a whole number of half steps
            rest = sum(values) - values[at]
            step = len(values) * scale // _BETWEEN
            values[at] += -(rest + values[at]) % step
    return tuple(values), at


def _fits(story: int, values: tuple[int, ...], at: int) -> bool:
    """Tell whether the missing point stands on a line of the axis that the others need."""
    scale = _STORIES[story].scale
    drawn = [value for place, value in enumerate(values) if place != at]
    lines = -(-max(drawn) // scale)
    return (
        0 < values[at] <= lines * scale
        and 2 < lines <= _LINES
        and values[at] * _BETWEEN % scale == 0
        and len({*drawn}) == len(drawn)
    )


def can_be_told(told: int, story: int, seed: int) -> bool:
    """Tell whether a point can be asked for in this way, and no likely mistake finds it too."""
    values, at = point_values(told, story, seed)
    if not _fits(story, values, at):
        return False
    value, scale = values[at], _STORIES[story].scale
    if told == Told.CHANGE:
        _, other = _beside(story, seed)
        known = values[other]
        return known % scale != 0 and value not in (known, 2 * known) and 2 * known > value
    if told in (Told.TIMES, Told.HALF):
        _, other = _two(story, seed)
        read = value if told == Told.HALF else values[other]  # the one to be read between lines
        return read % scale != 0 and value != values[other] + (2 + seed // 7 % 2)
    if told == Told.TOTAL:
        rest = sum(values) - value
        halfway = sum(value % scale != 0 for value in values)
        return not _STORIES[story].unit and halfway > 1 and rest != value
    if told == Told.MEAN:
        count = len(values)
        rest = sum(values) - value
        return count * value != sum(values) and rest != (count - 1) * value and rest != value
    first, second, at = _run(story, seed)
    change = values[second] - values[first]
    return change != 0 and value not in (abs(change), 2 * abs(change)) and values[at] % scale != 0


def missing_point(topic: Topic, tier: Tier, told: int, story: int, seed: int) -> Draft:
    """Return the question at which number the point that is missing should stand."""
    shown = _STORIES[story]
    values, at = point_values(told, story, seed)
    drawn = tuple(0 if place == at else value for place, value in enumerate(values))
    figure = LineGraph(
        tuple(zip(shown.places, drawn, strict=True)),
        shown.scale,
        _BETWEEN,
        shown.counts,
        shown.along,
        missing=shown.places[at],
    )
    make = (_by_change, _by_times, _by_times, _by_all, _by_all, _by_like_change)[told]
    said, numbers, steps, wrongs = make(shown, values, told, story, seed)
    text = prompt(
        f"The line graph shows {shown.shows}. The point for {shown.name(at)} is missing: "
        f"at which number should it stand, if {said}?",
        **numbers,
    )
    key = t.Int(values[at])
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "integer",
        tuple(steps),
        slips(*((mistake, n) for mistake, n in wrongs if not isinstance(n, int) or n > 0), key=key),
        ("point missing", told, story, at, *values),
        figure=figure,
        # *Twice* and *the five days* print no figure.
        constants=(2, 3, len(values)),
    )


_Made = tuple[str, dict[str, t.Node], list[Step], Wrongs]


def _amount(shown: _Story, letter: str) -> str:
    return f"{{{letter}}} {shown.unit}".strip()


def _read(shown: _Story, place: int, value: int) -> Step:
    """Return how a height is read off the axis."""
    low, over = divmod(value, shown.scale)
    name = shown.name(place)
    if not over:
        return Step(f"Read the graph for {name}: {value}.")
    low *= shown.scale
    half = t.add(t.Int(low), t.Int(shown.scale // 2))
    return Step(
        f"{name}: halfway between {low} and {low + shown.scale}.", t.equals(half, t.Int(value))
    )


def _by_change(shown: _Story, values: tuple[int, ...], told: int, story: int, seed: int) -> _Made:
    at, other = _beside(story, seed)
    first, second = sorted((at, other))
    rises = values[second] > values[first]
    gap, known, key = abs(values[at] - values[other]), values[other], values[at]
    way = "rose" if rises else "fell"
    said = (
        f"the {shown.what} {way} by {_amount(shown, 'n')} from {shown.name(first)} "
        f"to {shown.name(second)}"
    )
    join = t.add if key > known else t.sub
    later = "Go on" if at == second else "Go back"
    low = known // shown.scale * shown.scale
    steps = [
        _read(shown, other, known),
        Step(
            f"{later} to {shown.name(at)}: it is {'more' if key > known else 'less'} there.",
            t.equals(join(t.Int(known), t.Int(gap)), t.Int(key)),
        ),
    ]
    wrongs: Wrongs = [
        (CHANGE_WRONG_WAY, 2 * known - key),
        (NO_CHANGE, known),
        (CHANGE_ALONE, gap),
        (m.LINE_BELOW_POINT, low + key - known),
    ]
    return said, {"n": t.Int(gap)}, steps, wrongs


def _by_times(shown: _Story, values: tuple[int, ...], told: int, story: int, seed: int) -> _Made:
    at, other = _two(story, seed)
    known, key = values[other], values[at]
    count = 2 + seed // 7 % 2 if told == Told.TIMES else 2
    times = _WORDS[count] if told == Told.TIMES else "half"
    said = f"the {shown.what} {shown.at(at)} was {times} that {shown.at(other)}"
    if told == Told.TIMES:
        line, back = t.times(t.Int(count), t.Int(known)), (known, count)
        more: Wrongs = [(ADDS_TIMES, known + count)]
        say = f"Multiply by {count}."
    else:
        line, back = t.divide(t.Int(known), t.Int(2)), (known * 2, 1)
        more = []
        say = "Halve it."
    steps = [_read(shown, other, known), Step(say, t.equals(line, t.Int(key)))]
    turned = back[0] // back[1] if back[0] % back[1] == 0 and count == 2 else None
    wrongs: Wrongs = [(TIMES_WRONG_WAY, turned), (NO_CHANGE, known), *more]
    low = known // shown.scale * shown.scale
    misread = low * count if told == Told.TIMES else low // 2
    wrongs.append((m.LINE_BELOW_POINT, misread))
    return said, {}, steps, wrongs


def _by_all(shown: _Story, values: tuple[int, ...], told: int, story: int, seed: int) -> _Made:
    at, _ = _two(story, seed)
    count, total, key = len(values), sum(values), values[at]
    rest = [value for place, value in enumerate(values) if place != at]
    which = f"{shown.where} the {_COUNTS[count]} {shown.along.casefold()}s"
    known = total // count if told == Told.MEAN else total
    all_ = "mean" if told == Told.MEAN else "total"
    said = f"the {all_} {shown.what} {which} was {_amount(shown, 'n')}"
    added = t.equals(t.add(*map(t.Int, rest)), t.Int(sum(rest)))
    steps = [
        Step("Add what is drawn already.", added),
        Step(
            "Subtract that from the total.",
            t.equals(t.sub(t.Int(total), t.Int(sum(rest))), t.Int(key)),
        ),
    ]
    wrongs: Wrongs = [(m.SUM_OF_SHOWN, sum(rest)), (m.TOTAL_FOR_MISSING, total)]
    if told == Told.MEAN:
        whole = t.equals(t.times(t.Int(count), t.Int(known)), t.Int(total))
        steps.insert(0, Step(f"All {_COUNTS[count]} together come to {count} means.", whole))
        drawn_mean = sum(rest) // (count - 1) if sum(rest) % (count - 1) == 0 else None
        wrongs += [(MEAN_FOR_POINT, known), (MEAN_OF_DRAWN, drawn_mean)]
    return said, {"n": t.Int(known)}, steps, wrongs


def _by_like_change(
    shown: _Story, values: tuple[int, ...], told: int, story: int, seed: int
) -> _Made:
    first, second, at = _run(story, seed)
    a, b, key = (values[place] for place in (first, second, at))
    count, change = 1 + seed // 3 % 2, abs(b - a)
    rises = b > a
    way = "rose" if rises else "fell"
    much = "as much" if count == 1 else "twice as much"
    said = (
        f"the {shown.what} {way} {much} from {shown.name(second)} to {shown.name(at)} as from "
        f"{shown.name(first)} to {shown.name(second)}"
    )
    high, low = max(a, b), min(a, b)
    steps = [
        _read(shown, first, a),
        _read(shown, second, b),
        Step(
            f"From {shown.name(first)} to {shown.name(second)} it {way} by that.",
            t.equals(t.sub(t.Int(high), t.Int(low)), t.Int(change)),
        ),
    ]
    if count == 2:
        twice = t.equals(t.times(t.Int(2), t.Int(change)), t.Int(2 * change))
        steps.append(Step("Take that twice.", twice))
    join = t.add if rises else t.sub
    steps.append(
        Step(
            f"Go on from {shown.name(second)}.",
            t.equals(join(t.Int(b), t.Int(count * change)), t.Int(key)),
        )
    )
    wrongs: Wrongs = [
        (CHANGE_WRONG_WAY, 2 * b - key),
        (CHANGE_ALONE, count * change),
        (NO_CHANGE, b),
    ]
    if count == 2:
        wrongs.append((CHANGE_ONCE, b + (b - a)))
    return said, {}, steps, wrongs


_WAYS = (
    (Tier.SUPPORT, Told.CHANGE, 141),
    (Tier.CORE, Told.TIMES, 16),
    (Tier.CORE, Told.HALF, 16),
    (Tier.CORE, Told.TOTAL, 13),
    (Tier.CHALLENGE, Told.MEAN, 48),
    (Tier.CHALLENGE, Told.AS_MUCH, 201),
)
"""What tells a missing point in each tier, and after how many rows of data it stops."""


def with_missing_points(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of line graphs with points to find, told in harder ways tier by tier."""
    grown = dict(spaces)
    for tier, told, most in _WAYS:
        grown[tier] = grown[tier].also(
            missing_point,
            can_be_told,
            told=(told,),
            story=range(len(_STORIES)),
            seed=range(1, most),
        )
    return grown
