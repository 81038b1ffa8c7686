"""Scatter graphs: points read, points counted, and values taken from a line of best fit.

England's programme of study for key stage 3 (2013) asks pupils to "describe simple mathematical
relationships between two variables (bivariate data) … and illustrate using scatter graphs" (from
memory). Where a line of best fit should go, and how strong a correlation is, is judged by eye and
left to a person; a type of correlation is asked only where all points rise, or all fall.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.statistics._scatter_clouds import (
    BACK,
    BELOW,
    CORRELATION,
    ESTIMATE,
    FRACTION,
    MORE,
    OUTLIER,
    STORIES,
    VALUE,
    Cloud,
    Half,
    Story,
    _sound,
    article,
    cloud_of,
    figure_of,
    unit_after,
)
from generators.statistics._scatter_in_brief import BRIEF, MISTAKES
from generators.statistics._scatter_lines import (
    Asked,
    estimate,
    estimate_back,
    outlier,
    points_below,
    said,
    value_across,
    value_up,
)
from generators.statistics._scatter_mistakes import (
    ALL_POINTS,
    COUNTS_SQUARES,
    HIGHEST,
    LINE_MISSING,
    NEAREST_POINT,
    ONE_TOO_MANY,
    OTHER_AXIS,
    OTHER_WAY,
    PART_TO_REST,
    SWAPPED,
    WRONG_SIGN,
)
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.forms.form_rules import decimal_node, number_node
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_WITH_LINE = (ESTIMATE, OUTLIER, BELOW, BACK)


def _made(kind: int, story: int, number: int) -> Asked | None:
    """Return what is asked of a cloud, None where it does not fit."""
    cloud, told = cloud_of(story, number, kind), STORIES[story]
    if not _sound(cloud):
        return None
    gaps = [y - cloud.line(x) for x, y in cloud.points]
    # A line of best fit has about as many points on one side as on the other.
    if kind in _WITH_LINE and abs(sum(g > 0 for g in gaps) - sum(g < 0 for g in gaps)) > 2:
        return None
    build = (
        _value,
        _more,
        _correlation,
        estimate,
        outlier,
        points_below,
        estimate_back,
        _fraction,
    )[kind]
    made = build(told, cloud, number)
    # Of one, the unit would be in the singular.
    return None if made is None or made.number == 1 else made


def _value(told: Story, cloud: Cloud, number: int) -> Asked:
    x, y = cloud.points[number % len(cloud.points)]
    near = cloud.points[(number + 1) % len(cloud.points)][1]
    key = decimal_node(value_up(told, y))
    return Asked(
        f"What is the {told.up}, in {unit_after(told.y_unit)}, of the {told.thing} with "
        f"{article(told.along)} {told.along} of {{n}} {told.x_unit}?",
        value_across(told, x),
        key,
        "value",
        [Step(f"Find the point above {said(value_across(told, x))}, and go across from it.", key)],
        [
            (COUNTS_SQUARES, decimal_node(Fraction(y, 2))),
            (OTHER_AXIS, decimal_node(value_across(told, x))),
            (NEAREST_POINT, decimal_node(value_up(told, near))),
        ],
    )


def _limit(cloud: Cloud, number: int) -> Half | None:
    """Return a whole square up that a point stands on, with others on both sides."""
    heights = sorted(y for _, y in cloud.points)
    fits = [y for y in heights[1:-1] if y % 2 == 0 and heights[0] < y < heights[-1]]
    return fits[number % len(fits)] if fits else None


def _more(told: Story, cloud: Cloud, number: int) -> Asked | None:
    limit = _limit(cloud, number)
    if limit is None:
        return None
    over = sum(y > limit for _, y in cloud.points)
    under = sum(y < limit for _, y in cloud.points)
    value, count = said(value_up(told, limit)), len(cloud.points)
    return Asked(
        f"How many {told.things} have {article(told.up)} {told.up} of more than {{n}} "
        f"{told.y_unit}?",
        value_up(told, limit),
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


def _fraction(told: Story, cloud: Cloud, number: int) -> Asked | None:
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
    return Asked(
        f"What fraction of the {told.things} have {article(told.up)} {told.up} of more than {{n}} "
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


def _correlation(told: Story, cloud: Cloud, number: int) -> Asked | None:
    heights = [y for _, y in cloud.points]
    if sorted(heights, reverse=not told.rises) != heights or len({*heights}) < len(heights):
        return None
    key, other = ("positive", "negative") if told.rises else ("negative", "positive")
    way = "up" if told.rises else "down"
    return Asked(
        "Is the correlation positive or negative?",
        None,
        t.Label(key),
        "name",
        [Step(f"As one goes up, the other goes {way}.", t.Label(key))],
        [(WRONG_SIGN, t.Label(other)), (LINE_MISSING, t.Label("no correlation"))],
    )


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
        *MISTAKES,
        *(NEAREST_POINT, OTHER_WAY, ALL_POINTS, ONE_TOO_MANY, OTHER_AXIS, COUNTS_SQUARES),
        *(SWAPPED, HIGHEST, WRONG_SIGN, LINE_MISSING, PART_TO_REST),
    )
    spaces = {
        Tier.SUPPORT: Space(
            _kept,
            kind=(VALUE, MORE, CORRELATION, BELOW),
            story=range(len(STORIES)),
            number=range(1, 41),
        ),
        Tier.CORE: Space(
            _kept, kind=(ESTIMATE, OUTLIER), story=range(len(STORIES)), number=range(1, 71)
        ),
        Tier.CHALLENGE: Space(
            _kept, kind=(BACK, FRACTION), story=range(len(STORIES)), number=range(41, 121)
        ),
    }
    spaces = with_brief(spaces, BRIEF)
    spaces = kinds.with_statements(spaces, 60)
    spaces = kinds.with_people_asked(spaces, "statistics.scatter-graphs")

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, story, number = values
        made = _made(kind, story, number)
        assert made is not None
        figure = figure_of(story, cloud_of(story, number, kind), best=kind in _WITH_LINE)
        shown = {} if made.number is None else {"n": decimal_node(made.number)}
        simplest = " Give your answer in its simplest form." if kind == FRACTION else ""
        text = prompt(
            f"The scatter graph shows some {STORIES[story].things}. {made.text}{simplest}", **shown
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
