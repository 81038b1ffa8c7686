"""Equations with fractional coefficients."""

from __future__ import annotations

from fractions import Fraction
from math import gcd, lcm

from generators.equations import _misconceptions as m
from generators.equations._asks import (
    asking,
    fraction_of,
    last_product,
    last_products,
    number_left,
    one_of,
)
from generators.equations._balance import balance, take_number
from generators.equations._to_solve import to_solve
from generators.equations._words import shown_term
from generators.equations._worked_wrongly import wrong_solutions
from generators.equations._writing import bracket, letter, side, solution
from generators.equations._wrong_lines import across, root
from itembank.items import kinds
from itembank.items.item import Draft, Step, Tier
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong
from itembank.notation import tree as t

Parts = tuple[t.Relation, int, tuple[Step, ...], tuple[Wrong, ...]]


def _support(a: int, b: int, q: int) -> bool:
    # The coefficient is a fraction in lowest terms.
    return a != b and gcd(a, b) == 1


def _core(sign: int, a: int, b: int, k: int, q: int) -> bool:
    # The coefficient is a proper fraction in lowest terms; the right-hand side is positive.
    return a < b and gcd(a, b) == 1 and (sign > 0 or a * q > k)


def _challenge(kind: int, a: int, b: int, p: int, q: int) -> bool:
    if a == b:
        return False
    if kind < 2:
        return p == 1 and a < b
    # (x + p)/a = (x + r)/b, r whole; blind if the sides are alike or half-multiplied.
    if (b * (q + p)) % a:
        return False
    r = b * (q + p) // a - q
    if a > b and 1 <= r <= 6:
        return False  # the same equation with its sides exchanged is kept once
    common = gcd(a, b)
    return r not in (0, p) and p * (b // common - 1) != r * (a // common - 1)


def _times(n: int) -> str:
    return f"Multiply both sides by {n}."


def _letters_over(kind: int, x: t.Sym, a: int, b: int, q: int) -> Parts:
    """x/a + x/b = c, or x/a − x/b = c, with the least common denominator."""
    bottom = lcm(a, b)
    sign = 1 if kind == 0 else -1
    value = bottom * q
    more, less = bottom // a, bottom // b
    k = more + sign * less
    c = q * k
    parts = t.Frac(x, t.Int(a)), t.Frac(x, t.Int(b))
    equation = t.equals(t.add(*parts) if sign > 0 else t.sub(*parts), t.num(c))
    cleared = t.add(side(more, x), side(sign * less, x))
    last = solution(x, value)
    steps = [
        Step(_times(bottom), t.equals(cleared, t.num(bottom * c))),
        Step("Collect like terms.", last if k == 1 else t.equals(side(k, x), t.num(bottom * c))),
    ]
    if k != 1:
        steps.append(Step(f"Divide both sides by {k}.", last))
    wrong: tuple[Wrong, ...] = (
        (
            asking(m.PART_CLEARED, f"You multiply both sides by {bottom}. What is {c} × {bottom}?"),
            root(k, 0, 0, c),
        ),
        (
            asking(
                m.ADDS_DENOMINATORS,
                f"If {x.name} is {bottom}, what is {x.name}/{a} + {x.name}/{b}? "
                f"What is 2{x.name}/{a + b}?",
            ),
            Fraction(c * (a + b), 2) if sign > 0 else None,
        ),
        (asking(m.STOPS_EARLY, one_of(k, x)), bottom * c if k != 1 else None),
        (
            asking(
                m.ADDS_LIKE_TERMS,
                f"What is {shown_term(more, x)} − {shown_term(less, x)}?",
            ),
            root(more + less, 0, 0, bottom * c) if sign < 0 else None,
        ),
    )
    return equation, value, tuple(steps), wrong


def _two_sides(x: t.Sym, a: int, b: int, p: int, value: int) -> Parts:
    """(x + p)/a = (x + r)/b: the least common denominator clears both sides."""
    r = b * (value + p) // a - value
    bottom = lcm(a, b)
    u, v = bottom // a, bottom // b
    left, right = side(1, x, p), side(1, x, r)
    equation = t.equals(t.Frac(left, t.Int(a)), t.Frac(right, t.Int(b)))
    cleared_left = bracket(u, left) if u > 1 else left
    cleared_right = bracket(v, right) if v > 1 else right
    steps = [Step(_times(bottom), t.equals(cleared_left, cleared_right))]
    both = u > 1 and v > 1
    steps.append(
        Step(
            "Expand both brackets." if both else "Expand the bracket.",
            t.equals(side(u, x, u * p), side(v, x, v * r)),
        )
    )
    steps.extend(balance(x, u, u * p, v, v * r))
    wrong: tuple[Wrong, ...] = (
        (
            asking(
                m.OWN_DENOMINATOR,
                f"You multiply both sides by {bottom}. "
                f"What is {bottom} ÷ {a}? What is {bottom} ÷ {b}?",
            ),
            root(a, a * p, b, b * r),
        ),
        (
            asking(
                m.FIRST_TERM_ONLY,
                last_products(u, p, v, r) if both else last_product(*((u, p) if u > 1 else (v, r))),
            ),
            root(u, p, v, r),
        ),
        *across(x, u, u * p, v, v * r),
    )
    return equation, value, tuple(steps), wrong


@register
class Fractional(Topic):
    """(a/b)x = c, then with a number added, then fractions of the letter on both sides."""

    id = "equations.fractional"
    title = "Equations with fractional coefficients"
    statements = ("algebra.linear-equations",)
    misconceptions = (
        m.MULTIPLIES_BY_FRACTION,
        m.IGNORES_NUMERATOR,
        m.PART_CLEARED,
        m.SAME_OPERATION,
        m.ADDS_DENOMINATORS,
        m.STOPS_EARLY,
        m.ADDS_LIKE_TERMS,
        m.LETTER_ACROSS,
        m.NUMBER_ACROSS,
        m.OWN_DENOMINATOR,
        m.FIRST_TERM_ONLY,
        m.SUBTRACTS_MULTIPLIER,
    )
    prerequisites = ("equations.two-step",)
    spaces = {
        Tier.SUPPORT: kinds.with_matches(
            kinds.with_claims(Space(_support, a=range(2, 10), b=range(3, 11), q=range(2, 11))),
            letter,
        ),
        Tier.CORE: kinds.with_matches(
            kinds.with_claims(
                Space(
                    _core, sign=(1, -1), a=range(2, 6), b=range(3, 9), k=range(2, 9), q=range(2, 8)
                )
            ),
            letter,
        ),
        Tier.CHALLENGE: kinds.with_matches(
            kinds.with_claims(
                Space(
                    _challenge,
                    kind=range(3),
                    a=range(2, 8),
                    b=range(2, 8),
                    p=range(1, 7),
                    q=range(2, 8),
                )
            ),
            letter,
        ),
    }
    spaces = kinds.with_working_gone_wrong(spaces, wrong_solutions)

    def make(self, tier: Tier, *values: int) -> Draft:
        """Return the question; the last parameter leads to the solution."""
        x = letter(*values)
        wrong: tuple[Wrong, ...]
        if tier is Tier.CHALLENGE:
            kind, a, b, p, q = values
            if kind < 2:
                equation, value, steps, wrong = _letters_over(kind, x, a, b, q)
            else:
                equation, value, steps, wrong = _two_sides(x, a, b, p, q)
        else:
            sign, a, b, k, q = values if tier is Tier.CORE else (0, *values[:2], 0, values[2])
            part = t.Juxt((t.Frac(t.Int(a), t.Int(b)), x))
            value, k = b * q, sign * k
            c = a * q
            equation = t.equals(t.add(part, t.num(k)) if k else part, t.num(c + k))
            steps = (
                Step(_times(b), t.equals(side(a, x), t.num(b * c))),
                Step(f"Divide both sides by {a}.", solution(x, value)),
            )
            wrong = (
                (
                    asking(
                        m.PART_CLEARED,
                        f"If you multiply everything by {b}, what does the {abs(k)} become?",
                    ),
                    root(a, k, 0, b * (c + k)) if k else None,
                ),
                (asking(m.MULTIPLIES_BY_FRACTION, fraction_of(a, b, x, c)), Fraction(a * c, b)),
                (asking(m.IGNORES_NUMERATOR, one_of(a, x)), b * c),
                (
                    asking(m.SAME_OPERATION, number_left(k, c + k)),
                    root(a, 0, 0, b * (c + 2 * k)) if k else None,
                ),
            )
            if k:
                steps = (Step(take_number(k), t.equals(part, t.num(c))), *steps)
        return to_solve(equation, x, value, steps, wrong, values)
