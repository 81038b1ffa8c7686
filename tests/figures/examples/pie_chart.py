"""Pie charts at random: two to six sectors, right angles, letters, totals that divide."""

from __future__ import annotations

import random

from itembank.figures.kinds.chart.pie_chart import PieChart

NAMES = ("Bus", "Walk", "Cycle", "Carrots", "Leeks", "Butterfly", "Back", "7M", "Kale")


def example(chance: random.Random) -> PieChart:
    """Return a pie chart, sound or not."""
    count = chance.randrange(2, 7)
    step = chance.choice((1, 5, 10, 30))
    cuts = sorted(chance.sample(range(step, 360, step), count - 1))
    if chance.random() < 0.3:
        cuts = sorted({90, *cuts})
    degrees = [b - a for a, b in zip([0, *cuts], [*cuts, 360], strict=True)]
    names = chance.sample(NAMES, len(degrees))
    total = chance.choice((0, 12, 36, 60, 72, 90, 360, 720))
    title = chance.choice(("", "How pupils travel"))
    letters = ((chance.choice(names), chance.choice("xyn")),) if chance.random() < 0.4 else ()
    sectors = tuple(zip(names, degrees, strict=True))
    return PieChart(sectors, "pupils" if total else "", total, title, letters)
