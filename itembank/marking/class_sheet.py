"""A whole class's answers marked in one go: marks and verdicts, and what each question shows.

A right answer earns the question's marks and any other none; right values in the wrong form
are counted by themselves, so that a teacher can allow them.
"""

from __future__ import annotations

import io
from collections import Counter
from collections.abc import Callable, Collection, Sequence

from itembank.data_class import dataclass
from itembank.files.csv_text import CsvWriter
from itembank.items.item import Item, Misconception
from itembank.marking.answer_sheet import AnswerRow
from itembank.marking.mark import mark
from itembank.marking.verdict import Marked, Verdict
from itembank.people.seats import seat_order

NO_ANSWER = "no answer"


@dataclass(frozen=True, slots=True)
class MarkedSeat:
    """One seat's answers marked; None stands where there was no answer."""

    seat: str
    marked: tuple[Marked | None, ...]
    marks: int


@dataclass(frozen=True, slots=True)
class Shown:
    """How many pupils showed a misconception."""

    misconception: Misconception
    count: int


@dataclass(frozen=True, slots=True)
class MarkedQuestion:
    """What a class made of one question.

    Attributes
    ----------
    number : its number on the sheet, from 1.
    pupils : how many seats handed anything in.
    verdicts : how many answers had each verdict.
    blank : how many pupils gave no answer.
    misconceptions : the known wrong methods shown, the most frequent first.
    """

    number: int
    item: Item
    pupils: int
    verdicts: dict[Verdict, int]
    blank: int
    misconceptions: tuple[Shown, ...]

    @property
    def facility(self) -> float:
        """Return the share of pupils who got the question right, from 0 to 1."""
        return self.share(self.verdicts.get(Verdict.RIGHT, 0))

    def share(self, count: int) -> float:
        """Return a number of pupils as a share of those who handed anything in."""
        return count / self.pupils if self.pupils else 0.0


@dataclass(frozen=True, slots=True)
class MarkedSheet:
    """A class's answers, marked: the seats in order, the questions, and the seats left empty.

    `questions` and `out_of` are those that were asked; `not_asked` are the numbers of the others.
    """

    seats: tuple[MarkedSeat, ...]
    questions: tuple[MarkedQuestion, ...]
    absent: tuple[str, ...]
    out_of: int
    not_asked: tuple[int, ...] = ()


def mark_sheet(
    items: Sequence[Item], rows: Sequence[AnswerRow], not_asked: Collection[int] = ()
) -> MarkedSheet:
    """Mark every answer of a class. A seat without any answer counts as absent.

    Questions whose numbers are `not_asked` count for nothing; see :func:`unanswered`.

    >>> from itembank.items.topics.registry import find_item
    >>> from itembank.notation.line import line
    >>> item = find_item("fractions.add-unlike/core/3")
    >>> typed = {"A1": line(item.key), "A2": "1/99", "A3": ""}
    >>> rows = [AnswerRow(seat, (answer,)) for seat, answer in typed.items()]
    >>> done = mark_sheet([item], rows)
    >>> [(seat.seat, seat.marks) for seat in done.seats], done.absent, done.questions[0].facility
    ([('A1', 1), ('A2', 0)], ('A3',), 0.5)
    """
    known: dict[tuple[int, str], Marked] = {}
    seats: list[MarkedSeat] = []
    absent: list[str] = []
    for row in sorted(rows, key=lambda row: seat_order(row.seat)):
        if not any(row.answers):
            absent.append(row.seat)
            continue
        verdicts: list[Marked | None] = []
        for place, (item, answer) in enumerate(zip(items, row.answers, strict=True)):
            if not answer:
                verdicts.append(None)
                continue
            # In a class many type the same, and to mark an answer is what takes the time.
            if (place, answer) not in known:
                known[place, answer] = mark(item, answer)
            verdicts.append(known[place, answer])
        # Of all questions: nobody has answered those that were not asked.
        marks = sum(
            item.marks
            for item, verdict in zip(items, verdicts, strict=True)
            if verdict is not None and verdict.verdict is Verdict.RIGHT
        )
        seats.append(MarkedSeat(row.seat, tuple(verdicts), marks))
    questions = tuple(
        _question(place, item, seats)
        for place, item in enumerate(items)
        if place + 1 not in not_asked
    )
    out_of = sum(question.item.marks for question in questions)
    return MarkedSheet(tuple(seats), questions, tuple(absent), out_of, tuple(sorted(not_asked)))


def unanswered(rows: Sequence[AnswerRow]) -> tuple[int, ...]:
    """Return the numbers of the questions that nobody answered: they were not asked.

    >>> unanswered([AnswerRow("A1", ("5", "", "")), AnswerRow("A2", ("", "7", ""))])
    (3,)
    """
    return tuple(
        number
        for number, given in enumerate(zip(*(row.answers for row in rows), strict=True), 1)
        if not any(given)
    )


def _question(place: int, item: Item, seats: Sequence[MarkedSeat]) -> MarkedQuestion:
    given = [seat.marked[place] for seat in seats]
    marked = [answer for answer in given if answer is not None]
    verdicts = Counter(answer.verdict for answer in marked)
    shown = Counter(answer.misconception for answer in marked if answer.misconception is not None)
    return MarkedQuestion(
        number=place + 1,
        item=item,
        pupils=len(seats),
        verdicts={verdict: verdicts[verdict] for verdict in Verdict if verdicts[verdict]},
        blank=len(given) - len(marked),
        misconceptions=tuple(
            Shown(misconception, count)
            for misconception, count in sorted(
                # By name among equals, so that a report is the same each time it is made.
                shown.items(),
                key=lambda pair: (-pair[1], pair[0].id),
            )
        ),
    )


def marks_csv(
    sheets: Sequence[MarkedSheet], band: Callable[[int], str], heading: str = "band"
) -> str:
    """Return marked sheets as one CSV: seat, a verdict for each question asked, marks, band.

    There are several sheets where a class had parallel versions, with as many questions each.
    `band` names the band of a number of marks, in a column under `heading`.
    """
    out = io.StringIO()
    writer = CsvWriter(out)
    numbers = [question.number for question in sheets[0].questions]
    writer.writerow(["seat", *numbers, "marks", "out of", heading])
    out_of = sheets[0].out_of
    every = [seat for sheet in sheets for seat in sheet.seats]
    for seat in sorted(every, key=lambda row: seat_order(row.seat)):
        given = [seat.marked[number - 1] for number in numbers]
        said = [NO_ANSWER if answer is None else answer.verdict.value for answer in given]
        writer.writerow([seat.seat, *said, seat.marks, out_of, band(seat.marks)])
    for code in sorted((code for sheet in sheets for code in sheet.absent), key=seat_order):
        writer.writerow([code, *[NO_ANSWER] * len(numbers), "", out_of, ""])
    return out.getvalue()
