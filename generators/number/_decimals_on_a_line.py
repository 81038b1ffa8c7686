"""What an arrow on a number line points to."""

from __future__ import annotations

from generators.number import _decimal_order_mistakes as m
from generators.number._writing import decimal
from itembank.figures.kinds.number.number_line import NumberLine
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Step
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


def on_a_line(start: int, gap: int, count: int, at: int, twin: tuple[object, ...]) -> Draft:
    """Ask what an arrow on a number line points to. Numbers are in thousandths."""
    low, high = _written(start), _written(start + gap)
    figure = NumberLine(low, high, count, points=(("A", at),))
    step = gap // count
    key, step_node = decimal(start + at * step, 3), decimal(step, 3)
    text = ("What decimal does the arrow A point to?",)
    begin = decimal(start, 3)
    steps = (
        Step(
            f"There are {count} steps from one number to the other: find one step.",
            t.equals(t.divide(decimal(gap, 3), t.Int(count)), step_node),
        ),
        Step(
            f"The arrow is {at} {'step' if at == 1 else 'steps'} to the right of the left end.",
            t.equals(t.add(begin, t.times(t.Int(at), step_node)), key),
        ),
    )
    whole_step = 1000 if gap >= 1000 else 100
    wrong = slips(
        (m.WRONG_END, decimal(start + gap - at * step, 3) if start < 0 else None),
        (m.STEP_IS_ONE, decimal(start + at * whole_step, 3)),
        (m.STEP_IS_TENTH, decimal(start + at * 100, 3) if step == 200 else None),
        (m.STEP_TOO_SMALL, decimal(start + at * step // 10, 3) if start >= 0 else None),
        key=key,
    )
    return Draft(text, of_figure(figure, text), key, "decimal", steps, wrong, twin, figure=figure)


# How far a line goes, and in how many steps: of tenths, and of two tenths.
LINES = ((1, 10), (1, 5), (2, 10), (2, 20))


def mark_fits(line: int, at: int) -> bool:
    """Tell whether a mark lies inside a line, not in the middle, and is no whole number."""
    gap, count = LINES[line - 1]
    return at < count and 2 * at != count and at * gap % count != 0


def _written(thousandths: int) -> t.Node:
    """Return an end of a line: a whole number, or with one decimal place."""
    if thousandths % 1000 == 0:
        return t.num(thousandths // 1000)
    return decimal(thousandths, 3)
