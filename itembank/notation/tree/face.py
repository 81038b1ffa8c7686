"""What the faces of a node are, and the one table of all nodes.

A node is declared once: its class and, in the same file, its :class:`Faces`, given to
:func:`register_node`. The line writer, the speaker, the MathML writer, the grammar and the
walkers ask this table and no class. What a node is worth is not a face: each road to a key says
so for itself (:mod:`itembank.notation.value`, :mod:`itembank.notation.symbolic`).

>>> from itembank.notation.tree import Frac, Int
>>> FACES[Frac].rank.name, FACES[Int].rank.name
('AMOUNT', 'SIMPLE')
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import field
from enum import IntEnum
from functools import cache
from typing import TYPE_CHECKING, Any, NamedTuple, TypeVar

from itembank.data_class import dataclass

if TYPE_CHECKING:
    from itembank.notation.tree import Node

F = TypeVar("F", bound=Callable[..., Any])


class NotationError(ValueError):
    """A tree, or a piece of text, that is not school mathematics as this package knows it."""


class Rank(IntEnum):
    """How tightly a node holds together: where one rank may stand, so may those before it.

    The names are those of the places in a line; the grammar has a level for each.
    """

    SIMPLE = 0
    """A number, a letter, a box: needs no brackets anywhere."""
    BASE = 1
    """What may be raised to a power."""
    FACTOR = 2
    """What may stand beside other factors without a sign."""
    AMOUNT = 3
    """What may have a unit, a per cent sign or a sign of money."""
    UNSIGNED = 4
    """What a minus may stand before."""
    SIGNED = 5
    """A factor between × and ÷."""
    TERM = 6
    """A term between + and −."""
    EXPRESSION = 7
    """What may stand in brackets, over and under a bar, in an exponent."""
    SIDE = 8
    """A side of a relation."""
    CELL = 9
    """A part of a list."""
    LISTING = 10
    EITHER = 11
    """Anything: a whole line."""


class Parts(NamedTuple):
    """How to come to the nodes below a node, in reading order, and how to put others there."""

    below: Callable[[Any], tuple[Node, ...]]
    rebuild: Callable[[Any, tuple[Any, ...]], Node]


class Part(NamedTuple):
    """A tree as it is read, and the offset of its first character."""

    node: Node
    start: int


@dataclass(frozen=True, slots=True)
class Syntax:
    """How a node is read: its share of the grammar.

    Attributes
    ----------
    rules
        Pairs of a level of the grammar (:mod:`itembank.notation.tree.grammar`) and one more way to
        write it, as lark has it: ``("factor", "base BANG -> factorial")``.
    signs
        The patterns of the signs that the rules name, as lark has them: ``{"BANG": '"!"'}``.
        Two nodes may share a sign that both give alike.
    build
        What makes the tree, by the name behind ``->``: it takes the parts, each a
        :class:`Part` or a token.
    joins
        Signs that tie a letter before them to what is read: in 3p^2 and 3p(x + 1), p is no pence.
    """

    rules: tuple[tuple[str, str], ...]
    build: Mapping[str, Callable[[list[Any]], Part]]
    signs: Mapping[str, str] = field(default_factory=dict)
    joins: str = ""


def _free(node: Any) -> str:
    return ""


@dataclass(frozen=True, slots=True)
class Faces:
    """All that notation needs to know of one kind of node.

    Attributes
    ----------
    rank
        Where it may stand without brackets.
    line
        Its text on a line (:mod:`itembank.notation.line`); raises NotationError where it is not
        well formed.
    words
        What is said (:mod:`itembank.notation.words`).
    mathml
        Its elements (:mod:`itembank.notation.mathml`); pages and web pages are set from them.
    syntax
        How it is read back.
    parts
        The nodes below it; None where it has none.
    single
        Whether `mathml` gives exactly one element, whatever the node holds.
    letter
        The name of the unknown that it is; None where it is none.
    operation
        Whether it says that something is to be worked out, so that it is no finished number.
    ends
        What is said to end in its words, as in *end of fraction*.
    confined
        Why a node of this kind may not stand inside brackets, bars and the like, or ``""``.
    """

    rank: Rank
    line: Callable[[Any], str]
    words: Callable[[Any], str]
    mathml: Callable[[Any], str]
    syntax: Syntax
    parts: Parts | None = None
    single: bool = True
    letter: Callable[[Any], str] | None = None
    operation: bool = False
    ends: tuple[str, ...] = ()
    confined: Callable[[Any], str] = _free


FACES: dict[type, Faces] = {}
"""Every node's class and its faces."""
BELOW: dict[type, Callable[[Any], tuple[Node, ...]]] = {}
"""Of the nodes that hold others, what is below: trees are walked more often than anything else."""
LETTERS: dict[type, Callable[[Any], str]] = {}
"""Of the nodes that stand for an unknown, its name."""
_KEPT: list[Callable[[], None]] = []


def register_node(kind: type, faces: Faces) -> None:
    """Add a kind of node."""
    FACES[kind] = faces
    if faces.parts:
        BELOW[kind] = faces.parts.below
    if faces.letter:
        LETTERS[kind] = faces.letter
    _clear()


def kept_until_registered(function: F) -> F:
    """Keep what a function made of the table, until another node is registered."""
    kept = cache(function)
    _KEPT.append(kept.cache_clear)
    return kept  # type: ignore[return-value]


def _clear() -> None:
    for clear in _KEPT:
        clear()
