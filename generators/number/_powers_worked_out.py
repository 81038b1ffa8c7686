"""Powers and roots to be worked out, and how."""

from __future__ import annotations

from fractions import Fraction
from math import isqrt, lcm

from generators.number import _power_mistakes as m
from generators.number._powers_numbers import Kind
from generators.number._powers_wrong_lines import power_of, written_out
from generators.number._writing import worked
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Step
from itembank.items.wrong_answers import Wrong
from itembank.notation import tree as t

Made = tuple[t.Node, t.Node, tuple[Step, ...], tuple[Wrong, ...]]


def calculation_of(kind: int, a: int, b: int, c: int, d: int) -> Made:
    """Return what is asked, the key, the working and the wrong answers."""
    asked: t.Node
    key: t.Node
    wrong: tuple[Wrong, ...]
    match kind:
        case Kind.POWER:
            key = t.Int(a**b)
            steps = worked(
                power_of(a, b),
                ("Write it out as a product.", written_out(t.Int(a), b)),
                ("Multiply.", key),
            )
            return power_of(a, b), key, steps, ((m.TIMES_INDEX, a * b), (m.SWAPS, b**a))
        case Kind.ROOT | Kind.CUBE_ROOT:
            n = a**b
            asked = t.Root(t.Int(n), b)
            say = f"Which number multiplied by itself makes {n}?"
            if b == 3:
                say = f"Which number stands three times in a product that makes {n}?"
            steps = (
                Step(say, t.equals(written_out(t.Int(a), b), t.Int(n))),
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
            asked = t.sub(power_of(a, c), power_of(b, d))
            key = t.Int(a**c - b**d)
            steps = worked(
                asked,
                ("Work out each power.", t.sub(t.Int(a**c), t.Int(b**d))),
                ("Then subtract.", key),
            )
            return asked, key, steps, ((m.TIMES_INDEX, a * c - b * d), (m.SWAPS, c**a - d**b))
        case Kind.PRODUCT:
            asked = t.times(power_of(a, c), power_of(b, d))
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
            asked = t.add(power_of(a, 0), power_of(b, 1))
            steps = worked(
                asked,
                (f"{a} to the power 0 is 1.", t.add(t.Int(1), power_of(b, 1))),
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
                ("A negative index means 1 over the power.", t.Frac(t.Int(1), power_of(a, b))),
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
