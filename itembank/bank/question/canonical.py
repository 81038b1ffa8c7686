"""What two questions that are the same in disguise have in common.

:func:`canonical` is equal for two questions exactly when one becomes the other by putting the
operands of sums and products, the sides of an equation, or the members of a list to be ordered
in another order; by using other letters; or by saying it in other words. The numbers are those
that are written: 2/4 and 1/2 are different questions, and so are 5 − 3 and 3 − 5.

Letters are numbered by what they do. Each is told apart by how the question looks from it, again
and again until nothing more comes apart (colour refinement); letters that still look alike are
tried in turn. The method is that of B. D. McKay and A. Piperno, *Practical graph isomorphism II*,
*J. Symbolic Computation* 60, 2014 (from memory), on a very small scale.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from itertools import permutations

from itembank.items.asks import Ask, kind_of
from itembank.notation import tree as t
from itembank.notation.clock import clock_seconds

Names = Mapping[str, str]
"""What is written for each letter."""

CONSTANTS = frozenset({"π"})
"""Letters that stand for one number, and so are never another's twin."""
MOST_TRIED = 64
"""Numberings of letters that look alike that are tried; the letters of a fully symmetrical
question look alike in every numbering, so that a first one is as good as any."""
FLIPPED: dict[str, str] = {"<": ">", ">": "<", "≤": "≥", "≥": "≤"}


def canonical(ask: Ask, form: str = "") -> tuple[object, ...]:
    """Return a key that is equal for the same question in disguise, and for no other.

    `form` counts only where it makes the question: ``7/4`` to be written as a decimal is not
    ``7/4`` to be written as a mixed number, but ``3/4 + 1/6`` is the same sum in lowest terms.

    >>> from itembank.notation.parse import parse
    >>> from itembank.items.asks import Find, Solve
    >>> asked, other = parse("3/4 + 1/6"), parse("1/6 + 3/4")
    >>> canonical(Find(asked), "lowest-terms") == canonical(Find(other), "value")
    True
    >>> asked, other = parse("3x + 5 = 11"), parse("11 = 5 + 3y")
    >>> canonical(Solve((asked,))) == canonical(Solve((other,)))
    True
    """
    kind, row, bag = kind_of(ask).twin(ask, form)
    letters = sorted(_letters((*row, *bag)) - CONSTANTS)
    return (*kind, _numbered(letters, lambda names: f"{_row(row, names)} | {_bag(bag, names)}"))


def _letters(nodes: Iterable[t.Node]) -> frozenset[str]:
    return frozenset(name for node in nodes for name in t.symbols(node))


def _numbered(letters: list[str], write: Callable[[Names], str]) -> str:
    """Return what `write` gives for the numbering of the letters that comes first."""
    if len(letters) < 2:
        return write(dict.fromkeys(letters, "#0"))
    left = MOST_TRIED

    def search(ranks: dict[str, int]) -> str:
        nonlocal left
        ranks = _refined(ranks, write)
        members: dict[int, list[str]] = {}
        for name, rank in ranks.items():
            members.setdefault(rank, []).append(name)
        alike = min((rank for rank, names in members.items() if len(names) > 1), default=None)
        if alike is None:
            left -= 1
            return write({name: f"#{rank}" for name, rank in ranks.items()})
        best = ""
        for first in members[alike]:
            if best and left <= 0:
                break
            # A rank is how many letters come before, so the next rank is free.
            apart = {name: alike + 1 for name in members[alike] if name != first}
            found = search({**ranks, **apart})
            best = min(best, found) if best else found
        return best

    return search(dict.fromkeys(letters, 0))


def _refined(ranks: dict[str, int], write: Callable[[Names], str]) -> dict[str, int]:
    """Tell letters of one rank apart by how the question looks from each."""
    while True:
        names = {name: f"#{rank}" for name, rank in ranks.items()}
        seen = {name: (ranks[name], write({**names, name: "#!"})) for name in ranks}
        order = sorted(seen.values())
        finer = {name: order.index(look) for name, look in seen.items()}
        if len(set(finer.values())) == len(set(ranks.values())):
            return finer
        ranks = finer


def _bag(nodes: Iterable[t.Node], names: Names) -> str:
    return "; ".join(sorted(_text(node, names) for node in nodes))


def _row(nodes: Iterable[t.Node], names: Names) -> str:
    return "; ".join(_text(node, names) for node in nodes)


def _text(node: t.Node, names: Names) -> str:
    """Return a tree as text that is equal for trees that differ only in what commutes."""
    match node:
        case t.Int(n):
            return str(n)
        case t.Dec(whole, places, recurring):
            # 4.50 is 4.5: money is written so.
            shown = places if recurring else places.rstrip("0")
            return f"{whole.lstrip('0') or '0'}.{shown}({recurring})"
        case t.Sym(name):
            return names.get(name, name)
        case t.Blank():
            return names.get("□", "□")
        case t.Label(text):
            return repr(text)
        case t.Frac(top, bottom):
            return f"({_text(top, names)}/{_text(bottom, names)})"
        case t.Mixed(whole_part, top_part, bottom_part):
            return f"({whole_part}+{top_part}/{bottom_part})"
        case t.Neg(t.Product() | t.Juxt() as of):
            return _product(of, names, minus=True)
        case t.Neg(of):
            return f"-({_text(of, names)})"
        case t.Percent(of):
            return f"({_text(of, names)})%"
        case t.Money(amount, sign):
            return f"{sign}({_text(amount, names)})"
        case t.Quantity(amount, unit):
            return f"({_text(amount, names)}){unit!r}"
        case t.MixedUnits(parts):
            return f"({_row(parts, names)})"
        case t.ClockTime():
            return f"time {clock_seconds(node)}"
        case t.Power(base, exponent):
            return f"({_text(base, names)})^({_text(exponent, names)})"
        case t.Root(of, index):
            return f"root{index}({_text(of, names)})"
        case t.Bracket(of):
            return _text(of, names)
        case t.Sum():
            return _sum(node, names)
        case t.Product() | t.Juxt():
            return _product(node, names)
        case t.Ratio(parts):
            return f"[{' : '.join(_text(part, names) for part in parts)}]"
        case t.Relation():
            return _relation(node, names)
        case t.Listing(parts):
            return f"[{_row(parts, names)}]"
        case t.Either(parts):
            return f"any[{_bag(parts, names)}]"
    return _as_built(node, names)


def _as_built(node: t.Node, names: Names) -> str:
    """Return a tree of a kind of which nothing is known: what it is, and what stands below it."""
    below = t.children(node)
    empty = t.rebuilt(node, tuple(t.Blank() for _ in below))
    return f"{empty!r}[{_row(below, names)}]"


def _sum(node: t.Sum, names: Names) -> str:
    """Return a sum as its signed terms in a fixed order.

    A minus in front of a number makes it a negative number, so that −3 + 5 is 5 + (−3) in
    another order and not 5 − 3; among letters −3x + 5 is 5 − 3x.
    """
    first: tuple[str, t.Node] = ("+", node.first)
    if t.symbols(node):
        match node.first:
            case t.Neg(of):
                first = ("-", of)
            case t.Product(t.Neg(of), rest):
                first = ("-", t.Product(of, rest))
    terms = [first, *node.rest]
    return f"({''.join(sorted(f'{sign}<{_text(term, names)}>' for sign, term in terms))})"


def _product(node: t.Product | t.Juxt, names: Names, minus: bool = False) -> str:
    """Return a product as what is multiplied and what is divided by, each in a fixed order."""
    above, below = _factors(node)
    first = above[0]
    if isinstance(first, t.Neg):
        minus, first = not minus, first.of
    # The minus of −3 × 4 belongs to the 3, so that it is 4 × (−3) and not 3 × (−4).
    if minus and not t.symbols(first):
        minus, first = False, t.Neg(first)
    tops = sorted(_text(factor, names) for factor in (first, *above[1:]))
    bottoms = sorted(_text(factor, names) for factor in below)
    under = f"÷{'÷'.join(bottoms)}" if bottoms else ""
    return f"{'-' if minus else ''}({'×'.join(tops)}{under})"


def _factors(node: t.Node) -> tuple[list[t.Node], list[t.Node]]:
    """Return what is multiplied and what is divided by; 2x × 3 has three factors."""
    match node:
        case t.Juxt(factors):
            return list(factors), []
        case t.Product(first, rest):
            above, below = _factors(first)
            for op, factor in rest:
                tops, bottoms = _factors(factor)
                (below if op == "÷" else above).extend(tops)
                (above if op == "÷" else below).extend(bottoms)
            return above, below
    return [node], []


def _relation(node: t.Relation, names: Names) -> str:
    ops = [op for op, _ in node.rest]
    sides = [node.first, *(side for _, side in node.rest)]
    if set(ops) == {"="}:
        ratios = [side.parts for side in sides if isinstance(side, t.Ratio)]
        if len(ratios) == len(sides) and len({len(parts) for parts in ratios}) == 1:
            return _ratios(ratios, names)
        return f"({' = '.join(sorted(_text(side, names) for side in sides))})"
    texts = [_text(side, names) for side in sides]
    back = [FLIPPED.get(op, op) for op in reversed(ops)]
    return min(_chain(texts, ops), _chain(texts[::-1], back))


def _chain(sides: list[str], ops: Iterable[str]) -> str:
    return (
        f"({sides[0]}{''.join(f' {op} {side}' for op, side in zip(ops, sides[1:], strict=True))})"
    )


def _ratios(ratios: list[tuple[t.Node, ...]], names: Names) -> str:
    """Return equal ratios by their columns: a : b = 2 : 3 is b : a = 3 : 2."""
    rows = [[_text(part, names) for part in parts] for parts in ratios]
    if len(rows) > 4:  # more orders than are worth trying
        return f"({' = '.join(sorted(' : '.join(row) for row in rows))})"
    return min(
        f"({' | '.join(sorted(' = '.join(column) for column in zip(*order, strict=True)))})"
        for order in permutations(rows)
    )
