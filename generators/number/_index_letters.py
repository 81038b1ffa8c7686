"""The laws of indices with letters, and numbers in front of them."""

from __future__ import annotations

from generators._turns import by_turns
from generators.number import _index_mistakes as mistakes
from generators.number._index_numbers import Kind
from generators.number._index_wrong_lines import LETTERS, power_of, with_front
from generators.number._writing import worked
from itembank.items.item import Draft, Find, Rewrite, prompt
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

ADD = "To multiply powers of the same base, add the indices."


SUBTRACT = "To divide powers of the same base, subtract the indices."


MULTIPLY = "To raise a power to a power, multiply the indices."


def with_letters(kind: int, a: int, m: int, n: int, c: int, twin: tuple[object, ...]) -> Draft:
    """Return the question to simplify powers of letters, with numbers in front or without."""
    x = t.Sym(by_turns(LETTERS, a + m + 2 * n + c))
    first, second = power_of(x, m), power_of(x, n)
    wrong: tuple[Wrong, ...]
    match kind:
        case Kind.LETTER_TIMES:
            asked: t.Node = t.times(first, second)
            lines = [(ADD, power_of(x, m + n))]
            wrong = (
                (mistakes.MULTIPLIES_INDICES, power_of(x, m * n)),
                (mistakes.ADDS_FRONT, with_front(2, power_of(x, m + n))),
            )
        case Kind.THREE:
            asked = t.times(first, x, second)
            lines = [
                (
                    f"{x.name} by itself is {x.name} to the power 1.",
                    t.times(power_of(x, m + 1), second),
                ),
                (ADD, power_of(x, m + n + 1)),
            ]
            wrong = (
                (mistakes.NO_INDEX, power_of(x, m + n)),
                (mistakes.MULTIPLIES_INDICES, power_of(x, m * n)),
            )
        case Kind.LETTER_OVER:
            asked = t.Frac(first, second)
            lines = [(SUBTRACT, power_of(x, m - n))]
            wrong = (
                (mistakes.DIVIDES_INDICES, power_of(x, m // n)),
                (mistakes.ADDS_OVER, power_of(x, m + n)),
            )
        case Kind.LETTER_RAISED:
            asked = t.Power(t.Bracket(first), t.Int(n))
            lines = [(MULTIPLY, power_of(x, m * n))]
            wrong = (
                (mistakes.ADDS_INDICES, power_of(x, m + n)),
                (mistakes.RAISES_INDEX, power_of(x, m**n)),
            )
        case Kind.FRONT:
            asked = t.times(with_front(a, first), with_front(c, second))
            lines = [
                (
                    "Multiply the numbers in front and the powers.",
                    t.times(t.Int(a * c), first, second),
                ),
                (ADD, with_front(a * c, power_of(x, m + n))),
            ]
            wrong = (
                (mistakes.ADDS_FRONT, with_front(a + c, power_of(x, m + n))),
                (mistakes.MULTIPLIES_INDICES, with_front(a * c, power_of(x, m * n))),
            )
        case Kind.BAR:
            asked = t.Frac(t.times(first, second), power_of(x, c))
            lines = [
                (ADD, t.Frac(power_of(x, m + n), power_of(x, c))),
                (SUBTRACT, power_of(x, m + n - c)),
            ]
            wrong = (
                (mistakes.FIRST_TWO, power_of(x, m + n)),
                (mistakes.MULTIPLIES_INDICES, power_of(x, m * n - c)),
            )
        case Kind.FRONT_RAISED:
            asked = t.Power(t.Bracket(with_front(a, first)), t.Int(n))
            raised = t.Power(t.Int(a), t.Int(n))
            lines = [
                (
                    "Raise the number in front and the power.",
                    t.times(raised, t.Power(t.Bracket(first), t.Int(n))),
                ),
                (MULTIPLY, t.times(raised, power_of(x, m * n))),
                ("Work out the number in front.", with_front(a**n, power_of(x, m * n))),
            ]
            wrong = (
                (mistakes.FRONT_NOT_RAISED, with_front(a, power_of(x, m * n))),
                (mistakes.FRONT_TIMES, with_front(a * n, power_of(x, m * n))),
            )
        case Kind.FRONT_OVER:
            asked = t.Frac(with_front(a * c, first), with_front(a, second))
            lines = [
                ("Divide the numbers in front.", t.times(t.Int(c), t.Frac(first, second))),
                (SUBTRACT, with_front(c, power_of(x, m - n))),
            ]
            wrong = (
                (mistakes.SUBTRACTS_FRONT, with_front(a * c - a, power_of(x, m - n))),
                (mistakes.DIVIDES_INDICES, with_front(c, power_of(x, m // n))),
            )
        case Kind.TWO_LETTERS:
            y = t.Sym(by_turns(LETTERS, a + m + 2 * n + c + 3))
            first_y, second_y = y, power_of(y, n)
            letters = sorted((x, y), key=lambda letter: letter.name)

            def product(number: int, of_x: int, of_y: int) -> t.Node:
                powers = {x: power_of(x, of_x), y: power_of(y, of_y)}
                return with_front(number, *(powers[letter] for letter in letters))

            asked = t.times(product(a, m, 1), product(c, 1, n))
            lines = [
                (
                    "Multiply the numbers in front.",
                    t.times(t.Int(a * c), first, x, first_y, second_y),
                ),
                (
                    f"Add the indices of {x.name}.",
                    t.times(t.Int(a * c), power_of(x, m + 1), first_y, second_y),
                ),
                (f"Add the indices of {y.name}.", product(a * c, m + 1, n + 1)),
            ]
            wrong = (
                (mistakes.NO_INDEX, product(a * c, m, n)),
                (mistakes.ADDS_FRONT, product(a + c, m + 1, n + 1)),
            )
        case _:
            asked = t.divide(first, second)
            lines = [
                (SUBTRACT, t.Power(x, t.sub(t.Int(m), t.Int(n)))),
                ("Work out the index.", power_of(x, m - n)),
            ]
            wrong = (
                (mistakes.SIGN_LOST, power_of(x, n - m)),
                (mistakes.ADDS_OVER, power_of(x, m + n)),
            )
    key = lines[-1][1]
    steps = worked(asked, *lines)
    if kind == Kind.NEGATIVE:
        text = prompt("Write {e} as a single power of {a}.", e=asked, a=x)
        return Draft(text, Find(asked), key, "power", steps, slips(*wrong), twin)
    return Draft(
        prompt("Simplify {e}.", e=asked),
        Rewrite(asked, "simplify"),
        key,
        "simplified",
        steps,
        slips(*wrong),
        twin,
    )
