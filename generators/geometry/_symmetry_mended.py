"""Patterns that lack one square for their symmetry."""

from __future__ import annotations

from generators.geometry import _patterns as p
from generators.geometry._symmetry_mistakes import (
    OTHER_LINE,
    REFLECTED_ACROSS,
    REFLECTED_OVER,
    TURNED,
)
from generators.geometry._symmetry_patterns import (
    DIAGONAL,
    HALF,
    LEVEL_LINE,
    OTHER_DIAGONAL,
    UPRIGHT_LINE,
)
from itembank.figures.kinds.symmetry.shaded_squares import ShadedSquares
from itembank.figures.kinds.symmetry.symmetry_found import of_cells, of_cells_alone
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

TO_MEND = (UPRIGHT_LINE, LEVEL_LINE, DIAGONAL, OTHER_DIAGONAL, HALF)


_MOVES = (p.across, p.over, p.swap, p.swap_back, p.half)


def mended(which: int, way: int, seed: int) -> tuple[p.Cells, tuple[p.Cell, ...]] | None:
    """Return a shading that lacks one square, and four squares of which that is the first.

    The others are where the partner of the missing square goes by half a turn and by another
    reflection, and one more. None, where it cannot be asked.
    """
    grid = p.GRIDS[which]
    moves, wanted = TO_MEND[way]
    whole = p.shading(grid, moves, seed)
    if not p.asked(grid, moves, seed, wanted):
        return None
    down, right = grid[0] - 1, grid[1] - 1
    gone = sorted(at for at in whole if moves[0](at, down, right) != at)
    free = [divmod(k, grid[1]) for k in range(grid[0] * grid[1])]
    free = [at for at in free if at not in whole]
    if not gone or len(free) < 3:
        return None
    lost = gone[seed % len(gone)]
    partner = moves[0](lost, down, right)
    turned = (p.across if way == 4 else p.half)(partner, down, right)
    other = p.over if way in (0, 4) else p.across
    reflected = other(partner, down, right)
    rest = [at for at in free if at not in (turned, reflected)]
    if turned == reflected or not {turned, reflected} <= {*free} or not rest:
        return None
    names = (lost, turned, reflected, rest[seed % len(rest)])
    cells = whole - {lost}
    for at in names[1:]:
        more = cells | {at}
        found, alone = of_cells(*grid, more), of_cells_alone(more)
        reached = (2 if way == 4 else 1) in (
            (found.order, alone.order) if way == 4 else (found.lines, alone.lines)
        )
        if reached:
            return None
    return cells, names


def missing_square(which: int, way: int, seed: int) -> Draft:
    """Return the question which square a pattern lacks for its symmetry."""
    made = mended(which, way, seed)
    assert made is not None
    cells, names = made
    size = p.GRIDS[which]
    letters = dict(zip(sorted(names), "ABCD", strict=True))
    lettered = tuple((letters[at], at[0] * size[1] + at[1]) for at in sorted(letters))
    figure = ShadedSquares(*size, p.places(size, cells), lettered)
    lost, turned, reflected, _ = names
    partner = _MOVES[way](lost, size[0] - 1, size[1] - 1)
    if way == 4:
        text = prompt(
            "Which square should be shaded as well, so that the pattern has rotational symmetry "
            "of order {n}?",
            n=t.Int(2),
        )
        wrong = slips(
            (REFLECTED_ACROSS, t.Label(letters[turned])),
            (REFLECTED_OVER, t.Label(letters[reflected])),
        )
        by, goes = "half a turn", "turns to"
    else:
        text = prompt(
            "Which square should be shaded as well, so that the pattern has exactly {n} line of "
            "symmetry?",
            n=t.Int(1),
        )
        wrong = slips((TURNED, t.Label(letters[turned])), (OTHER_LINE, t.Label(letters[reflected])))
        by = (
            "a fold along the upright line through the middle",
            "a fold along the level line through the middle",
            "a fold along the diagonal from the top left corner",
            "a fold along the diagonal from the top right corner",
        )[way]
        goes = "falls on"
    key = t.Label(letters[lost])
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "name",
        (
            Step(f"By {by} all shaded squares but one get a shaded partner."),
            Step(
                f"The one without is square {partner[1] + 1} of row {partner[0] + 1}, "
                "counted from the top left."
            ),
            Step(f"That one {goes} square {letters[lost]}.", key),
        ),
        wrong,
        (way, *size, *figure.shaded, *lettered),
        figure=figure,
    )
