"""Numbers in standard form, as whole numbers and as trees, and the mistakes made with them."""

from __future__ import annotations

from typing import NamedTuple

from generators.number._writing import decimal
from itembank.items.item import Misconception
from itembank.notation import tree as t

COUNTS_NOUGHTS = Misconception(
    "number.standard-counts-the-noughts",
    "takes the number of noughts as the index",
    "Multiply or divide the first number by 10 that many times. Where do you get to?",
)
TOO_LARGE = Misconception(
    "number.standard-first-number-too-large",
    "leaves a first number of 10 or more, or below 1",
    "What must the first number lie between?",
)
INDEX_IN_NOUGHTS = Misconception(
    "number.standard-writes-the-index-in-noughts",
    "writes as many noughts as the index says",
    "What is 6.2 × 10? How many noughts did you have to write?",
)
LOSES_MINUS = Misconception(
    "number.standard-loses-the-minus",
    "leaves the minus out of the index",
    "Is the number larger or smaller than 1?",
)
NEGATIVE_NUMBER = Misconception(
    "number.standard-negative-index-negative-number",
    "takes a negative index to give a negative number",
    "Is 10 to the power −1 a tenth, or minus ten?",
)
FIRST_ONLY = Misconception(
    "number.standard-looks-at-the-first-number",
    "compares the first numbers only",
    "Write them out. What does the power of 10 do to each?",
)
MINUS_IGNORED = Misconception(
    "number.standard-ignores-the-minus-of-the-index",
    "compares the indices without their minus signs",
    "Which is larger, a tenth or a thousandth? What are their powers of 10?",
)
WRONG_WAY = Misconception(
    "number.standard-changes-the-index-the-wrong-way",
    "makes the first number smaller and the index smaller too, or both larger",
    "Write both out. Is your number as large as the one you changed?",
)
KEEPS_INDEX = Misconception(
    "number.standard-keeps-the-index",
    "changes the first number and keeps the index",
    "You changed the first number. Is the whole number still as large as before?",
)
DIVIDES_FOR_TIMES = Misconception(
    "number.standard-moves-the-wrong-way",
    "divides by 10 where the index says multiply",
    "Is the number larger or smaller than 1? What does the sign of the index say?",
)
MULTIPLIES_INDICES = Misconception(
    "number.standard-multiplies-the-indices",
    "multiplies the indices of a product",
    "How many tens are multiplied in all?",
)
DIVIDES_INDICES = Misconception(
    "number.standard-divides-the-indices",
    "divides the indices of a quotient",
    "Cancel the tens. How many are left?",
)
ADDS_FIRST = Misconception(
    "number.standard-adds-the-first-numbers",
    "adds or subtracts the first numbers, whatever their powers of 10",
    "Are both of them so many of the same power of 10?",
)
ADDS_ALL = Misconception(
    "number.standard-adds-the-indices-of-a-sum",
    "adds the first numbers and the indices",
    "Write both out as ordinary numbers and add them. Is it that large?",
)
SUBTRACTS_ALL = Misconception(
    "number.standard-subtracts-the-indices-of-a-difference",
    "subtracts the first numbers and the indices",
    "Write both out as ordinary numbers and subtract. Is it that small?",
)
SQUARES_FIRST_ONLY = Misconception(
    "number.standard-squares-the-first-number-only",
    "squares the first number and keeps the index",
    "Write the brackets out twice. How many tens are there in all?",
)
ADDS_TWO = Misconception(
    "number.standard-adds-two-to-the-index",
    "squares the first number and adds 2 to the index",
    "Write the brackets out twice. How many tens are there in all?",
)


class Standard(NamedTuple):
    """`digits` × 10 to the power `power`, where `places` of the digits stand after the point.

    >>> from itembank.notation.line import line
    >>> line(Standard(519, 2, -4).node), line(Standard(519, 2, -4).ordinary)
    ('5.19 × 10^(-4)', '0.000519')
    """

    digits: int
    places: int
    power: int

    @property
    def first(self) -> t.Node:
        """Return the number in front of the power of 10."""
        return decimal(self.digits, self.places)

    @property
    def node(self) -> t.Node:
        """Return the number as it is written in this form."""
        return t.times(self.first, t.Power(t.Int(10), t.num(self.power)))

    @property
    def ordinary(self) -> t.Node:
        """Return the number written out."""
        down = self.places - self.power
        if down <= 0:
            return t.num(self.digits * 10**-down)
        return decimal(self.digits, down)

    @property
    def size(self) -> tuple[int, int]:
        """Return the number over a thousand million million, for comparing."""
        return (self.digits * 10 ** (15 + self.power - self.places), 0)


def standard(digits: int, exponent: int) -> Standard:
    """Return digits × 10 to a power, so that one figure stands before the point.

    >>> standard(2400, 3)
    Standard(digits=24, places=1, power=6)
    """
    while digits % 10 == 0 and digits:
        digits, exponent = digits // 10, exponent + 1
    places = len(str(abs(digits))) - 1
    return Standard(digits, places, exponent + places)
