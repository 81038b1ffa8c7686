"""Which of some arrows on a number line points to a fraction."""

from __future__ import annotations

from itertools import pairwise
from math import gcd

from generators.fractions._order_mistakes import FROM_THE_END, LINE_AS_WHOLE, STEPS_COUNTED
from itembank.figures.kinds.number.number_line import NumberLine
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

Pair = tuple[int, int]


def bar_as_point(top: int, bottom: int) -> int:
    """Return a fraction whose bar is read as a decimal point, in thousandths: 3/4 as 3.4."""
    return 1000 * top + (100 if bottom < 10 else 10) * bottom


def arrows_at(ones: int, b: int, a: int, k: int) -> tuple[int, ...]:
    """Return how many steps from 0 the fraction a/b stands, and where the wrong methods put it.

    The line goes from 0 to `ones`, and b × k of its steps make 1.
    """
    steps = ones * b * k
    return (a * k, a, steps - a * k, *((2 * a * k,) if ones == 2 and a < b else ()))


def arrows_fit(ones: int, b: int, a: int, k: int) -> bool:
    """Keep a fraction whose arrow stands apart from those of the wrong methods."""
    steps = ones * b * k
    if gcd(a, b) != 1 or a >= ones * b or steps > 24 or a == 1:
        return False
    places = sorted(arrows_at(ones, b, a, k))
    return all(12 * (q - p) >= steps for p, q in pairwise(places))


def which_arrow(topic: Topic, tier: Tier, ones: int, b: int, a: int, k: int) -> Draft:
    """Return a line with an arrow at a/b, and one at each place where it might be put."""
    steps = ones * b * k
    places = arrows_at(ones, b, a, k)
    names = dict(zip(sorted(places), "ABCD", strict=False))
    figure = NumberLine(
        t.Int(0),
        t.Int(ones),
        steps,
        (steps // 2,) if ones == 2 else (),
        tuple((name, at) for at, name in names.items()),
    )
    fraction = t.frac(a, b)
    text = prompt("Which arrow points to {f}?", f=fraction)
    right, counted, other, *doubled = places
    key = t.Label(names[right])
    wrong = slips(
        (STEPS_COUNTED, t.Label(names[counted])),
        (FROM_THE_END, t.Label(names[other])),
        *((LINE_AS_WHOLE, t.Label(names[at])) for at in doubled),
    )
    over = f"{b * k} steps make 1, so write the fraction over {b * k}."
    told = (
        Step(over, t.equals(fraction, t.frac(a * k, b * k))),
        Step(f"Count {a * k} steps from 0.", key),
    )
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "name",
        told,
        wrong,
        ("arrow", ones, a, b, k),
        figure=figure,
    )
