"""Fractions with a bar, and mixed numbers."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from itembank.data_class import dataclass
from itembank.notation.tree.brackets import ungrouped
from itembank.notation.tree.face import Faces, Part, Parts, Rank, Syntax, register_node
from itembank.notation.tree.marked_up import element
from itembank.notation.tree.numbers import Int
from itembank.notation.tree.parsed import RefusedError, start_of
from itembank.notation.tree.spoken import ends_if_followed, said
from itembank.notation.tree.written import grouped, is_simple, refuse, shown_line

if TYPE_CHECKING:
    from itembank.notation.tree import Node
    from itembank.notation.tree.products import Juxt

_NAMES = {
    2: ("half", "halves"),
    3: ("third", "thirds"),
    4: ("quarter", "quarters"),
    5: ("fifth", "fifths"),
    6: ("sixth", "sixths"),
    7: ("seventh", "sevenths"),
    8: ("eighth", "eighths"),
    9: ("ninth", "ninths"),
    10: ("tenth", "tenths"),
    11: ("eleventh", "elevenths"),
    12: ("twelfth", "twelfths"),
    20: ("twentieth", "twentieths"),
    100: ("hundredth", "hundredths"),
    1000: ("thousandth", "thousandths"),
}


@dataclass(frozen=True, slots=True)
class Frac:
    """A fraction with a bar."""

    num: Node
    den: Node


def _frac_line(node: Frac) -> str:
    top = grouped(node.num, "the top of a fraction")
    return f"{top}/{grouped(node.den, 'the bottom of a fraction')}"


def _said_parts(top: int, bottom: int) -> str:
    if bottom not in _NAMES:
        return f"{top} over {bottom}{ends_if_followed('fraction')}"
    singular, many = _NAMES[bottom]
    return f"{top} {singular if top == 1 else many}"


def _frac_words(node: Frac) -> str:
    top, bottom = node.num, node.den
    if type(top) is Int and type(bottom) is Int:
        return _said_parts(top.n, bottom.n)
    if is_simple(top) and is_simple(bottom):
        return f"{said(top)} over {said(bottom)}{ends_if_followed('fraction')}"
    return f"the fraction {said(top)}, over {said(bottom)}, end of fraction"


def _read_frac(parts: list[Any]) -> Part:
    from itembank.notation.tree.negatives import Neg
    from itembank.notation.tree.products import Juxt

    top, bottom = parts[0], parts[2]
    # Schools do not say which of two bars in a row comes first, so neither is guessed.
    if len(parts) > 3:
        message = "More than one / can be read in two ways: put one fraction in brackets."
        raise RefusedError(message, parts[3].start_pos)
    for part in (top, bottom):
        if type(part.node) is Mixed:
            message = (
                f"A mixed number over or under a / needs brackets: write ({shown_line(part.node)})."
            )
            raise RefusedError(message, part.start)
    den = bottom.node.of if type(bottom.node) is Neg else bottom.node
    # 1/2x: half of x to some, one over 2x to others.
    if type(den) is Juxt:
        raise RefusedError(_two_readings(top.node, den), bottom.start)
    return Part(Frac(ungrouped(top), ungrouped(bottom)), top.start)


def _two_readings(top: Node, bottom: Juxt) -> str:
    """Return a sentence that shows both readings of a fraction run on by letters."""
    over = shown_line(top)
    first, *others = map(shown_line, bottom.factors)
    rest = "".join(others)
    return (
        f"{over}/{first}{rest} can be read in two ways: "
        f"write ({over}/{first}){rest} or {over}/({first}{rest})."
    )


register_node(
    Frac,
    Faces(
        rank=Rank.AMOUNT,
        parts=Parts(lambda node: (node.num, node.den), lambda node, below: Frac(*below)),
        line=_frac_line,
        words=_frac_words,
        ends=("fraction",),
        mathml=lambda node: f"<mfrac>{element(node.num)}{element(node.den)}</mfrac>",
        syntax=Syntax(
            rules=(("compact", "juxt (SLASH below)+ -> frac"),),
            signs={"SLASH": '"/"'},
            build={"frac": _read_frac},
        ),
    ),
)


@dataclass(frozen=True, slots=True)
class Mixed:
    """A mixed number, such as 2 3/4: all three parts are positive whole numbers."""

    whole: int
    num: int
    den: int


def _mixed_line(node: Mixed) -> str:
    numbers = (node.whole, node.num, node.den)
    if min(numbers) < 1 or max(numbers) >= 10**60:
        refuse("A mixed number has three positive whole numbers of at most 60 digits.")
    return f"{node.whole} {node.num}/{node.den}"


def _mixed_mathml(node: Mixed) -> str:
    return (
        f"<mrow><mn>{node.whole}</mn><mo>\u2064</mo>"
        f"<mfrac><mn>{node.num}</mn><mn>{node.den}</mn></mfrac></mrow>"
    )


def _read_mixed(parts: list[Any]) -> Part:
    whole, top, bottom = (int(n) for n in re.findall(r"\d+", parts[0]))
    if 0 in (whole, top, bottom):
        raise RefusedError("A mixed number has no part that is 0.", start_of(parts))
    return Part(Mixed(whole, top, bottom), start_of(parts))


register_node(
    Mixed,
    Faces(
        rank=Rank.AMOUNT,
        line=_mixed_line,
        words=lambda node: f"{node.whole} and {_said_parts(node.num, node.den)}",
        ends=("fraction",),
        mathml=_mixed_mathml,
        syntax=Syntax(
            rules=(("base", "MIXED -> mixed"),),
            signs={"MIXED.5": r"/\d+ \d+ ?\/ ?\d+/"},
            build={"mixed": _read_mixed},
        ),
    ),
)
