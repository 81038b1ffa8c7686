"""How high the questions of a slide stand: spread over the room that they leave."""

from __future__ import annotations

from collections.abc import Sequence

from itembank.pages.parts.questions.question_cell import Cell
from itembank.pages.parts.slide.strips import Strip

MOST_BETWEEN = 64.0
"""Most room between questions: with more they no longer look like one list."""


def column_tops(
    columns: Sequence[Sequence[Cell]], top: float, room: float, between: float
) -> list[tuple[int, float]]:
    """Return the column and the top of each cell; where it fits, rows share their baseline.

    Rows that share it stand at least so much apart as `between` says.
    """
    rows = [
        [side[row] for side in columns if row < len(side)]
        for row in range(max(len(side) for side in columns))
    ]
    above = [max(made.baseline for made in row) for row in rows]
    below = [max(made.height - made.baseline for made in row) for row in rows]
    needed = sum(above) + sum(below)
    out: list[tuple[int, float]] = []
    if needed + between * (len(rows) - 1) <= room:
        extra = min(MOST_BETWEEN, (room - needed) / len(rows))
        starts = [top]
        for up, down in zip(above, below, strict=True):
            starts.append(starts[-1] - up - down - extra)
        for column, side in enumerate(columns):
            for made, start, up in zip(side, starts, above, strict=False):
                out.append((column, start - up + made.baseline))
        return out
    for column, side in enumerate(columns):
        spare = room - sum(made.height for made in side)
        extra = min(MOST_BETWEEN, spare / max(1, len(side)))
        y = top
        for made in side:
            out.append((column, y))
            y -= made.height + extra
    return out


def strip_tops(strips: Sequence[Strip], top: float, room: float) -> list[float]:
    """Return the top of each strip, with the room that is left shared between them."""
    spare = room - sum(strip.height for strip in strips)
    extra = min(MOST_BETWEEN, spare / len(strips))
    out = [top]
    for strip in strips[:-1]:
        out.append(out[-1] - strip.height - extra)
    return out


def tops_in_strip(
    cells: Sequence[Cell], top: float, height: float, columns: Sequence[Sequence[Cell]]
) -> list[float]:
    """Return the top of each cell of a column, spread over the height of its strip.

    The first shares its baseline with those of the other `columns` where there is room for that.
    """
    spare = height - sum(made.height for made in cells)
    drop = max(column[0].baseline for column in columns) - cells[0].baseline
    drop = drop if drop <= spare else 0.0
    extra = min(MOST_BETWEEN, (spare - drop) / max(1, len(cells) - 1))
    out = [top - drop]
    for made in cells[:-1]:
        out.append(out[-1] - made.height - extra)
    return out
