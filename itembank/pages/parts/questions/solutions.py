"""Worked solutions on paper: in full, with lines left to write, or as a short chain."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from itembank.packs.data.pack_item import Maths, Step
from itembank.pages.engine.maths.formula import pieces
from itembank.pages.engine.page import theme
from itembank.pages.engine.page.page import Page
from itembank.pages.engine.paper import Part, writing_line
from itembank.pages.engine.text.paragraph import Block, Flow, draw, measure

MATHS_SHARE = 0.56
"""Most of the width that the mathematics may take beside its words."""
_NUMBER = re.compile(r"[-−]?[\d./ ]+")
WRITING = 2.0
"""Height of a line to write on, in ems."""


class Row(NamedTuple):
    """One step: its words, its mathematics and where that stands.

    `below` says that the mathematics is too wide to stand beside the words. With `write` the
    mathematics is only the start of the line, and the pupil writes the rest. A figure stands
    below all of it.
    """

    say: Block
    maths: Block | None
    below: bool
    write: bool
    height: float
    picture: Block | None = None

    @property
    def tall(self) -> float:
        """The height with the figure below it."""
        return self.height + (self.picture.height + 0.5 * self.say.size if self.picture else 0.0)


def steps_part(
    steps: Sequence[Step],
    width: float,
    size: float,
    *,
    hidden: int = 0,
    between: float = 0.55,
    after: float = 0.0,
) -> Part:
    """Return the steps of a solution, words on the left and mathematics on the right.

    The mathematics of the last `hidden` steps that have any is left for the pupil to write;
    the first of those shows what stands before its equals sign. `between` is the room between
    two steps in ems.
    """
    indent = 1.5 * size
    gap = 1.2 * size
    left = [step.maths for step in steps]
    blank = [i for i, maths in enumerate(left) if maths is not None][-hidden:] if hidden else []
    natural = [measure(Flow([maths]), 1e6, size).width for maths in left if maths is not None]
    inside = width - indent
    most = MATHS_SHARE * inside
    fitting = [w for w in natural if w <= most]
    column = max([0.34 * inside, *fitting])
    rows = []
    for i, step in enumerate(steps):
        row = _row(step, i, blank, inside, column, gap, size)
        # The figure of a line that is left to write would show what is to be written.
        if step.picture is not None and i not in blank:
            row = row._replace(picture=measure(Flow([step.picture]), inside, size))
        rows.append(row)
    gap = between * size
    height = sum(row.tall for row in rows) + gap * max(0, len(rows) - 1)

    def show(page: Page, x: float, top: float) -> None:
        document = page.document
        with document.tag("L", attributes="<</O /List /ListNumbering /Decimal>>"):
            for number, row in enumerate(rows, start=1):
                with document.tag("LI"):
                    _draw_row(page, row, number, x, top, (indent, inside - column, width))
                top -= row.tall + gap

    return Part(height + after, show)


def _row(
    step: Step, i: int, blank: list[int], inside: float, column: float, gap: float, size: float
) -> Row:
    maths = step.maths
    if maths is None:
        say = measure(Flow(step.say), inside, size)
        return Row(say, None, False, False, say.height)
    if i in blank:
        say = measure(Flow(step.say), inside - column - gap, size)
        start = side_before(maths) if i == blank[0] else None
        lead = measure(Flow([start, " ="]), column * 0.7, size) if start else None
        if lead is not None and len(lead.lines) > 1:
            return _written_below(step, start, inside, size)
        baseline = _baseline(say, lead, True)
        below = [block.height - block.baseline for block in (say, lead) if block]
        return Row(say, lead, False, True, baseline + max(0.3 * size, *below))
    block = measure(Flow([maths]), column, size)
    if block.cramped or len(block.lines) > 1:
        block = measure(Flow([maths]), inside, size)
        say = measure(Flow(step.say), inside, size)
        return Row(say, block, True, False, say.height + 0.4 * size + block.height)
    say = measure(Flow(step.say), inside - column - gap, size)
    baseline = _baseline(say, block, False)
    height = baseline + max(say.height - say.baseline, block.height - block.baseline)
    return Row(say, block, False, False, height)


def _written_below(step: Step, start: Maths | None, inside: float, size: float) -> Row:
    """Return a step to be written under its words, since its start is too wide beside them.

    What is too wide even there is left to the pupil from its first sign on.
    """
    say = measure(Flow(step.say), inside, size)
    lead = measure(Flow([start, " ="]), 0.7 * inside, size) if start else None
    shown = lead if lead and len(lead.lines) == 1 else None
    room = max(WRITING * size, shown.height if shown else 0.0)
    return Row(say, shown, True, True, say.height + 0.4 * size + room)


def _baseline(say: Block, maths: Block | None, write: bool) -> float:
    """Return how far below the top of a row the words and what stands beside them are set."""
    found = max(say.baseline, maths.baseline if maths else 0.0)
    return max(found, (WRITING - 0.3) * say.size) if write else found


def _draw_row(
    page: Page,
    row: Row,
    number: int,
    x: float,
    top: float,
    columns: tuple[float, float, float],
) -> None:
    document = page.document
    indent, offset, width = columns
    size = row.say.size
    baseline = _baseline(row.say, None if row.below else row.maths, row.write and not row.below)
    with document.tag("Lbl"):
        page.text(x, top - baseline, str(number), size, bold=True, colour=theme.ACCENT)
    with document.tag("LBody"):
        with document.tag("P"):
            draw(page, row.say, x + indent, top - baseline + row.say.baseline)
        start = x + indent + (0.0 if row.below else offset)
        line = top - row.height + 0.3 * size if row.below else top - baseline
        if row.below and row.maths is not None:
            line = top - row.height + row.maths.height - row.maths.baseline
        if row.maths is not None:
            with document.tag("P"):
                if row.below:
                    low = top - row.height + row.maths.height
                    draw(page, row.maths, x + indent, low)
                else:
                    draw(page, row.maths, start, top - baseline + row.maths.baseline)
        if row.write:
            if row.maths is not None:
                start += row.maths.width + 0.5 * size
            writing_line(page, start, line - 2, x + width)
        if row.picture is not None:
            with document.tag("P"):
                draw(page, row.picture, x + indent, top - row.tall + row.picture.height)


def side_before(maths: Maths) -> Maths | None:
    """Return what stands before the sole equals sign, or None where there is none or several.

    >>> side_before(Maths(mathml="<math><mi>x</mi><mo>=</mo><mn>2</mn></math>",
    ...                   line="x = 2", words="x equals 2")).line
    'x'
    """
    line, found, _ = maths.line.partition(" = ")
    words, said, _ = maths.words.partition(" equals ")
    if not found or not said or several(maths):
        return None
    return Maths(mathml=pieces(maths.mathml, "relation")[0], line=line, words=words)


def several(maths: Maths) -> bool:
    """Tell whether a line is several equations, such as ``x = 2 or x = 7``."""
    return maths.line.count(" = ") > 1 and (" or " in maths.line or ", " in maths.line)


def _two_numbers(first: str, other: str) -> bool:
    return bool(_NUMBER.fullmatch(first) and _NUMBER.fullmatch(other))


def chain(steps: Iterable[Step]) -> list[Maths]:
    """Return the lines of a solution, leaving out a left side that has been shown already.

    ``1/2 + 1/3 = 3/6 + 2/6`` and ``3/6 + 2/6 = 5/6`` become the first line and ``= 5/6``; so
    do two lines that start with the same side. Sides that only change places stand in full:
    after ``C/5 = n`` comes ``n = C/5``, and not ``= C/5``.
    """
    out: list[Maths] = []
    start = end = opened = ""
    for step in steps:
        maths = step.maths
        if maths is None:
            continue
        first, _, rest = maths.line.partition(" = ")
        _, said, words = maths.words.partition(" equals ")
        swapped = first == end and rest == opened
        # x = 22 and x = 12 are the solutions of two equations, and no chain.
        apart = first == start and first != end and rest != end and _two_numbers(rest, end)
        told = first in (start, end) and not swapped and not apart
        if rest and said and told and not several(maths):
            _, *parts = pieces(maths.mathml, "relation")
            body = "".join(p.removeprefix("<math>").removesuffix("</math>") for p in parts)
            out.append(
                Maths(mathml=f"<math>{body}</math>", line=f"= {rest}", words=f"equals {words}")
            )
        else:
            out.append(maths)
            start = first if rest and not several(maths) else ""
        opened, end = first, maths.line.rpartition(" = ")[2]
    return out
