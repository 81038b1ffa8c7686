"""What an answer is worth, in exact arithmetic and within bounds.

Numbers are rational numbers; surds and expressions are quotients of polynomials
(:mod:`itembank.notation.algebra`). A root of letters, or a power with a letter in its exponent,
counts as one letter more, the same one wherever it stands for the same thing; the letters
under a root are taken not to be negative, as in a formula.

Work is bounded before it begins: numbers of at most 8,192 binary digits, :data:`MOST_WORK`
products of two terms. What would take more is not the same as any key, since no key needs it.
"""

from __future__ import annotations

from fractions import Fraction
from math import isqrt
from typing import Literal

from itembank.items.forms.number_forms import bare
from itembank.notation import tree as t
from itembank.notation.algebra import ALGEBRA, algebra
from itembank.notation.clock import is_time
from itembank.notation.quotients import Quotient, number
from itembank.notation.units import CURRENCY, UNITS
from itembank.notation.value import LARGEST_BITS, NotExact, exact, exact_or_none, over

Worth = Fraction | Quotient

MOST_WORK = 2_000
"""Products of two terms that multiplying an expression out may take."""


def _bits(node: t.Node) -> int:
    """Return about how many binary digits the numbers of `node` may come to, at most."""
    match node:
        case t.Int(n):
            return n.bit_length()
        case t.Dec(whole, places, recurring):
            # A digit takes 3.3 binary ones above the line and, behind the point, as many below it.
            return 7 * len(whole + places + recurring)
        case t.Power(base, exponent):
            below, above = _bits(base), _bits(exponent)
            # An exponent of so many digits is past every bound: it is not even looked at.
            if above > 64:
                return LARGEST_BITS + 1
            try:
                return int(below * max(Fraction(1), abs(exact(exponent))))
            except t.NotationError:
                return below + above
    return sum(map(_bits, t.children(node))) + 1


def quotient(worth: Worth) -> Quotient:
    """Return a value as a quotient of polynomials, whichever kind it is."""
    return worth if isinstance(worth, Quotient) else number(worth)


def worths(given: t.Node, key: t.Node) -> tuple[Worth, Worth]:
    """Return the values of an answer and of the key, in one unit.

    Raises:
        NotExact: one has no exact value, or the units are of different kinds.

    >>> from itembank.notation.parse import parse
    >>> worths(parse("5"), parse("50 cm"))
    (Fraction(1, 20), Fraction(1, 2))
    """
    if _bits(given) > LARGEST_BITS:
        raise NotExact("this is too large a number")
    own, wanted = unit_of(given), unit_of(key)
    # A unit too few is taken for the key's; one too many may change what is counted.
    if own is not None and (wanted is None or own[0] != wanted[0]):
        raise NotExact("the unit is of another kind")
    # Else 55 500 would be right for 15:25, as the seconds since midnight.
    if own is None and is_time(key):
        raise NotExact("the answer is no time of day")
    scale = wanted[1] if own is None and wanted is not None else Fraction(1)
    try:
        # Nearly every answer is a rational number, and this is the quick way.
        return exact(given) * scale, exact(key)
    except NotExact:
        atoms: list[tuple[object, str]] = []
        if any(map(_has_atoms, (given, key))):
            given, key = _plain(given, atoms), _plain(key, atoms)
        a, b = _algebra(given), _algebra(key)
        return a * number(scale), b


def unit_of(node: t.Node) -> tuple[str, Fraction] | None:
    """Return the dimension and the size of an amount's unit, or None where it has none."""
    match node:
        case t.Neg(of) | t.Bracket(of):
            return unit_of(of)
        case t.Quantity(_, unit):
            return UNITS[unit].dimension, UNITS[unit].size
        case t.MixedUnits(parts):
            return unit_of(parts[0])
        case t.ClockTime() | t.Sum() if is_time(node):
            return "time of day", Fraction(1)
        case t.Money(_, sign):
            return CURRENCY[sign].dimension, CURRENCY[sign].size
        case t.Product() if (made := _made_unit(node)) is not False:
            return made
        case t.Product(first, rest) if all(unit_of(part) is None for _, part in rest):
            return unit_of(first)
        case t.Product(_, rest):
            return unit_of(rest[-1][1])
    return None


_MADE = {
    ("length", "÷time"): "speed",
    ("length", "×length"): "area",
    ("length", "×length", "×length"): "volume",
    ("area", "×length"): "volume",
    ("length", "×area"): "volume",
    ("volume", "÷area"): "length",
    ("volume", "÷length"): "area",
    ("area", "÷length"): "length",
    ("speed", "×time"): "length",
    ("time", "×speed"): "length",
    ("length", "÷speed"): "time",
}


def _made_unit(node: t.Product) -> tuple[str, Fraction] | Literal[False] | None:
    """Return the unit of a product of amounts in base units, or False where they make none known.

    1200 ml ÷ 150 ml has none; 90 km ÷ 2 h is a speed and 6 m × 10 m an area.
    """
    units = [unit_of(node.first), *(unit_of(part) for _, part in node.rest)]
    if None in units:
        return False
    kinds = tuple(unit[0] for unit in units if unit)
    if len(kinds) == 2 and node.rest[0][0] == "÷" and kinds[0] == kinds[1]:
        return None
    signed = (kinds[0], *(op + kind for (op, _), kind in zip(node.rest, kinds[1:], strict=True)))
    return (_MADE[signed], Fraction(1)) if signed in _MADE else False


def bounded(node: t.Node) -> bool:
    """Tell whether the value of an expression can be worked out within the bounds.

    >>> from itembank.notation.parse import parse
    >>> bounded(parse("(x + 1)^2")), bounded(parse("9^(9^9)"))
    (True, False)
    """
    return _bits(node) <= LARGEST_BITS and _size(node)[1] <= MOST_WORK


def _algebra(node: t.Node) -> Quotient:
    if not bounded(node):
        raise NotExact("this multiplies out to too many terms")
    return algebra(node)


def _size(node: t.Node) -> tuple[int, int]:
    """Return how many terms multiplying out may give at most, and what it may cost.

    Counted generously, a quotient as the terms of its top and bottom together.
    """
    match node:
        case t.Sum(first, rest):
            sizes = [_size(part) for part in (first, *(term for _, term in rest))]
            # Brought over one denominator, every top is multiplied by all the other bottoms.
            if any(isinstance(part, t.Frac) for part in t.walk(node) if t.symbols(part)):
                return _multiplied(sizes)
            return sum(n for n, _ in sizes), sum(work for _, work in sizes)
        case t.Power(base, exponent):
            try:
                times = abs(int(exact(exponent)))
            except t.NotationError:
                return 1, 1
            return _multiplied([_size(base)] * min(times, 64))
        case t.Juxt() | t.Product() | t.Frac():
            return _multiplied([_size(part) for part in t.children(node)])
        case t.Root(of, _) if not t.symbols(of):
            # Squares are looked for by trial division, up to the square root.
            try:
                inside = exact(of)
            except t.NotationError:
                return 2, 10
            return 2, 1 + isqrt(abs(inside.numerator * inside.denominator)) // 64
        case t.Int() | t.Dec() | t.Sym() | t.Mixed() | t.Blank():
            return 1, 1
    sizes = [_size(part) for part in t.children(node)]
    return max((n for n, _ in sizes), default=1), sum(work for _, work in sizes) + 1


def _multiplied(sizes: list[tuple[int, int]]) -> tuple[int, int]:
    terms, work = 1, 0
    for count, cost in sizes:
        work += cost + terms * count
        # Past the bound already; unchecked, this number would itself grow without end.
        terms = min(terms * count, 10**6)
    return terms, work


def _has_atoms(node: t.Node) -> bool:
    return any(
        isinstance(part, t.Root)
        or (isinstance(part, t.Power) and type(part.exponent) is not t.Int)
        or (_is_function(part) and t.symbols(part))
        for part in t.walk(node)
    )


def _is_function(node: t.Node) -> bool:
    """Tell whether nothing is known of a node but that like parts make it worth the same."""
    return type(node) not in ALGEBRA and t.is_expression(node) and bool(t.children(node))


def _plain(node: t.Node, atoms: list[tuple[object, str]]) -> t.Node:
    """Return `node` with roots of letters, and powers with letters raised, as letters of their own.

    The same root or power gets the same letter; `atoms` holds those met so far.
    """
    if not t.symbols(node):
        return node
    match node:
        # √(a/b) is √a/√b where neither is negative, so both spellings come to the same letters.
        case t.Root(t.Frac(top, bottom), index):
            return _plain(t.Frac(t.Root(top, index), t.Root(bottom, index)), atoms)
        case t.Root(t.Product(first, ((("×" | "÷") as op, second),)), index):
            roots = t.Root(first, index), t.Root(second, index)
            return _plain(t.Product(roots[0], ((op, roots[1]),)), atoms)
        case t.Root(t.Juxt(factors), index):
            return _plain(t.Juxt(tuple(t.Root(factor, index) for factor in factors)), atoms)
        case t.Root(of, index):
            return t.Sym(_atom((index, _algebra(_plain(of, atoms))), atoms))
        case t.Power(base, exponent) if t.symbols(exponent):
            below, above = _plain(base, atoms), _plain(exponent, atoms)
            return t.Sym(_atom((_algebra(below), _algebra(above)), atoms))
        case t.Power(base, exponent):
            power = exact_or_none(exponent)
            if power is not None and power.denominator in (2, 3, 4):
                # x^(1/2) is another way to write √x.
                root = t.Root(bare(base), power.denominator)
                return t.Power(_plain(root, atoms), t.num(power.numerator))
            return t.Power(_plain(base, atoms), exponent)
        case t.Neg(of):
            return t.Neg(_plain(of, atoms))
        case t.Bracket(of):
            return t.Bracket(_plain(of, atoms))
        case t.Frac(top, bottom):
            return t.Frac(_plain(top, atoms), _plain(bottom, atoms))
        case t.Juxt(factors):
            return t.Juxt(tuple(_plain(factor, atoms) for factor in factors))
        case t.Sum(first, rest):
            return t.Sum(_plain(first, atoms), tuple((op, _plain(s, atoms)) for op, s in rest))
        case t.Product(first, pairs):
            return t.Product(_plain(first, atoms), tuple((op, _plain(s, atoms)) for op, s in pairs))
    if _is_function(node):
        inside = [_algebra(_plain(part, atoms)) for part in t.children(node)]
        return t.Sym(_atom((t.frame(node), inside), atoms))
    return node


def _atom(found: object, atoms: list[tuple[object, str]]) -> str:
    for known, name in atoms:
        if known == found:
            return name
    atoms.append((found, f"§{len(atoms)}"))
    return atoms[-1][1]


def says_the_same(given: t.Node, key: t.Relation) -> bool:
    """Tell whether an equation is the key's, rearranged: 3x = y − 2 for x = (y − 2)/3.

    >>> from itembank.notation.parse import parse
    >>> says_the_same(parse("3x = y - 2"), parse("x = (y - 2)/3"))
    True
    """
    equations = []
    for node in (given, key):
        match node:
            case t.Relation(left, (("=", right),)) if t.symbols(node):
                try:
                    top = (_algebra(left) - _algebra(right)).top
                except t.NotationError:
                    return False
            case _:
                return False
        # Both sides the same, 0 = 0, says nothing, though it is true.
        if not top:
            return False
        # An equation times any number says the same: each is divided by one of its coefficients,
        # the same one for both.
        first = min(top, key=repr)
        equations.append({monomial: over(c, top[first]) for monomial, c in top.items()})
    return equations[0] == equations[1]
