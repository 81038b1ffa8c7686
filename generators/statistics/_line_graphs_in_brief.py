"""Short questions about line graphs that nobody has to see: their axes, and how they change."""

from __future__ import annotations

from generators._turns import by_turns
from generators.statistics import _chart_mistakes as m
from itembank.items.item import Draft, Misconception, Tier
from itembank.items.kinds.brief import Brief, told
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

STEPS_AS_WORTH = Misconception(
    "statistics.steps-as-worth",
    "gives how many small steps there are, and not what each is worth",
    "How far is it from one number of the axis to the next? In how many steps?",
)
WHOLE_GAP = Misconception(
    "statistics.whole-gap-for-step",
    "takes a small step for the whole way from one number to the next",
    "How many small steps go from one number to the next?",
)
WHOLE_CHANGE = Misconception(
    "statistics.whole-change",
    "takes the whole change, and not the part of it for the time asked for",
    "How long does the whole change take? What part of that time is asked for?",
)
CHANGE_ALONE = Misconception(
    "statistics.change-alone",
    "finds the change and forgets where it started",
    "How high was it at the start?",
)
MISTAKES = (STEPS_AS_WORTH, WHOLE_GAP, WHOLE_CHANGE, CHANGE_ALONE)

_RISES = (
    ("The temperature was {a} in the morning and {b} at noon. By how much did it rise?", "°C"),
    ("A pond was {a} deep on Monday and {b} on Tuesday. By how much did it rise?", "cm"),
    ("A sunflower was {a} tall in May and {b} tall in June. By how much did it grow?", "cm"),
)


def _rise(topic: Topic, tier: Tier, low: int, high: int) -> Draft:
    """Return the question for the change from one reading to a later one."""
    text, unit = by_turns(_RISES, low + high)
    a, b, key = (t.Quantity(t.Int(n), unit) for n in (low, high, high - low))
    return told(
        text,
        t.sub(b, a),
        key,
        "quantity",
        [("Subtract to find the change.", t.equals(t.sub(b, a), key))],
        [(m.ADDS_FOR_CHANGE, low + high), (m.END_OF_CHANGE, high)],
        ("rise", low, high),
        a=a,
        b=b,
    )


def _small_step(topic: Topic, tier: Tier, low: int, count: int, each: int) -> Draft:
    """Return the question what one small step of an axis is worth."""
    high = low + count * each
    a, b, n, key = t.Int(low), t.Int(high), t.Int(count), t.Int(each)
    gap = t.Int(count * each)
    return told(
        "On an axis {n} small steps go from {a} to {b}. What is one small step worth?",
        t.divide(t.Bracket(t.sub(b, a)), n),
        key,
        "integer",
        [
            ("Find how far it is between the numbers.", t.equals(t.sub(b, a), gap)),
            ("Divide by the number of steps.", t.equals(t.divide(gap, n), key)),
        ],
        [(STEPS_AS_WORTH, count), (m.ONE_EACH, 1), (WHOLE_GAP, count * each)],
        ("step", low, count, each),
        n=n,
        a=a,
        b=b,
    )


def _keep_small_step(low: int, count: int, each: int) -> bool:
    return count != each and low % (count * each) == 0 and low <= 3 * count * each


def _above(topic: Topic, tier: Tier, low: int, count: int, each: int, up: int) -> Draft:
    """Return the question for the height some small steps above a number of an axis."""
    high, gap = low + count * each, count * each
    a, b, n, k, key = (t.Int(x) for x in (low, high, count, up, low + up * each))
    single = t.Int(each)
    return told(
        "On an axis {n} small steps go from {a} to {b}. What number is {k} small steps above {a}?",
        t.add(a, t.times(k, t.Frac(t.sub(b, a), n))),
        key,
        "integer",
        [
            ("Find how far it is between the numbers.", t.equals(t.sub(b, a), t.Int(gap))),
            ("Find what one small step is worth.", t.equals(t.divide(t.Int(gap), n), single)),
            (f"Go {up} steps up from {low}.", t.equals(t.add(a, t.times(k, single)), key)),
        ],
        [(m.COUNTS_SMALL_STEPS, low + up), (CHANGE_ALONE, up * each), (m.LINE_ABOVE_POINT, high)],
        ("above", low, count, each, up),
        n=n,
        a=a,
        b=b,
        k=k,
    )


def _keep_above(low: int, count: int, each: int, up: int) -> bool:
    gap = count * each
    return 1 < up < count and count != each and low % gap == 0 and low <= 3 * gap


def _steady(topic: Topic, tier: Tier, low: int, rate: int, hours: int, later: int) -> Draft:
    """Return the question for the reading between two, on a straight stretch."""
    high, change = low + rate * hours, rate * hours
    a, b, whole_change, key = (
        t.Quantity(t.Int(n), "cm") for n in (low, high, change, low + rate * later)
    )
    h, k = t.Quantity(t.Int(hours), "h"), t.Quantity(t.Int(later), "h")
    each = t.Quantity(t.Int(rate), "cm")
    return told(
        "In {h} a tank fills steadily from {a} to {b} deep. How deep is it after {k}?",
        t.add(a, t.times(t.Frac(k, h), t.Bracket(t.sub(b, a)))),
        key,
        "quantity",
        [
            ("Find the whole change.", t.equals(t.sub(b, a), whole_change)),
            ("Find the change in one hour.", t.equals(t.divide(whole_change, t.Int(hours)), each)),
            (
                f"Add {later} of them to the first depth.",
                t.equals(t.add(a, t.times(t.Int(later), each)), key),
            ),
        ],
        [
            (CHANGE_ALONE, rate * later),
            (WHOLE_CHANGE, low + change),
            (m.COUNTS_SMALL_STEPS, low + later),
        ],
        ("steady", low, rate, hours, later),
        a=a,
        b=b,
        h=h,
        k=k,
    )


def _keep_steady(low: int, rate: int, hours: int, later: int) -> bool:
    return later < hours and rate != hours and 2 * later != hours


BRIEF = {
    Tier.SUPPORT: (
        Brief(
            _rise,
            lambda low, high: low + 4 <= high <= low + 19 and high != 2 * low,
            {"low": range(5, 17), "high": range(11, 31, 2)},
        ),
    ),
    Tier.CORE: (
        Brief(
            _small_step,
            _keep_small_step,
            {"low": range(0, 151, 10), "count": (4, 5, 10), "each": (2, 5, 10, 20, 25)},
        ),
        Brief(
            _above,
            _keep_above,
            {"low": range(20, 151, 10), "count": (4, 5), "each": (2, 5, 10, 20), "up": (2, 3, 4)},
        ),
    ),
    Tier.CHALLENGE: (
        Brief(
            _steady,
            _keep_steady,
            {
                "low": (12, 15, 20, 35),
                "rate": (3, 6, 8, 12),
                "hours": (3, 5, 6, 8),
                "later": (2, 5, 7),
            },
        ),
    ),
}
"""The short questions of each tier."""
