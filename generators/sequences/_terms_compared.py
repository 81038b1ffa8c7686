"""Two terms of a rule with two unknowns, and where two sequences meet."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.sequences._term_mistakes import (
    OTHER_WAY,
    POSITION,
    STEP_GIVEN,
    STEP_TOO_MANY,
    WRONG_ACROSS,
)
from generators.sequences._writing import asking, ending
from itembank.items.item import Draft, Find, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_N = t.Sym("n")


def two_terms(twin: Any, a: int, b: int, n: int) -> Draft:
    """Return the first term from two terms; `a` is the step and `b` the first term."""
    near, far = n + 1, n + 3 + (a + n) % 4
    low, high = b + (near - 1) * a, b + (far - 1) * a
    x, d = t.Sym("a"), t.Sym("d")

    def at(place: int, value: int) -> t.Relation:
        steps = t.Bracket(t.sub(t.Int(place), t.Int(1)))
        return t.equals(t.add(x, t.Juxt((steps, d))), t.num(value))

    lots = far - near
    return Draft(
        prompt(
            f"A sequence goes up by the same amount each time. The {{p}}{ending(near)} term is "
            f"{{l}} and the {{q}}{ending(far)} term is {{h}}. Work out the first term.",
            p=t.Int(near),
            l=t.num(low),
            q=t.Int(far),
            h=t.num(high),
        ),
        Find(x, (at(near, low), at(far, high))),
        t.num(b),
        "integer",
        (
            Step(
                f"From the {near}{ending(near)} term to the {far}{ending(far)} there are {lots} "
                "steps.",
                t.equals(t.juxt(t.Int(lots), d), t.num(high - low)),
            ),
            Step("Find one step.", t.equals(d, t.Int(a))),
            Step(
                f"From the 1st term to the {near}{ending(near)} there are {near - 1} steps.",
                t.equals(x, t.sub(t.num(low), t.times(t.Int(near - 1), t.Int(a)))),
            ),
            Step("Work it out.", t.equals(x, t.num(b))),
        ),
        slips(
            (
                asking(
                    STEP_TOO_MANY,
                    f"How many steps are there from the 1st term to the {near}{ending(near)}?",
                ),
                b - a,
            ),
            (STEP_GIVEN, a),
            key=t.num(b),
        ),
        twin,
        constants=(1,),
    )


def meeting(twin: Any, a: int, b: int, n: int) -> Draft:
    """Return the term that two sequences have in one position: an − b and c − bn or so."""
    down = b + 1
    value = a * n - b
    start = value + down * n
    up_rule = t.sub(t.juxt(t.Int(a), _N), t.Int(b))
    down_rule = t.sub(t.Int(start), t.juxt(t.Int(down), _N))
    relation = t.equals(up_rule, down_rule)
    total = a + down
    wrong_n = Fraction(start + b, a - down) if a != down else None
    return Draft(
        prompt(
            "One sequence has nth term {p} and another has nth term {q}. In one position the two "
            "sequences have the same term. Work out that term.",
            p=up_rule,
            q=down_rule,
        ),
        Find(up_rule, (relation,)),
        t.num(value),
        "integer",
        (
            Step("In that position the terms are equal.", relation),
            Step(
                f"Add {down}n and {b} to both sides.",
                t.equals(t.juxt(t.Int(total), _N), t.Int(start + b)),
            ),
            Step(f"Divide both sides by {total}.", t.equals(_N, t.Int(n))),
            Step(
                f"Substitute n = {n} in either rule.",
                t.equals(t.sub(t.times(t.Int(a), t.Int(n)), t.Int(b)), t.num(value)),
            ),
        ),
        slips(
            (POSITION, n if n != value else None),
            (
                asking(WRONG_ACROSS, f"You add {down}n to both sides. What is {a}n + {down}n?"),
                None if wrong_n is None else a * wrong_n - b,
            ),
            (OTHER_WAY, a * value - b if value != n else None),
            key=t.num(value),
        ),
        twin,
    )
