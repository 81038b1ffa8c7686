"""Reads what was typed of a starter into entries, each checked against class and starter."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.errors import ItembankError
from itembank.files.faults import join_words
from itembank.people.names_out import refuse_names
from itembank.records.entries.entries import (
    Answers,
    BandCount,
    Bands,
    Clarity,
    LessonFacts,
    OwnViews,
    Questions,
    Scores,
)
from itembank.records.entries.questions_asked import marks_of, not_asked_said, numbers_said
from itembank.records.entries.teacher_text import read_views, whole_numbers

if TYPE_CHECKING:
    from itembank.cli.record_run import Had
    from itembank.planning.department.department import Department

LONGEST_NOTE = 200


def read_bands(
    text: str,
    bands: Sequence[tuple[str, str, int, int]],
    seats: int,
    asked: tuple[int, ...] = (),
) -> Bands:
    """Return hands counted per band, the lowest band first; `asked` are the questions asked.

    Raises:
        ItembankError: the numbers do not fit the bands or the class.

    >>> three = [("R", "Rebuild", 0, 4), ("S", "Secure", 5, 6), ("E", "Extend", 7, 8)]
    >>> [one.pupils for one in read_bands("8 12 9", three, 29).counts]
    [8, 12, 9]
    """
    numbers = whole_numbers(text, "--bands")
    if len(numbers) != len(bands):
        names = join_words([f"{name} ({low}–{high})" for _, name, low, high in bands])
        raise ItembankError(
            f"--bands: {len(numbers)} numbers, but {len(bands)} bands: {names}. Write one number "
            "for each, from the lowest."
        )
    refuse_crowd(sum(numbers), seats, "--bands")
    counts = tuple(BandCount(*band, count) for band, count in zip(bands, numbers, strict=True))
    return Bands(counts, asked)


def refuse_crowd(counted: int, seats: int, option: str) -> None:
    """Refuse more pupils than sit in the class, and none at all; 0 seats are not known."""
    if seats and counted > seats:
        raise ItembankError(
            f"{option}: {counted} pupils, but only {seats} sit in the class. Count again, or "
            "add seats in department.toml."
        )
    if not counted:
        raise ItembankError(f"{option}: nobody was counted, so there is nothing to record.")


def read_right(
    text: str,
    facts: LessonFacts,
    pupils: int | None,
    seats: Sequence[str],
    said: list[str],
    asked: tuple[int, ...] = (),
) -> Questions:
    """Return right answers counted per question asked.

    Fewer numbers than questions are those of a starter that stopped early, which is told;
    where `asked` names the questions, there is a number for each of them.

    Raises:
        ItembankError: the numbers do not fit the questions or the class, with all such faults.
    """
    numbers = whole_numbers(text, "--right")
    faults = []
    if not facts.questions:
        raise ItembankError("--right needs to know the questions. Name the pack with --pack.")
    known = [one.number for one in facts.questions]
    places = asked or tuple(known[: len(numbers)])
    if len(numbers) > len(known) or len(numbers) != len(places):
        wanted = f"{len(known)} questions" if not asked else f"--asked names {len(places)}"
        faults.append(
            f"--right: {len(numbers)} numbers, but {wanted}. Write one for each, in order."
        )
    if not asked and len(numbers) < len(known):
        said.append(
            f"{not_asked_said(known[len(numbers) :])} The numbers are taken as those of "
            f"{numbers_said(places)}; --asked says otherwise."
        )
    there = pupils if pupils is not None else len(seats) or max(numbers)
    if pupils is None:
        said.append(f"Taken as out of {there} pupils; --pupils says otherwise.")
    if there < 1 or (seats and there > len(seats)):
        faults.append(f"--pupils: {there}, but {len(seats)} sit in the class.")
    for place, number in zip(places, numbers, strict=False):
        if number > there:
            faults.append(f"--right: question {place} has {number} right of {there} pupils.")
    if faults:
        raise ItembankError("\n".join(faults))
    return Questions({n: (number, there) for n, number in zip(places, numbers, strict=True)})


def read_sheet_file(
    path: Path,
    had: Had,
    seats: Sequence[str],
    found: Department,
    said: list[str],
) -> Answers | Scores:
    """Return what a CSV says by seat, and remark on those who were away."""
    from itembank.records.entries.sheet_file import Asked, read_sheet
    from itembank.work.places import banks_of

    facts = had.facts
    out_of = marks_of(facts, had.asked)
    asked = Asked(out_of, len(facts.questions), had.pack, had.versions, had.asked)
    done = read_sheet(path, asked, seats, banks_of(found))
    said.extend(done.remarks)
    if done.absent:
        said.append(f"Away: {' '.join(done.absent)}.")
    return done.what


def read_own_views(text: str, seats: Sequence[str]) -> OwnViews:
    """Return own views from a line of text or from the CSV it names.

    Raises:
        ItembankError: it is neither, or more pupils gave one than sit in the class.
    """
    if text.casefold().endswith(".csv") or _is_file(text):
        from itembank.records.entries.sheet_file import read_view_file

        return OwnViews(read_view_file(Path(text), seats), {})
    by_seat, counts = read_views(text, seats)
    if not by_seat:
        refuse_crowd(sum(counts.values()), len(seats), "--own-view")
    return OwnViews(by_seat, counts)


def _is_file(text: str) -> bool:
    """Tell whether a text is the path of a file; the views of a class are too long for one."""
    try:
        return Path(text).is_file()
    except (OSError, ValueError):
        return False


def read_clarity(unclear: int | None, note: str | None, seats: int) -> Clarity:
    """Return how many asked about the task.

    Raises:
        ItembankError: a note without a number, more pupils than there are, or too long a note.
    """
    if unclear is None:
        raise ItembankError("--note goes with --unclear.")
    if unclear < 0 or (seats and unclear > seats):
        raise ItembankError(f"--unclear: {unclear}, but {seats} sit in the class.")
    words = " ".join((note or "").split())
    if len(words) > LONGEST_NOTE:
        raise ItembankError(f"--note: write {LONGEST_NOTE} characters at most.")
    refuse_names(words, "--note")
    return Clarity(unclear, seats or None, words)
