"""``itembank bank show``: one question as it will print, with all that is known of it."""

from __future__ import annotations

from typing import TYPE_CHECKING

import typer

from itembank.cli.bank.which import BankOption, ItemsArgument, bank_folder
from itembank.cli.words.wrapped import paragraph

if TYPE_CHECKING:
    from itembank.bank.model.bank import Bank, Entry
    from itembank.bank.proof.state import EntryState


def show(items: ItemsArgument, bank: BankOption = None) -> None:
    """Show questions as they will print, with key, working, likely mistakes and state.

    \b
    Examples:
      itembank bank show garden-1
      itembank bank show garden-1 garden-2 --bank questions
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.bank.read.load import read_bank
    from itembank.cli.bank.states import states_of

    found = read_bank(bank_folder(bank))
    entries = [found.find(one) for one in dict.fromkeys(items)]
    twins = _twins(found)
    texts = [
        entry_text(found, state, twins.get(state.address, ()))
        for state in states_of(found, entries)
    ]
    typer.echo("\n\n".join(texts))


def _twins(bank: Bank) -> dict[str, list[str]]:
    """Return the other items, or generated ones, that ask the same as an item."""
    from itembank.bank.question.twins import bank_twins

    return {
        address: [other for other in group if other != address]
        for group in bank_twins(bank)
        for address in group
    }


def entry_text(bank: Bank, state: EntryState, twins: list[str] | tuple[()] = ()) -> str:
    """Return everything that there is to say of an item."""
    from itembank.cli.bank.item_text import item_lines, labelled, place, state_lines
    from itembank.files.faults import join_words

    entry: Entry | None = state.entry
    assert entry is not None  # only hand-written questions are shown
    title = next(topic.title for topic in bank.topics if topic.id == entry.topic)
    head = f"{entry.item.id}: {title} ({entry.topic}), {entry.item.tier}"
    lines = [paragraph("", head), ""]
    lines += item_lines(entry.item)
    if entry.item.model:
        model = ", ".join(entry.item.model)
        asked = f"; find {entry.item.find}" if entry.item.find else ""
        lines.append(labelled("Model", f"{model}{asked}"))
    lines += state_lines(state)
    if twins:
        names = [one.removeprefix(f"{bank.name}:") for one in twins]
        lines.append(labelled("Twin", f"asks the same as {join_words(names)}"))
    lines.append(labelled("Kept", place(entry, bank.terms)))
    return "\n".join(lines)
