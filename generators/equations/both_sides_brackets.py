"""Equations with the unknown on both sides and brackets."""

from __future__ import annotations

from generators.equations import _misconceptions as m
from generators.equations._asks import asking, last_product, last_products, one_of
from generators.equations._balance import balance
from generators.equations._to_solve import to_solve
from generators.equations._words import shown_factor
from generators.equations._worked_wrongly import wrong_solutions
from generators.equations._writing import bracket, letter, side, terms
from generators.equations._wrong_lines import across, root
from itembank.items import kinds
from itembank.items.item import Draft, Step, Tier
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong
from itembank.notation import tree as t

NUMBERS = (-7, -5, -3, -1, 1, 2, 4, 6)


def _support(sign: int, a: int, b: int, c: int, x: int) -> bool:
    # More of the letter stands on the left, and the right-hand side keeps a number.
    return a > c and (a - c) * x + sign * a * b != 0


def _core(a: int, p: int, b: int, c: int, x: int) -> bool:
    total = a * (p * x + b)
    if total % c or a * p == c:
        return False
    d = total // c - x
    # Blind to a half-multiplied bracket; or both brackets alike, or nothing in one of them.
    if d in (0, b) or not -20 <= d <= 20:
        return False
    if p == 1 and a > c and d in NUMBERS:
        return False  # the same equation with its sides exchanged is kept once
    return d * (c - 1) not in (b * (a - 1), -b * (a + 1))


def _challenge(a: int, p: int, b: int, c: int, d: int, e: int, x: int) -> bool:
    # Letters and a number stay on the left, a number on the right, and the last line divides.
    k = a * p - c - e
    if k in (0, 1) or a * p == c - e or a * p == c:
        return False
    if b * (a - 1) == -d * (c + 1):
        return False
    return b * (a - 1) != d * (c - 1) and a * b - c * d + k * x != 0 and a * b != c * d


@register
class BothSidesBrackets(Topic):
    """One bracket, then one on each side, then one taken away from another."""

    id = "equations.both-sides-brackets"
    title = "Equations with brackets and the unknown on both sides"
    statements = ("algebra.linear-equations",)
    misconceptions = (
        m.FIRST_TERM_ONLY,
        m.LETTER_ACROSS,
        m.NUMBER_ACROSS,
        m.BRACKET_SIGN,
        m.STOPS_EARLY,
        m.SUBTRACTS_MULTIPLIER,
    )
    prerequisites = ("equations.brackets", "equations.both-sides")
    spaces = {
        Tier.SUPPORT: kinds.with_matches(
            kinds.with_claims(
                Space(
                    _support,
                    sign=(1, -1),
                    a=range(3, 9),
                    b=range(1, 7),
                    c=range(2, 7),
                    x=range(2, 9),
                )
            ),
            letter,
        ),
        Tier.CORE: kinds.with_matches(
            kinds.with_claims(
                Space(
                    _core,
                    a=range(2, 7),
                    p=range(1, 4),
                    b=NUMBERS,
                    c=range(2, 7),
                    x=range(2, 8),
                )
            ),
            letter,
        ),
        Tier.CHALLENGE: kinds.with_matches(
            kinds.with_claims(
                Space(
                    _challenge,
                    a=range(2, 6),
                    p=(1, 2),
                    b=(-5, -2, 1, 3),
                    c=(2, 3),
                    d=(-4, -1, 2, 5),
                    e=range(1, 5),
                    x=(-4, -3, -2, 2, 3, 5),
                )
            ),
            letter,
        ),
    }
    spaces = kinds.with_working_gone_wrong(spaces, wrong_solutions)

    def make(self, tier: Tier, *values: int) -> Draft:
        """Return the question; the last parameter is the solution."""
        x, value = letter(*values), values[-1]
        wrong: tuple[Wrong, ...]
        twin: tuple[object, ...] = values
        if tier is Tier.SUPPORT:  # a(x + b) = cx + d
            sign, a, b, c, _ = values
            b *= sign
            d = (a - c) * value + a * b
            equation = t.equals(bracket(a, side(1, x, b)), side(c, x, d))
            opened = Step("Expand the bracket.", t.equals(side(a, x, a * b), side(c, x, d)))
            steps = (opened, *balance(x, a, a * b, c, d))
            wrong = (
                (asking(m.FIRST_TERM_ONLY, last_product(a, b)), root(a, b, c, d)),
                *across(x, a, a * b, c, d),
            )
        elif tier is Tier.CORE:  # a(px + b) = c(x + d)
            a, p, b, c, _ = values
            d = a * (p * value + b) // c - value
            k = a * p
            twin = tuple(sorted(((a, p, b), (c, 1, d))))
            equation = t.equals(bracket(a, side(p, x, b)), bracket(c, side(1, x, d)))
            opened = Step("Expand both brackets.", t.equals(side(k, x, a * b), side(c, x, c * d)))
            steps = (opened, *balance(x, k, a * b, c, c * d))
            wrong = (
                (asking(m.FIRST_TERM_ONLY, last_products(a, b, c, d)), root(k, b, c, d)),
                *across(x, k, a * b, c, c * d),
            )
        else:  # a(px + b) − c(x + d) = ex + f
            a, p, b, c, d, e, _ = values
            k, n = a * p - c, a * b - c * d
            f = n + (k - e) * value
            left = t.add(bracket(a, side(p, x, b)), bracket(-c, side(1, x, d)))
            right = side(e, x, f)
            equation = t.equals(left, right)
            open_left = terms(side(a * p, x, a * b), t.juxt(t.num(-c), x), t.num(-c * d))
            steps = (
                Step("Expand both brackets.", t.equals(open_left, right)),
                Step("Collect like terms on the left.", t.equals(side(k, x, n), right)),
                *balance(x, k, n, e, f),
            )
            wrong = (
                (
                    asking(m.BRACKET_SIGN, f"What is −{c} × {shown_factor(d)}?"),
                    root(k, a * b + c * d, e, f),
                ),
                # Half-multiplied, the brackets leave b and d; both are multiplied in the key.
                (asking(m.FIRST_TERM_ONLY, last_products(a, b, -c, d)), root(k, b + d, e, f)),
                *across(x, k, n, e, f),
                (asking(m.STOPS_EARLY, one_of(abs(k - e), x)), abs(k - e) * value),
            )
        return to_solve(equation, x, value, steps, wrong, twin)
