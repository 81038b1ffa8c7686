"""``itembank bank move``, ``rename`` and ``retire``: elsewhere, by another id, out of use."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from itembank.cli.bank.showing.bank_meant import BankOption, ItemArgument, bank_folder
from itembank.cli.bank.showing.bank_screen import with_bar
from itembank.cli.options.complete import complete_topic
from itembank.cli.options.day import read_day
from itembank.cli.words.wrapped import say
from itembank.text.in_words import day_month_year


def move(
    item: ItemArgument,
    topic: Annotated[
        str | None,
        typer.Option(
            "--topic",
            "-t",
            metavar="TOPIC",
            help="The topic to move it to; its own if left out.",
            autocompletion=complete_topic,
        ),
    ] = None,
    to: Annotated[
        Path | None, typer.Option(metavar="BANK", help="The folder of another bank to move it to.")
    ] = None,
    title: Annotated[
        str | None, typer.Option(metavar="TEXT", help="The title of a new topic of your own.")
    ] = None,
    bank: BankOption = None,
) -> None:
    """Move a question to another topic, or to another bank, with the comments beside it.

    Sign-offs name the topic, and belong to their bank: after a move it has to be signed anew.

    \b
    Examples:
      itembank bank move garden-1 --topic fractions.of-quantity
      itembank bank move garden-1 --to ../shared-questions
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.work.bank.moving import move_question

    home, goal = bank_folder(bank), None if to is None else bank_folder(to)
    moved = with_bar(lambda bar: move_question(home, item, topic, goal, title, bar))
    say(f"Moved {moved.id} from {moved.path} to {moved.file}.")


def rename(
    old: Annotated[str, typer.Argument(metavar="OLD", help="The question's id now.")],
    new: Annotated[str, typer.Argument(metavar="NEW", help="The id it is to have.")],
    bank: BankOption = None,
) -> None:
    """Give a question another id. Its sign-offs stand, its comments and its place stay.

    Packs, plans and results made before know it by the old id. So does a copy of the bank: merge
    with one that was not renamed, and the question comes back under the old id, as a twin.

    \b
    Example:
      itembank bank rename garden-12 pond-3
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.work.bank.moving import rename_question

    before, after = rename_question(bank_folder(bank), old, new)
    say(f"Renamed {before}: it is {after} now, with its sign-offs.")


def retire(
    item: ItemArgument,
    because: Annotated[
        str | None, typer.Option(metavar="TEXT", help="Why, in a sentence. It is needed.")
    ] = None,
    on: Annotated[
        str | None, typer.Option(metavar="DAY", help="From when, as 2026-11-30; today.")
    ] = None,
    bank: BankOption = None,
) -> None:
    """Take a question out of use. It stays in its file, with its history and its sign-offs.

    \b
    Example:
      itembank bank retire pool-5 --because "pool-1 asks the same"
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.work.bank.moving import retire_question

    day, folder = read_day(on, "--on"), bank_folder(bank)
    gone = with_bar(lambda bar: retire_question(folder, item, because or "", day, bar))
    say(f"Retired {gone.id} from {day_month_year(gone.on)} on. It stays in {gone.path}.")
