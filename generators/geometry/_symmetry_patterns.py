"""Shaded patterns: their lines of symmetry, and the order of their rotational symmetry."""

from __future__ import annotations

from generators.geometry import _patterns as p
from generators.geometry._symmetry_asked import LINES_ASKED, ORDER_ASKED, Core
from generators.geometry._symmetry_mistakes import (
    ALL_QUARTERS,
    DIAGONALS,
    FULL_TURN_LEFT_OUT,
    HALF_TURNS_ALONE,
    LINES_FOR_ORDER,
    NO_DIAGONALS,
    ORDER_FOR_LINES,
    TWICE,
    UPRIGHT_ALONE,
    WHOLE_GRID,
)
from itembank.figures.kinds.symmetry.shaded_squares import ShadedSquares
from itembank.figures.kinds.symmetry.symmetry_found import Symmetry
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Misconception, Step
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

# Which moves leave a pattern as it is, what symmetry that makes, and how a teacher says it.
UPRIGHT_LINE = ((p.across,), Symmetry(1, 1))


LEVEL_LINE = ((p.over,), Symmetry(1, 1))


BOTH = ((p.across, p.over), Symmetry(2, 2))


HALF = ((p.half,), Symmetry(0, 2))


QUARTER = ((p.quarter,), Symmetry(0, 4))


DIAGONAL = ((p.swap,), Symmetry(1, 1))


OTHER_DIAGONAL = ((p.swap_back,), Symmetry(1, 1))


TWO_DIAGONALS = ((p.swap, p.swap_back), Symmetry(2, 2))


ALL = ((p.quarter, p.swap), Symmetry(4, 4))


EASY = (UPRIGHT_LINE, LEVEL_LINE, BOTH)


LINES = (DIAGONAL, OTHER_DIAGONAL, TWO_DIAGONALS, ALL, HALF, QUARTER)


ORDERS = (HALF, QUARTER, BOTH, TWO_DIAGONALS, ALL)


def easy_pattern(grid: int, way: int, seed: int) -> Draft:
    """Return the question how many upright and level lines of symmetry a pattern has."""
    moves, found = EASY[way]
    rows, columns = p.GRIDS[grid]
    figure = ShadedSquares(
        rows, columns, p.places(p.GRIDS[grid], p.shading(p.GRIDS[grid], moves, seed))
    )
    told = (
        "Only the upright line through the middle does.",
        "Only the level line through the middle does.",
        "The upright and the level line through the middle do.",
    )[way]
    return Draft(
        LINES_ASKED,
        of_figure(figure, LINES_ASKED),
        t.Int(found.lines),
        "integer",
        (Step(f"Which folds put each shaded square on a shaded one? {told}", t.Int(found.lines)),),
        slips(
            (DIAGONALS, found.lines + 2),
            (UPRIGHT_ALONE, 1 if way == 2 else None),
            (TWICE, 2 * found.lines),
            key=t.Int(found.lines),
        ),
        (rows, columns, *figure.shaded),
        figure=figure,
    )


_TOLD_LINES = (
    (0, 1, "One diagonal does, and the other does not."),
    (0, 1, "One diagonal does, and the other does not."),
    (0, 2, "Both diagonals do."),
    (2, 2, "Both diagonals do."),
    (0, 0, "Neither diagonal does."),
    (0, 0, "Neither diagonal does."),
)
"""How many upright and level lines, and how many diagonals, each of `LINES` has."""


def pattern(kind: int, grid: int, way: int, seed: int) -> Draft:
    """Return the question for the lines of symmetry of a pattern, or for the order of its turns."""
    lines = kind == Core.LINES
    moves, found = (LINES if lines else ORDERS)[way]
    size = p.GRIDS[grid]
    figure = ShadedSquares(*size, p.places(size, p.shading(size, moves, seed)))
    text = LINES_ASKED if lines else ORDER_ASKED
    if lines:
        straight, slanting, told = _TOLD_LINES[way]
        first = (
            "The upright and the level line through the middle both do."
            if straight
            else "Neither the upright nor the level line through the middle does."
        )
        steps = [
            Step(f"Which lines fold the pattern onto itself? {first}"),
            Step(
                f"{told} Add them up.",
                t.equals(t.add(t.Int(straight), t.Int(slanting)), t.Int(found.lines)),
            ),
        ]
        wrong: list[tuple[Misconception, int | None]] = [
            (NO_DIAGONALS, straight),
            (DIAGONALS, straight + 2),
            (ORDER_FOR_LINES, found.order),
            (TWICE, 2 * found.lines),
            (WHOLE_GRID, 4),
        ]
        key = found.lines
    else:
        key = found.order
        steps = (
            [
                Step("It looks the same after each quarter of a turn."),
                Step("There are 4 of them in a full turn.", t.Int(4)),
            ]
            if key == 4
            else [
                Step("After a quarter of a turn it does not look the same, after half a turn yes."),
                Step("There are 2 half turns in a full turn.", t.Int(2)),
            ]
        )
        wrong = [
            (LINES_FOR_ORDER, found.lines),
            (FULL_TURN_LEFT_OUT, key - 1),
            (ALL_QUARTERS, 4),
            (HALF_TURNS_ALONE, 2),
        ]
    return Draft(
        text,
        of_figure(figure, text),
        t.Int(key),
        "integer",
        tuple(steps),
        slips(*wrong, key=t.Int(key)),
        (kind, *size, *figure.shaded),
        figure=figure,
    )
