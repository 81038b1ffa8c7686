"""Points that are told by their coordinates, and moved without a picture.

Where a point goes is settled by equations for its new coordinates u and v, which say what the
transformation is: that the mirror is halfway, that the centre is so many times as far.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from generators.transformations._shapes import Spot, pair
from itembank.items.item import Draft, Find, Slip, Step, prompt
from itembank.notation import tree as t

U, V = t.Sym("u"), t.Sym("v")


def signed(value: int) -> t.Node:
    """Return a number as it stands after an operation: a negative one in brackets."""
    return t.num(value) if value >= 0 else t.Bracket(t.num(value))


def opposite(value: int) -> t.Node:
    """Return a number with a minus in front of it.

    >>> from itembank.notation.line import line
    >>> line(opposite(3)), line(opposite(-2))
    ('-3', '-(-2)')
    """
    return t.Neg(signed(value))


def told(at: Spot) -> str:
    """Return coordinates in words of working, with real minus signs.

    >>> told((3, -2))
    '(3, −2)'
    """
    return f"({at[0]}, {at[1]})".replace("-", "−")


def found_point(
    text: str,
    shown: dict[str, t.Node],
    relations: Sequence[t.Relation],
    at: tuple[Fraction | int, Fraction | int],
    steps: Sequence[Step],
    wrong: tuple[Slip, ...],
    twin: tuple[object, ...],
    constants: tuple[int, ...] = (),
) -> Draft:
    """Return the question where a point is, of which equations in u and v tell the coordinates."""
    return Draft(
        prompt(text, **shown),
        Find(t.pair(U, V), tuple(relations)),
        pair(*at),
        "point",
        tuple(steps),
        wrong,
        twin,
        constants=constants,
    )
