"""``itembank bank prove``: every key of a bank, found again from what its question prints."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.bank.which import BankArgument, OtherBank, bank_folder
from itembank.cli.options.complete import complete_topic
from itembank.cli.words.wrapped import paragraph, say
from itembank.errors import CheckFailed, ItembankError

if TYPE_CHECKING:
    from collections.abc import Sequence

    from itembank.bank.model.bank import Bank, BankTopic
    from itembank.bank.proof.state import EntryState


def prove(
    bank: BankArgument = None,
    other: OtherBank = None,
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
    jobs: Annotated[
        int | None, typer.Option(metavar="N", help="Processes to run; one a core if left out.")
    ] = None,
) -> None:
    """Prove every key of a bank by two roads, from what the questions print.

    A question is proved, disproved (its key is wrong), or needs a person, with the reason.
    Ends with status 1 if a key is disproved. Retired questions are left out.

    \b
    Examples:
      itembank bank prove
      itembank bank prove questions --topic ratio.share
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.bank.proof.prove import prove_bank
    from itembank.bank.proof.signoff import Signing
    from itembank.bank.read.load import read_bank
    from itembank.cli.bank.item_text import count
    from itembank.cli.words.bar import Bar
    from itembank.proof.judge import State

    if jobs is not None and jobs < 1:
        raise ItembankError(f"--jobs must be 1 or more, not {jobs}.")
    found = read_bank(bank_folder(bank, other))
    part = replace(found, topics=tuple(_chosen(found, topic)))
    bar = Bar()
    try:
        states = prove_bank(part, bar, jobs, generated=True, retired=False)
    finally:
        bar.clear()
    by_state = {state: [one for one in states if one.outcome.state is state] for state in State}
    wrong = by_state[State.DISPROVED]
    for state in (State.NEEDS_PERSON, State.DISPROVED):  # what matters most stands last
        if by_state[state]:
            typer.echo(_told(state.value.capitalize(), by_state[state]))
            typer.echo()
    counts = Counter(one.outcome.state for one in states)
    needs = counts[State.NEEDS_PERSON]
    say(
        f"{found.name}: {count(len(states), 'key')}, {counts[State.PROVED]:,} proved, "
        f"{counts[State.DISPROVED]:,} disproved, {needs:,} {'needs' if needs == 1 else 'need'} "
        "a person."
    )
    if modelled := sum(one.proved and one.outcome.modelled for one in states):
        say(
            f"{modelled:,} of those proved {'rests' if modelled == 1 else 'rest'} on a model, "
            "which is its author's reading of the words: a colleague should read it too."
        )
    written = [one for one in states if one.entry is not None]
    if written and all(one.sign.state is Signing.UNSIGNED for one in written):
        say("Nobody has signed these questions yet: ‘itembank bank sign’ records who checked them.")
    if wrong:
        raise CheckFailed(
            "A key is wrong: mend it, and prove the bank again."
            if len(wrong) == 1
            else f"{len(wrong)} keys are wrong: mend them, and prove the bank again."
        )


def _chosen(bank: Bank, wanted: list[str] | None) -> list[BankTopic]:
    from itembank.files.faults import join_words, nearest

    if not wanted:
        return list(bank.topics)
    known = {topic.id: topic for topic in bank.topics}
    for typed in wanted:
        if typed.lower() not in known:
            near = nearest(typed.lower(), known)
            advice = f" Did you mean {join_words(near, 'or')}?" if near else ""
            raise ItembankError(f"{bank.name} has nothing on ‘{typed}’.{advice}")
    return [known[typed.lower()] for typed in dict.fromkeys(wanted)]


def _told(head: str, states: Sequence[EntryState]) -> str:
    """Return the items of one outcome, each with its place, its question and why."""
    from itembank.cli.bank.item_text import printed, sentence
    from itembank.cli.words.wrapped import prompt_text

    lines = [f"{head}:"]
    for one in states:
        if one.entry is None:
            lines.append(f"  {one.address}")
        else:
            lines.append(f"  {one.entry.item.id}  ({one.entry.path}, line {one.entry.line})")
            lines.append(paragraph("    ", prompt_text(printed(one.entry.item).prompt)))
        lines.append(paragraph("    ", sentence(one.outcome.says)))
    return "\n".join(lines)
