"""School mathematics as data: one small immutable tree that holds exactly what is shown.

Every node is a frozen dataclass, so trees compare by content and may be used as
dictionary keys. A node says how something is *written*, never what it is worth:
``2/4`` and ``1/2`` are different trees with the same value. The faces of a tree live
one to a module: :mod:`.mathml`, :mod:`.line`, :mod:`.words`, :mod:`.value` and
:mod:`.symbolic`.

>>> Sum(Frac(Int(1), Int(2)), (("+", Frac(Int(1), Int(3))),)) == add(frac(1, 2), frac(1, 3))
True
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any, Literal, TypeAlias

SumOp: TypeAlias = Literal["+", "-"]
ProductOp: TypeAlias = Literal["×", "÷", "of"]
RelationOp: TypeAlias = Literal["=", "<", ">", "≤", "≥", "≠"]


class NotationError(ValueError):
    """A tree, or a piece of text, that is not school mathematics as this package knows it."""


@dataclass(frozen=True, slots=True)
class Int:
    """A whole number, zero or more. A negative number is :class:`Neg` of one."""

    n: int


@dataclass(frozen=True, slots=True)
class Dec:
    """A decimal as written: digits before the point, after it, and the recurring block.

    ``Dec("0", "1", "6")`` is 0.1666…, with a dot over the 6.
    """

    whole: str
    places: str = ""
    recurring: str = ""


@dataclass(frozen=True, slots=True)
class Sym:
    """A letter standing for a number: one Latin or Greek letter, set in italics."""

    name: str


@dataclass(frozen=True, slots=True)
class Blank:
    """An empty box to be filled in."""


@dataclass(frozen=True, slots=True)
class Label:
    """A name used as an answer, such as *Pack B*; it has no numerical value."""

    text: str


@dataclass(frozen=True, slots=True)
class Frac:
    """A fraction with a bar."""

    num: Node
    den: Node


@dataclass(frozen=True, slots=True)
class Mixed:
    """A mixed number, such as 2 3/4: all three parts are positive whole numbers."""

    whole: int
    num: int
    den: int


@dataclass(frozen=True, slots=True)
class Neg:
    """A prefix minus: it binds more loosely than powers and products, as −x² does."""

    of: Node


@dataclass(frozen=True, slots=True)
class Percent:
    """A number followed by a per cent sign."""

    of: Node


@dataclass(frozen=True, slots=True)
class Money:
    """A sum of money: a currency sign (``£`` or ``p``) and a number."""

    amount: Node
    sign: str = "£"


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number with a unit from :data:`itembank.notation.units.UNITS`, such as 4.5 kg."""

    amount: Node
    unit: str


@dataclass(frozen=True, slots=True)
class MixedUnits:
    """A quantity in two or more units of one kind, the largest first, such as 2 h 35 min."""

    parts: tuple[Quantity, ...]


@dataclass(frozen=True, slots=True)
class ClockTime:
    """A time of day: 14:35 by the 24-hour clock, or 2:35 pm with `half` as ``am`` or ``pm``.

    `minute` is None where none is shown, as in 2 pm.
    """

    hour: int
    minute: int | None
    half: Literal["", "am", "pm"] = ""


@dataclass(frozen=True, slots=True)
class Power:
    """A base raised to an exponent."""

    base: Node
    exponent: Node


@dataclass(frozen=True, slots=True)
class Root:
    """A root sign of index 2, 3 or 4."""

    of: Node
    index: int = 2


@dataclass(frozen=True, slots=True)
class Bracket:
    """Round brackets that are printed."""

    of: Node


@dataclass(frozen=True, slots=True)
class Juxt:
    """Factors written side by side, as in 3x or 2(x + 1); binds tighter than × and ÷.

    A fraction or mixed number may only lead, and only before a letter: ``(3/4)x``.
    """

    factors: tuple[Node, ...]


@dataclass(frozen=True, slots=True)
class Sum:
    """Terms joined by + and −, read from left to right."""

    first: Node
    rest: tuple[tuple[SumOp, Node], ...]


@dataclass(frozen=True, slots=True)
class Product:
    """Factors joined by ×, ÷ and *of*, read from left to right."""

    first: Node
    rest: tuple[tuple[ProductOp, Node], ...]


@dataclass(frozen=True, slots=True)
class Ratio:
    """Two or more parts joined by colons."""

    parts: tuple[Node, ...]


@dataclass(frozen=True, slots=True)
class Relation:
    """Two or more sides joined by =, <, >, ≤, ≥ or ≠: an equation, an inequality, a chain."""

    first: Node
    rest: tuple[tuple[RelationOp, Node], ...]


@dataclass(frozen=True, slots=True)
class Listing:
    """An ordered list, set with commas."""

    parts: tuple[Node, ...]


@dataclass(frozen=True, slots=True)
class Either:
    """Two or more answers joined by *or*, as in x = −4 or x = 7: every one of them is right.

    A part is a relation, an expression, or a list of relations (x = 1, y = 2).
    """

    parts: tuple[Node, ...]


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
    | Bracket
    | Juxt
    | Sum
    | Product
    | Ratio
    | Relation
    | Listing
    | Either
)


def children(node: Node) -> tuple[Node, ...]:
    """Return the nodes directly below `node`, in reading order.

    >>> children(frac(1, 2))
    (Int(n=1), Int(n=2))
    """
    below = _BELOW.get(type(node))
    return below(node) if below else ()


def _of(node: Neg | Percent | Root | Bracket) -> tuple[Node, ...]:
    return (node.of,)


def _amount(node: Money | Quantity) -> tuple[Node, ...]:
    return (node.amount,)


def _joined(node: Sum | Product | Relation) -> tuple[Node, ...]:
    return (node.first, *(part for _, part in node.rest))


def _parts(node: Ratio | Listing | Either | MixedUnits) -> tuple[Node, ...]:
    return node.parts


# By the class of a node, not by asking one class after the other: trees are walked more often
# than anything else is done with them.
_BELOW: dict[type, Callable[..., tuple[Node, ...]]] = {
    Frac: lambda node: (node.num, node.den),
    Power: lambda node: (node.base, node.exponent),
    Juxt: lambda node: node.factors,
    **dict.fromkeys((Neg, Percent, Root, Bracket), _of),
    **dict.fromkeys((Money, Quantity), _amount),
    **dict.fromkeys((Sum, Product, Relation), _joined),
    **dict.fromkeys((Ratio, Listing, Either, MixedUnits), _parts),
}


def rebuilt(node: Node, below: tuple[Node, ...]) -> Node:
    """Return `node` with other nodes directly below it: the inverse of :func:`children`.

    >>> rebuilt(frac(1, 2), (Int(3), Int(4)))
    Frac(num=Int(n=3), den=Int(n=4))
    """
    rebuild = _REBUILT.get(type(node))
    built: Node = rebuild(node, below) if rebuild else node
    return built


def _rejoined(node: Any, below: tuple[Node, ...]) -> Any:
    rest = tuple((op, part) for (op, _), part in zip(node.rest, below[1:], strict=True))
    return type(node)(below[0], rest)


_REBUILT: dict[type, Callable[[Any, Any], Node]] = {
    **dict.fromkeys((Frac, Power), lambda node, below: type(node)(*below)),
    **dict.fromkeys((Neg, Percent, Bracket), lambda node, below: type(node)(*below)),
    Root: lambda node, below: Root(below[0], node.index),
    Money: lambda node, below: Money(below[0], node.sign),
    Quantity: lambda node, below: Quantity(below[0], node.unit),
    **dict.fromkeys((Sum, Product, Relation), _rejoined),
    **dict.fromkeys((Juxt, Ratio, Listing, Either), lambda node, below: type(node)(below)),
    MixedUnits: lambda node, below: MixedUnits(below),
}


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


def walk(node: Node) -> Iterator[Node]:
    """Yield `node` and every node below it, in reading order.

    >>> [type(n).__name__ for n in walk(frac(1, 2))]
    ['Frac', 'Int', 'Int']
    """
    left = [node]
    while left:
        node = left.pop()
        yield node
        if below := _BELOW.get(type(node)):
            left.extend(reversed(below(node)))


def symbols(node: Node) -> frozenset[str]:
    """Return the letters used in `node`; an empty box counts as ``□``.

    >>> sorted(symbols(juxt(num(3), Sym("x"))))
    ['x']
    """
    found = set()
    for part in walk(node):
        if isinstance(part, Sym):
            found.add(part.name)
        elif isinstance(part, Blank):
            found.add("□")
    return frozenset(found)


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
    """
    if not others:
        return first
    rest: list[tuple[SumOp, Node]] = []
    for other in others:
        rest.append(("-", other.of) if isinstance(other, Neg) else ("+", other))
    return Sum(first, tuple(rest))


def sub(first: Node, *others: Node) -> Node:
    """Return the terms joined by −, exactly as written.

    >>> sub(Sym("x"), Int(3))
    Sum(first=Sym(name='x'), rest=(('-', Int(n=3)),))
    """
    return Sum(first, tuple(("-", other) for other in others))


def times(first: Node, *others: Node) -> Node:
    """Return the factors joined by ×."""
    return Product(first, tuple(("×", other) for other in others))


def divide(first: Node, *others: Node) -> Node:
    """Return the factors joined by ÷."""
    return Product(first, tuple(("÷", other) for other in others))


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


def ratio(*parts: Node) -> Ratio:
    """Return the parts joined by colons."""
    return Ratio(parts)


def equals(first: Node, *others: Node) -> Relation:
    """Return the sides joined by equals signs."""
    return Relation(first, tuple(("=", other) for other in others))


def relate(left: Node, op: RelationOp, right: Node) -> Relation:
    """Return two sides joined by `op`."""
    return Relation(left, ((op, right),))
