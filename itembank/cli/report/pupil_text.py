"""A pupil's page, and the seats to look at first, on screen."""

from __future__ import annotations

from typing import TYPE_CHECKING

from itembank.cli.words.name_column import named_table
from itembank.cli.words.wrapped import paragraph, table
from itembank.text.in_words import day_month_year, short_day
from itembank.work.report.pupil_page import (
    FOR_A_TALK,
    FOR_PARENTS,
    NOT_KEPT,
    outcome,
    starter_result,
    starter_title,
)

if TYPE_CHECKING:
    from itembank.records.reports.pupil_starters import PupilStarter
    from itembank.work.report.pupil_page import PupilPage
    from itembank.work.report.seat_list import SeatList


def pupil_text(page: PupilPage) -> list[str]:
    """Return the page of a seat as lines."""
    found, titles = page.found, page.titles
    lines = [
        f"Seat {found.seat} of {found.class_name}, {day_month_year(found.first)} to "
        f"{day_month_year(found.last)}."
    ]
    if page.empty:
        return [*lines, *paragraph("", page.nothing).splitlines()]
    lines += paragraph("", " ".join(page.intro)).splitlines()
    if found.topics:
        rows = [
            (
                titles.of(line.topic),
                f"{line.right} of {line.out_of}",
                page.standing(line.topic),
                short_day(line.last),
            )
            for line in found.topics
        ]
        heads = ("topic", "right", "how it stands", "last asked")
        lines += ["", named_table(heads, rows, right={1})]
        lines += paragraph("", page.rule).splitlines()
    if found.mistakes:
        lines += ["", "Slips in thinking that answers may point to:"]
        for topic, name, times in found.mistakes:
            said = f"{titles.of(topic)}: {titles.mistake(topic, name)} (× {times})."
            lines += paragraph("  ", said).splitlines()
    for starter in reversed(found.starters):
        said = f"{starter_title(starter)}. {starter_result(starter)}"
        lines += ["", *paragraph("", said).splitlines(), *_answers(page, starter)]
    return [
        *lines,
        "",
        *paragraph("", NOT_KEPT).splitlines(),
        *paragraph("", f"{FOR_A_TALK} {FOR_PARENTS}").splitlines(),
    ]


def _answers(page: PupilPage, starter: PupilStarter) -> list[str]:
    lines = []
    for answer in starter.answers:
        slip = page.mistake_words(answer)
        words = answer.prompt or page.titles.of(answer.topic)
        if slip:
            words += f" (may point to: {slip})"
        lines += paragraph(f"  {answer.number:>2}  {outcome(answer):<9}  ", words).splitlines()
    return lines


def seats_text(found: SeatList) -> list[str]:
    """Return the seats to look at first, and the others, as lines."""
    lines = [f"Seats of {found.class_name}.", *paragraph("", found.rule).splitlines()]
    if not found.known:
        return [*lines, "", "No results by seat are recorded."]
    rows = [
        (
            line.seat,
            "look" if line.wanted else "",
            f"{line.lowest} of {line.starters}",
            f"{line.marks} of {line.out_of}",
        )
        for line in found.known
    ]
    heads = ("seat", "", "lowest band", "marks")
    lines += ["", table(heads, rows, right={2, 3})]
    if not found.wanted:
        lines += ["No seat is one to look at first."]
    if found.unknown:
        lines += paragraph("Without results: ", f"{' '.join(found.unknown)}.").splitlines()
    return lines
