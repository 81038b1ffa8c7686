"""The first road to expressions: two of them agree whatever their letters are worth."""

from __future__ import annotations

from itembank.items.asks import Rewrite
from itembank.items.forms.form_rules import number_node
from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.quotients import Quotient
from itembank.notation.units import UNITS
from itembank.notation.value import NotExact
from itembank.proof.claim.finding import Finding, found, ordinal
from itembank.proof.claim.key_solutions import Misfit, value_given
from itembank.proof.exact.reckoning.equations import solve, unknowns
from itembank.proof.exact.reckoning.tree_of import parting, quotient_node
from itembank.proof.exact.roots import solutions_text


def find_rewritten(ask: Rewrite, key: t.Node) -> Finding:
    """Return the expression multiplied out, and whether the key is worth the same.

    Raises:
        NotExact: one of them is past what exact algebra can do.

    >>> from itembank.notation import parse
    >>> ask = Rewrite(parse("(x + 2)(x + 3)"), "expand")
    >>> find_rewritten(ask, parse("x^2 + 5x + 6")).shown
    'x^2 + 5x + 6'
    """
    ours = algebra(ask.target)
    answer = quotient_node(ours)
    if isinstance(key, t.Relation | t.Listing | t.Either | t.Ratio):
        return found(answer, key, False, "the key is not an expression")
    theirs = algebra(key)
    return found(answer, key, ours == theirs, "" if ours == theirs else parting(ours, theirs))


def find_value(target: t.Node, relations: tuple[t.Relation, ...], key: t.Node) -> Finding:
    """Return the value of `target`, roots and letters and all, and whether it is the key's.

    Raises:
        NotExact: the relations do not settle it.

    >>> from itembank.notation import parse
    >>> find_value(parse("√12 + √27"), (), parse("5√3")).shown
    '5√3'
    """
    if relations:
        pieces = _settled(_pieces(target), relations)
    else:
        pieces = [algebra(piece) for piece in _pieces(target)]
    shown = [quotient_node(piece) for piece in _in_unit_of(key, pieces)]
    proportional = isinstance(target, t.Ratio)
    whole: t.Node = shown[0]
    if isinstance(key, t.Quantity) and len(shown) == 1:
        whole = t.Quantity(whole, key.unit)
    if len(shown) > 1:
        whole = t.Ratio(tuple(shown)) if proportional else t.Listing(tuple(shown))
    try:
        given = [algebra(piece) for piece in _pieces(value_given(key))]
        if isinstance(key, t.Either):
            raise Misfit("the question has one answer")
    except Misfit as error:
        return found(whole, key, False, str(error))
    if len(given) != len(pieces):
        return found(whole, key, False, f"the question has {len(pieces)} numbers for an answer")
    for place, (ours, theirs) in enumerate(zip(pieces, given, strict=True), start=1):
        # 0 : 0 agrees crosswise with every ratio, so a first part that is zero is refused.
        same = ours * given[0] == pieces[0] * theirs if proportional else ours == theirs
        if not same or (proportional and not given[0].top):
            at = f"they first differ at the {ordinal(place)} number" if len(pieces) > 1 else ""
            if not at and ours.letters():
                at = parting(*_in_unit_of(key, [ours, theirs]))
            return found(whole, key, False, at)
    return found(whole, key, True)


def _in_unit_of(key: t.Node, values: list[Quotient]) -> list[Quotient]:
    """Return values as the key would write them: an area as so many square centimetres."""
    if not isinstance(key, t.Quantity) or key.unit not in UNITS:
        return values
    size = algebra(number_node(UNITS[key.unit].size))
    return [value / size for value in values]


def _pieces(node: t.Node) -> tuple[t.Node, ...]:
    return node.parts if isinstance(node, t.Ratio | t.Listing) else (node,)


def _settled(nodes: tuple[t.Node, ...], relations: tuple[t.Relation, ...]) -> list[Quotient]:
    """Return the pieces worked out from the solution of the relations, if they have but one."""
    every = solve(relations)
    if not every:
        raise NotExact("what is given has no real solution")
    # Several solutions are no matter where the target is worth the same at all of them.
    values = [[algebra(node, point) for node in nodes] for point in every]
    if any(value != values[0] for value in values[1:]):
        raise NotExact(f"what is given has more than one solution: {solutions_text(every)}")
    if any(piece.letters() - {"π"} for piece in values[0]):
        loose = sorted({n for p in values[0] for n in p.letters()} - unknowns(relations))
        raise NotExact(f"nothing is said about {', '.join(loose)}")
    return values[0]
