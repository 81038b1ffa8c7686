"""Constructions as topics use them: with room for all letters, and questions about their parts."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from functools import lru_cache

from generators._turns import by_turns
from itembank.figures.figure import fault
from itembank.figures.kinds.construction.construction import Construction, construction_drawing
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Misconception, Step, prompt
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t
from itembank.notation.value import exact

BISECTOR, ANGLE = "perpendicular bisector", "angle bisector"
SIXTY, RIGHT = "equilateral triangle", "perpendicular at a point on a line"
FROM_POINT = "perpendicular from a point to a line"
NAMES = (BISECTOR, ANGLE, SIXTY, RIGHT, FROM_POINT)
LINE_LETTERS = ("ABCDM", "PQRSM", "EFGHN", "JKLTX", "GHPQM", "RSTUN")
ANGLE_LETTERS = ("ABCDE", "PQRST", "KLMNP", "XYZVW", "DEFGH", "RSTUV")
POINT_LETTERS = ("ABPQN", "CDPRM", "KLTSN", "EFPHM", "GHRTX", "JKPQM")
_HIGHEST = 10
_TURNS = (0, 15, 345, 30, 330, 180, 195, 165, 90)


def letters_of(shape: str, which: int) -> tuple[str, ...]:
    """Return the letters of a construction before it is known how many are used."""
    table = {BISECTOR: LINE_LETTERS, FROM_POINT: POINT_LETTERS}.get(shape, ANGLE_LETTERS)
    return tuple(table[which % len(table)])


@lru_cache(maxsize=4096)
def construction(
    shape: str,
    which: int,
    given: tuple[tuple[str, t.Node], ...] = (),
    halved: int = 0,
    size: int = 40,
    joined: bool = False,
) -> Construction:
    """Return a construction turned so that its letters have room."""
    letters = "".join(letters_of(shape, which))
    if shape not in (BISECTOR, FROM_POINT):
        letters = letters[: 3 + halved]
    made = [
        Construction(
            shape,  # type: ignore[arg-type]
            letters,
            given,
            halved,
            size,
            joined,
            _TURNS[(which + more) % len(_TURNS)],
        )
        for more in range(len(_TURNS))
    ]
    return next((figure for figure in made if _fits(figure)), made[0])


def _fits(figure: Construction) -> bool:
    """Tell whether a construction has room for its letters, and a page for it."""
    return not fault(figure) and construction_drawing(figure).height <= _HIGHEST


def degrees(size: Fraction | int) -> t.Quantity:
    """Return so many degrees, as decimal where they are not whole."""
    return amount(size, "°")


def amount(size: Fraction | int, unit: str) -> t.Quantity:
    """Return so many of a unit, as decimal where they are not whole: halves and quarters."""
    whole, rest = divmod(Fraction(size), 1)
    if not rest:
        return t.Quantity(t.Int(int(whole)), unit)
    digits = str(int(rest * 100)).rstrip("0").rjust(1, "0")
    return t.Quantity(t.Dec(str(int(whole)), digits), unit)


def size_asked(
    figure: Construction,
    text: str,
    key: t.Quantity,
    steps: Sequence[Step],
    wrong: Sequence[tuple[Misconception, Fraction | int | None]],
    twin: tuple[object, ...],
) -> Draft:
    """Return a question for a length or an angle; wrong answers are numbers in the key's unit."""
    asked = prompt(text)
    kept: list[Wrong] = [
        (mistake, amount(size, key.unit))
        for mistake, size in wrong
        if size is not None and size > 0
    ]
    apart = [slip for slip in kept if exact(slip[1]) != exact(key)]  # type: ignore[arg-type]
    return Draft(
        asked,
        of_figure(figure, asked),
        key,
        "quantity",
        tuple(steps),
        slips(*apart, key=key),
        twin,
        figure=figure,
    )


def name_asked(
    figure: Construction,
    text: str,
    key: str,
    steps: Sequence[Step],
    wrong: Sequence[tuple[Misconception, str]],
    twin: tuple[object, ...],
) -> Draft:
    """Return a question that a name answers: of a construction, of a point, of a line."""
    asked = prompt(text)
    return Draft(
        asked,
        of_figure(figure, asked),
        t.Label(key),
        "name",
        tuple(steps),
        slips(*((mistake, t.Label(name)) for mistake, name in wrong)),
        twin,
        figure=figure,
    )


def asked_plainly(what: str, n: int) -> str:
    """Return a question for a length or an angle, in other words for the next number."""
    return by_turns(("Work out {}.", "Find {}.", "Calculate {}.", "What is {}?"), n).format(what)


def length_asked(name: str, n: int) -> str:
    """Return the question for a length."""
    return asked_plainly(f"the length of {name}", n)


def angle_asked(name: str, n: int) -> str:
    """Return the question for an angle."""
    return asked_plainly(f"the size of angle {name}", n)
