"""``itembank bank check``, ``unlock`` and ``schema``: a bank's files as files."""

from __future__ import annotations

from typing import Annotated

import typer

from itembank.cli.bank.showing.bank_meant import BankArgument, OtherBank, bank_folder
from itembank.cli.bank.showing.bank_screen import with_bar
from itembank.cli.words.wrapped import say
from itembank.text.in_words import counted


def check(bank: BankArgument = None, other: OtherBank = None) -> None:
    """Look for faults in a bank's files, and tell of all of them at once.

    Each is told with its file, its line and what to do; the command then ends with status 2.
    Keys are read here but not worked out: ‘itembank bank prove’ does that.

    \b
    Examples:
      itembank bank check
      itembank bank check questions
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.errors import ItembankError
    from itembank.files.faults import FileFaults
    from itembank.work.bank.checking import check_bank

    folder = bank_folder(bank, other)
    try:
        found = with_bar(lambda bar: check_bank(folder, bar))
    except FileFaults as error:
        files = {fault.file for fault in error.faults}
        many = f"{counted(len(error.faults), 'fault')} in {counted(len(files), 'file')}."
        raise ItembankError(f"{FileFaults(error.faults, most=None)}\n{many}") from None
    parts = [f"{counted(found.questions, 'question')} on {counted(found.topics, 'topic')}"]
    if found.retired:
        parts.append(f"{found.retired} of them retired")
    if found.generated:
        parts.append(f"{found.generated} generated")
    say(f"{found.name}: {', '.join(parts)}. No faults in {folder}.")
    say(f"Licence: {found.terms or 'none stated'}.")


def unlock(bank: BankArgument = None, other: OtherBank = None) -> None:
    """Remove a lock that was left behind, for instance by a machine that lost its power.

    While somebody saves a bank, its lock keeps others from saving; it is gone after a moment.
    Make sure that nobody is saving: two who save at once could lose one another's work.

    \b
    Examples:
      itembank bank unlock
      itembank bank unlock questions
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.people.lock import unlock as take_away

    folder = bank_folder(bank, other)
    held = take_away(folder)
    if held is None:
        say(f"{folder} is not locked.")
    else:
        say(f"The lock of {held.who}, held for {held.age()}, is removed from {folder}.")


def schema(
    file: Annotated[
        str, typer.Argument(metavar="FILE", help="topic, or bank for bank.toml; topic if left out.")
    ] = "topic",
) -> None:
    """Print the JSON Schema of a bank's files, for an editor that checks TOML as you type.

    \b
    Examples:
      itembank bank schema > bank-topic.schema.json
      itembank bank schema bank > bank.schema.json
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.bank.model.schema import schema_text
    from itembank.errors import ItembankError

    names = {"topic": "bank-topic.schema.json", "bank": "bank.schema.json"}
    if file not in names:
        raise ItembankError(f"There is no schema ‘{file}’. Write topic or bank.")
    typer.echo(schema_text(names[file]), nl=False)
