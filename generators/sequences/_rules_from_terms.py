"""The rule of a sequence, found from its terms."""

from __future__ import annotations

from typing import Any

from generators.sequences._step_mistakes import ADDS_GAP, ONE_PART, STEP_GIVEN
from itembank.items.item import Draft, Find, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


def next_value(value: int, m: int, c: int) -> int:
    """Return the next term by the rule: multiply by m, then add c."""
    return m * value + c


def rule_in_words(m: int, c: int) -> str:
    """Return the rule in words, its numbers as pieces of mathematics."""
    parts = []
    if m != 1:
        parts.append("multiply by {m}")
    if c:
        parts.append("add {c}" if c > 0 else "subtract {c}")
    return " and then ".join(parts)


def rule_found(twin: Any, first: int, m: int, c: int) -> Draft:
    """Return the question which number the rule adds, and so what the third term is."""
    second = next_value(first, m, c)
    third = next_value(second, m, c)
    x = t.Sym("x")
    relation = t.equals(t.add(t.times(t.Int(first), t.Int(m)), x), t.Int(second))
    made = t.add(t.times(t.Int(second), t.Int(m)), x)
    return Draft(
        prompt(
            "The rule to get the next term of a sequence is: multiply by {m} and then add a "
            "number. The first term is {f} and the second term is {s}. Work out the third term.",
            m=t.Int(m),
            f=t.Int(first),
            s=t.Int(second),
        ),
        Find(made, (relation,)),
        t.Int(third),
        "integer",
        (
            Step(
                f"Multiply the first term by {m}.",
                t.equals(t.times(t.Int(first), t.Int(m)), t.Int(first * m)),
            ),
            Step(
                "How much is added to come to the second term?",
                t.equals(t.sub(t.Int(second), t.Int(first * m)), t.Int(c)),
            ),
            Step(
                "Use the rule on the second term.",
                t.equals(t.add(t.times(t.Int(second), t.Int(m)), t.Int(c)), t.Int(third)),
            ),
        ),
        slips(
            (ONE_PART, second * m),
            (ADDS_GAP, 2 * second - first),
            (STEP_GIVEN, c if c != third else None),
            key=t.Int(third),
        ),
        twin,
    )
