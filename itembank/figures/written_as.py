"""Amounts that a figure shows, written as what stands on it is written.

>>> from itembank.notation.line import line
>>> from itembank.notation.parse import parse
>>> line(in_unit(Fraction(3, 2), unit_of(parse("£6"))))
'£1.50'
"""

from __future__ import annotations

from fractions import Fraction

from itembank.notation import tree as t
from itembank.notation.units import CURRENCY, UNITS, unit_known


def unit_of(node: t.Node) -> str:
    """Return the unit or sign of money of an amount, ``""`` where it is a bare number.

    >>> from itembank.notation.parse import parse
    >>> [unit_of(parse(amount)) for amount in ("3 kg", "£6", "50p", "€4", "7")]
    ['kg', '£', '£', '€', '']
    """
    if isinstance(node, t.Quantity):
        return node.unit
    if isinstance(node, t.Money):
        return "£" if node.sign == "p" else node.sign
    return ""


def measures(node: t.Node) -> str:
    """Return what an amount measures: amounts of one figure are compared only if it is the same.

    >>> from itembank.notation.parse import parse
    >>> [measures(parse(amount)) for amount in ("3 kg", "20 g", "£6", "50p", "25%", "7")]
    ['mass', 'mass', 'money', 'money', 'per cent', '']
    """
    if isinstance(node, t.Percent):
        return "per cent"
    unit = unit_of(node)
    return unit_known(unit).dimension if unit else ""


def written_as(value: Fraction, *like: t.Node) -> t.Node:
    """Return a number as whole number, as decimal where others are decimals, else as fraction.

    >>> from itembank.notation.line import line
    >>> line(written_as(Fraction(1, 4), t.Dec("0", "5")))
    '0.25'
    >>> line(written_as(Fraction(5, 4), t.Int(1)))
    '1 1/4'
    """
    if value.denominator == 1:
        return t.num(value.numerator)
    size = abs(value)
    if any(isinstance(part, t.Dec) for node in like for part in t.walk(node)):
        decimal = _decimal(size)
        if decimal is not None:
            return decimal if value > 0 else t.Neg(decimal)
    whole, rest = divmod(size, 1)
    top, bottom = rest.numerator, rest.denominator
    node = t.Mixed(int(whole), top, bottom) if whole else t.frac(top, bottom)
    return node if value > 0 else t.Neg(node)


def _decimal(size: Fraction, least: int = 1) -> t.Dec | None:
    places = next((n for n in range(least, 7) if (size * 10**n).denominator == 1), 0)
    if not places:
        return None
    digits = str(int(size * 10**places)).rjust(places + 1, "0")
    return t.Dec(digits[:-places], digits[-places:])


_DECIMALS = t.Dec("0", "5")


def in_unit(value: Fraction, unit: str) -> t.Node:
    """Return an amount, given in the base unit of its dimension, in a unit or as money.

    Decimals where they end, fractions where they do not; pence always with two places.
    """
    if unit in CURRENCY:
        whole = value.denominator == 1
        amount = t.Int(int(value)) if whole else _decimal(value, 2) or written_as(value)
        return t.Money(amount, unit)
    if unit:
        # In whole numbers, which is far quicker where it comes out whole.
        size = UNITS[unit].size
        top, bottom = value.numerator * size.denominator, value.denominator * size.numerator
        if top % bottom == 0:
            return t.Quantity(t.num(top // bottom), unit)
        return t.Quantity(written_as(Fraction(top, bottom), _DECIMALS), unit)
    return written_as(value)


def of_pi(value: Fraction, unit: str) -> t.Node:
    """Return so many times π, given in the base unit of its dimension, in a unit or bare.

    >>> from itembank.notation.line import line
    >>> line(of_pi(Fraction(9), "m^2")), line(of_pi(Fraction(1, 4), ""))
    ('9π m^2', 'π/4')
    """
    pi = t.Sym("π")
    size = value / UNITS[unit].size if unit else value
    amount: t.Node = pi if size == 1 else t.juxt(in_unit(size, ""), pi)
    if size.denominator != 1:
        top, bottom = size.numerator, size.denominator
        amount = t.Frac(pi if top == 1 else t.juxt(t.Int(top), pi), t.Int(bottom))
    return t.Quantity(amount, unit) if unit else amount
