"""``itembank decide``: what the results of a lesson suggest, with the figures behind it."""

from __future__ import annotations

import textwrap
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.options.day import read_day
from itembank.cli.options.department import department_with_results
from itembank.cli.options.usual_options import ClassArgument, DepartmentOption, PeriodOption
from itembank.cli.words.name_column import cut
from itembank.cli.words.wrapped import paragraph, table, width
from itembank.planning.bands.caution import CAUTION
from itembank.text.in_words import counted
from itembank.work.lesson.decide import check_pdf, write_groups
from itembank.work.lesson.decide import decide as decide_lesson
from itembank.work.report.lesson_words import asked_line, overall_line
from itembank.work.report.titles import Titles, titles_of

if TYPE_CHECKING:
    from itembank.records.reports.decision import Decision, QuestionAdvice

INDENT = "    "
MOST_FOOLED = 3
"""Questions that fooled the confident, shown at the most."""


def decide(
    class_: ClassArgument = None,
    date: Annotated[
        str | None, typer.Option(metavar="DAY", help="Day of the lesson; the last recorded.")
    ] = None,
    period: PeriodOption = None,
    pairs: Annotated[
        bool, typer.Option("--pairs", help="Also list pairs of mixed strength.")
    ] = False,
    sheet: Annotated[
        Path | None,
        typer.Option(metavar="FILE", help="Also write a page for each group, to pin up (PDF)."),
    ] = None,
    department: DepartmentOption = None,
) -> None:
    """Say how a starter went: bands with their seats, advice for each question and overall.

    The rule and the uncertainty are shown. Bands are a teaching aid, not a grade, and your
    judgement decides. The lines of the rule are settings, [deciding] in department.toml.

    \b
    Examples:
      itembank decide 8K
      itembank decide 8K --date 2026-11-30 --pairs
      itembank decide 8K --sheet groups.pdf
    """  # noqa: D301 - typer keeps the lines after \b as they are
    day = read_day(date)
    if sheet is not None:
        check_pdf(sheet)
    found = department_with_results(department)
    decided = decide_lesson(found, class_, day, period)
    result, thresholds = decided.decision, decided.thresholds
    there = (
        f"{counted(result.pupils, 'pupil')}." if result.pupils else "How it went is not recorded."
    )
    lines = [f"{result.facts}: {result.facts.title}. {there}"]
    lines += paragraph("", asked_line(result)).splitlines()
    lines += _bands(result)
    if result.moved:
        lines += paragraph("Moved since then: ", f"{', '.join(result.moved)}.").splitlines()
    if result.questions:
        lines += ["", *_questions(result, titles_of(found))]
    if result.overall is not None:
        lines += ["", *paragraph("", overall_line(result)).splitlines()]
        confidence = round(100 * thresholds.confidence)
        lines += paragraph(
            "", f"Rule: {thresholds.rule} Wilson intervals at {confidence} %."
        ).splitlines()
    lines += _views(result)
    lines += _clarity(result)
    if pairs:
        lines += ["", *_pairs(result)]
    if sheet is not None:
        write_groups(found, decided, sheet)
        lines += ["", f"Written: {sheet}. It shows seat codes: take it down after the lesson."]
    typer.echo("\n".join([*lines, "", CAUTION]))


def _bands(result: Decision) -> list[str]:
    if not result.groups:
        return []
    names = [f"{group.name} ({group.letter})" for group in result.groups]
    # Beside the name stand scores, pupils and the gaps between columns.
    room = max(20, width() - max(map(len, names)) - len("  scores  pupils  "))
    rows = []
    for name, in_band in zip(names, result.groups, strict=True):
        scores = (
            f"{in_band.lowest}–{in_band.highest}"
            if in_band.lowest != in_band.highest
            else f"{in_band.lowest}"
        )
        seats, *more = textwrap.wrap(" ".join(in_band.seats), room) or [""]
        rows.append((name, scores, str(in_band.pupils), seats))
        rows += [("", "", "", part) for part in more]
    heads = ("band", "scores", "pupils", "seats" if any(row[3] for row in rows) else "")
    return ["", table(heads, rows, right={2})]


def _questions(result: Decision, titles: Titles) -> list[str]:
    """Return how each question went: figures, what it asked, who needs repair, what showed."""
    rows = []
    for advice in result.questions:
        low, high = (round(100 * end) for end in advice.advice.interval[1:])
        rows.append(
            (
                str(advice.question.number),
                f"{advice.right} of {advice.out_of}",
                f"{round(100 * advice.advice.interval.share)} %",
                f"{low}–{high} %",
                advice.advice.words,
            )
        )
    heads = ("", "right", "share", "interval", "advice")
    first, *figures = table(heads, rows, right={0, 1, 2, 3}).splitlines()
    lines = [first]
    for advice, line in zip(result.questions, figures, strict=True):
        asked = advice.question.prompt or (
            titles.of(advice.question.topic) if advice.question.topic else ""
        )
        lines += [line, f"{INDENT}{cut(asked, width() - len(INDENT))}".rstrip()]
        lines += _who(advice, titles)
    return [line for line in lines if line]


def _who(advice: QuestionAdvice, titles: Titles) -> list[str]:
    """Return who needs repair on a question, and the mistakes that showed."""
    from itembank.records.reports.advice import Next

    lines = []
    if advice.wrong and Next.GROUP in (advice.advice.next, *advice.advice.others):
        lines += paragraph(f"{INDENT}Repair group: ", " ".join(advice.wrong)).splitlines()
    counts = sorted(advice.misconceptions.items(), key=lambda pair: (-pair[1], pair[0]))
    said = "; ".join(
        f"{titles.mistake(advice.question.topic, name)} (× {count})" for name, count in counts
    )
    return lines + (paragraph(f"{INDENT}Mistakes: ", f"{said}.").splitlines() if said else [])


def _views(result: Decision) -> list[str]:
    view = result.views
    if view is None:
        return []
    counts = ", ".join(f"{level} {n}" for level, n in reversed(list(view.counts.items())))
    lines = ["", f"Own view before marking: {counts}."]
    if view.agreement is not None:
        lines.append(
            f"Agreement with scores (γ, from −1 to 1): {view.agreement:.2f}".replace("-", "−") + "."
        )
    elif result.scores and any(view.counts.values()):
        lines.append("Too few own views by seat to say how well they agree with scores.")
    for head, seats in (("Sure, but low", view.over), ("Not sure, but high", view.under)):
        if seats:
            lines += paragraph(f"{head}: ", " ".join(seats)).splitlines()
    for item in result.fooled[:MOST_FOOLED]:
        low, high = (round(100 * end) for end in item.interval[1:])
        said = (
            f"Question {item.number} fooled the confident: {item.wrong} of {item.sure} who were "
            f"sure had it wrong ({low}–{high} %)."
        )
        lines += paragraph("", said).splitlines()
    return lines


def _clarity(result: Decision) -> list[str]:
    if result.clarity is None:
        return []
    asked, there, note = result.clarity
    there = there or result.pupils
    out_of = f" of {there}" if there else ""
    more = f" ({note})" if note else ""
    said = f"{asked}{out_of}{more}."
    return ["", *paragraph("Asked what to do before they could start: ", said).splitlines()]


def _pairs(result: Decision) -> list[str]:
    from itembank.records.reports.advice import mixed_pairs

    if not result.scores:
        return ["Pairs need scores by seat: record a sheet."]
    found = ["–".join(pair) for pair in mixed_pairs(dict(result.scores))]
    return paragraph("Pairs of mixed strength: ", ", ".join(found)).splitlines()
