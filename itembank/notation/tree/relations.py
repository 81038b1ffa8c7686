"""Equations and inequalities."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal, TypeAlias

from itembank.data_class import dataclass
from itembank.notation.tree.face import Faces, Rank, Syntax, register_node
from itembank.notation.tree.marked_up import chain_of
from itembank.notation.tree.parsed import chain
from itembank.notation.tree.part_shapes import CHAIN
from itembank.notation.tree.spoken import said_chain
from itembank.notation.tree.written import chained

if TYPE_CHECKING:
    from itembank.notation.tree import Node

RelationOp: TypeAlias = Literal["=", "<", ">", "≤", "≥", "≠"]


@dataclass(frozen=True, slots=True)
class Relation:
    """Two or more sides joined by =, <, >, ≤, ≥ or ≠: an equation, an inequality, a chain."""

    first: Node
    rest: tuple[tuple[RelationOp, Node], ...]


_LINE = {op: f" {op} " for op in "=<>≤≥≠"}
_SAID = {
    "=": "equals",
    "<": "is less than",
    ">": "is greater than",
    "≤": "is less than or equal to",
    "≥": "is greater than or equal to",
    "≠": "is not equal to",
}
_SET = {
    **{op: f"<mo>{op}</mo>" for op in "=≤≥≠"},
    "<": "<mo>&lt;</mo>",
    ">": "<mo>&gt;</mo>",
}

register_node(
    Relation,
    Faces(
        rank=Rank.CELL,
        parts=CHAIN,
        line=lambda node: chained(node.first, node.rest, _LINE, Rank.SIDE, "a side of a relation"),
        words=said_chain(_SAID),
        mathml=chain_of(_SET),
        single=False,
        syntax=Syntax(
            rules=(("relation", "side (REL side)+ -> relation"),),
            signs={"REL": "/[=<>≤≥≠]/"},
            build={"relation": chain(Relation)},
        ),
    ),
)
