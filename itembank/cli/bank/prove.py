"""``itembank bank prove``: every key of a bank, found again from what its question prints."""

from __future__ import annotations

from typing import TYPE_CHECKING

import typer

from itembank.cli.bank.showing.bank_meant import BankArgument, OtherBank, TopicsOption, bank_folder
from itembank.cli.bank.showing.bank_screen import asked_text, with_bar
from itembank.cli.options.place import ClusterAddress, Jobs, place_for
from itembank.cli.words.wrapped import paragraph, say
from itembank.errors import CheckFailed
from itembank.text.in_words import counted, plural

if TYPE_CHECKING:
    from collections.abc import Sequence

    from itembank.cli.words.bar import Bar
    from itembank.work.bank.proving import Proved, Unproved


def prove(
    bank: BankArgument = None,
    other: OtherBank = None,
    topic: TopicsOption = None,
    jobs: Jobs = None,
    cluster: ClusterAddress = None,
) -> None:
    """Prove every key of a bank by two roads, from what the questions print.

    A question is proved, disproved (its key is wrong), or needs a person, with the reason.
    Ends with status 1 if a key is disproved. Retired questions are left out.

    \b
    Examples:
      itembank bank prove
      itembank bank prove questions --topic ratio.share
      itembank bank prove questions --cluster tcp://10.0.0.5:8786
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.proof.outcome import State
    from itembank.work.bank.proving import prove_bank

    folder = bank_folder(bank, other)

    def proved(bar: Bar) -> Proved:
        with place_for(jobs, cluster, bar) as place:
            return prove_bank(folder, topic or (), place, bar)

    found = with_bar(proved)
    for state in (State.NEEDS_PERSON, State.DISPROVED):  # what matters most stands last
        if found.unproved[state]:
            typer.echo(_told(state.value.capitalize(), found.unproved[state]))
            typer.echo()
    needs = found.counts[State.NEEDS_PERSON]
    say(
        f"{found.bank}: {counted(found.keys, 'key')}, {found.counts[State.PROVED]:,} proved, "
        f"{found.counts[State.DISPROVED]:,} disproved, "
        f"{counted(needs, 'needs', 'need')} a person."
    )
    if modelled := found.modelled:
        say(
            f"{modelled:,} of those proved {plural(modelled, 'rests', 'rest')} on a model, "
            "which is its author's reading of the words: a colleague should read it too."
        )
    if found.unsigned:
        say("Nobody has signed these questions yet: ‘itembank bank sign’ records who checked them.")
    if wrong := len(found.unproved[State.DISPROVED]):
        raise CheckFailed(
            "A key is wrong: mend it, and prove the bank again."
            if wrong == 1
            else f"{wrong} keys are wrong: mend them, and prove the bank again."
        )


def _told(head: str, unproved: Sequence[Unproved]) -> str:
    """Return the questions of one outcome, each with its place, its text and why."""
    from itembank.cli.bank.showing.question_text import sentence

    lines = [f"{head}:"]
    for entry in unproved:
        if entry.path is None:
            lines.append(f"  {entry.address}")
        else:
            lines.append(f"  {entry.id}  ({entry.path}, line {entry.line})")
            lines.append(paragraph("    ", asked_text(entry.asked)))
        lines.append(paragraph("    ", sentence(entry.says)))
    return "\n".join(lines)
