"""How short questions about charts and tables are worked out again from the printed text.

Where a list of what was counted can be written out, it is, and the standard library's
:mod:`statistics` or a count of the list gives the answer.
"""

from __future__ import annotations

import statistics
from fractions import Fraction


def of_turn(total, some):
    """Return the angle of some of all, by adding up one angle at a time."""
    single = Fraction(360) / total
    return sum(single for _ in range(int(some)))


def in_turn(total, angle):
    """Return how many stand in an angle, by counting how often one's angle fits."""
    return angle * total / 360


def on_line(first, last, x):
    (x1, y1), (x2, y2) = first, last
    fit = statistics.linear_regression((x1, x2), (y1, y2))
    return Fraction(fit.intercept + fit.slope * x).limit_denominator(1000)


def place_on_line(x1, y1, x2, y2, y):
    return next(x for n in range(2000) if on_line((x1, y1), (x2, y2), x := Fraction(n, 10)) == y)


def mean_of(*pairs):
    return statistics.mean(value for count, value in pairs for _ in range(int(count)))


def value_for_mean(a, p, b, mean):
    return next(x for x in range(500) if mean_of((a, p), (b, Fraction(x))) == mean)


def longer(total, apart):
    return next(a for a in range(int(total)) if a - (total - a) == apart)


PIES = {
    "On a pie chart {} stands for one {w}. What angle stands for {} {w}?": lambda single, n: (
        single * n
    ),
    "On a pie chart {} stands for one {w}. How many {w} does {} stand for?": lambda single, a: (
        a / single
    ),
    "A pie chart shows {} {w}. What angle stands for {} of them?": of_turn,
    "A pie chart shows {} {w}. How many {w} does an angle of {} stand for?": in_turn,
    "On a pie chart {} stands for {} {w}. What angle stands for {} {w}?": (
        lambda angle, some, others: of_turn(360 / (angle / some), others)
    ),
    "Three of the four angles of a pie chart are {}, {} and {}. What is the fourth?": (
        lambda *known: 360 - sum(known)
    ),
    "On a pie chart {} stands for {} {w}. How many {w} does the whole chart show?": (
        lambda angle, some: next(n for n in range(1, 400) if in_turn(n, angle) == some)
    ),
    "A pie chart shows {} {w}. How many more {w} does {} stand for than {}?": (
        lambda total, a, b: in_turn(total, a) - in_turn(total, b)
    ),
}
LINES = {
    "The temperature was {} in the morning and {} at noon. By how much did it rise?": (
        lambda a, b: b - a
    ),
    "A pond was {} deep on Monday and {} on Tuesday. By how much did it rise?": lambda a, b: b - a,
    "A sunflower was {} tall in May and {} tall in June. By how much did it grow?": (
        lambda a, b: b - a
    ),
    "On an axis {} small steps go from {} to {}. What is one small step worth?": (
        lambda n, a, b: (b - a) / n
    ),
    "On an axis {} small steps go from {} to {}. What number is {} small steps above {}?": (
        lambda n, a, b, k, base: base + k * (b - a) / n
    ),
    "In {} a tank fills steadily from {} to {} deep. How deep is it after {}?": (
        lambda h, a, b, k: on_line((0, a), (h, b), k)
    ),
}
SQUARES = {
    "A square of a pictogram stands for {} {w}. How many {w} do {} squares show?": (
        lambda each, n: each * n
    ),
    "A square of a pictogram stands for {} {w}. How many squares show {} {w}?": (
        lambda each, things: things / each
    ),
    "In a pictogram {} squares stand for {} {w}. How many does one square stand for?": (
        lambda n, things: next(number for number in range(1, 100) if number * n == things)
    ),
    "In a pictogram {} squares show {} {w}. How many {w} do {} squares show?": (
        lambda n, things, other: things / n * other
    ),
}
BARS = {
    "On a bar chart {} pupils like apples and {} like pears. How many more like apples?": (
        lambda a, b: a - b
    ),
    "On a bar chart {} people swim and {} people run. How many more people swim?": (
        lambda a, b: a - b
    ),
    "On a bar chart {} pupils walk and {} cycle. How many more pupils walk?": lambda a, b: a - b,
    "A bar ends {} small steps above {}. Each small step is worth {}. What does it show?": (
        lambda n, base, each: base + n * each
    ),
    "Four bars show {} in all. Three show {}, {} and {}. What does the fourth show?": (
        lambda total, *known: total - sum(known)
    ),
    "From {} to {} an axis has {} small steps. A bar ends {} above {}. What does it show?": (
        lambda a, b, n, k, base: base + k * (b - a) / n
    ),
    "Two bars show {} in all. One shows {} more than the other. What does the longer show?": longer,
}
FITS = {
    "A line of best fit is y = {}x + {}. What value of y does it give for x = {}?": (
        lambda slope, start, x: on_line((0, start), (1, start + slope), x)
    ),
    "A line of best fit is y = {}x + {}. For what value of x does it give y = {}?": (
        lambda slope, start, y: place_on_line(0, start, 1, start + slope, y)
    ),
    "A line of best fit goes through ({}, {}) and ({}, {}). What is y when x = {}?": (
        lambda a, b, c, d, x: on_line((a, b), (c, d), x)
    ),
    "A line of best fit goes through ({}, {}) and ({}, {}). For what x is y = {}?": place_on_line,
}
CELLS = {
    "A class has {} pupils. {} of them walk and the rest come by bus. How many come by bus?": (
        lambda n, a: n - a
    ),
    "A club has {} members. {} of them are adults. How many are children?": lambda n, a: n - a,
    "A garden has {} tulips. {} of them are red. How many are not red?": lambda n, a: n - a,
    **{
        wording: lambda a, b, c: a + b - c
        for wording in (
            "A club has {} adults and {} children. {} of them swim. How many do not swim?",
            "A garden has {} roses and {} tulips. {} of them are red. How many are not red?",
            "A class has {} boys and {} girls. {} of them walk. How many do not walk?",
        )
    },
    **{
        wording: lambda n, row, column, both: (
            n - len({*range(int(row))} | {*range(int(row - both), int(row - both + column))})
        )
        for wording in (
            "Of {} members {} are adults. {} swim, {} of them adults. "
            "How many children do not swim?",
            "Of {} flowers {} are roses. {} are red, {} of them roses. "
            "How many others are not red?",
            "Of {} pupils {} are boys. {} walk, {} of them boys. How many girls do not walk?",
        )
    },
}
MEANS = {
    "{} trays hold {} plants each and another holds {}. How many plants is that in all?": (
        lambda a, p, q: a * p + q
    ),
    "{} buses carry {} people each and another carries {}. How many people is that in all?": (
        lambda a, p, q: a * p + q
    ),
    "{} pupils score {} points altogether. What is the mean score?": lambda n, s: s / n,
    "{} trays hold {} plants altogether. What is the mean for one tray?": lambda n, s: s / n,
    "{} buses carry {} people altogether. What is the mean for one bus?": lambda n, s: s / n,
    **{
        wording: lambda a, p, b, q: mean_of((a, p), (b, q))
        for wording in (
            "{} trays hold {} plants each and {} hold {} each. What is the mean for one tray?",
            "{} pupils score {} each and {} pupils score {} each. What is the mean score?",
            "{} buses carry {} people each and {} carry {} each. What is the mean for one bus?",
        )
    },
    "{} pupils score {} each. {} more score x each. The mean of all is {}. What is x?": (
        value_for_mean
    ),
    "{} trays hold {} plants each and {} hold x each. The mean is {}. What is x?": value_for_mean,
}
TOPICS = {
    "statistics.pie-charts": PIES,
    "statistics.line-graphs": LINES,
    "statistics.pictograms": SQUARES,
    "statistics.bar-charts": BARS,
    "statistics.scatter-graphs": FITS,
    "statistics.two-way-tables": CELLS,
    "statistics.averages-from-tables": MEANS,
}
