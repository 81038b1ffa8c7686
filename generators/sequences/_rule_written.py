"""The rule for the nth term of an arithmetic sequence, as it is usually written."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import TypeAlias

from itembank.notation import tree as t

Write: TypeAlias = Callable[[Fraction | int], t.Node]
"""How a number is written: as a whole number or a fraction, or as a decimal."""

_N = t.Sym("n")


def rule(step: Fraction, start: Fraction, write: Write) -> t.Node:
    """Return step × n + start as it is usually written: the positive part first."""
    node = write(abs(step))
    lots = _N if abs(step) == 1 else t.juxt(node, _N)
    if step < 0:
        if start > 0:
            return t.sub(write(start), lots)
        return t.add(t.Neg(lots), write(start)) if start else t.Neg(lots)
    if not start:
        return lots
    size = write(abs(start))
    return t.add(lots, size) if start > 0 else t.sub(lots, size)
