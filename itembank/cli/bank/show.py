"""``itembank bank show``: one question as it will print, with all that is known of it."""

from __future__ import annotations

from typing import TYPE_CHECKING

import typer

from itembank.cli.bank.showing.bank_meant import BankOption, ItemsArgument, bank_folder
from itembank.cli.bank.showing.bank_screen import with_bar
from itembank.cli.words.wrapped import paragraph

if TYPE_CHECKING:
    from itembank.work.bank.looking import InFull


def show(items: ItemsArgument, bank: BankOption = None) -> None:
    """Show questions as they will print, with key, working, likely mistakes and state.

    \b
    Examples:
      itembank bank show garden-1
      itembank bank show garden-1 garden-2 --bank questions
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.work.bank.looking import show_questions

    folder = bank_folder(bank)
    found = with_bar(lambda bar: show_questions(folder, items, bar))
    typer.echo("\n\n".join(map(question_text, found)))


def question_text(found: InFull) -> str:
    """Return everything that there is to say of a question."""
    from itembank.cli.bank.showing.question_text import labelled, place, shown_lines, state_lines
    from itembank.files.faults import join_words

    head = f"{found.id}: {found.title} ({found.topic}), {found.tier}"
    lines = [paragraph("", head), "", *shown_lines(found.shown)]
    if model := found.stated.get("model"):
        find = found.stated.get("find")
        asked = f"; find {find}" if find else ""
        lines.append(labelled("Model", f"{', '.join(model)}{asked}"))
    lines += state_lines(found.state)
    if found.twins:
        names = [twin.removeprefix(f"{found.bank}:") for twin in found.twins]
        lines.append(labelled("Twin", f"asks the same as {join_words(names)}"))
    if found.could_be_twins:
        said = (
            f"not looked for among {found.could_be_twins:,} more questions with the same numbers; "
            "itembank bank twins looks for all"
        )
        lines.append(labelled("Twins", said))
    lines.append(labelled("Kept", place(found)))
    return "\n".join(lines)
