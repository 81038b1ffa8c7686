"""Codes of result slips, which pupils hand in from the self-marking page, as a class's answers.

Every fault of every slip is told at once, with the line it stands in.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Sequence
from pathlib import Path

from itembank.errors import ItembankError
from itembank.files.faults import Fault, FileFaults, decode_text, join_words
from itembank.packs.data.pack_place import PACK_FILE
from itembank.people.seats import seat_order
from itembank.records.entries.entries import Answers
from itembank.records.entries.questions_asked import not_asked_said
from itembank.records.entries.sheet_file import Asked, SheetRead
from itembank.records.entries.teacher_text import seat_said
from itembank.remark import Remark
from itembank.selfmark.slip import Slip, SlipFault, read_slip, slip_key
from itembank.text.in_words import counted


def read_result_slips(
    given: str | Path, asked: Asked, marks: Sequence[int], seats: Collection[str]
) -> SheetRead:
    """Return what slips say, from a text with one or several codes or a file with one a line.

    `marks` are those of each question of the starter, whether it was asked or not.

    Raises:
        FileFaults: a code is none of this pack's, was changed, or its seat is not in the class.
        ItembankError: the pack the class had, which alone can tell, is not known.
    """
    if asked.pack is None:
        raise ItembankError(
            "A slip is held against the pack the class had, and it is not known.",
            matter="pack unknown",
            field="slips",
        )
    folder = asked.pack
    # The check of a slip is made with the pack's own bytes: another pack's slip fails it.
    key = slip_key((folder / PACK_FILE if folder.is_dir() else folder).read_bytes())
    text, name = (
        (decode_text(given), str(given)) if isinstance(given, Path) else (given, "the slips")
    )
    faults: list[Fault] = []
    found: dict[str, Slip] = {}
    for place, code in _codes(text):
        try:
            slip = read_slip(code, key, marks)
        except SlipFault as error:
            faults.append(Fault(name, place, str(error)))
            continue
        if fault := _fault(slip, found, asked, seats):
            unknown = "seats of the class" if seat_said(slip.seat, seats) else ""
            faults.append(Fault(name, place, fault, matter=unknown))
        # Also where it has a fault: a second one of that seat is then told as the second.
        found.setdefault(slip.seat, slip)
    if not found and not faults:
        faults.append(Fault(name, 0, "There is no code of a slip in it."))
    if faults:
        raise FileFaults(faults)
    return _as_answers([found[seat] for seat in sorted(found, key=seat_order)], asked)


def _codes(text: str) -> Iterator[tuple[int, str]]:
    """Yield each code with the number of its line; 0 where there is but one line."""
    lines = text.splitlines()
    # Empty lines count as well, so that a fault names the line that the teacher sees.
    for number, line in enumerate(lines, 1):
        for code in re.split("[,;]", line):
            if code.strip():
                yield (number if len(lines) > 1 else 0), code


def _fault(slip: Slip, found: dict[str, Slip], asked: Asked, seats: Collection[str]) -> str:
    if slip.seat in found:
        return f"Seat {slip.seat} has a slip already. Keep one of the two."
    if said := seat_said(slip.seat, seats):
        return said
    several = len(asked.versions) > 1
    if slip.version not in (asked.versions if several else ("",)):
        return f"{slip.seat}: there is no version {slip.version} of this starter."
    return ""


def _as_answers(slips: Sequence[Slip], asked: Asked) -> SheetRead:
    """Return slips as answers; a question that nobody answered was not asked, as on a sheet."""
    numbers = asked.numbers or tuple(
        n
        for n in range(1, asked.questions + 1)
        if any(slip.outcomes[n - 1] != "e" for slip in slips)
    )
    remarks = []
    missing = [n for n in range(1, asked.questions + 1) if n not in numbers]
    if missing and not asked.numbers:
        remarks.append(
            Remark(
                f"{not_asked_said(missing)} Nobody has an answer there.",
                matter="nobody answered",
                questions=asked.questions,
            )
        )
    empty = sum(slip.outcomes[n - 1] == "e" for slip in slips for n in numbers)
    if empty:
        left = counted(empty, "answer was", "answers were")
        remarks.append(Remark(f"{left} left empty where others have one, and count as wrong."))
    open_ = [f"{slip.seat} question {n}" for slip in slips for n in slip.left_to_teacher]
    if open_:
        remarks.append(
            Remark(
                f"The page could not mark {join_words(open_)}: wrong, until you have looked.",
                matter="left to the teacher",
            )
        )
    # What the page left open counts as wrong until a teacher says otherwise, as a mark on paper
    # would.
    right = {slip.seat: {n: slip.outcomes[n - 1] == "r" for n in numbers} for slip in slips}
    return SheetRead(Answers(right, {}), (), tuple(remarks))
