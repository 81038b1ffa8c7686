"""A balance: blocks on two pans that weigh the same, some of them unknown."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from fractions import Fraction

from itembank.data_class import dataclass
from itembank.figures.drawing import (
    WEIGHTS,
    Area,
    Drawing,
    Mark,
    Point,
    Stroke,
    Text,
    drawing,
    rectangle,
)
from itembank.figures.figure import (
    Asked,
    Figure,
    FigureError,
    FigureKind,
    Reading,
    Wording,
    not_shown,
    register_figure,
)
from itembank.figures.label_room import room
from itembank.notation import tree as t
from itembank.notation.value import exact_or_none
from itembank.notation.words import words as said

MOST_BLOCKS = 10
_ROW = 5
"""Blocks beside each other on a pan; more stand on top of these."""
_HIGH = Fraction(3, 2)
_GAP = Fraction(1, 10)


@dataclass(frozen=True, slots=True)
class Balance(Figure):
    """A balance that is level: the blocks of the `left` pan weigh as much as those of the `right`.

    Each block bears a letter or a number.

    >>> Balance((t.Sym("x"), t.Sym("x"), t.Int(3)), (t.Int(11),)).right
    (Int(n=11),)
    """

    left: tuple[t.Node, ...]
    right: tuple[t.Node, ...]


def _fault(figure: Balance) -> str:
    if not 1 <= len(figure.left) <= MOST_BLOCKS or not 1 <= len(figure.right) <= MOST_BLOCKS:
        return f"each pan holds 1 to {MOST_BLOCKS} blocks"
    for label in (*figure.left, *figure.right):
        value = exact_or_none(label)
        if not isinstance(label, t.Sym) and (value is None or value <= 0):
            return "each block bears one letter or a number above 0"
        if room(label).width > Fraction(9, 4):
            return "a block bears at most three or four signs"
    letters = _letters(figure)
    if len(letters) != 1:
        return "one letter stands on its blocks, on some of them"
    (letter,) = letters
    more = figure.left.count(t.Sym(letter)) - figure.right.count(t.Sym(letter))
    if not more:
        return f"both pans hold as many blocks {letter}, so that nothing is said of it"
    apart = _weight(figure.right) - _weight(figure.left)
    if apart / more <= 0:
        return f"it can be level only if {letter} weighs nothing or less"
    return ""


def _letters(figure: Balance) -> frozenset[str]:
    return frozenset(name for node in (*figure.left, *figure.right) for name in t.symbols(node))


def _weight(blocks: Sequence[t.Node]) -> Fraction:
    return sum((exact_or_none(block) or Fraction(0) for block in blocks), Fraction(0))


def _wide(figure: Balance) -> Fraction:
    widest = max(room(label).width for label in (*figure.left, *figure.right))
    return max(_HIGH, widest + Fraction(2, 5))


def _pan_width(figure: Balance) -> Fraction:
    columns = min(_ROW, max(len(figure.left), len(figure.right)))
    return max(columns * (_wide(figure) + _GAP) + _GAP, Fraction(3))


_BETWEEN = Fraction(1)
"""How far the two pans are apart."""


def balance_width(figure: Balance) -> Fraction:
    """Return how wide a balance without fault is drawn, in ems, without drawing it.

    >>> from itembank.figures.figure import drawn
    >>> shown = Balance((t.Sym("x"), t.Int(3)), (t.Int(11),))
    >>> balance_width(shown) == drawn(shown).width
    True
    """
    return 2 * (_pan_width(figure) + WEIGHTS["heavy"]) + _BETWEEN


def _drawing(figure: Balance) -> Drawing:
    wide, pan = _wide(figure), _pan_width(figure)
    apart = (pan + _BETWEEN) / 2
    marks: list[Mark] = []
    for side, blocks in ((-1, figure.left), (1, figure.right)):
        middle = side * apart
        marks.append(
            Stroke((Point(middle - pan / 2, 0), Point(middle + pan / 2, 0)), "pan", "heavy")
        )
        marks.append(Stroke((Point(middle, 0), Point(middle, -Fraction(3, 4))), "stem"))
        for number, label in enumerate(blocks):
            row, column = divmod(number, _ROW)
            count = min(_ROW, len(blocks) - row * _ROW)
            x = middle + (column - Fraction(count - 1, 2)) * (wide + _GAP) - wide / 2
            y = Fraction(3, 25) + row * (_HIGH + _GAP)
            marks.append(Area(rectangle(x, y, x + wide, y + _HIGH), "block", "paper"))
            marks.append(Text(Point(x + wide / 2, y + _HIGH / 2), label, role="weight"))
    low = -Fraction(3, 4)
    marks.append(Stroke((Point(-apart, low), Point(apart, low)), "beam", "heavy"))
    foot = (
        Point(-Fraction(3, 4), low - Fraction(5, 4)),
        Point(Fraction(3, 4), low - Fraction(5, 4)),
    )
    marks.append(Area((*foot, Point(0, low - Fraction(3, 25))), "foot", "bars"))
    return drawing(marks)


def _pan(blocks: Sequence[t.Node]) -> str:
    parts = []
    for label, count in Counter(blocks).items():
        noun = "block" if count == 1 else "blocks"
        parts.append(f"{count} {noun} marked {said(label)}")
    return " and ".join([", ".join(parts[:-1]), parts[-1]] if len(parts) > 1 else parts)


def _words(figure: Balance) -> str:
    return (
        f"A balance is level. On the left: {_pan(figure.left)}. On the right: {_pan(figure.right)}."
    )


def _total(blocks: Sequence[t.Node]) -> t.Node:
    return blocks[0] if len(blocks) == 1 else t.add(*blocks)


def _read(figure: Balance, reading: Reading) -> t.Node:
    raise not_shown(reading)


def _unknown(figure: Balance, found: object) -> Asked:
    """Return the question for the letter that is named; it has to stand on the balance."""
    name = found["name"]  # type: ignore[index]
    if name not in _letters(figure):
        raise FigureError(f"no block is marked {name}")
    return Asked(t.Sym(name))


BALANCE = register_figure(
    FigureKind(
        "balance",
        Balance,
        fault=_fault,
        drawing=_drawing,
        words=_words,
        printed=lambda figure: (*figure.left, *figure.right),
        readings=lambda figure: (),
        read=_read,
        relations=lambda figure: (t.equals(_total(figure.left), _total(figure.right)),),
        wordings=(
            Wording(
                r"(?:find|work out|what is)(?: the (?:value|weight|mass) of)? (?:block )?"
                r"\{?(?P<name>[a-zA-Z])\}?",
                _unknown,
            ),
            Wording(
                r"(?:how much|what) does (?:each )?(?:block )?\{?(?P<name>[a-zA-Z])\}? weigh",
                _unknown,
            ),
        ),
    )
)
