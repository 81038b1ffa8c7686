"""What a line with letters is worth, read from its text alone: an engine that only tests use.

Sums, products side by side or with signs, fractions, powers and brackets, in python-flint's
rationals, at values of the letters. Two expressions that agree at several large values with
nothing in common are the same expression (a polynomial has no more roots than its degree).
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from flint import fmpq

POINTS = (1009, 3571, 7919)
"""Values of the first letter; the others go on from there by steps that no question prints."""

_TOKEN = re.compile(r"\s*(\d+(?:\.\d+)?|[A-Za-z]|[-+×÷/^()])")


def worth(text: str, at: Mapping[str, fmpq]) -> fmpq:
    """Return what an expression comes to.

    >>> worth("3(x - 2)^2 + x/4", {"x": fmpq(4)})
    13
    """
    tokens = _TOKEN.findall(text)
    assert "".join(tokens) == re.sub(r"\s", "", text), text
    value, rest = _sum(tokens, at)
    assert not rest, text
    return value


def _sum(tokens: list[str], at: Mapping[str, fmpq]) -> tuple[fmpq, list[str]]:
    value, tokens = _product(tokens, at)
    while tokens and tokens[0] in "+-":
        sign = 1 if tokens[0] == "+" else -1
        other, tokens = _product(tokens[1:], at)
        value += sign * other
    return value, tokens


def _product(tokens: list[str], at: Mapping[str, fmpq]) -> tuple[fmpq, list[str]]:
    if tokens[0] == "-":
        value, tokens = _product(tokens[1:], at)
        return -value, tokens
    value, tokens = _beside(tokens, at)
    while tokens and tokens[0] in "×÷":
        divides = tokens[0] == "÷"
        other, tokens = _beside(tokens[1:], at)
        value = value / other if divides else value * other
    return value, tokens


def _beside(tokens: list[str], at: Mapping[str, fmpq]) -> tuple[fmpq, list[str]]:
    """Return factors side by side, and what they are over."""
    value, tokens = _power(tokens, at)
    while tokens and (tokens[0] == "(" or tokens[0] == "/" or tokens[0].isalpha()):
        if tokens[0] == "/":
            other, tokens = _power(tokens[1:], at)
            value /= other
        else:
            other, tokens = _power(tokens, at)
            value *= other
    return value, tokens


def _power(tokens: list[str], at: Mapping[str, fmpq]) -> tuple[fmpq, list[str]]:
    head, rest = tokens[0], tokens[1:]
    if head == "(":
        value, rest = _sum(rest, at)
        assert rest[0] == ")"
        rest = rest[1:]
    elif head.isalpha():
        value = at[head]
    else:
        whole, _, places = head.partition(".")
        value = fmpq(int(whole + places), 10 ** len(places))
    if rest and rest[0] == "^":
        value, rest = value ** int(rest[1]), rest[2:]
    return value, rest


def same(one: str, other: str) -> bool:
    """Tell whether two expressions are worth the same, whatever their letters are worth."""
    names = sorted(set(re.findall(r"[A-Za-z]", one + other)))
    for point in POINTS:
        at = {name: fmpq(point + 101 * place * place) for place, name in enumerate(names, 1)}
        if worth(one, at) != worth(other, at):
            return False
    return True
