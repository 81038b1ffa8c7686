"""``itembank bank merge``: two banks brought together, and told what came of it."""

from __future__ import annotations

import os
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.bank.compare import FirstBank, SecondBank, listed
from itembank.cli.bank.which import bank_folder
from itembank.cli.words.wrapped import paragraph
from itembank.errors import ItembankError
from itembank.text.in_words import counted
from itembank.text.paths_shown import as_typed

if TYPE_CHECKING:
    from itembank.bank.merge.union import MergeReport
    from itembank.bank.model.bank import Bank


def merge(
    one: FirstBank,
    other: SecondBank,
    into: Annotated[
        Path | None,
        typer.Option(metavar="FOLDER", help="Leave A as it is, and write a new bank there."),
    ] = None,
    dry_run: Annotated[
        bool, typer.Option("--dry-run", help="Only say what would come of it.")
    ] = False,
) -> None:
    """Merge bank B into bank A: everything that is in either, sign-offs among it.

    Where both hold different questions under one id, both are kept under ids of their own
    until one is chosen, or both are kept for good, with ‘itembank bank settle’. Merging again
    changes nothing.

    \b
    Examples:
      itembank bank merge questions colleague/questions --dry-run
      itembank bank merge questions colleague/questions
      itembank bank merge questions colleague/questions --into both
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.bank.merge.merge_files import prepare_merge
    from itembank.bank.read.load import read_bank

    first, second = bank_folder(one), bank_folder(other)
    if first.resolve() == second.resolve():
        raise ItembankError(f"{first} and {second} are the same bank.")
    if into is not None and os.path.lexists(into):
        raise ItembankError(f"There is something in {into} already. Name a new folder.")
    prepared = prepare_merge(first, second)
    if into is not None and not dry_run:
        prepared.save_copy(into)
    elif not dry_run:
        prepared.save()
    report = prepared.report
    home = into or first
    head = "What would come of merging" if dry_run else "Merged"
    typer.echo(f"{head} {second} into {home}:")
    bank = None if dry_run else read_bank(home)
    typer.echo("\n".join(merged(report, str(first), str(second), bank)))


def merged(report: MergeReport, one: str, other: str, bank: Bank | None) -> list[str]:
    """Return what came of a merge, as lines; `bank` is the merged one, where it is written."""
    apart = {id for conflict in report.conflicts for id in conflict.ids}
    lines = listed(f"New, from {other}:", [id for id in report.only_second if id not in apart])
    lines += listed("Retired, because one of the banks has retired them:", report.retired)
    signed = [f"{s.item} by {s.by}" for s in report.signoffs]
    lines += listed("Sign-offs that came along:", signed)
    if report.same:
        lines.append(f"The same in both: {counted(len(report.same), 'question')}.")
    if own := [id for id in report.only_first if id not in apart]:
        lines.append(f"Only in {one}: {counted(len(own), 'question')}.")
    renamed = [(old, new) for old, new in report.renamed if new not in apart]
    lines += listed("Renamed:", [f"{old} is now {new}" for old, new in renamed])
    if report.twins:
        lines.append("Twins, which ask the same in disguise; all of them are kept:")
        lines += [paragraph("  ", ", ".join(group)) for group in report.twins]
    if report.clashes:
        lines.append("The banks do not agree:")
        lines += [paragraph("  ", clash) for clash in report.clashes]
    if report.conflicts:
        lines.append("To settle:")
        for conflict in report.conflicts:
            lines.append(paragraph("  ", conflict.says))
            lines += _apart(bank, conflict.ids)
    return lines or ["Nothing: the other bank holds nothing more."]


def _apart(bank: Bank | None, ids: tuple[str, ...]) -> list[str]:
    """Return what the versions of a question say where they differ, and how to keep each."""
    from itembank.bank.model.content import printed_on
    from itembank.bank.model.item_changes import changes

    if bank is None:
        return []
    there = [entry for entry in bank.entries() if entry.item.id in ids]
    if len(there) < 2 or any(entry.item.retired for entry in there):
        return []
    first, *others = there
    was = printed_on(first.item, first.topic)
    fields: dict[str, dict[str, str]] = {}
    for entry in others:
        for change in changes(was, printed_on(entry.item, entry.topic)):
            says = fields.setdefault(change.field, {first.item.id: change.was or "–"})
            says[entry.item.id] = change.now or "–"
    wide = max(len(entry.item.id) for entry in there)
    lines = []
    for name, says in fields.items():
        lines.append(f"    {name}")
        lines += [paragraph(f"      {id:<{wide}}  ", text) for id, text in says.items()]
    lines.append("    Keep one of them:")
    lines += [f"      itembank bank settle {id} --bank {as_typed(bank.folder)}" for id in ids]
    every = "both" if len(ids) == 2 else "all"
    lines.append(f"    Or keep them {every}, the first with the plain id:")
    lines.append(f"      itembank bank settle {ids[0]} --both --bank {as_typed(bank.folder)}")
    return lines
