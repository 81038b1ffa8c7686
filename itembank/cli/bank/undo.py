"""``itembank bank undo``: the last change of a bank is taken back."""

from __future__ import annotations

from typing import Annotated

import typer

from itembank.cli.bank.showing.bank_meant import BankOption, bank_folder
from itembank.cli.words.wrapped import say


def undo(
    list_: Annotated[
        bool, typer.Option("--list", help="Say which changes could be taken back, and stop.")
    ] = False,
    bank: BankOption = None,
) -> None:
    """Take back the last change of a bank, made here or at the desk; again for the one before.

    Its files are then what they were, to the byte. Nothing is done where somebody has changed
    one of them since, or a plan asks a question that would go.

    \b
    Examples:
      itembank bank undo
      itembank bank undo --list
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.text.in_words import day_month_year
    from itembank.work.bank.taking_back import changes_of, take_back

    folder = bank_folder(bank)
    if list_:
        there = changes_of(folder)
        for change in there:
            say(f"{day_month_year(change.on)}: {change.words}.")
        if not there:
            say("No change of this bank is known.")
        return
    taken = take_back(folder)
    say(f"Taken back: {taken.words}, on {day_month_year(taken.on)}.")
