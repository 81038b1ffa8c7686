"""A class's answer sheet, marked and shown: seats, questions, bands; as CSV on request."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import cast

import typer

from itembank.cli.band import signs
from itembank.cli.words.wrapped import maths, paragraph, say, table
from itembank.errors import ItembankError
from itembank.files.faults import join_words
from itembank.files.private import write_private
from itembank.marking.answer_sheet import AnswerRow, read_answers
from itembank.marking.class_sheet import (
    MarkedQuestion,
    MarkedSheet,
    mark_sheet,
    marks_csv,
    unanswered,
)
from itembank.marking.verdict import Verdict
from itembank.packs.data.pack import Pack
from itembank.packs.data.pack import Version as StoredVersion
from itembank.packs.data.read_back import read_item
from itembank.packs.pack_checks import read_pack
from itembank.planning.bands.bands import Band, band_of, rescaled
from itembank.planning.bands.caution import CAUTION, HEADING
from itembank.records.entries.questions_asked import not_asked_said
from itembank.text.in_words import counted, day_month_year


def mark_answer_sheet(
    pack_path: Path, sheet_path: Path, letter: str | None, output: Path | None, replace: bool
) -> None:
    """Mark the answers in a CSV by a pack's starter, and print what they show.

    Raises:
        ItembankError: the pack or the sheet cannot be read, there is no such version, or the
            file to write is there already.
    """
    if output is not None and output.exists() and not replace:
        raise ItembankError(
            f"There is a file {output} already. Add --replace to write over it, or name another."
        )
    pack = read_pack(pack_path)
    letters = [version.letter for version in pack.versions]
    rows = read_answers(sheet_path, len(pack.versions[0].items), letters)
    # A pack's bands have the fields of the plan's.
    missing = unanswered([row for row in rows if any(row.answers)])
    marks = sum(item.marks for n, item in enumerate(pack.versions[0].items, 1) if n not in missing)
    bands = _bands(pack, marks) if marks else cast(Sequence[Band], pack.bands)
    sheets: list[MarkedSheet] = []
    for version in _versions(pack, letter, rows):
        theirs = [row for row in rows if row.version in ("", version.letter)]
        items = [read_item(stored) for stored in version.items]
        sheets.append(mark_sheet(items, theirs, missing if marks else ()))
        if len(sheets) > 1:
            typer.echo()
        typer.echo(sheet_text(pack, version.letter, sheets[-1], bands))
    typer.echo(f"\n{CAUTION}")
    if output is not None:
        text = marks_csv(sheets, lambda marks: band_of(marks, bands).name, HEADING)
        write_private(output, text.encode())
        say(f"Wrote {output}.")


def _bands(pack: Pack, marks: int) -> Sequence[Band]:
    """Return the pack's bands for the marks of the questions that were asked."""
    ends = rescaled([(band.lowest, band.highest) for band in pack.bands], marks)
    bands = [
        band.model_copy(update={"lowest": low, "highest": high})
        for band, (low, high) in zip(pack.bands, ends, strict=True)
        if low <= high  # of few marks some bands have no score of their own
    ]
    return cast(Sequence[Band], bands)


def _versions(pack: Pack, letter: str | None, rows: Sequence[AnswerRow]) -> list[StoredVersion]:
    """Return the versions to mark by: the one that is named, or those that the rows name."""
    letters = [version.letter for version in pack.versions]
    named = {row.version for row in rows}
    if letter is None:
        if len(letters) > 1 and "" in named:
            raise ItembankError(
                f"This pack has versions {join_words(letters)}. Say which with --version, or "
                "add a column headed ‘version’ after the seats."
            )
        return [version for version in pack.versions if version.letter in named] or pack.versions[
            :1
        ]
    wanted = letter.strip().upper()
    if named - {"", wanted}:
        raise ItembankError(
            "The sheet has a column of versions, so leave --version out: each seat is marked by "
            "its own."
        )
    for version in pack.versions:
        if version.letter.upper() == wanted:
            return [version]
    raise ItembankError(f"This pack has no version {wanted}. There is {join_words(letters)}.")


def sheet_text(pack: Pack, letter: str, sheet: MarkedSheet, bands: Sequence[Band]) -> str:
    """Return a marked sheet as text: each seat, each question, each band."""
    lesson = pack.lesson
    version = f", version {letter}" if len(pack.versions) > 1 else ""
    title = f"{lesson.class_name}, {day_month_year(lesson.date)}{version}"
    parts = [f"{title}: {counted(len(sheet.seats), 'seat')}, out of {sheet.out_of}"]
    if sheet.not_asked:
        parts.append(f"{not_asked_said(sheet.not_asked)} Nobody has an answer there.")
    parts.append("")
    rows = [[seat.seat, str(seat.marks), band_of(seat.marks, bands).name] for seat in sheet.seats]
    parts.append(table(["Seat", "Marks", "Band"], rows, right={1}))
    if sheet.absent:
        parts.append(f"No answers: {' '.join(sheet.absent)}")
    parts += ["", "Questions"]
    for question in sheet.questions:
        parts += _question_lines(question)
    parts += ["", "Bands"]
    for band in bands:
        inside = [seat.seat for seat in sheet.seats if band.lowest <= seat.marks <= band.highest]
        parts.append(f"  {signs(band)}: {counted(len(inside), 'pupil')}")
        if inside:
            parts.append(paragraph("    Seats  ", " ".join(inside)))
            parts.append(f"    Next   {band.task.title}, {band.task.mode}, {band.task.tier} sheet")
    return "\n".join(parts)


def _question_lines(question: MarkedQuestion) -> list[str]:
    share = f"{question.facility:.0%} right"
    counts = [
        f"{question.verdicts[verdict]} {words}"
        for verdict, words in (
            (Verdict.WRONG_FORM, "with the right value in another form"),
            (Verdict.KNOWN, "by a known wrong method"),
            (Verdict.WRONG, "wrong"),
            (Verdict.UNREADABLE, "not readable"),
        )
        if verdict in question.verdicts
    ]
    if question.blank:
        counts.append(f"{question.blank} without an answer")
    lead = f"  {question.number}. "
    rest = "".join(f", {count}" for count in counts)
    lines = [paragraph(lead, f"{share}{rest}. Key: {maths(question.item.key)}")]
    for shown in question.misconceptions:
        what = shown.misconception
        share = f"{question.share(shown.count):.0%}"
        said = f"{shown.count} ({share}) {what.name}. Ask: {what.ask}"
        lines.append(paragraph(" " * len(lead), said))
    return lines
