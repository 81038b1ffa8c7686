"""The kind of a number: what it counts or measures, and in which size of unit.

A number of a story is not bare: 12 eggs a box, £9 an hour, 7 cm. Its kind holds each base
dimension with an exponent, and a scale, the true amount for each 1 of the number (SI base
units). Kinds multiply as their numbers do, and only like kinds are added: units of measure as
types, after Kennedy (from memory). A kind that is not known is a letter of its own, ``?1``.

>>> speed = of_unit("km").over(of_unit("h"))
>>> speed == of_unit("km/h"), speed.times(of_unit("h")) == of_unit("km")
(True, True)
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from math import isqrt

from itembank.data_class import dataclass
from itembank.notation.units import MADE_OF, unit_known
from itembank.text.in_words import with_article
from itembank.wording.kinds.things_counted import plural

THING = "#"
"""Before the name of something that is counted: ``#egg``."""
UNKNOWN = "?"
"""Before the name of a kind that is not known."""


@dataclass(frozen=True, slots=True)
class Kind:
    """Base dimensions with their exponents, none of them zero, and the size of a 1."""

    powers: tuple[tuple[str, int], ...] = ()
    scale: Fraction = Fraction(1)

    def times(self, other: Kind, sign: int = 1) -> Kind:
        """Return the kind of a product; with `sign` −1 of a quotient."""
        if not other.powers and other.scale == 1:
            return self
        total = dict(self.powers)
        for name, n in other.powers:
            total[name] = total.get(name, 0) + sign * n
        scale = self.scale * other.scale if sign > 0 else self.scale / other.scale
        return Kind(tuple(sorted((name, n) for name, n in total.items() if n)), scale)

    def over(self, other: Kind) -> Kind:
        """Return the kind of a quotient."""
        return self.times(other, -1)

    def raised(self, exponent: int) -> Kind:
        """Return the kind of a power with a whole exponent."""
        powers = tuple((name, n * exponent) for name, n in self.powers if exponent)
        return Kind(powers, self.scale**exponent)

    def root(self, index: int) -> Kind | None:
        """Return the kind of a square root, or None where it does not come out."""
        top, bottom = isqrt(self.scale.numerator), isqrt(self.scale.denominator)
        whole = Fraction(top, bottom) ** 2 == self.scale
        if index != 2 or not whole or any(n % 2 for _, n in self.powers):
            return None
        return Kind(tuple((name, n // 2) for name, n in self.powers), Fraction(top, bottom))

    def measures(self) -> tuple[tuple[str, int], ...]:
        """Return the powers of what is measured, without the things that are counted.

        >>> of_thing("egg").over(of_unit("h")).measures()
        (('time', -1),)
        """
        return tuple(power for power in self.powers if power[0][0] != THING)

    def things(self) -> dict[str, int]:
        """Return the things that are counted, with their exponents."""
        return {name[1:]: n for name, n in self.powers if name[0] == THING}

    def unknowns(self) -> dict[str, int]:
        """Return the unknown kinds in it, with their exponents."""
        return {name: n for name, n in self.powers if name[0] == UNKNOWN}

    def like(self, other: Kind) -> bool:
        """Whether two kinds may be added: the same measures in the same size of unit."""
        return self.scale == other.scale and self.measures() == other.measures()


PLAIN = Kind()
"""The kind of a number that counts nothing: a factor, a part, a percentage."""


def of_dimension(name: str) -> Kind:
    """Return the kind of an amount in the base unit of a dimension.

    >>> of_dimension("speed").measures()
    (('length', 1), ('time', -1))
    """
    name = "angle" if name == "temperature" else name  # both are counted in degrees
    return Kind(tuple(sorted(MADE_OF.get(name, {name: 1}).items())))


def of_unit(unit: str) -> Kind:
    """Return the kind of a bare number that stands for so many of a unit."""
    facts = unit_known(unit)
    base = of_dimension(facts.dimension)
    return Kind(base.powers, facts.size)


def of_thing(noun: str) -> Kind:
    """Return the kind of a count of things."""
    return Kind(((THING + noun, 1),))


def unknown(name: str) -> Kind:
    """Return a kind that is not known."""
    return Kind(((UNKNOWN + name, 1),))


def settled(kind: Kind, ones: Iterable[Kind]) -> Kind | None:
    """Return a kind once each kind of `ones` is made that of a plain number; None if it cannot be.

    >>> settled(unknown("h"), [of_unit("£").over(unknown("h")).over(of_unit("p"))]).scale
    Fraction(100, 1)
    """
    left = list(ones)
    while left:
        for mine in left:
            name = next((name for name, n in mine.unknowns().items() if abs(n) == 1), "")
            if name or not mine.unknowns():
                break
        else:
            return kind  # only squares of what is not known: nothing is said
        left.remove(mine)
        if not name:
            if mine.measures() or mine.scale != 1:
                return None
            continue
        sign = dict(mine.powers)[name]
        rest = Kind(tuple(p for p in mine.powers if p[0] != name), mine.scale)
        stands = rest.raised(-sign)
        left = [_with(part, name, stands) for part in left]
        kind = _with(kind, name, stands)
    return kind


def _with(kind: Kind, name: str, stands: Kind) -> Kind:
    exponent = dict(kind.powers).get(name, 0)
    if not exponent:
        return kind
    rest = Kind(tuple(power for power in kind.powers if power[0] != name), kind.scale)
    return rest.times(stands.raised(exponent))


_NAMES = {"angle": "degrees", "calendar time": "time", "money": "money"}


def either(names: Iterable[str]) -> str:
    """Return names of measures as what is asked for.

    >>> either(("area",)), either(("length", "time"))
    ('an area', 'a length or a time')
    """
    return " or ".join(map(with_article, names))


def kind_words(kind: Kind) -> str:
    """Return a kind in words, for a message.

    >>> kind_words(of_unit("£").over(of_unit("h"))), kind_words(of_thing("egg"))
    ('money for each time', 'a count of eggs')
    """
    if kind.measures() == (("length", -2),):
        return "length for each volume"
    for name, made_of in MADE_OF.items():
        if tuple(sorted(made_of.items())) == kind.measures():
            return either((name,))
    above = [_power(name, n) for name, n in kind.powers if n > 0 and name[0] != UNKNOWN]
    below = [_power(name, -n, each=True) for name, n in kind.powers if n < 0 and name[0] != UNKNOWN]
    if above and not below and all(name[0] == THING for name, _ in kind.powers):
        return "a count of " + " × ".join(above)
    words = " × ".join(above) or "a number"
    return f"{words} for each {' × '.join(below)}" if below else words if above else "a number"


def _power(name: str, n: int, each: bool = False) -> str:
    thing = name[1:] if each else plural(name[1:])
    shown = thing if name[0] == THING else _NAMES.get(name, name)
    return {1: shown, 2: f"{shown} squared", 3: f"{shown} cubed"}.get(
        n, f"{shown} to the power {n}"
    )
