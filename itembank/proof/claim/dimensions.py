"""The dimension of what a tree is worth: a length, an area, money for a mass."""

from __future__ import annotations

from collections.abc import Iterable

from itembank.notation import tree as t
from itembank.notation.clock import times_in
from itembank.notation.units import CURRENCY, MADE_OF, UNITS
from itembank.notation.value import NotExact, exact
from itembank.proof.claim.finding import text

Dimension = dict[str, int]
"""The base dimensions with their exponents, none of them zero; a plain number has none."""

TIME_OF_DAY: Dimension = {"time of day": 1}
"""What a clock shows: a point of the day, and no length of time."""


def dimension(node: t.Node) -> Dimension:
    """Return the dimension of a tree without letters.

    Raises:
        NotExact: unlike things are added, or a root or a power of a unit does not come out.

    >>> from itembank.notation import parse
    >>> dimension(parse("150 km ÷ 3 h")) == dimension(parse("50 km/h"))
    True
    """
    match node:
        case t.Quantity(_, unit):
            name = UNITS[unit].dimension
            return dict(MADE_OF.get(name, {name: 1}))
        case t.Money(_, sign):
            return {CURRENCY[sign].dimension: 1}
        case t.MixedUnits(parts):
            return dimension(parts[0])
        case t.ClockTime():
            return dict(TIME_OF_DAY)
        case t.Neg(of) | t.Bracket(of):
            return dimension(of)
        # 15% of £60 is worth money by its other factor.
        case t.Percent():
            return {}
        case t.Frac(top, bottom):
            return _times(dimension(top), dimension(bottom), -1)
        case t.Juxt(factors):
            return _product(dimension(factor) for factor in factors)
        case t.Product(first, rest):
            total = dimension(first)
            for op, factor in rest:
                total = _times(total, dimension(factor), -1 if op == "÷" else 1)
            return total
        case t.Sum(first, rest):
            if (times := times_in(node)) is not None:
                return _with_times(node, times)
            total = dimension(first)
            if any(dimension(term) != total for _, term in rest):
                raise NotExact("unlike things are added")
            return total
        case t.Power(base, exponent):
            return _raised(dimension(base), exponent)
        case t.Root(of, index):
            total = dimension(of)
            # √(9 cm²) is a length; √(9 cm) is nothing that has a name.
            if any(n % index for n in total.values()):
                raise NotExact("a root of a unit")
            return {name: n // index for name, n in total.items()}
        case t.Trig(_, of, inverse):
            if dimension(of) not in ({},) if inverse else dimension(of) not in ({}, {"angle": 1}):
                raise NotExact("a sine is of an angle")
            return {"angle": 1} if inverse else {}
    if t.is_expression(node) and any(map(dimension, t.children(node))):
        raise NotExact("a unit stands where only a number has a meaning")
    return {}


def _with_times(node: t.Sum, times: int) -> Dimension:
    """Return the dimension of a sum with times of day: another time, or a length of time."""
    terms = (node.first, *(term for _, term in node.rest))
    lengths = [dimension(term) for term in terms if not isinstance(term, t.ClockTime)]
    # Two times of day cannot be added; their difference is a length of time.
    if times not in (0, 1) or any(length != {"time": 1} for length in lengths):
        raise NotExact("unlike things are added")
    return dict(TIME_OF_DAY) if times else {"time": 1}


def _times(a: Dimension, b: Dimension, sign: int = 1) -> Dimension:
    total = dict(a)
    for name, n in b.items():
        total[name] = total.get(name, 0) + sign * n
    return {name: n for name, n in total.items() if n}


def _product(many: Iterable[Dimension]) -> Dimension:
    total: Dimension = {}
    for factor in many:
        total = _times(total, factor)
    return total


def _raised(base: Dimension, exponent: t.Node) -> Dimension:
    if not base:
        return {}
    power = exact(exponent)
    if power.denominator != 1:
        raise NotExact("a root of a unit")
    # To the power 0 everything is a plain number.
    return {name: n * power.numerator for name, n in base.items() if power}


def kinds(node: t.Node) -> frozenset[str]:
    """Return the base dimensions of the units in a tree: length, mass, money ….

    >>> from itembank.notation import parse
    >>> sorted(kinds(parse("3 kg : £2"))), sorted(kinds(parse("50 km/h")))
    (['mass', 'money'], ['length', 'time'])
    """
    names: set[str] = set()
    for part in t.walk(node):
        if isinstance(part, t.Quantity):
            name = UNITS[part.unit].dimension
            names |= MADE_OF.get(name, {name: 1}).keys()
        elif isinstance(part, t.Money):
            names.add(CURRENCY[part.sign].dimension)
        elif isinstance(part, t.ClockTime):
            names.add("time")
    return frozenset(names)


def answers(wanted: Dimension, given: Dimension) -> bool:
    """Tell whether a key of dimension `given` can answer for something of dimension `wanted`.

    The price of a kilogram is given as a sum of money: what a rate is for may go without saying.
    """
    return given in (wanted, {name: n for name, n in wanted.items() if n > 0})


def dimension_words(of: Dimension) -> str:
    """Return a dimension in words.

    >>> [dimension_words(powers) for powers in ({"length": 2}, {"money": 1, "mass": -1}, {})]
    ['area', 'money for each mass', 'a number without a unit']
    """
    if of == TIME_OF_DAY:
        return "a time of day"
    for name, made_of in MADE_OF.items():
        if made_of == of:
            return name
    above = [name if n == 1 else f"{name}^{n}" for name, n in of.items() if n > 0]
    below = [name if n == -1 else f"{name}^{-n}" for name, n in of.items() if n < 0]
    words = " × ".join(above) or "a number"
    return (
        f"{words} for each {' × '.join(below)}"
        if below
        else words
        if of
        else ("a number without a unit")
    )


def unlike_things(nodes: Iterable[t.Node]) -> str:
    """Return the first sum without letters that adds unlike things, in words, or ``""``.

    >>> from itembank.notation import parse
    >>> unlike_things([parse("3 kg + 2 m")]), unlike_things([parse("3 kg + 200 g")])
    ('3 kg + 2 m adds unlike things', '')
    """
    for node in nodes:
        for part in t.walk(node):
            # What a letter stands for has no printed unit, so a sum with letters is not judged.
            if not isinstance(part, t.Sum) or t.symbols(part) or not kinds(part):
                continue
            try:
                dimension(part)
            except t.NotationError:
                return f"{text(part)} adds unlike things"
    return ""
