"""What a teacher says of a starter as entries, each checked against class and starter."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.errors import ItembankError, SeveralErrors
from itembank.files.faults import join_words
from itembank.files.typed_path import is_file
from itembank.people.names_out import refuse_names
from itembank.records.entries.entries import (
    Answers,
    BandCount,
    Bands,
    Clarity,
    OwnViews,
    Questions,
    Scores,
    What,
)
from itembank.records.entries.questions_asked import marks_of, not_asked_said, numbers_said
from itembank.records.entries.teacher_text import read_views, whole_numbers
from itembank.remark import Remark

if TYPE_CHECKING:
    from itembank.planning.department.department import Department, SchoolClass
    from itembank.work.lesson.lesson_starter import Intervals, Starter
    from itembank.work.lesson.record_request import Numbers, RecordRequest

LONGEST_NOTE = 200
"""As many as the store takes, said here since the store's tables take long to load."""
Read = tuple[list[What], list[Remark]]
"""What is to be recorded, and remarks on it."""


def read_depths(
    request: RecordRequest, starter: Starter, group: SchoolClass, department: Department
) -> Read:
    """Return what is to be recorded, and remarks on it.

    Raises:
        SeveralErrors: all that is wrong with what is said.
    """
    what: list[What] = []
    remarks: list[Remark] = []
    faults: list[ItembankError] = []
    seats = group.plan.seats

    def add(read: Callable[[], What]) -> None:
        try:
            what.append(read())
        except ItembankError as error:
            faults.append(error)

    if len(request.depths) > 1:
        faults.append(
            ItembankError(
                "How the starter went is said in several ways. The last says most.",
                matter="several depths",
                fields=request.depths,
            )
        )
    elif (bands := request.bands) is not None:
        add(lambda: read_bands(bands, starter.bands, len(seats), starter.asked))
    elif (right := request.right) is not None:
        add(lambda: read_right(right, starter, request.pupils, seats, remarks))
    elif (sheet := request.sheet) is not None:
        add(lambda: _read_sheet(sheet, starter, seats, department, remarks))
    elif (slips := request.slips) is not None:
        add(lambda: _read_slips(slips, starter, seats, remarks))
    if starter.asked:
        numbers = [question.number for question in starter.facts.questions]
        missing = not_asked_said([number for number in numbers if number not in starter.asked])
        remarks += [Remark(missing)] if missing else []
    if request.asked is not None and not request.depths:
        said = "Which questions were asked is recorded with how they went."
        faults.append(ItembankError(said, matter="asked alone", field="asked"))
    if request.pupils is not None and request.right is None:
        said = "How many were there is recorded with the right answers by question."
        faults.append(ItembankError(said, matter="pupils alone", field="pupils"))
    if (view := request.own_view) is not None:
        add(lambda: read_own_views(view, seats))
    if request.unclear is not None or request.note is not None:
        add(lambda: read_clarity(request.unclear, request.note, len(seats)))
    if faults:
        raise SeveralErrors(list({str(fault): fault for fault in faults}.values()))
    return what, remarks


def read_bands(hands: Numbers, bands: Intervals, seats: int, asked: tuple[int, ...] = ()) -> Bands:
    """Return hands counted per band, the lowest band first; `asked` are the questions asked.

    Raises:
        ItembankError: the numbers do not fit the bands or the class.

    >>> three = (("R", "Rebuild", 0, 4), ("S", "Secure", 5, 6), ("E", "Extend", 7, 8))
    >>> [count.pupils for count in read_bands("8 12 9", three, 29).counts]
    [8, 12, 9]
    """
    numbers = _numbers(hands, "bands")
    if len(numbers) != len(bands):
        names = join_words([f"{name} ({low}–{high})" for _, name, low, high in bands])
        raise ItembankError(
            f"{len(numbers)} numbers, but {len(bands)} bands: {names}. Write one number for each, "
            "from the lowest.",
            field="bands",
        )
    _refuse_crowd(sum(numbers), seats, "bands")
    counts = tuple(BandCount(*band, count) for band, count in zip(bands, numbers, strict=True))
    return Bands(counts, asked)


def read_right(
    right: Numbers,
    starter: Starter,
    pupils: int | None,
    seats: Sequence[str],
    remarks: list[Remark],
) -> Questions:
    """Return right answers counted per question asked.

    Fewer numbers than questions are those of a starter that stopped early, which is told;
    where the questions asked are named, there is a number for each of them.

    Raises:
        ItembankError: the numbers do not fit the questions or the class, with all such faults.
    """
    numbers = _numbers(right, "right")
    asked = starter.asked
    known = [question.number for question in starter.facts.questions]
    if not known:
        said = "Without its pack nobody knows the questions."
        raise ItembankError(said, matter="pack unknown", field="right")
    faults = []
    places = asked or tuple(known[: len(numbers)])
    if len(numbers) > len(known) or len(numbers) != len(places):
        wanted = f"{len(places)} questions were asked" if asked else f"{len(known)} questions"
        said = f"{len(numbers)} numbers, but {wanted}. Write one for each, in order."
        faults.append(ItembankError(said, field="right"))
    if not asked and len(numbers) < len(known):
        said = f"{not_asked_said(known[len(numbers) :])} The numbers are taken as those of "
        remarks.append(Remark(f"{said}{numbers_said(places)}.", matter="asked as counted"))
    there = pupils if pupils is not None else len(seats) or max(numbers)
    if pupils is None and there:
        remarks.append(Remark(f"Taken as out of {there} pupils.", matter="pupils as seats"))
    if there < 1:
        # All zeros of a class without seats: the most that were right says nothing either.
        said = "With no pupils there is nothing to count. Say how many pupils were there."
        faults.append(ItembankError(said, field="pupils"))
    elif seats and there > len(seats):
        faults.append(
            ItembankError(
                f"{there} pupils, but only {len(seats)} sit in the class.",
                field="pupils",
                matter="seats of the class",
            )
        )
    for place, number in zip(places, numbers, strict=False):
        if number > there:
            said = f"Question {place} has {number} right of {there} pupils."
            faults.append(ItembankError(said, field="right"))
    if faults:
        raise SeveralErrors(faults)
    return Questions({n: (number, there) for n, number in zip(places, numbers, strict=True)})


def _read_sheet(
    path: Path,
    starter: Starter,
    seats: Sequence[str],
    department: Department,
    remarks: list[Remark],
) -> Answers | Scores:
    """Return what a CSV says by seat, and remark on those who were away."""
    from itembank.records.entries.sheet_file import Asked, read_sheet
    from itembank.work.places import banks_of

    facts = starter.facts
    out_of = marks_of(facts, starter.asked)
    asked = Asked(out_of, len(facts.questions), starter.pack, starter.versions, starter.asked)
    sheet = read_sheet(path, asked, seats, banks_of(department))
    remarks.extend(sheet.remarks)
    if sheet.absent:
        remarks.append(Remark(f"Away: {' '.join(sheet.absent)}."))
    return sheet.what


def _read_slips(
    slips: str | Path, starter: Starter, seats: Sequence[str], remarks: list[Remark]
) -> Answers | Scores:
    """Return what result slips say by seat; a text that names a file stands for it."""
    from itembank.records.entries.result_slips import read_result_slips
    from itembank.records.entries.sheet_file import Asked

    facts = starter.facts
    out_of = marks_of(facts, starter.asked)
    asked = Asked(out_of, len(facts.questions), starter.pack, starter.versions, starter.asked)
    given = Path(slips) if isinstance(slips, str) and is_file(Path(slips)) else slips
    marks = [question.marks for question in facts.questions]
    read = read_result_slips(given, asked, marks, seats)
    remarks.extend(read.remarks)
    return read.what


def read_own_views(given: OwnViews | str, seats: Sequence[str]) -> OwnViews:
    """Return own views, from a line of text or from the CSV that it names where they are text.

    Raises:
        ItembankError: it is neither, or more pupils gave one than sit in the class.
    """
    if isinstance(given, OwnViews):
        views = given
    elif given.casefold().endswith(".csv") or is_file(Path(given)):
        from itembank.records.entries.view_file import read_view_file

        return OwnViews(read_view_file(Path(given), seats), {})
    else:
        try:
            views = OwnViews(*read_views(given, seats))
        except ItembankError as error:
            raise error.of_field("own_view") from None
    if not views.by_seat:
        _refuse_crowd(sum(views.counts.values()), len(seats), "own_view")
    return views


def read_clarity(unclear: int | None, note: str | None, seats: int) -> Clarity:
    """Return how many asked about the task.

    Raises:
        ItembankError: a note without a number, more pupils than there are, or too long a note.
    """
    if unclear is None:
        said = "What was unclear is recorded with how many asked."
        raise ItembankError(said, matter="note alone", field="note")
    if unclear < 0:
        raise ItembankError("Fewer than no pupils cannot have asked.", field="unclear")
    if seats and unclear > seats:
        raise ItembankError(
            f"{unclear} pupils, but only {seats} sit in the class.", field="unclear"
        )
    words = short_text(note, LONGEST_NOTE, "note")
    return Clarity(unclear, seats or None, words)


def short_text(text: str | None, longest: int, field: str) -> str:
    """Return a person's words in one line.

    Raises:
        ItembankError: they are too long, or hold what looks like a name.

    >>> short_text(" what  ‘share’ means ", 200, "note")
    'what ‘share’ means'
    """
    words = " ".join((text or "").split())
    if len(words) > longest:
        raise ItembankError(f"Write {longest} characters at most.", field=field)
    refuse_names(words, field=field)
    return words


def _numbers(given: Numbers, field: str) -> list[int]:
    """Return whole numbers, of pupils, that are given as such or in a text."""
    if not isinstance(given, str):
        if not given or any(number < 0 for number in given):
            raise ItembankError("Write whole numbers, 0 or more.", field=field)
        return list(given)
    try:
        return whole_numbers(given)
    except ItembankError as error:
        raise error.of_field(field) from None


def _refuse_crowd(counted: int, seats: int, field: str) -> None:
    """Refuse more pupils than sit in the class, and none at all; 0 seats are not known."""
    if seats and counted > seats:
        raise ItembankError(
            f"{counted} pupils, but only {seats} sit in the class. Count again, or give the class "
            "more seats.",
            field=field,
            matter="seats of the class",
        )
    if not counted:
        raise ItembankError("Nobody was counted, so there is nothing to record.", field=field)
