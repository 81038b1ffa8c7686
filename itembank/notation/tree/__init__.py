"""School mathematics as data: one small immutable tree that holds exactly what is shown.

Every node is a frozen dataclass, so trees compare by content and may be used as
dictionary keys. A node says how something is *written*, never what it is worth:
``2/4`` and ``1/2`` are different trees with the same value. Each is declared with its faces in
a file of this folder, one family a file; :mod:`.face` says what a node's faces are and holds the
table of all nodes. The faces are read by ``line``, ``words``, ``mathml`` and ``parse`` of
:mod:`itembank.notation`; what a tree is worth is for its ``value`` and ``symbolic``.

>>> Sum(Frac(Int(1), Int(2)), (("+", Frac(Int(1), Int(3))),)) == add(frac(1, 2), frac(1, 3))
True
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TypeAlias

from itembank.notation.tree.brackets import Bracket as Bracket
from itembank.notation.tree.clock_times import ClockTime as ClockTime
from itembank.notation.tree.face import NotationError as NotationError
from itembank.notation.tree.fractions import Frac as Frac
from itembank.notation.tree.fractions import Mixed as Mixed
from itembank.notation.tree.listings import Either as Either
from itembank.notation.tree.listings import Listing as Listing
from itembank.notation.tree.listings import Ratio as Ratio
from itembank.notation.tree.measures import MixedUnits as MixedUnits
from itembank.notation.tree.measures import Money as Money
from itembank.notation.tree.measures import Percent as Percent
from itembank.notation.tree.measures import Quantity as Quantity
from itembank.notation.tree.negatives import Neg as Neg
from itembank.notation.tree.numbers import Dec as Dec
from itembank.notation.tree.numbers import Int as Int
from itembank.notation.tree.powers import Power as Power
from itembank.notation.tree.powers import Root as Root
from itembank.notation.tree.products import Juxt as Juxt
from itembank.notation.tree.products import Product as Product
from itembank.notation.tree.products import ProductOp as ProductOp
from itembank.notation.tree.relations import Relation as Relation
from itembank.notation.tree.relations import RelationOp as RelationOp
from itembank.notation.tree.sum_of_terms import Sum as Sum
from itembank.notation.tree.sum_of_terms import SumOp as SumOp
from itembank.notation.tree.trigonometry import Trig as Trig
from itembank.notation.tree.unknowns import Blank as Blank
from itembank.notation.tree.unknowns import Label as Label
from itembank.notation.tree.unknowns import Sym as Sym
from itembank.notation.tree.walking import children as children
from itembank.notation.tree.walking import is_expression as is_expression
from itembank.notation.tree.walking import is_operation as is_operation
from itembank.notation.tree.walking import rebuilt as rebuilt
from itembank.notation.tree.walking import symbols as symbols
from itembank.notation.tree.walking import walk as walk
from itembank.notation.tree.walking import with_parts as with_parts

Node: TypeAlias = (
    Int
    | Dec
    | Sym
    | Blank
    | Label
    | Frac
    | Mixed
    | Neg
    | Percent
    | Money
    | Quantity
    | MixedUnits
    | ClockTime
    | Power
    | Root
    | Trig
    | Bracket
    | Juxt
    | Sum
    | Product
    | Ratio
    | Relation
    | Listing
    | Either
)


def replaced(node: Node, others: Mapping[Node, Node]) -> Node:
    """Return `node` with some of its parts replaced, each by another.

    A letter beside a number becomes a product with a bracket or a times sign, since 34 is not
    3 × 4.

    >>> replaced(add(Sym("x"), Int(1)), {Sym("x"): Int(4)}) == add(Int(4), Int(1))
    True
    >>> replaced(juxt(Int(3), Sym("x")), {Sym("x"): Int(4)}) == times(Int(3), Int(4))
    True
    """
    if node in others:
        return others[node]
    below = children(node)
    new = tuple(replaced(part, others) for part in below)
    if new == below:
        return node
    if isinstance(node, Juxt):
        first, *rest = (Bracket(part) if isinstance(part, Neg | Sum) else part for part in new)
        return times(first, *rest)
    return rebuilt(node, new)


def frame(node: Node) -> Node:
    """Return `node` with an empty box for each of its parts: what it holds beside them.

    Two nodes that differ only in their parts have one frame.

    >>> frame(Quantity(Int(3), "kg")) == frame(Quantity(Sym("x"), "kg")) != frame(Percent(Int(3)))
    True
    """
    return with_parts(node, lambda _: Blank())


# Short builders, so that a generator reads like the mathematics it prints.


def num(n: int) -> Node:
    """Return a whole number as a tree, with a prefix minus where it is negative.

    >>> num(-3)
    Neg(of=Int(n=3))
    """
    return Int(n) if n >= 0 else Neg(Int(-n))


def frac(top: int, bottom: int) -> Node:
    """Return ``top/bottom`` as written (not cancelled); a minus goes in front.

    >>> frac(-2, 4)
    Neg(of=Frac(num=Int(n=2), den=Int(n=4)))
    """
    if bottom <= 0:
        raise NotationError(f"a fraction needs a positive denominator, not {bottom}")
    return Frac(Int(top), Int(bottom)) if top >= 0 else Neg(Frac(Int(-top), Int(bottom)))


def add(first: Node, *others: Node) -> Node:
    """Return the terms joined by +; a negated later term is joined by − instead.

    >>> add(Sym("x"), Neg(Int(3)))
    Sum(first=Sym(name='x'), rest=(('-', Int(n=3)),))

    A sum that comes first goes on, as it is written: 2 + 3 and 4 are 2 + 3 + 4.

    >>> add(add(Int(2), Int(3)), Int(4)) == add(Int(2), Int(3), Int(4))
    True
    """
    if not others:
        return first
    rest: list[tuple[SumOp, Node]] = []
    for term in others:
        rest.append(("-", term.of) if isinstance(term, Neg) else ("+", term))
    return _longer_sum(first, tuple(rest))


def _longer_sum(first: Node, rest: tuple[tuple[SumOp, Node], ...]) -> Sum:
    if isinstance(first, Sum):
        return Sum(first.first, (*first.rest, *rest))
    return Sum(first, rest)


def sub(first: Node, *others: Node) -> Node:
    """Return the terms joined by −, exactly as written.

    >>> sub(Sym("x"), Int(3))
    Sum(first=Sym(name='x'), rest=(('-', Int(n=3)),))
    """
    return _longer_sum(first, tuple(("-", term) for term in others))


def times(first: Node, *others: Node) -> Node:
    """Return the factors joined by ×; a product that comes first goes on."""
    return _longer_product(first, tuple(("×", factor) for factor in others))


def divide(first: Node, *others: Node) -> Node:
    """Return the factors joined by ÷; a product that comes first goes on.

    >>> divide(times(Int(2), Int(6)), Int(4)).rest
    (('×', Int(n=6)), ('÷', Int(n=4)))
    """
    return _longer_product(first, tuple(("÷", divisor) for divisor in others))


def _longer_product(first: Node, rest: tuple[tuple[ProductOp, Node], ...]) -> Product:
    if isinstance(first, Product) and all(op != "of" for op, _ in first.rest):
        return Product(first.first, (*first.rest, *rest))
    return Product(first, rest)


def part_of(fraction: Node, whole: Node) -> Node:
    """Return ``fraction of whole``, as in 3/4 of 60."""
    return Product(fraction, (("of", whole),))


def juxt(*factors: Node) -> Node:
    """Return the factors written side by side; a leading 1 is left out, −1 becomes a minus.

    >>> juxt(num(-1), Sym("x"))
    Neg(of=Sym(name='x'))
    >>> juxt(num(-3), Sym("x"))
    Neg(of=Juxt(factors=(Int(n=3), Sym(name='x'))))
    """
    first, *rest = factors
    if isinstance(first, Neg):
        return Neg(juxt(first.of, *rest))
    if first == Int(1) and rest:
        return rest[0] if len(rest) == 1 else Juxt(tuple(rest))
    return first if not rest else Juxt(factors)


def pair(x: Node, y: Node) -> Listing:
    """Return the coordinates of a point.

    >>> from itembank.notation.line import line
    >>> line(pair(Int(3), num(-2)))
    '(3, -2)'
    """
    return Listing((x, y), True)


def ratio(*parts: Node) -> Ratio:
    """Return the parts joined by colons."""
    return Ratio(parts)


def equals(first: Node, *others: Node) -> Relation:
    """Return the sides joined by equals signs."""
    return Relation(first, tuple(("=", side) for side in others))


def relate(left: Node, op: RelationOp, right: Node) -> Relation:
    """Return two sides joined by `op`."""
    return Relation(left, ((op, right),))
