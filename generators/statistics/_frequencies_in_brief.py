"""Short questions about averages from frequencies that need no table."""

from __future__ import annotations

from fractions import Fraction

from generators._turns import by_turns
from generators.statistics import _average_mistakes as m
from itembank.items.item import Draft, Find, Tier
from itembank.items.kinds.brief import Brief, told, whole
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_ALL = (
    "{a} trays hold {p} plants each and another holds {q}. How many plants is that in all?",
    "{a} buses carry {p} people each and another carries {q}. How many people is that in all?",
)
_SHARED = (
    "{n} pupils score {s} points altogether. What is the mean score?",
    "{n} trays hold {s} plants altogether. What is the mean for one tray?",
    "{n} buses carry {s} people altogether. What is the mean for one bus?",
)
_MEAN = (
    "{a} trays hold {p} plants each and {b} hold {q} each. What is the mean for one tray?",
    "{a} pupils score {p} each and {b} pupils score {q} each. What is the mean score?",
    "{a} buses carry {p} people each and {b} carry {q} each. What is the mean for one bus?",
)
_MISSING = (
    "{a} pupils score {p} each. {b} more score {x} each. The mean of all is {c}. What is {x}?",
    "{a} trays hold {p} plants each and {b} hold {x} each. The mean is {c}. What is {x}?",
)


def _terms(a: int, p: int, b: int, q: int) -> tuple[t.Node, t.Node]:
    return t.times(t.Int(a), t.Int(p)), t.times(t.Int(b), t.Int(q))


def _all(topic: Topic, tier: Tier, a: int, p: int, q: int) -> Draft:
    """Return the question for the total of a value with its frequency and one other."""
    first = t.times(t.Int(a), t.Int(p))
    key = t.Int(a * p + q)
    return told(
        by_turns(_ALL, a + p + q),
        t.add(first, t.Int(q)),
        key,
        "integer",
        [
            ("Multiply the value by its frequency.", t.equals(first, t.Int(a * p))),
            ("Add the other.", t.equals(t.add(t.Int(a * p), t.Int(q)), key)),
        ],
        [(m.ADDS_VALUES, p + q), (m.FREQUENCIES_ALONE, a + 1)],
        ("all", a, p, q),
        a=t.Int(a),
        p=t.Int(p),
        q=t.Int(q),
    )


def _shared(topic: Topic, tier: Tier, count: int, mean: int) -> Draft:
    """Return the question for the mean of some values, from their total."""
    total, n, key = t.Int(count * mean), t.Int(count), t.Int(mean)
    return told(
        by_turns(_SHARED, count + mean),
        t.divide(total, n),
        key,
        "integer",
        [("Divide the total by how many there are.", t.equals(t.divide(total, n), key))],
        [
            (m.TOTAL_ONLY, count * mean),
            (m.HALVES_TOTAL, whole(Fraction(count * mean, 2))),
            (m.FREQUENCIES_ALONE, count),
        ],
        ("shared", count, mean),
        n=n,
        s=total,
    )


def _mean(topic: Topic, tier: Tier, a: int, p: int, b: int, q: int) -> Draft:
    """Return the question for the mean of two values with their frequencies."""
    first, second = _terms(a, p, b, q)
    total, count = a * p + b * q, a + b
    key = t.Int(total // count)
    return told(
        by_turns(_MEAN, a + b + p + q),
        t.Frac(t.add(first, second), t.add(t.Int(a), t.Int(b))),
        key,
        "integer",
        [
            (
                "Multiply each value by its frequency and add.",
                t.equals(t.add(first, second), t.Int(total)),
            ),
            ("Add the frequencies.", t.equals(t.add(t.Int(a), t.Int(b)), t.Int(count))),
            ("Divide.", t.equals(t.divide(t.Int(total), t.Int(count)), key)),
        ],
        [
            (m.MEAN_OF_VALUES, whole(Fraction(p + q, 2))),
            (m.DIVIDES_BY_COLUMNS, whole(Fraction(total, 2))),
            (m.STOPS_AT_TOTAL, total),
        ],
        ("mean", *sorted(((a, p), (b, q)))),
        a=t.Int(a),
        p=t.Int(p),
        b=t.Int(b),
        q=t.Int(q),
    )


def _missing(topic: Topic, tier: Tier, a: int, p: int, b: int, q: int) -> Draft:
    """Return the question for one of two values, from the mean of all."""
    total, count = a * p + b * q, a + b
    mean = total // count
    x = t.Sym("x")
    key, c = t.equals(x, t.Int(q)), t.Int(mean)
    first = t.times(t.Int(a), t.Int(p))
    both = t.add(t.Int(a), t.Int(b))
    return told(
        by_turns(_MISSING, a + b + p + q),
        Find(x, (t.equals(t.Frac(t.add(first, t.juxt(t.Int(b), x)), both), c),)),
        key,
        "solution",
        [
            (
                "The mean times how many there are is the total.",
                t.equals(t.times(t.Int(count), c), t.Int(total)),
            ),
            ("Find what is known.", t.equals(first, t.Int(a * p))),
            ("Subtract.", t.equals(t.sub(t.Int(total), t.Int(a * p)), t.Int(b * q))),
            (f"Divide by {b}.", key),
        ],
        [
            (m.MEAN_AGAIN, mean),
            (m.STOPS_AT_TOTAL, total),
            (m.MEAN_OF_VALUES, 2 * mean - p),
        ],
        ("missing", a, p, b, q),
        a=t.Int(a),
        p=t.Int(p),
        b=t.Int(b),
        x=x,
        c=c,
    )


def _keep_mean(a: int, p: int, b: int, q: int) -> bool:
    total, count = a * p + b * q, a + b
    return (
        p < q
        and a != b
        and total % count == 0
        and 2 * total != count * (p + q)
        and ((p + q) % 2 == 0 or total % 2 == 0)
    )


def _keep_missing(a: int, p: int, b: int, q: int) -> bool:
    total, count = a * p + b * q, a + b
    return p != q and a != b and b > 1 and total % count == 0


BRIEF = {
    Tier.SUPPORT: (
        Brief(
            _all,
            lambda a, p, q: (a + p + q) % 3 == 0,
            {"a": (3, 4, 5, 6, 7), "p": (10, 15, 20, 25), "q": (8, 11, 17, 18, 22, 28)},
        ),
        Brief(
            _shared,
            lambda count, mean: count != mean,
            {"count": (4, 5, 6, 8, 10, 12), "mean": range(6, 25)},
        ),
    ),
    Tier.CORE: (
        Brief(
            _mean,
            _keep_mean,
            {"a": (2, 3, 4, 6, 8), "p": range(5, 16), "b": (2, 3, 5, 6), "q": range(9, 23)},
        ),
    ),
    Tier.CHALLENGE: (
        Brief(
            _missing,
            _keep_missing,
            {"a": (3, 4, 5, 6, 8), "p": range(6, 15), "b": (2, 3, 4), "q": range(5, 20)},
        ),
    ),
}
"""The short questions of each tier."""
