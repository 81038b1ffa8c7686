"""The whole from a part of it: asked with bare numbers, on a line, or in a story."""

from __future__ import annotations

from math import gcd

from generators._turns import by_turns
from generators.percentages._amounts import amount, per_cent, plain, wrong_amounts
from generators.percentages._reverse_mistakes import OF_PART, PLAIN, REST
from generators.percentages._reverse_numbers import part_wrong
from generators.percentages._reverse_stories import PARTS
from itembank.figures.kinds.number.double_number_line import DoubleNumberLine, Pair
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Find, Run, Step, prompt
from itembank.notation import tree as t

_UNITS = ("", "£", "kg", "", "m", "g")


def of_a_number(p: int, n: int) -> Draft:
    """Return the question for the number or amount of which a percentage is told."""
    unit = by_turns(_UNITS, n // 4 + p // 50)
    what = "amount" if unit else "number"
    asked = prompt(
        f"{{p}} of {'an' if unit else 'a'} {what} is {{m}}. What is the {what}?",
        p=per_cent(p),
        m=amount(p * n // 10, unit),
    )
    return _from_part("number", p, n, unit, asked)


def on_a_line(p: int, n: int) -> Draft:
    """Return the question for the whole on a double number line with a percentage marked."""
    unit = by_turns(("", "£"), n // 10 + p // 100)
    steps = 5 if p % 200 == 0 else 10
    at = p * steps // 1000
    figure = DoubleNumberLine(
        steps,
        (
            Pair(at, per_cent(p), amount(p * n // 10, unit)),
            Pair(steps, per_cent(1000), t.Sym("x")),
        ),
    )
    asked = prompt("Find the value of {x}.", x=t.Sym("x"))
    return _from_part("line", p, n, unit, asked, figure)


def in_a_story(p: int, n: int) -> Draft:
    """Return the question how many there are altogether, in a story of a part of them."""
    part, x = t.Int(p * n // 1000), t.Sym("x")
    return Draft(
        prompt(by_turns(PARTS, n // 10 + p // 50), p=per_cent(p), m=part),
        Find(x, (t.equals(t.part_of(per_cent(p), x), part),)),
        t.Int(n),
        "integer",
        back_to_whole(p, p * n // 10, ""),
        wrong_amounts("", 100 * n, (OF_PART, REST), part_wrong(p, n)[:2]),
        ("story", p, n),
    )


def _from_part(
    kind: str,
    p: int,
    n: int,
    unit: str,
    asked: tuple[Run, ...],
    figure: DoubleNumberLine | None = None,
) -> Draft:
    """Return the question for n, of which p tenths of a per cent are told in words or drawn."""
    x, part = t.Sym("x"), amount(p * n // 10, unit)
    found = Find(x, (t.equals(t.part_of(per_cent(p), x), part),))
    return Draft(
        asked,
        of_figure(figure, asked) if figure else found,
        amount(100 * n, unit),
        "amount",
        back_to_whole(p, p * n // 10, unit),
        wrong_amounts(unit, 100 * n, (OF_PART, REST, PLAIN), part_wrong(p, n)),
        (kind, p, n),
        figure=figure,
    )


def back_to_whole(tenths: int, part: int, unit: str, whole: str = "the whole") -> tuple[Step, ...]:
    """Return the working from a part to the whole, by a share that goes into both.

    Parameters
    ----------
    tenths
        What the part is, in tenths of a per cent of the whole.
    part
        The part, in hundredths.
    unit
        Its unit.
    whole
        What the whole is called.

    >>> [step.say for step in back_to_whole(600, 2400, "")]
    ['60% is 3 lots of 20%, so divide by 3 to find 20%.', 'Multiply by 5 to find the whole.']
    """
    share = gcd(tenths, 1000)
    if part * share % tenths:
        share = 10
    lots, times = tenths // share, 1000 // share
    single = amount(part // lots, unit)
    steps = []
    if lots > 1:
        say = f"{plain(tenths)}% is {lots} lots of {plain(share)}%, so divide by {lots} to find "
        steps.append(
            Step(
                f"{say}{plain(share)}%.",
                t.equals(t.divide(amount(part, unit), t.Int(lots)), single),
            )
        )
    say = f"Multiply by {times} to find {whole}."
    return (
        *steps,
        Step(say, t.equals(t.times(t.Int(times), single), amount(part // lots * times, unit))),
    )
