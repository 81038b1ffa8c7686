"""Typed mathematics brought to the spelling a key has, without doing any of its work.

A sign too many, a times sign beside a letter, a bracket round one number: these are ways of
writing, and no pupil should lose a mark by them. What is left to work out stays as it is.
"""

from __future__ import annotations

from collections.abc import Callable

from itembank.notation.tree import (
    Bracket,
    Dec,
    Either,
    Frac,
    Int,
    Juxt,
    Listing,
    Mixed,
    Money,
    Neg,
    Node,
    Percent,
    Power,
    Product,
    Quantity,
    Ratio,
    Relation,
    Root,
    Sum,
    SumOp,
    Sym,
    children,
    frame,
    symbols,
    with_parts,
)

_LONE = (Int, Dec, Sym, Root)


def tidy(node: Node) -> Node:
    """Return `node` in the spelling of keys: ``3 × x`` as 3x, ``x ÷ 2`` as x/2, ``+ -3`` as − 3.

    >>> from itembank.notation.line import line
    >>> from itembank.notation.parse import parse
    >>> [line(tidy(parse(text))) for text in ("3*x", "x ÷ 2", "2 + -3", "(x + 1)", "(-3)/4")]
    ['3x', 'x/2', '2 - 3', 'x + 1', '-3/4']
    >>> [line(tidy(parse(text))) for text in ("2 × 3x", "6/8", "x = (5)")]
    ['2 × 3x', '6/8', 'x = 5']
    """
    return _tidy(node.of if isinstance(node, Bracket) else node)


def _tidy(node: Node) -> Node:
    match node:
        case Int() | Sym() | Dec() | Mixed():
            return node
        case Neg(of):
            of = _tidy(of)
            # Two minus signs are a way of writing; what they come to is no work of the question.
            return of.of if isinstance(of, Neg) else Neg(of)
        case Bracket(of):
            of = _tidy(of)
            return of if isinstance(of, _LONE) else Bracket(of)
        case Frac(top, bottom):
            return _frac(_bare(_tidy(top)), _bare(_tidy(bottom)))
        case Percent(of):
            return Percent(_tidy(of))
        case Money(amount, sign):
            return _outside(lambda of: Money(of, sign), _tidy(amount))
        case Quantity(amount, unit):
            return _outside(lambda of: Quantity(of, unit), _tidy(amount))
        case Power(base, exponent):
            return Power(_tidy(base), _bare(_tidy(exponent)))
        case Root(of, index):
            return Root(_bare(_tidy(of)), index)
        case Juxt(factors):
            return _juxt([_tidy(factor) for factor in factors])
        case Sum(first, rest):
            return _sum(_bare(_tidy(first)), [(op, _tidy(term)) for op, term in rest])
        case Product():
            return _product(node)
        case Ratio(parts):
            return Ratio(tuple(_bare(_tidy(part)) for part in parts))
        case Relation(first, pairs):
            return Relation(_bare(_tidy(first)), tuple((op, _bare(_tidy(s))) for op, s in pairs))
        case Listing(parts):
            return Listing(tuple(_bare(_tidy(part)) for part in parts))
        case Either(parts):
            return Either(tuple(_bare(_tidy(part)) for part in parts))
    return with_parts(node, _tidy)


def _bare(node: Node) -> Node:
    return node.of if isinstance(node, Bracket) else node


def _unsigned(node: Node) -> Node:
    inner = _bare(node)
    return inner.of if isinstance(inner, Neg) else node


def _outside(make: Callable[[Node], Node], amount: Node) -> Node:
    return Neg(make(amount.of)) if isinstance(amount, Neg) else make(amount)


def _frac(top: Node, bottom: Node) -> Node:
    # A minus over or under whole numbers stands in front; letters keep theirs where it is.
    if isinstance(bottom, Neg) and isinstance(bottom.of, Int) and isinstance(top, Int | Neg):
        return _frac(top.of if isinstance(top, Neg) else Neg(top), bottom.of)
    if isinstance(top, Neg) and isinstance(top.of, Int) and isinstance(bottom, Int):
        return Neg(Frac(top.of, bottom))
    return Frac(top, bottom)


def _sum(first: Node, rest: list[tuple[SumOp, Node]]) -> Node:
    terms: list[tuple[SumOp, Node]] = []
    for op, term in rest:
        inner = _bare(term)
        if isinstance(inner, Neg):
            terms.append(("-" if op == "+" else "+", inner.of))
        # A bracket after a plus changes nothing. After a minus it turns signs: that is left to do.
        elif op == "+" and isinstance(inner, Sum):
            terms += [("+", inner.first), *inner.rest]
        else:
            terms.append((op, term if isinstance(inner, Sum | Product) else inner))
    if isinstance(first, Sum):
        return Sum(first.first, (*first.rest, *terms))
    return Sum(first, tuple(terms))


def _juxt(factors: list[Node]) -> Node:
    flat: list[Node] = []
    negative = False
    # A bracket round one number in front of letters is how (2/3)x is written on a line.
    letters = sum(not symbols(factor) for factor in factors) == 1
    for factor in factors:
        inner = _bare(factor)
        if isinstance(inner, Neg) and not isinstance(inner.of, Sum):
            negative = not negative
            factor = inner = inner.of
        if isinstance(inner, Juxt):
            flat += inner.factors
        elif (isinstance(inner, Frac | Mixed) and not symbols(inner) and letters) or isinstance(
            inner, (Power, *_LONE)
        ):
            flat.append(inner)
        else:
            flat.append(factor)
    # The number comes first, as in 3x, wherever it was typed.
    numbers = [f for f in flat if isinstance(f, Int | Dec | Frac | Mixed) and not symbols(f)]
    if len(numbers) == 1:
        flat.remove(numbers[0])
        flat.insert(0, numbers[0])
    node: Node = flat[0] if len(flat) == 1 else Juxt(tuple(flat))
    return Neg(node) if negative else node


def _product(node: Product) -> Node:
    first = _tidy(node.first)
    rest = [(op, _tidy(factor)) for op, factor in node.rest]
    factors = [first, *(factor for _, factor in rest)]
    if not symbols(node) and not any(isinstance(_bare(f), Root | Juxt) for f in factors):
        return Product(first, tuple(rest))
    if all(op == "×" for op, _ in rest):
        inner = [_unsigned(factor) for factor in factors]
        joined = [f for g in inner for f in (g.factors if isinstance(g, Juxt) else (g,))]
        lead = (Int, Dec, Frac, Mixed)
        if sum(isinstance(_bare(f), lead) for f in joined) <= 1 and all(
            isinstance(f, Int | Dec | Sym | Power | Root | Bracket | Frac | Mixed) for f in joined
        ):
            return _juxt(factors)
    elif len(rest) == 1 and rest[0][0] == "÷":
        return _frac(_bare(first), _bare(rest[0][1]))
    return Product(first, tuple(rest))


def alike(a: Node, b: Node) -> bool:
    """Tell whether two tidied trees are written the same but for the order of terms and factors.

    >>> from itembank.notation.parse import parse
    >>> alike(parse("2 + 3n"), parse("3n + 2")), alike(parse("6/8"), parse("3/4"))
    (True, False)
    """
    return a == b or _sorted(a) == _sorted(b)


def _sorted(node: Node) -> object:
    match node:
        case Sum(first, rest):
            terms = [("+", first), *rest]
            flat = [
                ("-" if op == "+" else "+", t.of) if isinstance(t, Neg) else (op, t)
                for op, t in terms
            ]
            return ("sum", *sorted(repr((op, _sorted(term))) for op, term in flat))
        case Juxt(factors):
            return ("product", *sorted(repr(_sorted(factor)) for factor in factors))
        case Product(first, rest) if all(op == "×" for op, _ in rest):
            return ("product", *sorted(repr(_sorted(f)) for f in (first, *(f for _, f in rest))))
        case Either(parts):
            return ("either", *sorted(repr(_sorted(part)) for part in parts))
        case Listing(parts) | Ratio(parts):
            return (type(node).__name__, *(_sorted(part) for part in parts))
        case Relation(first, rest):
            return ("relation", _sorted(first), *((op, _sorted(side)) for op, side in rest))
        case Neg(of) | Bracket(of) | Percent(of):
            return (type(node).__name__, _sorted(of))
        case Frac(top, bottom):
            return ("fraction", _sorted(top), _sorted(bottom))
        case Power(base, exponent):
            return ("power", _sorted(base), _sorted(exponent))
        case Money(amount, sign):
            return ("money", _sorted(amount), sign)
        case Quantity(amount, unit):
            return ("quantity", _sorted(amount), unit)
        case Dec(whole, places, recurring) if not recurring:
            places = places.rstrip("0")
            return Dec(whole.lstrip("0") or "0", places) if places else Int(int(whole))
    if below := children(node):
        return (frame(node), *map(_sorted, below))
    return node
