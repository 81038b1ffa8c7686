"""The school year in the conversation: terms and days off, and whether weeks A and B differ."""

from __future__ import annotations

import datetime
from dataclasses import replace

from itembank.cli.department.answering import Keep, answer, answer_rows, show, tell_wrong, yes
from itembank.cli.words.ask import note
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError
from itembank.planning.calendar.calendar import Closed, Term
from itembank.today import today
from itembank.work.department.answered import Answers
from itembank.work.department.joined_answers import with_year
from itembank.work.department.looked_at import look_at
from itembank.work.department.outlook import outlook_on
from itembank.work.department.pasted.pasted_days import (
    coming_school_year,
    read_pasted_day,
    school_year_of,
)
from itembank.work.department.pasted.pasted_year import read_pasted_year


def ask_year(answers: Answers, keep: Keep) -> Answers:
    """Ask for terms and days off, and whether weeks A and B differ."""
    say(
        "Paste your terms and holidays from a spreadsheet or a web page, then press Enter twice; "
        "or name a file of them; or press Enter to be asked for one after the other."
    )
    while True:
        show(outlook_on(answers).calendar)
        said = "; Enter keeps them" if answers.terms else ""
        typed = answer_rows(f"Terms and holidays{said}")
        if not typed:
            told = answers if answers.terms else _year_by_hand(answers, keep)
        else:
            if "\n" not in typed:  # a line of one's own adds to what is there
                typed = "\n".join([*_rows(answers), typed])
            pasted = read_pasted_year(typed, today())
            show(pasted.remarks)
            if pasted.wrong:
                tell_wrong(pasted.wrong)
                note("Put it right and paste it again, or press Enter.")
                continue
            told = with_year(answers, pasted.found.terms, pasted.found.closed)
            show(outlook_on(told).calendar[:-1])
        wrong = [fault for fault in look_at(told).of_part("year") if fault.field[:1] != ("week_a",)]
        if wrong:
            tell_wrong(wrong)
            answers = replace(answers, terms=(), closed=()) if told == answers else answers
            continue
        if not typed or yes("Is that the school year?"):
            keep(told)
            return ask_two_weeks(told)


def _rows(answers: Answers) -> list[str]:
    """Return the terms and days off as rows that can be read again."""
    terms = [f"{term.name} term\t{term.first}\t{term.last}" for term in answers.terms]
    return [*terms, *(f"{off.why}\t{off.first}\t{off.last}" for off in answers.closed)]


def _year_by_hand(answers: Answers, keep: Keep) -> Answers:
    year = coming_school_year(today())

    def day(typed: str) -> str:
        return read_pasted_day(typed, year).isoformat()

    terms: list[Term] = []
    while name := answer("Term, such as Autumn (Enter when all are there)"):
        first = answer("  Its first day, such as 3 Sep 2026", check=day, needed=True)
        last = answer("  Its last day", check=day, needed=True)
        terms.append(
            Term(name, datetime.date.fromisoformat(first), datetime.date.fromisoformat(last))
        )
        keep(replace(answers, terms=tuple(terms)))
        year = school_year_of(terms[0].first)
    closed: list[Closed] = []
    while terms and (why := answer("Days off within a term, such as half term (Enter if none)")):
        first = answer("  The first of them", check=day, needed=True)
        last = answer("  The last of them", first, check=day)
        closed.append(
            Closed(datetime.date.fromisoformat(first), datetime.date.fromisoformat(last), why)
        )
        keep(replace(answers, terms=tuple(terms), closed=tuple(closed)))
    return replace(answers, terms=tuple(terms), closed=tuple(closed))


def ask_two_weeks(answers: Answers) -> Answers:
    """Ask whether weeks A and B differ, and for a day in a week A."""
    if not yes("Is the timetable different in weeks A and B?", bool(answers.two_week)):
        return replace(answers, two_week=False, week_a=None)
    calendar = answers.calendar
    assert calendar is not None
    year = school_year_of(calendar.terms[0].first)

    def check(typed: str) -> str:
        date = read_pasted_day(typed, year)
        wrong = look_at(replace(answers, two_week=True, week_a=date)).of_part("year")
        if wrong:
            raise ItembankError(wrong[0].message)
        return date.isoformat()

    first = answers.week_a or calendar.week_start(1)
    default = first.isoformat() if first else ""
    typed = answer("A day in a week A", default, check, needed=True)
    return replace(answers, two_week=True, week_a=datetime.date.fromisoformat(typed))
