"""The second road to means, medians, modes and ranges.

Importing this module imports sympy.
"""

from __future__ import annotations

from typing import Any

import sympy

from itembank.items.asks.summary import Summary
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.claim.finding import Finding, found
from itembank.proof.claim.key_solutions import value_given
from itembank.proof.sympy.sympy_text import sympy_text
from itembank.proof.sympy.sympy_zero import is_zero


def summary(ask: Summary, key: t.Node) -> Finding:
    """Return the mean, median, mode or range by sympy, and whether the key is it.

    Nothing is put in order here: the median is found by counting what lies on either side.
    """
    values = [to_sympy(node) for node in ask.numbers]
    if any(value.free_symbols for value in values) and ask.detail != "mean":
        raise NotExact("numbers with letters in them have no order")
    ours = _SUMMARIES[ask.detail](values)
    return found(sympy_text(ours), key, is_zero(ours - to_sympy(value_given(key))))


def _mean(values: list[Any]) -> Any:
    return sympy.Add(*values) / len(values)


def _median(values: list[Any]) -> Any:
    """Return the median, found by counting.

    It is half way between the least that has half of all at or below it, and the greatest
    that has half of all at or above it.
    """
    half = sympy.Rational(len(values), 2)
    least = [v for v in values if sum(bool(w <= v) for w in values) >= half]
    most = [v for v in values if sum(bool(w >= v) for w in values) >= half]
    return (sympy.Min(*least) + sympy.Max(*most)) / 2


def _mode(values: list[Any]) -> Any:
    often = {value: sum(is_zero(value - rival) for rival in values) for value in values}
    most = max(often.values())
    modes = [value for value, times in often.items() if times == most]
    if len(modes) > 1 or most == 1:
        raise NotExact("no value, or more than one, stands in the list most often")
    return modes[0]


def _range(values: list[Any]) -> Any:
    return sympy.Max(*values) - sympy.Min(*values)


_SUMMARIES = {"mean": _mean, "median": _median, "mode": _mode, "range": _range}
