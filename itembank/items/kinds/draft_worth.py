"""What answers are worth, as far as two of them are held against each other in a draft."""

from __future__ import annotations

from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.value import exact, exact_or_none


def worth(answer: t.Node) -> object:
    """Return what is equal for answers that are worth the same; the proofs look more closely.

    >>> from itembank.notation import parse
    >>> worth(parse("x = 2/4")) == worth(parse("0.5")), worth(parse("2(x + 1)") ) == worth(
    ...     parse("2x + 2")
    ... )
    (True, True)
    """
    match answer:
        case t.Relation(_, ((_, right),)):
            return worth(right)
        case t.Ratio(parts):
            values = [exact(part) for part in parts]
            return tuple(value / values[0] for value in values)
    found = exact_or_none(answer)
    if found is not None:
        return found
    try:
        return algebra(answer)
    except t.NotationError:
        return answer
