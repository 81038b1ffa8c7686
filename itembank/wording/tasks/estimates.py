"""Estimates whose rounding is said: *by rounding each number to 1 significant figure*.

Every number that is printed is rounded as the words say, halves away from zero, and the sum is
worked out with those. An estimate without such words may be made in several ways, and is left
to a person.
"""

from __future__ import annotations

from collections.abc import Mapping
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

from itembank.notation.tree import (
    Bracket,
    Dec,
    Frac,
    Int,
    Juxt,
    Money,
    Neg,
    Node,
    Percent,
    Power,
    Product,
    Quantity,
    Root,
    Sum,
)
from itembank.notation.value import exact
from itembank.wording.sentences.phrases import COUNTS
from itembank.wording.tasks.arithmetic import Saying
from itembank.wording.tasks.sums import Built, NotBuilt

_NEAREST = {"whole number": 1, "integer": 1, "ten": 10, "10": 10, "hundred": 100, "100": 100}


def _rounded(value: Fraction, words: Mapping[str, str]) -> Fraction:
    """Return a number rounded as the words say.

    >>> str(_rounded(Fraction("0.0348"), {"figures": "1"}))
    '3/100'
    >>> str(_rounded(Fraction("347"), {"nearest": "ten"}))
    '350'
    """
    if nearest := words.get("nearest"):
        unit = Fraction(_NEAREST[nearest])
    else:
        said = words["figures"]
        figures = COUNTS.get(said) or int(said)
        decimal = Decimal(value.numerator) / Decimal(value.denominator)
        unit = Fraction(10) ** (decimal.adjusted() - figures + 1) if value else Fraction(1)
    whole = Decimal((value / unit).numerator) / Decimal((value / unit).denominator)
    return unit * int(whole.quantize(Decimal(1), ROUND_HALF_UP))


def _estimate(words: Mapping[str, str], node: Node) -> Built:
    used: list[int] = []
    made = _with_rounded(node, words, used)
    return made, tuple(used)


def _with_rounded(node: Node, words: Mapping[str, str], used: list[int]) -> Node:
    def again(part: Node) -> Node:
        return _with_rounded(part, words, used)

    match node:
        case Int() | Dec(_, _, ""):
            value = _rounded(exact(node), words)
            used += [value.numerator, value.denominator]
            top = Int(value.numerator)
            return top if value.denominator == 1 else Frac(top, Int(value.denominator))
        case Money(amount, sign):
            return Money(again(amount), sign)
        case Quantity(amount, unit):
            return Quantity(again(amount), unit)
        case Percent(of):
            return Percent(again(of))
        case Neg(of):
            return Neg(again(of))
        case Bracket(of):
            return Bracket(again(of))
        case Root(of, index):
            return Root(again(of), index)
        case Power(base, Int() as exponent):
            return Power(_whole(again(base)), exponent)
        case Frac(top, bottom):
            return Product(_whole(again(top)), (("÷", _whole(again(bottom))),))
        case Sum(first, rest):
            return Sum(again(first), tuple((op, again(term)) for op, term in rest))
        case Product(first, rest):
            return Product(
                _whole(again(first)), tuple((op, _whole(again(term))) for op, term in rest)
            )
        case Juxt((first, *factors)):
            return Product(again(first), tuple(("×", again(factor)) for factor in factors))
    raise NotBuilt("This is not rounded number by number here.")


def _whole(node: Node) -> Node:
    return Bracket(node) if isinstance(node, Sum | Product | Frac) else node


_EACH = r"(?:each|every|all(?: of)? the|the) (?:number|value|amount)s?"
_TO = (
    rf"to (?:(?P<figures>\d|{'|'.join(COUNTS)}) (?:significant (?:figures?|digits?)|s\.?f\.?|sig figs?)"
    rf"|the nearest (?P<nearest>{'|'.join(_NEAREST)}))"
)
_VALUE = r"(?:the (?:value|answer|result)(?: of| to)? |an (?:answer|estimate)(?: of| for| to)? )?"

ESTIMATES = (
    Saying(
        rf"estimate {_VALUE}<NP>,? by (?:first )?rounding {_EACH} {_TO}", _estimate, rounds=True
    ),
    Saying(
        rf"by rounding {_EACH} {_TO},? (?:estimate|find|work out) {_VALUE}<NP>",
        _estimate,
        rounds=True,
    ),
    Saying(rf"round {_EACH} {_TO} (?:to|and) estimate {_VALUE}<NP>", _estimate, rounds=True),
)
