"""Reads a key as the solutions it gives, whichever way they are written; no arithmetic."""

from __future__ import annotations

from itembank.marking.worth.same_worth import turned
from itembank.notation import tree as t

Solution = dict[str, t.Node]
"""The value given to each letter, as written."""


class Misfit(t.NotationError):
    """The key is not the kind of answer that the question has."""


def solutions_given(key: t.Node, letters: frozenset[str]) -> list[Solution]:
    """Return the solutions that `key` gives for equations in `letters`.

    One solution is ``x = 3``, ``3`` (where there is one letter) or ``x = 2, y = 5``; several
    are joined by *or*, or in one letter by commas.

    Raises:
        Misfit: the key gives no value, or two, for a letter of a solution.

    >>> from itembank.notation import parse
    >>> solutions_given(parse("x = 2 or x = 5"), frozenset("x"))
    [{'x': Int(n=2)}, {'x': Int(n=5)}]
    """
    cases = key.parts if isinstance(key, t.Either) else (key,)
    solutions = []
    for case in cases:
        # With one letter a comma parts solutions; with several, the values of one solution.
        if isinstance(case, t.Listing) and len(letters) == 1:
            solutions += [_solution((part,), letters) for part in case.parts]
        elif isinstance(case, t.Listing):
            solutions.append(_solution(case.parts, letters))
        else:
            solutions.append(_solution((case,), letters))
    return solutions


def _solution(parts: tuple[t.Node, ...], letters: frozenset[str]) -> Solution:
    solution: Solution = {}
    for part in parts:
        letter, value = _letter_and_value(part, letters)
        if letter in solution:
            raise Misfit(f"the key gives {letter} two values at once")
        solution[letter] = value
    missing = sorted(letters - set(solution))
    if missing:
        raise Misfit(f"the key gives no value for {missing[0]}")
    return solution


def _letter_and_value(part: t.Node, letters: frozenset[str]) -> tuple[str, t.Node]:
    if not isinstance(part, t.Relation):
        if len(letters) != 1:
            raise Misfit("the key does not say which letter has which value")
        return next(iter(letters)), part
    if len(part.rest) != 1 or part.rest[0][0] != "=":
        raise Misfit("the key is not a letter, an equals sign and a value")
    left, right = part.first, part.rest[0][1]
    # 3 = x says the same.
    if not isinstance(left, t.Sym):
        left, right = right, left
    if not isinstance(left, t.Sym):
        raise Misfit("the key is not a letter, an equals sign and a value")
    if left.name not in letters:
        raise Misfit(f"the key is about {left.name}, which the question has not")
    return left.name, right


def value_given(key: t.Node) -> t.Node:
    """Return the value side of a key such as ``x = 3``, or the key itself.

    Raises:
        Misfit: the key is a relation that is not one equation.

    >>> from itembank.notation.line import line
    >>> from itembank.notation.parse import parse
    >>> line(value_given(parse("x = 3"))), line(value_given(parse("3/4")))
    ('3', '3/4')
    """
    if not isinstance(key, t.Relation):
        return key
    if len(key.rest) != 1 or key.rest[0][0] != "=":
        raise Misfit("the key is not one equation")
    left, right = key.first, key.rest[0][1]
    return left if isinstance(right, t.Sym) and not isinstance(left, t.Sym) else right


def says(ours: t.Relation, key: t.Node) -> bool:
    """Tell whether a key is a relation, read from the left or from the right.

    >>> from itembank.notation import parse
    >>> says(parse("3/4 > 2/3"), parse("2/3 < 3/4")), says(parse("3/4 > 2/3"), parse("2/3 > 3/4"))
    (True, False)
    """
    return isinstance(key, t.Relation) and ours in (key, turned(key))


def subjects_given(key: t.Node, letter: t.Sym) -> list[t.Node]:
    """Return what the key says that `letter` equals, in each of its cases.

    Raises:
        Misfit: the key is not the letter, an equals sign and an expression without it.
    """
    given = []
    for case in key.parts if isinstance(key, t.Either) else (key,):
        right = case
        if isinstance(case, t.Relation):
            if len(case.rest) != 1 or case.rest[0][0] != "=":
                raise Misfit("the key is not one equation")
            left, right = case.first, case.rest[0][1]
            if right == letter:
                left, right = right, left
            if left != letter:
                raise Misfit(f"the key does not say what {letter.name} is")
        if letter.name in t.symbols(right):
            raise Misfit(f"{letter.name} stands on both sides of the key")
        given.append(right)
    return given
