"""The rules for answers that are more than one expression: solutions, lists, names.

A rule gets a tree and returns what keeps it from having the form, or an empty string.
"""

from __future__ import annotations

from itembank.items.forms.letter_forms import expression, simplified
from itembank.items.forms.number_forms import GOOD, amount, bare, number, ratio
from itembank.items.forms.value_forms import finished_number
from itembank.notation import tree as t

NOT_SOLVED = "it is not a letter, a sign and a number"


def solution(node: t.Node) -> str:
    """Allow a letter, an equals sign and a number."""
    right = solved_for(node)
    return right if isinstance(right, str) else number(right) and amount(right)


def solved_for(node: t.Node) -> t.Node | str:
    """Return what a solution says its letter is, or what keeps it from being one.

    >>> from itembank.notation.parse import parse
    >>> solved_for(parse("5 = x")), solved_for(parse("2x = 6"))
    (Int(n=5), 'it is not a letter, a sign and a number')
    """
    node = bare(node)
    if not (isinstance(node, t.Relation) and len(node.rest) == 1):
        return NOT_SOLVED
    op, right = node.rest[0]
    left, right = bare(node.first), bare(right)
    if not isinstance(left, t.Sym) and not t.symbols(left):
        left, right = right, left
    if not isinstance(left, t.Sym):
        return NOT_SOLVED
    return right if op == "=" else "the sign is not ="


def inequality(node: t.Node) -> str:
    """Allow a letter, an inequality sign and a number, or a letter between two numbers.

    >>> from itembank.notation.parse import parse
    >>> [inequality(parse(text)) for text in ("x ≥ 3", "-2 < x ≤ 1/2")]
    ['', '']
    >>> inequality(parse("-2 < x > 5"))
    'its two signs do not point the same way'
    """
    if isinstance(node, t.Either):
        return next((fault for fault in map(inequality, node.parts) if fault), GOOD)
    if not isinstance(node, t.Relation):
        return NOT_SOLVED
    ops = [op for op, _ in node.rest]
    if any(op in ("=", "≠") for op in ops):
        return "the sign is not an inequality sign"
    sides = [bare(node.first), *(bare(side) for _, side in node.rest)]
    if len(sides) == 2 and not isinstance(sides[0], t.Sym):
        sides.reverse()  # 4 < x says x > 4
    if len(sides) == 3 and isinstance(sides[1], t.Sym):
        if not (set(ops) <= {"<", "≤"} or set(ops) <= {">", "≥"}):
            return "its two signs do not point the same way"
        ends = (sides[0], sides[2])
    elif len(sides) == 2 and isinstance(sides[0], t.Sym):
        ends = (sides[1], sides[1])
    else:
        return NOT_SOLVED
    return next((fault for fault in (number(end) and amount(end) for end in ends) if fault), GOOD)


def roots(node: t.Node) -> str:
    """Allow every solution as letter = number, joined by *or*, or a list of several letters.

    >>> from itembank.notation.parse import parse
    >>> texts = ("x = -4 or x = 7", "x = 2, y = 5", "x = 1 + √2 or x = 1 - √2", "x = 3")
    >>> [roots(parse(text)) for text in texts]
    ['', '', '', '']
    >>> roots(parse("x = 6/4"))
    'the fraction is not in its lowest terms'
    """
    if isinstance(node, t.Either | t.Listing):
        return next((fault for fault in map(roots, node.parts) if fault), GOOD)
    right = solved_for(node)
    if isinstance(right, str):
        return right
    return expression(right) if t.symbols(right) else finished_number(right)


def subject(node: t.Node) -> str:
    """Allow a letter alone, an equals sign, and a finished expression without that letter.

    >>> from itembank.notation.parse import parse
    >>> subject(parse("x = (y - 2)/3")), subject(parse("x = y - x"))
    ('', 'x stands on both sides')
    """
    if isinstance(node, t.Either):
        return next((fault for fault in map(subject, node.parts) if fault), GOOD)
    if not (isinstance(node, t.Relation) and len(node.rest) == 1):
        return "it is not one letter, an equals sign and an expression"
    op, right = node.rest[0]
    left, right = bare(node.first), bare(right)
    if not isinstance(left, t.Sym):
        return "it is not one letter, an equals sign and an expression"
    if op != "=":
        return "the sign is not ="
    if left.name in t.symbols(right):
        return f"{left.name} stands on both sides"
    return expression(right)


def nth_term(node: t.Node) -> str:
    """Allow a simplified expression in n alone.

    >>> from itembank.notation.parse import parse
    >>> nth_term(parse("3n + 2")), nth_term(parse("3x + 2")), nth_term(parse("5 + 3(n - 1)"))
    ('', 'its letter is not n', 'a bracket is left to multiply out')
    """
    if not t.symbols(node) <= {"n"}:
        return "its letter is not n"
    return simplified(node)


def listing(node: t.Node) -> str:
    """Say what keeps a tree from being a list."""
    return GOOD if isinstance(node, t.Listing) else "it is not a list"


def amounts(node: t.Node) -> str:
    """Say what keeps a tree from being a list of amounts."""
    if not isinstance(node, t.Listing):
        return "it is not a list of amounts"
    return next((fault for fault in map(amount, node.parts) if fault), GOOD)


def point(node: t.Node) -> str:
    """Say what keeps a tree from being the coordinates of a point; brackets may be left out."""
    if not (isinstance(node, t.Listing) and len(node.parts) == 2):
        return "it is not a pair of coordinates"
    return amounts(node)


def sign(node: t.Node) -> str:
    """Say what keeps a tree from being two numbers with <, > or = between them."""
    fits = isinstance(node, t.Relation) and node.rest[0][0] in ("<", ">", "=")
    return GOOD if fits else "it is not two numbers with a sign between"


def name(node: t.Node) -> str:
    """Say what keeps a tree from being a name."""
    return GOOD if isinstance(node, t.Label) else "it does not name one of the choices"


def true_or_false(node: t.Node) -> str:
    """Allow the names *true* and *false* alone."""
    fits = isinstance(node, t.Label) and node.text.casefold() in ("true", "false")
    return GOOD if fits else "it is neither true nor false"


def line_and_result(node: t.Node) -> str:
    """Allow the name of a line and what the question comes to, worked out.

    >>> from itembank.notation.parse import parse
    >>> texts = ('"line 2", 5/6', '"line 1", x = 4', "2, 5/6")
    >>> [line_and_result(parse(text)) for text in texts]
    ['', '', 'it is not a line and a right answer']
    """
    parts = node.parts if isinstance(node, t.Listing) else ()
    if len(parts) != 2 or not isinstance(parts[0], t.Label):
        return "it is not a line and a right answer"
    result = parts[1]
    if isinstance(result, t.Relation):
        return roots(result)
    if isinstance(result, t.Ratio):
        return ratio(result)
    return expression(result) if t.symbols(result) else finished_number(result)


def pairs(node: t.Node) -> str:
    """Allow a list of names: *A–Q, B–P*."""
    fits = isinstance(node, t.Listing) and all(isinstance(p, t.Label) for p in node.parts)
    return GOOD if fits else "it is not a list of pairs"
