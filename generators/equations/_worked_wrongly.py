"""Solutions of equations in which one line goes wrong, and what follows from that line.

The right lines are those of the working. From each to the next one thing is done to both sides; a
pupil who makes a mistake does it to one side, or to a part of it, and goes on rightly.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise
from typing import NamedTuple, TypeAlias

from generators.equations import _misconceptions as m
from generators.equations._asks import asking, letter_left, number_left, undo_number, undo_product
from generators.equations._balance import balance
from generators.equations._words import shown, shown_factor
from generators.equations._writing import side, terms
from generators.equations._wrong_lines import root
from itembank.items.item import Draft, Find, Misconception
from itembank.items.kinds.wrong_solutions import WrongSolution
from itembank.notation import tree as t
from itembank.notation.linear import linear

MOST_LINES = 4
_NEAT = 9
"""The largest denominator of a wrong solution that does not look wrong by itself."""
_LARGEST = 999

Sides: TypeAlias = tuple[Fraction, Fraction, Fraction, Fraction]
"""The equation ax + b = cx + d as its four numbers."""


class _Wrong(NamedTuple):
    mistake: Misconception
    line: t.Relation
    sides: Sides
    tidy: bool = True
    """Whether the line is written with at most one letter and one number on a side."""


def wrong_solutions(asked: Draft) -> tuple[WrongSolution, ...]:
    """Return how the solution of an equation goes wrong by the mistakes of one line.

    Those that end in a whole number, or in a fraction that is not awkward where none does.

    >>> from generators.equations._to_solve import to_solve
    >>> from itembank.notation import parse
    >>> from itembank.notation.line import line
    >>> x, equation = t.Sym("x"), parse("3x + 2 = 14")
    >>> asked = to_solve(equation, x, 4, balance(x, 3, 2, 0, 14), (), (3, 2))
    >>> for found in wrong_solutions(asked):
    ...     print(found.wrong, *map(line, found.lines), sep="; ")
    2; 3x = 12; x = 9
    """
    if not (isinstance(asked.ask, Find) and isinstance(asked.ask.target, t.Sym)):
        raise ValueError("no equation in one letter is solved")
    x = asked.ask.target
    asks = asked.ask.relations[0]
    # Beside a balance the working may print the equation again.
    right = (asks, *(step.maths for step in asked.steps if step.maths != asks))
    a, _, c, _ = _sides(x, right[0])
    two_sided = bool(a and c)
    found: dict[int, list[WrongSolution]] = {}
    for place, (before, after) in enumerate(pairwise(right), start=1):
        if not (isinstance(before, t.Relation) and isinstance(after, t.Relation)):
            continue
        for wrong in _gone_wrong(x, _turned(x, before, after), after, two_sided):
            value = root(*wrong.sides)
            if value is None or abs(value) > _LARGEST or wrong.line == after:
                continue
            rest = list(_rest(x, wrong))
            while place + len(rest) > MOST_LINES and len(rest) > 1:
                del rest[-2]  # two steps in one, as pupils write them
            lines = (*right[1:place], wrong.line, *rest)
            if not 2 <= len(lines) <= MOST_LINES or value == root(*_sides(x, right[0])):
                continue
            made = WrongSolution(
                wrong.mistake, tuple(line for line in lines if line is not None), place
            )
            if value and value.denominator <= _NEAT:
                found.setdefault(_rank(wrong.mistake, value), []).append(made)
    return tuple(found[min(found)]) if found else ()


def _rank(mistake: Misconception, value: Fraction) -> int:
    """Return how gladly a solution is asked about: whole first, and by the commoner mistakes."""
    return 2 * (value.denominator > 1) + (mistake.id == m.SUBTRACTS_MULTIPLIER.id)


def _turned(x: t.Sym, before: t.Relation, after: t.Relation) -> t.Relation:
    """Return a line with its sides exchanged where the next one has its letters on the other."""
    a, _, c, _ = _sides(x, before)
    e, _, g, _ = _sides(x, after)
    if (bool(a), bool(c)) == (bool(g), bool(e)) != (bool(e), bool(g)):
        return t.equals(before.rest[0][1], before.first)
    return before


def _sides(x: t.Sym, relation: object) -> Sides:
    assert isinstance(relation, t.Relation)
    left, right = linear(relation.first), linear(relation.rest[0][1])
    nought = Fraction(0)
    return (
        *(left.get(x.name, nought), left.get("", nought)),
        *(right.get(x.name, nought), right.get("", nought)),
    )


def _rest(x: t.Sym, wrong: _Wrong) -> Iterator[t.Node]:
    """Yield the lines that follow rightly from a wrong one."""
    a, b, c, d = wrong.sides
    if not wrong.tidy:
        yield t.equals(side(a, x, b), side(c, x, d))
    if (a == 1 and not b and not c) or (c == 1 and not d and not a):
        return
    for step in balance(x, a, b, c, d):
        assert step.maths is not None
        yield step.maths


def _gone_wrong(
    x: t.Sym, before: t.Relation, after: t.Relation, two_sided: bool
) -> Iterator[_Wrong]:
    a, b, c, d = _sides(x, before)
    e, f, g, h = _sides(x, after)
    letters, number = a - e, b - f
    if (letters, number) == (c - g, d - h) and (letters or number):
        if letters and not number:
            yield from _letter_moved(x, letters, (a, b, c, d), after)
        elif not letters:
            yield from _number_moved(x, number, (a, b, c, d), after, two_sided)
    elif not (b or c or f or g) and e == 1 and a.denominator == 1 and d.denominator == 1:
        # ax = d: the multiplier is undone by the wrong operation.
        mistake = asking(m.SUBTRACTS_MULTIPLIER, undo_product(int(a), x))
        yield _Wrong(mistake, t.equals(x, t.num(int(d - a))), (e, f, g, d - a))
    yield from _cleared(x, before, after)
    yield from _opened(x, before)


def _cleared(x: t.Sym, before: t.Relation, after: t.Relation) -> Iterator[_Wrong]:
    """Yield the line in which fractions are cleared on one side alone."""
    a, b, c, d = _sides(x, before)
    e, f, g, h = _sides(x, after)
    if c or g or not a or not d or h == d or (e * d, f * d) != (a * h, b * h):
        return
    if isinstance(before.first, t.Sum) and isinstance(after.first, t.Sum) and h % d == 0:
        times = h / d
        question = (
            f"You multiply both sides by {shown(times)}. What is {shown(d)} × {shown(times)}?"
        )
        line = t.equals(after.first, before.rest[0][1])
        yield _Wrong(asking(m.PART_CLEARED, question), line, (e, f, g, d), tidy=f != 0)


def _number_moved(
    x: t.Sym, number: Fraction, sides: Sides, after: t.Relation, two_sided: bool
) -> Iterator[_Wrong]:
    """Yield the line in which a number is taken to the other side with its sign unchanged."""
    a, b, c, d = sides
    if any(value.denominator > 1 for value in (b, d)):
        return
    stays = d if b == number else b
    wrong = (a, Fraction(0), c, d + number) if b == number else (a, b + number, c, Fraction(0))
    line = _beside(x, wrong, after, left=b == number)
    if two_sided:
        mistake = asking(m.NUMBER_ACROSS, number_left(number, stays))
    else:
        mistake = asking(m.SAME_OPERATION, undo_number(number))
    yield _Wrong(mistake, line, wrong)


def _letter_moved(x: t.Sym, letters: Fraction, sides: Sides, after: t.Relation) -> Iterator[_Wrong]:
    """Yield the line in which the letters are taken to the other side with their sign unchanged."""
    a, b, c, d = sides
    if not a or not c:
        return  # the letters are moved from −ax alone; there it is another mistake
    stays = c if a == letters else a
    wrong = (Fraction(0), b, c + letters, d) if a == letters else (a + letters, b, Fraction(0), d)
    if not wrong[0] and not wrong[2]:
        return
    line = _beside(x, wrong, after, left=a == letters)
    yield _Wrong(asking(m.LETTER_ACROSS, letter_left(stays, letters, x)), line, wrong)


def _beside(x: t.Sym, sides: Sides, after: t.Relation, left: bool) -> t.Relation:
    """Return a wrong line; the side that something left is written as in the right line."""
    a, b, c, d = sides
    if left:
        return t.equals(after.first, side(c, x, d))
    return t.equals(side(a, x, b), after.rest[0][1])


def _opened(x: t.Sym, before: t.Relation) -> Iterator[_Wrong]:
    """Yield lines in which a bracket is multiplied out in part, or with a wrong sign."""
    left, right = before.first, before.rest[0][1]
    brackets = [
        (front, inside.get("", Fraction(0)))
        for node in (left, right)
        for front, inside, bracket in _terms(node)
        if bracket
    ]
    if not brackets or any(front.denominator > 1 for front, _ in brackets):
        return
    for mistake, first_only in ((m.FIRST_TERM_ONLY, True), (m.BRACKET_SIGN, False)):
        questions = [
            f"What is {shown(front)} × {shown_factor(last)}?"
            for front, last in brackets
            if first_only or front < 0
        ]
        if not questions:
            continue
        sides = [_open(x, node, first_only) for node in (left, right)]
        (first, a, b, many), (second, c, d, more) = sides
        yield _Wrong(
            asking(mistake, " ".join(questions)),
            t.equals(first, second),
            (a, b, c, d),
            tidy=not (many or more),
        )


Term: TypeAlias = tuple[Fraction, dict[str, Fraction], bool]
"""A number, what it multiplies, and whether that is a bracket."""


def _terms(node: t.Node) -> Iterator[Term]:
    parts = [("+", node)] if not isinstance(node, t.Sum) else [("+", node.first), *node.rest]
    for op, part in parts:
        sign = -1 if op == "-" else 1
        if isinstance(part, t.Neg):
            sign, part = -sign, part.of
        match part:
            case t.Juxt((front, t.Bracket(inside))):
                yield sign * linear(front)[""], linear(inside), True
            case _:
                yield Fraction(sign), linear(part), isinstance(part, t.Bracket)


def _open(x: t.Sym, node: t.Node, first_only: bool) -> tuple[t.Node, Fraction, Fraction, bool]:
    """Return a side opened wrongly, its letters, its number, and whether more is to collect."""
    if not any(bracket for _, _, bracket in _terms(node)):
        form = linear(node)
        return node, form.get(x.name, Fraction(0)), form.get("", Fraction(0)), False
    written: list[t.Node] = []
    letters = number = Fraction(0)
    for front, inside, bracket in _terms(node):
        p, q = front * inside.get(x.name, Fraction(0)), inside.get("", Fraction(0))
        if not bracket:
            q = front * q
        elif not first_only:
            q = -front * q if front < 0 else front * q
        letters, number = letters + p, number + q
        written += [side(p, x)] * bool(p) + [side(Fraction(0), x, q)] * bool(q)
    return terms(written[0], *written[1:]), letters, number, len(written) > 2
