"""Square numbers: one between two numbers, and two that differ by so much."""

from __future__ import annotations

from typing import Any

from generators.sequences._special_mistakes import (
    DIFFERENCE_SQUARED,
    DOUBLES,
    NOT_BETWEEN,
    NUMBER_SQUARED,
)
from generators.sequences._writing import ending
from itembank.items.item import Condition, Draft, Find, Give, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


def square_between(twin: Any, a: int, b: int) -> Draft:
    """Ask for a square number: two of them lie between."""
    low, high = a * a - b, (a + 1) ** 2 + b
    n = t.Sym("n")
    relation = t.Relation(t.Int(low), (("<", n), ("<", t.Int(high))))
    key = t.Int(a * a)
    return Draft(
        prompt("Write a square number that is between {a} and {b}.", a=t.Int(low), b=t.Int(high)),
        Give((n,), (relation,), (Condition("square"),)),
        key,
        "integer",
        (
            Step(
                f"{a} × {a} lies between the two numbers.",
                t.equals(t.times(t.Int(a), t.Int(a)), key),
            ),
        ),
        slips((NUMBER_SQUARED, a), (NOT_BETWEEN, (a - 1) ** 2), key=key),
        twin,
    )


def squares_apart(twin: Any, a: int, b: int) -> Draft:
    """Return the question for the difference of two square numbers."""
    high, low = t.times(t.Int(a), t.Int(a)), t.times(t.Int(b), t.Int(b))
    asked, value = t.sub(high, low), a * a - b * b
    return Draft(
        prompt(
            f"How much larger is the {{a}}{ending(a)} square number than the {{b}}{ending(b)} "
            "square number?",
            a=t.Int(a),
            b=t.Int(b),
        ),
        Find(asked),
        t.Int(value),
        "integer",
        (
            Step(f"The {a}{ending(a)} square number.", t.equals(high, t.Int(a * a))),
            Step(f"The {b}{ending(b)} square number.", t.equals(low, t.Int(b * b))),
            Step("Subtract.", t.equals(t.sub(t.Int(a * a), t.Int(b * b)), t.Int(value))),
        ),
        slips(
            (DIFFERENCE_SQUARED, (a - b) ** 2),
            (DOUBLES, 2 * a - 2 * b),
            key=t.Int(value),
        ),
        twin,
    )
