"""What one road finds out about a key."""

from __future__ import annotations

from fractions import Fraction

from itembank.data_class import dataclass
from itembank.errors import CheckFailed
from itembank.items.forms.form_rules import decimal_node, money_node, number_node
from itembank.notation import tree as t
from itembank.notation.clock import clock_time
from itembank.notation.line import shown_line
from itembank.notation.mixed_units import split
from itembank.notation.units import UNITS

_DECIMAL = t.Dec("0", "5")


class WrongKey(CheckFailed):
    """The key of an item is not what the printed question comes to."""


@dataclass(frozen=True, slots=True)
class Finding:
    """What a road makes of a question: its own answer, and how the key differs from it.

    `answer` is a tree or words; the empty text where the road only checks the key. `fault` is
    empty when the key is right, otherwise a sentence without its capital and its full stop.
    """

    answer: t.Node | str = ""
    fault: str = ""

    @property
    def shown(self) -> str:
        """Return the answer as people may read it."""
        return self.answer if isinstance(self.answer, str) else text(self.answer)


def found(answer: t.Node | str, key: t.Node, right: bool, parting: str = "") -> Finding:
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


def text(node: t.Node) -> str:
    """Return a tree as people may read it: its line, or failing that its content.

    >>> from itembank.notation.tree import frac
    >>> text(frac(1, 2))
    '1/2'
    """
    return shown_line(node)


def values_node(values: tuple[Fraction, ...], like: t.Node, proportional: bool = False) -> t.Node:
    """Return rational numbers as one number, a list or a ratio, in the units of the key.

    >>> from itembank.notation import parse
    >>> text(values_node((Fraction(5, 6), Fraction(-2)), parse("1/2, 3")))
    '5/6, -2'
    >>> text(values_node((Fraction(25, 18),), parse("60 km/h")))
    '5 km/h'
    """
    parts = like.parts if isinstance(like, t.Listing | t.Ratio) else (like,)
    # The key has another number of parts: its first one shows the unit for all.
    if len(parts) != len(values):
        parts = parts[:1] * len(values)
    nodes = tuple(like_the_key(value, part) for value, part in zip(values, parts, strict=True))
    if len(nodes) == 1:
        return nodes[0]
    return t.Ratio(nodes) if proportional else t.Listing(nodes)


def like_the_key(value: Fraction, key: t.Node) -> t.Node:
    """Return a number in the unit, or as the decimal, that the key is written in."""
    match key:
        case t.Neg(of):
            return like_the_key(value, of)
        case t.Money(_, "£") if (value * 100).denominator == 1 and value >= 0:
            return money_node(value)
        case t.MixedUnits() if (several := split(value, key)) is not None:
            return several
        case t.ClockTime() if value.denominator == 1 and value % 60 == 0:
            return clock_time(int(value), key)
        case t.Quantity(_, unit):
            amount = like_the_key(value / UNITS[unit].size, _DECIMAL)
            negative = isinstance(amount, t.Neg)
            shown = t.Quantity(amount.of if isinstance(amount, t.Neg) else amount, unit)
            return t.Neg(shown) if negative else shown
        case t.Percent():
            amount = like_the_key(value * 100, _DECIMAL)
            return t.Neg(t.Percent(amount.of)) if isinstance(amount, t.Neg) else t.Percent(amount)
        case t.Dec():
            exact = decimal_node(value)
            bare = exact.of if isinstance(exact, t.Neg) else exact
            # A decimal that goes on for ever hides what the number is; 1/3 says it.
            if not (isinstance(bare, t.Dec) and bare.recurring):
                return exact
    return number_node(value)


def ordinal(n: int) -> str:
    """Return the word for the place of a thing in a list.

    >>> ordinal(1), ordinal(2), ordinal(13), ordinal(22)
    ('1st', '2nd', '13th', '22nd')
    """
    ending = "th" if n % 100 in (11, 12, 13) else {1: "st", 2: "nd", 3: "rd"}.get(n % 10, "th")
    return f"{n}{ending}"
