"""``itembank bank move``, ``rename`` and ``retire``: elsewhere, by another id, out of use."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from itembank.cli.bank.which import BankOption, ItemArgument, bank_folder
from itembank.cli.options.complete import complete_topic
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError
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
    from itembank.bank.model.item_records import carried_licence
    from itembank.bank.read.item_checks import is_generated
    from itembank.bank.read.load import read_bank
    from itembank.bank.write.edit import move_item
    from itembank.cli.bank.item_typed import the_topic
    from itembank.cli.bank.trial import refuse_taken, the_author

    if topic is None and to is None:
        raise ItembankError("Where to? Give --topic, or --to with the folder of another bank.")
    found = read_bank(bank_folder(bank))
    entry = found.find(item)
    goal = found if to is None else read_bank(bank_folder(to))
    if topic is None:
        own = next(one.title for one in found.topics if one.id == entry.topic)
        chosen, its_title = the_topic(goal, entry.topic, title or own)
    else:
        chosen, its_title = the_topic(goal, topic, title)
    if to is not None:
        refuse_taken(goal, entry.item.id)
        the_author(goal, entry.item.author)
    file = move_item(
        entry.path,
        entry.item.id,
        chosen,
        title=None if is_generated(chosen) else its_title,
        folder="" if to is None else goal.folder,
        licence=carried_licence(entry.item.licence, found.terms, goal.terms),
    )
    say(f"Moved {entry.item.id} from {entry.path} to {file}.")


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
    import datetime

    from itembank.bank.merge.merge_files import prepare_rename

    prepared = prepare_rename(bank_folder(bank), old, new, datetime.date.today())
    prepared.save()
    ((before, after),) = prepared.report.renamed
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
    from itembank.bank.read.load import read_bank
    from itembank.bank.write.edit import retire_item
    from itembank.cli.bank.sign import the_day

    if because is None or not because.strip():
        raise ItembankError('Say why, for whoever asks later: --because "too hard to read".')
    day = the_day(on)
    entry = read_bank(bank_folder(bank)).find(item)
    if entry.item.retired is not None:
        raise ItembankError(
            f"{entry.item.id} is retired already, since {day_month_year(entry.item.retired)}: "
            f"{entry.item.retired_because}"
        )
    retire_item(entry.path, entry.item.id, day, because.strip())
    say(f"Retired {entry.item.id} from {day_month_year(day)} on. It stays in {entry.path}.")
