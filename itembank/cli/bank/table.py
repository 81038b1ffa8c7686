"""``itembank bank import`` and ``export``: questions in a table."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from itembank.cli.bank.showing.bank_meant import BankOption, TopicsOption, bank_folder
from itembank.cli.bank.showing.bank_screen import with_bar
from itembank.cli.words.wrapped import say
from itembank.text.in_words import counted
from itembank.text.paths_shown import quoted_path


def import_(
    file: Annotated[Path, typer.Argument(metavar="FILE", help="The CSV file.")],
    bank: BankOption = None,
    dry_run: Annotated[
        bool, typer.Option("--dry-run", help="Only look for faults in the file.")
    ] = False,
) -> None:
    """Add the questions of a CSV file to a bank: all of them, or none where one has a fault.

    The first row names the columns. Needed are topic, tier, prompt and key; the others are
    those that ‘itembank bank export’ writes. In a spreadsheet, format the columns as text
    first: it would take 3/4 for a day.

    \b
    Examples:
      itembank bank import questions.csv
      itembank bank import questions.csv --bank questions --dry-run
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.cli.bank.showing.totals import totals
    from itembank.work.bank.bank_tables import count_importable, import_questions

    folder = bank_folder(bank)
    if dry_run:
        count = with_bar(lambda bar: count_importable(folder, file, bar))
        say(f"No faults. {counted(count, 'question')} could be added to {folder}.")
        return
    added = with_bar(lambda bar: import_questions(folder, file, bar))
    count = len(added.ids)
    say(f"Added {counted(count, 'question')} on {counted(len(added.topics), 'topic')} to {folder}.")
    if not count:
        return
    say(totals(count, added.proofs, added.signs, added.retired))
    if set(added.proofs) - {"proved"}:
        say(f"‘itembank bank prove {quoted_path(folder)}’ says why.")


def export(
    file: Annotated[
        Path | None,
        typer.Argument(metavar="FILE", help="The CSV file to write; shown if left out."),
    ] = None,
    bank: BankOption = None,
    topic: TopicsOption = None,
    replace: Annotated[
        bool, typer.Option("--replace", help="Write over a file that is there.")
    ] = False,
) -> None:
    """Write a bank's own questions to a CSV file, one a row. Sign-offs stay in the bank.

    \b
    Examples:
      itembank bank export questions.csv
      itembank bank export ratio.csv --topic ratio.share
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.work.bank.bank_tables import export_questions

    folder = bank_folder(bank)
    found = with_bar(lambda bar: export_questions(folder, file, topic or (), replace, bar))
    if file is None:
        typer.echo(found.text, nl=False)
    else:
        say(f"Wrote {counted(found.questions, 'question')} to {file}.")
