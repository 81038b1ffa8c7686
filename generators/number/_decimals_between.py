"""Decimals between two others: any, and the one halfway."""

from __future__ import annotations

from generators.number import _decimal_order_mistakes as m
from generators.number._decimal_orders import Decimal
from generators.number._writing import decimal
from itembank.items.item import Draft, Find, Give, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


def with_places(thing: Decimal, places: int) -> str:
    whole, rest = divmod(abs(thing.units) * 10 ** (places - thing.places), 10**places)
    return f"{'−' if thing.units < 0 else ''}{whole}.{rest:0{places}d}"


def one_between(w: int, p: int, q: int, twin: tuple[object, ...]) -> Draft:
    """Return: write a decimal between w.p and w.p1, or other neighbours in hundredths."""
    low, high = Decimal(100 * w + 10 * p + q - 1, 2), Decimal(100 * w + 10 * p + q, 2)
    key = Decimal(low.units * 10 + 5, 3)
    x = t.Sym("x")
    between = t.Relation(low.node, (("<", x), ("<", high.node)))
    steps = (
        Step(
            f"Write both with three places: {with_places(low, 3)} and {with_places(high, 3)}.",
        ),
        Step(
            "Choose a number of thousandths between.",
            t.Relation(low.node, (("<", key.node), ("<", high.node))),
        ),
    )
    wrong = slips(
        (m.THE_END, high.node),
        (m.PAST_LARGER, decimal(10 * (low.units + 1) + 5, 3)),
    )
    return Draft(
        prompt("Write a decimal between {a} and {b}.", a=low.node, b=high.node),
        Give((x,), (between,)),
        key.node,
        "decimal",
        steps,
        wrong,
        twin,
    )


def halfway(w: int, p: int, q: int, r: int, twin: tuple[object, ...]) -> Draft:
    """Ask what is halfway between w.p and a number with hundredths that is further on."""
    low = Decimal(100 * w + 10 * p, 2)
    high = Decimal(100 * (w + 1) + 10 * q + r, 2)
    a, b = decimal(low.units, 2), decimal(high.units, 2)
    total, gap = low.units + high.units, high.units - low.units
    key = decimal(total // 2, 2)
    two = t.Int(2)
    asked = t.divide(t.Bracket(t.add(a, b)), two)
    steps = (
        Step("Add the two numbers.", t.equals(t.add(a, b), decimal(total, 2))),
        Step("Halve the sum.", t.equals(t.divide(decimal(total, 2), two), key)),
    )
    wrong = slips((m.DIFFERENCE, decimal(gap, 2)), (m.HALF_DIFFERENCE, decimal(gap // 2, 2)))
    return Draft(
        prompt("What number is halfway between {a} and {b}?", a=a, b=b),
        Find(asked),
        key,
        "decimal",
        steps,
        wrong,
        twin,
        constants=(2,),
    )
