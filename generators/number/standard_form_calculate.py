"""Calculating in standard form: products and quotients, sums and differences, squares, stories.

The programme of study for key stage 4 (England, 2014) asks pupils to "calculate with … numbers in
standard form A × 10ⁿ"; that for key stage 3 to interpret and compare them (from memory).
"""

from __future__ import annotations

from typing import Any

from generators._turns import by_turns
from generators.number import _standard as m
from generators.number._standard import Standard, standard
from generators.number._standard_calculations import Kind, challenge_fits, core_fits, support_fits
from generators.number._writing import decimal, worked
from itembank.items import kinds
from itembank.items.item import Draft, Find, Tier, prompt
from itembank.items.measures.years import STANDARD_FORM_SUMS, Part
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

# So many of something in each, and how many of these: millions and more.
_STORIES = (
    (
        "A space probe travels {a} metres in a day.",
        "How many metres does it travel in {b} days?",
    ),
    ("A reservoir holds {a} litres of water.", "How many litres do {b} such reservoirs hold?"),
    ("A website has {a} visits in a year.", "How many visits is that in {b} years?"),
    ("A printer puts {a} dots on a page.", "How many dots are there on {b} pages?"),
)


def _gone_wrong(kind: int, a: int, b: int, p: int, q: int) -> tuple[kinds.WrongSolution, ...]:
    """Return how calculations in standard form go wrong, line by line."""
    wrong, left, right, P, Q = kinds.WrongSolution, _first(a), t.Int(b), t.Int(p), t.Int(q)
    ten = t.Int(10)
    match kind:
        case Kind.TIMES | Kind.LONG_TIMES:
            product = decimal(a * b, left.places)
            times = (t.times(product, t.Power(ten, t.times(P, Q))), t.times(product, _ten(p * q)))
            found = wrong(m.MULTIPLIES_INDICES, times)
            key = standard(a * b, p + q - left.places)
            if kind == Kind.TIMES:
                return (found,)
            back = Standard(key.digits, key.places, p + q - 1).node
            return found, wrong(m.WRONG_WAY, (t.times(product, _ten(p + q)), back), 2)
        case Kind.OVER:
            quotient = decimal(a, 1)
            over = t.times(quotient, t.Power(ten, t.divide(P, Q)))
            return (wrong(m.DIVIDES_INDICES, (over, t.times(quotient, _ten(p // q)))),)
        case Kind.SUM | Kind.DIFFERENCE:
            join, sign = (t.add, 1) if kind == Kind.SUM else (t.sub, -1)
            both = decimal(a * 10 ** (1 - left.places) + sign * 10 * b, 1)
            first = t.times(t.Bracket(join(left.first, right)), _ten(p))
            return (wrong(m.ADDS_FIRST, (first, t.times(both, _ten(p)))),)
        case Kind.SQUARE:
            lines = (t.times(t.Power(left.first, t.Int(2)), _ten(p)),)
            square = t.times(decimal(a * a, 2 * left.places), _ten(p))
            added = t.times(decimal(a * a, 2 * left.places), t.Power(ten, t.add(P, t.Int(2))))
            end = t.times(decimal(a * a, 2 * left.places), _ten(p + 2))
            return (
                wrong(m.SQUARES_FIRST_ONLY, (*lines, square)),
                wrong(m.ADDS_TWO, (added, end)),
            )
    return ()


def _others(space: Space) -> Space:
    """Return a tier with statements, pairs and wrong solutions at its end."""
    more = kinds.with_claims(space, only=lambda kind, *_: kind != Kind.STORY)
    return kinds.with_wrong_solutions(more, _gone_wrong)


@register
class StandardFormCalculate(Topic):
    """Products and quotients as they are; then to be put right; then sums, squares and stories."""

    id = "number.standard-form-calculate"
    title = "Calculating in standard form"
    statements = ("number.standard-form",)
    prerequisites = ("number.standard-form", "number.index-laws")
    misconceptions = (
        m.MULTIPLIES_INDICES,
        m.DIVIDES_INDICES,
        m.TOO_LARGE,
        m.WRONG_WAY,
        m.ADDS_FIRST,
        m.ADDS_ALL,
        m.SQUARES_FIRST_ONLY,
        m.ADDS_TWO,
        m.SUBTRACTS_ALL,
    )
    later = {tier: (Part(STANDARD_FORM_SUMS),) for tier in Tier}
    spaces = {
        Tier.SUPPORT: _others(
            Space(
                support_fits,
                kind=tuple(Kind)[:2],
                a=(*range(11, 50), 3),
                b=range(2, 9),
                p=(2, 3, 4, 5, 6, 8, 9),
                q=(2, 3, 4),
            )
        ),
        Tier.CORE: _others(
            Space(
                core_fits,
                kind=tuple(Kind)[2:5],
                a=(4, 5, 8, *range(13, 97, 3)),
                b=range(1, 10),
                p=range(3, 9),
                q=(2, 3, 4, 5),
            )
        ),
        Tier.CHALLENGE: _others(
            Space(
                challenge_fits,
                kind=tuple(Kind)[5:],
                a=(3, 4, 5, 6, 7, 8, 9, 12, 15, *range(16, 98, 3)),
                b=range(2, 10),
                p=range(2, 9),
                q=range(2, 7),
            )
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, a, b, p, q = values
        twin = (int(kind), a, b, p, q)
        match kind:
            case Kind.TIMES | Kind.LONG_TIMES:
                return _times(a, b, p, q, twin)
            case Kind.OVER | Kind.LONG_OVER:
                return _over(kind, a, b, p, q, twin)
            case Kind.SQUARE:
                return _square(a, p, twin)
            case Kind.STORY:
                return _story(a, b, p, twin)
        return _sum(kind, a, b, p, q, twin)


def _ten(power: int) -> t.Node:
    return t.Power(t.Int(10), t.num(power))


def _first(n: int) -> Standard:
    """Return a first number of one or two figures: 3 or 2.5."""
    return Standard(n, 0 if n < 10 else 1, 0)


def _asking(
    asked: t.Node, key: Standard, lines: list[tuple[str, t.Node]], wrong: Any, twin: Any
) -> Draft:
    steps = worked(asked, *lines)
    text = prompt("Work out {e}. Give your answer in standard form.", e=asked)
    return Draft(text, Find(asked), key.node, "standard-form", steps, slips(*wrong), twin)


def _joined(say: str, first: t.Node, power: int, key: Standard) -> list[tuple[str, t.Node]]:
    """Return the lines from any first number times a power of 10 to standard form."""
    before = t.times(first, _ten(power))
    lines = [(say, before)]
    if before != key.node:
        lines.append((PUT_RIGHT, key.node))
    return lines


PUT_RIGHT = "The first number has to be at least 1 and less than 10."


def _times(a: int, b: int, p: int, q: int, twin: tuple[object, ...]) -> Draft:
    left = _first(a)
    first, second = t.times(left.first, _ten(p)), t.times(t.Int(b), _ten(q))
    asked = t.times(t.Bracket(first), t.Bracket(second))
    places = left.places
    product = decimal(a * b, places)
    key = standard(a * b, p + q - places)
    multiplied = standard(a * b, p * q - places)
    wrong: list[Wrong] = [(m.MULTIPLIES_INDICES, multiplied.node)]
    if key.power != p + q:
        wrong.append((m.TOO_LARGE, t.times(product, _ten(p + q))))
        wrong.append((m.WRONG_WAY, Standard(key.digits, key.places, p + q - 1).node))
    else:
        wrong.append((m.WRONG_WAY, Standard(key.digits, key.places, p + q + 1).node))
    lines = _joined("Multiply the first numbers, and add the indices.", product, p + q, key)
    return _asking(asked, key, lines, wrong, twin)


def _over(kind: int, a: int, b: int, p: int, q: int, twin: tuple[object, ...]) -> Draft:
    if kind == Kind.OVER:
        quotient, places = a, 1
        top_first, bottom_first = decimal(a * b, 1), decimal(b, 0)
    else:
        divisor = a if a > 9 else 10 * a
        quotient, places = 10000 * b // divisor, 3
        top_first, bottom_first = t.Int(b), _first(a).first
    first, second = t.times(top_first, _ten(p)), t.times(bottom_first, _ten(q))
    asked = t.divide(t.Bracket(first), t.Bracket(second))
    key = standard(quotient, p - q - places)
    shown = decimal(quotient, places)
    wrong: list[Wrong] = []
    if key.power != p - q:
        wrong.append((m.TOO_LARGE, t.times(shown, _ten(p - q))))
        wrong.append((m.WRONG_WAY, Standard(key.digits, key.places, p - q + 1).node))
    else:
        wrong.append((m.DIVIDES_INDICES, Standard(key.digits, key.places, p // q).node))
        wrong.append((m.MULTIPLIES_INDICES, Standard(key.digits, key.places, p + q).node))
    lines = _joined("Divide the first numbers, and subtract the indices.", shown, p - q, key)
    return _asking(asked, key, lines, wrong, twin)


def _sum(kind: int, a: int, b: int, p: int, q: int, twin: tuple[object, ...]) -> Draft:
    if kind == Kind.SAME_SUM:
        q = p
    left, right = _first(a), _first(b)
    first, second = t.times(left.first, _ten(p)), t.times(right.first, _ten(q))
    plus = kind != Kind.DIFFERENCE
    asked = (t.add if plus else t.sub)(first, second)
    sign = 1 if plus else -1
    first_tenths = a * 10 ** (1 - left.places)  # in tenths
    total = first_tenths * 10 ** (p - q) + sign * 10 * b
    key = standard(total, q - 1)
    both = decimal(first_tenths + sign * 10 * b, 1)
    # Over the smaller power of ten: 250 and 3, both times the same power.
    over = decimal(first_tenths * 10 ** (p - q), 1)
    lines: list[tuple[str, t.Node]] = []
    if kind != Kind.SAME_SUM:
        lines.append(
            (
                f"Write both with 10 to the power {q}.",
                (t.add if plus else t.sub)(t.times(over, _ten(q)), second),
            )
        )
    lines.append(
        (
            "Add the first numbers." if plus else "Subtract the first numbers.",
            t.times(decimal(total, 1), _ten(q)),
        )
    )
    if lines[-1][1] != key.node:
        lines.append((PUT_RIGHT, key.node))
    if kind == Kind.SAME_SUM:
        wrong: list[Wrong] = [
            (m.ADDS_ALL, t.times(both, _ten(p + q))),
            (m.TOO_LARGE, t.times(both, _ten(p))),
        ]
    else:
        wrong = [
            (m.ADDS_FIRST, t.times(both, _ten(p))),
            (
                m.ADDS_ALL if plus else m.SUBTRACTS_ALL,
                t.times(both, _ten(p + q if plus else p - q)),
            ),
        ]
    return _asking(asked, key, lines, wrong, twin)


def _square(a: int, p: int, twin: tuple[object, ...]) -> Draft:
    left = _first(a)
    inner = t.times(left.first, _ten(p))
    asked = t.Power(t.Bracket(inner), t.Int(2))
    square = decimal(a * a, 2 * left.places)
    key = standard(a * a, 2 * p - 2 * left.places)
    lines = [
        ("Write the brackets out twice.", t.times(t.Bracket(inner), t.Bracket(inner))),
        ("Multiply the first numbers, and the powers of 10.", t.times(square, _ten(p), _ten(p))),
        *_joined("Add the indices.", square, 2 * p, key),
    ]
    wrong = [
        (m.SQUARES_FIRST_ONLY, standard(a * a, p - 2 * left.places).node),
        (m.ADDS_TWO, standard(a * a, p + 2 - 2 * left.places).node),
        (m.TOO_LARGE, t.times(square, _ten(2 * p)) if key.power != 2 * p else None),
    ]
    return _asking(asked, key, lines, wrong, twin)


def _story(a: int, b: int, p: int, twin: tuple[object, ...]) -> Draft:
    says, asks = by_turns(_STORIES, a + b + p)
    single = Standard(a, 1, p)
    many = t.Int(b)
    asked = t.times(single.first, _ten(p), many)
    key = standard(a * b, p - 1)
    product = decimal(a * b, 1)
    text = prompt(f"{says} {asks} Give your answer in standard form.", a=single.node, b=many)
    steps = worked(
        asked,
        ("Multiply the first number.", t.times(product, _ten(p))),
        (PUT_RIGHT, key.node),
    )
    wrong = slips(
        (m.TOO_LARGE, t.times(product, _ten(p))),
        (m.WRONG_WAY, Standard(key.digits, key.places, p - 1).node),
    )
    return Draft(text, Find(asked), key.node, "standard-form", steps, wrong, twin)
