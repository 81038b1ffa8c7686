"""Scatter graphs: points read, points counted, and values taken from a line of best fit.

England's programme of study for key stage 3 (2013) asks pupils to "describe simple mathematical
relationships between two variables (bivariate data) … and illustrate using scatter graphs" (from
memory). Where a line of best fit should go, and how strong a correlation is, is judged by eye and
left to a person; a type of correlation is asked only where all points rise, or all fall.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any, NamedTuple

from generators._scatter import scattered, unlike
from itembank.figures.kinds.scatter_graph import UNIT_NAMES, ScatterGraph
from itembank.items.asks.of_figure import of_figure
from itembank.items.forms.form_rules import decimal_node, number_node
from itembank.items.item import Draft, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

NEAREST_POINT = Misconception(
    "statistics.scatter-nearest-point",
    "reads off the nearest point instead of the line",
    "What does the line of best fit say there? Go to the line, not to a point.",
)
OTHER_WAY = Misconception(
    "statistics.scatter-other-way",
    "counts those on the other side",
    "Which side of the line or of the number is asked for? Point at it.",
)
ALL_POINTS = Misconception(
    "statistics.scatter-all-points",
    "counts all the points",
    "Does every point belong to it? Cover those that do not.",
)
ONE_TOO_MANY = Misconception(
    "statistics.scatter-on-the-edge",
    "counts the point that is on the number, too",
    "Is a number more than itself?",
)
OTHER_AXIS = Misconception(
    "statistics.scatter-other-axis",
    "starts from the wrong axis",
    "Which axis shows what you know? Which shows what you want?",
)
COUNTS_SQUARES = Misconception(
    "statistics.scatter-counts-squares",
    "counts squares, and does not look at the scale",
    "How much is one square worth on this axis?",
)
SWAPPED = Misconception(
    "statistics.scatter-swapped",
    "gives the coordinates in the wrong order",
    "Which number comes first: how far along, or how far up?",
)
HIGHEST = Misconception(
    "statistics.scatter-highest-point",
    "takes the highest point for the outlier",
    "Which point is farthest from the line of best fit?",
)
WRONG_SIGN = Misconception(
    "statistics.scatter-wrong-sign",
    "mixes up positive and negative correlation",
    "As one goes up, does the other go up or down?",
)
LINE_MISSING = Misconception(
    "statistics.scatter-cannot-say",
    "says that there is no correlation where the points do not lie on one line",
    "Do the points need to be on a line to rise together?",
)
PART_TO_REST = Misconception(
    "statistics.scatter-part-to-rest",
    "compares the part with the rest instead of all",
    "How many points are there in all?",
)

_WIDE, _HIGH = 12, 8


class _Story(NamedTuple):
    """What each point is, and what the axes show: title, unit, and what a square is worth.

    `rises` tells whether more of the one goes with more of the other. Numbers are plausible and
    made up.
    """

    things: str
    thing: str
    along: str
    x_unit: str
    x_step: int
    up: str
    y_unit: str
    y_step: int
    rises: bool


_STORIES = (
    _Story("plants", "plant", "age", "weeks", 1, "height", "cm", 5, True),
    _Story("marrows", "marrow", "length", "cm", 4, "mass", "g", 200, True),
    _Story("journeys", "journey", "distance", "km", 2, "time", "minutes", 5, True),
    _Story("trees", "tree", "age", "years", 2, "height", "m", 1, True),
    _Story("parcels", "parcel", "mass", "kg", 1, "price", "pounds", 2, True),
    _Story("swimmers", "swimmer", "training time", "hours", 1, "race time", "seconds", 10, False),
    _Story("candles", "candle", "burning time", "minutes", 10, "height", "cm", 2, False),
    _Story("lorries", "lorry", "load", "tonnes", 2, "speed", "km/h", 10, False),
    _Story("vans", "van", "age", "years", 1, "price", "pounds", 1000, False),
)
_LINES = ((0, 1), (1, 1), (2, 1))
"""Where rising lines start, and how far they rise in 2 squares; falling ones are these turned."""

VALUE, MORE, CORRELATION, ESTIMATE, OUTLIER, BELOW, BACK, FRACTION = range(8)
"""What is asked."""
_WITH_LINE = (ESTIMATE, OUTLIER, BELOW, BACK)

Half = int
"""Halves of squares: all places are whole numbers of these."""


class _Cloud(NamedTuple):
    """Points in halves of squares, the height of the line at nought, and which way it goes."""

    points: tuple[tuple[Half, Half], ...]
    start: Half
    way: int

    def line(self, x: Half) -> Fraction:
        return self.start + Fraction(self.way * x, 2)


def _cloud(story: int, number: int, kind: int) -> _Cloud:
    """Return six to ten points near a line, one of them far off where an outlier is asked for."""
    way = 1 if _STORIES[story].rises else -1
    seed = number * len(_STORIES) + story
    (chosen,) = unlike(number, 1, 0, 2)
    start = 2 * _LINES[chosen][0] if way > 0 else 2 * _HIGH - 2 * _LINES[chosen][0]
    picks = scattered(seed, 22, 0, 999)
    count = 6 + picks[21] % 5
    apart = 22 // count
    xs = [2 + place * apart + picks[place] % apart for place in range(count)]
    points = []
    for place, x in enumerate(xs):
        off = (-2, -1, 1, 2)[picks[10 + place] % 4]
        if kind == CORRELATION:
            off = (-1, 0, 1)[picks[10 + place] % 3]
        at = start + Fraction(way * x, 2)
        points.append((x, int(at) + off if at.denominator == 1 else int(at + Fraction(off, 2))))
    if kind == OUTLIER:
        place = picks[20] % len(points)
        x, _ = points[place]
        far = (5, -5, 6, -6)[picks[20] // 10 % 4]
        points[place] = (x, int(start + Fraction(way * x, 2)) + far)
    return _Cloud(tuple(points), start, way)


def _sound(cloud: _Cloud) -> bool:
    return (
        all(1 <= y <= 2 * _HIGH for _, y in cloud.points) and len({y for _, y in cloud.points}) > 4
    )


def _figure(story: int, cloud: _Cloud, *, best: bool) -> ScatterGraph:
    told = _STORIES[story]

    def place(x: Half | Fraction, y: Half | Fraction) -> tuple[t.Node, t.Node]:
        return decimal_node(Fraction(x * told.x_step, 2)), decimal_node(
            Fraction(y * told.y_step, 2)
        )

    ends = (place(0, cloud.start), place(2 * _WIDE, cloud.line(2 * _WIDE)))
    return ScatterGraph(
        f"{told.along.capitalize()} ({told.x_unit})",
        f"{told.up.capitalize()} ({told.y_unit})",
        _WIDE * told.x_step,
        _HIGH * told.y_step,
        told.x_step,
        told.y_step,
        tuple(place(x, y) for x, y in cloud.points),
        ends if best else (),
    )


class _Made(NamedTuple):
    text: str
    number: Fraction | None
    key: t.Node
    form: str
    steps: list[Step]
    wrongs: list[tuple[Misconception, t.Node | None]]


def _unit(short: str) -> str:
    return UNIT_NAMES.get(short, short)


def _article(word: str) -> str:
    return "an" if word[0] in "aeiou" else "a"


def _made(kind: int, story: int, number: int) -> _Made | None:
    """Return what is asked of a cloud, None where it does not fit."""
    cloud, told = _cloud(story, number, kind), _STORIES[story]
    if not _sound(cloud):
        return None
    gaps = [y - cloud.line(x) for x, y in cloud.points]
    # A line of best fit has about as many points on one side as on the other.
    if kind in _WITH_LINE and abs(sum(g > 0 for g in gaps) - sum(g < 0 for g in gaps)) > 2:
        return None
    build = (_value, _more, _correlation, _estimate, _outlier, _below, _back, _fraction)[kind]
    made = build(told, cloud, number)
    # Of one, the unit would be in the singular.
    return None if made is None or made.number == 1 else made


def _x(told: _Story, half: Half | Fraction) -> Fraction:
    return Fraction(half * told.x_step) / 2


def _y(told: _Story, half: Half | Fraction) -> Fraction:
    return Fraction(half * told.y_step) / 2


def _value(told: _Story, cloud: _Cloud, number: int) -> _Made:
    x, y = cloud.points[number % len(cloud.points)]
    near = cloud.points[(number + 1) % len(cloud.points)][1]
    key = decimal_node(_y(told, y))
    return _Made(
        f"What is the {told.up}, in {_unit(told.y_unit)}, of the {told.thing} with "
        f"{_article(told.along)} {told.along} of {{n}} {told.x_unit}?",
        _x(told, x),
        key,
        "value",
        [Step(f"Find the point above {_said(_x(told, x))}, and go across from it.", key)],
        [
            (COUNTS_SQUARES, decimal_node(Fraction(y, 2))),
            (OTHER_AXIS, decimal_node(_x(told, x))),
            (NEAREST_POINT, decimal_node(_y(told, near))),
        ],
    )


def _limit(cloud: _Cloud, number: int) -> Half | None:
    """Return a whole square up that a point stands on, with others on both sides."""
    heights = sorted(y for _, y in cloud.points)
    fits = [y for y in heights[1:-1] if y % 2 == 0 and heights[0] < y < heights[-1]]
    return fits[number % len(fits)] if fits else None


def _more(told: _Story, cloud: _Cloud, number: int) -> _Made | None:
    limit = _limit(cloud, number)
    if limit is None:
        return None
    over = sum(y > limit for _, y in cloud.points)
    under = sum(y < limit for _, y in cloud.points)
    value, count = _said(_y(told, limit)), len(cloud.points)
    return _Made(
        f"How many {told.things} have {_article(told.up)} {told.up} of more than {{n}} "
        f"{told.y_unit}?",
        _y(told, limit),
        t.Int(over),
        "integer",
        [
            Step(f"Go across from {value} on the axis for {told.up}."),
            Step("Count the points above it, not those on it.", t.Int(over)),
        ],
        [
            (OTHER_WAY, t.Int(under)),
            (ONE_TOO_MANY, t.Int(count - under)),
            (ALL_POINTS, t.Int(count)),
        ],
    )


def _fraction(told: _Story, cloud: _Cloud, number: int) -> _Made | None:
    made = _more(told, cloud, number)
    if made is None:
        return None
    limit = _limit(cloud, number)
    assert limit is not None
    over = sum(y > limit for _, y in cloud.points)
    under = sum(y < limit for _, y in cloud.points)
    count = len(cloud.points)
    key = number_node(Fraction(over, count))
    written = t.frac(over, count)
    return _Made(
        f"What fraction of the {told.things} have {_article(told.up)} {told.up} of more than {{n}} "
        f"{told.y_unit}?",
        made.number,
        key,
        "lowest-terms",
        [
            made.steps[0],
            Step(f"Count the points above it, not those on it: {over}."),
            Step(
                f"There are {count} points in all.",
                written if written == key else t.equals(written, key),
            ),
        ],
        [
            (OTHER_WAY, number_node(Fraction(under, count))),
            (ONE_TOO_MANY, number_node(Fraction(count - under, count))),
            (PART_TO_REST, number_node(Fraction(over, count - over))),
        ],
    )


def _correlation(told: _Story, cloud: _Cloud, number: int) -> _Made | None:
    heights = [y for _, y in cloud.points]
    if sorted(heights, reverse=not told.rises) != heights or len({*heights}) < len(heights):
        return None
    key, other = ("positive", "negative") if told.rises else ("negative", "positive")
    way = "up" if told.rises else "down"
    return _Made(
        "Is the correlation positive or negative?",
        None,
        t.Label(key),
        "name",
        [Step(f"As one goes up, the other goes {way}.", t.Label(key))],
        [(WRONG_SIGN, t.Label(other)), (LINE_MISSING, t.Label("no correlation"))],
    )


def _estimate(told: _Story, cloud: _Cloud, number: int) -> _Made | None:
    """Ask what the line says for a value along at which no point stands."""
    taken = {x for x, _ in cloud.points}
    free = [x for x in range(4, 22, 2) if x not in taken]
    if not free:
        return None
    x = free[number % len(free)]
    high = cloud.line(x)
    near = min(cloud.points, key=lambda point: (abs(point[0] - x), point))
    key = decimal_node(_y(told, high))
    return _Made(
        f"Use the line of best fit to estimate the {told.up}, in {_unit(told.y_unit)}, of a "
        f"{told.thing} with "
        f"{_article(told.along)} {told.along} of {{n}} {told.x_unit}.",
        _x(told, x),
        key,
        "value",
        [
            Step(f"Go up from {_said(_x(told, x))} on the axis for {told.along} to the line."),
            Step(f"From there go across to the axis for {told.up}.", key),
        ],
        [
            (NEAREST_POINT, decimal_node(_y(told, near[1]))),
            (COUNTS_SQUARES, decimal_node(Fraction(high, 2))),
        ],
    )


def _back(told: _Story, cloud: _Cloud, number: int) -> _Made | None:
    """Ask at which value along the line has a height, in halves of squares."""
    y = 5 + number % 8
    x = (Fraction(y) - cloud.start) * 2 * cloud.way
    if not 2 <= x <= 22 or any(point[1] == y for point in cloud.points):
        return None
    near = min(cloud.points, key=lambda point: (abs(point[1] - y), point))
    key = decimal_node(_x(told, x))
    return _Made(
        f"Use the line of best fit to estimate the {told.along}, in {_unit(told.x_unit)}, of a "
        f"{told.thing} with "
        f"{_article(told.up)} {told.up} of {{n}} {told.y_unit}.",
        _y(told, y),
        key,
        "value",
        [
            Step(f"{_said(_y(told, y))} {told.y_unit} stands on the upright axis."),
            Step("Go across from it to the line of best fit."),
            Step(f"From there go down to the axis for {told.along}.", key),
        ],
        [
            (NEAREST_POINT, decimal_node(_x(told, near[0]))),
            (COUNTS_SQUARES, decimal_node(x / 2)),
        ],
    )


def _outlier(told: _Story, cloud: _Cloud, number: int) -> _Made | None:
    gaps = sorted((abs(y - cloud.line(x)), (x, y)) for x, y in cloud.points)
    if gaps[-1][0] <= 2 * gaps[-2][0]:
        return None
    x, y = gaps[-1][1]
    top = max(cloud.points, key=lambda point: (point[1], point[0]))

    def pair(a: Fraction, b: Fraction) -> t.Node:
        return t.pair(decimal_node(a), decimal_node(b))

    key = pair(_x(told, x), _y(told, y))
    return _Made(
        "Write down the coordinates of the outlier.",
        None,
        key,
        "point",
        [
            Step("Look for the point that is far from the line of best fit."),
            Step("Read how far along it is, then how far up.", key),
        ],
        [
            (SWAPPED, pair(_y(told, y), _x(told, x))),
            (COUNTS_SQUARES, pair(Fraction(x, 2), Fraction(y, 2))),
            (HIGHEST, pair(_x(told, top[0]), _y(told, top[1])) if top != (x, y) else None),
        ],
    )


def _below(told: _Story, cloud: _Cloud, number: int) -> _Made | None:
    above = number % 2 == 0
    gaps = [y - cloud.line(x) for x, y in cloud.points]
    over, under = sum(gap > 0 for gap in gaps), sum(gap < 0 for gap in gaps)
    if over == under:
        return None
    key, other = (over, under) if above else (under, over)
    return _Made(
        f"How many points lie {'above' if above else 'below'} the line of best fit?",
        None,
        t.Int(key),
        "integer",
        [
            Step(
                f"Count the points {'above' if above else 'below'} the line, not those on it.",
                t.Int(key),
            )
        ],
        [
            (OTHER_WAY, t.Int(other)),
            (ALL_POINTS, t.Int(len(gaps))),
            (ONE_TOO_MANY, t.Int(len(gaps) - other) if len(gaps) - other != key else None),
        ],
    )


def _said(value: Fraction) -> str:
    return str(float(value)).removesuffix(".0")


def _kept(kind: int, story: int, number: int) -> bool:
    made = _made(kind, story, number)
    if made is None:
        return False
    wrong = [value for _, value in made.wrongs if value is not None and value != made.key]
    return len({*wrong}) == len(wrong) > 1


@register
class ScatterGraphs(Topic):
    """Points read and counted; a line of best fit read, and an outlier; read back, fractions."""

    id = "statistics.scatter-graphs"
    title = "Scatter graphs"
    statements = ("statistics.bivariate",)
    prerequisites = ("graphs.coordinates",)
    misconceptions = (
        *(NEAREST_POINT, OTHER_WAY, ALL_POINTS, ONE_TOO_MANY, OTHER_AXIS, COUNTS_SQUARES),
        *(SWAPPED, HIGHEST, WRONG_SIGN, LINE_MISSING, PART_TO_REST),
    )
    spaces = {
        Tier.SUPPORT: Space(
            _kept,
            kind=(VALUE, MORE, CORRELATION, BELOW),
            story=range(len(_STORIES)),
            number=range(1, 41),
        ),
        Tier.CORE: Space(
            _kept, kind=(ESTIMATE, OUTLIER), story=range(len(_STORIES)), number=range(1, 71)
        ),
        Tier.CHALLENGE: Space(
            _kept, kind=(BACK, FRACTION), story=range(len(_STORIES)), number=range(41, 121)
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, story, number = values
        made = _made(kind, story, number)
        assert made is not None
        figure = _figure(story, _cloud(story, number, kind), best=kind in _WITH_LINE)
        shown = {} if made.number is None else {"n": decimal_node(made.number)}
        simplest = " Give your answer in its simplest form." if kind == FRACTION else ""
        text = prompt(
            f"The scatter graph shows some {_STORIES[story].things}. {made.text}{simplest}", **shown
        )
        return Draft(
            text,
            of_figure(figure, text),
            made.key,
            made.form,
            tuple(made.steps),
            slips(*made.wrongs, key=made.key),
            (kind, story, number),
            figure=figure,
        )
