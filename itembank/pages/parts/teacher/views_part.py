"""Own views against scores, and lessons that needed clarifying, as parts of the class report."""

from __future__ import annotations

from collections.abc import Sequence

from itembank.data_class import dataclass
from itembank.pages.engine.paper import WIDTH, Paper, heading_part, text_part
from itembank.pages.engine.table_drawn import Cell, Contents, table_pieces

SHORT = 6
"""Rows up to which a table is never divided."""


@dataclass(frozen=True, slots=True)
class ViewRow:
    """A lesson: its day, the agreement γ, and how many were sure but low, not sure but high."""

    day: str
    agreement: str
    over: str
    under: str


@dataclass(frozen=True, slots=True)
class FooledRow:
    """A topic or question that fooled the confident: how many were wrong, and their share."""

    name: str
    wrong: str
    share: str


@dataclass(frozen=True, slots=True)
class ViewsPart:
    """Own views: sentences on all of them, lessons, what fooled the confident, and a note on it."""

    summary: Sequence[str] = ()
    lessons: Sequence[ViewRow] = ()
    topics: Sequence[FooledRow] = ()
    questions: Sequence[FooledRow] = ()
    note: str = ""


@dataclass(frozen=True, slots=True)
class UnclearRow:
    """A lesson whose instructions needed clarifying."""

    day: str
    title: str
    asked: str
    note: str


@dataclass(frozen=True, slots=True)
class ClarityPart:
    """The clarity check: a sentence on all lessons, and those that needed clarifying."""

    words: str = ""
    lessons: Sequence[UnclearRow] = ()


def draw_views(paper: Paper, part: ViewsPart) -> None:
    """Draw what own views say; nothing where none were recorded."""
    size = paper.size
    title = "Own view against score"
    if not part.summary:
        return
    if part.lessons:
        words = " ".join(part.summary) + (
            " Agreement is Goodman and Kruskal’s γ; a dash: too few pupils at that lesson."
        )
        draw_table(
            paper,
            title,
            words,
            ("Lesson", "Agreement", "Sure, but low", "Not sure, but high"),
            [[lesson.day, lesson.agreement, lesson.over, lesson.under] for lesson in part.lessons],
            (100.0, 110.0, 130.0, WIDTH - 340.0),
        )
    else:
        words = " ".join(part.summary)
        paper.place([heading_part(title, size), text_part(words, WIDTH, size)], gap=1.6 * size)
    note = part.note
    for name, rows in (("Topics", part.topics), ("Questions", part.questions)):
        if rows:
            draw_table(
                paper,
                f"{name} that fooled the confident",
                note,
                (name[:-1], "Wrong", "Share, with its interval"),
                [[row.name, row.wrong, row.share] for row in rows],
                (WIDTH - 220.0, 80.0, 140.0),
            )
            note = ""
    if note:
        paper.place([text_part(note, WIDTH, size)], gap=1.6 * size)


def draw_clarity(paper: Paper, part: ClarityPart) -> None:
    """Draw the lessons whose instructions needed clarifying; nothing where none was noted."""
    size = paper.size
    title = "Lessons whose instructions needed clarifying"
    if part.lessons:
        noted = any(lesson.note for lesson in part.lessons)
        columns = 4 if noted else 3
        rows = [
            [lesson.day, lesson.title, lesson.asked, lesson.note or "–"][:columns]
            for lesson in part.lessons
        ]
        widths = (76.0, 170.0, 76.0, WIDTH - 322.0) if noted else (76.0, 260.0, WIDTH - 336.0)
        heads = ("Lesson", "Title", "Asked", "Note")[:columns]
        draw_table(paper, title, part.words, heads, rows, widths, "Unclear lessons")
    elif part.words:
        paper.place([heading_part(title, size), text_part(part.words, WIDTH, size)], gap=size)


def draw_table(
    paper: Paper,
    title: str,
    words: str,
    heads: Sequence[str],
    rows: Sequence[Sequence[Contents | Cell]],
    widths: Sequence[float],
    short: str = "",
) -> None:
    """Draw a table under its heading and some words; over the page `short` says what goes on."""
    size = paper.size
    made = table_pieces(heads, rows, widths, size, row_headers=named(len(rows), len(heads)))
    head = [heading_part(title, size)]
    if words:
        head.append(text_part(words, WIDTH, size, after=0.5 * size))
    together = len(rows) if len(rows) <= SHORT else 1
    paper.place([*head, *made.rows[:together]])
    paper.place_apart(made.rows[together:], f"{short or title} (continued)", made.again)
    paper.y -= 1.6 * size


def named(rows: int, columns: int) -> bool:
    """Tell whether the first cell of each row is to be read out as its name.

    In a table of a row or two there would be more names than figures.

    >>> named(1, 4), named(10, 4)
    (False, True)
    """
    return rows * (columns - 1) >= rows + columns
