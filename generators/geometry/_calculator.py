"""Answers that are rounded: how the prompt asks for them, their digits, and their last steps."""

from __future__ import annotations

from fractions import Fraction
from math import isqrt
from typing import Literal, NamedTuple

from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Step
from itembank.notation import tree as t
from itembank.notation.units import UNITS

PI = Fraction("3.141592653589793238462643383279502884")
"""π to 36 places: keys are made with it, and proved from closer bounds than that."""


class Accuracy(NamedTuple):
    """How far an answer is rounded: to so many places or figures, or to the nearest unit."""

    detail: Literal["places", "figures", "nearest"]
    amount: int

    def places(self, value: Fraction) -> int:
        """Return how many decimal places the rounded value is written with.

        >>> Accuracy("figures", 3).places(Fraction(123, 10)), PLACE.places(Fraction(5))
        (1, 1)
        """
        if self.detail == "places":
            return self.amount
        if self.detail == "nearest":
            return 0
        whole = len(str(int(value)))
        return max(self.amount - whole, 0)

    def rounded(self, value: Fraction) -> Fraction:
        """Return a positive value rounded, halves up.

        >>> PLACE.rounded(Fraction("2.25")), Accuracy("figures", 2).rounded(Fraction(345))
        (Fraction(23, 10), Fraction(350, 1))
        """
        step = Fraction(1, 10 ** self.places(value))
        if self.detail == "figures":
            step = Fraction(10) ** (len(str(int(value))) - self.amount)
        return (value / step + Fraction(1, 2)).__floor__() * step

    def node(self, value: Fraction, unit: str) -> t.Node:
        """Return a value rounded, with its unit: 22.0 keeps its nought."""
        return with_places(self.rounded(value), self.places(value), unit)

    def said(self, unit: str) -> str:
        """Return how a prompt asks for it.

        >>> PLACE.said("m")
        'Give your answer to 1 decimal place.'
        """
        return f"Give your answer to {self.called(unit)}."

    def called(self, unit: str) -> str:
        """Return what it is called.

        >>> PLACES.called("m"), FIGURES.called("m"), NEAREST.called("cm^2")
        ('2 decimal places', '3 significant figures', 'the nearest square centimetre')
        """
        if self.detail == "nearest":
            return f"the nearest {UNITS[unit].singular}"
        kind = "decimal place" if self.detail == "places" else "significant figure"
        return f"{self.amount} {kind}" + "s" * (self.amount > 1)

    def steps(self, value: Fraction, unit: str) -> tuple[Step, Step]:
        """Return the last steps: more digits than asked, as a calculator shows, and the key."""
        shown = self.places(value) + 2
        cut = Fraction(int(value * 10**shown), 10**shown)
        return (
            Step("Use a calculator, and write down more digits.", with_places(cut, shown, unit)),
            Step(f"Round to {self.called(unit)}.", self.node(value, unit)),
        )


PLACE = Accuracy("places", 1)
PLACES = Accuracy("places", 2)
FIGURES = Accuracy("figures", 3)
NEAREST = Accuracy("nearest", 1)


def with_places(value: Fraction, places: int, unit: str) -> t.Node:
    """Return a positive number written with just so many decimal places, and its unit.

    >>> from itembank.notation.line import line
    >>> line(with_places(Fraction(22), 1, "m"))
    '22.0 m'
    """
    whole, part = divmod(int(value * 10**places), 10**places)
    node = t.Dec(str(whole), f"{part:0{places}d}") if places else t.Int(whole)
    return t.Quantity(node, unit) if unit else node


def amount(value: Fraction | int, unit: str) -> t.Node:
    """Return an exact value with its unit.

    >>> from itembank.notation.line import line
    >>> line(amount(Fraction(7, 2), "cm"))
    '3.5 cm'
    """
    number = decimal_node(value)
    return t.Quantity(number, unit) if unit else number


def of_pi(value: Fraction | int, unit: str) -> t.Node:
    """Return so many times π, with its unit.

    >>> from itembank.notation.line import line
    >>> line(of_pi(10, "cm")), line(of_pi(1, "m")), line(of_pi(Fraction(49, 4), "cm^2"))
    ('10π cm', 'π m', '12.25π cm^2')
    """
    pi = t.Sym("π")
    return t.Quantity(pi if value == 1 else t.juxt(decimal_node(value), pi), unit)


def root_of(value: Fraction) -> Fraction:
    """Return a square root, cut off after 30 decimal places.

    >>> root_of(Fraction(9)), float(root_of(Fraction(2)))
    (Fraction(3, 1), 1.4142135623730951)
    """
    return Fraction(isqrt(int(value * 10**60)), 10**30)
