"""Short questions about bar charts that nobody has to see: two bars, all bars, and the axis."""

from __future__ import annotations

from fractions import Fraction

from generators._turns import by_turns
from generators.statistics import _chart_mistakes as m
from itembank.items.item import Draft, Find, Tier
from itembank.items.kinds.brief import Brief, told, whole
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_TWO = (
    "On a bar chart {a} pupils like apples and {b} like pears. How many more like apples?",
    "On a bar chart {a} people swim and {b} people run. How many more people swim?",
    "On a bar chart {a} pupils walk and {b} cycle. How many more pupils walk?",
)


def _more(topic: Topic, tier: Tier, high: int, low: int) -> Draft:
    """Return the question how many more one bar shows than another."""
    a, b, key = t.Int(high), t.Int(low), t.Int(high - low)
    return told(
        by_turns(_TWO, high + low),
        t.sub(a, b),
        key,
        "integer",
        [("Subtract the shorter bar from the longer.", t.equals(t.sub(a, b), key))],
        [(m.ADDS_FOR_MORE, high + low), (m.READS_ONE_OF_TWO, high)],
        ("more", high, low),
        a=a,
        b=b,
    )


def _above(topic: Topic, tier: Tier, low: int, each: int, up: int) -> Draft:
    """Return the question for the height of a bar that ends between two numbers."""
    a, k, n, key = t.Int(low), t.Int(each), t.Int(up), t.Int(low + each * up)
    added = t.Int(each * up)
    return told(
        "A bar ends {n} small steps above {a}. Each small step is worth {k}. What does it show?",
        t.add(a, t.times(n, k)),
        key,
        "integer",
        [
            (f"Find what {up} steps are worth.", t.equals(t.times(n, k), added)),
            (f"Add it to {low}.", t.equals(t.add(a, added), key)),
        ],
        [(m.ONE_EACH, low + up), (m.LINE_BELOW, low), (m.READS_ONE_OF_TWO, each * up)],
        ("above", low, each, up),
        n=n,
        a=a,
        k=k,
    )


def _keep_above(low: int, each: int, up: int) -> bool:
    return low % (5 * each) == 0 and low != each * up


def _fourth(topic: Topic, tier: Tier, total: int, a: int, b: int, c: int) -> Draft:
    """Return the question for the last of four bars, from all of them together."""
    known = [t.Int(n) for n in (a, b, c)]
    added = a + b + c
    all_, key = t.Int(total), t.Int(total - added)
    return told(
        "Four bars show {n} in all. Three show {a}, {b} and {c}. What does the fourth show?",
        t.sub(all_, *known),
        key,
        "integer",
        [
            ("Add the three bars that are known.", t.equals(t.add(*known), t.Int(added))),
            ("Subtract from all.", t.equals(t.sub(all_, t.Int(added)), key)),
        ],
        [
            (m.SUM_OF_SHOWN, added),
            (m.TOTAL_FOR_MISSING, total),
            (m.EACH_ALIKE, whole(Fraction(total, 4))),
        ],
        ("fourth", total, *sorted((a, b, c))),
        n=all_,
        a=known[0],
        b=known[1],
        c=known[2],
    )


def _keep_fourth(total: int, a: int, b: int, c: int) -> bool:
    last = total - a - b - c
    return len({a, b, c, last}) == 4 and 5 <= last <= 30


def _between(topic: Topic, tier: Tier, low: int, count: int, each: int, up: int) -> Draft:
    """Return the question for the height of a bar on an axis whose steps are to be found."""
    high, gap = low + count * each, count * each
    a, b, n, k, single = (t.Int(x) for x in (low, high, count, up, each))
    key, width = t.Int(low + up * each), t.Int(gap)
    return told(
        "From {a} to {b} an axis has {n} small steps. A bar ends {k} above {a}. What does it show?",
        t.add(a, t.times(k, t.Frac(t.sub(b, a), n))),
        key,
        "integer",
        [
            ("Find how far it is between the numbers.", t.equals(t.sub(b, a), width)),
            ("Find what one small step is worth.", t.equals(t.divide(width, n), single)),
            (f"Go {up} steps up from {low}.", t.equals(t.add(a, t.times(k, single)), key)),
        ],
        [(m.ONE_EACH, low + up), (m.LINE_BELOW, low), (m.LINE_ABOVE, high)],
        ("between", low, count, each, up),
        a=a,
        b=b,
        n=n,
        k=k,
    )


def _keep_between(low: int, count: int, each: int, up: int) -> bool:
    return up < count and count != each and low % (count * each) == 0 and low <= 4 * count * each


def _apart(topic: Topic, tier: Tier, small: int, apart: int) -> Draft:
    """Return the question for the longer of two bars, from both together and how far apart."""
    total = 2 * small + apart
    all_, gap, key = t.Int(total), t.Int(apart), t.Int(small + apart)
    x, y = t.Sym("x"), t.Sym("y")
    return told(
        "Two bars show {n} in all. One shows {d} more than the other. What does the longer show?",
        Find(x, (t.equals(t.add(x, y), all_), t.equals(x, t.add(y, gap)))),
        key,
        "integer",
        [
            ("Take away what is more.", t.equals(t.sub(all_, gap), t.Int(2 * small))),
            (
                "Halve it: that is the shorter.",
                t.equals(t.divide(t.Int(2 * small), t.Int(2)), t.Int(small)),
            ),
            ("Add what is more.", t.equals(t.add(t.Int(small), gap), key)),
        ],
        [
            (m.SAME_AS_OTHER, small),
            (m.EACH_ALIKE, Fraction(total, 2)),
            (m.OTHER_WAY, total - apart),
        ],
        ("apart", small, apart),
        n=all_,
        d=gap,
    )


BRIEF = {
    Tier.SUPPORT: (
        Brief(
            _more,
            lambda high, low: low + 3 < high and high != 2 * low,
            {"high": range(18, 53, 3), "low": range(8, 36, 4)},
        ),
    ),
    Tier.CORE: (
        Brief(
            _above, _keep_above, {"low": range(10, 201, 10), "each": (2, 4, 5, 10), "up": (2, 3, 4)}
        ),
        Brief(
            _fourth,
            _keep_fourth,
            {"total": (60, 72, 80, 90), "a": (13, 16, 24), "b": (8, 19, 21), "c": (11, 17, 25)},
        ),
    ),
    Tier.CHALLENGE: (
        Brief(
            _between,
            _keep_between,
            {
                "low": range(20, 401, 20),
                "count": (4, 5, 10),
                "each": (2, 4, 5, 10, 20, 25),
                "up": (2, 3, 7),
            },
        ),
        Brief(
            _apart,
            lambda small, apart: small % 3 != apart % 3 and small != apart,
            {"small": range(9, 36), "apart": (4, 6, 7, 8, 10, 12, 14)},
        ),
    ),
}
"""The short questions of each tier."""
