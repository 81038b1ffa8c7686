"""The parts of the conversation about a department: each takes answers and returns them anew."""

from __future__ import annotations

import datetime
import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from itembank.cli.department.answering import answer, answer_rows, tell_wrong
from itembank.cli.words.ask import note, one_of
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError
from itembank.planning.calendar.calendar import Closed, Term
from itembank.text.folding import same_name
from itembank.today import today
from itembank.work.department.answered import (
    Answers,
    ClassAnswer,
    SchemeAnswer,
    TopicAnswer,
)
from itembank.work.department.as_files import seat_rows
from itembank.work.department.joined_answers import with_classes, with_scheme
from itembank.work.department.looked_at import known_topics, look_at
from itembank.work.department.outlook import class_line, outlook_on
from itembank.work.department.pasted.pasted_classes import (
    read_pasted_classes,
    seats_told,
)
from itembank.work.department.pasted.pasted_days import (
    coming_school_year,
    read_pasted_day,
    school_year_of,
)
from itembank.work.department.pasted.pasted_lessons import read_pasted_lessons
from itembank.work.department.pasted.pasted_topics import read_pasted_topics, topic_named
from itembank.work.department.pasted.pasted_year import read_pasted_year
from itembank.work.department.pasted.typed_bands import read_typed_bands
from itembank.work.department.ready import ready_scheme, topics_by_strand
from itembank.work.department.wrong import Part

Keep = Callable[[Answers], object]
"""Told what is answered by now, within a part too, so that nothing is lost."""


def ask_school(answers: Answers, keep: Keep) -> Answers:
    """Ask what the school is called."""

    def check(typed: str) -> str:
        wrong = look_at(replace(Answers(), school=typed)).wrong
        if wrong:
            raise ItembankError(wrong[0].message)
        return typed

    return replace(answers, school=answer("School", answers.school, check, needed=True))


def ask_year(answers: Answers, keep: Keep) -> Answers:
    """Ask for terms and days off, and whether weeks A and B differ."""
    say(
        "Paste your terms and holidays from a spreadsheet or a web page, then press Enter twice; "
        "or name a file of them; or press Enter to be asked for one after the other."
    )
    while True:
        _show(outlook_on(answers).calendar)
        said = "; Enter keeps them" if answers.terms else ""
        typed = answer_rows(f"Terms and holidays{said}")
        if not typed:
            told = answers if answers.terms else _year_by_hand(answers, keep)
        else:
            if "\n" not in typed:  # a line of one's own adds to what is there
                typed = "\n".join([*_rows(answers), typed])
            pasted = read_pasted_year(typed, today())
            _remark(pasted.remarks)
            if pasted.wrong:
                tell_wrong(pasted.wrong)
                note("Put it right and paste it again, or press Enter.")
                continue
            told = replace(answers, terms=pasted.found.terms, closed=pasted.found.closed)
            _show(outlook_on(told).calendar[:-1])
        wrong = [fault for fault in look_at(told).of_part("year") if fault.field[:1] != ("week_a",)]
        if wrong:
            tell_wrong(wrong)
            answers = replace(answers, terms=(), closed=()) if told == answers else answers
            continue
        if not typed or _yes("Is that the school year?"):
            keep(told)
            return _two_weeks(told)


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
        terms.append(Term(name, _date(first), _date(last)))
        keep(replace(answers, terms=tuple(terms)))
        year = school_year_of(terms[0].first)
    closed: list[Closed] = []
    while terms and (why := answer("Days off within a term, such as half term (Enter if none)")):
        first = answer("  The first of them", check=day, needed=True)
        last = answer("  The last of them", first, check=day)
        closed.append(Closed(_date(first), _date(last), why))
        keep(replace(answers, terms=tuple(terms), closed=tuple(closed)))
    return replace(answers, terms=tuple(terms), closed=tuple(closed))


def _two_weeks(answers: Answers) -> Answers:
    if not _yes("Is the timetable different in weeks A and B?", bool(answers.two_week)):
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
    return replace(answers, two_week=True, week_a=_date(typed))


def ask_classes(answers: Answers, keep: Keep) -> Answers:
    """Ask for the classes: pasted, from a file, or one after the other."""
    say(
        "Paste your classes from a spreadsheet (class, year, teacher's initials, lessons, seats), "
        "then press Enter twice; or name a file; or type a class's name to add or change it."
    )
    while True:
        _show([class_line(group) for group in outlook_on(answers).classes])
        more = (
            "; ‘drop 8K’ takes one out, ‘rename 8K 8X’ renames one; Enter when they are right"
            if answers.classes
            else ""
        )
        typed = answer_rows(f"Classes, or the name of one{more}")
        if typed.casefold() in ("yes", "ok", "done"):
            typed = ""
        if not typed:
            wrong = look_at(answers).of_part("classes")
            if not wrong:
                return answers
            tell_wrong(wrong)
        elif typed.casefold().startswith("drop "):
            answers = _without_class(answers, typed[5:].strip())
            keep(answers)
        elif (words := typed.split())[0].casefold() == "rename" and len(words) == 3:
            answers = _renamed(answers, words[1], words[2])
            keep(answers)
        elif _is_rows(typed):
            pasted = read_pasted_classes(typed)
            _remark(pasted.remarks)
            tell_wrong(pasted.wrong)
            if pasted.wrong:
                note("Nothing was taken. Put it right and paste it again.")
            else:
                answers = _with_weeks(with_classes(answers, pasted.found), keep)
        else:
            group = _one_class(answers, typed)
            answers = _with_weeks(with_classes(answers, (group,)), keep)


def _is_rows(typed: str) -> bool:
    """Whether what was typed has cells, as no name of a class has."""
    return bool(re.search(r"[\t\n;]", typed)) or typed.count(",") > 1


def _with_weeks(answers: Answers, keep: Keep) -> Answers:
    """Keep answers; where a lesson is of week A or B alone, ask which week that is."""
    keep(answers)
    letters = any(lesson.letter for group in answers.classes for lesson in group.lessons)
    if letters and not answers.two_week and answers.terms:
        note("Some of these lessons are in week A or B alone.")
        answers = _two_weeks(replace(answers, two_week=True))
        keep(answers)
    return answers


def _without_class(answers: Answers, name: str) -> Answers:
    left = tuple(group for group in answers.classes if not same_name(group.name, name))
    if len(left) == len(answers.classes):
        note(f"There is no class {name}.")
    return replace(answers, classes=left)


def _renamed(answers: Answers, was: str, name: str) -> Answers:
    """Give a class another name, which its plans and results go along with once it is kept."""
    known = next((group for group in answers.classes if same_name(group.name, was)), None)
    if known is None:
        note(f"There is no class {was}.")
        return answers
    others = [group.name for group in answers.classes if group is not known]
    if any(same_name(other, name) for other in others):
        note(f"There is a class {name} already.")
        return answers
    if known.was:
        note(f"The plans and results of {known.was} go along with {name}; its packs do not.")
    renamed = replace(known, name=name)
    return replace(answers, classes=tuple(renamed if g is known else g for g in answers.classes))


def _one_class(answers: Answers, name: str) -> ClassAnswer:
    """Ask for one class, with what is known of it as the first answers."""
    known = next((group for group in answers.classes if same_name(group.name, name)), None)
    group = known or ClassAnswer(name)
    begins = re.match(r"\d+", group.name)
    default = str(group.year or (begins[0] if begins else ""))
    year = int(answer("  Year", default, _a_year, needed=True))
    teacher = answer("  Teacher's initials (Enter leaves them out)", group.teacher, _initials)
    lessons = read_pasted_lessons(
        answer(
            "  Lessons, as in Mon 3, Tue 1, A Fri 2",
            ", ".join(map(str, group.lessons)),
            _lessons,
            needed=True,
        )
    )
    typed = answer(
        "  Seats: how many, or codes as in A1-A6, B1-B6 (Enter leaves them out)",
        ", ".join(seat_rows(group.seats)),
        _seats,
    )
    seats = seats_told(typed)[0] if typed else ()
    return replace(group, year=year, teacher=teacher, lessons=lessons, seats=seats)


def _a_year(typed: str) -> str:
    match = re.fullmatch(r"(?:y(?:ear)?\s*)?(\d{1,2})", typed.strip(), re.I)
    if not match or not 1 <= int(match[1]) <= 13:
        raise ItembankError("Write a year group from 1 to 13.")
    return match[1]


def _initials(typed: str) -> str:
    from itembank.people.colleague import check_initials

    return check_initials(typed.replace(".", "").replace(" ", ""))


def _lessons(typed: str) -> str:
    read_pasted_lessons(typed)
    return typed


def _seats(typed: str) -> str:
    _, wrong = seats_told(typed)
    if wrong:
        raise ItembankError(wrong)
    return typed


def ask_topics(
    answers: Answers, keep: Keep, own_titles: Mapping[str, str] | None = None
) -> Answers:
    """Ask for the topics of each year group, in order; `own_titles` are those that may be named."""
    titles = own_titles or known_topics()[0]
    for year in answers.years:
        answers = _topics_of(answers, year, keep, titles)
    return answers


def _topics_of(answers: Answers, year: int, keep: Keep, titles: Mapping[str, str]) -> Answers:
    group = next(group for group in answers.classes if group.year == year)
    say(
        f"Topics of year {year}, in order: paste them with their weeks or dates, then press Enter "
        "twice; or name a file; or type ‘ready’ for an order to begin from, ‘list’ to see the "
        "topics there are, a topic and its week (‘ratio.share 12’), or ‘drop ratio.share’."
    )
    while True:
        scheme = answers.scheme_for(group)
        _show(_scheme_lines(answers, scheme, titles))
        typed = answer_rows(
            f"Topics of year {year}{'; Enter when they are right' if scheme else ''}"
        )
        if not typed and scheme is not None:
            wrong = look_at(answers).of_part("topics")
            mine = [fault for fault in wrong if _of_scheme(answers, scheme, fault.field)]
            if not mine:
                return answers
            tell_wrong(mine)
        elif typed.casefold() == "ready":
            answers = with_scheme(answers, group, ready_scheme(year, answers.calendar).topics)
            keep(answers)
        elif typed.casefold() == "list":
            _list_topics()
        elif typed:
            topics = _typed_topics(answers, year, scheme, typed, titles)
            if topics is not None:
                answers = with_scheme(answers, group, topics)
                keep(answers)


def _of_scheme(answers: Answers, scheme: SchemeAnswer, field: tuple[str | int, ...]) -> bool:
    if field[:1] == ("schemes",) and len(field) > 1 and isinstance(field[1], int):
        return answers.schemes[field[1]] == scheme
    return False


def _typed_topics(
    answers: Answers,
    year: int,
    scheme: SchemeAnswer | None,
    typed: str,
    titles: Mapping[str, str],
) -> tuple[TopicAnswer, ...] | None:
    """Return the topics as pasted, or as one of them was changed; None where that failed."""
    there = scheme.topics if scheme else ()
    single = re.fullmatch(r"(drop\s+)?(\S+\.\S+)(?:\s+(?:week\s+)?(\S.*))?", typed, re.I)
    if single and topic_named(single[2], titles)[0]:
        left = tuple(topic for topic in there if topic.topic != single[2].casefold())
        if single[1]:
            return left
        typed = f"{single[2]}\t{single[3] or ''}"
    pasted = read_pasted_topics(typed, answers.calendar, titles)
    if pasted.wrong and pasted.found.unknown and pasted.found.topics:
        tell_wrong(pasted.wrong)
        again = read_pasted_topics(typed, answers.calendar, titles, leave_out=True)
        if not again.wrong and _yes("Leave those out, and take the others?"):
            pasted = again
    elif pasted.wrong:
        tell_wrong(pasted.wrong)
    if pasted.wrong:
        return None
    _remark(pasted.remarks)
    by_year = pasted.found.by_year
    found = by_year.get(year, pasted.found.topics)
    return (*left, *found) if single and topic_named(single[2], titles)[0] else found


def _scheme_lines(
    answers: Answers, scheme: SchemeAnswer | None, titles: Mapping[str, str]
) -> list[str]:
    if scheme is None:
        return []
    told = next(row for row in outlook_on(answers, titles).schemes if row.name == scheme.name)
    return [f"{topic.when}: {topic.title}" for topic in told.topics]


def _list_topics() -> None:
    for strand, rows in topics_by_strand().items():
        say(f"{strand.capitalize()}:")
        for facts in rows:
            note(f"{facts.topic}: {facts.title} (from year {facts.year})")


def ask_bands(answers: Answers, keep: Keep) -> Answers:
    """Ask for the bands: the usual, cut scores, or names of one's own."""
    usual = outlook_on(replace(answers, bands=None)).bands[0]
    say(f"The usual bands are {usual}. They are a teaching aid, not a grade.")
    if answers.bands is not None:
        say(f"Yours are {outlook_on(answers).bands[0]}.")

    def check(typed: str) -> str:
        bands = read_typed_bands(typed)
        wrong = look_at(replace(Answers(), bands=bands)).of_part("bands")
        if wrong:
            raise ItembankError(wrong[0].message)
        return typed

    label = "Bands: usual, cut scores as in 5 7, or names as in Red 0, Amber 5, Green 7"
    typed = answer(label, "as they are" if answers.bands else "usual", _kept(check))
    return answers if typed == "as they are" else replace(answers, bands=read_typed_bands(typed))


def _kept(check: Callable[[str], str]) -> Callable[[str], str]:
    return lambda typed: typed if typed == "as they are" else check(typed)


ASK: Mapping[Part, Callable[[Answers, Keep], Answers]] = {
    "school": ask_school,
    "year": ask_year,
    "classes": ask_classes,
    "topics": ask_topics,
    "bands": ask_bands,
}
"""What asks for each part, in the order in which they are asked for."""


def _yes(label: str, default: bool = True) -> bool:
    return answer(label, "yes" if default else "no", one_of(("yes", "no"))) == "yes"


def _date(text: str) -> datetime.date:
    return datetime.date.fromisoformat(text)


def _show(lines: Sequence[str]) -> None:
    for line in lines:
        note(line)


def _remark(remarks: tuple[str, ...]) -> None:
    for line in remarks:
        note(line)
