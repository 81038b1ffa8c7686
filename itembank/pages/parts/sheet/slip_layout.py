"""Where the questions of a slip and the lines for their answers stand.

An answer line stands at the right edge, so that a row of slips is quickly marked: beside the
last words of a question where these leave room for it, else below them. What several questions
ask of their answers is said once, above them, as on the slide. All questions stand on one slip
if they can, at the largest size that leaves room to write; else on more slips, evenly filled.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from itembank.errors import ItembankError
from itembank.packs.data.pack_item import PackItem
from itembank.pages.engine.faces.fonts import DESCENT, face
from itembank.pages.engine.text.paragraph import Block, Flow, Line, after_figure, measure
from itembank.pages.parts.questions.even_split import evenest
from itembank.pages.parts.questions.instructions import Instruction, last_instruction, shared
from itembank.pages.parts.questions.question_cell import prompt
from itembank.pages.parts.questions.working_room import lines_of_working

INDENT = 26.0
"""Room for a question's number."""
LINE = 104.0
"""Length of the line for an answer: 37 mm."""
LABEL = "Answer"
WRITING = 20.0
"""Least clear room above the line for an answer, 7 mm: narrow ruled paper (from memory)."""
AFTER = 6.0
"""Least room between the line for an answer and the next question."""
MORE_AFTER = 0.3
"""How much of a question's spare room goes there, so that the line is seen to be its own."""
MOST_AFTER = 14.0
APART = 10.0
"""Room between the words of a question and the answer's label beside them."""
EASY = 18.0
"""With so much more room for each question the type may be larger."""
MOST_WORKING = 110.0
"""With more room than this below a question the slip looks empty rather than roomy."""


class Placed(NamedTuple):
    """A question of a slip, points below the top of its questions.

    `line` is how far below `top` the line for the answer stands; an answer that is `drawn` has
    none.
    """

    number: int
    block: Block
    top: float
    line: float
    drawn: bool = False


class Slip(NamedTuple):
    """The questions of one slip, and the block that says what several ask of their answers."""

    told: Block | None
    placed: list[Placed]


def label_room(size: float) -> float:
    """Return the room for the answer's label, in points."""
    return face().width(LABEL) * size + 6


def arrange_slips(
    items: Sequence[PackItem], width: float, room: float, sizes: Sequence[float], small: float
) -> list[Slip]:
    """Return the questions on as few slips as the least of `sizes` allows, evenly shared out.

    `room` is the height for questions on a slip, `small` the size of the answers' labels.

    Raises:
        ItembankError: one question alone is too long for a slip.
    """
    told = shared(items)
    flows = [Flow(prompt(item, told)) for item in items]
    settings = [_Setting(items, flows, told, width, room, size, small) for size in sizes]
    least = settings[-1]
    for number, item in enumerate(items, start=1):
        if least.fullness(range(number - 1, number), 0.0) > 1:
            raise ItembankError(
                f"Question {number} ({item.address}) is too long for a pupil slip, even at "
                f"{sizes[-1]:.0f} point. Choose another question, shorten its words or leave the "
                "slips out."
            )
    for count in range(1, len(items) + 1):
        for setting in settings:
            # The least size is taken however close it is: there is no other.
            easy = EASY if setting is not least else 0.0
            if groups := setting.groups(count, easy):
                return [setting.slip(group) for group in groups]
    raise AssertionError("one question a slip always fits")  # pragma: no cover


def on_one_slip(
    items: Sequence[PackItem], width: float, room: float, size: float, small: float
) -> bool:
    """Tell whether questions stand on one slip at `size`, each with room to write its answer."""
    told = shared(items)
    flows = [Flow(prompt(item, told)) for item in items]
    return _Setting(items, flows, told, width, room, size, small).groups(1, 0.0) is not None


def slip_share(item: PackItem, width: float, room: float, size: float, small: float) -> float:
    """Return the least share of a slip that a question takes, with the room for its answer.

    What it says of its answer may be told above it, once for several questions.
    """
    said = last_instruction(item)
    flow = Flow(prompt(item, [Instruction(said, (1,))] if said else []))
    free = _free_beside(width, small)
    return (_need(_lowest(flow, width - INDENT, size, free), free) + AFTER) / room


def _free_beside(width: float, small: float) -> float:
    """Return how long a line of words may be that has the line for its answer beside it."""
    return width - INDENT - LINE - label_room(small) - APART


class _Setting:
    """The questions as measured at one size."""

    def __init__(
        self,
        items: Sequence[PackItem],
        flows: Sequence[Flow],
        told: Sequence[Instruction],
        width: float,
        room: float,
        size: float,
        small: float,
    ) -> None:
        self.told, self.width, self.room, self.size = told, width, room, size
        self.items = items
        self.wishes = [lines_of_working(item) for item in items]
        free = _free_beside(width, small)
        self.blocks = [_lowest(flow, width - INDENT, size, free) for flow in flows]
        self.needs = [_need(block, free) + AFTER for block in self.blocks]

    def head(self, group: range) -> Block | None:
        """Return what the questions of a group are told above them."""
        numbers = [i + 1 for i in group]
        words = "\n".join(said for instruction in self.told if (said := instruction.words(numbers)))
        return measure(Flow(words), self.width, self.size) if words else None

    def _free(self, group: range) -> float:
        head = self.head(group)
        return self.room - (head.height + 0.7 * self.size if head else 0.0)

    def fullness(self, group: range, easy: float) -> float:
        """Return how full a slip of these questions is, with some room more for each."""
        return sum(self.needs[i] + easy for i in group) / self._free(group)

    def groups(self, slips: int, easy: float) -> list[range] | None:
        """Return the questions shared over so many slips, or None where they do not fit."""
        return evenest(len(self.blocks), slips, lambda group, _: self.fullness(group, easy))

    def slip(self, group: range) -> Slip:
        """Return a slip: the room left over goes to the questions that need most working."""
        head = self.head(group)
        spare = self._free(group) - sum(self.needs[i] for i in group)
        share = spare / sum(self.wishes[i] for i in group)
        y = self.room - self._free(group)
        placed = []
        for i in group:
            extra = min(MOST_WORKING, share * self.wishes[i])
            height = self.needs[i] + extra
            after = min(MOST_AFTER, AFTER + MORE_AFTER * extra)
            placed.append(Placed(i + 1, self.blocks[i], y, height - after, self.items[i].drawn))
            y += height
        return Slip(head, placed)


def _lowest(flow: Flow, width: float, size: float, free: float) -> Block:
    """Return a question as it needs least room: its figure below its words, or on either side."""
    ways = [measure(flow, width, size), measure(flow, width, size, lowest=True)]
    if (left := after_figure(flow, width, size)) is not None:
        ways.append(left[0])
    # Of as low ones the first, which is how other pages set it.
    return min(ways, key=lambda block: round(_need(block, free), 2))


def _need(block: Block, free: float) -> float:
    """Return how far below its top a question's answer line stands at least.

    Words that leave less than the room for the line beside them stand above it.
    """
    over = [_low(line, block.size) for line in block.lines if line.width > free]
    return max(block.height, max(over, default=0.0) + WRITING)


def _low(line: Line, size: float) -> float:
    deep = max([DESCENT, *(placed.atom.descent * placed.scale for placed in line.placed)])
    return line.baseline + deep * size
