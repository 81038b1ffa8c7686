"""Estimates whose rounding is said: *by rounding each number to 1 significant figure*.

Every number that is printed is rounded as the words say, halves away from zero, and the sum is
worked out with those. An estimate without such words may be made in several ways, and is left
to a person.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from math import floor

from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.wording.sentences.phrases import COUNTS
from itembank.wording.tasks.sayings.arithmetic import Saying
from itembank.wording.tasks.sums.sums import Built, NotBuilt

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
        if not figures:
            raise NotBuilt("A number is rounded to 1 significant figure or more.")
        unit = Fraction(10) ** (_first_place(value) - figures + 1)
    # Numbers that are printed have no minus here, so that to the floor is down.
    return unit * floor(value / unit + Fraction(1, 2))


def _first_place(value: Fraction) -> int:
    """Return the power of ten of a number's first digit.

    >>> _first_place(Fraction(347)), _first_place(Fraction("0.0348"))
    (2, -2)
    """
    # Of a number of so many digits over another, the first digit is there or one place lower.
    place = len(str(value.numerator)) - len(str(value.denominator))
    return place if value >= Fraction(10) ** place else place - 1


def _estimate(words: Mapping[str, str], node: t.Node) -> Built:
    used: list[int] = []
    made = _with_rounded(node, words, used)
    return made, tuple(used)


def _with_rounded(node: t.Node, words: Mapping[str, str], used: list[int]) -> t.Node:
    def again(part: t.Node) -> t.Node:
        return _with_rounded(part, words, used)

    match node:
        case t.Int() | t.Dec(_, _, ""):
            value = _rounded(exact(node), words)
            used += [value.numerator, value.denominator]
            top = t.Int(value.numerator)
            return top if value.denominator == 1 else t.Frac(top, t.Int(value.denominator))
        case t.Money(amount, sign):
            return t.Money(again(amount), sign)
        case t.Quantity(amount, unit):
            return t.Quantity(again(amount), unit)
        case t.Percent(of):
            return t.Percent(again(of))
        case t.Neg(of):
            return t.Neg(again(of))
        case t.Bracket(of):
            return t.Bracket(again(of))
        case t.Root(of, index):
            return t.Root(again(of), index)
        case t.Power(base, t.Int() as exponent):
            return t.Power(_whole(again(base)), exponent)
        case t.Frac(top, bottom):
            return t.Product(_whole(again(top)), (("÷", _whole(again(bottom))),))
        case t.Sum(first, rest):
            return t.Sum(again(first), tuple((op, again(term)) for op, term in rest))
        case t.Product(first, rest):
            return t.Product(
                _whole(again(first)), tuple((op, _whole(again(term))) for op, term in rest)
            )
        case t.Juxt((first, *factors)):
            return t.Product(again(first), tuple(("×", again(factor)) for factor in factors))
    raise NotBuilt("This is not rounded number by number here.")


def _whole(node: t.Node) -> t.Node:
    return t.Bracket(node) if isinstance(node, t.Sum | t.Product | t.Frac) else node


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
