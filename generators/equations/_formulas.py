"""The formulas that numbers are put into: each with its values, working and wrong answers."""

from __future__ import annotations

from fractions import Fraction

from generators._turns import by_turns
from generators.equations import _misconceptions as m
from generators.equations._asks import asking
from generators.equations._words import shown, shown_factor
from generators.equations._writing import side
from itembank.items.item import Step
from itembank.items.wrong_answers import Wrong
from itembank.notation import tree as t

A, B, H, P, T, U, V, Y = (t.Sym(name) for name in "abhPtuvy")
AREA, AREA_TOP = t.Sym("A"), t.Juxt((t.Bracket(t.add(A, B)), H))
LINES = ((t.Sym("y"), t.Sym("x")), (t.Sym("T"), t.Sym("n")), (t.Sym("C"), t.Sym("k")))
TRAPEZIUM = t.equals(AREA, t.Frac(AREA_TOP, t.Int(2)))
TRIANGLE = t.equals(AREA, t.Frac(t.Juxt((B, H)), t.Int(2)))
SPEED = t.equals(V, t.add(U, t.Juxt((A, T))))
EDGE = t.equals(P, t.add(t.juxt(t.Int(2), A), t.juxt(t.Int(2), B)))

HALF = "The formula says to divide by 2. Where is that in your working?"

Built = tuple[
    t.Relation, t.Sym, tuple[t.Relation, ...], Fraction | int, tuple[Step, ...], tuple[Wrong, ...]
]


def _beside(a: int, x: int) -> int:
    """Return the number that `a` and `x` make when their digits stand side by side."""
    return int(f"{a}{x}")


def _means(a: int, letter: t.Sym, x: int) -> str:
    return (
        f"What does {a}{letter.name} mean when {letter.name} is {x}: {_beside(a, x)}, or {a} × {x}?"
    )


def _lots(a: int, letter: t.Sym) -> str:
    name = letter.name
    return f"What does {a}{name} mean: {a} more than {name}, or {a} lots of {name}?"


def _first(p: int, q: int, r: int) -> str:
    return f"In {p} + {shown_factor(q)} × {r}, which part do you work out first?"


def simple(kind: int, a: int, b: int, x: int) -> Built:
    """Return y = ax + b, y = ax − b, P = 2a + 2b or A = bh/2."""
    if kind == 3:
        return _triangle(a, b)
    if kind == 2:
        value = 2 * a + 2 * b
        steps = (
            Step(
                "Substitute the values.",
                t.equals(P, t.add(t.times(t.Int(2), t.num(a)), t.times(t.Int(2), t.num(b)))),
            ),
            Step("Multiply first.", t.equals(P, t.add(t.num(2 * a), t.num(2 * b)))),
            Step("Then add.", t.equals(P, t.num(value))),
        )
        wrong: tuple[Wrong, ...] = (
            (asking(m.SIDE_BY_SIDE, _means(2, A, a)), _beside(2, a) + _beside(2, b)),
            (asking(m.ADDS_FACTORS, _lots(2, A)), 4 + a + b),
        )
        return EDGE, P, (t.equals(A, t.num(a)), t.equals(B, t.num(b))), value, steps, wrong
    subject, letter = by_turns(LINES, a + b + x)
    plus = b if kind == 0 else -b
    value = a * x + plus
    steps = (
        Step(
            f"Substitute {letter.name} = {x}.",
            t.equals(subject, t.add(t.times(t.num(a), t.num(x)), t.num(plus))),
        ),
        Step("Multiply first.", t.equals(subject, t.add(t.num(a * x), t.num(plus)))),
        Step("Then add." if plus > 0 else "Then subtract.", t.equals(subject, t.num(value))),
    )
    wrong = (
        (asking(m.SIDE_BY_SIDE, _means(a, letter, x)), _beside(a, x) + plus),
        (asking(m.ADDS_FACTORS, _lots(a, letter)), a + x + plus),
    )
    formula = t.equals(subject, side(a, letter, plus))
    return formula, subject, (t.equals(letter, t.num(x)),), value, steps, wrong


def _triangle(b: int, h: int) -> Built:
    steps = (
        Step(
            "Substitute the values.", t.equals(AREA, t.Frac(t.times(t.num(b), t.num(h)), t.Int(2)))
        ),
        Step("Multiply.", t.equals(AREA, t.Frac(t.num(b * h), t.Int(2)))),
        Step("Divide by 2.", t.equals(AREA, t.num(b * h // 2))),
    )
    wrong: tuple[Wrong, ...] = (
        (asking(m.NO_HALF, HALF), b * h),
        (asking(m.ADDS_FACTORS, "What does bh mean: b + h, or b × h?"), Fraction(b + h, 2)),
        (
            asking(m.SIDE_BY_SIDE, f"What does bh mean here: {_beside(b, h)}, or {b} × {h}?"),
            Fraction(_beside(b, h), 2),
        ),
    )
    return TRIANGLE, AREA, (t.equals(B, t.num(b)), t.equals(H, t.num(h))), b * h // 2, steps, wrong


def _signed(n: int) -> t.Node:
    """Return a value to put into a formula: a negative one in a bracket."""
    return t.Bracket(t.num(n)) if n < 0 else t.num(n)


def richer(kind: int, p: int, q: int, r: int) -> Built:
    """Return a formula with a square, a bracket or a negative value."""
    if kind == 0:
        return _square(p, q)
    if kind == 1:
        return _trapezium(p, q, r)
    minus = "Multiply first: the product is negative."
    steps: tuple[Step, ...]
    if kind == 2:  # v = u + at, a negative
        value = p + q * r
        steps = (
            Step(
                "Substitute the values.",
                t.equals(V, t.add(t.num(p), t.times(_signed(q), t.num(r)))),
            ),
            Step(minus, t.equals(V, t.add(t.num(p), t.num(q * r)))),
            Step("Then subtract.", t.equals(V, t.num(value))),
        )
        given = (t.equals(U, t.num(p)), t.equals(A, t.num(q)), t.equals(T, t.num(r)))
        wrong: tuple[Wrong, ...] = (
            (asking(m.SUM_FIRST, _first(p, q, r)), (p + q) * r),
            (asking(m.DROPS_MINUS, f"What is {shown(q)} × {r}?"), p - q * r),
        )
        return SPEED, V, given, value, steps, wrong
    x = t.Sym("x")
    value = p - r * q
    steps = (
        Step("Substitute the value.", t.equals(Y, t.sub(t.num(p), t.times(t.num(r), _signed(q))))),
        Step(minus, t.equals(Y, t.sub(t.num(p), t.Bracket(t.num(r * q))))),
        Step(
            "Subtracting a negative number is the same as adding.",
            t.equals(Y, t.add(t.num(p), t.num(-r * q))),
        ),
        Step("Add.", t.equals(Y, t.num(value))),
    )
    wrong = (
        (
            asking(m.SUM_FIRST, f"In {p} − {r} × (−{-q}), which part do you work out first?"),
            (p - r) * q,
        ),
        (asking(m.DROPS_MINUS, f"What is {r} × (−{-q})?"), p + r * q),
    )
    return (
        t.equals(Y, t.sub(t.num(p), t.juxt(t.num(r), x))),
        Y,
        (t.equals(x, t.num(q)),),
        value,
        steps,
        wrong,
    )


def _square(a: int, x: int) -> Built:
    letter = t.Sym("x")
    value = a * x * x
    steps = (
        Step(
            "Substitute the value.", t.equals(Y, t.times(t.num(a), t.Power(_signed(x), t.Int(2))))
        ),
        Step("Square first.", t.equals(Y, t.times(t.num(a), t.num(x * x)))),
        Step("Then multiply.", t.equals(Y, t.num(value))),
    )
    wrong: tuple[Wrong, ...] = (
        (
            asking(m.POWER_OF_ALL, f"In {a}x², what is squared: x, or {a}x?"),
            (a * x) ** 2,
        ),
        (
            asking(m.SQUARE_SIGN, f"What is {shown(x)} × {shown_factor(x)}?"),
            -value if x < 0 else None,
        ),
        (
            asking(
                m.DOUBLES,
                f"What does x² mean when x is {shown(x)}: "
                f"2 × {shown_factor(x)}, or {shown(x)} × {shown_factor(x)}?",
            ),
            2 * a * x,
        ),
    )
    formula = t.equals(Y, t.juxt(t.num(a), t.Power(letter, t.Int(2))))
    return formula, Y, (t.equals(letter, t.num(x)),), value, steps, wrong


def _trapezium(a: int, b: int, h: int) -> Built:
    value = (a + b) * h // 2
    top = t.Product(t.Bracket(t.add(t.num(a), t.num(b))), (("×", t.num(h)),))
    steps = (
        Step("Substitute the values.", t.equals(AREA, t.Frac(top, t.Int(2)))),
        Step(
            "Add inside the bracket.",
            t.equals(AREA, t.Frac(t.times(t.num(a + b), t.num(h)), t.Int(2))),
        ),
        Step("Multiply.", t.equals(AREA, t.Frac(t.num((a + b) * h), t.Int(2)))),
        Step("Divide by 2.", t.equals(AREA, t.num(value))),
    )
    wrong: tuple[Wrong, ...] = (
        (
            asking(m.NO_BRACKET, f"In ({a} + {b}) × {h}, what do you work out first?"),
            Fraction(a + b * h, 2),
        ),
        (asking(m.NO_HALF, HALF), (a + b) * h),
    )
    return TRAPEZIUM, AREA, _given(a, b, h), value, steps, wrong


def _given(a: int, b: int, h: int) -> tuple[t.Relation, ...]:
    return t.equals(A, t.num(a)), t.equals(B, t.num(b)), t.equals(H, t.num(h))
