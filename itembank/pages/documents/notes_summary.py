"""The first page of the teacher's notes: enough for a teacher who reads no other.

All questions with their keys, a wrong answer to expect to each, three things to do, and which
score is which band. The pages behind it hold the rest.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from itembank.packs.data.pack import Band, Pack
from itembank.packs.data.pack_item import PackItem, TextRun
from itembank.pages.documents.slides import lesson_line
from itembank.pages.engine.document_titles import sheet_name
from itembank.pages.engine.faces.fonts import face
from itembank.pages.engine.page import theme
from itembank.pages.engine.page.page import Page
from itembank.pages.engine.page.signs import interval, sign
from itembank.pages.engine.paper import (
    WIDTH,
    Paper,
    Part,
    heading_part,
    list_part,
    text_part,
)
from itembank.pages.engine.table_drawn import Cell, Pieces, table_part, table_pieces
from itembank.pages.engine.text.paragraph import Flow, Piece, measure, one_line
from itembank.pages.parts.questions.answers import key_shown
from itembank.pages.parts.questions.question_cell import called, prompt
from itembank.pages.parts.teacher.script import mid_sentence
from itembank.planning.bands.caution import NOT_A_GRADE

TO_DO: tuple[str, ...] = (
    "Read each question with its key, and work two of them out yourself.",
    "Show the starter and look from the back of the room. Can you read each question?",
    "Print the sheets, and decide who teaches the repair group.",
)
DECIDES = f"{NOT_A_GRADE} Your judgement decides what a pupil does next."


class Shares(NamedTuple):
    """How the width of the table is shared out.

    `key` is the most of the page's width that keys take, `asked` what questions have of what they
    and the wrong answers have together.
    """

    key: float
    asked: float


SHARES = (Shares(0.24, 0.54), *(Shares(k, a) for k in (0.24, 0.16) for a in (0.47, 0.6, 0.66)))
"""The usual shares, and others that are tried where not all questions stand on the page."""


def summary(paper: Paper, pack: Pack) -> None:
    """Draw the first page of the notes; with many questions it goes on over the page."""
    size = paper.size
    gap = 0.9 * size
    paper.place(
        [
            heading_part("Teacher notes", size, 1),
            text_part([lesson_line(pack.lesson)], WIDTH, size, colour=theme.QUIET),
        ],
        gap=gap,
    )
    things = list_part(TO_DO, WIDTH, size, mark="box")
    paper.place([heading_part("Three things to do", size), things], gap=gap)
    what = f"Scores out of {pack.marks}, and what comes next"
    decides = text_part(DECIDES, WIDTH, size)
    paper.place([heading_part(what, size), _bands(pack, size), decides], gap=gap)
    version = pack.versions[0]
    title = "Questions, keys and what to look out for"
    if len(pack.versions) > 1:
        title += f": version {version.letter}"
    paper.place([heading_part(title, size)])
    table = _questions(version.items, size, paper.room)
    paper.place_apart(table.rows, "Questions, continued", table.again)


def _questions(items: Sequence[PackItem], size: float, room: float) -> Pieces:
    """Return the table of the questions, in rows that may go on over the page.

    So that all stand in the `room` of the first page, where that can be, the columns are shared
    out otherwise, and then pictures are left to the slide, those first that take most.
    """
    usual = _table(items, size, SHARES[0])
    if _high(usual) <= room:
        return usual

    def lowest(untold: Sequence[int]) -> Pieces:
        return min((_table(items, size, shares, untold) for shares in SHARES), key=_high)

    untold: list[int] = []
    best = lowest(untold)
    saved = {
        place: _saved(item, size) for place, item in enumerate(items) if item.picture is not None
    }
    for place in sorted(saved, key=lambda place: -saved[place]):
        if _high(best) <= room:
            break
        untold.append(place)
        best = lowest(untold)
    # Where there is no way each question has its picture.
    return best if _high(best) <= room else usual


def _high(table: Pieces) -> float:
    return sum(row.height for row in table.rows)


def _saved(item: PackItem, size: float) -> float:
    """Return about how much lower the row of a question is without its picture, in points."""
    width = 0.4 * WIDTH
    told, untold = (Flow(_asked(item, left_out)) for left_out in (False, True))
    return measure(told, width, size).height - measure(untold, width, size).height


def _table(
    items: Sequence[PackItem], size: float, shares: Shares, untold: Sequence[int] = ()
) -> Pieces:
    """Return the table with such columns; the questions at the places `untold` have no picture."""
    number = face(True).width("No.") * size + size
    widest = max(one_line(key_shown(item), size).width for item in items) + 1.2 * size
    key = min(max(widest, 3.4 * size), shares.key * WIDTH)
    rest = WIDTH - number - key
    rows = [
        (str(place), _asked(item, place - 1 in untold), key_shown(item), _to_expect(item))
        for place, item in enumerate(items, start=1)
    ]
    head = ("No.", "Question", "Key", "Wrong answer to expect")
    widths = (number, shares.asked * rest, key, (1 - shares.asked) * rest)
    # One number alone would name no more than the question beside it does.
    return table_pieces(head, rows, widths, size, row_headers=len(items) > 1)


def _asked(item: PackItem, untold: bool) -> list[Piece]:
    """Return a question with its picture, or with words that say where that is."""
    runs = prompt(item)
    if untold and item.picture is not None:
        runs = [run for run in runs if run is not item.picture]
        runs.append(f" (The {called(item.picture)} is on the slide.)")
    return _run_on(runs)


def _run_on(runs: Sequence[Piece]) -> list[Piece]:
    """Return a prompt whose lines run on, so that the first page of the notes is enough."""
    return [
        TextRun(text=run.text.replace("\n", " ")) if isinstance(run, TextRun) else run
        for run in runs
    ]


def _to_expect(item: PackItem) -> list[Piece]:
    """Return the first of the wrong answers that the question was written to show, and why."""
    if not item.misconceptions:
        return ["–"]
    first = item.misconceptions[0]
    return [first.wrong, f": {mid_sentence(first.name)}"]


def _bands(pack: Pack, size: float) -> Part:
    side = 1.35 * size
    name = max(face().width(band.name) for band in pack.bands) * size + side + 2 * size
    name = min(name, 0.34 * WIDTH)
    score = face(True).width("Score") * size + 1.4 * size
    rest = WIDTH - name - score
    rows = []
    for band in pack.bands:
        task = band.task
        how = f"{task.title}: {sheet_name(task.tier).lower()}, {task.mode}"
        rows.append((Cell(band.name, side + 0.5 * size, _sign(band, side)), interval(band), how))
    head = ("Band", "Score", "Next task")
    return table_part(head, rows, (name, score, rest), size, row_headers=True, after=0.5 * size)


def _sign(band: Band, side: float) -> Callable[[Page, float, float], None]:
    def show(page: Page, x: float, baseline: float) -> None:
        sign(page, band, x, baseline - 0.35 * side, side)

    return show
