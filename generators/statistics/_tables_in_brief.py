"""Short questions about two-way tables that nobody has to see: who is left in a cell."""

from __future__ import annotations

from generators._turns import by_turns
from generators.statistics import _chart_mistakes as m
from itembank.items.item import Draft, Tier
from itembank.items.kinds.brief import Brief, told
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_ROWS = (
    "A class has {n} pupils. {a} of them walk and the rest come by bus. How many come by bus?",
    "A club has {n} members. {a} of them are adults. How many are children?",
    "A garden has {n} tulips. {a} of them are red. How many are not red?",
)
_SECOND = (
    "A club has {a} adults and {b} children. {c} of them swim. How many do not swim?",
    "A garden has {a} roses and {b} tulips. {c} of them are red. How many are not red?",
    "A class has {a} boys and {b} girls. {c} of them walk. How many do not walk?",
)
_LAST = (
    "Of {n} members {a} are adults. {s} swim, {b} of them adults. How many children do not swim?",
    "Of {n} flowers {a} are roses. {s} are red, {b} of them roses. How many others are not red?",
    "Of {n} pupils {a} are boys. {s} walk, {b} of them boys. How many girls do not walk?",
)


def _rest(topic: Topic, tier: Tier, total: int, part: int) -> Draft:
    """Return the question for one cell of a row, from its total and the other."""
    n, a, key = t.Int(total), t.Int(part), t.Int(total - part)
    return told(
        by_turns(_ROWS, total + part),
        t.sub(n, a),
        key,
        "integer",
        [("Subtract from the total.", t.equals(t.sub(n, a), key))],
        [(m.ADDS_TO_TOTAL, total + part), (m.GIVES_TOTAL, total)],
        ("rest", total, part),
        n=n,
        a=a,
    )


def _second(topic: Topic, tier: Tier, a: int, b: int, c: int) -> Draft:
    """Return the question for a total of a column, from the totals of rows and another."""
    first, second, other, all_ = t.Int(a), t.Int(b), t.Int(c), t.Int(a + b)
    key = t.Int(a + b - c)
    return told(
        by_turns(_SECOND, a + b + c),
        t.sub(t.add(first, second), other),
        key,
        "integer",
        [
            ("Add to find the total.", t.equals(t.add(first, second), all_)),
            ("Subtract from the total.", t.equals(t.sub(all_, other), key)),
        ],
        [(m.GIVES_TOTAL, a + b), (m.ADDS_TO_TOTAL, a + b + c), (m.STOPS_BETWEEN, abs(a - c))],
        ("second", a, b, c),
        a=first,
        b=second,
        c=other,
    )


def _last(topic: Topic, tier: Tier, total: int, row: int, column: int, both: int) -> Draft:
    """Return the question for the cell across from the one that is known."""
    n, a, s, b = map(t.Int, (total, row, column, both))
    others, rest = t.Int(total - row), t.Int(column - both)
    key = t.Int(total - row - column + both)
    return told(
        by_turns(_LAST, total + row + column + both),
        t.sub(t.sub(n, a), t.Bracket(t.sub(s, b))),
        key,
        "integer",
        [
            ("Find the total of the other row.", t.equals(t.sub(n, a), others)),
            ("Find the other cell of the column.", t.equals(t.sub(s, b), rest)),
            ("Subtract from the total of the row.", t.equals(t.sub(others, rest), key)),
        ],
        [
            (m.STOPS_BETWEEN, column - both),
            (m.GIVES_TOTAL, total - row),
            (m.ADDS_TO_TOTAL, total - row + column - both),
        ],
        ("last", total, row, column, both),
        n=n,
        a=a,
        s=s,
        b=b,
    )


def _keep_second(a: int, b: int, c: int) -> bool:
    return (
        a != b
        and c not in (a, b, 2 * a)
        and c < a + b - 3
        and 2 * c != a + b
        and (abs(a - c) != a + b - c)
    )


def _keep_last(total: int, row: int, column: int, both: int) -> bool:
    rest, others = column - both, total - row
    return (
        both < row
        and 2 < rest < others - 2
        and 2 * rest != others
        and len({total, row, column, both, rest, others, others - rest}) == 7
    )


BRIEF = {
    Tier.SUPPORT: (
        Brief(
            _rest,
            lambda total, part: 3 < part < total - 3 and 2 * part != total,
            {"total": range(24, 61, 3), "part": range(7, 41, 4)},
        ),
    ),
    Tier.CORE: (
        Brief(
            _second,
            _keep_second,
            {"a": range(12, 30, 4), "b": range(15, 35, 4), "c": range(9, 36, 5)},
        ),
    ),
    Tier.CHALLENGE: (
        Brief(
            _last,
            _keep_last,
            {
                "total": (40, 48, 60, 75),
                "row": (17, 22, 26, 31),
                "column": (19, 25, 28),
                "both": (8, 11, 14),
            },
        ),
    ),
}
"""The short questions of each tier."""
