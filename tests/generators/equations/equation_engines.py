"""Calculates what is printed with python-flint or z3, which the tool itself does not use."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import flint
import z3

from itembank.notation import tree as t


def calculate(node: t.Node, number: Callable[[int], Any], known: dict[str, Any]) -> Any:
    """Work a tree out in any arithmetic with + − × ÷: z3's reals, or flint's rationals."""

    def go(part: t.Node) -> Any:
        return calculate(part, number, known)

    match node:
        case t.Int(n):
            return number(n)
        case t.Sym(name):
            return known[name]
        case t.Neg(of):
            return number(0) - go(of)
        case t.Bracket(of):
            return go(of)
        case t.Money(of, _) | t.Quantity(of, _):
            return go(of)  # the stories keep to pounds, metres, litres and degrees
        case t.Frac(top, bottom):
            return go(top) / go(bottom)
        case t.Power(base, t.Int(exponent)):
            value = go(base)
            for _ in range(exponent - 1):
                value = value * go(base)
            return value
        case t.Juxt(factors):
            value = go(factors[0])
            for factor in factors[1:]:
                value = value * go(factor)
            return value
        case t.Sum(first, rest):
            value = go(first)
            for op, term in rest:
                value = value + go(term) if op == "+" else value - go(term)
            return value
        case t.Product(first, rest):
            value = go(first)
            for pop, factor in rest:
                value = value / go(factor) if pop == "÷" else value * go(factor)
            return value
    raise AssertionError(f"{node} is not expected in this strand")


def flint_number(node: t.Node) -> flint.fmpq:
    return calculate(node, flint.fmpq, {})


def answer_of(node: t.Node) -> t.Node:
    return node.rest[0][1] if isinstance(node, t.Relation) else node


def z3_relation(relation: t.Relation, known: dict[str, Any]) -> Any:
    (op, right) = relation.rest[0]
    a = calculate(relation.first, z3.RealVal, known)
    b = calculate(right, z3.RealVal, known)
    return {"=": a == b, "<": a < b, ">": a > b, "≤": a <= b, "≥": a >= b}[op]
