"""What one road finds out about a key."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from itembank.errors import CheckFailed
from itembank.items.forms import decimal_node, money_node, number_node
from itembank.notation.clock import clock_time
from itembank.notation.line import shown_line
from itembank.notation.mixed_units import split
from itembank.notation.tree import (
    ClockTime,
    Dec,
    Listing,
    MixedUnits,
    Money,
    Neg,
    Node,
    Percent,
    Quantity,
    Ratio,
)
from itembank.notation.units import UNITS

_DECIMAL = Dec("0", "5")


class WrongKey(CheckFailed):
    """The key of an item is not what the printed question comes to."""


@dataclass(frozen=True, slots=True)
class Finding:
    """What a road makes of a question: its own answer, and how the key differs from it.

    `answer` is a tree or words; the empty text where the road only checks the key. `fault` is
    empty when the key is right, otherwise a sentence without its capital and its full stop.
    """

    answer: Node | str = ""
    fault: str = ""

    @property
    def shown(self) -> str:
        """Return the answer as people may read it."""
        return self.answer if isinstance(self.answer, str) else text(self.answer)


def found(answer: Node | str, key: Node, right: bool, parting: str = "") -> Finding:
    """Return the finding of a road that came to `answer`; `parting` says where the key parts.

    >>> from itembank.notation import parse
    >>> found(parse("5/6"), parse("2/5"), False).fault
    'it comes to 5/6, the key says 2/5'
    """
    if right:
        return Finding(answer)
    shown = Finding(answer).shown
    comes = f"it comes to {shown}, the key says" if shown else "it does not come to"
    return Finding(answer, f"{comes} {text(key)}" + (f"; {parting}" if parting else ""))


def text(node: Node) -> str:
    """Return a tree as people may read it: its line, or failing that its content.

    >>> from itembank.notation.tree import frac
    >>> text(frac(1, 2))
    '1/2'
    """
    return shown_line(node)


def values_node(values: tuple[Fraction, ...], like: Node, proportional: bool = False) -> Node:
    """Return rational numbers as one number, a list or a ratio, in the units of the key.

    >>> from itembank.notation import parse
    >>> text(values_node((Fraction(5, 6), Fraction(-2)), parse("1/2, 3")))
    '5/6, -2'
    >>> text(values_node((Fraction(25, 18),), parse("60 km/h")))
    '5 km/h'
    """
    parts = like.parts if isinstance(like, Listing | Ratio) else (like,)
    if len(parts) != len(values):
        parts = parts[:1] * len(values)
    nodes = tuple(like_the_key(value, part) for value, part in zip(values, parts, strict=True))
    if len(nodes) == 1:
        return nodes[0]
    return Ratio(nodes) if proportional else Listing(nodes)


def like_the_key(value: Fraction, key: Node) -> Node:
    """Return a number in the unit, or as the decimal, that the key is written in."""
    match key:
        case Neg(of):
            return like_the_key(value, of)
        case Money(_, "£") if (value * 100).denominator == 1 and value >= 0:
            return money_node(value)
        case MixedUnits() if (several := split(value, key)) is not None:
            return several
        case ClockTime() if value.denominator == 1 and value % 60 == 0:
            return clock_time(int(value), key)
        case Quantity(_, unit):
            amount = like_the_key(value / UNITS[unit].size, _DECIMAL)
            negative = isinstance(amount, Neg)
            shown = Quantity(amount.of if isinstance(amount, Neg) else amount, unit)
            return Neg(shown) if negative else shown
        case Percent():
            amount = like_the_key(value * 100, _DECIMAL)
            return Neg(Percent(amount.of)) if isinstance(amount, Neg) else Percent(amount)
        case Dec():
            exact = decimal_node(value)
            bare = exact.of if isinstance(exact, Neg) else exact
            if not (isinstance(bare, Dec) and bare.recurring):
                return exact
    return number_node(value)


def ordinal(n: int) -> str:
    """Return the word for the place of a thing in a list.

    >>> ordinal(1), ordinal(2), ordinal(13), ordinal(22)
    ('1st', '2nd', '13th', '22nd')
    """
    ending = "th" if n % 100 in (11, 12, 13) else {1: "st", 2: "nd", 3: "rd"}.get(n % 10, "th")
    return f"{n}{ending}"
