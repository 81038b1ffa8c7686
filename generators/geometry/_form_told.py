"""Sides with a letter in few words: from the perimeter of a square, a rectangle, a triangle."""

from __future__ import annotations

from collections.abc import Mapping

from generators.equations._balance import balance
from generators.equations._writing import side
from generators.geometry._angles import value_letter, whole_number
from generators.geometry._areas import length
from generators.geometry._form_mistakes import (
    LENGTH_NOT_LETTER,
    LETTER_FOR_SHAPE,
    NOT_DIVIDED,
    NUMBER_ADDED,
)
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


def _square(a: int, b: int, x: int) -> bool:
    size = a * x + b
    shown = {size, (size + b) // a if (size + b) % a == 0 else 0, size - b if a > 1 else 0} - {0}
    return size > 3 and len({x, *shown}) > 2 and x not in shown


def _rectangle(a: int, b: int, x: int) -> bool:
    """Keep rectangles x by ax + b whose letter is not one of the likely wrong answers."""
    long, half = a * x + b, (a + 1) * x + b
    return b != 0 and long > 2 and len({x, long, half - b}) == 3 and (a + b + x) % 2 == 0


def _sides(b: int, c: int, x: int) -> bool:
    """Keep triangles x, x + b and 2x + c whose sides fit together."""
    first, second, third = x, x + b, 2 * x + c
    fits = third < first + second and min(first, second, third) > 1
    return b > 0 > c and fits and third > second and len({third, x, second}) == 3


def _value(
    text: str,
    shown: dict[str, t.Node],
    x: t.Sym,
    value: int,
    relation: t.Relation,
    steps: list[Step],
    wrong: list[tuple[Misconception, int | None]],
    twin: tuple[object, ...],
    constants: tuple[int, ...],
) -> Draft:
    """Return the question for the value of a letter that an equation settles."""
    return Draft(
        prompt(f"{text} What is {{x}}?", x=x, **shown),
        Find(x, (relation,)),
        t.Int(value),
        "number",
        tuple(steps),
        slips(*wrong, key=t.Int(value)),
        twin,
        constants=constants,
    )


def _of_square(topic: Topic, tier: Tier, a: int, b: int, value: int) -> Draft:
    """Return the letter of a square's side from its perimeter."""
    x = value_letter(a, b, value)
    size = a * value + b
    each, around = side(a, x, b), t.Int(4 * size)
    return _value(
        "Each side of a square is {e} cm, and its perimeter is {p} cm.",
        {"e": each, "p": around},
        x,
        value,
        t.equals(t.times(t.Int(4), t.Bracket(each)), around),
        [
            Step("Share the perimeter among the four sides.", t.equals(each, t.Int(size))),
            *balance(x, a, b, 0, size),
        ],
        [
            (LENGTH_NOT_LETTER, size),
            (NUMBER_ADDED, whole_number(size + b, a)),
            (NOT_DIVIDED, size - b if a > 1 else None),
        ],
        ("told square", a, b, value),
        (4,),
    )


def _of_rectangle(topic: Topic, tier: Tier, a: int, b: int, value: int) -> Draft:
    """Return the letter of a rectangle's sides from its perimeter."""
    x = value_letter(a, b, value)
    long, half = a * value + b, (a + 1) * value + b
    each, around = side(a, x, b), t.Int(2 * half)
    held = t.Bracket(t.add(x, t.Bracket(each)))
    return _value(
        "A rectangle is {x} by {e}, in cm. Its perimeter is {p} cm.",
        {"e": each, "p": around},
        x,
        value,
        t.equals(t.times(t.Int(2), held), around),
        [
            Step(
                "Width and length make half of the perimeter.",
                t.equals(side(a + 1, x, b), t.Int(half)),
            ),
            *balance(x, a + 1, b, 0, half),
        ],
        [
            (LENGTH_NOT_LETTER, long),
            (NOT_DIVIDED, half - b),
            (NUMBER_ADDED, whole_number(half + b, a + 1)),
        ],
        ("told rectangle", a, b, value),
        (2,),
    )


def _longest(topic: Topic, tier: Tier, b: int, c: int, value: int) -> Draft:
    """Return the longest side of a triangle from its perimeter."""
    x = value_letter(b, c, value)
    second, third = side(1, x, b), side(2, x, c)
    total = 4 * value + b + c
    size = 2 * value + c
    key = length(size, "cm")
    return Draft(
        prompt(
            "Sides of {x}, {d} and {e} cm make a triangle with a perimeter of {p} cm. "
            "How long is the longest?",
            x=x,
            d=second,
            e=third,
            p=t.Int(total),
        ),
        Find(
            t.Quantity(t.Bracket(third), "cm"),
            (t.equals(t.add(x, t.Bracket(second), t.Bracket(third)), t.Int(total)),),
        ),
        key,
        "quantity",
        (
            Step("Add the sides.", t.equals(side(4, x, b + c), t.Int(total))),
            *balance(x, 4, b + c, 0, total),
            Step(f"Put {value} for {x.name}.", key),
        ),
        slips((LETTER_FOR_SHAPE, length(value, "cm")), (NUMBER_ADDED, length(2 * value - c, "cm"))),
        ("told longest", b, c, value),
    )


def with_equations(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of equations about shapes with shapes told in words at their ends."""
    return {
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(
            _of_square, _square, a=(1, 2, 3), b=(-3, -2, -1, 1, 2, 3, 5), x=range(3, 12)
        ),
        Tier.CORE: spaces[Tier.CORE].also(
            _of_rectangle, _rectangle, a=(1, 2, 3), b=(-4, -3, -1, 1, 2, 4, 5), x=range(3, 13)
        ),
        Tier.CHALLENGE: spaces[Tier.CHALLENGE].also(
            _longest, _sides, b=range(1, 7), c=range(-7, 0), x=range(5, 14)
        ),
    }
