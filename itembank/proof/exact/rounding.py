"""The first road to rounding: exact for fractions, by close enough bounds for √ and π."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import Literal

from itembank.items.asks import Round
from itembank.items.forms.form_rules import number_node
from itembank.items.forms.number_forms import unsigned
from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.enclosing import bounds
from itembank.notation.quotients import Polynomial, Quotient, number, rational
from itembank.notation.sines import PI
from itembank.notation.units import CURRENCY, UNITS
from itembank.notation.value import NotExact, exact
from itembank.proof.claim.finding import Finding, found
from itembank.proof.claim.key_solutions import value_given
from itembank.proof.exact.reckoning.surd import surd_polynomial

Way = Literal["nearest", "down", "up"]
_HALVES: dict[str, Fraction] = {"nearest": Fraction(1, 2), "down": Fraction(0)}


def find_rounded(ask: Round, key: t.Node) -> Finding:
    """Return the target rounded, halves away from zero, and whether the key is that.

    Raises:
        NotExact: the target is not a number made of fractions, square roots and π.

    >>> from itembank.notation import parse
    >>> find_rounded(Round(parse("2/3"), "places", 2), parse("0.67")).shown
    '0.67'
    """
    given = value_given(key)
    _, size = unit_of(given)
    # Rounded in the unit of the key: 2.347 m to the nearest 1 is 2 in metres and 235 in
    # centimetres.
    step, ours = tree_rounded(ask.target, size, ask.detail, ask.amount, ask.way)
    if ask.detail == "figures" and ours:
        # 99.96 to 3 figures is 100: its places are fewer.
        step = _step(ours, ask.detail, ask.amount)
    answer = _with_unit(_printed(ours, step), given)
    return found(answer, key, exact(given) / size == ours)


def rounding_fault(
    detail: Literal["places", "figures", "nearest"], amount: int, key: t.Node
) -> str:
    """Return how a rounded key has too many or too few digits, or ``""``.

    >>> from itembank.notation import parse
    >>> rounding_fault("places", 1, parse("4"))
    'it needs 1 decimal place, it has 0'
    >>> rounding_fault("figures", 3, parse("1.00"))
    ''
    """
    bare, size = unit_of(value_given(key))
    value = exact(value_given(key)) / size
    return places_fault(bare, _step(value, detail, amount))


def unit_of(node: t.Node) -> tuple[t.Node, Fraction]:
    """Return the number in front of a unit, and the size of the unit: 1 for a bare number.

    >>> from itembank.notation.parse import parse
    >>> unit_of(parse("5 cm"))
    (Int(n=5), Fraction(1, 100))
    """
    match node:
        case t.Neg(of):
            bare, size = unit_of(of)
            return t.Neg(bare), size
        case t.Money(amount, sign):
            return amount, CURRENCY[sign].size
        case t.Quantity(amount, unit):
            return amount, UNITS[unit].size
        case t.Percent(of):
            return of, Fraction(1, 100)
    return node, Fraction(1)


def rounded(
    value: Quotient, detail: str, amount: int, way: Way = "nearest"
) -> tuple[Fraction, Fraction]:
    """Return the step rounded to, and the number rounded, halves away from zero.

    *Down* is towards zero and *up* away from it, as the digits are read.

    >>> rounded(number(Fraction(5, 2)), "nearest", 1)[1], rounded(number(-25), "figures", 1)[1]
    (Fraction(3, 1), Fraction(-30, 1))
    """
    try:
        # A half can only be met exactly by a rational number, and those are rounded exactly.
        value_exact = rational(value)
        step = _step(value_exact, detail, amount)
        return step, _to(value_exact, step, way)
    except NotExact:
        pass
    return _between(lambda digits: enclosed(value, digits), detail, amount, way)


def tree_rounded(
    target: t.Node, size: Fraction, detail: str, amount: int, way: Way = "nearest"
) -> tuple[Fraction, Fraction]:
    """Return the step rounded to, and a tree rounded in units of a size.

    What is past exact algebra (a root of a root, or of π) is enclosed by intervals.

    >>> from itembank.notation.parse import parse
    >>> tree_rounded(parse("√(50/π)"), Fraction(1), "places", 1)[1]
    Fraction(4, 1)
    """
    try:
        value = algebra(target) / number(size)
    except NotExact:
        return _between(lambda digits: _in_units(target, size, digits), detail, amount, way)
    return rounded(value, detail, amount, way)


def gap(target: t.Node, line: t.Node, size: Fraction) -> tuple[Fraction, Fraction]:
    """Return bounds of how much more a tree is worth than another, in units of a size.

    >>> from itembank.notation.parse import parse
    >>> low, high = gap(parse("√(50/π)"), parse("3.989"), Fraction(1))
    >>> 0 < low < high < Fraction(1, 1000)
    True
    """
    try:
        return enclosed((algebra(target) - algebra(line)) / number(size), 30)
    except NotExact:
        (low, high), (less, more) = (_in_units(node, size, 30) for node in (target, line))
        return low - more, high - less


def _in_units(node: t.Node, size: Fraction, digits: int) -> tuple[Fraction, Fraction]:
    low, high = bounds(node, digits)
    return low / size, high / size


def _between(
    ends: Callable[[int], tuple[Fraction, Fraction]], detail: str, amount: int, way: Way
) -> tuple[Fraction, Fraction]:
    """Return the step, and the number rounded, of which `ends` gives bounds of so many digits."""
    # An irrational number lies strictly between two places where rounding turns. If both of
    # its bounds round alike, so does it; PI has 50 places, so no closer bounds are to be had.
    # The first bounds are quick, and nearly always close enough.
    for digits in (15, 30, 45):
        low, high = ends(digits)
        steps = {_step(low, detail, amount), _step(high, detail, amount)}
        if len(steps) == 1:
            (step,) = steps
            if _to(low, step, way) == _to(high, step, way):
                return step, _to(low, step, way)
    raise NotExact("this is too near to where rounding changes to be rounded here")


def _step(value: Fraction, detail: str, amount: int) -> Fraction:
    if detail == "nearest":
        if amount < 1:
            raise NotExact("a number is rounded to a multiple of 1 or more")
        return Fraction(amount)
    if detail == "places":
        return Fraction(1, 10**amount)
    if amount < 1:
        raise NotExact("a number is rounded to 1 significant figure or more")
    exponent = 0
    size = abs(value)
    while size and size >= 10 ** (exponent + 1):
        exponent += 1
    while size and size * 10 ** (-exponent) < 1:
        exponent -= 1
    return Fraction(10) ** (exponent - amount + 1)


def _to(value: Fraction, step: Fraction, way: Way) -> Fraction:
    steps = abs(value) / step
    # By the size, so that −2.5 goes to −3: halves away from zero, as schools round, and not
    # to the even number, as round() does.
    whole = (steps.__ceil__() if way == "up" else (steps + _HALVES[way]).__floor__()) * step
    return -whole if value < 0 else whole


def enclosed(value: Quotient, digits: int) -> tuple[Fraction, Fraction]:
    """Return bounds of a number made of fractions, square roots and π.

    Raises:
        NotExact: there is a letter in it.
    """
    top, bottom = (_side_enclosed(side, digits) for side in (value.top, value.bottom))
    if bottom[0] <= 0 <= bottom[1]:
        raise NotExact("this divides by a number too near to zero")
    # Which of the four is least depends on signs, which are not asked here.
    ends = [a / b for a in top for b in bottom]
    return min(ends), max(ends)


def _side_enclosed(side: Polynomial, digits: int) -> tuple[Fraction, Fraction]:
    low = high = Fraction(0)
    for (powers, root), c in side.items():
        if any(name != "π" for name, _ in powers):
            raise NotExact("a number with a letter in it cannot be rounded")
        power = dict(powers).get("π", 0)
        roots = surd_polynomial({((), root): Fraction(1)}).enclosed(digits)
        # PI is cut off, not rounded, so π lies between it and one more in its last place.
        circles = (PI**power, (PI + Fraction(1, 10**50)) ** power)
        ends = [c * a * b for a in roots for b in circles]
        low, high = low + min(ends), high + max(ends)
    return low, high


def places_fault(bare: t.Node, step: Fraction) -> str:
    """Return how a rounded number is printed with too many or too few digits, or ``""``."""
    node = unsigned(bare)
    if isinstance(node, t.Product | t.Juxt):
        # In standard form the digits are those of the first factor.
        power = node.rest[0][1] if isinstance(node, t.Product) else node.factors[-1]
        node = unsigned(node.first if isinstance(node, t.Product) else node.factors[0])
        if not isinstance(power, t.Power):
            return "it is not one number"
        step = step / exact(power)
    if not isinstance(node, t.Int | t.Dec):
        return "it is not a whole number or a decimal"
    places = len(node.places) if isinstance(node, t.Dec) else 0
    wanted = len(str(step.denominator)) - 1
    if isinstance(node, t.Dec) and node.recurring:
        return "it goes on for ever"
    if places == wanted:
        return ""
    word = "place" if wanted == 1 else "places"
    return f"it needs {wanted} decimal {word}, it has {places}"


def _printed(value: Fraction, step: Fraction) -> t.Node:
    places = len(str(step.denominator)) - 1
    if not places:
        return number_node(value)
    whole, part = divmod(int(abs(value) * 10**places), 10**places)
    node: t.Node = t.Dec(str(whole), f"{part:0{places}d}")
    return t.Neg(node) if value < 0 else node


def _with_unit(node: t.Node, given: t.Node) -> t.Node:
    inner = given.of if isinstance(given, t.Neg) else given
    negative = isinstance(node, t.Neg)
    bare = node.of if isinstance(node, t.Neg) else node
    match inner:
        case t.Money(_, sign):
            bare = t.Money(bare, sign)
        case t.Quantity(_, unit):
            bare = t.Quantity(bare, unit)
        case t.Percent():
            bare = t.Percent(bare)
    return t.Neg(bare) if negative else bare
