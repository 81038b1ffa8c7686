"""Terms joined by + and −."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal, TypeAlias

from itembank.data_class import dataclass
from itembank.notation.tree.clock_times import ALONE, ClockTime, clock_fault, times_in
from itembank.notation.tree.face import Faces, Rank, Syntax, register_node
from itembank.notation.tree.marked_up import chain_of
from itembank.notation.tree.parsed import chain
from itembank.notation.tree.part_shapes import CHAIN
from itembank.notation.tree.spoken import said_chain
from itembank.notation.tree.written import chained, refuse

if TYPE_CHECKING:
    from itembank.notation.tree import Node

SumOp: TypeAlias = Literal["+", "-"]


@dataclass(frozen=True, slots=True)
class Sum:
    """Two or more terms joined by + and −, read from left to right."""

    first: Node
    rest: tuple[tuple[SumOp, Node], ...]


def _line(node: Sum) -> str:
    if fault := clock_fault(node):
        refuse(fault)
    ops = {"+": " + ", "-": " - "}
    return chained(node.first, node.rest, ops, Rank.TERM, "a term of a sum", also=(ClockTime,))


register_node(
    Sum,
    Faces(
        rank=Rank.EXPRESSION,
        parts=CHAIN,
        operation=True,
        line=_line,
        confined=lambda node: ALONE if times_in(node) == 1 else "",
        words=said_chain({"+": "plus", "-": "minus"}),
        mathml=chain_of({"+": "<mo>+</mo>", "-": "<mo>−</mo>"}),
        single=False,
        syntax=Syntax(
            rules=(("sum", "product ((PLUS | MINUS) product)+ -> sum"),),
            signs={"PLUS": '"+"', "MINUS": '"-"'},
            build={"sum": chain(Sum)},
        ),
    ),
)
