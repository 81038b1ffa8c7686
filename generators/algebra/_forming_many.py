"""Expressions of several steps, and the one simplest of them."""

from __future__ import annotations

from generators._turns import by_turns
from generators.algebra._forming_mistakes import FIRST_ONLY, HALF_ROUND, LEFT_OUT, ORDER, REVERSED
from generators.algebra._forming_stories import FEWER, RECTANGLES, TRIOS
from generators.algebra._rewritten import rewritten
from generators.algebra._writing import bracket, expression, term
from itembank.items.item import Draft, Find, Step, prompt
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t


def asked_of(
    text: str,
    given: dict[str, t.Node],
    target: t.Node,
    key: t.Node,
    wrong: list[Wrong],
    steps: tuple[Step, ...],
    twin: tuple[object, ...],
    constants: tuple[int, ...] = (),
) -> Draft:
    """Return the question to write an expression, with its working in words."""
    return Draft(
        prompt(text, **given),
        Find(target),
        key,
        "expression",
        steps,
        slips(*wrong, key=key),
        twin,
        constants=constants,
    )


def in_several_steps(kind: int, a: int, b: int, c: int, *, twin: tuple[object, ...]) -> Draft:
    """Return the question for an expression of two terms or more that a story tells."""
    x, m, n, k = by_turns("nkxw", a + b + c), t.Int(a), t.Int(b), t.Int(c)
    given: dict[str, t.Node] = {"n": t.Sym(x), "a": m, "b": n, "c": k}
    lots = term(a, x)
    if kind == 0:
        del given["c"]
        parts = expression((1, x), (a, x), (a, x), (-b, ""))
        return simplest(
            by_turns(TRIOS, a + b),
            given,
            t.Sum(
                t.Sym(x),
                (("+", t.times(m, t.Sym(x))), ("+", t.times(m, t.Sym(x))), ("-", n)),
            ),
            expression((2 * a + 1, x), (-b, "")),
            [
                (LEFT_OUT, expression((2 * a, x), (-b, ""))),
                (REVERSED, expression((2 * a + 1, x), (b, ""))),
            ],
            (Step("Write each of the three parts, and add.", parts),),
            parts,
            twin,
        )
    if kind == 1:
        inside = bracket((1, x), (b, ""))
        asked = t.add(lots, t.Juxt((k, inside)))
        open_ = expression((a, x), (c, x), (b * c, ""))
        return simplest(
            by_turns(FEWER, a + b + c),
            given,
            asked,
            expression((a + c, x), (b * c, "")),
            [
                (FIRST_ONLY, expression((a + c, x), (b, ""))),
                (REVERSED, expression((a + c, x), (-b * c, ""))),
            ],
            (
                Step("Write both costs, and add.", asked),
                Step("Expand the bracket.", t.equals(asked, open_)),
            ),
            open_,
            twin,
        )
    if kind == 2:
        del given["c"]
        long = bracket((a, x), (b, ""))
        asked = t.add(t.Sym(x), long, t.Sym(x), long)
        open_ = expression((1, x), (a, x), (b, ""), (1, x), (a, x), (b, ""))
        return simplest(
            by_turns(RECTANGLES, a + b),
            given,
            asked,
            expression((2 * a + 2, x), (2 * b, "")),
            [
                (HALF_ROUND, expression((a + 1, x), (b, ""))),
                (LEFT_OUT, expression((a + 2, x), (b, ""))),
            ],
            (Step("Add the widths and the lengths.", open_),),
            open_,
            twin,
        )
    inside = bracket((a, x), (b, ""))
    asked = t.Juxt((k, inside))
    name = by_turns(("Omar", "Priya", "Rosa", "Sam", "Tomasz"), a + b + c)
    return simplest(
        f"{name} thinks of a number {{n}}, multiplies it by {{a}}, adds {{b}} and then multiplies "
        "the result by {c}. Write an expression without brackets for what comes out.",
        given,
        asked,
        expression((a * c, x), (b * c, "")),
        [
            (FIRST_ONLY, expression((a * c, x), (b, ""))),
            (ORDER, expression((a, x), (b * c, ""))),
        ],
        (Step("Put what is multiplied last in a bracket.", asked),),
        asked,
        twin,
    )


def simplest(
    text: str,
    given: dict[str, t.Node],
    target: t.Node,
    key: t.Node,
    wrong: list[Wrong],
    steps: tuple[Step, ...],
    last: t.Node,
    twin: tuple[object, ...],
) -> Draft:
    """Return the question for an expression that is collected at the end."""
    say = "Expand the bracket." if isinstance(last, t.Juxt) else "Collect like terms."
    return rewritten(
        "simplify",
        prompt(text, **given),
        target,
        key,
        (*steps, Step(say, t.equals(last, key))),
        wrong,
        twin,
    )
