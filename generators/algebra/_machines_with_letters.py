"""Function machines with a letter: what comes out as it went in, and the rule."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.algebra._machine_mistakes import (
    FIRST_BOX,
    FIRST_TERM,
    MADE_NOTHING,
    NOTHING_CHANGES,
    OTHER_ORDER,
)
from generators.algebra._machine_numbers import Boxes
from generators.algebra._writing import asking, letter, shown
from itembank.items.item import Draft, Find, Rewrite, Step, prompt
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

SAYS = {"+": "Add {}", "-": "Subtract {}", "*": "Multiply by {}", "/": "Divide by {}"}


WORDS = {"+": "adds {}", "-": "subtracts {}", "*": "multiplies by {}", "/": "divides by {}"}


def joined_by(first: t.Node, sign: str, second: t.Node) -> t.Node:
    """Return two numbers or letters with the sign of a box between them."""
    return t.add(first, second) if sign == "+" else t.sub(first, second)


def unchanged(boxes: Boxes, _: int, twin: tuple[object, ...]) -> Draft:
    """Return the question which number comes out as it went in."""
    a, b = (n for _, n in boxes)
    x = t.Sym(letter(a, b))
    value = b // (a - 1)
    lots = t.juxt(t.Int(a), x)
    relation = t.equals(t.sub(lots, t.Int(b)), x)
    rest = t.juxt(t.Int(a - 1), x)
    return Draft(
        prompt(
            "A function machine first multiplies by {a} and then subtracts {b}. For one input the "
            "output is the same number as the input. What is this number?",
            a=t.Int(a),
            b=t.Int(b),
        ),
        Find(x, (relation,)),
        t.Int(value),
        "integer",
        (
            Step(f"Let the input be {x.name}. The output is equal to it.", relation),
            Step(
                f"Subtract {x.name} from both sides and add {b} to both sides.",
                t.equals(rest, t.Int(b)),
            ),
            *(
                (Step(f"Divide both sides by {a - 1}.", t.equals(x, t.Int(value))),)
                if a > 2
                else ()
            ),
        ),
        slips(
            (NOTHING_CHANGES, b),
            (MADE_NOTHING, Fraction(b, a)),
            key=t.Int(value),
        ),
        twin,
    )


def rule_of(boxes: Boxes, _: int, twin: tuple[object, ...]) -> Draft:
    """Return the question for the output in letters."""
    (first, a), (second, b) = boxes
    x = t.Sym("n")
    size: Any = t.Int
    if first == "*":
        lots = t.juxt(size(a), x)
        key = joined_by(lots, second, size(b))
        asked: t.Node = joined_by(t.times(x, size(a)), second, size(b))
        steps: tuple[Step, ...] = (
            Step("Write what comes out of the first box.", t.equals(t.times(x, size(a)), lots)),
            Step(SAYS[second].format(b) + ".", key),
        )
        wrong: list[Wrong] = [
            (OTHER_ORDER, joined_by(lots, second, size(a * b))),
            (FIRST_BOX, lots),
        ]
    else:
        inside = t.Bracket(joined_by(x, first, size(a)))
        asked = t.times(inside, size(b))
        lots = t.juxt(size(b), x)
        key = joined_by(lots, first, size(a * b))
        product = t.Juxt((size(b), inside))
        steps = (
            Step(f"Put what comes out of the first box in a bracket. Multiply by {b}.", product),
            Step("Expand the bracket.", t.equals(product, key)),
        )
        wrong = [
            (
                asking(FIRST_TERM, f"{shown(inside.of)} is multiplied by {b}. What is {b} × {a}?"),
                joined_by(lots, first, size(a)),
            ),
            (FIRST_BOX, inside.of),
        ]
    return Draft(
        prompt(
            f"A function machine first {WORDS[first].format('{a}')} and then "
            f"{WORDS[second].format('{b}')}. The input is {{n}}. Write an expression for the "
            "output without brackets.",
            a=size(a),
            b=size(b),
            n=x,
        ),
        Rewrite(asked, "simplify"),
        key,
        "expanded",
        steps,
        slips(*wrong, key=key),
        twin,
    )
