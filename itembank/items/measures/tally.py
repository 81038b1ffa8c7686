"""Counts what stands in some trees: kinds of number, letters and what is done with them."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field

from itembank.notation import tree as t


@dataclass(slots=True)
class Tally:
    """How often each thing stands in some trees."""

    letters: set[str] = field(default_factory=set)
    """Letters that stand for numbers, and the empty box; π is a number."""
    units: set[str] = field(default_factory=set)
    bottoms: list[int] = field(default_factory=list)
    """Denominators of fractions and mixed numbers."""
    largest: int = 0
    fractions: int = 0
    mixed: int = 0
    decimals: int = 0
    recurring: int = 0
    recurring_late: int = 0
    """Recurring decimals with figures before the block that recurs."""
    negatives: int = 0
    double_signs: int = 0
    """Negative numbers that are added, taken away, or stand later in a sum."""
    powers: int = 0
    negative_powers: int = 0
    nought_powers: int = 0
    roots: int = 0
    bars: int = 0
    """Fraction bars with a calculation above or below."""
    number_brackets: int = 0
    number_sums: int = 0
    terms: int = 0
    times: int = 0
    divided: int = 0
    divided_by_fraction: int = 0
    of_letter: int = 0
    """Parts *of* something unknown."""
    taken: int = 0
    """Terms with letters that are taken away or negative."""
    letter_brackets: int = 0
    inner_numbers: int = 0
    """Brackets in which a letter has a number before it."""
    minus_brackets: int = 0
    """Brackets that are taken away, with or without a factor."""
    letter_fractions: int = 0
    fraction_coefficients: int = 0
    letter_products: float = 0
    letter_powers: int = 0
    both_sides: int = 0
    boxes_below: int = 0
    ratios: int = 0
    ratio_parts: int = 0


def tally(nodes: Iterable[t.Node]) -> Tally:
    """Return the counts over some trees.

    >>> from itembank.notation.parse import parse
    >>> found = tally([parse("3(x - 2) = 5 - x"), parse("-4")])
    >>> found.letter_brackets, found.both_sides, found.taken, found.negatives
    (1, 1, 1, 1)
    """
    found = Tally()
    for node in nodes:
        _count(node, found)
    return found


def _count(node: t.Node, found: Tally) -> None:
    kind = type(node)
    if kind is t.Int:
        if node.n > found.largest:  # type: ignore[union-attr]
            found.largest = node.n  # type: ignore[union-attr]
        return
    count = _COUNTS.get(kind)
    # What a counter returns is done with; the rest is counted below it.
    if count is None or not count(node, found):
        for child in t.children(node):
            _count(child, found)


def _lettered(node: t.Node) -> bool:
    """Tell whether a letter or an empty box stands in a tree."""
    kind = type(node)
    if kind is t.Int or kind is t.Dec or kind is t.Mixed:
        return False
    return kind is t.Sym or kind is t.Blank or any(map(_lettered, t.children(node)))


def _sym(node: t.Sym, found: Tally) -> bool:
    if node.name != "π":
        found.letters.add(node.name)
    return True


def _blank(_: t.Blank, found: Tally) -> bool:
    found.letters.add("□")
    return True


def _frac(node: t.Frac, found: Tally) -> bool:
    if isinstance(node.den, t.Blank):
        found.boxes_below += 1
    if isinstance(node.num, t.Int) and isinstance(node.den, t.Int):
        if node.den.n != 1:
            found.fractions += 1
            found.bottoms.append(node.den.n)
        return True
    if _lettered(node):
        found.letter_fractions += 1
    else:
        found.bars += 1
    return False


def _mixed(node: t.Mixed, found: Tally) -> bool:
    found.mixed += 1
    found.bottoms.append(node.den)
    return True


def _dec(node: t.Dec, found: Tally) -> bool:
    found.recurring += bool(node.recurring)
    found.recurring_late += bool(node.recurring and node.places)
    found.decimals += bool(node.places or node.recurring)
    found.largest = max(found.largest, int(node.whole))
    return True


def _neg(node: t.Neg, found: Tally) -> bool:
    if isinstance(node.of, t.Int | t.Dec | t.Frac | t.Mixed | t.Money | t.Quantity | t.Percent):
        found.negatives += 1
    elif _lettered(node.of):
        found.taken += 1
    return False


def _money(node: t.Money, found: Tally) -> bool:
    found.units.add(node.sign)
    return False


def _quantity(node: t.Quantity, found: Tally) -> bool:
    found.units.add(node.unit)
    return False


def _power(node: t.Power, found: Tally) -> bool:
    if _lettered(node.base):
        found.letter_powers += 1
        found.letter_products += not isinstance(node.base, t.Sym)
    else:
        found.powers += 1
        found.negative_powers += isinstance(node.exponent, t.Neg | t.Bracket)
    found.nought_powers += node.exponent == t.Int(0)
    return False


def _root(_: t.Root, found: Tally) -> bool:
    found.roots += 1
    return False


def _bracket(node: t.Bracket, found: Tally) -> bool:
    if _lettered(node.of):
        found.letter_brackets += 1
        found.inner_numbers += any(isinstance(one, t.Juxt) for one in t.children(node.of))
    else:
        found.number_brackets += isinstance(node.of, t.Sum | t.Product)
    return False


def _juxt(node: t.Juxt, found: Tally) -> bool:
    if isinstance(node.factors[0], t.Frac | t.Mixed | t.Dec) and _lettered(node):
        found.fraction_coefficients += 1
    brackets = sum(isinstance(one, t.Bracket) and _lettered(one) for one in node.factors)
    letters = sum(isinstance(one, t.Sym) for one in node.factors)
    found.letter_products += float(brackets >= 2 or (brackets and letters)) + 0.5 * (letters >= 2)
    return False


def _sum(node: t.Sum, found: Tally) -> bool:
    found.terms += len(node.rest)
    found.number_sums += not _lettered(node)
    for op, term in node.rest:
        if op == "-" and _lettered(term):
            found.taken += 1
            parts = (term, *t.children(term))
            found.minus_brackets += any(isinstance(one, t.Bracket) for one in parts)
        inside = term.of if isinstance(term, t.Bracket) else term
        found.double_signs += isinstance(inside, t.Neg)
    return False


def _product(node: t.Product, found: Tally) -> bool:
    for op, factor in node.rest:
        if op == "÷":
            found.divided += 1
            found.divided_by_fraction += isinstance(factor, t.Frac | t.Mixed | t.Bracket)
        else:
            found.times += 1
        found.of_letter += op == "of" and _lettered(factor)
    return False


def _ratio(node: t.Ratio, found: Tally) -> bool:
    found.ratios += 1
    found.ratio_parts = max(found.ratio_parts, len(node.parts))
    return False


def _relation(node: t.Relation, found: Tally) -> bool:
    left, right = node.first, node.rest[0][1]
    if not isinstance(left, t.Ratio) and _lettered(left) and _lettered(right):
        found.both_sides += bool(t.symbols(left) & t.symbols(right))
    return False


_COUNTS: dict[type, Callable[..., bool]] = {
    t.Sym: _sym,
    t.Blank: _blank,
    t.Frac: _frac,
    t.Mixed: _mixed,
    t.Dec: _dec,
    t.Neg: _neg,
    t.Money: _money,
    t.Quantity: _quantity,
    t.Power: _power,
    t.Root: _root,
    t.Bracket: _bracket,
    t.Juxt: _juxt,
    t.Sum: _sum,
    t.Product: _product,
    t.Ratio: _ratio,
    t.Relation: _relation,
}
