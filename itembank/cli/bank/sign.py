"""``itembank bank sign``: who has checked which questions, and when."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.bank.showing.bank_meant import BankOption, bank_folder
from itembank.cli.bank.showing.bank_screen import with_bar
from itembank.cli.options.complete import complete_topic
from itembank.cli.options.day import read_day
from itembank.cli.words.wrapped import paragraph, say
from itembank.text.in_words import counted, day_month_year

if TYPE_CHECKING:
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
            help="Every question of this topic, or strand.",
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
    from itembank.work.bank.signing_off import SignRequest, sign_questions

    request = SignRequest(by, tuple(items or ()), topic, all_proved, read_day(on, "--on"))
    folder = bank_folder(bank)
    for line in signed_lines(with_bar(lambda bar: sign_questions(folder, request, bar))):
        say(line)


def signed_lines(signed: tuple[Signed, ...]) -> list[str]:
    """Return what was recorded: one line for all that is as it should be, one for the rest."""
    new = [entry for entry in signed if entry.new]
    lines = []
    if new:
        first = new[0].signoff
        names = ", ".join(entry.id for entry in new)
        lines.append(
            f"Signed by {first.by} on {day_month_year(first.on)}, {counted(len(new), 'question')}:"
        )
        lines.append(paragraph("  ", names))
    if vouched := [entry.id for entry in new if not entry.proved]:
        lines.append("The reviewer vouches for these, whose keys the tool cannot prove:")
        lines.append(paragraph("  ", ", ".join(vouched)))
    if old := [entry.id for entry in signed if not entry.new]:
        lines.append("Signed already, and unchanged since:")
        lines.append(paragraph("  ", ", ".join(old)))
    return lines
