"""Large-print copies: the class's papers once more for the pupils who need them, at 18 points.

A document holds every copy of one paper, one after the other, so that it is printed once. Each
copy has the seat it is for written at its head, where a seat was named. Powers too are as large
as the text.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from itembank.packs.data.pack import Pack, Sheet
from itembank.pages.documents.follow_up_answers import follow_up_answers
from itembank.pages.documents.sheet_head import Head, draw_head
from itembank.pages.documents.sheets import draw_questions, draw_sheet
from itembank.pages.engine.document_titles import sheet_name
from itembank.pages.engine.faces.fonts import plain
from itembank.pages.engine.maths.formula import scripts_at_least
from itembank.pages.engine.page import theme
from itembank.pages.engine.paper import Paper
from itembank.pages.parts.questions.marks_said import how_many_each, total

Drawer = Callable[[Pack], bytes]
HOW = "Work on your own, in silence, and show your steps."


def large_print_drawers(pack: Pack) -> dict[str, Drawer]:
    """Return what draws each file in large print, by its name; nothing where nobody needs it."""
    if not pack.look.large_print:
        return {}
    found: dict[str, Drawer] = {"starter-large.pdf": _starters}
    for sheet in pack.sheets:
        found[f"{sheet.tier}-large.pdf"] = partial(_sheets, sheet=sheet)
    if pack.sheets:
        found["follow-up-answers-large.pdf"] = partial(follow_up_answers, large=True)
    return {name: _with_large_powers(draw) for name, draw in found.items()}


def _with_large_powers(draw: Drawer) -> Drawer:
    """Return what draws a document with its powers as large as its text."""

    def drawn(pack: Pack) -> bytes:
        with scripts_at_least(1.0):
            return draw(pack)

    return drawn


def _copies(pack: Pack, what: str, draw_copy: Callable[[Paper, int], None]) -> bytes:
    """Return a document of every copy; `draw_copy` is told the number of each, from 0."""
    first, *others = pack.look.large_print
    paper = Paper(pack, what, theme.LARGE_TEXT, large=True, seat=first)
    draw_copy(paper, 0)
    for number, seat in enumerate(others, start=1):
        paper.next_copy(seat)
        draw_copy(paper, number)
    return paper.finish()


def _starters(pack: Pack) -> bytes:
    """Return the questions of the starter; of parallel versions the copies take turns."""

    def draw_copy(paper: Paper, number: int) -> None:
        version = pack.versions[number % len(pack.versions)]
        name = f"Starter {plain(version.letter)}" if len(pack.versions) > 1 else "Starter"
        words = (how_many_each(version.items), HOW)
        draw_head(paper, pack, Head(name, (), words, total(version.items)))
        draw_questions(paper, version.items, topics=False)

    return _copies(pack, "Starter", draw_copy)


def _sheets(pack: Pack, sheet: Sheet) -> bytes:
    """Return the copies of a follow-up sheet."""
    return _copies(pack, sheet_name(sheet.tier), lambda paper, _: draw_sheet(paper, pack, sheet))
