"""Builders of the sums that words say: each makes the tree to be worked out from its numbers.

The meanings are those of English school mathematics (common practice, no source): *the
difference between* two numbers is the larger less the smaller; *subtract a from b* is b − a.
"""

from __future__ import annotations

from collections.abc import Callable

from itembank.notation import tree as t
from itembank.notation.units import CURRENCY, UNITS
from itembank.notation.value import exact

Built = tuple[t.Node, tuple[int, ...]]
"""A tree to be worked out, and the whole numbers that words put into it."""


class NotBuilt(t.NotationError):
    """Words and mathematics do not make a sum; the message says why, in a sentence."""


def as_part(node: t.Node) -> t.Node:
    """Return a tree that may stand inside another: a sum or a product in brackets."""
    if isinstance(node, t.Relation | t.Listing | t.Ratio):
        raise NotBuilt("This is worked out with numbers and expressions only.")
    return t.Bracket(node) if isinstance(node, t.Sum | t.Product) else node


def total(*nodes: t.Node) -> Built:
    """Return a sum; a list or a sum that is printed is added up as it stands."""
    if (
        len(nodes) == 1
        and isinstance(nodes[0], t.Sum)
        and all(op == "+" for op, _ in nodes[0].rest)
    ):
        return nodes[0], ()  # Add {3/4 + 1/6}: the sum stands there
    first, *rest = map(as_part, alike(several(nodes)))
    return t.Sum(first, tuple(("+", node) for node in rest)), ()


def product(*nodes: t.Node) -> Built:
    """Return a product of two numbers or more."""
    first, *rest = map(as_part, several(nodes))
    return t.Product(first, tuple(("×", node) for node in rest)), ()


def several(nodes: tuple[t.Node, ...]) -> tuple[t.Node, ...]:
    """Return the parts of one list, or the pieces themselves, which are two or more."""
    if len(nodes) == 1 and isinstance(nodes[0], t.Listing):
        nodes = nodes[0].parts
    if len(nodes) < 2:
        raise NotBuilt("This takes two numbers or more; here is one.")
    return nodes


def alike(nodes: tuple[t.Node, ...]) -> tuple[t.Node, ...]:
    """Return things that can be added up: all money, all of one kind of unit, or all bare."""
    if len({kind(node) for node in nodes}) > 1:
        raise NotBuilt("Amounts of different kinds are not added, taken away or compared.")
    return nodes


def kind(node: t.Node) -> str:
    """Return what an amount is an amount of, by the first unit or sign in it."""
    for part in t.walk(node):
        match part:
            case t.Money(_, sign):
                return CURRENCY[sign].dimension
            case t.Quantity(_, unit):
                return UNITS[unit].dimension
            case t.Percent():
                return "percent"
    return ""


def less(a: t.Node, b: t.Node) -> Built:
    """Return a − b."""
    alike((a, b))
    return t.Sum(as_part(a), (("-", as_part(b)),)), ()


def more(a: t.Node, b: t.Node) -> Built:
    """Return a − b, which has to be more than nothing: how much more is 8 than 20 is no question."""
    alike((a, b))
    if not (t.symbols(a) or t.symbols(b)) and exact(a) <= exact(b):
        raise NotBuilt("The first of the two is not more than the second.")
    return less(a, b)


def under(a: t.Node, b: t.Node) -> Built:
    """Return how much a is under b: of a larger a it is no question."""
    alike((a, b))
    if t.symbols(a) or t.symbols(b) or exact(a) >= exact(b):
        raise NotBuilt("The first of the two is not less than the second.")
    return less(b, a)


def to_the_power(a: t.Node, b: t.Node) -> Built:
    """Return a to the power b."""
    base = a if isinstance(a, t.Int | t.Sym) else t.Bracket(a)
    return t.Power(base, b), ()


def times_in(a: t.Node, b: t.Node) -> Built:
    """Return how many times b goes into a, where that is a whole number of times."""
    if not t.symbols(b) and not exact(b):
        raise NotBuilt("A nought goes into nothing so many times.")
    if t.symbols(a) or t.symbols(b) or (exact(a) / exact(b)).denominator != 1:
        raise NotBuilt("It does not go in a whole number of times: say what is to be done.")
    return over(a, b)


def difference(*nodes: t.Node) -> Built:
    """Return the larger of two numbers less the smaller."""
    two = several(nodes)
    if len(two) != 2:
        raise NotBuilt("A difference is between two numbers.")
    a, b = two
    if t.symbols(a) or t.symbols(b):
        raise NotBuilt("Which of the two is larger is not known where there are letters.")
    return less(a, b) if exact(a) >= exact(b) else less(b, a)


def over(a: t.Node, b: t.Node) -> Built:
    """Return a ÷ b."""
    return t.Product(as_part(a), (("÷", as_part(b)),)), ()


def remainder(a: t.Node, b: t.Node) -> Built:
    """Return what is left of a whole number that is divided by another."""
    if not (isinstance(a, t.Int) and isinstance(b, t.Int) and 0 < b.n <= a.n):
        raise NotBuilt(
            "A remainder is of a whole number that is divided by one that is not larger, nor 0."
        )
    fits = a.n // b.n
    return t.Sum(a, (("-", t.Product(b, (("×", t.Int(fits)),))),)), (fits,)


def worth_of_digit(digit: t.Node, number: t.Node) -> Built:
    """Return what a digit is worth where it stands, once, in a whole number or a decimal."""
    match number:
        case t.Int(n):
            whole, places = str(n), ""
        case t.Dec(whole, places, ""):
            pass
        case _:
            raise NotBuilt("A digit has its place in a whole number or a decimal.")
    if not (isinstance(digit, t.Int) and 0 < digit.n < 10):
        raise NotBuilt("A digit is one of 1 to 9.")
    if (whole + places).count(str(digit.n)) != 1:
        raise NotBuilt("The digit does not stand just once in the number.")
    if (at := whole.find(str(digit.n))) >= 0:
        power_of_ten = 10 ** (len(whole) - at - 1)
        return t.Product(digit, (("×", t.Int(power_of_ten)),)), (power_of_ten,)
    power_of_ten = 10 ** (places.index(str(digit.n)) + 1)
    return t.Frac(digit, t.Int(power_of_ten)), (power_of_ten,)


def times(n: int) -> Callable[[t.Node], Built]:
    """Return what multiplies a number by n."""
    return lambda node: (t.Product(t.Int(n), (("×", as_part(node)),)), (n,))


def shared_by(n: int) -> Callable[[t.Node], Built]:
    """Return what divides a number by n."""
    return lambda node: (t.Product(as_part(node), (("÷", t.Int(n)),)), (n,))


def power(n: int) -> Callable[[t.Node], Built]:
    """Return what raises a number to a power that is said in words."""
    return lambda node: (
        t.Power(node if isinstance(node, t.Int | t.Sym) else t.Bracket(node), t.Int(n)),
        (n,),
    )


def root(n: int) -> Callable[[t.Node], Built]:
    """Return what takes a root of a number."""
    return lambda node: (t.Root(node, n), ())


def reciprocal(node: t.Node) -> Built:
    """Return 1 over a number."""
    return t.Product(t.Int(1), (("÷", t.Bracket(node)),)), (1,)


def ratio_of(a: t.Node, b: t.Node) -> Built:
    """Return the ratio of two amounts of a kind."""
    if isinstance(a, t.Ratio | t.Relation | t.Listing) or isinstance(
        b, t.Ratio | t.Relation | t.Listing
    ):
        raise NotBuilt("A ratio is of two amounts.")
    return t.Ratio(alike((a, b))), ()
