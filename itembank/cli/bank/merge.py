"""``itembank bank merge``: two banks brought together, and told what came of it."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.bank.compare import FirstBank, SecondBank, listed
from itembank.cli.bank.showing.bank_meant import bank_folder
from itembank.cli.bank.showing.bank_screen import with_bar
from itembank.cli.words.wrapped import paragraph
from itembank.text.in_words import counted
from itembank.text.paths_shown import quoted_path

if TYPE_CHECKING:
    from itembank.work.bank.merging import Merged, Versions


def merge(
    bank: FirstBank,
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
    from itembank.work.bank.merging import merge_banks

    first, second = bank_folder(bank), bank_folder(other)
    found = with_bar(lambda bar: merge_banks(first, second, into, dry_run, bar))
    head = "Merged" if found.written else "What would come of merging"
    typer.echo(f"{head} {second} into {found.home}:")
    typer.echo("\n".join(merged(found, str(first), str(second))))


def merged(found: Merged, first: str, other: str) -> list[str]:
    """Return what came of a merge, as lines."""
    report = found.report
    apart = {id for conflict in report.conflicts for id in conflict.ids}
    lines = listed(f"New, from {other}:", [id for id in report.only_second if id not in apart])
    lines += listed("Retired, because one of the banks has retired them:", report.retired)
    signed = [f"{s.item} by {s.by}" for s in report.signoffs]
    lines += listed("Sign-offs that came along:", signed)
    if report.same:
        lines.append(f"The same in both: {counted(len(report.same), 'question')}.")
    if own := [id for id in report.only_first if id not in apart]:
        lines.append(f"Only in {first}: {counted(len(own), 'question')}.")
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
        for versions in found.apart:
            lines.append(paragraph("  ", versions.conflict.says))
            lines += _apart(versions, found.home)
    return lines or ["Nothing: the other bank holds nothing more."]


def _apart(versions: Versions, home: Path) -> list[str]:
    """Return what the versions of a question say where they differ, and how to keep each."""
    if not versions.says:
        return []
    ids = versions.conflict.ids
    wide = max(map(len, ids))
    lines = []
    for name, says in versions.says.items():
        lines.append(f"    {name}")
        lines += [paragraph(f"      {id:<{wide}}  ", text or "–") for id, text in says.items()]
    lines.append("    Keep one of them:")
    lines += [f"      itembank bank settle {id} --bank {quoted_path(home)}" for id in ids]
    every = "both" if len(ids) == 2 else "all"
    lines.append(f"    Or keep them {every}, the first with the plain id:")
    lines.append(f"      itembank bank settle {ids[0]} --both --bank {quoted_path(home)}")
    return lines
