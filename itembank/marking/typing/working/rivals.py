"""Earlier lines of working that give another answer, so that there is none to mark.

A step on the way is no answer: a part of the question worked out, an equation that is not
solved yet. What has the shape of the answer and is worth something else takes it back.
"""

from __future__ import annotations

from itembank.items.forms.form_rules import form_fault
from itembank.items.item import Item
from itembank.marking.typing.working.sides_agree import flat
from itembank.marking.typing.working.working_results import comes_to
from itembank.marking.worth.same_worth import same, unknowns
from itembank.marking.worth.worth import bounded
from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.quotients import rational

_NO_EXPRESSION = (
    t.Relation,
    t.Ratio,
    t.Listing,
    t.Either,
    t.Label,
    t.Quantity,
    t.Money,
    t.Blank,
)


def rival(piece: t.Node, answer: t.Node) -> bool:
    """Tell whether an earlier line gives an answer of its own that is not the last one.

    >>> from itembank.notation.parse import parse
    >>> pairs = (("x = 8", "x = 7"), ("2x = 14", "x = 7"), ("x = 14/2", "x = 7"), ("8", "7"))
    >>> [rival(parse(text), parse(other)) for text, other in pairs]
    [True, False, False, True]
    """
    given = comes_to(piece)
    if unknowns(answer) and isinstance(answer, t.Listing):
        parts = given.parts if isinstance(given, t.Listing | t.Either) else (given,)
        wanted = {part.first: part for part in answer.parts if isinstance(part, t.Relation)}
        return any(
            rival(part, wanted[part.first])
            for part in parts
            if isinstance(part, t.Relation) and part.first in wanted
        )
    if isinstance(answer, t.Listing | t.Either):
        return all(rival(piece, part) for part in answer.parts) and _shaped_like(piece, answer)
    if same(given, answer):
        return False
    if isinstance(given, t.Relation) and isinstance(answer, t.Relation):
        return _other_values(given, answer)
    if isinstance(given, t.Relation):
        return False
    # A calculation with what it comes to is a step; a number by itself is an answer.
    return not isinstance(piece, t.Relation) and (flat(given) or isinstance(given, t.Label))


def _other_values(given: t.Relation, answer: t.Relation) -> bool:
    """Tell whether a relation says that the letter of the answer is worth something else."""
    sides = [side for _, side in given.rest]
    if len(sides) == 2 and len(answer.rest) == 2:  # -2 < x ≤ 3
        return sides[0] == answer.rest[0][1] and flat(given.first) and flat(sides[1])
    if not isinstance(given.first, t.Sym) or given.first != answer.first:
        return False
    if t.symbols(answer.rest[-1][1]):
        # A subject: a line that still has the letter on both sides is a step.
        return not any(given.first.name in t.symbols(side) for side in sides)
    return all(map(flat, sides))


def another_result(item: Item, piece: t.Node) -> bool:
    """Tell whether an earlier line is a finished answer like the key, and worth something else.

    What part of the question comes to is a step: 3x + 6, then 2x - 2, then 5x + 4.

    >>> from itembank.items.topics.registry import find_item
    >>> from itembank.notation.line import line
    >>> from itembank.notation.parse import parse
    >>> item = find_item("ratio.simplest-form/core/1")
    >>> line(item.key), another_result(item, parse("5 : 7")), another_result(item, item.key)
    ('1 : 20', True, False)
    """
    key = item.key
    if type(piece) is not type(key) or isinstance(key, t.Relation | t.Listing | t.Either | t.Label):
        return False
    # Unfinished, or the answer itself.
    if form_fault(item.form, piece) or same(piece, key):
        return False
    asked = getattr(item.ask, "target", None)
    if isinstance(key, t.Ratio):
        printed = [
            run
            for run in item.prompt
            if isinstance(run, t.Ratio) and len(run.parts) == len(key.parts) and not t.symbols(run)
        ]
        return isinstance(piece, t.Ratio) and (
            len(piece.parts) == len(key.parts) and len(printed) < 2 and piece not in printed
        )
    if not (bounded(piece) and bounded(key)):
        return False
    if t.symbols(key):
        if set(algebra(piece).top) != set(algebra(key).top):
            return False
    else:
        worth, wanted = algebra(piece), algebra(key)
        prime = item.form.startswith("prime") and worth.top
        if prime and rational(wanted / worth).denominator == 1:
            return False  # the primes of a factor
    return not any(
        bounded(part) and algebra(part) in (algebra(piece), algebra(t.Neg(piece)))
        for part in (t.walk(asked) if asked is not None else ())
        if _an_expression(part)
    )


def _an_expression(node: t.Node) -> bool:
    return not any(isinstance(part, _NO_EXPRESSION) for part in t.walk(node))


def _shaped_like(piece: t.Node, answer: t.Listing | t.Either) -> bool:
    """Tell whether a line has the shape of one of several answers: x = 9 beside x = 7, x = −4."""
    given = comes_to(piece)
    letters = {part.first for part in answer.parts if isinstance(part, t.Relation)}
    if isinstance(given, t.Relation):
        return given.first in letters and all(flat(side) for _, side in given.rest)
    return not isinstance(piece, t.Relation) and flat(given)
