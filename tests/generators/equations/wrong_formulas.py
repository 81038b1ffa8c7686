"""Named wrong methods of substitution, each carried out on the printed formula and values."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import flint

from itembank.items.item import Item
from itembank.notation import tree as t
from tests.generators.equations.equation_engines import answer_of, calculate, flint_number


def numbers(item: Item) -> dict[str, Any]:
    """The values a formula is given, by letter."""
    return {
        relation.first.name: flint_number(answer_of(relation))
        for relation in item.prompt
        if isinstance(relation, t.Relation)
        and isinstance(relation.first, t.Sym)
        and not t.symbols(answer_of(relation))
    }


def formula(item: Item) -> t.Relation:
    first = item.prompt[1]
    assert isinstance(first, t.Relation)
    return first


def changed(node: t.Node, rule: Callable[[t.Node], Any], known: dict[str, Any]) -> Any:
    """Work a formula out, `rule` taking the place of the right method where it applies."""
    value = rule(node)
    if value is not None:
        return value
    match node:
        case t.Bracket(of):
            return changed(of, rule, known)
        case t.Frac(top, bottom):
            return changed(top, rule, known) / changed(bottom, rule, known)
        case t.Sum(first, rest):
            value = changed(first, rule, known)
            for op, term in rest:
                part = changed(term, rule, known)
                value = value + part if op == "+" else value - part
            return value
        case t.Juxt(factors):
            value = flint.fmpq(1)
            for factor in factors:
                value = value * changed(factor, rule, known)
            return value
    return calculate(node, flint.fmpq, known)


def worked_out(item: Item, rule: Callable[[t.Node, dict[str, Any]], Any]) -> Any:
    known = numbers(item)
    return changed(answer_of(formula(item)), lambda node: rule(node, known), known)


def digits_beside(node: t.Node, known: dict[str, Any]) -> Any:
    if isinstance(node, t.Juxt) and all(
        isinstance(factor, t.Int | t.Sym) for factor in node.factors
    ):
        return flint.fmpq(
            int("".join(str(calculate(factor, flint.fmpq, known)) for factor in node.factors))
        )
    return None


def factors_added(node: t.Node, known: dict[str, Any]) -> Any:
    if isinstance(node, t.Juxt) and all(
        isinstance(factor, t.Int | t.Sym) for factor in node.factors
    ):
        return sum((calculate(factor, flint.fmpq, known) for factor in node.factors), flint.fmpq(0))
    return None


def no_half(node: t.Node, known: dict[str, Any]) -> Any:
    if isinstance(node, t.Frac) and node.den == t.Int(2):
        return calculate(node.num, flint.fmpq, known)
    return None


def no_bracket(node: t.Node, known: dict[str, Any]) -> Any:
    match node:
        case t.Juxt((t.Bracket(t.Sum(first, (("+", second),))), last)):
            a, b, h = (calculate(node, flint.fmpq, known) for node in (first, second, last))
            return a + b * h
    return None


def sum_first(node: t.Node, known: dict[str, Any]) -> Any:
    match node:
        case t.Sum(first, ((op, t.Juxt((left, right))),)):
            a, b, c = (calculate(node, flint.fmpq, known) for node in (first, left, right))
            return (a + b) * c if op == "+" else (a - b) * c
    return None


def power_of_all(node: t.Node, known: dict[str, Any]) -> Any:
    match node:
        case t.Juxt((front, t.Power(base, t.Int(2)))):
            return (calculate(front, flint.fmpq, known) * calculate(base, flint.fmpq, known)) ** 2
    return None


def doubled(node: t.Node, known: dict[str, Any]) -> Any:
    match node:
        case t.Power(base, t.Int(2)):
            return 2 * calculate(base, flint.fmpq, known)
    return None


def negative_square(node: t.Node, known: dict[str, Any]) -> Any:
    match node:
        case t.Power(base, t.Int(2)):
            value = calculate(base, flint.fmpq, known)
            assert value < 0
            return -(value * value)
    return None


IN_FORMULA = {
    "side-by-side": digits_beside,
    "adds-factors": factors_added,
    "forgets-half": no_half,
    "ignores-bracket": no_bracket,
    "sum-first": sum_first,
    "power-of-all": power_of_all,
    "doubles-for-square": doubled,
    "negative-square": negative_square,
}


def drops_minus(item: Item) -> Any:
    """Substitute the value that is negative without its sign."""
    known = {name: abs(value) for name, value in numbers(item).items()}
    target = item.prompt[3]
    assert isinstance(target, t.Sym)
    if formula(item).first == target:
        return calculate(answer_of(formula(item)), flint.fmpq, known)
    given = numbers(item)
    (turned,) = [name for name in given if name != formula(item).first.name and given[name] < 0]
    return solved_for(item, {**given, turned: -given[turned]})


def solved_for(item: Item, given: dict[str, Any], of: t.Relation | None = None) -> Any:
    """Solve the formula, or another in its place, for the letter asked for."""
    relation = of or formula(item)
    target = item.prompt[3]
    assert isinstance(target, t.Sym)

    def gap(value: int) -> Any:
        known = {**given, target.name: flint.fmpq(value)}
        return calculate(relation.first, flint.fmpq, known) - calculate(
            answer_of(relation), flint.fmpq, known
        )

    return gap(0) / (gap(0) - gap(1))


def undoubled(item: Item) -> Any:
    top = answer_of(formula(item))
    assert isinstance(top, t.Frac)
    return solved_for(item, numbers(item), t.equals(formula(item).first, top.num))


def one_side_only(item: Item) -> Any:
    """P = a + 2b in place of P = 2a + 2b."""
    given = numbers(item)
    return (given["P"] - given["a"]) / 2
