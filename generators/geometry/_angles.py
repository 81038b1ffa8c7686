"""What the topics on angles have in common: degrees, letters, wordings and working."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal, TypeVar

from generators._turns import by_turns
from generators.equations._balance import balance
from generators.equations._writing import side
from generators.geometry import _misconceptions as m
from itembank.figures.figure import Figure
from itembank.figures.kinds.plane.polygon_faults import kind_of_angle
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Misconception, Step, prompt
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

Part = TypeVar("Part")

LETTERS = "xynckbt"
SIZE_ASKED = (
    "Work out the size of angle {x}.",
    "Find the size of angle {x}.",
    "What is the size of angle {x}?",
    "Calculate the size of angle {x}.",
)
VALUE_ASKED = (
    "Work out the value of {x}.",
    "Find the value of {x}.",
    "Calculate the value of {x}.",
)
LEAST_DRAWN = 20


def deg(size: int) -> t.Quantity:
    """Return so many degrees."""
    return t.Quantity(t.Int(size), "°")


def letter_of(*numbers: int) -> t.Sym:
    """Return the letter of an unknown angle: it changes with the numbers of a question."""
    return t.Sym(by_turns(LETTERS, sum(numbers)))


def value_letter(*numbers: int) -> t.Sym:
    """Return the letter of an expression: none that reaches low, or brackets grow round it."""
    return t.Sym(by_turns("xnckbt", sum(numbers)))


def times_letter(count: int, x: t.Sym) -> t.Node:
    """Return x or 2x."""
    return x if count == 1 else t.juxt(t.Int(count), x)


def degrees_of(a: int, x: t.Sym, b: int = 0) -> t.Quantity:
    """Return (ax + b)° as it stands in an angle.

    >>> from itembank.notation.line import line
    >>> line(degrees_of(2, t.Sym("x"), -5)), line(degrees_of(3, t.Sym("x")))
    ('(2x - 5)°', '3x°')
    """
    inside = side(a, x, b)
    return t.Quantity(t.Bracket(inside) if b else inside, "°")


def not_to_scale(sizes: Sequence[int]) -> tuple[int, ...]:
    """Return sizes near to others, so that measuring does not answer a question.

    Angles that are equal stay so, and what is acute, right, obtuse or reflex and smaller than
    another does too. Where that leaves nothing to change the sizes are as they were.

    >>> not_to_scale((48, 132))
    (55, 125)
    """
    for far in (7, -6, 5, -4, 3, -2):
        for first in range(len(sizes)):
            for place in range(len(sizes)):
                changed = list(sizes)
                changed[first] += far
                changed[place] -= far
                if first != place and _alike(sizes, changed):
                    return tuple(changed)
    return tuple(sizes)


def _alike(sizes: Sequence[int], changed: Sequence[int]) -> bool:
    return (
        min(changed) >= min(LEAST_DRAWN, *sizes)
        and all(kind_of_angle(a) == kind_of_angle(b) for a, b in zip(sizes, changed, strict=True))
        and all(
            (a < b) == (c < d) and (a == b) == (c == d)
            for a, c in zip(sizes, changed, strict=True)
            for b, d in zip(sizes, changed, strict=True)
        )
    )


def total(parts: Sequence[t.Node]) -> t.Node:
    """Return the sum of one or several; a first part that is a sum needs no brackets."""
    first, *others = parts
    if not others:
        return first
    more: tuple[tuple[Literal["+", "-"], t.Node], ...] = tuple(("+", angle) for angle in others)
    if isinstance(first, t.Sum):
        return t.Sum(first.first, (*first.rest, *more))
    return t.Sum(first, more)


def left_over(why: str, x: t.Sym, whole: int, known: Sequence[int], count: int = 1) -> list[Step]:
    """Return the working for angles that make a whole: what is known, and so many of x."""
    parts = [*map(deg, known), *([times_letter(count, x)])]
    rest = whole - sum(known)
    steps = [Step(why, t.equals(total(parts), deg(whole)))]
    if known:
        taken = t.sub(deg(whole), *map(deg, known))
        steps.append(
            Step(
                "Subtract the angles that you know.",
                t.equals(times_letter(count, x), taken, deg(rest)),
            )
        )
    if count > 1:
        shared = t.equals(x, t.divide(deg(rest), t.Int(count)), deg(rest // count))
        steps.append(Step(f"Divide by {count}.", shared))
    return steps


def solving(why: str, x: t.Sym, parts: Sequence[tuple[int, int]], whole: int) -> list[Step]:
    """Return the working for angles ax + b, given as pairs, that make a whole."""
    shown = [side(a, x, b) if a else t.num(b) for a, b in parts]
    grouped = [
        t.Bracket(node) if isinstance(node, t.Sum) and k else node for k, node in enumerate(shown)
    ]
    count, more = sum(a for a, _ in parts), sum(b for _, b in parts)
    steps = [Step(why, t.equals(total(grouped), t.Int(whole)))]
    if len(parts) > 1:
        steps.append(Step("Collect like terms.", t.equals(side(count, x, more), t.Int(whole))))
    return [*steps, *balance(x, count, more, 0, whole)]


def turned(parts: tuple[Part, ...], by: int) -> tuple[Part, ...]:
    """Return the same in the same order, begun at another place.

    >>> turned((1, 2, 3), 4)
    (2, 3, 1)
    """
    at = by % len(parts)
    return parts[at:] + parts[:at]


def wrong_values(
    parts: Sequence[tuple[int, int]], value: int, whole: int, mistaken: Misconception | None = None
) -> list[Wrong]:
    """Return the values that wrong ways give, where angles ax + b make a whole of 180° or 360°."""
    count, more = sum(a for a, _ in parts), sum(b for _, b in parts)
    with_letter = [(a, b) for a, b in parts if a]
    marked = [(a, b) for a, b in parts if a and (a, b) != (1, 0)]
    plain = sum(b for a, b in parts if a)
    numbers = more - plain
    other, usual = (360, m.LINE_FULL_TURN) if whole in (180, 540) else (180, m.POINT_HALF_TURN)
    found: list[Wrong] = [
        (mistaken or usual, whole_number(other - more, count)),
        (m.NUMBERS_LEFT_OUT, whole_number(whole - numbers, count) if plain else None),
        (m.NUMBERS_WRONG_WAY, whole_number(whole - numbers + plain, count) if plain else None),
        (m.ANGLE_NOT_LETTER, marked[0][0] * value + marked[0][1]),
    ]
    if len(with_letter) == 2:
        (a, b), (c, d) = with_letter
        found.append((m.SET_EQUAL, whole_number(d - b, a - c) if a != c else None))
    return [(mistake, wrong) for mistake, wrong in found if wrong != value]


def several_wrong(parts: Sequence[tuple[int, int]], value: int, whole: int) -> bool:
    """Tell whether two wrong ways at least give values of their own."""
    return len({wrong for _, wrong in wrong_values(parts, value, whole)} - {None}) > 1


def whole_number(top: int, bottom: int) -> int | None:
    """Return a quotient that is a whole number above nought, None for any other.

    >>> whole_number(12, 4), whole_number(13, 4), whole_number(-4, 2)
    (3, None, None)
    """
    found, over = divmod(top, bottom) if bottom else (0, 0)
    return found if not over and found > 0 else None


def size_question(
    figure: Figure,
    x: t.Sym,
    size: int,
    steps: Sequence[Step],
    wrong: Sequence[Wrong],
    twin: tuple[object, ...],
) -> Draft:
    """Return the question for the size of an angle that is called by its letter alone."""
    text = prompt(by_turns(SIZE_ASKED, sum(n for n in twin if isinstance(n, int))), x=x)
    apart = slips(*wrong, write=lambda n: deg(int(n)), key=deg(size))
    return Draft(
        text,
        of_figure(figure, text),
        deg(size),
        "quantity",
        tuple(steps),
        apart,
        twin,
        figure=figure,
    )


def value_question(
    figure: Figure,
    x: t.Sym,
    value: int,
    steps: Sequence[Step],
    wrong: Sequence[Wrong],
    twin: tuple[object, ...],
) -> Draft:
    """Return the question for the value of a letter, where angles are (ax + b)°."""
    text = prompt(by_turns(VALUE_ASKED, sum(n for n in twin if isinstance(n, int))), x=x)
    return Draft(
        text,
        of_figure(figure, text),
        t.Int(value),
        "integer",
        tuple(steps),
        slips(*wrong, key=t.Int(value)),
        twin,
        figure=figure,
    )
