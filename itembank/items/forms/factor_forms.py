"""The rule for a product of factors that do not split further.

A rule gets a tree and returns what keeps it from having the form, or an empty string.
"""

from __future__ import annotations

from itembank.items.forms.letter_forms import side_by_side
from itembank.items.forms.number_forms import GOOD, bare
from itembank.items.forms.polynomials import TooLarge, common_letters, splits, whole_content
from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.quotients import UNIT

TOO_LARGE = "it is too long for the tool to tell whether it is fully factorised"


def factorised(node: t.Node) -> str:
    """Allow a product of factors that have no common factor left and do not split further.

    Looked for are common numbers and letters, and factors over the rational numbers.

    >>> from itembank.notation.parse import parse
    >>> [factorised(parse(text)) for text in ("(x + 1)(x - 4)", "(x + 3)^2", "x^2(y - 1)")]
    ['', '', '']
    >>> factorised(parse("2(2x + 4)")), factorised(parse("2(x^2 - 9)"))
    ('2x + 4 has a common factor left', 'x^2 - 9 can be factorised further')
    """
    from itembank.notation.line import shown_line

    node = bare(node)
    node = bare(node.of) if isinstance(node, t.Neg) else node
    match node:
        case t.Juxt(factors):
            pass
        case t.Power(t.Bracket(), t.Int(n)) if n > 1:
            factors = (node,)
        case t.Product(_, rest) if all(op == "×" for op, _ in rest):
            return "a product of factors is written without times signs"
        case _:
            return "it is not a product of factors"
    fault = side_by_side(factors)
    if fault:
        return fault
    for factor in factors:
        base = factor.base if isinstance(factor, t.Power) else factor
        if not isinstance(base, t.Bracket) or not isinstance(base.of, t.Sum):
            continue
        try:
            quotient = algebra(base.of)
        except t.NotationError:
            continue
        if quotient.bottom != {UNIT: 1}:
            return f"{shown_line(base.of)} still holds a fraction"
        content = whole_content(quotient.top)
        if not content and len(quotient.top) > 1:
            return f"{shown_line(base.of)} still holds a decimal"
        if content != 1 or common_letters(quotient.top):
            return f"{shown_line(base.of)} has a common factor left"
        try:
            if splits(quotient.top):
                return f"{shown_line(base.of)} can be factorised further"
        except TooLarge:
            return TOO_LARGE
    return GOOD
