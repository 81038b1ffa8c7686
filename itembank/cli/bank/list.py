"""``itembank bank list``: which questions a bank holds, and what is known of each."""

from __future__ import annotations

import shutil
import sys
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.bank.showing.bank_meant import (
    AuthorMeant,
    BankArgument,
    KindMeant,
    OtherBank,
    StatesOption,
    TierMeant,
    TopicOrStrand,
    bank_folder,
)
from itembank.cli.bank.showing.bank_screen import asked_text, with_bar
from itembank.cli.words.wrapped import say

if TYPE_CHECKING:
    from itembank.work.bank.looking import Found, Line

FEWEST_COLUMNS = 16
"""Of a question that are shown; where fewer are left, it stands under its row."""


def list_(
    bank: BankArgument = None,
    other: OtherBank = None,
    topic: TopicOrStrand = None,
    tier: TierMeant = None,
    kind: KindMeant = None,
    author: AuthorMeant = None,
    state: StatesOption = None,
    text: Annotated[
        str | None, typer.Option(metavar="WORDS", help="What stands in question, key or working.")
    ] = None,
) -> None:
    """List a bank's questions with what is known of each; search by any of the options.

    \b
    Examples:
      itembank bank list
      itembank bank list --topic ratio.share --tier core
      itembank bank list --kind round
      itembank bank list --state stale
      itembank bank list --state proved --state unsigned
      itembank bank list --author T9 --text minibus
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.cli.bank.showing.totals import totals
    from itembank.work.bank.looking import list_questions
    from itembank.work.bank.wanted import Wanted, known_kind, known_states, known_tier

    states = known_states(state or [])
    words = () if text is None else (text,)
    wanted = Wanted(tuple(topic or ()), known_tier(tier), author, words, states, known_kind(kind))
    folder = bank_folder(bank, other)
    found = with_bar(lambda bar: list_questions(folder, wanted, bar))
    if tell_of_none(found):
        return
    typer.echo(listing(found))
    typer.echo()
    say(totals(len(found.lines), found.proofs, found.signs, found.retired))


def tell_of_none(found: Found) -> bool:
    """Say so where nothing was found, and return whether that is so."""
    if not found.holds:
        say(f"{found.bank} has no questions yet. Add one: itembank bank add")
    elif not found.lines:
        say(f"No question of {found.bank} is like that.")
    return not found.lines


def listing(found: Found) -> str:
    """Return the questions, under the headings of their topics, as a table."""
    columns = shutil.get_terminal_size((80, 24)).columns if sys.stdout.isatty() else 10_000
    rows = [(line.topic, _row(line)) for line in found.lines]
    wide = [max(len(row[i]) for _, row in rows) for i in range(len(rows[0][1]) - 1)]
    left = columns - sum(wide) - len(wide) * 2 - 2
    blocks: dict[str, list[str]] = {}
    for topic, row in rows:
        head = f"{found.titles[topic]}  ({topic})"
        blocks.setdefault(topic, [head]).append(_line(row, wide, left))
    return "\n\n".join("\n".join(lines) for lines in blocks.values())


def _row(line: Line) -> list[str]:
    asked = " ".join(asked_text(line.asked).replace("\N{NO-BREAK SPACE}", " ").split())
    state = line.state
    if line.signers:
        state = state.replace("signed", f"signed {', '.join(line.signers)}", 1)
    return [line.id, line.tier, *([state] if state else []), asked]


def _line(row: list[str], wide: list[int], left: int) -> str:
    start = "  " + "  ".join(cell.ljust(size) for cell, size in zip(row, wide, strict=False))
    if left < FEWEST_COLUMNS:
        return start.rstrip()
    asked = row[-1] if len(row[-1]) <= left else row[-1][: left - 1].rstrip() + "…"
    return f"{start}  {asked}".rstrip()
