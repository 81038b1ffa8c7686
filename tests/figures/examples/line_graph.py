"""Line graphs at random: times, days and months, fine scales and coarse ones."""

from __future__ import annotations

import random

from itembank.figures.kinds.chart.line_graph import LineGraph

NAMES = (
    ("09:00", "10:00", "11:00", "12:00"),
    ("Mon", "Tue", "Wed", "Thu", "Fri"),
    ("March", "April", "May"),
    ("0", "5", "10", "15", "20"),
    ("1 pm", "2 pm"),
)


def example(chance: random.Random) -> LineGraph:
    """Return a line graph, sound or not."""
    names = chance.choice(NAMES)
    scale, between = chance.choice(((1, 1), (2, 2), (5, 5), (10, 2), (10, 5), (50, 1), (2000, 2)))
    step = scale // between
    values = [step * chance.randrange(0, 4 * between + 1) for _ in names]
    title = chance.choice(("", "The greenhouse in spring"))
    along = chance.choice(("", "Time"))
    missing = ""
    if len(names) > 2 and chance.random() < 0.3:
        place = chance.randrange(len(names))
        missing, values[place] = names[place], 0
    points = tuple(zip(names, values, strict=True))
    return LineGraph(points, scale, between, "Temperature", along, title, missing)
