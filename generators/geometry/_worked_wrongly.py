"""How pupils work out an angle wrongly, line by line.

The right lines are those of the working: an equation for the angles, what is subtracted from the
whole, and what is shared. A mistake changes one of them, and the others follow.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from generators.geometry import _misconceptions as m
from itembank.items.asks.faulty_line import MOST_LINES
from itembank.items.item import Draft
from itembank.items.kinds.calculations import value_of
from itembank.items.kinds.line_edits import smaller_from_larger, uncarried
from itembank.items.kinds.mistakes import CARRY_LOST, SMALLER_FROM_LARGER
from itembank.items.kinds.wrong_solutions import WrongSolution
from itembank.notation import tree as t
from itembank.notation.linear import linear
from itembank.notation.value import exact, exact_or_none

_WHOLES = (90, 180, 270, 360)
_OTHER_WHOLE = (
    *(m.LINE_FULL_TURN, m.LINE_RIGHT_ANGLE, m.POINT_HALF_TURN, m.TRIANGLE_FULL_TURN),
    *(m.QUADRILATERAL_HALF_TURN, m.REST_OF_TURN),
)
_ONE_FEWER = (m.LEFT_OUT, m.SQUARE_UNSEEN, m.TRIANGLE_ONE_ANGLE, m.ONE_BASE_ANGLE)


def angles(asked: Draft) -> tuple[WrongSolution, ...]:
    """Return the workings of a question on angles in which one line is wrong.

    >>> from generators.geometry.angles_on_a_line import AnglesOnALine
    >>> from itembank.items.item import Tier
    >>> from itembank.notation.line import line
    >>> topic = AnglesOnALine()
    >>> asked = topic.make(Tier.CORE, *topic.spaces[Tier.CORE][0])
    >>> for found in angles(asked)[:2]:
    ...     print(found.wrong, *map(line, found.lines), sep="; ")
    2; 36° + 45° + k = 180°; k = 180° - 36°; k = 144°
    1; 36° + 45° + k = 360°; k = 360° - 36° - 45°; k = 279°
    """
    lines = [step.maths for step in asked.steps]
    relations = [line for line in lines if isinstance(line, t.Relation)]
    if len(relations) != len(lines) or len(relations) < 2 or not t.symbols(relations[0]):
        return ()
    if isinstance(relations[0].rest[-1][1], t.Int):
        made = _with_letters(asked, relations)
    else:
        made = _with_sizes(asked, relations)
    return tuple(working for working in made if 2 <= len(working.lines) <= MOST_LINES)


def _with_sizes(asked: Draft, relations: list[t.Relation]) -> Iterator[WrongSolution]:
    first, *later = relations
    # Each later line is a letter, or so many of it, what it is, and what that comes to.
    if not all(
        len(relation.rest) == 2 and len(t.symbols(relation.first)) == 1 for relation in later
    ):
        return
    sums = [relation.rest[0][1] for relation in later]
    taken = sums[0]
    if not isinstance(taken, t.Sum) or first.rest[-1][1] != taken.first:
        return
    for slip in asked.slips:
        value = exact_or_none(value_of(slip.wrong))
        if value is None or value == exact(value_of(asked.key)):
            continue
        if slip.misconception in _OTHER_WHOLE:
            for whole in (t.Quantity(t.Int(size), "°") for size in _WHOLES):
                rest = _followed(later, t.Sum(whole, taken.rest), value)
                if rest and whole != taken.first:
                    equation = t.equals(first.first, whole)
                    yield WrongSolution(slip.misconception, (equation, *rest), 1)
        if slip.misconception in _ONE_FEWER:
            for place in range(len(taken.rest) - 1, -1, -1):
                fewer = (*taken.rest[:place], *taken.rest[place + 1 :])
                rest = _followed(later, t.Sum(taken.first, fewer), value) if fewer else None
                if rest:
                    yield WrongSolution(slip.misconception, (first, *rest), 2)
                    break
        if slip.misconception == m.NOT_SHARED and exact(sums[0]) == value and len(later) == 2:
            angle = t.equals(later[-1].first, later[0].rest[-1][1])
            yield WrongSolution(m.NOT_SHARED, (first, t.equals(later[0].first, taken), angle), 3)
    yield from _in_columns(first, later, taken)


def _in_columns(
    first: t.Relation, later: list[t.Relation], taken: t.Sum
) -> Iterator[WrongSolution]:
    """Yield the workings in which the angles are added, or taken away, wrongly in columns."""
    whole, *known = (int(exact(part)) for part in t.children(taken))
    x, total = later[0].first, sum(known)
    if len(known) > 1 and len(later) == 1:
        told = t.add(*(part for _, part in taken.rest))
        lost = uncarried(known)
        if max(known) < lost < min(whole, total):
            left = [_taken(x, whole, lost), t.equals(x, _degrees(whole - lost))]
            yield WrongSolution(CARRY_LOST, (t.equals(told, _degrees(lost)), *left), 1)
        wrong = smaller_from_larger(whole, total)
        if wrong != whole - total:
            left = [_taken(x, whole, total), t.equals(x, _degrees(wrong))]
            added = t.equals(told, _degrees(total))
            yield WrongSolution(SMALLER_FROM_LARGER, (added, *left), 3)
        return
    wrong = smaller_from_larger(whole, total)
    if len(known) > 1 or wrong == whole - total or total < 10:
        return
    lines = [first, t.equals(x, taken), t.equals(x, _degrees(wrong))]
    if len(later) == 2:
        shared = t.replaced(later[1].rest[0][1], {later[0].rest[1][1]: _degrees(wrong)})
        if exact(shared).denominator > 1:
            return
        lines.append(t.equals(later[1].first, _degrees(exact(shared))))
    yield WrongSolution(SMALLER_FROM_LARGER, tuple(lines), 3)


def _taken(x: t.Node, whole: int, known: int) -> t.Relation:
    return t.equals(x, t.sub(_degrees(whole), _degrees(known)))


def _followed(
    later: list[t.Relation], taken: t.Sum, value: Fraction
) -> tuple[t.Relation, ...] | None:
    """Return the lines from a wrong difference on, if they come to the value; None if not."""
    made, lines = exact(taken), [t.equals(later[0].first, taken)]
    for before, relation in pairwise(later):
        shared = t.replaced(relation.rest[0][1], {before.rest[1][1]: _degrees(made)})
        lines.append(t.equals(relation.first, shared))
        made = exact(shared)
    if made != value or made <= 0 or made.denominator > 1:
        return None
    return (*lines, t.equals(later[-1].first, _degrees(made)))


def _degrees(size: Fraction | int) -> t.Quantity:
    return t.Quantity(t.Int(int(size)), "°")


def _with_letters(asked: Draft, relations: list[t.Relation]) -> Iterator[WrongSolution]:
    """Yield the wrong workings of an equation: ax + b = W after like terms are collected."""
    first, collected, *rest = relations
    whole, left = linear(first.rest[-1][1]), linear(collected.first)
    letters = t.symbols(first)
    if len(letters) != 1 or len(rest) != 2 or set(whole) - {""}:
        return
    x = t.Sym(next(iter(letters)))
    times, number, total = left.get(x.name, 0), left.get("", 0), int(whole[""])
    if times <= 1 or not number or rest[0].first != t.juxt(t.Int(int(times)), x):
        return
    for mistake, sum_, line in (
        *((which, size, 1) for which in _OTHER_WHOLE for size in _WHOLES if size != total),
        (m.NUMBERS_LEFT_OUT, total, 2),
        (m.NUMBERS_WRONG_WAY, total, 3),
    ):
        made = _letters_gone_wrong(first, collected, rest[0].first, sum_, line)
        value = exact(made[-1].rest[-1][1]) / times
        known = [slip for slip in asked.slips if slip.misconception == mistake]
        if line == 1 and value not in [exact_or_none(value_of(slip.wrong)) for slip in known]:
            continue
        if value > 0 and value.denominator == 1 and value != exact(value_of(asked.key)):
            yield WrongSolution(mistake, (*made, t.equals(x, t.Int(int(value)))), line)


def _letters_gone_wrong(
    first: t.Relation,
    collected: t.Relation,
    lot_of: t.Node,
    total: int,
    at: int,
) -> list[t.Relation]:
    """Return the lines up to the one in which a multiple of the letter stands alone."""
    number = int(linear(collected.first).get("", 0))
    whole = t.num(total)
    if at == 1:
        left = total - number
        return [
            t.equals(first.first, whole),
            t.equals(collected.first, whole),
            t.equals(lot_of, t.num(left)),
        ]
    if at == 2:
        return [first, t.equals(lot_of, whole)]
    return [first, collected, t.equals(lot_of, t.num(total + number))]
