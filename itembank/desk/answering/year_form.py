"""The school year as a form: a row for each term and for each time without lessons."""

from __future__ import annotations

import datetime
from dataclasses import replace

from itembank.desk.answering.reading import Fields, Reading, row, rows_typed
from itembank.errors import ItembankError
from itembank.planning.calendar.calendar import Closed, Term
from itembank.text.in_words import day_month
from itembank.work.department.answered import Answers
from itembank.work.department.joined_answers import with_year
from itembank.work.department.pasted.pasted_days import (
    coming_school_year,
    read_pasted_day,
    school_year_of,
)
from itembank.work.department.pasted.pasted_year import read_pasted_year

USUAL_TERMS = ("Autumn", "Spring", "Summer")


def year_fields(answers: Answers) -> dict[str, str]:
    """Return the fields that show the school year as it is answered."""
    found = {}
    for place, term in enumerate(answers.terms):
        found[f"term-{place}-name"] = term.name
        found[f"term-{place}-first"] = shown(term.first)
        found[f"term-{place}-last"] = shown(term.last)
    if not answers.terms:
        found |= {f"term-{place}-name": name for place, name in enumerate(USUAL_TERMS)}
    for place, off in enumerate(answers.closed):
        found[f"off-{place}-why"] = off.why
        found[f"off-{place}-first"] = shown(off.first)
        found[f"off-{place}-last"] = shown(off.last) if off.last != off.first else ""
    found["two_week"] = {True: "yes", False: "no", None: ""}[answers.two_week]
    found["week_a"] = shown(answers.week_a) if answers.week_a else ""
    return found


def shown(date: datetime.date) -> str:
    """Return a day as it is shown in a field, where it can be read again.

    >>> shown(datetime.date(2026, 9, 3))
    '3 Sep 2026'
    """
    month = day_month(date).split()[1][:3]
    return f"{date.day} {month} {date.year}"


def read_year(fields: Fields, answers: Answers, today: datetime.date) -> Reading:
    """Return answers with the school year that a form says."""
    reading = Reading(answers)
    year = school_year_of(answers.terms[0].first) if answers.terms else coming_school_year(today)

    def day(name: str, typed: str, missing: str) -> datetime.date | None:
        try:
            if not typed:
                raise ItembankError(missing)
            return read_pasted_day(typed, year)
        except ItembankError as error:
            reading.faults[name] = str(error)
            return None

    known = {term.name for term in answers.terms}
    terms: list[Term] = []
    for number in range(rows_typed(fields, "term")):
        here, name = row(fields, "term", number, ("name", "first", "last")), f"term-{number}"
        # The usual names stand there before anybody has typed anything.
        untouched = here["name"] in USUAL_TERMS and here["name"] not in known
        if not here["first"] and not here["last"] and (untouched or not here["name"]):
            continue
        first = day(f"{name}-first", here["first"], "When does it begin?")
        last = day(f"{name}-last", here["last"], "When does it end?")
        if first and last:
            reading.at[("terms", len(terms))] = f"{name}-first"
            reading.at[("terms", len(terms), "name")] = f"{name}-name"
            reading.at[("terms", len(terms), "last")] = f"{name}-last"
            terms.append(Term(here["name"] or f"Term {len(terms) + 1}", first, last))
    closed: list[Closed] = []
    for number in range(rows_typed(fields, "off")):
        here, name = row(fields, "off", number, ("why", "first", "last")), f"off-{number}"
        if not any(here.values()):
            continue
        first = day(f"{name}-first", here["first"], "Which day is it, or the first of them?")
        last = day(f"{name}-last", here["last"] or here["first"], "") if first else None
        if first and last:
            reading.at[("closed", len(closed))] = f"{name}-first"
            reading.at[("closed", len(closed), "why")] = f"{name}-why"
            reading.at[("closed", len(closed), "last")] = f"{name}-last"
            closed.append(Closed(first, last, here["why"] or "no lessons"))
    two_week = {"yes": True, "no": False}.get(fields.get("two_week", ""))
    week_a = answers.week_a
    typed = fields.get("week_a", "").strip()
    if typed and not answers.week_a:
        two_week = True  # who names a week A has them, whatever is ticked above
    if two_week:
        week_a = day("week_a", typed, "") if typed else None
        reading.at[("week_a",)] = "week_a"
    reading.answers = replace(
        answers,
        terms=tuple(terms),
        closed=tuple(closed),
        two_week=two_week,
        week_a=week_a if two_week else None,
    )
    return reading


def paste_year(text: str, answers: Answers, today: datetime.date) -> Reading:
    """Return answers with the school year as pasted; days off alone are added to those there."""
    read = read_pasted_year(text, today)
    if read.wrong:
        return Reading(answers, general=[str(fault) for fault in read.wrong])
    return Reading(with_year(answers, read.found.terms, read.found.closed), remarks=read.remarks)
