"""Stories about numbers, prices and crowds."""

from __future__ import annotations

from fractions import Fraction

from generators.equations import _misconceptions as m
from generators.equations._common import balance, side
from generators.equations._story import (
    NUMBER,
    N,
    Story,
    ending,
    litres,
    pounds,
)
from itembank.items.forms import number_node
from itembank.items.item import Find, Step, prompt
from itembank.notation.tree import (
    Bracket,
    Int,
    add,
    equals,
    num,
    sub,
    times,
)

ONE_UNKNOWN = (
    ("I think of a number. I multiply it by {a} and then add {b}. "
     "The answer is {c}. What is my number?", NUMBER),
    ("I think of a number. I multiply it by {a} and then subtract {b}. "
     "The answer is {c}. What is my number?", NUMBER),
    ("A market garden packs {c} lettuces. They fill {a} boxes, and {b} are left over. "
     "How many lettuces does each box hold?", "Write n for the number in each box."),
    ("A swimming club charges {b} to join and {a} for each session. "
     "One member has paid {c} altogether. How many sessions is that?",
     "Write n for the number of sessions."),
    ("At a bus depot {c} people fill {a} minibuses, and {b} are left behind. "
     "How many people does each minibus hold?",
     "Write n for the number each minibus holds."),
    ("Altogether {a} trays of plants and a {b} watering can cost {c}. "
     "How much does each tray cost?", "Write n for the cost of one tray, and work in pounds."),
)  # fmt: skip


def one_unknown(kind: int, a: int, b: int, value: int) -> Story:
    """Return a story that comes to an + b = c, or an − b = c."""
    plus = -b if kind == 1 else b
    c = a * value + plus
    text, first = ONE_UNKNOWN[kind]
    steps = (Step(first, equals(side(a, N, plus), num(c))), *balance(N, a, plus, 0, c))
    one, extra, total = num(a), num(b), num(c)
    if kind == 3:
        one, extra, total = pounds(a), pounds(b), pounds(c)
    elif kind == 5:
        extra, total = pounds(b), pounds(c)
    product = times(one, N)
    model = equals(sub(product, extra) if kind == 1 else add(product, extra), total)
    key, form, wrap = num(value), "integer", num
    if kind == 5:
        key, form, wrap = pounds(value), "money", pounds
    return Story(
        prompt(text, a=one, b=extra, c=total),
        Find(N, (model,)),
        key,
        form,
        ending(steps, N, key),
        ((m.STOPS_EARLY, wrap(a * value)), (m.ADDS_RATE, wrap(a * value - a))),
    )


def consecutive(n: int) -> Story:
    """Return three consecutive numbers with a given sum."""
    total = num(3 * n + 3)
    model = equals(add(N, Bracket(add(N, Int(1))), Bracket(add(N, Int(2)))), total)
    return Story(
        prompt("Three consecutive whole numbers add up to {s}. What is the smallest?", s=total),
        Find(N, (model,)),
        num(n),
        "integer",
        (
            Step("Write n, n + 1 and n + 2 for the numbers.", model),
            Step("Collect like terms.", equals(side(3, N, 3), total)),
            *balance(N, 3, 3, 0, 3 * n + 3),
        ),
        ((m.FORGETS_DIFFERENCE, num(n + 1)), (m.STOPS_EARLY, num(3 * n))),
        (1, 2),
    )


def two_decks(d: int, lower: int) -> Story:
    """Return two decks of a bus by their sum and difference; `d` is even."""
    more, total = num(d), num(2 * lower + d)
    model = equals(add(N, Bracket(add(N, more))), total)
    return Story(
        prompt(
            "A bus has {s} passengers, {d} more of them on the top deck than on "
            "the lower deck. How many are on the lower deck?",
            s=total,
            d=more,
        ),
        Find(N, (model,)),
        num(lower),
        "integer",
        (
            Step("Write n for the number on the lower deck.", model),
            Step("Collect like terms.", equals(side(2, N, d), total)),
            *balance(N, 2, d, 0, 2 * lower + d),
        ),
        ((m.FORGETS_DIFFERENCE, num(lower + d // 2)), (m.STOPS_EARLY, num(2 * lower))),
    )


def bulbs(a: int, d: int, lilies: int) -> Story:
    """Return three kinds of bulb; `d` is a multiple of a + 2."""
    k = a + 2
    s = k * lilies + d
    many, more, total = num(a), num(d), num(s)
    model = equals(add(N, times(many, N), Bracket(add(N, more))), total)
    return Story(
        prompt(
            "A gardener plants {s} bulbs: lilies, {a} times as many tulips as lilies, and "
            "{d} more crocuses than lilies. How many lilies are there?",
            s=total,
            a=many,
            d=more,
        ),
        Find(N, (model,)),
        num(lilies),
        "integer",
        (
            Step(
                "Write n for the number of lilies.",
                equals(add(N, side(a, N), Bracket(side(1, N, d))), total),
            ),
            Step("Collect like terms.", equals(side(k, N, d), total)),
            *balance(N, k, d, 0, s),
        ),
        ((m.STOPS_EARLY, num(k * lilies)), (m.FORGETS_DIFFERENCE, num(lilies + d // k))),
    )


def two_rules(a: int, b: int, c: int, value: int) -> Story:
    """Return a number with an − b = cn + d."""
    d = (a - c) * value - b
    model = equals(side(a, N, -b), side(c, N, d))
    return Story(
        prompt(
            "I think of a number. Multiplying it by {a} and subtracting {b} gives the same as "
            "multiplying it by {c} and adding {d}. What is my number?",
            a=num(a),
            b=num(b),
            c=num(c),
            d=num(d),
        ),
        Find(N, (model,)),
        num(value),
        "integer",
        (Step(NUMBER, model), *balance(N, a, -b, c, d)),
        (
            (m.STOPS_EARLY, num(b + d)),
            (m.ADDS_LETTERS, number_node(Fraction(b + d, a + c))),
        ),
    )


def two_clubs(a: int, b: int, c: int, value: int) -> Story:
    """Return two clubs' prices: b + an = d + cn."""
    d = b + (a - c) * value
    prices = [pounds(n) for n in (b, a, d, c)]
    model = equals(add(prices[0], times(prices[1], N)), add(prices[2], times(prices[3], N)))
    k = a - c
    return Story(
        prompt(
            "Club A charges {b} to join and {a} a swim; club B charges {d} to join and "
            "{c} a swim. For how many swims do they cost the same?",
            b=prices[0],
            a=prices[1],
            d=prices[2],
            c=prices[3],
        ),
        Find(N, (model,)),
        num(value),
        "integer",
        (
            Step(
                "Write n for the number of swims.",
                equals(add(num(b), side(a, N)), add(num(d), side(c, N))),
            ),
            *balance(N, a, b, c, d),
        ),
        ((m.STOPS_EARLY, num(k * value)), (m.ADDS_RATE, num(k * value - k))),
    )


def two_tanks(a: int, b: int, c: int, value: int) -> Story:
    """Return two tanks that run down: B − an = D − cn, in tens of litres."""
    a, b, c = 10 * a, 10 * b, 10 * c
    k = a - c
    full, less = b + a * value, b + c * value
    fuel = [litres(n) for n in (full, a, less, c)]
    model = equals(sub(fuel[0], times(fuel[1], N)), sub(fuel[2], times(fuel[3], N)))
    return Story(
        prompt(
            "Two fuel tanks hold {f} and {g}. Each day {a} is used from the first and "
            "{c} from the second. After how many days do they hold the same?",
            f=fuel[0],
            a=fuel[1],
            g=fuel[2],
            c=fuel[3],
        ),
        Find(N, (model,)),
        num(value),
        "integer",
        (
            Step(
                "Write n for the number of days.",
                equals(add(num(full), side(-a, N)), add(num(less), side(-c, N))),
            ),
            *balance(N, -a, full, -c, less),
        ),
        ((m.STOPS_EARLY, num(k * value)), (m.ADDS_RATE, num(k * value - k))),
    )
