"""Which function machines are asked for, and what comes through their boxes."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

UNDOES = {"+": "-", "-": "+", "*": "/", "/": "*"}


Boxes = Sequence[tuple[str, int]]


def through(value: Fraction | int, boxes: Boxes) -> Fraction:
    """Return what comes out of the boxes when a value goes in.

    >>> through(3, [("*", 4), ("-", 5)])
    Fraction(7, 1)
    """
    found = Fraction(value)
    for sign, n in boxes:
        if sign in "+-":
            found += n if sign == "+" else -n
        else:
            found *= n if sign == "*" else Fraction(1, n)
    return found


def _fits(start: int, boxes: Boxes, low: int = 0, high: int = 150) -> bool:
    """Keep machines in which every number on the way is whole and of a fair size."""
    value = Fraction(start)
    for box in boxes:
        value = through(value, [box])
        if value.denominator > 1 or not low <= value <= high:
            return False
    return True


def support_fits(kind: int, signs: str, a: int, b: int, start: int) -> bool:
    """Keep two boxes of which every mistake shows."""
    boxes = list(zip(signs, (a, b), strict=True))
    if not _fits(start, boxes, 0, 100) or start in (a, b) or a == b:
        return False
    if kind == 0:
        other = through(start, boxes[::-1])
        return len({through(start, boxes), through(start, boxes[:1]), other}) == 3
    return False


def core_fits(kind: int, signs: str, a: int, b: int, start: int) -> bool:
    """Keep what went in, and negative numbers that go in."""
    boxes = list(zip(signs, (a, b), strict=True))
    if a == b or abs(start) in (a, b):
        return False
    if kind == 0:  # what went in
        if start < 2 or not _fits(start, boxes, 1, 120):
            return False
        out = through(start, boxes)
        forwards, same = through(out, boxes), through(out, [(UNDOES[s], n) for s, n in boxes])
        return len({Fraction(start), forwards, same}) == 3 and same.denominator == 1
    if start >= 0 or not _fits(start, boxes, -90, 90) or "/" in signs:
        return False
    other = through(start, boxes[::-1])
    return len({through(start, boxes), through(start, boxes[:1]), other}) == 3


def challenge_fits(kind: int, signs: str, a: int, b: int, start: int) -> bool:
    """Keep three boxes backwards, a missing box, and numbers and letters that go through."""
    boxes = list(zip(signs, (a, b), strict=True))
    if a == b or start in (a, b):
        return False
    if kind == 0:  # three boxes, backwards
        if start < 2 or signs in ("+-", "-+") or not _fits(start, [*boxes, ("+", 3)], 1, 120):
            return False
        three = [*boxes, third_box(a, b)]
        out = through(start, three)
        same = through(out, [(UNDOES[s], n) for s, n in three])
        return (
            _fits(start, three, 1, 120) and len({Fraction(start), through(out, three), same}) == 3
        )
    if kind == 1:  # which number the second box adds, subtracts or multiplies by
        if signs not in ("*+", "*-", "+*") or not _fits(start, boxes, 1, 120):
            return False
        out, middle = through(start, boxes), through(start, boxes[:1])
        last = out - middle if signs == "+*" else out + middle
        return len({Fraction(b), abs(out - start), last}) == 3 and start != out
    if kind == 2:  # comes out as it went in
        return signs == "*-" and a < 8 and b % (a - 1) == 0 and start == 2 and b != a
    return signs in ("*+", "*-", "+*", "-*") and start == 2


def third_box(a: int, b: int) -> tuple[str, int]:
    """Return the third box of a machine."""
    return ("+", (a + b) % 7 + 2) if (a + b) % 2 else ("-", (a + b) % 5 + 1)
