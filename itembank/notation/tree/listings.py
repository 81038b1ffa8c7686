"""Two or more things in a row: ratios, lists, and answers of which every one is right."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from itembank.notation.tree.face import Faces, Rank, Syntax, register_node
from itembank.notation.tree.line_signs import OR
from itembank.notation.tree.marked_up import row_of
from itembank.notation.tree.parsed import row
from itembank.notation.tree.part_shapes import ROW
from itembank.notation.tree.spoken import has_ended, said, said_row
from itembank.notation.tree.unknowns import Label
from itembank.notation.tree.written import joined, misplaced

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
    """An ordered list, set with commas."""

    parts: tuple[Node, ...]


def _listing_words(node: Listing) -> str:
    """Return things listed; after one that says where it ends, *then* parts it from the next.

    >>> from itembank.notation.tree import Frac, Int, Sym
    >>> from itembank.notation.tree.spoken import words
    >>> words(Listing((Int(1), Int(2)))), words(Listing((Frac(Sym("n"), Int(3)), Int(1))))
    ('1, 2', 'n over 3, end of fraction, then 1')
    """
    phrases = [said(part) for part in node.parts]
    gaps = [" then " if has_ended(phrase) else ", " for phrase in phrases[:-1]]
    return "".join(phrase + gap for phrase, gap in zip(phrases, [*gaps, ""], strict=True))


register_node(
    Listing,
    Faces(
        rank=Rank.LISTING,
        parts=ROW,
        line=lambda node: joined(node.parts, ", ", Rank.CELL, "a part of a list"),
        words=_listing_words,
        mathml=row_of("<mo>,</mo>"),
        single=False,
        syntax=Syntax(
            rules=(("listing", "relation (COMMA relation)+ -> listing"),),
            signs={"COMMA": '","'},
            build={"listing": row(Listing)},
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
