"""Equations with brackets, the unknown on one side."""

from __future__ import annotations

from generators.equations import _misconceptions as m
from generators.equations._asks import asking, last_product, last_products, number_left, one_of
from generators.equations._balance import balance
from generators.equations._to_solve import to_solve
from generators.equations._words import shown
from generators.equations._worked_wrongly import wrong_solutions
from generators.equations._writing import bracket, letter, side, swap, terms
from generators.equations._wrong_lines import root
from itembank.items import kinds
from itembank.items.item import Draft, Step, Tier
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong
from itembank.notation import tree as t


def _support(sign: int, a: int, b: int, x: int) -> bool:
    # What the bracket comes to is more than 1.
    return sign > 0 or x > b + 1


def _core(sign: int, a: int, b: int, c: int, x: int) -> bool:
    # What the bracket comes to is more than 1, and its two terms are not the same number.
    return b * x != c and (sign > 0 or b * x > c + 1)


def _challenge(sign: int, a: int, p: int, q: int, c: int, e: int, x: int) -> bool:
    if sign > 0:
        # Blind to a half-multiplied bracket, a lost constant, or the two not told apart.
        return q * (a - 1) != e * (c - 1) and a * q != c * e and q * (a + 1) != e * (c + 1)
    return a * p > c + 1 and a * (p * x + q) != c * (x - e)


def _letter(sign: int, *values: int) -> t.Sym:
    return letter(*values)


@register
class Brackets(Topic):
    """a(x + b) = c, then a(bx + c) = d, then two brackets added or taken away."""

    id = "equations.brackets"
    title = "Equations with brackets"
    statements = ("algebra.linear-equations",)
    misconceptions = (
        m.FIRST_TERM_ONLY,
        m.SAME_OPERATION,
        m.STOPS_EARLY,
        m.BRACKET_SIGN,
        m.SUBTRACTS_MULTIPLIER,
    )
    prerequisites = ("equations.two-step",)
    spaces = {
        Tier.SUPPORT: kinds.with_matches(
            kinds.with_claims(
                Space(_support, sign=(1, -1), a=range(2, 10), b=range(1, 10), x=range(2, 13))
            ),
            _letter,
        ),
        Tier.CORE: kinds.with_matches(
            kinds.with_claims(
                Space(
                    _core, sign=(1, -1), a=range(2, 7), b=range(2, 7), c=range(1, 9), x=range(2, 10)
                )
            ),
            _letter,
        ),
        Tier.CHALLENGE: kinds.with_matches(
            kinds.with_claims(
                Space(
                    _challenge,
                    sign=(1, -1),
                    a=range(2, 6),
                    p=range(1, 4),
                    q=range(1, 5),
                    c=range(2, 5),
                    e=range(1, 5),
                    x=range(2, 6),
                )
            ),
            _letter,
        ),
    }
    spaces = kinds.with_working_gone_wrong(spaces, wrong_solutions)

    def make(self, tier: Tier, sign: int, *values: int) -> Draft:
        """Return the question; the last parameter is the solution."""
        x = letter(*values)
        value = values[-1]
        left: t.Node
        wrong: tuple[Wrong, ...]
        if tier is Tier.CHALLENGE:
            a, p, q, c, e, _ = values
            k, n, c = a * p + sign * c, a * q - sign * c * e, sign * c
            f = k * value + n
            inside, second = side(p, x, q), side(1, x, -e)
            left = t.add(bracket(a, inside), bracket(c, second))
            equation = t.equals(left, t.num(f))
            opened = terms(side(a * p, x, a * q), t.juxt(t.num(c), x), t.num(-c * e))
            wrong = (
                # Half-multiplied, the brackets leave q and −e; both are multiplied in the key.
                (asking(m.FIRST_TERM_ONLY, last_products(a, q, c, -e)), root(k, q - e, 0, f)),
                (
                    asking(m.BRACKET_SIGN, f"What is {shown(c)} × (−{e})?"),
                    root(k, a * q + c * e, 0, f) if sign < 0 else None,
                ),
                (asking(m.SAME_OPERATION, number_left(n, f)), root(k, 0, 0, f + n)),
            )
            lines = (
                Step("Expand both brackets.", t.equals(opened, t.num(f))),
                Step("Collect like terms.", t.equals(side(k, x, n), t.num(f))),
            )
            return to_solve(
                equation, x, value, (*lines, *balance(x, k, n, 0, f)), wrong, (sign, *values)
            )
        a, b, c, _ = values if tier is Tier.CORE else (values[0], 1, *values[1:])
        c *= sign
        d, k, n = a * (b * value + c), a * b, a * c
        turned = tier is Tier.CORE and sum(values) % 3 == 0
        equation = swap(t.equals(bracket(a, side(b, x, c)), t.num(d)), turned)
        wrong = (
            (asking(m.FIRST_TERM_ONLY, last_product(a, c)), root(k, c, 0, d)),
            (asking(m.SAME_OPERATION, number_left(n, d)), root(k, 0, 0, d + n)),
            (asking(m.STOPS_EARLY, one_of(k, x)), d - n),
        )
        return to_solve(
            equation,
            x,
            value,
            (
                Step("Expand the bracket.", swap(t.equals(side(k, x, n), t.num(d)), turned)),
                *(balance(x, 0, d, k, n) if turned else balance(x, k, n, 0, d)),
            ),
            wrong,
            (sign, *values),
        )
