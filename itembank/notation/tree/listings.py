"""Two or more things in a row: ratios, lists, and answers of which every one is right."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from itembank.data_class import dataclass
from itembank.notation.tree.face import Faces, Part, Parts, Rank, Syntax, register_node
from itembank.notation.tree.line_signs import OR
from itembank.notation.tree.marked_up import row_of
from itembank.notation.tree.parsed import row, start_of
from itembank.notation.tree.part_shapes import ROW
from itembank.notation.tree.spoken import has_ended, said, said_row
from itembank.notation.tree.unknowns import Label
from itembank.notation.tree.written import joined, misplaced, refuse

if TYPE_CHECKING:
    from itembank.notation.tree import Node


@dataclass(frozen=True, slots=True)
class Ratio:
    """Two or more parts joined by colons."""

    parts: tuple[Node, ...]


register_node(
    Ratio,
    Faces(
        rank=Rank.SIDE,
        parts=ROW,
        line=lambda node: joined(node.parts, " : ", Rank.EXPRESSION, "a part of a ratio"),
        words=said_row(" to "),
        mathml=row_of('<mo lspace="0.278em" rspace="0.278em">:</mo>'),
        single=False,
        syntax=Syntax(
            rules=(("ratio", "sum (COLON sum)+ -> ratio"),),
            signs={"COLON": '":"'},
            build={"ratio": row(Ratio)},
        ),
    ),
)


@dataclass(frozen=True, slots=True)
class Listing:
    """An ordered list, set with commas.

    In brackets it is the coordinates of a point, (3, -2): two numbers, whose order says which is x.
    """

    parts: tuple[Node, ...]
    brackets: bool = False


def _listing_line(node: Listing) -> str:
    if not node.brackets:
        return joined(node.parts, ", ", Rank.CELL, "a part of a list")
    if len(node.parts) != 2:
        refuse("A point has two coordinates.")
    return f"({joined(node.parts, ', ', Rank.EXPRESSION, 'a coordinate')})"


def _listing_words(node: Listing) -> str:
    """Return things listed; after one that says where it ends, *then* parts it from the next.

    >>> from itembank.notation.tree import Frac, Int, Sym, pair
    >>> from itembank.notation.tree.spoken import words
    >>> words(Listing((Int(1), Int(2)))), words(Listing((Frac(Sym("n"), Int(3)), Int(1))))
    ('1, 2', 'n over 3, end of fraction, then 1')
    >>> words(pair(Int(1), Int(2)))
    'open bracket 1, 2 close bracket'
    """
    phrases = [said(part) for part in node.parts]
    gaps = [" then " if has_ended(phrase) else ", " for phrase in phrases[:-1]]
    listed = "".join(phrase + gap for phrase, gap in zip(phrases, [*gaps, ""], strict=True))
    return f"open bracket {listed} close bracket" if node.brackets else listed


def _listing_mathml(node: Listing) -> str:
    listed = row_of("<mo>,</mo>")(node)
    return f"<mrow><mo>(</mo>{listed}<mo>)</mo></mrow>" if node.brackets else listed


def _read_pair(parts: list[Any]) -> Part:
    return Part(Listing((parts[1].node, parts[3].node), True), start_of(parts))


register_node(
    Listing,
    Faces(
        rank=Rank.LISTING,
        parts=Parts(lambda node: node.parts, lambda node, below: Listing(below, node.brackets)),
        line=_listing_line,
        words=_listing_words,
        mathml=_listing_mathml,
        single=False,
        syntax=Syntax(
            rules=(
                ("listing", "relation (COMMA relation)+ -> listing"),
                ("listing", "LPAR sum COMMA sum RPAR -> pair"),
            ),
            signs={"COMMA": '","', "LPAR": '"("', "RPAR": '")"'},
            joins="(",
            build={"listing": row(Listing), "pair": _read_pair},
        ),
    ),
)


@dataclass(frozen=True, slots=True)
class Either:
    """Two or more answers joined by *or*, as in x = −4 or x = 7: every one of them is right.

    A part is a relation, an expression, or a list of relations (x = 1, y = 2).
    """

    parts: tuple[Node, ...]


def _either_line(node: Either) -> str:
    place = "one of several answers"
    for part in node.parts:
        if type(part) is Label:
            misplaced(part, place)
    return joined(node.parts, " or ", Rank.LISTING, place)


register_node(
    Either,
    Faces(
        rank=Rank.EITHER,
        parts=ROW,
        line=_either_line,
        words=said_row(", or "),
        mathml=row_of("<mtext>\u00a0or\u00a0</mtext>"),
        single=False,
        syntax=Syntax(
            rules=(("either", "listing (OR listing)+ -> either"),),
            signs={"OR.6": f"/{OR}/"},
            build={"either": row(Either)},
        ),
    ),
)
