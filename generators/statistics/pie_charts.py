"""Pie charts: reading sectors, an angle that is missing, and how many a sector stands for.

England's programme of study for key stage 3 (2013) asks pupils to "construct and interpret ...
pie charts ... for categorical data" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._scatter import unlike
from generators.statistics import _chart_mistakes as m
from generators.statistics._charts import Wrongs
from itembank.figures.kinds.pie_chart import PieChart
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.forms.form_rules import decimal_node, number_node
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

# What is counted, the names of the sectors, what was done, and what is shown.
_STORIES = (
    ("pupils", ("bus", "car", "bike", "train"), "came by", "how pupils came to school"),
    ("pupils", ("rose", "tulip", "iris", "daisy"), "chose", "the flower that pupils chose"),
    ("people", ("soup", "pasta", "curry", "salad"), "chose", "the dish that people chose"),
    ("swimmers", ("crawl", "fly", "breast", "back"), "chose", "the stroke that swimmers chose"),
    ("plants", ("beans", "peas", "leeks", "kale"), "are", "the plants on an allotment"),
)
_STEP = 10
_TOTALS = (12, 18, 24, 36, 60, 72, 90, 120, 180)


def _angles(story: int, seed: int) -> tuple[int, ...] | None:
    """Return the angles of four sectors in steps of 10 degrees, or None where they do not fit."""
    first = tuple(_STEP * step for step in unlike(story + len(_STORIES) * seed, 3, 5, 17))
    last = 360 - sum(first)
    angles = (*first, last)
    if last < 5 * _STEP or last > 200 or len({*angles}) < 4 or 90 in angles:
        return None
    return angles


class _Ask:
    """What is asked."""

    MOST, MISSING, FRACTION, COUNT, EACH, MORE = range(6)


def _support(ask: int, story: int, total: int, seed: int) -> bool:
    angles = _angles(story, seed)
    if angles is None:
        return False
    if ask == _Ask.MOST:
        return total == _TOTALS[0] and angles[0] != max(angles)
    # The same for every pie of so many: a few of each are enough.
    return seed < 60 and all(_count(total, angle).denominator == 1 for angle in angles)


def _count(total: int, degrees: int) -> Fraction:
    return Fraction(total * degrees, 360)


def _core(ask: int, story: int, total: int, seed: int) -> bool:
    angles = _angles(story, seed)
    if angles is None:
        return False
    degrees = angles[seed % 4]
    if ask == _Ask.MISSING:
        return total == _TOTALS[0] and degrees != 180
    if ask == _Ask.FRACTION:
        return total == _TOTALS[0] and degrees not in (180, 120, 72)
    if any(_count(total, angle).denominator > 1 for angle in angles):
        return False
    return _count(total, degrees) not in (degrees, Fraction(total, 4))


def _challenge(ask: int, story: int, total: int, seed: int) -> bool:
    angles = _angles(story, seed)
    if angles is None or any(_count(total, angle).denominator > 1 for angle in angles):
        return False
    first, second = _two(seed)
    a, b = _count(total, angles[first]), _count(total, angles[second])
    gap = abs(a - b)
    return gap not in (a, b, abs(angles[first] - angles[second]))


def _two(seed: int) -> tuple[int, int]:
    first = seed % 4
    return first, (first + 1 + seed // 4 % 3) % 4


@register
class PieCharts(Topic):
    """The largest sector and a missing angle; fractions and numbers; how many more."""

    id = "statistics.pie-charts"
    title = "Pie charts"
    statements = ("statistics.charts",)
    prerequisites = ("fractions.of-quantity", "fractions.lowest-terms")
    misconceptions = (
        *(
            m.OTHER_END,
            m.FIRST_IN_LINE,
            m.TURN_IS_180,
            m.ADDS_ANGLES,
            m.OUT_OF_100,
            m.ANGLE_AS_COUNT,
        ),
        *(
            m.QUARTER_EACH,
            m.DIVIDES_BY_ANGLE,
            m.DEGREES_FOR_MORE,
            m.ADDS_FOR_MORE,
            m.OTHER_PART,
            m.TOTAL_AS_DEGREES,
            m.NEXT_ANGLE,
            m.READS_ONE_OF_TWO,
        ),
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support,
            ask=(_Ask.MOST, _Ask.EACH),
            story=range(len(_STORIES)),
            total=_TOTALS,
            seed=range(1, 110),
        ),
        Tier.CORE: Space(
            _core,
            ask=(_Ask.MISSING, _Ask.FRACTION, _Ask.COUNT),
            story=range(len(_STORIES)),
            total=_TOTALS,
            seed=range(1, 110),
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            ask=(_Ask.MORE,),
            story=range(len(_STORIES)),
            total=_TOTALS,
            seed=range(110, 300),
        ),
    }
    spaces = kinds.with_statements(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        ask, story, total, seed = values
        angles = _angles(story, seed)
        assert angles is not None
        if ask in _ALONE:
            return _ALONE[ask](story, angles, seed)
        return _OF_ALL[ask](story, angles, total, seed)


def _pie(story: int, angles: tuple[int, ...], total: int = 0, hidden: int = -1) -> PieChart:
    thing, names, _, _ = _STORIES[story]
    letters = ((names[hidden], "x"),) if hidden >= 0 else ()
    return PieChart(tuple(zip(names, angles, strict=True)), thing, total, letters=letters)


def _lead(story: int) -> str:
    return f"The pie chart shows {_STORIES[story][3]}."


def _most(story: int, angles: tuple[int, ...], seed: int) -> Draft:
    _, names, _, _ = _STORIES[story]
    most = seed % 2 == 0
    best = names[angles.index((max if most else min)(angles))]
    other = names[angles.index((min if most else max)(angles))]
    figure = _pie(story, angles)
    text = (f"{_lead(story)} Which sector is the {'largest' if most else 'smallest'}?",)
    key = t.Label(best)
    turned = sorted(angles)
    second = names[angles.index(turned[-2] if most else turned[1])]
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "name",
        (
            Step(
                f"The {'largest' if most else 'smallest'} sector has the "
                f"{'largest' if most else 'smallest'} angle.",
                key,
            ),
        ),
        slips((m.OTHER_END, t.Label(other)), (m.NEXT_ANGLE, t.Label(second)), key=key),
        ("most", most, *angles),
        figure=figure,
    )


def _missing(story: int, angles: tuple[int, ...], seed: int) -> Draft:
    place = seed % 4
    hidden = angles[place]
    known = [angle for at, angle in enumerate(angles) if at != place]
    figure = _pie(story, angles, hidden=place)
    x = t.Sym("x")
    text = prompt(f"{_lead(story)} Work out the value of {{x}}.", x=x)
    key = t.equals(x, t.Int(hidden))
    added = sum(known)
    wrong: list[tuple[Any, t.Node]] = [(m.ADDS_ANGLES, t.equals(x, t.Int(added)))]
    if added < 180:
        wrong.append((m.TURN_IS_180, t.equals(x, t.Int(180 - added))))
    else:
        wrong.append((m.QUARTER_EACH, t.equals(x, t.Int(90))))
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "solution",
        (
            Step(
                "Add the angles that are known.", t.equals(t.add(*map(t.Int, known)), t.Int(added))
            ),
            Step(
                "The angles add up to 360°.",
                t.equals(t.add(x, t.Int(added)), t.Int(360)),
            ),
            Step(f"Subtract {added} from 360.", key),
        ),
        slips(*wrong, key=key),
        ("missing", place, *angles),
        figure=figure,
    )


def _fraction(story: int, angles: tuple[int, ...], seed: int) -> Draft:
    thing, names, verb, _ = _STORIES[story]
    degrees, name = angles[seed % 4], names[seed % 4]
    figure = _pie(story, angles)
    text = (
        f"{_lead(story)} What fraction of the {thing} {verb} {name}? "
        "Give your answer in its simplest form.",
    )
    key = number_node(Fraction(degrees, 360))
    unlike_ = t.frac(degrees, 360)
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "lowest-terms",
        (
            Step("The whole circle is 360°.", unlike_),
            Step("Write it in its simplest form.", t.equals(unlike_, key)),
        ),
        slips(
            (m.OUT_OF_100, number_node(Fraction(degrees, 100))),
            (m.QUARTER_EACH, number_node(Fraction(1, 4))),
            (m.OTHER_PART, number_node(Fraction(360 - degrees, 360))),
            key=key,
        ),
        ("fraction", name, *angles),
        figure=figure,
    )


def _worked(total: int, degrees: int, say: str) -> Step:
    part = number_node(Fraction(degrees, 360))
    return Step(
        say,
        t.equals(t.times(part, t.Int(total)), t.Int(int(_count(total, degrees)))),
    )


def _how_many(story: int, angles: tuple[int, ...], total: int, seed: int) -> Draft:
    thing, names, verb, _ = _STORIES[story]
    degrees, name = angles[seed % 4], names[seed % 4]
    figure = _pie(story, angles, total)
    text = (f"{_lead(story)} How many {thing} {verb} {name}?",)
    key = t.Int(int(_count(total, degrees)))
    part = number_node(Fraction(degrees, 360))
    wrong: Wrongs = [
        (m.ANGLE_AS_COUNT, degrees),
        (m.QUARTER_EACH, Fraction(total, 4) if total % 4 == 0 else None),
        (m.DIVIDES_BY_ANGLE, Fraction(360, degrees) if 360 % degrees == 0 else None),
        (m.OTHER_PART, total - key.n),
    ]
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "integer",
        (
            Step("Write the angle as a fraction of 360°.", t.equals(t.frac(degrees, 360), part)),
            _worked(total, degrees, "Find that fraction of all."),
        ),
        slips(*wrong, key=key),
        ("count", name, total, *angles),
        figure=figure,
    )


def _more(story: int, angles: tuple[int, ...], total: int, seed: int) -> Draft:
    thing, names, verb, _ = _STORIES[story]
    first, second = _two(seed)
    if angles[first] < angles[second]:
        first, second = second, first
    figure = _pie(story, angles, total)
    a, b = (int(_count(total, angles[place])) for place in (first, second))
    fewer = seed % 2 == 1
    text = (
        f"{_lead(story)} How many fewer {thing} {verb} {names[second]} than {names[first]}?"
        if fewer
        else f"{_lead(story)} How many more {thing} {verb} {names[first]} than {names[second]}?",
    )
    key = t.Int(a - b)
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "integer",
        (
            _worked(total, angles[first], f"Find how many {verb} {names[first]}."),
            _worked(total, angles[second], f"Find how many {verb} {names[second]}."),
            Step("Subtract.", t.equals(t.sub(t.Int(a), t.Int(b)), key)),
        ),
        slips(
            (m.DEGREES_FOR_MORE, angles[first] - angles[second]),
            (m.ADDS_FOR_MORE, a + b),
            (m.READS_ONE_OF_TWO, b if fewer else a),
            key=key,
        ),
        ("more", total, names[first], names[second], *angles),
        figure=figure,
    )


def _each(story: int, angles: tuple[int, ...], total: int, seed: int) -> Draft:
    thing = _STORIES[story][0]
    single = {"people": "person"}.get(thing, thing.removesuffix("s"))
    figure = _pie(story, angles, total)
    text = (f"{_lead(story)} How many degrees stand for one {single}?",)
    degrees = 360 // total
    key = t.Quantity(t.Int(degrees), "°")
    half, hundredth = Fraction(180, total), Fraction(100, total)
    wrong: list[tuple[Any, t.Node]] = [
        (m.TOTAL_AS_DEGREES, t.Quantity(t.Int(total), "°")),
        (m.TURN_IS_180, t.Quantity(decimal_node(half), "°")),
    ]
    if (hundredth * 10).denominator == 1:
        wrong.append((m.OUT_OF_100, t.Quantity(decimal_node(hundredth), "°")))
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "quantity",
        (
            Step(
                f"All 360° stand for {total} {thing}: divide by {total}.",
                t.equals(t.divide(t.Quantity(t.Int(360), "°"), t.Int(total)), key),
            ),
        ),
        slips(*wrong, key=key),
        ("each", total, *angles),
        figure=figure,
        constants=(360,),
    )


_ALONE = {_Ask.MOST: _most, _Ask.MISSING: _missing, _Ask.FRACTION: _fraction}
_OF_ALL = {_Ask.COUNT: _how_many, _Ask.MORE: _more, _Ask.EACH: _each}
