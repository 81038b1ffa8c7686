"""Whether an answer is rounded as its question asks, or not yet."""

from __future__ import annotations

from fractions import Fraction

from itembank.items.forms.number_forms import unsigned
from itembank.marking.form.policy import PLACES_KNOWN, Policy
from itembank.notation import tree as t
from itembank.notation.value import exact, exact_or_none
from itembank.text.in_words import counted

NOT_ROUNDED = "it is not rounded"


def rounding_fault(how: Policy, given: t.Node, key: t.Node) -> str:
    """Return what keeps an answer from being rounded as the question asks, or an empty string.

    >>> from itembank.notation.parse import parse
    >>> how = Policy(("rounded",), rounding=("places", 2))
    >>> rounding_fault(how, parse("2.5"), parse("2.50"))
    'it is not given to 2 decimal places'
    """
    if how.rounding is None or not how.places:
        return ""
    detail, amount = how.rounding
    given = unsigned(_number(given))
    if isinstance(given, t.Product):
        given = unsigned(_number(given.first))
    if not isinstance(given, t.Int | t.Dec):
        return ""
    places = given.places if isinstance(given, t.Dec) else ""
    if detail == "places" and len(places) != amount:
        return f"it is not given to {counted(amount, 'decimal place')}"
    if detail == "figures" and isinstance(given, t.Dec):
        # Zeros that lead are no figures, those that end a decimal are. At the end of a whole
        # number nobody can tell, so that one is held to its value alone.
        digits = (given.whole + places).lstrip("0")
        if len(digits) != amount:
            return f"it is not given to {counted(amount, 'significant figure')}"
    return ""


def unrounded(how: Policy, given: t.Node, key: t.Node) -> bool:
    """Tell whether an answer is the key before rounding, or rounded less than was asked.

    Where the number that is rounded is not known, what rounds to the key counts.

    >>> from itembank.notation.parse import parse
    >>> how = Policy(("rounded",), rounding=("places", 2))
    >>> [unrounded(how, parse(text), parse("3.14")) for text in ("3.1416", "3.15", "3.2")]
    [True, False, False]
    """
    if how.rounding is None:
        return False
    if how.unrounded is None:
        return rounds_to(how, given, key)
    number = _number(given)
    if exact_or_none(number) == how.unrounded:
        return True
    # The dots of 4.1547… say here that digits were left out, not that the last one recurs.
    number = _as_written(number)
    worth, places = exact_or_none(number), _places(number)
    if worth is None:
        return False
    # With more places than were asked, and right to all of them, whether the last was rounded or
    # the rest cut off, as a calculator's display is copied: rounding is what is left.
    last = Fraction(1, 10 ** min(places, PLACES_KNOWN - 1))
    near = abs(worth - how.unrounded) <= last / 2
    # Sizes are compared here, so that the sign has to be asked for by itself.
    cut = worth * how.unrounded > 0 and 0 <= abs(how.unrounded) - abs(worth) < last
    return (near or cut) and places > _places(_number(key))


def rounds_to(how: Policy, given: t.Node, key: t.Node) -> bool:
    """Tell whether an answer, rounded as the question asks, is the key.

    >>> from itembank.notation.parse import parse
    >>> how = Policy(("rounded",), rounding=("places", 1))
    >>> [rounds_to(how, parse(text), parse("78.5")) for text in ("78.52", "78.57")]
    [True, False]
    """
    if how.rounding is None:
        return False
    detail, amount = how.rounding
    try:
        worth, wanted = exact(_number(given)), exact(_number(key))
    except t.NotationError:
        return False
    if detail == "places":
        half = Fraction(1, 2 * 10**amount)
    elif detail == "nearest":
        half = Fraction(amount, 2)
    else:
        half = _place_of(wanted, amount) / 2
    return (
        # A half goes away from zero, so the near end belongs to it and the far end does not.
        wanted - half <= worth < wanted + half
        if wanted >= 0
        else (wanted - half < worth <= wanted + half)
    )


def _as_written(node: t.Node) -> t.Node:
    """Return a decimal that goes on for ever as far as it is written."""
    match node:
        case t.Neg(of):
            return t.Neg(_as_written(of))
        case t.Dec(whole, places, recurring):
            return t.Dec(whole, places + recurring)
    return node


def _places(node: t.Node) -> int:
    """Return how many decimal places a number is written to; 0 where they never end."""
    node = node.of if isinstance(node, t.Neg) else node
    return len(node.places) if isinstance(node, t.Dec) and not node.recurring else 0


def _place_of(wanted: Fraction, figures: int) -> Fraction:
    """Return the value of the last of so many significant figures."""
    size, place = abs(wanted), Fraction(1)
    if not size:
        return place
    for _ in range(400):
        if size >= 10 * place:
            place *= 10
        elif size < place:
            place /= 10
        else:
            break
    return place / Fraction(10) ** (figures - 1)


def _number(node: t.Node) -> t.Node:
    match node:
        case t.Neg(of) if not isinstance(of, t.Money | t.Quantity | t.Percent):
            return node
        case t.Neg(of) | t.Percent(of):
            return _number(of)
        case t.Money(amount, _) | t.Quantity(amount, _):
            return amount
        case t.Relation(_, (("=", right),)):
            return _number(right)
    return node
