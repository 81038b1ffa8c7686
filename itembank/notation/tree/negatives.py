"""The prefix minus."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from itembank.data_class import dataclass
from itembank.notation.tree.face import Faces, Part, Rank, Syntax, register_node
from itembank.notation.tree.fractions import Frac, Mixed
from itembank.notation.tree.marked_up import body
from itembank.notation.tree.measures import Money, Percent, Quantity
from itembank.notation.tree.numbers import Dec, Int
from itembank.notation.tree.parsed import RefusedError, start_of
from itembank.notation.tree.part_shapes import OF
from itembank.notation.tree.spoken import said
from itembank.notation.tree.written import text_of

if TYPE_CHECKING:
    from itembank.notation.tree import Node

_NUMBERS = (Int, Dec, Mixed, Money, Quantity, Percent)


@dataclass(frozen=True, slots=True)
class Neg:
    """A prefix minus: it binds more loosely than powers and products, as −x² does.

    It may be any part of a sum or product without brackets: ``5 - -3``, ``2 × -3``. At the head
    it is the sign of the first part alone: ``-2 × 3`` is (−2) × 3 and ``-2 + 3`` is (−2) + 3. A
    ``Neg`` of a ``Neg`` needs a bracket: ``-(-3)``.
    """

    of: Node


def _line(node: Neg) -> str:
    return "-" + text_of(node.of, Rank.UNSIGNED, "the number after a minus sign")


def _words(node: Neg) -> str:
    """Return a negative number, or what is taken away.

    >>> from itembank.notation.tree import Power, Sym
    >>> _words(Neg(Int(3))), _words(Neg(Sym("x"))), _words(Neg(Power(Int(3), Int(2))))
    ('negative 3', 'minus x', 'minus 3 squared')
    """
    of = node.of
    number = isinstance(of, _NUMBERS) or (
        isinstance(of, Frac) and isinstance(of.num, Int) and isinstance(of.den, Int)
    )
    return f"{'negative' if number else 'minus'} {said(of)}"


def _read(parts: list[Any]) -> Part:
    # Two dashes in a row are as often a slip of the key as meant.
    if type(parts[1].node) is Neg:
        message = "Two minus signs together need a bracket between them, as in -(-3)."
        raise RefusedError(message, parts[1].start)
    return Part(Neg(parts[1].node), start_of(parts))


register_node(
    Neg,
    Faces(
        rank=Rank.SIGNED,
        parts=OF,
        line=_line,
        words=_words,
        mathml=lambda node: f'<mo form="prefix">−</mo>{body(node.of)}',
        single=False,
        syntax=Syntax(
            rules=(
                ("unary", "MINUS unary -> neg"),
                ("below", "MINUS juxt -> neg"),
                ("exponent", "MINUS simple -> neg"),
            ),
            signs={"MINUS": '"-"'},
            build={"neg": _read},
        ),
    ),
)
