"""``itembank bank list``: which questions a bank holds, and what is known of each."""

from __future__ import annotations

import shutil
import sys
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.bank.which import BankArgument, OtherBank, bank_folder
from itembank.cli.options.complete import complete_topic
from itembank.cli.words.wrapped import prompt_text, say
from itembank.errors import ItembankError
from itembank.planning.bands.next_tasks import TIERS

if TYPE_CHECKING:
    from collections.abc import Sequence

    from itembank.bank.model.bank import Bank, Entry
    from itembank.bank.proof.state import EntryState

FEWEST_COLUMNS = 16
"""Of a question that are shown; where fewer are left, it stands under its row."""


def list_(
    bank: BankArgument = None,
    other: OtherBank = None,
    topic: Annotated[
        list[str] | None,
        typer.Option(
            "--topic",
            "-t",
            metavar="TOPIC",
            help="Only this topic, or strand.",
            autocompletion=complete_topic,
        ),
    ] = None,
    tier: Annotated[
        str | None, typer.Option(metavar="TIER", help="support, core or challenge.")
    ] = None,
    author: Annotated[str | None, typer.Option(metavar="CODE", help="Who wrote it.")] = None,
    state: Annotated[
        list[str] | None,
        typer.Option(
            metavar="STATE",
            help="proved, disproved, needs-a-person, signed, stale, unsigned or retired; "
            "given again, questions in all of them.",
        ),
    ] = None,
    text: Annotated[
        str | None, typer.Option(metavar="WORDS", help="What stands in question, key or working.")
    ] = None,
) -> None:
    """List a bank's questions with what is known of each; search by any of the options.

    \b
    Examples:
      itembank bank list
      itembank bank list --topic ratio.share --tier core
      itembank bank list --state stale
      itembank bank list --state proved --state unsigned
      itembank bank list --author T9 --text minibus
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.bank.read.load import read_bank
    from itembank.cli.bank.states import is_in, known_states, states_of, totals

    wanted = known_states(state or [])
    tier = tier.lower() if tier is not None else None
    if tier is not None and tier not in TIERS:
        raise ItembankError(f"There is no tier ‘{tier}’. Write support, core or challenge.")
    found = read_bank(bank_folder(bank, other))
    entries = [
        entry
        for entry in found.entries()
        if (not topic or any(_on_topic(entry, one) for one in topic))
        and tier in (None, entry.item.tier)
        and (author is None or (entry.item.author or "").lower() == author.lower())
        and (text is None or _holds(entry, text))
    ]
    refuse_unknown(found, topic or [], author)
    shown = [one for one in states_of(found, entries) if all(is_in(one, state) for state in wanted)]
    if not any(found.entries()):
        say(f"{found.name} has no questions yet. Add one: itembank bank add")
        return
    if not shown:
        say(f"No question of {found.name} is like that.")
        return
    typer.echo(listing(found, shown))
    typer.echo()
    say(totals(shown))


def _on_topic(entry: Entry, wanted: str) -> bool:
    return entry.topic == wanted.lower() or entry.topic.startswith(f"{wanted.lower()}.")


def refuse_unknown(bank: Bank, topics: Sequence[str], author: str | None) -> None:
    """Say so where a name that was typed is none of the bank's."""
    from itembank.files.faults import join_words, nearest

    known = [topic.id for topic in bank.topics]
    for typed in topics:
        if not any(one == typed.lower() or one.startswith(f"{typed.lower()}.") for one in known):
            near = nearest(typed.lower(), known)
            advice = f" Did you mean {join_words(near, 'or')}?" if near else ""
            raise ItembankError(f"{bank.name} has nothing on ‘{typed}’.{advice}")
    if author is not None and author.lower() not in (code.lower() for code in bank.authors):
        there = (
            f"There are: {join_words(list(bank.authors))}."
            if bank.authors
            else ("Its questions name no author.")
        )
        raise ItembankError(f"There is no author ‘{author}’ in {bank.name}. {there}")


def _holds(entry: Entry, words: str) -> bool:
    item = entry.item
    parts = [
        item.id,
        item.prompt,
        item.key,
        *item.model,
        *(" ".join(line) for line in item.working),
    ]
    parts += [f"{slip.name} {slip.wrong} {slip.ask}" for slip in item.misconceptions]
    return words.casefold() in "\n".join(parts).casefold()


def listing(bank: Bank, states: Sequence[EntryState]) -> str:
    """Return the questions, under the headings of their topics, as a table."""
    titles = {topic.id: topic.title for topic in bank.topics}
    columns = shutil.get_terminal_size((80, 24)).columns if sys.stdout.isatty() else 10_000
    rows = {one.address: _row(one) for one in states}
    wide = [max(len(row[i]) for row in rows.values()) for i in range(3)]
    left = columns - sum(wide) - 3 * 2 - 2
    blocks = []
    for topic in dict.fromkeys(one.topic for one in states):
        lines = [f"{titles[topic]}  ({topic})"]
        for one in states:
            if one.topic == topic:
                lines.append(_line(rows[one.address], wide, left))
        blocks.append("\n".join(lines))
    return "\n\n".join(blocks)


def _row(one: EntryState) -> list[str]:
    from itembank.cli.bank.item_text import printed

    assert one.entry is not None  # only hand-written questions are listed
    item = one.entry.item
    asked = " ".join(prompt_text(printed(item).prompt).replace("\N{NO-BREAK SPACE}", " ").split())
    return [item.id, item.tier, short_state(one), asked]


def short_state(one: EntryState) -> str:
    """Return an item's state in a few words, with who signed it."""
    word = one.word
    if one.signed and one.retired is None:
        who = ", ".join(signoff.by for signoff in one.sign.signoffs)
        word = word.replace("signed", f"signed {who}", 1)
    return word


def _line(row: list[str], wide: list[int], left: int) -> str:
    start = "  " + "  ".join(cell.ljust(size) for cell, size in zip(row, wide, strict=False))
    if left < FEWEST_COLUMNS:
        return start.rstrip()
    asked = row[3] if len(row[3]) <= left else row[3][: left - 1].rstrip() + "…"
    return f"{start}  {asked}".rstrip()
