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
    >>> counts = tally([parse("3(x - 2) = 5 - x"), parse("-4")])
    >>> counts.letter_brackets, counts.both_sides, counts.taken, counts.negatives
    (1, 1, 1, 1)
    """
    counts = Tally()
    for node in nodes:
        _count(node, counts)
    return counts


def _count(node: t.Node, counts: Tally) -> None:
    kind = type(node)
    if kind is t.Int:
        if node.n > counts.largest:  # type: ignore[union-attr]
            counts.largest = node.n  # type: ignore[union-attr]
        return
    counter = _COUNTS.get(kind)
    # What a counter returns is done with; the rest is counted below it.
    if counter is None or not counter(node, counts):
        for child in t.children(node):
            _count(child, counts)


def _lettered(node: t.Node) -> bool:
    """Tell whether a letter or an empty box stands in a tree."""
    kind = type(node)
    if kind is t.Int or kind is t.Dec or kind is t.Mixed:
        return False
    return kind is t.Sym or kind is t.Blank or any(map(_lettered, t.children(node)))


def _sym(node: t.Sym, counts: Tally) -> bool:
    if node.name != "π":
        counts.letters.add(node.name)
    return True


def _blank(_: t.Blank, counts: Tally) -> bool:
    counts.letters.add("□")
    return True


def _frac(node: t.Frac, counts: Tally) -> bool:
    if isinstance(node.den, t.Blank):
        counts.boxes_below += 1
    if isinstance(node.num, t.Int) and isinstance(node.den, t.Int):
        if node.den.n != 1:
            counts.fractions += 1
            counts.bottoms.append(node.den.n)
        return True
    if _lettered(node):
        counts.letter_fractions += 1
    else:
        counts.bars += 1
    return False


def _mixed(node: t.Mixed, counts: Tally) -> bool:
    counts.mixed += 1
    counts.bottoms.append(node.den)
    return True


def _dec(node: t.Dec, counts: Tally) -> bool:
    counts.recurring += bool(node.recurring)
    counts.recurring_late += bool(node.recurring and node.places)
    counts.decimals += bool(node.places or node.recurring)
    counts.largest = max(counts.largest, int(node.whole))
    return True


def _neg(node: t.Neg, counts: Tally) -> bool:
    if isinstance(node.of, t.Int | t.Dec | t.Frac | t.Mixed | t.Money | t.Quantity | t.Percent):
        counts.negatives += 1
    elif _lettered(node.of):
        counts.taken += 1
    return False


def _money(node: t.Money, counts: Tally) -> bool:
    counts.units.add(node.sign)
    return False


def _quantity(node: t.Quantity, counts: Tally) -> bool:
    counts.units.add(node.unit)
    return False


def _power(node: t.Power, counts: Tally) -> bool:
    if _lettered(node.base):
        counts.letter_powers += 1
        counts.letter_products += not isinstance(node.base, t.Sym)
    else:
        counts.powers += 1
        counts.negative_powers += isinstance(node.exponent, t.Neg | t.Bracket)
    counts.nought_powers += node.exponent == t.Int(0)
    return False


def _root(_: t.Root, counts: Tally) -> bool:
    counts.roots += 1
    return False


def _bracket(node: t.Bracket, counts: Tally) -> bool:
    if _lettered(node.of):
        counts.letter_brackets += 1
        counts.inner_numbers += any(isinstance(part, t.Juxt) for part in t.children(node.of))
    else:
        counts.number_brackets += isinstance(node.of, t.Sum | t.Product)
    return False


def _juxt(node: t.Juxt, counts: Tally) -> bool:
    if isinstance(node.factors[0], t.Frac | t.Mixed | t.Dec) and _lettered(node):
        counts.fraction_coefficients += 1
    brackets = sum(isinstance(factor, t.Bracket) and _lettered(factor) for factor in node.factors)
    letters = sum(isinstance(factor, t.Sym) for factor in node.factors)
    counts.letter_products += float(brackets >= 2 or (brackets and letters)) + 0.5 * (letters >= 2)
    return False


def _sum(node: t.Sum, counts: Tally) -> bool:
    counts.terms += len(node.rest)
    counts.number_sums += not _lettered(node)
    for op, term in node.rest:
        if op == "-" and _lettered(term):
            counts.taken += 1
            parts = (term, *t.children(term))
            counts.minus_brackets += any(isinstance(piece, t.Bracket) for piece in parts)
        inside = term.of if isinstance(term, t.Bracket) else term
        counts.double_signs += isinstance(inside, t.Neg)
    return False


def _product(node: t.Product, counts: Tally) -> bool:
    for op, factor in node.rest:
        if op == "÷":
            counts.divided += 1
            counts.divided_by_fraction += isinstance(factor, t.Frac | t.Mixed | t.Bracket)
        else:
            counts.times += 1
        counts.of_letter += op == "of" and _lettered(factor)
    return False


def _ratio(node: t.Ratio, counts: Tally) -> bool:
    counts.ratios += 1
    counts.ratio_parts = max(counts.ratio_parts, len(node.parts))
    return False


def _relation(node: t.Relation, counts: Tally) -> bool:
    left, right = node.first, node.rest[0][1]
    if not isinstance(left, t.Ratio) and _lettered(left) and _lettered(right):
        counts.both_sides += bool(t.symbols(left) & t.symbols(right))
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
