"""Equations on the pans of a balance, beside lines of working."""

from __future__ import annotations

from itembank.figures.figure import WIDEST, fault
from itembank.figures.kinds.number.balance import Balance, balance_width
from itembank.items.item import Step
from itembank.notation import tree as t

MOST = 6
"""The most blocks on a pan: more are no help to the eye."""


def on_pans(equation: t.Relation) -> Balance | None:
    """Return a balance that shows an equation, or None where it has no such picture.

    Each side is a number, some of one letter, or both added.

    >>> from itembank.notation.parse import parse
    >>> shown = on_pans(parse("2x + 3 = 11"))
    >>> shown.left if shown else None
    (Sym(name='x'), Sym(name='x'), Int(n=3))
    >>> on_pans(parse("x - 3 = 11")) is None
    True
    """
    sides = [_blocks(side) for side in (equation.first, equation.rest[-1][1])]
    if not all(sides) or max(map(len, sides)) > MOST:
        return None
    balance = Balance(*sides)
    # It contradicts itself, or is wider than a page has room for; two rows are never too high.
    return None if fault(balance) or balance_width(balance) > WIDEST else balance


def pictured(equation: t.Relation, steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """Return working with a balance beside the first line that can stand on one.

    That is the equation itself, which then comes first, or else a line on the way; never the last,
    which says only what the letter is. The letter has to be worth more than 0: no block weighs
    less than nothing.

    >>> from itembank.notation.parse import parse
    >>> asked = parse("x + 3 = 11")
    >>> told = (Step("Subtract 3 from both sides.", parse("x = 8")),)
    >>> [step.say for step in pictured(asked, told)]
    ['Think of it as a balance.', 'Subtract 3 from both sides.']
    """
    if (shown := on_pans(equation)) is not None:
        return (Step("Think of it as a balance.", equation, shown), *steps)
    for place, step in enumerate(steps[:-1]):
        if isinstance(step.maths, t.Relation) and (shown := on_pans(step.maths)) is not None:
            return (*steps[:place], Step(step.say, step.maths, shown), *steps[place + 1 :])
    return steps


def _blocks(side: t.Node) -> tuple[t.Node, ...]:
    """Return the blocks of one side; none where it cannot stand on a pan."""
    match side:
        case t.Int(n):
            return (side,) if n > 0 else ()
        case t.Sym():
            return (side,)
        case t.Juxt(factors=(t.Int(n), t.Sym() as letter)):
            return (letter,) * n
        case t.Sum(first=first, rest=rest) if all(op == "+" for op, _ in rest):
            rows = [_blocks(part) for part in (first, *(part for _, part in rest))]
            return tuple(block for row in rows for block in row) if all(rows) else ()
    return ()
