"""Stories about numbers, prices and crowds."""

from __future__ import annotations

from fractions import Fraction

from generators.equations import _misconceptions as m
from generators.equations._asks import asking, letter_left, one_of, undo_product
from generators.equations._balance import balance
from generators.equations._story import (
    NUMBER,
    N,
    Story,
    ending,
    litres,
    pounds,
)
from generators.equations._writing import side
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Find, Step, prompt
from itembank.notation import tree as t

THINK_STOPS = "That is {a} times the number. What is the number?"
THINK_TIMES = "The number was multiplied by {a}. What undoes multiplying by {a}?"
# The words; how the unknown is named; what to ask who stops early or subtracts the multiplier.
ONE_UNKNOWN = (
    ("I think of a number. I multiply it by {a} and then add {b}. "
     "The answer is {c}. What is my number?", NUMBER, THINK_STOPS, THINK_TIMES),
    ("I think of a number. I multiply it by {a} and then subtract {b}. "
     "The answer is {c}. What is my number?", NUMBER, THINK_STOPS, THINK_TIMES),
    ("A market garden packs {c} lettuces. They fill {a} boxes, and {b} are left over. "
     "How many lettuces does each box hold?", "Let n be the number of lettuces in each box.",
     "{an} lettuces fill {a} boxes. How many are in one box?",
     "{a} boxes hold {an} lettuces. Do you subtract {a}, or divide by {a}?"),
    ("A swimming club charges {b} to join and {a} for each session. "
     "One member has paid {c} altogether. How many sessions has the member paid for?",
     "Let n be the number of sessions.",
     "£{an} was paid for sessions. How many sessions at £{a} is that?",
     "Each session costs £{a}. Do you subtract {a} from {an}, or divide {an} by {a}?"),
    ("At a bus depot {c} people fill {a} minibuses, and {b} are left behind. "
     "How many people does each minibus hold?",
     "Let n be the number of people each minibus holds.",
     "{an} people fill {a} minibuses. How many are in one minibus?",
     "{a} minibuses hold {an} people. Do you subtract {a}, or divide by {a}?"),
    ("Altogether {a} trays of plants and a {b} watering can cost {c}. "
     "How much does each tray cost?", "Let each tray cost n pounds.",
     "£{an} pays for {a} trays. What does one tray cost?",
     "{a} trays cost £{an}. Do you subtract {a}, or divide by {a}?"),
)  # fmt: skip


def one_unknown(kind: int, a: int, b: int, value: int) -> Story:
    """Return a story that comes to an + b = c, or an − b = c."""
    plus = -b if kind == 1 else b
    c = a * value + plus
    text, first, stops, subtracts = ONE_UNKNOWN[kind]
    steps = (Step(first, t.equals(side(a, N, plus), t.num(c))), *balance(N, a, plus, 0, c))
    times_taken, extra, total = t.num(a), t.num(b), t.num(c)
    if kind == 3:
        times_taken, extra, total = pounds(a), pounds(b), pounds(c)
    elif kind == 5:
        extra, total = pounds(b), pounds(c)
    product = t.times(times_taken, N)
    model = t.equals(t.sub(product, extra) if kind == 1 else t.add(product, extra), total)
    key, form, wrap = t.num(value), "integer", t.num
    if kind == 5:
        key, form, wrap = pounds(value), "money", pounds
        steps = ending(steps, "Write the answer in pounds.", key)
    numbers = {"a": a, "an": a * value}
    return Story(
        prompt(text, a=times_taken, b=extra, c=total),
        Find(N, (model,)),
        key,
        form,
        steps,
        (
            (asking(m.STOPS_EARLY, stops.format(**numbers)), wrap(a * value)),
            (asking(m.SUBTRACTS_MULTIPLIER, subtracts.format(**numbers)), wrap(a * value - a)),
        ),
    )


def consecutive(n: int) -> Story:
    """Return three consecutive numbers with a given sum."""
    total = t.num(3 * n + 3)
    model = t.equals(t.add(N, t.Bracket(t.add(N, t.Int(1))), t.Bracket(t.add(N, t.Int(2)))), total)
    return Story(
        prompt(
            "Three consecutive whole numbers add up to {s}. What is the smallest of them?", s=total
        ),
        Find(N, (model,)),
        t.num(n),
        "integer",
        (
            Step("Let the numbers be n, n + 1 and n + 2.", model),
            Step("Collect like terms.", t.equals(side(3, N, 3), total)),
            *balance(N, 3, 3, 0, 3 * n + 3),
        ),
        (
            (
                asking(
                    m.FORGETS_DIFFERENCE,
                    f"What are the two whole numbers after {n + 1}? What do the three add up to?",
                ),
                t.num(n + 1),
            ),
            (asking(m.STOPS_EARLY, one_of(3, N)), t.num(3 * n)),
        ),
        (1, 2),
    )


def two_decks(d: int, lower: int) -> Story:
    """Return two decks of a bus by their sum and difference; `d` is even."""
    more, total = t.num(d), t.num(2 * lower + d)
    model = t.equals(t.add(N, t.Bracket(t.add(N, more))), total)
    return Story(
        prompt(
            "A bus has {s} passengers, {d} more of them on the top deck than on "
            "the lower deck. How many are on the lower deck?",
            s=total,
            d=more,
        ),
        Find(N, (model,)),
        t.num(lower),
        "integer",
        (
            Step("Let n be the number on the lower deck.", model),
            Step("Collect like terms.", t.equals(side(2, N, d), total)),
            *balance(N, 2, d, 0, 2 * lower + d),
        ),
        (
            (
                asking(
                    m.FORGETS_DIFFERENCE,
                    f"With {lower + d // 2} on each deck, are there {d} more on the top deck?",
                ),
                t.num(lower + d // 2),
            ),
            (asking(m.STOPS_EARLY, one_of(2, N)), t.num(2 * lower)),
        ),
    )


def bulbs(a: int, d: int, lilies: int) -> Story:
    """Return three kinds of bulb; `d` is a multiple of a + 2."""
    k = a + 2
    s = k * lilies + d
    many, more, total = t.num(a), t.num(d), t.num(s)
    model = t.equals(t.add(N, t.times(many, N), t.Bracket(t.add(N, more))), total)
    return Story(
        prompt(
            "A gardener plants {s} bulbs: lilies, {a} times as many tulips as lilies, and "
            "{d} more crocuses than lilies. How many lilies are there?",
            s=total,
            a=many,
            d=more,
        ),
        Find(N, (model,)),
        t.num(lilies),
        "integer",
        (
            Step(
                "Let n be the number of lilies.",
                t.equals(t.add(N, side(a, N), t.Bracket(side(1, N, d))), total),
            ),
            Step("Collect like terms.", t.equals(side(k, N, d), total)),
            *balance(N, k, d, 0, s),
        ),
        (
            (asking(m.STOPS_EARLY, one_of(k, N)), t.num(k * lilies)),
            (
                asking(
                    m.FORGETS_DIFFERENCE,
                    f"If you set the {d} extra crocuses aside, how many bulbs are left?",
                ),
                t.num(lilies + d // k),
            ),
        ),
    )


def two_rules(a: int, b: int, c: int, value: int) -> Story:
    """Return a number with an − b = cn + d."""
    d = (a - c) * value - b
    model = t.equals(side(a, N, -b), side(c, N, d))
    return Story(
        prompt(
            "I think of a number. Multiplying it by {a} and subtracting {b} gives the same as "
            "multiplying it by {c} and adding {d}. What is my number?",
            a=t.num(a),
            b=t.num(b),
            c=t.num(c),
            d=t.num(d),
        ),
        Find(N, (model,)),
        t.num(value),
        "integer",
        (Step(NUMBER, model), *balance(N, a, -b, c, d)),
        (
            (asking(m.STOPS_EARLY, one_of(a - c, N)), t.num(b + d)),
            (asking(m.LETTER_ACROSS, letter_left(a, c, N)), number_node(Fraction(b + d, a + c))),
        ),
    )


def two_clubs(a: int, b: int, c: int, value: int) -> Story:
    """Return two clubs' prices: b + an = d + cn."""
    d = b + (a - c) * value
    prices = [pounds(n) for n in (b, a, d, c)]
    model = t.equals(
        t.add(prices[0], t.times(prices[1], N)), t.add(prices[2], t.times(prices[3], N))
    )
    k = a - c
    return Story(
        prompt(
            "Club A charges {b} to join and {a} a swim. Club B charges {d} to join and "
            "{c} a swim. For how many swims do the two clubs cost the same?",
            b=prices[0],
            a=prices[1],
            d=prices[2],
            c=prices[3],
        ),
        Find(N, (model,)),
        t.num(value),
        "integer",
        (
            Step(
                "Let n be the number of swims.",
                t.equals(t.add(t.num(b), side(a, N)), t.add(t.num(d), side(c, N))),
            ),
            *balance(N, a, b, c, d),
        ),
        (
            (asking(m.STOPS_EARLY, one_of(k, N)), t.num(k * value)),
            (asking(m.SUBTRACTS_MULTIPLIER, undo_product(k, N)), t.num(k * value - k)),
        ),
    )


def two_tanks(a: int, b: int, c: int, value: int) -> Story:
    """Return two tanks that run down: B − an = D − cn, in tens of litres."""
    a, b, c = 10 * a, 10 * b, 10 * c
    k = a - c
    full, less = b + a * value, b + c * value
    fuel = [litres(n) for n in (full, a, less, c)]
    model = t.equals(t.sub(fuel[0], t.times(fuel[1], N)), t.sub(fuel[2], t.times(fuel[3], N)))
    return Story(
        prompt(
            "Two tanks contain {f} and {g} of fuel. Each day {a} is used from the first and "
            "{c} from the second. After how many days do they contain the same amount?",
            f=fuel[0],
            a=fuel[1],
            g=fuel[2],
            c=fuel[3],
        ),
        Find(N, (model,)),
        t.num(value),
        "integer",
        (
            Step(
                "Let n be the number of days.",
                t.equals(t.add(t.num(full), side(-a, N)), t.add(t.num(less), side(-c, N))),
            ),
            *balance(N, -a, full, -c, less),
        ),
        (
            (asking(m.STOPS_EARLY, one_of(k, N)), t.num(k * value)),
            (asking(m.SUBTRACTS_MULTIPLIER, undo_product(k, N)), t.num(k * value - k)),
        ),
    )
