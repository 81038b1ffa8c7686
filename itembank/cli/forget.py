"""``itembank forget``: removes a pupil, a class or old results for good."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.options.day import read_day
from itembank.cli.options.department import department_with_results
from itembank.cli.options.usual_options import DepartmentOption
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError
from itembank.text.in_words import plural, short_day

if TYPE_CHECKING:
    from itembank.planning.department.department import Department
    from itembank.records.pupils.whom import Whom
    from itembank.work.lesson.forget import ForgottenNow, ToForget

GO_ON = "‘itembank forget --finish’"


def forget(
    seat: Annotated[
        str | None, typer.Option(metavar="CLASS/SEAT", help="One pupil, as in 8K/A3.")
    ] = None,
    class_: Annotated[
        str | None, typer.Option("--class", metavar="NAME", help="A whole class.")
    ] = None,
    before: Annotated[
        str | None, typer.Option(metavar="DAY", help="Only lessons before this day.")
    ] = None,
    finish: Annotated[
        bool, typer.Option("--finish", help="Go on with what was begun and is not done yet.")
    ] = False,
    yes: Annotated[bool, typer.Option("--yes", help="Do not ask first.")] = False,
    department: DepartmentOption = None,
) -> None:
    """Remove what was recorded for a pupil, a class, or before a day: it cannot be had back.

    It goes from the store, from notes on lessons, and from the CSV files that ‘itembank export’
    wrote. What was printed or sums results up is named, for you to delete; ‘--finish’ then looks
    again. Copies that people made, such as backups and printed pages, are theirs to remove.

    \b
    Examples:
      itembank forget --seat 8K/A3
      itembank forget --class 8K --before 2026-09-01
      itembank forget --before 2025-09-01 --yes
      itembank forget --finish
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.work.lesson.forget import finish_forgetting, whom_of

    given = any(value is not None for value in (seat, class_, before))
    if finish and given:
        raise ItembankError("--finish goes on with all that was begun; give it alone.")
    whom = None if finish else whom_of(seat, class_, read_day(before, "--before"))
    found = department_with_results(department)
    if whom is not None:
        done = _forget(found, whom, yes)
    else:
        finished = finish_forgetting(found)
        if not finished:
            say("Nothing was begun to be forgotten that is not done.")
        for forgotten in finished:
            _say_done(forgotten)
        done = all(forgotten.forgotten.done for forgotten in finished)
    if not done:
        raise typer.Exit(1)


def _forget(department: Department, whom: Whom, yes: bool) -> bool:
    """Forget, and say at each step what is true then; tell whether nothing is left to do."""
    from itembank.work.lesson.forget import forget as forget_now
    from itembank.work.lesson.forget import to_forget

    what = to_forget(department, whom)
    if not yes and not what.begun:
        _confirm(what)
    try:
        now = forget_now(department, whom)
    except KeyboardInterrupt:
        said = (
            f"{what.counted} removed from {what.store_name}: {whom}. Files may still hold them: "
            f"{GO_ON} does the rest."
            if to_forget(department, whom).begun
            else "Nothing was forgotten."
        )
        say(f"Stopped. {said}", err=True)
        raise
    say(f"{what.counted} removed from {what.store_name}: {whom}.")
    _say_done(now)
    if now.listed:
        say(
            f"{now.listed} still stands in department.toml; take it out there if it is no longer "
            "needed."
        )
    if now.unheard:
        say(f"{now.unheard} Is it mistyped?")
    for path in now.copies:
        say(f"{path} holds large-print copies with that seat; delete it if no longer needed.")
    if now.whom is not None and now.whom.seat:
        say(
            f"Packs were looked for in {now.looked_in} alone. If one with large-print copies for "
            "that seat was put elsewhere, delete it there."
        )
    for task in now.unfinished:
        say(f"{task.whom}, begun on {short_day(task.begun_at)}, is not done yet: see {GO_ON}.")
    return now.forgotten.done


def _confirm(what: ToForget) -> None:
    from itembank.cli.words.ask import can_ask
    from itembank.cli.words.ask import yes as answered_yes

    if not can_ask():
        raise ItembankError("This cannot be undone, so say --yes to do it without being asked.")
    if not answered_yes(f"Forget {what.whom} ({what.counted}) for good?", default=False):
        raise ItembankError("Nothing was forgotten.")


def _say_done(now: ForgottenNow) -> None:
    """Say what became of notes and files, what is left, and what to do about it."""
    done = now.forgotten
    if done.cut:
        say(
            f"The seat is cut from {done.cut} "
            f"{plural(done.cut, 'note or title', 'notes and titles')}; what else they say stays."
        )
    for path in done.rewritten:
        say(f"Written anew without it: {path}")
    for path in done.parts:
        say(f"A part of an export that was broken off, deleted: {path}")
    if done.gone:
        say("These exports are no longer where they were written; if they were moved, delete them:")
        for path in done.gone:
            say(f"  {path}")
    for place in done.moved:
        say(f"The pupil had another seat as well, and is forgotten there too: {place}.")
    for note in done.notes:
        say(f"A note or title with that number, which may mean the seat: {note}")
    for path, why in done.left:
        say(f"Not clean yet: {path}: {why}. Put that right, or delete the file.", err=True)
    for path in done.copies:
        say(
            f"Not clean yet: {path}: it is a copy of the results; ‘itembank unite’ brings in what "
            "only it holds. Put that right, or delete the file.",
            err=True,
        )
    if done.unswept:
        say(
            f"Unused parts of {now.store_name} may still hold what was removed: they could not be "
            f"overwritten. {done.unswept}",
            err=True,
        )
    if now.shared:
        say(
            "Copies that this command cannot reach may be left on the server: in unused rows until "
            "its owner runs VACUUM FULL, in its write-ahead log, and in its backups. Ask whoever "
            "looks after it."
        )
    if done.done:
        say(f"Forgotten: {now.whom}." if now.whom is not None else f"{now.store_name} is swept.")
    else:
        say(f"Not finished. When you have seen to that, {GO_ON} looks again.", err=True)
