"""Rounding on whole numbers: a number is so many units of its last decimal place."""

from __future__ import annotations

from fractions import Fraction
from typing import NamedTuple

from generators.number._writing import exact_decimal
from itembank.items.item import Misconception
from itembank.notation import tree as t

CUTS_OFF = Misconception(
    "number.rounding-cuts-off",
    "cuts the number off instead of rounding",
    "How far is the number from the one below, and how far from the one above?",
)
ALWAYS_UP = Misconception(
    "number.rounding-always-up",
    "rounds up whatever the next digit is",
    "How far is the number from the one below, and how far from the one above?",
)
WRONG_PLACE = Misconception(
    "number.rounding-wrong-place",
    "rounds to another place than is asked",
    "Which place does the question ask for? Which digit is in it?",
)
DROPS_NOUGHTS = Misconception(
    "number.rounding-drops-the-noughts",
    "leaves out the noughts that keep the place",
    "Is your answer about as large as the number you started with?",
)
IN_STEPS = Misconception(
    "number.rounding-in-steps",
    "rounds one digit at a time from the end",
    "Is the number more or less than halfway to the next one?",
)
NO_CARRY = Misconception(
    "number.rounding-does-not-carry",
    "writes 10 in the last place instead of carrying",
    "Is your answer near the number you started with? What is 1 more than 9 in a column?",
)
LEADING_NOUGHTS = Misconception(
    "number.rounding-counts-leading-noughts",
    "counts noughts at the front as figures",
    "Which is the first digit that is not a nought?",
)
COUNTS_PLACES = Misconception(
    "number.rounding-counts-places-for-figures",
    "counts figures from the decimal point",
    "Which is the first significant figure? Where do you start counting?",
)
SKIPS_NOUGHTS = Misconception(
    "number.rounding-skips-inner-noughts",
    "does not count a nought between other digits",
    "Does a nought between two figures hold a place?",
)
OTHER_WAY = Misconception(
    "number.rounding-divides-the-other-way",
    "divides the denominator by the numerator",
    "Is the fraction more or less than 1?",
)
REMAINDER = Misconception(
    "number.rounding-remainder-as-decimal",
    "writes the remainder as the decimal",
    "What is left over: is it that many tenths for each, or has it to be shared out too?",
)
TOO_EARLY = Misconception(
    "number.rounding-too-early",
    "rounds the two numbers before multiplying",
    "Does the question ask for an estimate, or for an answer that is rounded at the end?",
)


class Number(NamedTuple):
    """A number as `units` of its last decimal place; without places it is a whole number."""

    units: int
    places: int

    @property
    def value(self) -> Fraction:
        """Return what it is worth."""
        return Fraction(self.units, 1) / Fraction(10) ** self.places

    @property
    def node(self) -> t.Node:
        """Return it as it is printed, with all its places; fewer than none are noughts."""
        if self.places <= 0:
            return t.num(self.units * 10**-self.places)
        return exact_decimal(self.units, self.places)

    @property
    def said(self) -> str:
        """Return it as it stands in a sentence; long whole numbers in groups of three digits."""
        if self.places > 0:
            whole, rest = divmod(self.units, 10**self.places)
            return f"{whole}.{rest:0{self.places}d}"
        whole = self.units * int(10**-self.places)
        return f"{whole:,}".replace(",", " ") if whole >= 10_000 else str(whole)


def cut(number: Number, places: int) -> Number:
    """Return a number with what stands behind so many places left out."""
    return Number(number.units // 10 ** (number.places - places), places)


def rounded(number: Number, places: int) -> Number:
    """Return a number rounded, halves up; places below 0 are tens, hundreds and so on.

    >>> rounded(Number(348, 0), -1), rounded(Number(695, 2), 1)
    (Number(units=35, places=-1), Number(units=70, places=1))
    """
    step = 10 ** (number.places - places)
    return Number((number.units + step // 2) // step, places)


def in_steps(number: Number, places: int) -> Number:
    """Return a number rounded one digit after the other."""
    while number.places > places:
        number = rounded(number, number.places - 1)
    return number


Wrong = tuple[Misconception, Number]


def basic_mistakes(number: Number, places: int, other: int) -> list[Wrong]:
    """Return what likely mistakes come to, `other` being a place that is taken by mistake."""
    key, low = rounded(number, places), cut(number, places)
    wrong = [(CUTS_OFF, low) if key != low else (ALWAYS_UP, Number(low.units + 1, places))]
    wrong.append((IN_STEPS, in_steps(number, places)))
    if other < number.places:
        wrong.append((WRONG_PLACE, rounded(number, other)))
    if places < 0:
        wrong.append((DROPS_NOUGHTS, Number(key.units, 0)))
    if places > 0 and low.units % 10 == 9 and key != low:
        # 6.958 as 6.10, and 0.9996 as 0.9910: the 9 is replaced by a 10.
        wrong.append((NO_CARRY, Number(low.units // 10 * 100 + 10, places + 1)))
    return wrong


def told_apart(key: Number, wrong: list[Wrong]) -> list[Wrong]:
    """Return the mistakes that come to another number than the key and those before them."""
    seen, kept = {key.value}, []
    for mistake, number in wrong:
        if number.value not in seen:
            seen.add(number.value)
            kept.append((mistake, number))
    return kept


def nodes(wrong: list[Wrong]) -> list[tuple[Misconception, t.Node]]:
    """Return mistakes with what they come to as it is written."""
    return [(mistake, number.node) for mistake, number in wrong]
