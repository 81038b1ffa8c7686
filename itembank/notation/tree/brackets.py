"""Round brackets that are printed."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from itembank.data_class import dataclass
from itembank.notation.tree.face import Faces, Part, Rank, Syntax, register_node
from itembank.notation.tree.marked_up import body
from itembank.notation.tree.parsed import start_of
from itembank.notation.tree.part_shapes import OF
from itembank.notation.tree.spoken import said
from itembank.notation.tree.written import text_of, unconfined

if TYPE_CHECKING:
    from itembank.notation.tree import Node


@dataclass(frozen=True, slots=True)
class Bracket:
    """Round brackets that are printed."""

    of: Node


def ungrouped(part: Part) -> Node:
    """Return a tree without the brackets that only say what a bar or a root covers."""
    return part.node.of if type(part.node) is Bracket else part.node


def _line(node: Bracket) -> str:
    inside = text_of(unconfined(node.of), Rank.EXPRESSION, "the inside of a bracket")
    return f"({inside})"


def _read(parts: list[Any]) -> Part:
    return Part(Bracket(parts[1].node), start_of(parts))


register_node(
    Bracket,
    Faces(
        rank=Rank.BASE,
        parts=OF,
        line=_line,
        words=lambda node: f"open bracket {said(node.of)} close bracket",
        mathml=lambda node: f"<mrow><mo>(</mo>{body(node.of)}<mo>)</mo></mrow>",
        syntax=Syntax(
            rules=(("group", "LPAR sum RPAR"),),
            signs={"LPAR": '"("', "RPAR": '")"'},
            joins="(",
            build={"group": _read},
        ),
    ),
)
