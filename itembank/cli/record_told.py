"""Has a starter recorded, asks what has to be asked first, and tells what came of it."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from itembank.cli.words.tell import tell
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError
from itembank.planning.bands.caution import NOT_A_GRADE
from itembank.text.in_words import counted
from itembank.work.lesson.record import Recorded, record

if TYPE_CHECKING:
    from itembank.planning.department.department import Department
    from itembank.work.lesson.record_request import RecordRequest


def record_and_tell(department: Department, request: RecordRequest) -> None:
    """Record what was typed, or ask for it, and say in three lines what it comes to.

    Raises:
        ItembankError: says all that is wrong; nothing was recorded.
    """
    recorded = _recorded(department, request)
    tell(recorded.remarks)
    _say_results(recorded)


def _recorded(department: Department, request: RecordRequest) -> Recorded:
    from itembank.cli.words.ask import can_ask

    while True:
        try:
            return record(department, request)
        except ItembankError as error:
            if error.matter == "no lesson that day" and can_ask():
                request = _on_that_day(request, error.about["why"])
            elif error.matter == "nothing to record" and can_ask():
                request = _asked(department, request)
            else:
                raise


def _on_that_day(request: RecordRequest, why: str) -> RecordRequest:
    from itembank.cli.words.ask import yes

    if not yes(f"{why} Record it all the same?", default=False):
        raise ItembankError("Nothing was recorded. Name the day of the lesson with --date.")
    return replace(request, any_day=True)


def _asked(department: Department, request: RecordRequest) -> RecordRequest:
    """Ask three short questions at a terminal.

    Raises:
        ItembankError: nothing was answered.
    """
    from itembank.cli.words.ask import ask
    from itembank.records.entries.teacher_text import read_views, whole_numbers
    from itembank.work.lesson.record import find_starter

    starter = find_starter(department, request)
    facts, bands = starter.facts, starter.bands
    say(f"{facts}: {facts.title}. Enter alone passes over a question; Ctrl-C stops.")
    names = ", ".join(f"{name} {low}–{high}" for _, name, low, high in bands)

    def counts(text: str) -> str:
        if len(whole_numbers(text)) != len(bands):
            raise ItembankError(f"Write {len(bands)} numbers: {names}.")
        return text

    def views(text: str) -> str:
        read_views(text, ())
        return text

    def number(text: str) -> str:
        numbers = whole_numbers(text)
        if len(numbers) != 1:
            raise ItembankError("Write one number.")
        return str(numbers[0])  # without what may stand beside it, as in “5,”

    hands = ask(f"Hands for {names}", check=counts)
    sure = ask("Sure, partly and not sure, before marking", check=views)
    unclear = ask("How many asked what to do before they could start", check=number)
    answered = replace(
        request,
        bands=hands or None,
        own_view=sure or None,
        unclear=int(unclear) if unclear else None,
    )
    if answered.empty:
        raise ItembankError("Nothing was answered, so nothing is recorded.")
    return answered


def _say_results(recorded: Recorded) -> None:
    """Say in three lines what was recorded, what it means and what comes next."""
    from itembank.work.report.lesson_words import bands_line, overall_line

    decision = recorded.decision
    facts = decision.facts
    there = f": {counted(decision.pupils, 'pupil')}" if decision.pupils else ""
    bands = f". {bands_line(decision)}" if decision.groups else ""
    caution = f" {NOT_A_GRADE}" if bands else ""
    say(f"{recorded.done.value.capitalize()}. {facts}{there}{bands}.{caution}")
    if line := overall_line(decision):
        say(line)
    name = facts.class_name
    say(f"Next: ‘itembank decide {name}’ says more; ‘itembank undo {name}’ takes this back.")
