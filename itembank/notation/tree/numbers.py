"""Numbers that are written with digits alone: whole numbers and decimals."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from itembank.data_class import dataclass
from itembank.notation.tree.face import Faces, Part, Rank, Syntax, register_node
from itembank.notation.tree.line_signs import DOT, MAX_DIGITS
from itembank.notation.tree.marked_up import digits
from itembank.notation.tree.parsed import start_of
from itembank.notation.tree.written import refuse

if TYPE_CHECKING:
    from itembank.notation.tree import Node

_TOO_LARGE = 10**MAX_DIGITS


@dataclass(frozen=True, slots=True)
class Int:
    """A whole number, zero or more. A negative number is :class:`Neg` of one."""

    n: int


def _int_line(node: Int) -> str:
    if not 0 <= node.n < _TOO_LARGE:
        refuse(f"A whole number here is 0 or more, of at most {MAX_DIGITS} digits.")
    return str(node.n)


register_node(
    Int,
    Faces(
        rank=Rank.SIMPLE,
        line=_int_line,
        words=lambda node: str(node.n),
        mathml=lambda node: f"<mn>{digits(str(node.n))}</mn>",
        syntax=Syntax(
            rules=(("simple", "INT -> int"),),
            signs={"INT.1": r"/\d+/"},
            build={"int": lambda parts: Part(Int(int(parts[0])), start_of(parts))},
        ),
    ),
)


@dataclass(frozen=True, slots=True)
class Dec:
    """A decimal as written: digits before the point, after it, and the recurring block.

    It has digits on both sides of the point. ``Dec("0", "1", "6")`` is 0.1666…, with a dot over
    the 6.
    """

    whole: str
    places: str = ""
    recurring: str = ""


def _dec_line(node: Dec) -> str:
    whole, places, block = node.whole, node.places, node.recurring
    figures = whole + places + block
    if not (whole and places + block and figures.isascii() and figures.isdigit()):
        refuse("A decimal needs digits before and after its point.")
    if len(figures) > MAX_DIGITS:
        refuse(f"A number may have at most {MAX_DIGITS} digits.")
    if len(block) > 1:
        block = f"{block[0]}{DOT}{block[1:]}"
    return f"{whole}.{places}{block}{DOT if block else ''}"


def _dec_words(node: Dec) -> str:
    block = node.recurring
    phrase = f"{node.whole} point {' '.join(node.places)}".rstrip()
    if not block:
        return phrase
    # One recurring digit is plainly the last; a longer block is said twice to mark it off.
    if len(block) == 1:
        return f"{phrase} {block} recurring"
    return f"{phrase} {' '.join(block)}, with {' '.join(block)} recurring"


def _dotted(digit: str) -> str:
    return f'<mover accent="true"><mn>{digit}</mn><mo>˙</mo></mover>'


def _dec_mathml(node: Dec) -> str:
    whole = digits(node.whole)
    block = node.recurring
    if not block:
        return f"<mn>{whole}.{node.places}</mn>"
    # In Britain dots stand over the first and the last digit of the block only.
    between = f"<mn>{block[1:-1]}</mn>" if len(block) > 2 else ""
    last = _dotted(block[-1]) if len(block) > 1 else ""
    return f"<mrow><mn>{whole}.{node.places}</mn>{_dotted(block[0])}{between}{last}</mrow>"


def _read_dec(parts: list[Any]) -> Part:
    whole, _, after = parts[0].partition(".")
    # A pupil may leave out the nought of .5; written back it has one.
    node: Node = Dec(whole or "0", after)
    if DOT in after:
        first = after.index(DOT) - 1
        node = Dec(whole or "0", after[:first], after[first:].replace(DOT, ""))
    return Part(node, start_of(parts))


register_node(
    Dec,
    Faces(
        rank=Rank.SIMPLE,
        line=_dec_line,
        words=_dec_words,
        mathml=_dec_mathml,
        syntax=Syntax(
            rules=(("simple", "DEC -> dec"),),
            signs={"DEC.4": rf"/\d*\.(?:\d*\d{DOT}(?:\d*\d{DOT})?|\d+)/"},
            build={"dec": _read_dec},
        ),
    ),
)
