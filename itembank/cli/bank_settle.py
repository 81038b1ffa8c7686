"""``itembank bank settle``: one of several versions of a question kept, the others retired."""

from __future__ import annotations

from typing import Annotated

import typer

from itembank.cli.bank_find import BankOption, bank_folder
from itembank.cli.text import say


def settle(
    item: Annotated[
        str, typer.Argument(metavar="ITEM", help="The version to keep, as in garden-12.3f2a.")
    ],
    bank: BankOption = None,
) -> None:
    """Keep one of the versions that a merge left, under the plain id; the others are retired.

    Their text and sign-offs stay in the bank, so merging again brings no version back.

    \b
    Example:
      itembank bank settle garden-12.3f2a
    """  # noqa: D301 - typer keeps the lines after \b as they are
    import datetime

    from itembank.bank.load import read_bank
    from itembank.bank.merge_files import prepare_settle

    folder = bank_folder(bank)
    prepared = prepare_settle(folder, item, datetime.date.today())
    prepared.save()
    base = item.rpartition(":")[2].partition(".")[0]
    others = [
        entry.item.id
        for entry in read_bank(folder).entries()
        if entry.item.base == base and entry.item.id != base
    ]
    say(f"{item} is kept as {base}. Retired: {', '.join(others)}.")
