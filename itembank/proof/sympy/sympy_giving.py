"""The second road to questions with many right answers.

Importing this module imports sympy.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import lru_cache
from itertools import chain, islice, permutations
from typing import Any

import sympy

from itembank.items.asks import Condition, Give
from itembank.notation import tree as t
from itembank.notation.symbolic import symbol, to_sympy
from itembank.notation.value import NotExact
from itembank.proof.claim.finding import Finding, text
from itembank.proof.sympy.sympy_solving import where_true
from itembank.proof.sympy.sympy_text import sympy_text

MOST_TRIED = 400


def given(ask: Give, key: t.Node) -> Finding:
    """Return an answer that sympy finds, and whether the key is right.

    >>> from itembank.notation import parse
    >>> ask = Give((t.Sym("x"),), (parse("20 < x < 30"),), (Condition("prime"),))
    >>> given(ask, parse("29")).shown, bool(given(ask, parse("27")).fault)
    ('for example 23', True)
    """
    answers: list[tuple[Any, ...]] = []
    for answer in islice(_answers(ask), MOST_TRIED):
        # The same two numbers the other way round are one answer.
        if all(sorted(answer) != sorted(earlier) for earlier in answers) and _right(ask, answer):
            answers.append(answer)
        if len(answers) == 2:
            break
    values = _values_of(key)
    right = len(values) == len(ask.letters) and _right(ask, values)
    # A wrong key, and no answer found: it stays wrong however few answers there are.
    if len(answers) < 2 and (right or answers):
        raise NotExact(f"sympy finds {len(answers) or 'no'} answer, where there should be many")
    ours = f"for example {', '.join(map(sympy_text, answers[0]))}" if answers else ""
    return Finding(ours, "" if right else f"{text(key)} is not one of the answers")


def _values_of(key: t.Node) -> tuple[Any, ...]:
    if isinstance(key, t.Listing):
        return tuple(map(to_sympy, key.parts))
    if isinstance(key, t.Relation) and isinstance(key.first, t.Sym):
        key = key.rest[0][1]
    return (to_sympy(key),)


def _right(ask: Give, values: Sequence[Any]) -> bool:
    if any(value.free_symbols or not value.is_real for value in values):
        return False
    conditions = all(_meets(condition, values) for condition in ask.conditions)
    return conditions and any(_hold(ask, order) for order in permutations(values))


def _hold(ask: Give, values: Sequence[Any]) -> bool:
    at = {symbol(letter.name): value for letter, value in zip(ask.letters, values, strict=True)}
    for relation in ask.relations:
        for link in _links(relation):
            truth = link if link in (sympy.true, sympy.false) else link.xreplace(at)
            if truth not in (sympy.true, sympy.false):
                truth = sympy.simplify(truth)
            if truth not in (sympy.true, sympy.false):
                raise NotExact("sympy cannot tell whether a relation holds")
            if truth == sympy.false:
                return False
    return True


@lru_cache(maxsize=64)
def _links(relation: t.Relation) -> tuple[Any, ...]:
    """Return a relation as sympy's, one for each of its signs; a search asks hundreds of times."""
    links = to_sympy(relation)
    return tuple(links) if isinstance(links, list) else (links,)


_TESTS: dict[str, Callable[..., bool]] = {
    "whole": lambda value: value.is_Integer,
    "positive": lambda value: bool(value.is_positive),
    "negative": lambda value: bool(value.is_negative),
    "even": lambda value: bool(value.is_even),
    "odd": lambda value: bool(value.is_odd),
    "prime": lambda value: value.is_Integer and sympy.isprime(value),
    "square": lambda value: _is_power(value, 2),
    "cube": lambda value: _is_power(value, 3),
    "multiple": lambda value, of: value.is_Integer and of != 0 and (value / of).is_Integer,
    "factor": lambda value, of: value.is_Integer and value > 0 and of % value == 0,
}


def _is_power(value: Any, index: int) -> bool:
    return bool(value.is_Integer and value > 0 and sympy.integer_nthroot(value, index)[1])


def _meets(condition: Condition, values: Sequence[Any]) -> bool:
    if condition.name == "different":
        return len(set(values)) == len(values)
    of = [to_sympy(node) for node in condition.of]
    return all(_TESTS[condition.name](value, *of) for value in values)


def _answers(ask: Give) -> Iterator[tuple[Any, ...]]:
    """Yield values that may be answers."""
    if len(ask.letters) == 1:
        yield from ((value,) for value in _singles(ask, ask.letters[0]))
        return
    if len(ask.letters) > 2:
        raise NotExact("more than two numbers at once are not looked for here")
    first, second = (symbol(letter.name) for letter in ask.letters)
    rows = [row for row in map(to_sympy, ask.relations) if isinstance(row, sympy.Equality)]
    for value in _singles(ask, ask.letters[0]):
        if not rows:
            for partner in islice(_singles(ask, ask.letters[1]), 20):
                yield value, partner
        for row in rows[:1]:
            form = sympy.Poly((row.lhs - row.rhs).subs(first, value), second)
            if form.degree() == 1:
                yield value, -form.nth(0) / form.nth(1)


def _singles(ask: Give, letter: t.Sym) -> Iterator[Any]:
    """Yield values for one letter: from where the relations about it alone are true."""
    x = symbol(letter.name)
    where = sympy.S.Reals
    for relation in ask.relations:
        if t.symbols(relation) - {"π"} == {letter.name}:
            where = sympy.Intersection(where, where_true(relation, x))
    of = {condition.name: [to_sympy(node) for node in condition.of] for condition in ask.conditions}
    if "factor" in of:
        yield from (sympy.Integer(n) for n in sympy.divisors(of["factor"][0]))
        return
    whole = set(of) - {"positive", "negative", "different"}
    for part in where.args if isinstance(where, sympy.Union) else (where,):
        if isinstance(part, sympy.FiniteSet):
            yield from part
        elif part != sympy.S.EmptySet:
            yield from _in_interval(part, bool(whole), of.get("multiple", [sympy.Integer(1)])[0])


def _in_interval(part: Any, whole: bool, step: Any) -> Iterator[Any]:
    low, high = (part.inf, part.sup)
    if whole:
        start = sympy.ceiling(low / step) if low.is_finite else sympy.Integer(0)
        # From the end that there is, outwards: the near multiples are as good as any.
        if not low.is_finite and high.is_finite:
            yield from (step * (sympy.floor(high / step) - k) for k in range(MOST_TRIED // 2))
        yield from (step * (start + k) for k in range(MOST_TRIED // 2))
        return
    if low.is_finite and high.is_finite:
        # Other points than the thirds of a gap that the first road tries.
        yield from (low + (high - low) * sympy.Rational(k, 7) for k in range(1, 7))
        return
    start = low if low.is_finite else high if high.is_finite else sympy.Integer(0)
    away = -1 if not low.is_finite and high.is_finite else 1
    yield from chain.from_iterable(
        (start + away * sympy.Rational(k, 8), start - away * sympy.Rational(k, 8))
        for k in range(1, MOST_TRIED // 2)
    )
