"""Sheets to pin up after a starter: for each band its sign, its seats and what they do next.

They are read standing, by a crowd: the seats are as large as the page allows.
"""

from __future__ import annotations

from collections.abc import Sequence

from itembank.data_class import dataclass
from itembank.packs.data.pack import Band
from itembank.pages.engine.page import theme
from itembank.pages.engine.page.signs import sign
from itembank.pages.engine.paper import LEFT, RIGHT, WIDTH, LoosePaper, space, text_part
from itembank.planning.bands.caution import FOR_PUPILS
from itembank.text.in_words import counted

TEXT = 22.0
SEATS = (64.0, 54.0, 44.0, 36.0, 30.0)
"""Sizes of a seat code, in points: the largest is taken in which all stand on the page."""
SIGN = 84.0


@dataclass(frozen=True, slots=True)
class GroupPart:
    """A band with its sign, the seats in it, and what they do next."""

    band: Band
    seats: Sequence[str]
    task: str


def group_sheets(title: str, groups: Sequence[GroupPart]) -> bytes:
    """Return a tagged PDF with a page for each group. The same data always give the same bytes."""
    paper = LoosePaper(title, "Groups", TEXT)
    for number, group in enumerate(groups):
        if number:
            paper.new_page()
        _group(paper, title, group)
    return paper.finish()


def _group(paper: LoosePaper, title: str, group: GroupPart) -> None:
    size = paper.size
    pupils = counted(len(group.seats), "pupil")
    room = WIDTH - SIGN - size
    name = f"{group.band.name} ({group.band.letter}): {pupils}"
    words = [
        text_part(
            name, room, size + 10, kind="H1", bold=True, colour=theme.ACCENT, after=0.3 * size
        ),
        text_part(title, room, size),
    ]
    top = paper.y
    paper.place(words, LEFT)
    sign(paper.page, group.band, RIGHT - SIGN, top - SIGN, SIGN)
    paper.y = min(paper.y, top - SIGN) - size
    paper.place([text_part(group.task, WIDTH, size, after=1.4 * size)])
    # Three spaces keep one code from running into the next at this size; the two that hold on to
    # a code stay with it at the end of a line.
    codes = "\u00a0\u00a0 ".join(group.seats) or "Nobody"
    made = [text_part(codes, WIDTH, large, bold=True) for large in SEATS]
    caution = text_part(FOR_PUPILS, WIDTH, size)
    room = paper.room - caution.height - size
    seats = next((part for part in made if part.height <= room), made[-1])
    paper.place([seats, space(size), caution])
