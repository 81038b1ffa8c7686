"""Checks that each line of working is true and follows, and that the last gives the key."""

from __future__ import annotations

from fractions import Fraction

from itembank.checking.elimination import (
    answer,
    eliminate,
    equations_of,
    evaluate,
    known_letters,
)
from itembank.checking.ranges import first_difference, solve_inequality, statement
from itembank.checking.working_algebra import algebra_fault
from itembank.items.item import Find, Inequality, Item
from itembank.notation.algebra import algebra, number
from itembank.notation.tree import (
    Listing,
    Node,
    NotationError,
    Ratio,
    Relation,
    symbols,
    walk,
)
from itembank.notation.value import NotExact, parts, sides


def step_fault(item: Item) -> str:
    """Return what is wrong with the working of `item`, or ``""``.

    A line without letters has to be true; an equation or inequality in the unknown has to
    have the solution of the question; a bare expression has to be worth what is asked; a line
    in letters has to follow from the question (:mod:`.working_algebra`); the last line has to
    hold the key.
    """
    lines = [step.maths for step in item.steps if step.maths is not None]
    if not lines:
        return "there is no working"
    for place, line in enumerate(lines, start=1):
        try:
            fault = _line_fault(item, line)
        except NotationError as error:
            fault = f"cannot be checked: {error}"
        if fault:
            return f"line {place} of the working {fault}"
    last = lines[-1]
    if item.key not in walk(last) and not _lists_key(item.key, lines):
        return "the last line of the working does not give the key"
    return ""


def _lists_key(key: Node, lines: list[Node]) -> bool:
    """Several answers may be found on several lines, one each."""
    if not isinstance(key, Listing):
        return False
    seen = {node for line in lines for node in walk(line)}
    return all(part in seen for part in key.parts)


def _line_fault(item: Item, line: Node) -> str:
    letters = symbols(line)
    if isinstance(line, Relation) and not letters:
        return "" if true(line) else "is not true"
    if isinstance(item.ask, Inequality):
        if not isinstance(line, Relation):
            return ""
        return (
            "" if _same_range(line, item.ask.relation) else "has another solution than the question"
        )
    if not isinstance(item.ask, Find):
        return algebra_fault(item, line)
    target, relations = item.ask.target, item.ask.relations
    if isinstance(line, Relation):
        return "" if _consequence(line, relations) else "does not follow from the question"
    if letters:
        return ""
    found = answer(target, relations)
    given = parts(line)
    if isinstance(line, Ratio) and len(given) == len(found):
        # A ratio may be a step on the way to shares in that ratio, so proportion is enough.
        same = all(a * found[0] == b * given[0] for a, b in zip(given, found, strict=True))
        return "" if same else "is another ratio"
    return "" if given == found else "is worth something else"


def _same_range(line: Relation, asked: Relation) -> bool:
    """Whether two inequalities, or chains of them, have the same solutions."""
    if len(line.rest) == len(asked.rest) == 1:
        return solve_inequality(line) == solve_inequality(asked)
    letters = symbols(line) | symbols(asked)
    if len(letters) != 1:
        return False
    (letter,) = letters
    return first_difference(statement((line,), letter), statement((asked,), letter)) is None


def true(relation: Relation, known: dict[str, Fraction] | None = None) -> bool:
    """Return whether a relation holds, its letters worth what `known` says.

    Ratios are compared by proportion, lists item by item, roots by exact algebra.

    >>> from itembank.notation.parse import parse
    >>> true(parse("√50 = 5√2")), true(parse("√18 + √8 = √26"))
    (True, False)
    >>> from itembank.notation.tree import Int, equals, ratio
    >>> true(equals(ratio(Int(6), Int(4)), ratio(Int(3), Int(2))))
    True
    """
    known = known or {}
    for left, op, right in sides(relation):
        try:
            a, b = _values(left, known), _values(right, known)
        except NotExact:
            # A root that does not come out is no fraction, but equal it may still be.
            if op != "=":
                raise
            worth = {name: number(value) for name, value in known.items()}
            if algebra(left, worth) != algebra(right, worth):
                return False
            continue
        if len(a) != len(b):
            return False
        if isinstance(left, Ratio) and isinstance(right, Ratio):
            a, b = [x * b[0] for x in a], [y * a[0] for y in b]
        if isinstance(left, Ratio | Listing) or isinstance(right, Ratio | Listing):
            holds = op == "=" and a == b
        else:
            x, y = a[0], b[0]
            holds = {"=": x == y, "<": x < y, ">": x > y, "≤": x <= y, "≥": x >= y, "≠": x != y}[op]
        if not holds:
            return False
    return True


def _consequence(line: Relation, relations: tuple[Relation, ...]) -> bool:
    """Whether `line` follows from the question, and so leaves its solutions as they were."""
    if not symbols(line) <= {name for relation in relations for name in symbols(relation)}:
        return False
    given = known_letters(relations)
    known = dict(given)
    forms = [form for relation in relations for form in equations_of(relation, given)]
    free = eliminate(forms, known)
    if not free:
        return true(line, known)
    # Where letters stay free, a line that follows settles no letter more.
    try:
        return eliminate([*forms, *equations_of(line, given)], dict(known)) == free
    except NotExact:
        return False


def _values(node: Node, known: dict[str, Fraction]) -> list[Fraction]:
    pieces = node.parts if isinstance(node, Ratio | Listing) else (node,)
    return [evaluate(piece, known) for piece in pieces]
