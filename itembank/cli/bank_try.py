"""Trying a question before it is saved: how it reads, whether it proves, what it is a twin of."""

from __future__ import annotations

from typing import TYPE_CHECKING

import typer

from itembank.errors import CheckFailed, ItembankError

if TYPE_CHECKING:
    from collections.abc import Iterable

    from itembank.bank.load import Bank
    from itembank.bank.model import BankItem

SHOWN_ANYWAY = "Mend it, or add --anyway to save it as it is."


def try_item(bank: Bank, item: BankItem, topic: str) -> bool:
    """Show a question as it will print, with its proof; return false if its key is wrong."""
    from itembank.bank.load import Entry
    from itembank.bank.prove import judge_entry
    from itembank.checking.outcome import State
    from itembank.cli.bank_text import item_lines, labelled, proof_line
    from itembank.faults import join_words

    entry = Entry(item, topic, bank.name, bank.folder / f"{topic}.toml", 0)
    outcome = judge_entry(entry)
    lines = [*item_lines(item), proof_line(outcome)]
    if twins := twins_of(bank, item):
        lines.append(labelled("Twin", f"asks the same as {join_words(twins)}"))
    typer.echo("\n".join(lines))
    return outcome.state is not State.DISPROVED


def twins_of(bank: Bank, item: BankItem) -> list[str]:
    """Return the ids of the other questions of a bank that ask the same in disguise."""
    from itembank.bank.twins import item_key

    own = item_key(item)
    return [
        entry.item.id
        for entry in bank.entries()
        if entry.item.id != item.id
        and entry.item.retired is None
        and item_key(entry.item, entry.topic) == own
    ]


def refuse_wrong(sound: bool, anyway: bool) -> None:
    """End where a key is wrong, unless it is to be saved all the same.

    Raises:
        CheckFailed: it is wrong, and nobody said to save it anyway.
    """
    if not sound and not anyway:
        raise CheckFailed(f"It was not saved, because its key is wrong. {SHOWN_ANYWAY}")


def refuse_unknown_author(bank: Bank, author: str | None) -> None:
    """Raise an ItembankError where an author's code is none of the bank's."""
    from itembank.faults import join_words

    if author and author not in bank.authors:
        codes = join_words(list(bank.authors))
        known = f"There are {codes}." if codes else "There are none yet."
        raise ItembankError(
            f"There is no author ‘{author}’ in {bank.name}. {known} "
            "Codes stand under [authors] in bank.toml."
        )


def refuse_taken(bank: Bank, id: str, but: Iterable[str] = ()) -> None:
    """Raise an ItembankError where a question's id is taken already."""
    for entry in bank.entries():
        if entry.item.id == id and id not in but:
            raise ItembankError(
                f"The id ‘{id}’ is taken, in {entry.path.name}, line {entry.line}. Write another."
            )
