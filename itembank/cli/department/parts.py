"""The parts of the conversation about a department: each takes answers and returns them anew."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from itembank.cli.department.answering import Keep, answer
from itembank.cli.department.ask_classes import ask_classes
from itembank.cli.department.ask_topics import ask_topics
from itembank.cli.department.ask_year import ask_year
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError
from itembank.work.department.answered import Answers
from itembank.work.department.looked_at import look_at
from itembank.work.department.outlook import outlook_on
from itembank.work.department.pasted.typed_bands import read_typed_bands
from itembank.work.department.wrong import Part


def ask_school(answers: Answers, keep: Keep) -> Answers:
    """Ask what the school is called."""

    def check(typed: str) -> str:
        wrong = look_at(replace(Answers(), school=typed)).wrong
        if wrong:
            raise ItembankError(wrong[0].message)
        return typed

    return replace(answers, school=answer("School", answers.school, check, needed=True))


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
