"""Whether two sides of working are what the sign between them says, told only where it is certain.

Units are often left out of working, and decimals rounded: what may agree that way is not held
to be false.
"""

from __future__ import annotations

from fractions import Fraction

from itembank.items.forms.value_forms import value
from itembank.marking.worth.letters_unknown import PI
from itembank.marking.worth.same_worth import same
from itembank.marking.worth.worth import bounded, unit_of
from itembank.notation import tree as t
from itembank.notation.units import CURRENCY, UNITS
from itembank.notation.value import exact


def flat(node: t.Node) -> bool:
    """Tell whether a side is a number that may stand as an answer, finished or nearly so.

    >>> from itembank.notation.parse import parse
    >>> [flat(parse(text)) for text in ("7", "£4.50", "7/7", "3 + 4", "x")]
    [True, True, True, False, False]
    """
    inner = node
    while isinstance(inner, t.Neg | t.Bracket | t.Money | t.Quantity | t.Percent):
        inner = t.children(inner)[0]
    match inner:
        case t.Frac(t.Int(), t.Int()) | t.Mixed():
            return True  # an answer, if an unfinished one: 7/7
    return not t.symbols(node) and not isinstance(node, t.Ratio | t.Label) and not value(node)


def ratios_hold(left: t.Node, right: t.Node) -> bool | None:
    """Compare two ratios by size, in whatever units: 25p : £3.50 = 1 : 14."""
    if not (isinstance(left, t.Ratio) and isinstance(right, t.Ratio)):
        return None
    pairs = list(zip(left.parts, right.parts, strict=False))
    if len(left.parts) != len(right.parts) or not all(bounded(p) for pair in pairs for p in pair):
        return None
    # As typed, then without units, which are often left out of working.
    for change in (lambda node: node, bare):
        a, b = ([exact(change(pair[i])) for pair in pairs] for i in (0, 1))
        if all(x * b[0] == y * a[0] for x, y in zip(a, b, strict=True)):
            return True
    # Some parts may have their unit left out.
    return None if _units_in(left) or _units_in(right) else False


def numbers_hold(left: t.Node, op: t.RelationOp, right: t.Node) -> bool | None:
    """Tell whether two sides without letters are what the sign says, or None where it is not sure.

    >>> from itembank.notation.parse import parse
    >>> pairs = (("1/3", "0.33"), ("120", "£1.20"), ("3 + 4", "8"))
    >>> [numbers_hold(parse(left), "=", parse(right)) for left, right in pairs]
    [True, None, False]
    """
    if not (bounded(left) and bounded(right)):
        return None
    if op == "=" and same(left, right):
        return True
    try:
        a, b = exact(left), exact(right)
    except t.NotationError:
        return _roots_hold(left, right) if op == "=" else None
    if op == "=":
        if a == b or _without_units(left, right) or _about(left, right) or _about(right, left):
            return True
        # 10% = 8 leaves out what the percentage is of.
        percents = [any(isinstance(p, t.Percent) for p in t.walk(s)) for s in (left, right)]
        return None if percents[0] != percents[1] or _unit_left_out(left, right) else False
    # 5 < £4.20 may be about pence: not certain enough to be called false.
    if any(_units_in(side) for side in (left, right)) and _units_in(left) != _units_in(right):
        return None
    return {"<": a < b, ">": a > b, "≤": a <= b, "≥": a >= b, "≠": a != b}[op]


def _roots_hold(left: t.Node, right: t.Node) -> bool | None:
    """Compare sides that hold a surd, π or a sine: false only where neither can be rounded."""
    sides = bare(left), bare(right)
    if same(*sides) and not _clash(left, right):
        return True
    # 12 × cos(57°) = 7, 5π = 16 and √2 = 1.4 are rounded; 5 m of 5π m left out is no mistake.
    parts = [part for side in sides for part in t.walk(side)]
    if any(isinstance(part, t.Dec | t.Trig) for part in parts) or _units_in(left) != _units_in(
        right
    ):
        return None
    return None if (PI in t.symbols(left)) != (PI in t.symbols(right)) else False


def _without_units(left: t.Node, right: t.Node) -> bool:
    """Tell whether two sides agree as bare numbers: units are often left out of working."""
    try:
        return exact(bare(left)) == exact(bare(right)) and not _clash(left, right)
    except t.NotationError:
        return False


def _clash(left: t.Node, right: t.Node) -> bool:
    """Tell whether both sides are single amounts in different units of one kind: 5 m = 5 cm."""
    first, other = unit_of(left), unit_of(right)
    if first is None or other is None:
        return False
    return first[0] == other[0] and first[1] != other[1] and flat(left) and flat(right)


def bare(node: t.Node) -> t.Node:
    """Return a tree without its units, currency signs and per cent signs.

    >>> from itembank.notation.line import shown_line
    >>> from itembank.notation.parse import parse
    >>> shown_line(bare(parse("3 × £4 + 5%")))
    '3 × 4 + 5'
    """
    match node:
        case t.Quantity(of, _) | t.Money(of, _) | t.Percent(of):
            return bare(of)
        case t.Neg(of):
            return t.Neg(bare(of))
        case t.Bracket(of):
            return t.Bracket(bare(of))
        case t.Sum(first, rest):
            return t.Sum(bare(first), tuple((op, bare(term)) for op, term in rest))
        case t.Product(first, pairs):
            return t.Product(bare(first), tuple((op, bare(factor)) for op, factor in pairs))
        case t.Frac(top, bottom):
            return t.Frac(bare(top), bare(bottom))
        case t.Power(base, exponent):
            return t.Power(bare(base), exponent)
        case t.Root(of, index):
            return t.Root(bare(of), index)
    return node


def _units_in(node: t.Node) -> frozenset[str]:
    return frozenset(
        part.unit if isinstance(part, t.Quantity) else part.sign
        for part in t.walk(node)
        if isinstance(part, t.Quantity | t.Money)
    )


def _unit_left_out(left: t.Node, right: t.Node) -> bool:
    """Tell whether one side is bare and some unit would make the sides agree: 120 = £1.20."""
    for side, other in ((left, right), (right, left)):
        if _units_in(side) or not _units_in(other):
            continue
        number, amount = exact(side), exact(other)
        sizes = [unit.size for unit in (*UNITS.values(), *CURRENCY.values())]
        if any(number * size == amount for size in sizes):
            return True
    return False


def _about(full: t.Node, short: t.Node) -> bool:
    """Tell whether `short` is a decimal that `full` rounds to: 1/3 = 0.33."""
    short = bare(short)
    inner = short.of if isinstance(short, t.Neg) else short
    if not isinstance(inner, t.Dec) or inner.recurring or isinstance(bare(full), t.Dec):
        return False
    # Half of one in the last place, its end too: a half may have been rounded down.
    half = Fraction(1, 2 * 10 ** len(inner.places))
    return abs(exact(bare(full)) - exact(short)) <= half
