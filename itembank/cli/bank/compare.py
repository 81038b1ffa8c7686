"""``itembank bank compare``: how two banks differ, question by question."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.bank.showing.bank_meant import bank_folder
from itembank.cli.bank.showing.bank_screen import with_bar
from itembank.cli.words.wrapped import paragraph
from itembank.text.in_words import counted

if TYPE_CHECKING:
    from collections.abc import Sequence

    from itembank.bank.merge.compare import Comparison

FirstBank = Annotated[Path, typer.Argument(metavar="A", help="The folder of one bank.")]
SecondBank = Annotated[Path, typer.Argument(metavar="B", help="The folder of the other.")]


def compare(bank: FirstBank, other: SecondBank) -> None:
    """Say which questions two banks share, which only one has, and what differs in the rest.

    Questions that ask the same in disguise (other letters, another order, other words) are
    told as twins. Nothing is changed.

    \b
    Example:
      itembank bank compare questions colleague/questions
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.work.bank.merging import compare_banks

    first, second = bank_folder(bank), bank_folder(other)
    found = with_bar(lambda bar: compare_banks(first, second, bar))
    typer.echo("\n".join(compared(found, str(first), str(second))))


def compared(found: Comparison, first: str, other: str) -> list[str]:
    """Return what the comparison of two banks came to, as lines."""
    lines = []
    if found.same:
        lines += listed(f"The same in both, {counted(len(found.same), 'question')}:", found.same)
    lines += listed(f"Only in {first}:", found.only_first)
    lines += listed(f"Only in {other}:", found.only_second)
    if found.different:
        lines.append(f"Different (was: in {first}; is now: in {other}):")
        for difference in found.different:
            lines.append(f"  {difference.id}")
            lines += [paragraph("    ", str(change)) for change in difference.changes]
    if found.twins:
        lines.append("Twins, which ask the same in disguise:")
        for ids, others in found.twins:
            lines.append(paragraph("  ", f"{', '.join(ids)} and {', '.join(others)}"))
    if found.equal:
        lines.append("The banks hold the same questions.")
    return lines


def listed(head: str, names: Sequence[str]) -> list[str]:
    """Return names under a heading, wrapped; nothing where there are none."""
    return [head, paragraph("  ", ", ".join(names))] if names else []
