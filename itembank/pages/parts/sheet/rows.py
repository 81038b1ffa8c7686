"""Questions on a sheet in rows, one over the full width or two or three beside each other.

No question that is short stands alone beside an empty half while others of its topic share
rows, but where rows are set close so that a sheet keeps to its sides.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from itembank.packs.data.pack_item import PackItem
from itembank.pages.engine.paper import WIDTH, label_width
from itembank.pages.engine.text.paragraph import Block, Flow, measure
from itembank.pages.parts.questions.instructions import Instruction, last_instruction
from itembank.pages.parts.questions.question_cell import leaves_word, prompt
from itembank.pages.parts.questions.working_room import lines_of_working

GAP = 18.0
"""Room between two columns."""
LINES = {2: 2, 3: 1}
"""A question of so many lines may stand in a row of two, and of three."""
CLOSE_LINES = {2: 4, 3: 2}
"""The same in rows set close."""
TWO, THREE, ONE = 10, 16, 12
"""What a row costs when rows are chosen: three stand in a row where one would be left over."""
AFTER_TOLD = 0.5
"""Room below what the questions of a row are told, in ems."""


class Cell(NamedTuple):
    """A question as measured; `opens` says that its topic starts here."""

    number: int
    item: PackItem
    block: Block
    opens: bool


class Row(NamedTuple):
    """One question over the full width, or two or three beside each other.

    Heights are in points: `heading` for what stands above, which is topic names and what all
    the questions of the row are `told`; `text` for the questions; `wish` for the working room
    that the longest solution would like.
    """

    cells: list[Cell]
    width: float
    heading: float
    text: float
    wish: float
    told: Block | None = None

    def height(self, share: float) -> float:
        """Return the height of the row with a share of its working room."""
        return self.heading + self.text + share * self.wish


def rows(
    items: Sequence[PackItem], size: float, least: float, topics: bool = True, close: bool = False
) -> list[Row]:
    """Return the questions in rows: short neighbours of one topic stand beside each other.

    Topics are named above their questions, unless told not to be. Set `close`, longer questions
    share rows too, and one may be left over beside an empty half.
    """
    return _Rows(items, size, least, topics, close).made()


class _Rows:
    """The questions of a sheet, and the ways in which neighbours may share a row."""

    def __init__(
        self, items: Sequence[PackItem], size: float, least: float, topics: bool, close: bool
    ) -> None:
        self.items, self.size, self.least, self.close = items, size, least, close
        self.lines = CLOSE_LINES if close else LINES
        self.indent = label_width(10, size)
        changes = [True, *(a.topic != b.topic for a, b in pairwise(items))]
        # Where topics change at every turn their names would tell the method, not guide the eye.
        named = topics and sum(changes) <= len({item.topic for item in items}) + 2
        self.opens = [named and change for change in changes]

    def made(self) -> list[Row]:
        """Return all rows in order."""
        starts = [0, *(k for k in range(1, len(self.items)) if self.opens[k]), len(self.items)]
        topics = [range(a, b) for a, b in pairwise(starts)]
        out: list[Row] = []
        while topics:
            topic = topics.pop(0)
            # Two topics share a row only where each of them has this one question.
            if len(topic) == 1 and topics and len(topics[0]) == 1:
                pair = self._row((topic.start, topics[0].start))
                if pair is not None:
                    out.append(pair)
                    topics.pop(0)
                    continue
            out.extend(self._topic(topic))
        return out

    def _topic(self, topic: range) -> list[Row]:
        """Return the rows of a topic: each run of short questions shares rows or none does."""
        out: list[Row] = []
        start = topic.start
        while start < topic.stop:
            end = start
            while end < topic.stop and self._short(end):
                end += 1
            together = self._together(range(start, end))
            out.extend(together or [self._alone(k) for k in range(start, end)])
            if end < topic.stop:
                out.append(self._alone(end))
            start = end + 1
        return out

    def _short(self, k: int) -> bool:
        return self._row((k,), 2) is not None

    def _together(self, run: range) -> list[Row] | None:
        """Return rows of two, and of three or, set close, of one for what is left over, or None."""
        ways: list[tuple[int, list[Row]] | None] = [(0, [])]
        for end in range(1, len(run) + 1):
            best = None
            for many, cost in ((3, THREE), (2, TWO), *(((1, ONE),) if self.close else ())):
                before = ways[end - many] if end >= many else None
                row = self._beside(run[end - many : end]) if before is not None else None
                if before is None or row is None:
                    continue
                if best is None or before[0] + cost < best[0]:
                    best = (before[0] + cost, [*before[1], row])
            ways.append(best)
        last = ways[-1]
        return last[1] if last else None

    def _beside(self, run: range) -> Row | None:
        return self._alone(run.start) if len(run) == 1 else self._row(tuple(run))

    def _alone(self, k: int) -> Row:
        block = measure(Flow(prompt(self.items[k])), WIDTH - self.indent, self.size)
        return self._measured([Cell(k + 1, self.items[k], block, self.opens[k])], WIDTH, None)

    def _row(self, numbers: tuple[int, ...], columns: int = 0) -> Row | None:
        """Return a row of short questions, or None where one of them needs more room.

        What all of them ask of their answers is said once, above them.
        """
        columns = columns or len(numbers)
        width = (WIDTH - GAP * (columns - 1)) / columns
        said = {last_instruction(self.items[k]) for k in numbers}
        told = None
        if len(numbers) > 1 and len(said) == 1 and all(said):
            told = Instruction(said.pop(), tuple(k + 1 for k in numbers))
        cells = []
        for k in numbers:
            flow = Flow(prompt(self.items[k], [told] if told else ()))
            widest = max((cluster.width for cluster in flow.clusters), default=0.0)
            # A formula is never broken only to save a row.
            if widest * self.size > width - self.indent:
                return None
            block = measure(flow, width - self.indent, self.size)
            # A figure stands under its words, or beside them: it is no line of them.
            lines = len(block.lines) - (self.items[k].picture is not None)
            if lines > self.lines[columns] or leaves_word(block):
                return None
            cells.append(Cell(k + 1, self.items[k], block, self.opens[k]))
        words = told.words([k + 1 for k in numbers]) if told else ""
        return self._measured(cells, width, words or None)

    def _measured(self, cells: list[Cell], width: float, words: str | None) -> Row:
        size, least = self.size, self.least
        lines = max(lines_of_working(cell.item) for cell in cells)
        heading = 0.0
        if any(cell.opens for cell in cells):
            names = [topic_name(cells, cell, width, least) for cell in cells if cell.opens]
            heading = max(name.height for name in names) + 1.3 * least
        told = measure(Flow(words), WIDTH, size) if words else None
        if told is not None:
            heading += told.height + AFTER_TOLD * size
        up = max(cell.block.baseline for cell in cells)
        down = max(cell.block.height - cell.block.baseline for cell in cells)
        return Row(cells, width, heading, up + down, (1.6 * lines + 2.5) * size, told)


def topic_name(cells: Sequence[Cell], cell: Cell, width: float, least: float) -> Block:
    """Return the name of a cell's topic: over the whole row where it is the row's only topic."""
    alone = sum(cell.opens for cell in cells) == 1
    return measure(Flow(cell.item.topic_title), WIDTH if alone else width, least)
