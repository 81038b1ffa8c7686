"""A double number line: two amounts that go together, on two lines with the same marks."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from itembank.data_class import dataclass
from itembank.figures.drawing import Drawing, Mark, Point, Stroke, Text, drawing
from itembank.figures.figure import (
    Figure,
    FigureKind,
    Reading,
    Wording,
    asks_reading,
    not_shown,
    register_figure,
)
from itembank.figures.label_room import room
from itembank.figures.written_as import in_unit, measures, unit_of
from itembank.notation import tree as t
from itembank.notation.line import shown_line
from itembank.notation.value import exact
from itembank.notation.words import words as said

MOST_STEPS = 12
_LONG = Fraction(11)
_TICK = Fraction(1, 4)


@dataclass(frozen=True, slots=True)
class Pair:
    """A mark, counted from 0 at the left end, with its amounts over and under the lines."""

    at: int
    over: t.Node | None = None
    under: t.Node | None = None


@dataclass(frozen=True, slots=True)
class DoubleNumberLine(Figure):
    """Two lines in so many equal `steps`, both from 0; at a mark stand amounts that go together.

    Each line has its name at the left, if it has one. A letter as an amount is what is asked for.

    >>> prices = DoubleNumberLine(4, (Pair(2, t.Int(6), t.Int(10)), Pair(4, t.Sym("x"))))
    >>> prices.pairs[0].under
    Int(n=10)
    """

    steps: int
    pairs: tuple[Pair, ...]
    over: str = ""
    under: str = ""


def _rows(figure: DoubleNumberLine) -> tuple[dict[int, t.Node], dict[int, t.Node]]:
    over = {pair.at: pair.over for pair in figure.pairs if pair.over is not None}
    under = {pair.at: pair.under for pair in figure.pairs if pair.under is not None}
    return over, under


def _known(row: dict[int, t.Node]) -> list[tuple[int, t.Node]]:
    return [(at, node) for at, node in row.items() if not isinstance(node, t.Sym) and at]


def _fault(figure: DoubleNumberLine) -> str:
    if not 2 <= figure.steps <= MOST_STEPS:
        return f"it may have 2 to {MOST_STEPS} steps"
    places = [pair.at for pair in figure.pairs]
    if any(not 0 <= at <= figure.steps for at in places):
        return f"its marks are counted from 0 to {figure.steps}"
    if len({*places}) != len(places):
        return "a mark is named twice"
    for row, name in zip(_rows(figure), ("over", "under"), strict=True):
        known = _known(row)
        if not known:
            return f"the line ‘{name}’ gives no amount but 0"
        try:
            steps = {exact(node) / at for at, node in known}
        except t.NotationError:
            return f"what stands {name} the line is to be numbers, amounts or single letters"
        if len({measures(node) for _, node in known}) > 1:
            return f"the amounts {name} the line are to be of one sort"
        if len(steps) > 1:
            amounts = " and ".join(f"{shown_line(node)} at mark {at}" for at, node in known[:2])
            return f"the amounts {name} the line do not keep step: {amounts}"
        if steps.pop() <= 0:
            return "its amounts are to be more than 0"
        if 0 in row and (isinstance(row[0], t.Sym) or exact(row[0]) != 0):
            return "both lines begin at 0"
        step = _LONG / figure.steps
        for a, b in pairwise(sorted({0, *row})):
            wide = [room(row.get(at, t.Int(0))).width for at in (a, b)]
            if (b - a) * step < sum(wide) / 2 + Fraction(1, 4):
                return f"two amounts {name} the line do not fit side by side"
    letters = [node for row in _rows(figure) for node in row.values() if isinstance(node, t.Sym)]
    if len(letters) > 2 or len({*letters}) != len(letters):
        return "one amount, or two, may be letters, each another"
    return ""


def _drawing(figure: DoubleNumberLine) -> Drawing:
    step = _LONG / figure.steps
    over, under = _rows(figure)
    high = Fraction(7, 5)
    marks: list[Mark] = []
    for y, row, name, role in (
        (high, over, figure.over, "over"),
        (Fraction(0), under, figure.under, "under"),
    ):
        ends = (Point(0, y), Point(_LONG + Fraction(1, 2), y))
        marks.append(Stroke(ends, f"{role} line", arrow="end"))
        for at in range(figure.steps + 1):
            x = at * step
            marks.append(Stroke((Point(x, y - _TICK), Point(x, y + _TICK)), f"{role} tick"))
            label = row.get(at, t.Int(0) if at == 0 else None)
            if label is not None:
                up = y + _TICK + Fraction(1, 8) if role == "over" else y - _TICK - Fraction(1, 8)
                side = "bottom" if role == "over" else "top"
                marks.append(Text(Point(x, up), label, up=side, role=role))  # type: ignore[arg-type]
        if name:
            marks.append(Text(Point(-Fraction(1, 2), y), name, "right", role=f"{role} name"))
    return drawing(marks)


def _words(figure: DoubleNumberLine) -> str:
    top, low = figure.over or "the upper line", figure.under or "the lower line"
    out = [
        f"Two number lines, one over the other, both begin at 0 and have {figure.steps} equal "
        f"steps. Amounts at the same mark go together."
    ]
    for pair in sorted(figure.pairs, key=lambda pair: pair.at):
        if not pair.at:
            continue
        ends = ((top, pair.over), (low, pair.under))
        parts = [f"{name} is {said(node)}" for name, node in ends if node is not None]
        if parts:
            out.append(f"At mark {pair.at}, {' and '.join(parts)}.")
    return " ".join(out)


def _value(figure: DoubleNumberLine, letter: str) -> t.Node | None:
    for row in _rows(figure):
        (place, like), *_ = _known(row)
        for at, node in row.items():
            if node == t.Sym(letter):
                return in_unit(exact(like) * at / place, unit_of(like))
    return None


def _read(figure: DoubleNumberLine, reading: Reading) -> t.Node:
    if reading.name == "amount" and len(reading.of) == 1:
        found = _value(figure, reading.of[0])
        if found is not None:
            return found
    raise not_shown(reading)


def _letters(figure: DoubleNumberLine) -> list[str]:
    return [node.name for row in _rows(figure) for node in row.values() if isinstance(node, t.Sym)]


def _printed(figure: DoubleNumberLine) -> tuple[t.Node, ...]:
    return tuple(node for row in _rows(figure) for node in row.values())


DOUBLE_NUMBER_LINE = register_figure(
    FigureKind(
        "double number line",
        DoubleNumberLine,
        fault=_fault,
        bears={"pairs": (t.Quantity, t.Money, t.Percent)},
        drawing=_drawing,
        words=_words,
        printed=_printed,
        readings=lambda figure: tuple(Reading("amount", (name,)) for name in _letters(figure)),
        read=_read,
        wordings=(
            Wording(
                r"(?:what (?:number|amount) (?:is|goes at)|what is|find|work out)"
                r"(?: the (?:value|amount) (?:of|at))? \{?(?P<name>[a-zA-Z])\}?",
                asks_reading("amount", "name"),
            ),
        ),
    )
)
