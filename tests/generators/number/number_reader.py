"""Works out a printed line of arithmetic by itself, in python-flint's rationals.

It shares nothing with the tool's own parser and its two roads: a reader by recursive descent of
sums, products, powers and roots, on the text alone.
"""

from __future__ import annotations

import re
from math import isqrt

from flint import fmpq

_TOKEN = re.compile(r"\s*(\d+ \d+/\d+|\d+\.\d+|\d+|[-+×÷/^()√∛%]|of)")


def value(text: str) -> fmpq:
    """Return what a line comes to; a sign of money and units are left out."""
    text = re.sub(r"£", "", text)
    text = re.sub(r"(?<=\d) ?(?:kg|cm|km|ml|mm|min|m|g|l|h|s|p|°C|°)(?![a-z])", "", text)
    tokens = _TOKEN.findall(text)
    assert "".join(tokens).replace(" ", "") == text.replace(" ", ""), text
    found = _sum(tokens)
    assert not tokens, text
    return found


def _sum(tokens: list[str]) -> fmpq:
    total = _product(tokens)
    while tokens and tokens[0] in "+-":
        total = total + _product(tokens) if tokens.pop(0) == "+" else total - _product(tokens)
    return total


def _product(tokens: list[str]) -> fmpq:
    total = _signed(tokens)
    while tokens and tokens[0] in ("×", "÷", "of"):
        total = total / _signed(tokens) if tokens.pop(0) == "÷" else total * _signed(tokens)
    return total


def _signed(tokens: list[str]) -> fmpq:
    if tokens[0] == "-":
        tokens.pop(0)
        return -_signed(tokens)
    found = _power(tokens)
    while tokens and tokens[0] in "/%":
        found = found / 100 if tokens.pop(0) == "%" else found / _power(tokens)
    return found


def _power(tokens: list[str]) -> fmpq:
    base = _atom(tokens)
    if tokens and tokens[0] == "^":
        tokens.pop(0)
        exponent = int(_atom(tokens))
        found = fmpq(1)
        for _ in range(abs(exponent)):
            found *= base
        return found if exponent >= 0 else 1 / found
    return base


def _atom(tokens: list[str]) -> fmpq:
    token = tokens.pop(0)
    if token == "(":
        found = _sum(tokens)
        assert tokens.pop(0) == ")"
        return found
    if token in "√∛":
        return root(_atom(tokens), 2 if token == "√" else 3)
    if token == "-":
        return -_atom(tokens)
    if " " in token:
        whole, part = token.split(" ")
        top, bottom = part.split("/")
        return int(whole) + fmpq(int(top), int(bottom))
    whole, _, places = token.partition(".")
    return fmpq(int(whole + places), 10 ** len(places))


def root(of: fmpq, index: int) -> fmpq:
    """Return a root that is rational, by trying."""
    found = []
    for part in (int(of.p), int(of.q)):
        size = abs(part)
        near = isqrt(size) if index == 2 else round(size ** (1 / 3))
        assert near**index == size, of
        found.append(near if part >= 0 else -near)
    return fmpq(found[0], found[1])
