"""Factors side by side, and factors joined by ×, ÷ and *of*."""

from __future__ import annotations

import re
from itertools import pairwise
from typing import TYPE_CHECKING, Literal, TypeAlias

from itembank.data_class import dataclass
from itembank.notation.tree.brackets import Bracket
from itembank.notation.tree.face import (
    Faces,
    Part,
    Parts,
    Rank,
    Syntax,
    kept_until_registered,
    register_node,
)
from itembank.notation.tree.fractions import Frac, Mixed
from itembank.notation.tree.grammar import pence_sign
from itembank.notation.tree.line_signs import GLUED_UNIT, OF, OR, ROOT_WORD, TRIG_WORD
from itembank.notation.tree.marked_up import body, chain_of
from itembank.notation.tree.numbers import Dec, Int
from itembank.notation.tree.parsed import RefusedError, chain
from itembank.notation.tree.part_shapes import CHAIN
from itembank.notation.tree.powers import Power, Root
from itembank.notation.tree.spoken import said, said_chain
from itembank.notation.tree.walking import symbols
from itembank.notation.tree.written import chained, pence_here, refuse, shown_line, text_of

if TYPE_CHECKING:
    from itembank.notation.tree import Node

ProductOp: TypeAlias = Literal["×", "÷", "of"]

_FACTOR = "a factor side by side"


@dataclass(frozen=True, slots=True)
class Juxt:
    """Factors written side by side, as in 3x or 2(x + 1); binds tighter than × and ÷.

    Each of the two or more factors is a number, letter, box, power, root or bracket. One that
    starts with a digit may only lead or follow a bracket. A fraction or mixed number may lead
    where a letter or box comes later and no digit comes next: ``(3/4)x``. One that would read
    as a unit, as pence or as the word *of* is refused.
    """

    factors: tuple[Node, ...]


@kept_until_registered
def _misread(pence: bool) -> re.Pattern[str]:
    words = [OF, OR, ROOT_WORD, TRIG_WORD, *([pence_sign()] if pence else []), GLUED_UNIT]
    return re.compile("|".join(words))


def _juxt_line(node: Juxt) -> str:
    if len(node.factors) < 2:
        refuse("Factors side by side must be two or more.")
    first, *rest = node.factors
    head = text_of(first, Rank.FACTOR, _FACTOR, also=(Frac, Mixed))
    texts = [text_of(factor, Rank.FACTOR, _FACTOR) for factor in rest]
    # Brackets round a leading fraction only group it, so printed ones show as a second pair.
    groups = leads_letters(first, rest)
    if type(first) in (Frac, Mixed) and not groups:
        refuse(f"The fraction {head} can only stand in front of a letter.")
    all_texts = [f"({head})" if groups else head, *texts]
    for before, text, factor in zip(all_texts, texts, node.factors, strict=False):
        if text[0].isdigit() and type(factor) is not Bracket:
            refuse(f"{before} and {text} cannot stand side by side without a sign.")
    text = "".join(all_texts)
    # Written close up, letters may come to be a unit or a word: 5 × k × g would be 5kg.
    if misread := _misread(pence_here()).search(text):
        refuse(f"{text} would be read with {misread.group()!r} as one word; change a letter.")
    return text


def leads_letters(first: Node, rest: list[Node]) -> bool:
    """Tell whether `first`, its brackets taken off, is a fraction in front of letters.

    >>> from itembank.notation.tree import Sym, frac
    >>> leads_letters(Bracket(frac(3, 4)), [Sym("x")])
    True
    >>> leads_letters(Bracket(frac(3, 4)), [Bracket(frac(5, 6))])
    False
    """
    while type(first) is Bracket:
        first = first.of
    if type(first) not in (Frac, Mixed):
        return False
    # With a digit next, as in (3/4)5x, the bracket reads back as a printed one.
    after = rest[0].base if type(rest[0]) is Power else rest[0]
    return type(after) not in (Int, Dec) and any(symbols(factor) for factor in rest)


def _juxt_words(node: Juxt) -> str:
    """Return factors side by side; a root of a number after another is short.

    >>> _juxt_words(Juxt((Int(5), Root(Int(2), 2))))
    '5 root 2'
    """
    phrases = [said(node.factors[0])]
    for factor in node.factors[1:]:
        if isinstance(factor, Root) and factor.index == 2 and isinstance(factor.of, Int):
            phrases.append(f"root {said(factor.of)}")
        else:
            phrases.append(said(factor))
    return " ".join(phrases)


def _read_juxt(parts: list[Part]) -> Part:
    for before, after in pairwise(parts):
        if type(before.node) is Mixed or type(after.node) is Mixed:
            message = "A mixed number beside another factor needs brackets, as in (2 1/2)x."
            raise RefusedError(message, after.start)
        inner = after.node.base if type(after.node) is Power else after.node
        # x3 is a slip for 3x or for x^3, and 2 3 for 23 or 2 × 3.
        if type(inner) in (Int, Dec) and type(before.node) is not Bracket:
            two = f"{shown_line(before.node)} and {shown_line(after.node)}"
            message = f"{two} stand side by side: write a sign between, or the number first."
            raise RefusedError(message, after.start)
    first, *rest = (part.node for part in parts)
    if type(first) is Bracket and leads_letters(first, rest):
        first = first.of
    return Part(Juxt((first, *rest)), parts[0].start)


register_node(
    Juxt,
    Faces(
        rank=Rank.AMOUNT,
        parts=Parts(lambda node: node.factors, lambda node, below: Juxt(below)),
        operation=True,
        line=_juxt_line,
        words=_juxt_words,
        mathml=lambda node: "<mo>\u2062</mo>".join([body(factor) for factor in node.factors]),
        single=False,
        syntax=Syntax(rules=(("juxt", "factor factor+ -> juxt"),), build={"juxt": _read_juxt}),
    ),
)


@dataclass(frozen=True, slots=True)
class Product:
    """Two or more factors joined by ×, ÷ and *of*, read from left to right."""

    first: Node
    rest: tuple[tuple[ProductOp, Node], ...]


_LINE = {"×": " × ", "÷": " ÷ ", "of": " of "}
_SAID = {"×": "times", "÷": "divided by", "of": "of"}
_MEDIUM = '<mo lspace="0.222em" rspace="0.222em">'
_SET = {"×": f"{_MEDIUM}×</mo>", "÷": f"{_MEDIUM}÷</mo>", "of": "<mtext>\u00a0of\u00a0</mtext>"}


def _product_line(node: Product) -> str:
    return chained(node.first, node.rest, _LINE, Rank.SIGNED, "a factor of a product")


register_node(
    Product,
    Faces(
        rank=Rank.TERM,
        parts=CHAIN,
        operation=True,
        line=_product_line,
        words=said_chain(_SAID),
        mathml=chain_of(_SET),
        single=False,
        syntax=Syntax(
            rules=(("product", "unary ((TIMES | DIVIDE | OF) unary)+ -> product"),),
            signs={"TIMES": '"×"', "DIVIDE": '"÷"', "OF.6": f"/{OF}/"},
            build={"product": chain(Product)},
        ),
    ),
)
