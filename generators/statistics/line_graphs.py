"""Line graphs: reading a point, finding a point by its height, and how much it changes.

England's programme of study for key stage 3 (2013) asks pupils to "construct and interpret"
diagrams of data, and to read "graphs of real situations" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any, NamedTuple

from generators._scatter import unlike
from generators.statistics import _chart_mistakes as m
from generators.statistics._charts import Wrongs
from generators.statistics._line_graphs_in_brief import BRIEF, MISTAKES
from generators.statistics._points_missing import MISSING_MISTAKES, with_missing_points
from itembank.figures.kinds.chart.line_graph import LineGraph
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t
from itembank.text.in_words import in_full


class _Story(NamedTuple):
    """What goes up and along, what is asked of it, and what is shown.

    `read` asks for the height at {p}, `pick` for the place of the {most} or {least}, `find` for
    the place of {n}, and `change` by how much it goes {way} from {p} to {q}. `scale` is the step
    of the axis where it is cut in two, `fine` where it is cut in four.
    """

    counts: str
    along: str
    places: tuple[str, ...]
    read: str
    pick: str
    find: str
    change: str
    most: str
    least: str
    shows: str
    scale: int
    fine: int


_HOURS = ("08:00", "10:00", "12:00", "14:00")
_MONTHS = ("Apr", "May", "June", "July")
_DAYS = ("Mon", "Tue", "Wed", "Thu")
_RISE = "By how much did the {what} {way} from {p} to {q}?"
_STORIES = (
    _Story(
        "Temperature (°C)", "Time", _HOURS, "What was the temperature at {p}?",
        "At what time was the temperature {most}?",
        "At what time was the temperature {n} degrees?",
        _RISE.replace("{what}", "temperature"), "highest", "lowest",
        "the temperature in a garden", 4, 4,
    ),
    _Story(
        "Rainfall (mm)", "Month", _MONTHS, "What was the rainfall in {p}?",
        "In which month was the rainfall {most}?",
        "In which month was the rainfall {n} mm?",
        _RISE.replace("{what}", "rainfall"), "highest", "lowest", "the rainfall in a garden",
        20, 20,
    ),
    _Story(
        "Depth (cm)", "Day", _DAYS, "What was the depth on {p}?",
        "On which day was the depth {most}?", "On which day was the depth {n} cm?",
        _RISE.replace("{what}", "depth"), "greatest", "least", "the water in a rain barrel",
        20, 20,
    ),
    _Story(
        "Visitors", "Day", _DAYS, "How many visitors were there on {p}?",
        "On which day were there the {most} visitors?", "",
        _RISE.replace("{what}", "number of visitors"), "most", "fewest",
        "the visitors to a garden", 50, 100,
    ),
)  # fmt: skip
_LINES, _FINE = 4, 4


class _Ask:
    """What is asked."""

    READ, PICK, FIND, CHANGE = range(4)


def _values(story: int, between: int, seed: int) -> tuple[int, ...]:
    steps = unlike(story + len(_STORIES) * seed, 4, 1, _LINES * between)
    return tuple(step * _scale(story, between) // between for step in steps)


def _scale(story: int, between: int) -> int:
    return _STORIES[story].fine if between == _FINE else _STORIES[story].scale


def _distinct(story: int, between: int, seed: int) -> bool:
    values = _values(story, between, seed)
    return len({*values}) == 4 and max(values) > _scale(story, between) * (_LINES - 2)


def _support(ask: int, story: int, seed: int) -> bool:
    if not _distinct(story, 2, seed):
        return False
    values = _values(story, 2, seed)
    if ask == _Ask.READ:
        return values[seed % 4] % _STORIES[story].scale != 0
    return values[3] not in (max(values), min(values))


def _two(seed: int) -> tuple[int, int]:
    """Return two places, the earlier first."""
    return ((0, 1), (1, 2), (2, 3), (0, 2), (1, 3), (0, 3))[seed % 6]


def _core(ask: int, story: int, seed: int) -> bool:
    if not _distinct(story, 2, seed):
        return False
    values, scale = _values(story, 2, seed), _STORIES[story].scale
    if ask == _Ask.FIND:
        return bool(_STORIES[story].find) and values[seed % 4] % scale != 0
    first, second = (values[place] for place in _two(seed))
    return abs(first - second) not in (first, second) and (
        first % scale != 0 or second % scale != 0
    )


def _challenge(ask: int, story: int, seed: int) -> bool:
    if not _distinct(story, _FINE, seed):
        return False
    values, scale = _values(story, _FINE, seed), _scale(story, _FINE)
    first, second = (values[place] for place in _two(seed))
    apart = abs(first - second)
    return (
        apart not in (first, second)
        and first % scale != 0
        and second % scale != 0
        and apart > scale
        and apart * _FINE // scale not in (second, first + second, apart)
    )


@register
class LineGraphs(Topic):
    """A point read; a point found, and a change; then on a scale cut in four."""

    id = "statistics.line-graphs"
    title = "Line graphs"
    statements = ("statistics.charts", "algebra.real-life-graphs")
    misconceptions = (
        *MISTAKES,
        *MISSING_MISTAKES,
        *(m.LINE_BELOW_POINT, m.LINE_ABOVE_POINT, m.ONE_EACH, m.OTHER_END, m.LAST_PLACE),
        *(m.NEXT_PLACE, m.ADDS_FOR_CHANGE, m.END_OF_CHANGE, m.COUNTS_SMALL_STEPS),
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support, ask=(_Ask.READ, _Ask.PICK), story=range(len(_STORIES)), seed=range(1, 160)
        ),
        Tier.CORE: Space(
            _core, ask=(_Ask.FIND, _Ask.CHANGE), story=range(len(_STORIES)), seed=range(1, 160)
        ),
        Tier.CHALLENGE: Space(
            _challenge, ask=(_Ask.CHANGE,), story=range(len(_STORIES)), seed=range(1, 420)
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = with_brief(spaces, BRIEF)
    spaces = with_missing_points(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        ask, story, seed = values
        between = _FINE if tier is Tier.CHALLENGE else 2
        told, heights = _STORIES[story], _values(story, between, seed)
        told = told._replace(scale=_scale(story, between))
        figure = LineGraph(
            tuple(zip(told.places, heights, strict=True)),
            told.scale,
            between,
            told.counts,
            told.along,
        )
        build = (_read, _pick, _find, _change)[ask]
        question, shown, key, form, steps, wrongs = build(told, heights, between, seed)
        text = prompt(f"The line graph shows {told.shows}. {question}", **shown)
        return Draft(
            text,
            of_figure(figure, text),
            key,
            form,
            tuple(steps),
            slips(*wrongs, key=key),
            (ask, story, seed, *heights),
            figure=figure,
        )


_Made = tuple[str, dict[str, t.Node], t.Node, str, list[Step], Wrongs]


def _reading(told: _Story, place: str, value: int, between: int) -> list[Step]:
    """Return how a height between two numbers is read."""
    low = value // told.scale * told.scale
    small = Fraction(told.scale, between)
    if value == low:
        return []
    if between == 2:
        said = f"{in_full(place)}: halfway between {low} and {low + told.scale}."
        line = t.add(t.Int(low), t.Int(told.scale // 2))
    else:
        count = int((value - low) / small)
        steps = "1 small step" if count == 1 else f"{count} small steps"
        said = f"Each small step is {small}. {in_full(place)}: {steps} above {low}."
        line = t.add(t.Int(low), t.times(t.Int(count), t.Int(int(small))))
    return [Step(said, t.equals(line, t.Int(value)))]


def _read(told: _Story, heights: tuple[int, ...], between: int, seed: int) -> _Made:
    place, value = told.places[seed % 4], heights[seed % 4]
    low = value // told.scale * told.scale
    wrongs: Wrongs = [
        (m.LINE_BELOW_POINT, low),
        (m.LINE_ABOVE_POINT, low + told.scale),
        (m.ONE_EACH, low + 1),
    ]
    text = told.read.replace("{p}", in_full(place))
    return text, {}, t.Int(value), "integer", _reading(told, place, value, between), wrongs


def _pick(told: _Story, heights: tuple[int, ...], between: int, seed: int) -> _Made:
    most = seed % 2 == 0
    wanted, other = (max, min) if most else (min, max)
    best = told.places[heights.index(wanted(heights))]
    key = t.Label(best)
    wrongs: Wrongs = [
        (m.OTHER_END, t.Label(told.places[heights.index(other(heights))])),
        (m.LAST_PLACE, t.Label(told.places[-1])),
    ]
    step = Step(f"Look for the {'highest' if most else 'lowest'} point. Read down.", key)
    text = told.pick.replace("{most}", told.most if most else told.least)
    return text, {}, key, "name", [step], wrongs


def _find(told: _Story, heights: tuple[int, ...], between: int, seed: int) -> _Made:
    place, value = told.places[seed % 4], heights[seed % 4]
    key = t.Label(place)
    low = value // told.scale * told.scale
    near = sorted(
        (abs(height - value), other)
        for height, other in zip(heights, told.places, strict=True)
        if other != place
    )
    steps = [
        Step(f"Go up the axis to {value}, halfway between {low} and {low + told.scale}."),
        Step("Go across to the graph, and read down.", key),
    ]
    wrongs: Wrongs = [(m.NEXT_PLACE, t.Label(near[0][1])), (m.LAST_PLACE, t.Label(near[-1][1]))]
    return told.find, {"n": t.Int(value)}, key, "name", steps, wrongs


def _change(told: _Story, heights: tuple[int, ...], between: int, seed: int) -> _Made:
    first, second = _two(seed)
    a, b = heights[first], heights[second]
    up = b > a
    high, low = max(a, b), min(a, b)
    text = told.change.replace("{way}", "rise" if up else "drop")
    text = text.replace("{p}", in_full(told.places[first]))
    text = text.replace("{q}", in_full(told.places[second]))
    key = t.Int(high - low)
    steps = [
        *_reading(told, told.places[first], a, between),
        *_reading(told, told.places[second], b, between),
        Step("Subtract.", t.equals(t.sub(t.Int(high), t.Int(low)), key)),
    ]
    wrongs: Wrongs = [(m.ADDS_FOR_CHANGE, a + b), (m.END_OF_CHANGE, b)]
    if between == _FINE:
        wrongs.append((m.COUNTS_SMALL_STEPS, (high - low) * _FINE // told.scale))
    return text, {}, key, "integer", steps, wrongs
