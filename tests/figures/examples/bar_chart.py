"""Bar charts at random: one series or two, coarse and fine scales."""

from __future__ import annotations

import random

from itembank.figures.kinds.chart.bar_chart import BarChart, Series
from itembank.figures.kinds.chart.chart_axis import scale_fault


def example(chance: random.Random) -> BarChart:
    """Return a bar chart, sound or not."""
    days = ("Mon", "Tue", "Wed", "Thu", "Fri")
    names = chance.choice((days, ("Rose", "Lily", "Iris"), ("7M", "8K", "9S"), days[:4]))
    scale = chance.choice((1, 2, 5, 10, 20, 50, 100))
    between = chance.choice((1, 1, 2, 5))
    if scale % between:
        between = 1
    step = scale // between
    count = chance.choice((1, 1, 2))
    rows = tuple(
        Series(
            tuple(step * chance.randrange(0, 5 * between + 1) for _ in names),
            ("girls", "boys")[which] if count == 2 else "",
        )
        for which in range(count)
    )
    assert scale_fault((scale,), scale, 1) == ""
    return BarChart(names, rows, scale, between, chance.choice(("", "Trays sold")), "")
