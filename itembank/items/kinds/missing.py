"""Find the missing number: a calculation with a box in it."""

from __future__ import annotations

from itembank.items.item import Draft, Find, Slip, Step, prompt
from itembank.notation import tree as t


def missing_number(
    relation: t.Relation,
    value: t.Node,
    *,
    steps: tuple[Step, ...],
    slips: tuple[Slip, ...],
    twin: tuple[object, ...],
    form: str = "integer",
) -> Draft:
    """Return the question which number goes in the box of a true equation.

    >>> from itembank.notation import parse
    >>> made = missing_number(parse("□ + 3 = 5"), t.Int(2), steps=(), slips=(), twin=(2, 3))
    >>> made.prompt[0], made.ask == Find(t.Blank(), (parse("□ + 3 = 5"),))
    ('Which number goes in the box?  ', True)
    """
    return Draft(
        prompt("Which number goes in the box?  {r}", r=relation),
        Find(t.Blank(), (relation,)),
        value,
        form,
        steps,
        slips,
        ("missing number", *twin),
        1,
    )
