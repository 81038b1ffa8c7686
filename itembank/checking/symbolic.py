"""The second road: sympy, from the printed tree by its symbolic face only.

Importing this module imports sympy.
"""

from __future__ import annotations

import itertools
from typing import Any

import sympy

from itembank.checking.finding import WrongKey
from itembank.checking.printed import mismatched, unprinted
from itembank.errors import CheckFailed
from itembank.items.item import Choose, Compare, Find, Inequality, Item, Order
from itembank.notation.symbolic import symbol, to_sympy
from itembank.notation.tree import (
    Label,
    Listing,
    Node,
    NotationError,
    Ratio,
    Relation,
    Sym,
    symbols,
)

SIGNS = {"<": sympy.Lt, ">": sympy.Gt, "≤": sympy.Le, "≥": sympy.Ge}


def prove(item: Item) -> None:
    """Prove the key of `item` with sympy.

    Raises
    ------
    WrongKey
        If sympy's answer and the key differ; the message gives both.
    CheckFailed
        If sympy cannot settle the question.
    """
    try:
        fault = unprinted(item) or mismatched(item) or _disagreement(item)
    except (NotationError, TypeError, ValueError) as error:
        raise CheckFailed(f"{item.address}: this question cannot be proved: {error}") from error
    if fault:
        raise WrongKey(f"{item.address}: {fault}")


def _disagreement(item: Item) -> str:
    ask, key = item.ask, item.key
    match ask:
        case Find(target, relations):
            return _find(target, relations, key)
        case Inequality(relation):
            return _inequality(relation, key)
        case Order(things, detail):
            if not isinstance(key, Listing) or sorted(map(repr, key.parts)) != sorted(
                map(repr, things)
            ):
                return "the key does not list the numbers of the question"
            low_first = key.parts if detail == "ascending" else key.parts[::-1]
            values = [to_sympy(part) for part in low_first]
            steps = [b - a for a, b in itertools.pairwise(values)]
            return "" if all(step.is_positive for step in steps) else "the key is not in order"
        case Compare(left, right):
            if not isinstance(key, Relation) or (key.first, key.rest[0][1]) != (left, right):
                return "the key does not compare the numbers of the question"
            gap = to_sympy(left) - to_sympy(right)
            sign = "<" if gap.is_negative else ">" if gap.is_positive else "="
            return "" if key.rest[0][0] == sign else f"the sign is {sign}, the key says {key}"
        case Choose(options, detail):
            worth = {name: to_sympy(node) for name, node in options}
            chosen = key.text if isinstance(key, Label) else ""
            if chosen not in worth:
                return f"the key {chosen!r} is not one of the choices"
            side = 1 if detail == "least" else -1
            others = [value for name, value in worth.items() if name != chosen]
            beaten = all((side * (value - worth[chosen])).is_positive for value in others)
            return "" if beaten else f"{chosen} is not the {detail}: {worth}"
    raise TypeError(ask)


def _find(target: Node, relations: tuple[Relation, ...], key: Node) -> str:
    wanted = _pieces(target)
    given = _pieces(_answer_side(key))
    if len(wanted) != len(given):
        return f"the question wants {len(wanted)} numbers, the key gives {len(given)}"
    if relations:
        wanted = _substitute(wanted, relations, isinstance(target, Ratio))
    if isinstance(target, Ratio):
        # Proportional: every pair of cross products agrees.
        gaps = [
            wanted[i] * given[j] - wanted[j] * given[i]
            for i in range(len(wanted))
            for j in range(i)
        ]
    else:
        gaps = [a - b for a, b in zip(wanted, given, strict=True)]
    if all(sympy.simplify(gap) == 0 for gap in gaps) and all(map(_definite, given)):
        return ""
    return f"sympy makes it {wanted}, the key says {given}"


def _definite(value: Any) -> bool:
    return bool(value.is_finite)


def _pieces(node: Node) -> list[Any]:
    value = to_sympy(node)
    return value if isinstance(value, list) else [value]


def _answer_side(key: Node) -> Node:
    if isinstance(key, Relation):
        if len(key.rest) != 1 or key.rest[0][0] != "=":
            raise ValueError("the key is not one equation")
        return key.rest[0][1]
    return key


def _substitute(wanted: list[Any], relations: tuple[Relation, ...], ratio: bool) -> list[Any]:
    equations: list[Any] = []
    letters: set[Any] = set()
    given: dict[Any, Any] = {}
    for relation in relations:
        letters |= {symbol(name) for name in symbols(relation) if name != "π"}
        for name, value in _given(relation):
            given[symbol(name)] = value
    for relation in relations:
        equations += [e.subs(given) for e in _equations(relation)]
    equations = [e for e in equations if e != 0]
    unknown = sorted(letters - set(given), key=str)
    solved = dict(given)
    if equations or unknown:
        found = sympy.solve(equations, unknown, dict=True)
        if len(found) != 1:
            raise ValueError(f"sympy finds {len(found)} solutions")
        solved |= found[0]
    out = [sympy.simplify(w.subs(solved)) for w in wanted]
    if ratio and out[0] != 0:
        out = [sympy.simplify(value / out[0]) for value in out]
    return out


def _given(relation: Relation) -> list[tuple[str, Any]]:
    if len(relation.rest) == 1 and isinstance(relation.first, Sym):
        value = to_sympy(relation.rest[0][1])
        if not isinstance(value, list) and not value.free_symbols:
            return [(relation.first.name, value)]
    return []


def _equations(relation: Relation) -> list[Any]:
    sides = [relation.first, *(node for _, node in relation.rest)]
    if any(op != "=" for op, _ in relation.rest):
        raise ValueError("not an equation")
    out: list[Any] = []
    for left, right in itertools.pairwise(sides):
        a, b = to_sympy(left), to_sympy(right)
        if isinstance(a, list):
            # Equal ratios: the second is the first times one scale, so its parts are too.
            out += [a[0] * b[i] - a[i] * b[0] for i in range(1, len(a))]
        else:
            out.append(sympy.numer(sympy.together(a - b)))
    return out


def _inequality(relation: Relation, key: Node) -> str:
    if not isinstance(key, Relation) or len(key.rest) != 1:
        return "the key is not an inequality"
    unknown = symbol(next(iter(symbols(relation))))
    asked, answered = to_sympy(relation), to_sympy(key)
    left = sympy.solveset(asked, unknown, sympy.S.Reals)
    right = sympy.solveset(answered, unknown, sympy.S.Reals)
    return "" if left == right else f"sympy makes it {left}, the key says {right}"
