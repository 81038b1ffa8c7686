"""Where the questions of a starter stand: worked out once, used by both slides.

The room for each answer is kept on the starter too, so that question and answer slides show
every question at the same place, in the same size, broken at the same words.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple, TypeAlias

from itembank.errors import ItembankError
from itembank.packs.model import Look, PackItem

from . import theme
from .fonts import face
from .text import Atom, Block, Flow, Piece, measure

LEFT = theme.SLIDE_MARGIN
RIGHT = theme.SLIDE[0] - theme.SLIDE_MARGIN
COLUMN_GAP = 24.0
NUMBER_GAP = 12.0
"""Room between a number and its question."""
BETWEEN = 12.0

"""Least room between one question and the next below it."""
MOST_BETWEEN = 64.0
"""Most room between questions: with more they no longer look like one list."""
PAD = 6.0
"""Room between an answer and its box."""
ARROW = 26.0
"""Room for the arrow before an answer's box."""
LAST_RESORT = 18.0
"""A single question that fills more than a slide is set smaller, down to this size."""


class Cell(NamedTuple):
    """A question with the room for its answer; points from the cell's top left corner.

    `arrow` is the baseline of the words before the answer, where its arrow points.
    """

    indent: float
    question: Block
    answer: Block
    answer_x: float
    answer_top: float
    arrow: float
    height: float


class Spot(NamedTuple):
    """A cell at its place: `number` is the question's, `x` its left edge, `top` its top."""

    number: int
    item: PackItem
    cell: Cell
    x: float
    top: float


Flows: TypeAlias = Sequence[tuple[Flow, Flow]]


class Slide(NamedTuple):
    """The questions of one slide."""

    spots: list[Spot]
    size: float
    columns: int


def prompt(item: PackItem) -> list[Piece]:
    """Return the item's prompt, with its marks where they are more than one."""
    runs: list[Piece] = list(item.prompt)
    if item.marks > 1:
        runs.append(f" [{item.marks}\u00a0marks]")
    return runs


def cell(question: Flow, answer: Flow, width: float, size: float, digits: int) -> Cell:
    """Set one question with room for its answer: after the last word, or on a line below.

    The question stands right of a number of so many digits.
    """
    indent = face(True).width("0" * digits) * size + NUMBER_GAP
    inside = width - indent - ARROW - 2 * PAD
    box = measure(answer, inside, size)
    room = Atom(
        (ARROW + box.width + 2 * PAD) / size,
        (box.baseline + PAD) / size,
        (box.height - box.baseline + PAD) / size,
        "",
        False,
    )
    asked = measure(question, width - indent, size, tail=room)
    assert asked.tail is not None
    x, baseline = asked.tail
    arrow = asked.lines[-1].baseline
    top = baseline - box.baseline
    return Cell(indent, asked, box, x + ARROW + PAD, top, arrow, asked.height)


def arrange(items: Sequence[PackItem], look: Look, top: float, bottom: float) -> list[Slide]:
    """Place all questions on as few slides as the type size allows, evenly shared out.

    Raises:
        ItembankError: one question alone is too long for a whole slide.
    """
    least, most = theme.SLIDE_LARGE_QUESTION if look.large_print else theme.SLIDE_QUESTION
    flows = [(Flow(prompt(item)), Flow([item.key])) for item in items]
    filled = _filled(items, flows, least, top, bottom)
    groups = _shares(len(items), len(filled))
    for size in range(int(most), int(least) - 1, -2):
        # Lopsided columns look unfinished: they are for the least size only.
        even = size > least
        made = [_slide(items, flows, group, size, top, bottom, even) for group in groups]
        if all(made):
            return [slide for slide in made if slide]
    return filled


def _filled(
    items: Sequence[PackItem], flows: Flows, size: float, top: float, bottom: float
) -> list[Slide]:
    """Return the slides got by putting as many questions on each as fit at the least size."""
    out: list[Slide] = []
    start = 0
    while start < len(items):
        best = _alone(items, flows, start, size, top, bottom)
        for end in range(start + 2, len(items) + 1):
            made = _slide(items, flows, range(start, end), size, top, bottom)
            if made is None:
                break
            best = made
        out.append(best)
        start += len(best.spots)
    return out


def _shares(count: int, slides: int) -> list[range]:
    """Return `count` questions shared over `slides` slides, none with two more than another."""
    each, over = divmod(count, slides)
    ends = [0]
    for number in range(slides):
        ends.append(ends[-1] + each + (number < over))
    return [range(a, b) for a, b in pairwise(ends)]


def _slide(
    items: Sequence[PackItem],
    flows: Flows,
    group: range,
    size: float,
    top: float,
    bottom: float,
    even: bool = False,
) -> Slide | None:
    """Return the questions of `group` placed on one slide, or None where they do not fit.

    With `even`, two columns have to share the questions evenly.
    """
    columns = (2, 1) if len(group) > 1 else (1,)
    for number in columns:
        width = (RIGHT - LEFT - COLUMN_GAP * (number - 1)) / number
        cells = [cell(*flows[i], width, size, len(str(len(items)))) for i in group]
        if any(made.question.cramped or made.answer.cramped for made in cells):
            continue
        room = top - bottom
        for split in _splits(cells, number, room):
            if even and number == 2 and split != (len(group) + 1) // 2:
                continue
            tops = _tops(cells, split, top, room)
            spots = [
                Spot(i + 1, items[i], made, LEFT + column * (width + COLUMN_GAP), y)
                for i, made, (column, y) in zip(group, cells, tops, strict=True)
            ]
            return Slide(spots, size, number)
    return None


def _needed(cells: Sequence[Cell]) -> float:
    return sum(made.height for made in cells) + BETWEEN * max(0, len(cells) - 1)


def _splits(cells: Sequence[Cell], columns: int, room: float) -> list[int]:
    """Return how many questions may stand in the first column, the best choice first."""
    count = len(cells)
    if columns == 1:
        return [count] if _needed(cells) <= room else []
    even = (count + 1) // 2
    fitting = [
        k for k in range(1, count) if _needed(cells[:k]) <= room and _needed(cells[k:]) <= room
    ]
    return sorted(fitting, key=lambda k: (abs(k - even), k))


def _tops(cells: Sequence[Cell], split: int, top: float, room: float) -> list[tuple[int, float]]:
    """Return the column and the top of each cell; where it fits, rows share their baseline."""
    sides = (cells[:split], cells[split:])
    rows = [
        [side[row] for side in sides if row < len(side)]
        for row in range(max(len(side) for side in sides))
    ]
    above = [max(made.question.baseline for made in row) for row in rows]
    below = [max(made.height - made.question.baseline for made in row) for row in rows]
    needed = sum(above) + sum(below)
    out: list[tuple[int, float]] = []
    if needed + BETWEEN * (len(rows) - 1) <= room:
        extra = min(MOST_BETWEEN, (room - needed) / len(rows))
        starts = [top]
        for up, down in zip(above, below, strict=True):
            starts.append(starts[-1] - up - down - extra)
        for column, side in enumerate(sides):
            for made, start, up in zip(side, starts, above, strict=False):
                out.append((column, start - up + made.question.baseline))
        return out
    for column, side in enumerate(sides):
        spare = room - sum(made.height for made in side)
        extra = min(MOST_BETWEEN, spare / max(1, len(side)))
        y = top
        for made in side:
            out.append((column, y))
            y -= made.height + extra
    return out


def _alone(
    items: Sequence[PackItem], flows: Flows, i: int, size: float, top: float, bottom: float
) -> Slide:
    """Return one long question on a slide of its own, set smaller as a last resort."""
    while size >= LAST_RESORT:
        made = cell(*flows[i], RIGHT - LEFT, size, len(str(len(items))))
        if made.height <= top - bottom:
            return Slide([Spot(i + 1, items[i], made, LEFT, top)], size, 1)
        size -= 2
    raise ItembankError(
        f"Question {i + 1} ({items[i].address}) is too long for a slide, even at "
        f"{LAST_RESORT:.0f} point. Choose another item or shorten its words."
    )
