"""Powers and roots: squares, cubes and beyond, their roots, and calculations with them.

The programme of study for key stage 3 (England, 2013) asks pupils to "use integer powers and
associated real roots (square, cube and higher), recognise powers of 2, 3, 4, 5" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from math import isqrt, lcm
from typing import Any

from generators._turns import by_turns
from generators.number import _power_mistakes as m
from generators.number._powers_numbers import (
    WAYS,
    Kind,
    challenge_fits,
    core_fits,
    listed_by,
    support_fits,
    things_to_order,
)
from generators.number._writing import worked
from itembank.items import kinds
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Draft, Find, Order, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t


def _gone_wrong(
    kind: int, a: int, b: int, c: int = 0, d: int = 0
) -> tuple[kinds.WrongSolution, ...]:
    """Return how powers and roots are worked out wrongly, line by line."""
    wrong, A, B = kinds.WrongSolution, t.Int(a), t.Int(b)
    match kind:
        case Kind.POWER:
            found = (wrong(m.TIMES_INDEX, (t.times(A, B), t.Int(a * b))),)
            return (*found, wrong(m.SWAPS, (_out(B, a), t.Int(b**a)))) if a in (3, 4) else found
        case Kind.ROOT_OF_SUM:
            join, end = (t.add, a + b) if d == 2 else (t.sub, a - b)
            apart_ = join(t.Root(t.Int(a * a)), t.Root(t.Int(b * b)))
            return (wrong(m.ROOTS_EACH, (apart_, join(A, B), t.num(end))),)
        case Kind.DIFFERENCE:
            lines = (t.sub(t.Int(a * c), t.Int(b * d)), t.num(a * c - b * d))
            return (wrong(m.TIMES_INDEX, lines),)
        case Kind.PRODUCT:
            times = (t.times(t.Int(a * c), t.Int(b * d)), t.Int(a * c * b * d))
            joined = (_power(a * b, c + d), t.Int((a * b) ** (c + d)))
            found = (wrong(m.TIMES_INDEX, times),)
            return (*found, wrong(m.JOINS, joined)) if joined[1].n <= 1300 else found
        case Kind.NOUGHT:
            return (
                wrong(m.NOUGHT_IS_NOUGHT, (t.add(t.Int(0), B), B)),
                wrong(m.NOUGHT_CHANGES_NOTHING, (t.add(A, B), t.Int(a + b))),
            )
        case Kind.NEGATIVE_INDEX:
            return (wrong(m.NEGATIVE_ANSWER, (t.Neg(_power(a, b)), t.num(-(a**b)))),)
    return ()


@register
class PowersAndRoots(Topic):
    """One power or root; two of them in a calculation; then stories, negatives and orders."""

    id = "number.powers-and-roots"
    title = "Powers and roots"
    statements = ("number.powers-roots",)
    misconceptions = (
        m.TIMES_INDEX,
        m.SWAPS,
        m.HALVES,
        m.POWER_FOR_ROOT,
        m.ROOTS_EACH,
        m.NO_ROOTS,
        m.JOINS,
        m.NOUGHT_IS_NOUGHT,
        m.NOUGHT_CHANGES_NOTHING,
        m.STOPS,
        m.QUARTERS,
        m.NEGATIVE_ANSWER,
        m.NUMERATOR_ONLY,
        m.ROOT_IGNORED,
    )
    spare = "The powers and roots of whole numbers that a pupil has to know are few."
    spaces = {
        Tier.SUPPORT: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(support_fits, kind=tuple(Kind)[:5], a=range(2, 21), n=range(2, 11))
            ),
            _gone_wrong,
        ),
        Tier.CORE: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(
                    core_fits,
                    kind=tuple(Kind)[5:10],
                    a=range(2, 26),
                    b=(*range(2, 13), 15, 16, 20, 24),
                    c=range(2, 6),
                    d=range(2, 5),
                )
            ),
            _gone_wrong,
        ),
        Tier.CHALLENGE: kinds.with_wrong_solutions(
            Space(
                challenge_fits,
                kind=tuple(Kind)[10:],
                a=range(1, 26),
                b=range(1, 10),
                c=range(2, 11),
            ),
            _gone_wrong,
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, a, b, c, d = (*values, 0, 0)[:5]
        twin = (int(kind), a, b, c, d)
        match kind:
            case Kind.AS_POWER:
                return _as_power(a, b, twin)
            case Kind.AS_PRODUCT:
                return _as_product(a, b, twin)
            case Kind.EDGING:
                return _edging(a, twin)
            case Kind.ORDER:
                return _in_order(a, b, c, twin)
        asked, key, steps, wrong = _calculation(kind, a, b, c, d)
        form, how = "integer", ""
        if kind == Kind.NEGATIVE_INDEX:
            form, how = "fraction", " Give your answer as a fraction."
        if kind == Kind.FRACTIONS:
            form, how = "lowest-terms", " Give your answer in its lowest terms."
        text = prompt("Work out {e}." + how, e=asked)
        return Draft(text, Find(asked), key, form, steps, slips(*wrong, key=key), twin)


Made = tuple[t.Node, t.Node, tuple[Step, ...], tuple[Wrong, ...]]


def _power(a: int, n: int) -> t.Power:
    return t.Power(t.Int(a), t.Int(n))


def _out(a: t.Node, n: int) -> t.Node:
    return t.times(a, *[a] * (n - 1))


def _calculation(kind: int, a: int, b: int, c: int, d: int) -> Made:
    """Return what is asked, the key, the working and the wrong answers."""
    asked: t.Node
    key: t.Node
    wrong: tuple[Wrong, ...]
    match kind:
        case Kind.POWER:
            key = t.Int(a**b)
            steps = worked(
                _power(a, b), ("Write it out as a product.", _out(t.Int(a), b)), ("Multiply.", key)
            )
            return _power(a, b), key, steps, ((m.TIMES_INDEX, a * b), (m.SWAPS, b**a))
        case Kind.ROOT | Kind.CUBE_ROOT:
            n = a**b
            asked = t.Root(t.Int(n), b)
            say = f"Which number multiplied by itself makes {n}?"
            if b == 3:
                say = f"Which number stands three times in a product that makes {n}?"
            steps = (
                Step(say, t.equals(_out(t.Int(a), b), t.Int(n))),
                Step("So that is the root.", t.equals(asked, t.Int(a))),
            )
            wrong = ((m.HALVES, Fraction(n, b)), (m.POWER_FOR_ROOT, n**b))
            return asked, t.Int(a), steps, wrong
        case Kind.ROOT_OF_SUM:
            join = t.add if d == 2 else t.sub
            total = a * a + b * b if d == 2 else a * a - b * b
            root = isqrt(total)
            asked = t.Root(join(t.Int(a * a), t.Int(b * b)))
            steps = worked(
                asked,
                ("Work out what is under the root first.", t.Root(t.Int(total))),
                ("Then take the root.", t.Int(root)),
            )
            apart_ = a + b if d == 2 else a - b
            return (
                asked,
                t.Int(root),
                steps,
                ((m.ROOTS_EACH, apart_), (m.HALVES, Fraction(total, 2))),
            )
        case Kind.DIFFERENCE:
            asked = t.sub(_power(a, c), _power(b, d))
            key = t.Int(a**c - b**d)
            steps = worked(
                asked,
                ("Work out each power.", t.sub(t.Int(a**c), t.Int(b**d))),
                ("Then subtract.", key),
            )
            return asked, key, steps, ((m.TIMES_INDEX, a * c - b * d), (m.SWAPS, c**a - d**b))
        case Kind.PRODUCT:
            asked = t.times(_power(a, c), _power(b, d))
            key = t.Int(a**c * b**d)
            steps = worked(
                asked,
                ("Work out each power.", t.times(t.Int(a**c), t.Int(b**d))),
                ("Then multiply.", key),
            )
            return (
                asked,
                key,
                steps,
                ((m.TIMES_INDEX, a * c * b * d), (m.JOINS, (a * b) ** (c + d))),
            )
        case Kind.NOUGHT:
            asked = t.add(_power(a, 0), _power(b, 1))
            steps = worked(
                asked,
                (f"{a} to the power 0 is 1.", t.add(t.Int(1), _power(b, 1))),
                (f"{b} to the power 1 is {b}.", t.add(t.Int(1), t.Int(b))),
                ("Then add.", t.Int(b + 1)),
            )
            return (
                asked,
                t.Int(b + 1),
                steps,
                ((m.NOUGHT_IS_NOUGHT, b), (m.NOUGHT_CHANGES_NOTHING, a + b)),
            )
        case Kind.ROOTS:
            join = t.add if d == 2 else t.sub
            asked = join(t.Root(t.Int(a * a)), t.Root(t.Int(b**3), 3))
            key = t.Int(a + b if d == 2 else a - b)
            halves = Fraction(a * a, 2) + (1 if d == 2 else -1) * Fraction(b**3, 3)
            steps = worked(
                asked,
                ("Take each root.", join(t.Int(a), t.Int(b))),
                ("Add." if d == 2 else "Subtract.", key),
            )
            no_roots = a * a + b**3 if d == 2 else a * a - b**3
            return asked, key, steps, ((m.HALVES, halves), (m.NO_ROOTS, no_roots))
        case Kind.NEGATIVE_INDEX:
            asked = t.Power(t.Int(a), t.Neg(t.Int(b)))
            key = t.frac(1, a**b)
            steps = worked(
                asked,
                ("A negative index means 1 over the power.", t.Frac(t.Int(1), _power(a, b))),
                ("Work out the power.", key),
            )
            return asked, key, steps, ((m.NEGATIVE_ANSWER, -(a**b)), (m.TIMES_INDEX, -a * b))
    # (1/2)^b + (a/c)²
    half, other = t.frac(1, 2), t.frac(a, c)
    asked = t.add(t.Power(t.Bracket(half), t.Int(b)), t.Power(t.Bracket(other), t.Int(2)))
    first, second = Fraction(1, 2**b), Fraction(a * a, c * c)
    value = first + second
    bottom = value.denominator
    lines = [
        (
            "Raise numerator and denominator.",
            t.add(t.frac(1, 2**b), t.frac(a * a, c * c)),
        )
    ]
    common = lcm(2**b, c * c)
    lines.append(
        (
            f"Write both over {common}.",
            t.add(t.frac(common // 2**b, common), t.frac(a * a * common // (c * c), common)),
        )
    )
    total = common // 2**b + a * a * common // (c * c)
    if bottom != common:
        lines.append(("Add.", t.frac(total, common)))
    lines.append(("Add." if bottom == common else "Cancel.", number_node(value)))
    wrong = (
        (m.NUMERATOR_ONLY, Fraction(1, 2) + Fraction(a * a, c)),
        (m.TIMES_INDEX, Fraction(b, 2) + Fraction(2 * a, c)),
    )
    return asked, number_node(value), worked(asked, *lines), wrong


def _as_power(a: int, n: int, twin: tuple[object, ...]) -> Draft:
    """Ask for a product of equal factors as a power."""
    asked = _out(t.Int(a), n)
    key = _power(a, n)
    steps = worked(asked, (f"The factor {a} stands there {n} times, so the index is {n}.", key))
    wrong = slips((m.TIMES_INDEX, t.times(t.Int(a), t.Int(n))), (m.SWAPS, _power(n, a)))
    text = prompt("Write {e} as a power of {a}.", e=asked, a=t.Int(a))
    return Draft(text, Find(asked), key, "power", steps, wrong, twin)


def _as_product(a: int, n: int, twin: tuple[object, ...]) -> Draft:
    """Ask for a power as a product of equal factors."""
    asked, key = _power(a, n), _out(t.Int(a), n)
    steps = worked(asked, (f"The index is {n}, so the factor {a} stands there {n} times.", key))
    wrong = slips((m.TIMES_INDEX, t.times(t.Int(a), t.Int(n))), (m.SWAPS, _out(t.Int(n), a)))
    text = prompt("Write {e} as a product, without powers.", e=asked)
    return Draft(text, Find(asked), key, "product", steps, wrong, twin)


_SQUARE_THINGS = (
    ("A square bed in a market garden has an area of", "How many metres of edging go round it?"),
    ("A square allotment has an area of", "How many metres of fence go round it?"),
    ("A square yard of a bus depot has an area of", "How many metres of wall go round it?"),
    ("A square pool of a swimming club has an area of", "How many metres of rail go round it?"),
)


def _edging(a: int, twin: tuple[object, ...]) -> Draft:
    """Ask for the way round a square whose area is given."""
    has, asks = by_turns(_SQUARE_THINGS, a)
    area, four = t.Int(a * a), t.Int(4)
    side = t.Root(area)
    asked = t.times(four, side)
    text = prompt(f"{has} {{a}} square metres. {asks}", a=area)
    steps = (
        Step("The side is the square root of the area.", t.equals(side, t.Int(a))),
        Step("A square has four equal sides.", t.equals(t.times(four, t.Int(a)), t.Int(4 * a))),
    )
    wrong = slips((m.STOPS, a), (m.QUARTERS, a * a))
    return Draft(text, Find(asked), t.Int(4 * a), "integer", steps, wrong, twin, constants=(4,))


def _in_order(a: int, b: int, c: int, twin: tuple[object, ...]) -> Draft:
    """Ask for a root, a power and two whole numbers in order."""
    things = things_to_order(a, b, c)
    nodes = tuple(thing[0] for thing in things)
    turned = nodes[(a + b) % 4 :] + nodes[: (a + b) % 4]

    key, no_root, times_index = (listed_by(things, way) for way in WAYS)
    if turned == key.parts:
        turned = turned[::-1]
    under = 10 * a + b
    low = isqrt(under)
    base, index = things[1][0], t.Int(int(things[1][1]))
    steps = (
        Step(
            f"{under} is between {low * low} and {(low + 1) ** 2}, "
            f"so its root is between {low} and {low + 1}."
        ),
        Step("Work out the power.", t.equals(base, index)),
        Step("Put them in order, as they were printed.", key),
    )
    wrong = slips((m.ROOT_IGNORED, no_root), (m.TIMES_INDEX, times_index))
    text = prompt(
        "Write these in order of size, smallest first: {things}.", things=t.Listing(turned)
    )
    return Draft(text, Order(turned), key, "list", steps, wrong, twin)
