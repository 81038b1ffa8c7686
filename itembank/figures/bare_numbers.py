"""Where a figure may bear amounts: all else that is read off it is a plain number.

A number line from 0 km to 1 km would be read as numbers, in metres, and no question could ask for
what it shows. So each kind says which of its fields bear amounts with a unit, money, per cent or
times of day, and a figure with one elsewhere is refused.

>>> from itembank.figures.kinds.number.number_line import NumberLine
>>> misfit(NumberLine(t.Int(0), t.Quantity(t.Int(1), "km"), 4))
('last', Quantity(amount=Int(n=1), unit='km'))
>>> misfit(NumberLine(t.Int(0), t.Percent(t.Int(100)), 4)) is None
True
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator
from typing import Any

from itembank.figures.figure import Figure, kind_of
from itembank.notation import tree as t
from itembank.notation.tree.face import FACES

AMOUNTS = (t.Quantity, t.Money, t.Percent, t.ClockTime)
_PI = t.Sym("π")


def misfit(figure: Figure) -> tuple[str, t.Node] | None:
    """Return a field and a piece of mathematics in it that it cannot bear, or None."""
    bears = kind_of(figure).bears
    for field in dataclasses.fields(figure):  # type: ignore[arg-type]
        allowed = bears.get(field.name, ())
        for node in _nodes(getattr(figure, field.name)):
            for part in t.walk(node):
                if (isinstance(part, AMOUNTS) and not isinstance(part, allowed)) or part == _PI:
                    return field.name, node
    return None


def _nodes(value: Any) -> Iterator[t.Node]:
    if type(value) in FACES:
        yield value
    elif isinstance(value, tuple):
        for part in value:
            yield from _nodes(part)
    elif dataclasses.is_dataclass(value):
        for field in dataclasses.fields(value):
            yield from _nodes(getattr(value, field.name))
