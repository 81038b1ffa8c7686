"""``itembank bank twins``: questions that ask the same in disguise, in one bank or several."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.bank.showing.bank_meant import bank_folder
from itembank.cli.bank.showing.bank_screen import with_bar
from itembank.cli.options.place import ClusterAddress, Jobs, place_for
from itembank.cli.words.wrapped import paragraph, say
from itembank.text.in_words import counted

if TYPE_CHECKING:
    from itembank.cli.words.bar import Bar

Banks = Annotated[
    list[Path] | None,
    typer.Argument(metavar="BANK", help="Folders of banks; the bank here if left out."),
]


def twins(
    banks: Banks = None,
    jobs: Jobs = None,
    cluster: ClusterAddress = None,
) -> None:
    """Find questions that ask the same in disguise: other letters, another order, other words.

    Of several banks, those that one shares with another are found too. Nothing is changed.

    \b
    Examples:
      itembank bank twins
      itembank bank twins questions colleague/questions
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.work.bank.finding_twins import find_twins

    folders = [bank_folder(bank) for bank in banks] if banks else [bank_folder(None)]

    def found(bar: Bar) -> list[tuple[str, ...]]:
        with place_for(jobs, cluster, bar) as place:
            return find_twins(folders, place, bar)

    groups = with_bar(found)
    if not groups:
        say("No two questions ask the same.")
        return
    say(f"{counted(len(groups), 'group')} of questions that ask the same:")
    for group in groups:
        typer.echo(paragraph("  ", ", ".join(group)))
