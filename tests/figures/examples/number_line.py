"""Number lines at random: whole numbers, negatives, decimals and fractions, points and jumps."""

from __future__ import annotations

import random
from fractions import Fraction

from itembank.figures.kinds.number.line_span import Span
from itembank.figures.kinds.number.number_line import Jump, NumberLine
from itembank.items.forms.form_rules import number_node
from itembank.notation import tree as t


def example(chance: random.Random) -> NumberLine:
    """Return a number line, sound or not."""
    steps = chance.choice((2, 3, 4, 5, 6, 8, 10, 12, 20))
    first: t.Node = t.num(chance.choice((0, 0, 1, -5, -10, 3, 100)))
    last: t.Node = t.num(chance.choice((1, 2, 5, 10, 20, 110, 1000)))
    if chance.random() < 0.2:
        first, last = t.Dec("0", "5"), t.Dec("1", "25")
    letters = chance.sample("ABCD", chance.randrange(0, 4))
    marks = chance.sample(range(steps + 1), min(len(letters), steps))
    jumps: tuple[Jump, ...] = ()
    if chance.random() < 0.3:
        start, end = chance.sample(range(steps + 1), 2)
        # Most labels tell the truth, and some another length.
        far = Fraction(last.n if isinstance(last, t.Int) else 1) / steps * (end - start)
        told = far if first == t.Int(0) else Fraction(chance.randrange(1, 20))
        jumps = (Jump(start, end, number_node(abs(told))),)
    if chance.random() < 0.3:
        letters, jumps = [], ()
    numbered = tuple(sorted(chance.sample(range(1, steps), min(2, steps - 1))))
    return NumberLine(
        first,
        last,
        steps,
        numbered if chance.random() < 0.4 else (),
        tuple(zip(letters, marks, strict=False)),
        jumps,
        None if letters or jumps else span(chance, steps),
    )


def span(chance: random.Random, steps: int) -> Span | None:
    """Return a span, sound or not, or none."""
    if chance.random() < 0.3:
        return None
    low, high = sorted(chance.sample(range(steps + 1), 2))
    counts = chance.random() < 0.5, chance.random() < 0.5
    kind = chance.randrange(3)
    if kind == 0:
        return Span(low, high, *counts)
    return Span(low, None, counts[0]) if kind == 1 else Span(None, high, False, counts[1])
