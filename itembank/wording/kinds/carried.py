"""Kinds carried through a model: what its answer is then an amount of.

A number of the model has the kinds of the printed number it stands for. A constant is a plain
number, changes a unit (60 minutes to the hour), or is an amount that everybody knows (24 hours in
a day). Every way to read the numbers is kept, each with what has to be alike for it; only where
no way comes to what is asked is something wrong.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction
from itertools import product

from itembank.notation import tree as t
from itembank.notation.units import unit_known
from itembank.notation.value import exact_or_none
from itembank.wording.kinds.kind import PLAIN, Kind, of_dimension, of_unit, settled, unknown
from itembank.wording.kinds.story_kinds import StoryKinds

Way = tuple[Kind, tuple[Kind, ...]]
"""A kind, and the kinds that must come to that of a plain number for it."""

_MOST = 160
"""More ways than this are not gone through: nothing is said."""

# What everybody knows: so many of the one unit make the other (a calendar, and the SI prefixes).
_CONVERT: dict[int, tuple[tuple[str, str], ...]] = {
    60: (("min", "h"), ("s", "min")),
    3600: (("s", "h"),),
    24: (("h", "day"),),
    7: (("day", "week"),),
    14: (("day", "week"),),
    12: (("month", "year"),),
    52: (("week", "year"),),
    365: (("day", "year"),),
    366: (("day", "year"),),
    28: (("day", "month"),),
    30: (("day", "month"),),
    31: (("day", "month"),),
    4: (("week", "month"),),
    48: (("h", "day"),),
    168: (("h", "week"),),
}
_PREFIXES = frozenset((10, 100, 1000, 10_000, 1_000_000, 16, 14, 8, 3, 1760, 5280))


class TooMany(Exception):
    """There are too many ways to read the numbers of a model."""


class Carrier:
    """Carries the kinds of a story's numbers through its model."""

    def __init__(self, kinds: StoryKinds, constants: Sequence[int]) -> None:
        self.kinds = kinds
        self.constants = frozenset(map(Fraction, constants))
        self._fresh = 0

    def ways(self, lines: Sequence[t.Node], target: t.Node) -> list[Way]:
        """Return every way to read the answer, with what has to be alike for it.

        Raises:
            TooMany: there are more ways than can be looked at.
        """
        found = self.of(target)
        for line in lines:
            if isinstance(line, t.Relation):
                found = _capped(
                    (kind, (*ones, *more))
                    for (kind, ones), more in product(found, self._alike(line))
                )
        return found

    def _alike(self, line: t.Relation) -> list[tuple[Kind, ...]]:
        ways: list[tuple[Kind, ...]] = [()]
        left = line.first
        for _, right in line.rest:
            if isinstance(left, t.Ratio) and isinstance(right, t.Ratio):
                pairs = list(zip(left.parts, right.parts, strict=False))
                quotients = [self._quotients(pair) for pair in pairs]
                first, *others = quotients
                step = [
                    (*ones, *extra, kind.over(other))
                    for kind, ones in first
                    for other, extra in (others[0] if others else [(kind, ())])
                ]
            else:
                step = [
                    (*ones, *extra, kind.over(other))
                    for (kind, ones), (other, extra) in product(self.of(left), self.of(right))
                ]
            ways = list(dict.fromkeys((*a, *b) for a, b in product(ways, step)))
            if len(ways) > _MOST:
                raise TooMany
            left = right
        return ways

    def _quotients(self, pair: tuple[t.Node, t.Node]) -> list[Way]:
        return [
            (a.over(b), (*ones, *more))
            for (a, ones), (b, more) in product(self.of(pair[0]), self.of(pair[1]))
        ]

    def of(self, node: t.Node) -> list[Way]:
        """Return the ways to read one tree."""
        match node:
            case t.Neg(of) | t.Bracket(of):
                return self.of(of)
            case t.Percent():
                given = self.kinds.by_node.get(node, ())
                return [(kind, ()) for kind in dict.fromkeys((*given, PLAIN))]
            case t.Blank():
                return [self._new()]
            case t.Sym(name):
                return [(PLAIN if name == "π" else unknown(name), ())]
            case t.Quantity() | t.Money() | t.MixedUnits():
                return self._amount(node)
            case t.ClockTime():
                return [(of_dimension("time"), ())]
            case t.Frac(t.Int(), t.Int()) if (value := exact_or_none(node)) in self.kinds.by_value:
                return self._number(value)
            case t.Int() | t.Dec() | t.Mixed():
                return self._number(exact_or_none(node))
            case t.Frac(top, bottom):
                return self._product(((1, top), (-1, bottom)))
            case t.Juxt(factors):
                return self._product(tuple((1, factor) for factor in factors))
            case t.Product(first, rest):
                return self._product(
                    ((1, first), *((-1 if op == "÷" else 1, factor) for op, factor in rest))
                )
            case t.Sum(first, rest):
                return self._sum((first, *(term for _, term in rest)))
            case t.Power(base, exponent):
                return self._power(base, exponent)
            case t.Root(of, index):
                return [
                    (root, ones) if (root := kind.root(index)) is not None else self._new()
                    for kind, ones in self.of(of)
                ]
        return [self._new()]

    def _new(self) -> Way:
        self._fresh += 1
        return unknown(f"_{self._fresh}"), ()

    def _amount(self, node: t.Quantity | t.Money | t.MixedUnits) -> list[Way]:
        if given := self.kinds.by_node.get(node):
            return [(kind, ()) for kind in dict.fromkeys(given)]
        match node:
            case t.Money(t.Frac(top, bottom), sign):  # £3/4 is £3 for each of 4
                return self._product(((1, t.Money(top, sign)), (-1, bottom)))
            case t.Money(amount, sign):
                value, unit = exact_or_none(amount), sign
            case t.Quantity(amount, unit):
                value = exact_or_none(amount)
            case _:
                value, unit = None, node.parts[0].unit if isinstance(node, t.MixedUnits) else ""
        base = of_dimension(unit_known(unit).dimension)
        plain: list[Way] = [(base, ())]
        if value == 1:
            # 8 × 1 h only gives a bare number of hours its unit.
            return [*plain, (Kind((), 1 / of_unit(unit).scale), ())]
        if value is None:
            return plain
        # The model gives a unit to a number that stands bare: {23} metre is 23 m.
        for kind in self.kinds.by_value.get(value, ()):
            rate = kind.over(of_unit(unit)).powers
            if kind.measures() and rate and all(name != base.powers[0][0] for name, _ in rate):
                plain.append((Kind(kind.powers, kind.scale / of_unit(unit).scale), ()))
        return plain

    def _number(self, value: Fraction | None) -> list[Way]:
        if value is None:
            return [self._new()]
        ways = [(kind, ()) for kind in self.kinds.by_value.get(value, ())]
        if value in self.constants or (not ways and value == 1):
            ways += [(kind, ()) for kind in _constant(value)]
        if not ways:
            return [self._new()]
        return list(dict.fromkeys(ways))

    def _product(self, factors: Sequence[tuple[int, t.Node]]) -> list[Way]:
        total: list[Way] = [(PLAIN, ())]
        for sign, factor in factors:
            total = _capped(
                (kind.times(other, sign), (*ones, *more))
                for (kind, ones), (other, more) in product(total, self.of(factor))
            )
        return total

    def _sum(self, terms: Sequence[t.Node]) -> list[Way]:
        """Return the kinds of a sum: those of its terms, which have to be alike.

        A constant among them is of whatever kind the others are: 4 − 1 days.
        """
        parts = [term for term in terms if not self._is_constant(term)]
        if not parts:
            return [(PLAIN, ())] if len(terms) > 1 else self.of(terms[0])
        total = self.of(parts[0])
        for term in parts[1:]:
            found: list[Way] = []
            for (kind, ones), (other, more) in product(total, self.of(term)):
                ratio = kind.over(other)
                if ratio.unknowns():
                    found.append((kind, (*ones, *more, ratio)))
                elif kind.like(other):
                    # Boys and girls make a number of neither.
                    both = kind if kind == other else Kind(kind.measures(), kind.scale)
                    found.append((both, (*ones, *more)))
            total = _capped(found)
        return total

    def _is_constant(self, node: t.Node) -> bool:
        while isinstance(node, t.Bracket | t.Neg):
            node = node.of
        if not isinstance(node, t.Int | t.Frac | t.Dec):
            return False
        value = exact_or_none(node)
        return value == 1 or value in self.constants

    def _power(self, base: t.Node, exponent: t.Node) -> list[Way]:
        n = exponent.n if isinstance(exponent, t.Int) else 0
        found: list[Way] = []
        for kind, ones in self.of(base):
            if not kind.powers and kind.scale == 1:
                found.append((kind, ones))
            elif 0 < n < 5:
                found.append((kind.raised(n), ones))
            else:
                found.append(self._new())
        return found


def _constant(value: Fraction) -> list[Kind]:
    """Return what a constant may be: a plain number, a change of unit, or an amount we know."""
    kinds = [PLAIN]
    if value.denominator != 1:
        return kinds
    n = value.numerator
    for small, big in _CONVERT.get(n, ()):
        change = of_unit(small).over(of_unit(big))
        kinds += [change, of_unit(small)]
    if n in _PREFIXES:
        kinds.append(Kind((), Fraction(1, n)))
    return kinds


def _capped(ways: Iterable[Way]) -> list[Way]:
    found = list(dict.fromkeys(ways))
    if len(found) > _MOST:
        raise TooMany
    return found


def answers_of(ways: Sequence[Way]) -> list[Kind]:
    """Return the kinds that an answer may be of, without those that cannot be."""
    found = (settled(kind, ones) for kind, ones in ways)
    return [kind for kind in dict.fromkeys(found) if kind is not None]
