"""A question of a slide set with its answer: at the right edge, where eyes find it.

Words are broken early only where a line would run into its own answer.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from itembank.packs.data.pack_item import PackItem, Picture
from itembank.pages.engine.faces.fonts import DESCENT, face
from itembank.pages.engine.text.flow import Pair
from itembank.pages.engine.text.paragraph import AXIS, Block, Flow, Piece, after_figure, measure
from itembank.pages.parts.questions.instructions import Instruction, last_instruction, without

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

    `question_top` is where its words start, `baseline` the baseline of their first line,
    `arrow` how far below the top the answer's arrow stands, and `pad` the room round the answer.
    """

    indent: float
    question: Block
    question_top: float
    answer: Block
    answer_x: float
    answer_top: float
    arrow: float
    height: float
    pad: float

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
        return [f"Use the {called(picture)} in question\u00a0{shown_by}. ", *runs]
    if answered and picture is not None and key_picture is not None:
        runs.append(Pair(picture, key_picture))
    elif picture is not None:
        runs.append(picture)
    return runs


def called(picture: Picture) -> str:
    """Return what a pupil calls a figure: a table, or a picture of any other kind.

    >>> called(Picture(data={"kind": "two-way table"}, words=""))
    'table'
    """
    return "table" if "table" in picture.data["kind"] else "picture"


def leaves_word(asked: Block, most: int = 1) -> bool:
    """Tell whether a question's first line is one word, which belongs to the formula below.

    Or as many as `most`: in a narrow column *Work out* can stand alone too.
    """
    words = 0
    for line in asked.lines[: most + 1]:
        first, *more = line.placed
        if first.atom.maths is not None:
            return 0 < words <= most
        if more:
            return False
        words += len(first.atom.text.split())
    return False


class Setting(NamedTuple):
    """How close a question is set: the room between its lines, in ems, and how its figure stands.

    `pictures` is the size of figures against that of the words; `lowest` says that words may stand
    in a narrow column beside a figure; `pad` is the room between an answer and its box.
    """

    lines: float = LINE_GAP
    pictures: float = 1.0
    lowest: bool = False
    pad: float = PAD


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
    pad = setting.pad
    indent = face(True).width("0" * digits) * size + NUMBER_GAP
    box = measure(answer, width - indent - ARROW - 2 * pad, size)
    left = width - pad - box.width
    place = _Place(box, indent, left, pad)
    free = left - pad - ARROW - indent
    close = (setting.lines, setting.pictures, setting.lowest)
    whole = measure(question, width - indent, box.size, *close)
    ways = []
    if whole.lines[-1].width <= free:
        ways = [_beside_last(whole, place, free)]
        if ways[0].height <= max(whole.height, box.height + 2 * pad) + 0.01:
            return ways[0]  # no other way is lower
    if free > 0:
        narrow = measure(question, free, box.size, *close)
        if not narrow.cramped or whole.cramped:
            ways.append(_beside(narrow, place))
    below = _below(whole, place)
    most = min(way.height for way in [*ways, below])
    found = after_figure(question, width - indent, box.size, setting.lines, setting.pictures, most)
    if found is not None:
        ways += _beside_words(*found, place)
    return min([*ways, below], key=lambda way: way.height)


class _Place(NamedTuple):
    """An answer, how far its question is indented, its left edge and the room round it."""

    box: Block
    indent: float
    left: float
    pad: float

    def cell(self, asked: Block, above: float, top: float, height: float) -> Cell:
        """Return the cell of a question that starts so far below its top, as the answer does."""
        arrow = top + self.box.lines[0].baseline - AXIS * self.box.size
        return Cell(self.indent, asked, above, self.box, self.left, top, arrow, height, self.pad)


def _beside_last(asked: Block, place: _Place, free: float) -> Cell:
    box, last = place.box, asked.lines[-1].baseline
    high, low = box.baseline + place.pad, box.height - box.baseline + place.pad
    over = [line for line in asked.lines[:-1] if line.width > free]
    # A tall answer hangs lower where a line above runs over its place.
    floor = over[-1].baseline + DESCENT * box.size if over else -1e6
    drop = max(0.0, floor - (last - high))
    above = max(0.0, high - drop - last)
    height = above + max(asked.height, last + drop + low)
    return place.cell(asked, above, above + last + drop - box.baseline, height)


def _beside(asked: Block, place: _Place) -> Cell:
    tall = place.box.height + 2 * place.pad
    if len(asked.lines) == 1:
        return _beside_last(asked, place, 0.0)
    height = max(asked.height, tall)
    top = (height - place.box.height) / 2
    return place.cell(asked, (height - asked.height) / 2, top, height)


def _beside_words(asked: Block, words: float, place: _Place) -> list[Cell]:
    """Return the ways to answer right of a figure, beside the last line of its words or below.

    The first lines of `asked` are its words, so high; the last is its figure, left of them.
    """
    *lines, figure = asked.lines
    spoken = asked._replace(lines=lines, height=words)
    free = place.left - place.pad - ARROW - place.indent
    ways = []
    if lines[-1].width <= free:
        ways.append(_beside_last(spoken, place, free))
    if figure.width <= free:
        ways.append(_below(spoken, place))
    return [
        way._replace(question=asked, height=max(way.height, way.question_top + asked.height))
        for way in ways
    ]


def _below(asked: Block, place: _Place) -> Cell:
    top = asked.height + 2 * place.pad
    return place.cell(asked, 0.0, top, top + place.box.height + place.pad)
