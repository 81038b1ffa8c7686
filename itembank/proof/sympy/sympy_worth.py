"""The second road to what something is worth. Importing this module imports sympy."""

from __future__ import annotations

from typing import Any

from itembank.items.asks import Find
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.claim.finding import Finding, found, ordinal
from itembank.proof.claim.key_solutions import Misfit, value_given
from itembank.proof.sympy.sympy_solving import settled
from itembank.proof.sympy.sympy_text import sympy_text
from itembank.proof.sympy.sympy_zero import is_zero


def worth(ask: Find, key: t.Node) -> Finding:
    """Return what sympy makes of the target where the relations hold, and how the key is not that.

    Raises:
        NotExact: sympy cannot settle it.

    >>> from itembank.notation import parse
    >>> worth(Find(parse("x + 1"), (parse("2x = 6"),)), parse("5")).fault
    'it comes to 4, the key says 5'
    """
    target, relations = ask.target, ask.relations
    proportional = isinstance(target, t.Ratio)
    wanted = pieces(target)
    if relations:
        wanted = settled(wanted, relations, proportional)
    ours = sympy_text(wanted, proportional)
    try:
        value = value_given(key)
        if isinstance(value, t.Either):
            raise Misfit("the question has one answer")
    except Misfit as error:
        return found(ours, key, False, str(error))
    given = pieces(value)
    if len(wanted) != len(given):
        return found(ours, key, False, f"the answer has {len(wanted)} numbers")
    # is_finite is None where sympy cannot tell, as for a letter; only a plain no is refused.
    if not all(value.is_finite is not False for value in [*wanted, *given]):
        raise NotExact("this divides by zero")
    for place, (mine, theirs) in enumerate(zip(wanted, given, strict=True), start=1):
        # Proportional: the cross product with the first part agrees, and nothing is zero.
        gap = mine * given[0] - wanted[0] * theirs if proportional else mine - theirs
        if not is_zero(gap) or (proportional and is_zero(given[0])):
            at = f"they first differ at the {ordinal(place)}" if len(wanted) > 1 else ""
            return found(ours, key, False, at)
    return Finding(ours)


def pieces(node: t.Node) -> list[Any]:
    """Return what sympy makes of a tree, part by part where it has parts.

    >>> from itembank.notation import parse
    >>> pieces(parse("2 : 3")), pieces(parse("1/2"))
    ([2, 3], [1/2])
    """
    value = to_sympy(node)
    return value if isinstance(value, list) else [value]
