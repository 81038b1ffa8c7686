"""Terms that are missing from a sequence, one or two."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.sequences._step_mistakes import COUNTS_TERMS, HALF_WAY, STEP_GIVEN, WRONG_SIGN
from generators.sequences._writing import asking
from itembank.items.item import Draft, Find, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


def one_gap(twin: Any, first: int, place: int, step: int) -> Draft:
    """Return a sequence with one term missing, the others printed."""
    values = [first + step * k for k in range(5)]
    box = t.Blank()
    parts = tuple(box if k == place - 1 else t.Int(v) for k, v in enumerate(values))
    missing = values[place - 1]
    after, more = values[place], values[place + 1]
    relation = t.equals(t.sub(t.Int(after), box), t.sub(t.Int(more), t.Int(after)))
    return Draft(
        prompt(
            "The same number is added each time. Find the missing term of this sequence: {s}.",
            s=t.Listing(parts),
        ),
        Find(box, (relation,)),
        t.Int(missing),
        "integer",
        (
            Step(
                "Find the step from two terms next to each other.",
                t.equals(t.sub(t.Int(more), t.Int(after)), t.Int(step)),
            ),
            Step(
                "Go back one step from the term after the gap.",
                t.equals(t.sub(t.Int(after), t.Int(step)), t.Int(missing)),
            ),
        ),
        slips(
            (asking(STEP_GIVEN, f"{step} is added each time. What is the missing term?"), step),
            (WRONG_SIGN, missing + 2 * step),
            key=t.Int(missing),
        ),
        twin,
    )


def two_gaps(twin: Any, first: int, step: int) -> Draft:
    """Return two terms with two missing between them; the first of these is asked for."""
    last = first + 3 * step
    x = t.Sym("x")
    relation = t.equals(
        t.times(t.Int(3), t.Bracket(t.sub(x, t.Int(first)))), t.sub(t.Int(last), t.Int(first))
    )
    apart = last - first
    return Draft(
        prompt(
            "The same number is added each time. The first term of a sequence is {f} and the 4th "
            "term is {l}. Work out the second term.",
            f=t.Int(first),
            l=t.Int(last),
        ),
        Find(x, (relation,)),
        t.Int(first + step),
        "integer",
        (
            Step(
                f"From {first} to {last} there are 3 equal steps.",
                t.equals(t.sub(t.Int(last), t.Int(first)), t.Int(apart)),
            ),
            Step("Find one step.", t.equals(t.divide(t.Int(apart), t.Int(3)), t.Int(step))),
            Step(
                "Add one step to the first term.",
                t.equals(t.add(t.Int(first), t.Int(step)), t.Int(first + step)),
            ),
        ),
        slips(
            (STEP_GIVEN, step),
            (HALF_WAY, Fraction(first + last, 2)),
            (
                COUNTS_TERMS,
                first + Fraction(apart, 4),
            ),
            key=t.Int(first + step),
        ),
        twin,
        constants=(3,),
    )
