"""Relations that given numbers are asked to make true, and which of them fails, in words."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from fractions import Fraction
from functools import lru_cache

from itembank.items.asks.give import Give
from itembank.items.forms.form_rules import number_node
from itembank.items.forms.number_forms import bare
from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.line import shown_line
from itembank.notation.linear import constant, linear
from itembank.notation.quotients import number, rational
from itembank.notation.value import NotExact, exact

_SAID = {"<": "less than", ">": "more than", "≤": "at most", "≥": "at least", "=": "equal to"}


def holds(relation: t.Relation, at: dict[str, Fraction]) -> bool:
    """Tell whether a relation is true where its letters are worth what `at` says."""
    left = _worth(relation.first, at)
    for op, side in relation.rest:
        right = _worth(side, at)
        if not HOLDS[op](left, right):
            return False
        left = right
    return True


def relations_unmet(ask: Give, shown: Sequence[t.Node], values: Sequence[Fraction]) -> str:
    """Return which of the relations asked for is not true, in words; one of them is not."""
    at = {letter.name: value for letter, value in zip(ask.letters, values, strict=True)}
    relation = next(relation for relation in ask.relations if not holds(relation, at))
    if fault := _outside(ask, relation, shown, at):
        return fault
    left = relation.first
    for op, right in relation.rest:
        a, b = _worth(left, at), _worth(right, at)
        if not HOLDS[op](a, b):
            break
        left = right
    written: dict[t.Node, t.Node] = {
        letter: t.Bracket(node) if isinstance(node, t.Neg | t.Sum | t.Product) else node
        for letter, node in zip(ask.letters, shown, strict=True)
    }
    return _untrue(ask, written, (left, a), op, (right, b))


def _outside(
    ask: Give, relation: t.Relation, shown: Sequence[t.Node], at: dict[str, Fraction]
) -> str:
    """Return how a number is not between two others, or ``""``: the relation says another thing."""
    match relation:
        case t.Relation(low, (("<" | "≤" as first, t.Sym(name)), ("<" | "≤" as second, high))):
            if name not in at or t.symbols(low) or t.symbols(high) or first != second:
                return ""
        case _:
            return ""
    value, ends = at[name], (exact(low), exact(high))
    place = "from {} to {}" if first == "≤" else "between {} and {}"
    written = shown_line(shown[[letter.name for letter in ask.letters].index(name)])
    said = f"{written} is not {place.format(shown_line(low), shown_line(high))}"
    for end, node, than in ((ends[0], low, "less"), (ends[1], high, "more")):
        if value == end and first == "<":
            return f"{said}: it is equal to {shown_line(node)}"
        if value < end if than == "less" else value > end:
            return f"{said}: it is {than} than {shown_line(node)}"
    return ""


def _worth(side: t.Node, at: dict[str, Fraction]) -> Fraction:
    """Return what a side of a relation is worth; the long way takes products of letters."""
    if isinstance(side, t.Sym) and side.name in at:
        return at[side.name]
    if at and not t.symbols(side):
        return _fixed(side)
    try:
        return constant(linear(side, at))
    except NotExact:
        return rational(algebra(side, {name: number(value) for name, value in at.items()}))


@lru_cache(maxsize=256)
def _fixed(side: t.Node) -> Fraction:
    """Return what a side without letters is worth, whatever stands for the letters of others."""
    return _worth(side, {})


HOLDS: dict[str, Callable[[Fraction, Fraction], bool]] = {
    "<": lambda a, b: a < b,
    ">": lambda a, b: a > b,
    "≤": lambda a, b: a <= b,
    "≥": lambda a, b: a >= b,
    "=": lambda a, b: a == b,
    "≠": lambda a, b: a != b,
}
_TURNED = {"<": ">", ">": "<", "≤": "≥", "≥": "≤", "=": "=", "≠": "≠"}


def _untrue(
    ask: Give,
    written: dict[t.Node, t.Node],
    left: tuple[t.Node, Fraction],
    op: str,
    right: tuple[t.Node, Fraction],
) -> str:
    """Return a failed relation in words, the side with what was given first."""
    letters = {letter.name for letter in ask.letters}
    if not t.symbols(left[0]) & letters:
        left, op, right = right, _TURNED[op], left
    (side, worth), (other, _) = left, right
    limit = shown_line(t.replaced(other, written))
    what = shown_line(t.replaced(side, written))
    if side in ask.letters:
        said = f"{shown_line(bare(written[side]))} is"
        if op == "≠":
            return f"the answer has to be another number than {limit}"
    elif op == "=":
        return f"{what} is {shown_line(number_node(worth))}, not {limit}"
    else:
        said = f"{what} is {shown_line(number_node(worth))}, which is"
    return f"{said} {'' if op == '≠' else 'not '}{_SAID.get(op, 'equal to')} {limit}"
