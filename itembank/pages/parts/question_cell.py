"""A question of a slide set with its answer: at the right edge, where eyes find it.

Words are broken early only where a line would run into its own answer.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from itembank.packs.data.pack_item import PackItem
from itembank.pages.engine.flow import Pair
from itembank.pages.engine.fonts import DESCENT, face
from itembank.pages.engine.paragraph import AXIS, Block, Flow, Piece, after_figure, measure
from itembank.pages.parts.instructions import Instruction, last_instruction, without

NUMBER_GAP = 12.0
"""Room between a number and its question."""

LINE_GAP = 0.24
"""Room between the lines of a question, in ems; less than between questions."""

PAD = 6.0
"""Room between an answer and its box."""

ARROW = 30.0
"""Room for the arrow before an answer's box."""


class Cell(NamedTuple):
    """A question with the place of its answer; points from the cell's top left corner.

    `question_top` is where its words start, `baseline` the baseline of their first line, and
    `arrow` how far below the top the answer's arrow stands.
    """

    indent: float
    question: Block
    question_top: float
    answer: Block
    answer_x: float
    answer_top: float
    arrow: float
    height: float

    @property
    def baseline(self) -> float:
        """The baseline of the first line of words, below the cell's top."""
        return self.question_top + self.question.baseline


def asked(item: PackItem) -> list[Piece]:
    """Return the item's prompt with its figure, for where it earns no marks."""
    return [*item.prompt, *filter(None, [item.picture])]


def solved(item: PackItem) -> list[Piece]:
    """Return the item's prompt with its figure as it stands with the answer."""
    return [*item.prompt, *filter(None, [item.key_picture or item.picture])]


def prompt(
    item: PackItem,
    told: Sequence[Instruction] = (),
    answered: bool = False,
    shown_by: int | None = None,
) -> list[Piece]:
    """Return the item's prompt, with its marks where they are more than one.

    An instruction that is `told` for several questions at once is left out. Where the page is to
    show it `answered` too, its figure has the room that it needs then. Where the question of a
    number has the same figure, it is `shown_by` that one, and the prompt says so.
    """
    said = last_instruction(item)
    elsewhere = said and any(instruction.sentence == said for instruction in told)
    runs: list[Piece] = [*(without(item, said) if elsewhere else item.prompt)]
    if item.marks > 1:
        runs.append(f" [{item.marks}\u00a0marks]")
    picture, key_picture = item.picture, item.key_picture
    if picture is not None and shown_by is not None:
        what = "table" if "table" in picture.data["kind"] else "picture"
        return [f"Use the {what} in question\u00a0{shown_by}. ", *runs]
    if answered and picture is not None and key_picture is not None:
        runs.append(Pair(picture, key_picture))
    elif picture is not None:
        runs.append(picture)
    return runs


def leaves_word(asked: Block) -> bool:
    """Tell whether a question's first line is one word, which belongs to the formula below."""
    if len(asked.lines) < 2:
        return False
    first, second = (line.placed for line in asked.lines[:2])
    alone = len(first) == 1 and first[0].atom.maths is None and " " not in first[0].atom.text
    return alone and second[0].atom.maths is not None


class Setting(NamedTuple):
    """How close a question is set: the room between its lines, in ems, and how its figure stands.

    `pictures` is the size of figures against that of the words; `lowest` says that words may stand
    in a narrow column beside a figure.
    """

    lines: float = LINE_GAP
    pictures: float = 1.0
    lowest: bool = False


USUAL = Setting()


def cell(
    question: Flow,
    answer: Flow,
    width: float,
    size: float,
    digits: int,
    setting: Setting = USUAL,
) -> Cell:
    """Set one question with its answer: the lowest of the ways there are.

    The question stands right of a number of so many digits; its answer beside its last line,
    where the words leave room there; beside all of it, the words broken before the answer; or
    below it.
    """
    indent = face(True).width("0" * digits) * size + NUMBER_GAP
    box = measure(answer, width - indent - ARROW - 2 * PAD, size)
    left = width - PAD - box.width
    free = left - PAD - ARROW - indent
    whole = measure(question, width - indent, box.size, *setting)
    ways = []
    if whole.lines[-1].width <= free:
        ways = [_beside_last(whole, box, indent, left, free)]
        if ways[0].height <= max(whole.height, box.height + 2 * PAD) + 0.01:
            return ways[0]  # no other way is lower
    if free > 0:
        narrow = measure(question, free, box.size, *setting)
        if not narrow.cramped or whole.cramped:
            ways.append(_beside(narrow, box, indent, left))
    found = after_figure(question, width - indent, box.size, setting.lines, setting.pictures)
    if found is not None:
        ways += _beside_words(*found, box, indent, left)
    return min([*ways, _below(whole, box, indent, left)], key=lambda way: way.height)


def _beside_last(asked: Block, box: Block, indent: float, left: float, free: float) -> Cell:
    last = asked.lines[-1].baseline
    high, low = box.baseline + PAD, box.height - box.baseline + PAD
    over = [line for line in asked.lines[:-1] if line.width > free]
    # A tall answer hangs lower where a line above runs over its place.
    floor = over[-1].baseline + DESCENT * box.size if over else -1e6
    drop = max(0.0, floor - (last - high))
    above = max(0.0, high - drop - last)
    height = above + max(asked.height, last + drop + low)
    top = above + last + drop - box.baseline
    return Cell(indent, asked, above, box, left, top, _middle(box, top), height)


def _beside(asked: Block, box: Block, indent: float, left: float) -> Cell:
    tall = box.height + 2 * PAD
    if len(asked.lines) == 1:
        return _beside_last(asked, box, indent, left, 0.0)
    height = max(asked.height, tall)
    top = (height - box.height) / 2
    above = (height - asked.height) / 2
    return Cell(indent, asked, above, box, left, top, _middle(box, top), height)


def _beside_words(asked: Block, words: float, box: Block, indent: float, left: float) -> list[Cell]:
    """Return the ways to answer right of a figure, beside the last line of its words or below.

    The first lines of `asked` are its words, so high; the last is its figure, left of them.
    """
    *lines, figure = asked.lines
    spoken = asked._replace(lines=lines, height=words)
    free = left - PAD - ARROW - indent
    ways = []
    if lines[-1].width <= free:
        ways.append(_beside_last(spoken, box, indent, left, free))
    if figure.width <= free:
        ways.append(_below(spoken, box, indent, left))
    return [
        way._replace(question=asked, height=max(way.height, way.question_top + asked.height))
        for way in ways
    ]


def _below(asked: Block, box: Block, indent: float, left: float) -> Cell:
    top = asked.height + 2 * PAD
    height = top + box.height + PAD
    return Cell(indent, asked, 0.0, box, left, top, _middle(box, top), height)


def _middle(box: Block, top: float) -> float:
    return top + box.lines[0].baseline - AXIS * box.size
