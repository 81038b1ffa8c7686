"""Substitution into a formula."""

from __future__ import annotations

from fractions import Fraction

from generators.equations import _misconceptions as m
from generators.equations._common import Wrong, balance, number_slips, side
from itembank.items.forms import number_node
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.registry import register
from itembank.items.space import Space
from itembank.items.topic import Topic
from itembank.notation.tree import (
    Bracket,
    Frac,
    Int,
    Juxt,
    Node,
    Power,
    Product,
    Relation,
    Sym,
    add,
    equals,
    juxt,
    num,
    sub,
    times,
)

A, B, H, P, T, U, V, Y = (Sym(name) for name in "abhPtuvy")
AREA, AREA_TOP = Sym("A"), Juxt((Bracket(add(A, B)), H))
LINES = ((Sym("y"), Sym("x")), (Sym("T"), Sym("n")), (Sym("C"), Sym("k")))
TRAPEZIUM = equals(AREA, Frac(AREA_TOP, Int(2)))
TRIANGLE = equals(AREA, Frac(Juxt((B, H)), Int(2)))
SPEED = equals(V, add(U, Juxt((A, T))))
EDGE = equals(P, add(juxt(Int(2), A), juxt(Int(2), B)))

Built = tuple[
    Relation, Sym, tuple[Relation, ...], Fraction | int, tuple[Step, ...], tuple[Wrong, ...]
]


def _support(kind: int, a: int, b: int, x: int) -> bool:
    if kind == 2:  # P = 2a + 2b, a < b
        return x == 2 and a < b
    if kind == 3:  # A = bh/2
        return x == 2 and b > 1 and a != b and a * b % 2 == 0
    # 2 + 2 is 2 × 2: adding would not show. Odd and even keep the kinds in balance.
    return b % 2 == kind and (a != 2 or x != 2) and (kind == 0 or a * x > b)


def _core(kind: int, p: int, q: int, r: int) -> bool:
    if kind == 0:
        return r == 3 and p <= 6
    if kind == 1:
        return p < q and (p + q) * r % 2 == 0
    if q > 0:
        return False
    # Else two of the mistakes would give one answer.
    return p * (r - 1) != -2 * q * r if kind == 2 else p * (1 - q) != -2 * r * q


def _challenge(kind: int, p: int, q: int, r: int) -> bool:
    if kind == 2:
        return r == 3 and p not in (q, 2 * q)
    if kind in (3, 4):
        return p < q and (p + q) * r % 2 == 0
    # Odd and even keep the kinds in balance; at qr the value given would be 0.
    return p != q * r and (p in (4, 7) if kind == 5 else p % 2 == kind)


@register
class Substitution(Topic):
    """Into a simple formula; with squares, brackets or negatives; for a letter not alone."""

    id = "equations.substitution"
    title = "Substituting into formulae"
    misconceptions = (
        m.SIDE_BY_SIDE,
        m.ADDS_FACTORS,
        m.SUM_FIRST,
        m.POWER_OF_ALL,
        m.DOUBLES,
        m.SQUARE_SIGN,
        m.NO_BRACKET,
        m.NO_HALF,
        m.DROPS_MINUS,
        m.LOST_MINUS,
        m.ANSWER_SIGN,
        m.SAME_OPERATION,
        m.STOPS_EARLY,
        m.EXTRA_ONCE,
        m.MIXED_INVERSE,
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support, kind=range(4), a=range(2, 10), b=range(1, 13), x=range(2, 10)
        ),
        Tier.CORE: Space(
            _core,
            kind=range(4),
            p=range(2, 10),
            q=(-9, -8, -7, -6, -5, -4, -3, -2, 3, 4, 5, 6, 7, 8, 9, 10, 12),
            r=range(3, 8),
        ),
        Tier.CHALLENGE: Space(
            _challenge, kind=range(6), p=range(2, 10), q=range(3, 11), r=range(3, 9)
        ),
    }

    def make(self, tier: Tier, *values: int) -> Draft:
        """Return the question: a formula, the values given, and the letter asked for."""
        build = {Tier.SUPPORT: _simple, Tier.CORE: _richer, Tier.CHALLENGE: _inside}[tier]
        formula, target, given, value, steps, wrong = build(*values)
        names = "abc"[: len(given)]
        listed = ["{" + name + "}" for name in names]
        known = " and ".join([", ".join(listed[:-1]), listed[-1]] if len(listed) > 1 else listed)
        return Draft(
            prompt(
                "Use {f} to work out {t} when " + known + ".",
                f=formula,
                t=target,
                **dict(zip(names, given, strict=True)),
            ),
            Find(target, (formula, *given)),
            number_node(value),
            "integer",
            steps,
            number_slips(*wrong),
            values,
        )


def _beside(a: int, x: int) -> int:
    """Return the number that `a` and `x` make when their digits stand side by side."""
    return int(f"{a}{x}")


def _simple(kind: int, a: int, b: int, x: int) -> Built:
    """Return y = ax + b, y = ax − b, P = 2a + 2b or A = bh/2."""
    if kind == 3:
        return _triangle(a, b)
    if kind == 2:
        value = 2 * a + 2 * b
        steps = (
            Step(
                "Put in the values.", equals(P, add(times(Int(2), num(a)), times(Int(2), num(b))))
            ),
            Step("Multiply first.", equals(P, add(num(2 * a), num(2 * b)))),
            Step("Then add.", equals(P, num(value))),
        )
        wrong: tuple[Wrong, ...] = (
            (m.SIDE_BY_SIDE, _beside(2, a) + _beside(2, b)),
            (m.ADDS_FACTORS, 4 + a + b),
        )
        return EDGE, P, (equals(A, num(a)), equals(B, num(b))), value, steps, wrong
    subject, letter = LINES[(a + b + x) % 3]
    plus = b if kind == 0 else -b
    value = a * x + plus
    steps = (
        Step(
            f"Put {x} in place of {letter.name}.",
            equals(subject, add(times(num(a), num(x)), num(plus))),
        ),
        Step("Multiply first.", equals(subject, add(num(a * x), num(plus)))),
        Step("Then add." if plus > 0 else "Then subtract.", equals(subject, num(value))),
    )
    wrong = ((m.SIDE_BY_SIDE, _beside(a, x) + plus), (m.ADDS_FACTORS, a + x + plus))
    formula = equals(subject, side(a, letter, plus))
    return formula, subject, (equals(letter, num(x)),), value, steps, wrong


def _triangle(b: int, h: int) -> Built:
    steps = (
        Step("Put in the values.", equals(AREA, Frac(times(num(b), num(h)), Int(2)))),
        Step("Multiply.", equals(AREA, Frac(num(b * h), Int(2)))),
        Step("Divide by 2.", equals(AREA, num(b * h // 2))),
    )
    wrong: tuple[Wrong, ...] = (
        (m.NO_HALF, b * h),
        (m.ADDS_FACTORS, Fraction(b + h, 2)),
        (m.SIDE_BY_SIDE, Fraction(_beside(b, h), 2)),
    )
    return TRIANGLE, AREA, (equals(B, num(b)), equals(H, num(h))), b * h // 2, steps, wrong


def _signed(n: int) -> Node:
    """Return a value to put into a formula: a negative one in a bracket."""
    return Bracket(num(n)) if n < 0 else num(n)


def _richer(kind: int, p: int, q: int, r: int) -> Built:
    """Return a formula with a square, a bracket or a negative value."""
    if kind == 0:
        return _square(p, q)
    if kind == 1:
        return _trapezium(p, q, r)
    minus = "Multiply first, with the minus sign."
    steps: tuple[Step, ...]
    if kind == 2:  # v = u + at, a negative
        value = p + q * r
        steps = (
            Step("Put in the values.", equals(V, add(num(p), times(_signed(q), num(r))))),
            Step(minus, equals(V, add(num(p), num(q * r)))),
            Step("Then subtract.", equals(V, num(value))),
        )
        given = (equals(U, num(p)), equals(A, num(q)), equals(T, num(r)))
        wrong: tuple[Wrong, ...] = ((m.SUM_FIRST, (p + q) * r), (m.DROPS_MINUS, p - q * r))
        return SPEED, V, given, value, steps, wrong
    x = Sym("x")
    value = p - r * q
    steps = (
        Step("Put in the value.", equals(Y, sub(num(p), times(num(r), _signed(q))))),
        Step(minus, equals(Y, sub(num(p), Bracket(num(r * q))))),
        Step("Taking away a negative number adds.", equals(Y, add(num(p), num(-r * q)))),
        Step("Add.", equals(Y, num(value))),
    )
    wrong = ((m.SUM_FIRST, (p - r) * q), (m.DROPS_MINUS, p + r * q))
    return equals(Y, sub(num(p), juxt(num(r), x))), Y, (equals(x, num(q)),), value, steps, wrong


def _square(a: int, x: int) -> Built:
    letter = Sym("x")
    value = a * x * x
    steps = (
        Step("Put in the value.", equals(Y, times(num(a), Power(_signed(x), Int(2))))),
        Step("Square first.", equals(Y, times(num(a), num(x * x)))),
        Step("Then multiply.", equals(Y, num(value))),
    )
    wrong: tuple[Wrong, ...] = (
        (m.POWER_OF_ALL, (a * x) ** 2),
        (m.SQUARE_SIGN, -value if x < 0 else None),
        (m.DOUBLES, 2 * a * x),
    )
    formula = equals(Y, juxt(num(a), Power(letter, Int(2))))
    return formula, Y, (equals(letter, num(x)),), value, steps, wrong


def _trapezium(a: int, b: int, h: int) -> Built:
    value = (a + b) * h // 2
    top = Product(Bracket(add(num(a), num(b))), (("×", num(h)),))
    steps = (
        Step("Put in the values.", equals(AREA, Frac(top, Int(2)))),
        Step("Add inside the bracket.", equals(AREA, Frac(times(num(a + b), num(h)), Int(2)))),
        Step("Multiply.", equals(AREA, Frac(num((a + b) * h), Int(2)))),
        Step("Divide by 2.", equals(AREA, num(value))),
    )
    wrong: tuple[Wrong, ...] = ((m.NO_BRACKET, a + Fraction(b * h, 2)), (m.NO_HALF, (a + b) * h))
    return TRAPEZIUM, AREA, _given(a, b, h), value, steps, wrong


def _given(a: int, b: int, h: int) -> tuple[Relation, ...]:
    return equals(A, num(a)), equals(B, num(b)), equals(H, num(h))


def _inside(kind: int, p: int, q: int, r: int) -> Built:
    """Return a formula and its result, the letter asked for inside the formula."""
    put = "Put in the values."
    wrong: tuple[Wrong, ...]
    if kind == 0:  # v = u + at, for a, which is negative
        v = p - q * r
        steps = (
            Step(put, equals(num(v), add(num(p), juxt(num(q), A)))),
            *balance(A, 0, v, q, p),
        )
        wrong = ((m.ANSWER_SIGN, r), (m.SAME_OPERATION, Fraction(v + p, q)))
        given = (equals(V, num(v)), equals(U, num(p)), equals(T, num(q)))
        return SPEED, A, given, -r, steps, wrong
    if kind == 1:  # v = u + at, for t, where a is negative
        v = p - q * r
        steps = (
            Step(put, equals(num(v), add(num(p), juxt(num(-q), T)))),
            *balance(T, 0, v, -q, p),
        )
        wrong = ((m.DROPS_MINUS, -r), (m.SAME_OPERATION, Fraction(v + p, q)))
        given = (equals(V, num(v)), equals(U, num(p)), equals(A, num(-q)))
        return SPEED, T, given, r, steps, wrong
    if kind == 2:  # P = 2a + 2b, for b
        total = 2 * p + 2 * q
        steps = (
            Step(put, equals(num(total), add(times(Int(2), num(p)), juxt(Int(2), B)))),
            Step("Multiply.", equals(num(total), add(num(2 * p), juxt(Int(2), B)))),
            *balance(B, 0, total, 2, 2 * p),
        )
        wrong = ((m.STOPS_EARLY, 2 * q), (m.EXTRA_ONCE, Fraction(total - p, 2)))
        return EDGE, B, (equals(P, num(total)), equals(A, num(p))), q, steps, wrong
    if kind == 5:  # y = p − qx, for x
        x = Sym("x")
        y = p - q * r
        right = sub(num(p), juxt(num(q), x))
        steps = (Step("Put in the value.", equals(num(y), right)), *balance(x, 0, y, -q, p))
        wrong = ((m.LOST_MINUS, -r), (m.SAME_OPERATION, Fraction(y + p, q)))
        return equals(Y, right), x, (equals(Y, num(y)),), r, steps, wrong
    area = (p + q) * r // 2
    double = "Multiply both sides by 2."
    if kind == 3:  # A = (a + b)h/2, for h
        inside = Juxt((Bracket(add(num(p), num(q))), H))
        steps = (
            Step(put, equals(num(area), Frac(inside, Int(2)))),
            Step(double, equals(num(2 * area), inside)),
            Step("Add inside the bracket.", equals(num(2 * area), juxt(num(p + q), H))),
            Step(f"Divide both sides by {p + q}.", equals(H, num(r))),
        )
        wrong = ((m.NO_HALF, Fraction(r, 2)), (m.MIXED_INVERSE, 2 * area - p - q))
        given = (equals(AREA, num(area)), equals(A, num(p)), equals(B, num(q)))
        return TRAPEZIUM, H, given, r, steps, wrong
    sum_inside = Bracket(add(num(p), B))
    steps = (
        Step(put, equals(num(area), Frac(times(sum_inside, num(r)), Int(2)))),
        Step(double, equals(num(2 * area), times(sum_inside, num(r)))),
        Step(f"Divide both sides by {r}.", equals(num(p + q), add(num(p), B))),
        Step(f"Subtract {p} from both sides.", equals(B, num(q))),
    )
    wrong = ((m.NO_HALF, Fraction(area, r) - p), (m.SAME_OPERATION, 2 * p + q))
    given = (equals(AREA, num(area)), equals(A, num(p)), equals(H, num(r)))
    return TRAPEZIUM, B, given, q, steps, wrong
