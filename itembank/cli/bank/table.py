"""``itembank bank import`` and ``export``: questions in a table."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.bank.which import BankOption, bank_folder
from itembank.cli.options.complete import complete_topic
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError
from itembank.files.together import write_whole
from itembank.text.in_words import counted
from itembank.text.paths_shown import as_typed

if TYPE_CHECKING:
    from itembank.bank.model.bank import Bank, Entry


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
    from itembank.bank.read.load import read_bank
    from itembank.bank.table.item_table import import_table, read_table
    from itembank.cli.bank.states import states_of, totals_of

    folder = bank_folder(bank)
    if dry_run:
        taken = {entry.item.id for entry in read_bank(folder).entries()}
        rows = read_table(file, taken)
        say(f"No faults. {counted(len(rows), 'question')} could be added to {folder}.")
        return
    rows = import_table(folder, file)
    topics = dict.fromkeys(row.topic for row in rows)
    say(f"Added {counted(len(rows), 'question')} on {counted(len(topics), 'topic')} to {folder}.")
    if not rows:
        return
    added = {row.item.id for row in rows}
    states = states_of(*_added(folder, added))
    say(totals_of(states))
    if any(state.outcome.state.value != "proved" for state in states):
        say(f"‘itembank bank prove {as_typed(folder)}’ says why.")


def _added(folder: Path, ids: set[str]) -> tuple[Bank, list[Entry]]:
    from itembank.bank.read.load import read_bank

    found = read_bank(folder)
    return found, [entry for entry in found.entries() if entry.item.id in ids]


def export(
    file: Annotated[
        Path | None,
        typer.Argument(metavar="FILE", help="The CSV file to write; shown if left out."),
    ] = None,
    bank: BankOption = None,
    topic: Annotated[
        list[str] | None,
        typer.Option(
            "--topic",
            "-t",
            metavar="TOPIC",
            help="Only this topic; give it again for more.",
            autocompletion=complete_topic,
        ),
    ] = None,
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
    from itembank.bank.read.load import read_bank
    from itembank.bank.table.item_table import table_text
    from itembank.work.bank.wanted import refuse_unknown

    found = read_bank(bank_folder(bank))
    refuse_unknown(found, topic or (), None)
    wanted = {one.lower() for one in topic or ()}
    entries = [entry for entry in found.entries() if not wanted or entry.topic in wanted]
    text = table_text(entries, _titles(found), found.terms)
    if file is None:
        typer.echo(text, nl=False)
        return
    if file.exists() and not replace:
        raise ItembankError(f"There is a file {file} already. Add --replace to write over it.")
    # With a mark of UTF-8 at its start, a spreadsheet shows £ and ½ as they are.
    write_whole(file, text.encode("utf-8-sig"))
    say(f"Wrote {counted(len(entries), 'question')} to {file}.")


def _titles(bank: Bank) -> dict[str, str]:
    """Return the titles of the topics that the tool makes no questions on."""
    from itembank.bank.read.item_checks import is_generated

    return {topic.id: topic.title for topic in bank.topics if not is_generated(topic.id)}
