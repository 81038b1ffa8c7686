"""Trying a question before it is saved: how it reads, whether it proves, what it is a twin of."""

from __future__ import annotations

from typing import TYPE_CHECKING

import typer

from itembank.errors import CheckFailed, ItembankError

if TYPE_CHECKING:
    from collections.abc import Iterable

    from itembank.bank.model.bank import Bank
    from itembank.bank.model.fields import BankItem

SHOWN_ANYWAY = "Mend it, or add --anyway to save it as it is."


def try_item(bank: Bank, item: BankItem, topic: str) -> bool:
    """Show a question as it will print, with its proof; return false if its key is wrong."""
    from itembank.bank.model.bank import Entry
    from itembank.bank.proof.prove import judge_entry
    from itembank.cli.bank.item_text import item_lines, labelled, proof_line
    from itembank.files.faults import join_words
    from itembank.proof.outcome import State

    entry = Entry(item, topic, bank.name, bank.folder / f"{topic}.toml", 0)
    outcome = judge_entry(entry)
    lines = [*item_lines(item), proof_line(outcome)]
    if twins := twins_of(bank, item):
        lines.append(labelled("Twin", f"asks the same as {join_words(twins)}"))
    typer.echo("\n".join(lines))
    return outcome.state is not State.DISPROVED


def twins_of(bank: Bank, item: BankItem) -> list[str]:
    """Return the ids of the other questions of a bank that ask the same in disguise."""
    from itembank.bank.question.twins import item_key

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


def the_author(bank: Bank, typed: str | None) -> str | None:
    """Return the author's code that is meant, typed in capitals or not; None where none is.

    Raises:
        ItembankError: it is none of the bank's.
    """
    from itembank.files.faults import join_words, nearest

    meant = as_known(bank, typed)
    if meant is None or meant in bank.authors:
        return meant
    near = nearest(meant.upper(), bank.authors) or list(bank.authors)
    advice = f"Did you mean {join_words(near, 'or')}?" if near else "It has none yet."
    raise ItembankError(
        f"There is no author ‘{typed}’ in {bank.name}. {advice} "
        "Codes stand under [authors] in bank.toml."
    )


def as_known(bank: Bank, typed: str | None) -> str | None:
    """Return an author's code as the bank writes it, or as it was typed where it has none such."""
    same = [code for code in bank.authors if typed and code.lower() == typed.strip().lower()]
    return typed if typed in bank.authors or len(same) != 1 else same[0]


def refuse_taken(bank: Bank, id: str, but: Iterable[str] = ()) -> None:
    """Raise an ItembankError where a question's id is taken already."""
    for entry in bank.entries():
        if entry.item.id == id and id not in but:
            raise ItembankError(
                f"The id ‘{id}’ is taken, in {entry.path.name}, line {entry.line}. Write another."
            )
