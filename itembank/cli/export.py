"""``itembank export``: everything that was recorded, as CSV files."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from itembank.cli.options.usual_options import DepartmentOption


def export(
    to: Annotated[Path, typer.Option(metavar="FOLDER", help="Folder for the CSV files.")],
    replace: Annotated[
        bool, typer.Option("--replace", help="Write over files that are there.")
    ] = False,
    department: DepartmentOption = None,
) -> None:
    """Write all that was recorded to CSV files, one a table. Pupils are seat codes there too.

    ‘itembank forget’ later takes a pupil out of these files as well, as long as they stay
    where they are.

    \b
    Example:
      itembank export --to results-2026
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.cli.options.department import department_with_results
    from itembank.cli.words.wrapped import say, table
    from itembank.work.lesson.export import export as write_tables

    counts = write_tables(department_with_results(department), to, replace)
    say(f"Written to {to}:")
    rows = [(name, f"{count:,}") for name, count in counts.items()]
    typer.echo(table(("file", "rows"), rows, right={1}))
