"""``itembank bank sign``: who has checked which questions, and when."""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.bank.which import BankOption, bank_folder
from itembank.cli.options.complete import complete_topic
from itembank.cli.words.wrapped import paragraph, say
from itembank.errors import ItembankError
from itembank.text.in_words import counted, day_month_year

if TYPE_CHECKING:
    from itembank.bank.model.bank import Bank
    from itembank.bank.proof.signing import Signed


def sign(
    items: Annotated[
        list[str] | None,
        typer.Argument(metavar="ITEM", help="Ids of the questions that were checked."),
    ] = None,
    by: Annotated[
        str | None,
        typer.Option(metavar="CODE", help="The reviewer's code, from bank.toml. Never a name."),
    ] = None,
    on: Annotated[
        str | None, typer.Option(metavar="DAY", help="When, as 2026-11-30; today if left out.")
    ] = None,
    topic: Annotated[
        str | None,
        typer.Option(
            "--topic",
            "-t",
            metavar="TOPIC",
            help="Every question of this topic.",
            autocompletion=complete_topic,
        ),
    ] = None,
    all_proved: Annotated[
        bool, typer.Option("--all-proved", help="Every question with a proved key.")
    ] = False,
    bank: BankOption = None,
) -> None:
    """Record that a reviewer has read and checked questions.

    A sign-off holds for what a question says now: any edit makes it stale, and ‘itembank
    bank show’ then says what has changed. A question that needs a person can be signed; one
    with a wrong key cannot. With --topic and --all-proved together, the proved ones of a topic.

    \b
    Examples:
      itembank bank sign garden-1 garden-2 --by HT
      itembank bank sign --topic ratio.share --by HT --on 2026-11-20
      itembank bank sign --all-proved --by HT
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.bank.proof.signing import sign as sign_items
    from itembank.bank.read.load import read_bank
    from itembank.cli.bank.trial import as_known
    from itembank.cli.words.bar import Bar

    if items and (topic or all_proved):
        raise ItembankError("Name questions, or give --topic or --all-proved, not both.")
    day = the_day(on)
    found = read_bank(bank_folder(bank))
    if by is None:
        codes = f", such as --by {next(iter(found.authors))}" if found.authors else ""
        raise ItembankError(f"Who has checked them? Give a reviewer's code with --by{codes}.")
    chosen = list(items or ()) or _chosen(found, topic, all_proved)
    if not chosen:
        where = f" on {topic}" if topic else ""
        raise ItembankError(f"{found.name} has no question{where} that could be signed.")
    bar = Bar()
    try:
        signed = sign_items(found, chosen, as_known(found, by) or by, day, bar)
    finally:
        bar.clear()
    for line in signed_lines(signed):
        say(line)


def the_day(typed: str | None) -> datetime.date:
    """Return the day that was typed, or today.

    Raises:
        ItembankError: it is no day.
    """
    from itembank.cli.options.day import read_day

    return read_day(typed, "--on") or datetime.date.today()


def _chosen(bank: Bank, topic: str | None, proved: bool) -> list[str]:
    """Return the ids of the questions in use on a topic, or of those with a proved key."""
    from itembank.cli.bank.states import states_of
    from itembank.work.bank.wanted import refuse_unknown

    if topic is None and not proved:
        raise ItembankError(
            "Which questions? Name them, as in: itembank bank sign garden-1 --by HT. "
            "Or give --topic or --all-proved."
        )
    if topic is not None:
        refuse_unknown(bank, [topic], None)
    entries = [
        entry
        for entry in bank.entries()
        if entry.item.retired is None and topic in (None, entry.topic)
    ]
    if not proved:
        return [entry.item.id for entry in entries]
    states = states_of(bank, entries)
    return [state.entry.item.id for state in states if state.proved and state.entry is not None]


def signed_lines(signed: tuple[Signed, ...]) -> list[str]:
    """Return what was recorded: one line for all that is as it should be, one for the rest."""
    new = [one for one in signed if one.new]
    lines = []
    if new:
        first = new[0].signoff
        names = ", ".join(one.id for one in new)
        lines.append(
            f"Signed by {first.by} on {day_month_year(first.on)}, {counted(len(new), 'question')}:"
        )
        lines.append(paragraph("  ", names))
    if vouched := [one.id for one in new if not one.proved]:
        lines.append("The reviewer vouches for these, whose keys the tool cannot prove:")
        lines.append(paragraph("  ", ", ".join(vouched)))
    if old := [one.id for one in signed if not one.new]:
        lines.append("Signed already, and unchanged since:")
        lines.append(paragraph("  ", ", ".join(old)))
    return lines
