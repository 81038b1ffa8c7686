"""The classes in the conversation: pasted, from a file, or one after the other."""

from __future__ import annotations

import re
from dataclasses import replace

from itembank.cli.department.answering import Keep, answer, answer_rows, show, tell_wrong
from itembank.cli.department.ask_year import ask_two_weeks
from itembank.cli.words.ask import note
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError
from itembank.text.folding import same_name
from itembank.work.department.answered import Answers, ClassAnswer
from itembank.work.department.as_files import seat_rows
from itembank.work.department.joined_answers import with_classes
from itembank.work.department.looked_at import look_at
from itembank.work.department.outlook import class_line, outlook_on
from itembank.work.department.pasted.pasted_classes import read_pasted_classes, seats_told
from itembank.work.department.pasted.pasted_lessons import read_pasted_lessons


def ask_classes(answers: Answers, keep: Keep) -> Answers:
    """Ask for the classes: pasted, from a file, or one after the other."""
    say(
        "Paste your classes from a spreadsheet (class, year, teacher's initials, lessons, seats), "
        "then press Enter twice; or name a file; or type a class's name to add or change it."
    )
    while True:
        show([class_line(group) for group in outlook_on(answers).classes])
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
            show(pasted.remarks)
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
        answers = ask_two_weeks(replace(answers, two_week=True))
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
    if any(same_name(taken, name) for taken in others):
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
