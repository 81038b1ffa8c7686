"""Walks trees and changes their parts, whatever kinds of node they are made of."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import TYPE_CHECKING

from itembank.notation.tree.face import BELOW, FACES, LETTERS, Rank

if TYPE_CHECKING:
    from itembank.notation.tree import Node


def children(node: Node) -> tuple[Node, ...]:
    """Return the nodes directly below `node`, in reading order.

    >>> from itembank.notation.tree import frac
    >>> children(frac(1, 2))
    (Int(n=1), Int(n=2))
    """
    below = BELOW.get(type(node))
    return below(node) if below else ()


def rebuilt(node: Node, below: tuple[Node, ...]) -> Node:
    """Return `node` with other nodes directly below it: the inverse of :func:`children`.

    >>> from itembank.notation.tree import Int, frac
    >>> rebuilt(frac(1, 2), (Int(3), Int(4)))
    Frac(num=Int(n=3), den=Int(n=4))
    """
    faces = FACES.get(type(node))
    return faces.parts.rebuild(node, below) if faces and faces.parts else node


def with_parts(node: Node, change: Callable[[Node], Node]) -> Node:
    """Return `node` with each node directly below it changed.

    >>> from itembank.notation.tree import Bracket, Int, frac
    >>> with_parts(frac(1, 2), lambda part: Int(9) if part == Int(1) else part)
    Frac(num=Int(n=9), den=Int(n=2))
    """
    below = BELOW.get(type(node))
    return rebuilt(node, tuple(map(change, below(node)))) if below else node


def walk(node: Node) -> Iterator[Node]:
    """Yield `node` and every node below it, in reading order.

    >>> from itembank.notation.tree import frac
    >>> [type(n).__name__ for n in walk(frac(1, 2))]
    ['Frac', 'Int', 'Int']
    """
    # With a list and not by recursion: each yield would pass through every level of the tree.
    left = [node]
    while left:
        node = left.pop()
        yield node
        if below := BELOW.get(type(node)):
            left.extend(reversed(below(node)))


def is_operation(node: Node) -> bool:
    """Tell whether a node itself says that something is to be worked out.

    >>> from itembank.notation.tree import Int, add, frac
    >>> is_operation(add(Int(1), Int(2))), is_operation(frac(1, 2))
    (True, False)
    """
    faces = FACES.get(type(node))
    return faces is not None and faces.operation


def is_expression(node: Node) -> bool:
    """Tell whether a node may stand in brackets: no relation, ratio, list, name or time of day.

    >>> from itembank.notation.tree import Int, equals, frac
    >>> is_expression(frac(1, 2)), is_expression(equals(Int(1), Int(2)))
    (True, False)
    """
    faces = FACES.get(type(node))
    return faces is not None and faces.rank <= Rank.EXPRESSION


def symbols(node: Node) -> frozenset[str]:
    """Return the letters used in `node`; an empty box counts as ``□``.

    >>> from itembank.notation.tree import Sym, juxt, num
    >>> sorted(symbols(juxt(num(3), Sym("x"))))
    ['x']
    """
    found = set()
    left = [node]
    while left:
        node = left.pop()
        if letter := LETTERS.get(type(node)):
            found.add(letter(node))
        elif below := BELOW.get(type(node)):
            left.extend(below(node))
    return frozenset(found)
