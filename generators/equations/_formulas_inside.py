"""Formulas whose result is known: the letter that is asked for stands inside the formula."""

from __future__ import annotations

from fractions import Fraction

from generators.equations import _misconceptions as m
from generators.equations._asks import asking, number_left, one_of, undo_product
from generators.equations._balance import balance
from generators.equations._formulas import (
    AREA,
    EDGE,
    HALF,
    SPEED,
    TRAPEZIUM,
    A,
    B,
    Built,
    H,
    P,
    T,
    U,
    V,
    Y,
)
from generators.equations._words import shown
from itembank.items.item import Step
from itembank.items.wrong_answers import Wrong
from itembank.notation import tree as t


def letter_inside(kind: int, p: int, q: int, r: int) -> Built:
    """Return a formula and its result, the letter asked for inside the formula."""
    put = "Substitute the values."
    wrong: tuple[Wrong, ...]
    if kind == 0:  # v = u + at, for a, which is negative
        v = p - q * r
        steps = (
            Step(put, t.equals(t.num(v), t.add(t.num(p), t.juxt(t.num(q), A)))),
            *balance(A, 0, v, q, p),
        )
        wrong = (
            (asking(m.ANSWER_SIGN, f"What is {p} + {q} × {r}? Is it {shown(v)}?"), r),
            (asking(m.SAME_OPERATION, number_left(p, v)), Fraction(v + p, q)),
        )
        given = (t.equals(V, t.num(v)), t.equals(U, t.num(p)), t.equals(T, t.num(q)))
        return SPEED, A, given, -r, steps, wrong
    if kind == 1:  # v = u + at, for t, where a is negative
        v = p - q * r
        steps = (
            Step(put, t.equals(t.num(v), t.add(t.num(p), t.juxt(t.num(-q), T)))),
            *balance(T, 0, v, -q, p),
        )
        wrong = (
            (asking(m.DROPS_MINUS, f"You substitute a = −{q}. Is at then {q}t or −{q}t?"), -r),
            (asking(m.SAME_OPERATION, number_left(v, p)), Fraction(v + p, q)),
        )
        given = (t.equals(V, t.num(v)), t.equals(U, t.num(p)), t.equals(A, t.num(-q)))
        return SPEED, T, given, r, steps, wrong
    if kind == 2:  # P = 2a + 2b, for b
        total = 2 * p + 2 * q
        steps = (
            Step(
                put, t.equals(t.num(total), t.add(t.times(t.Int(2), t.num(p)), t.juxt(t.Int(2), B)))
            ),
            Step("Multiply.", t.equals(t.num(total), t.add(t.num(2 * p), t.juxt(t.Int(2), B)))),
            *balance(B, 0, total, 2, 2 * p),
        )
        wrong = (
            (asking(m.STOPS_EARLY, one_of(2, B)), 2 * q),
            (
                asking(m.EXTRA_ONCE, f"How many sides of length {p} are in 2a + 2b?"),
                Fraction(total - p, 2),
            ),
        )
        return EDGE, B, (t.equals(P, t.num(total)), t.equals(A, t.num(p))), q, steps, wrong
    if kind == 5:  # y = p − qx, for x
        x = t.Sym("x")
        y = p - q * r
        right = t.sub(t.num(p), t.juxt(t.num(q), x))
        steps = (Step("Substitute the value.", t.equals(t.num(y), right)), *balance(x, 0, y, -q, p))
        wrong = (
            (asking(m.LOST_MINUS, f"What is {p} − {q} × (−{r})? Is it {shown(y)}?"), -r),
            (asking(m.SAME_OPERATION, number_left(y, p)), Fraction(y + p, q)),
        )
        return t.equals(Y, right), x, (t.equals(Y, t.num(y)),), r, steps, wrong
    area = (p + q) * r // 2
    double = "Multiply both sides by 2."
    if kind == 3:  # A = (a + b)h/2, for h
        doubled = t.Juxt((t.Bracket(t.add(t.num(p), t.num(q))), H))
        steps = (
            Step(put, t.equals(t.num(area), t.Frac(doubled, t.Int(2)))),
            Step(double, t.equals(t.num(2 * area), doubled)),
            Step("Add inside the bracket.", t.equals(t.num(2 * area), t.juxt(t.num(p + q), H))),
            Step(f"Divide both sides by {p + q}.", t.equals(H, t.num(r))),
        )
        wrong = (
            (asking(m.NO_HALF, HALF), Fraction(r, 2)),
            (asking(m.SUBTRACTS_MULTIPLIER, undo_product(p + q, H)), 2 * area - p - q),
        )
        given = (t.equals(AREA, t.num(area)), t.equals(A, t.num(p)), t.equals(B, t.num(q)))
        return TRAPEZIUM, H, given, r, steps, wrong
    sum_inside = t.Bracket(t.add(t.num(p), B))
    steps = (
        Step(put, t.equals(t.num(area), t.Frac(t.times(sum_inside, t.num(r)), t.Int(2)))),
        Step(double, t.equals(t.num(2 * area), t.times(sum_inside, t.num(r)))),
        Step(f"Divide both sides by {r}.", t.equals(t.num(p + q), t.add(t.num(p), B))),
        Step(f"Subtract {p} from both sides.", t.equals(B, t.num(q))),
    )
    wrong = (
        (asking(m.NO_HALF, HALF), Fraction(area, r) - p),
        (asking(m.SAME_OPERATION, number_left(p, p + q)), 2 * p + q),
    )
    given = (t.equals(AREA, t.num(area)), t.equals(A, t.num(p)), t.equals(H, t.num(r)))
    return TRAPEZIUM, B, given, q, steps, wrong
