"""``itembank map``: what rests on what, drawn."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from itembank.cli.options.usual_options import DepartmentOption

OUTPUT = Path("output")


def map_(
    years: Annotated[
        bool, typer.Option("--years", help="Columns are the terms of your schemes of work.")
    ] = False,
    output: Annotated[Path, typer.Option(metavar="DIR", help="Where the files go.")] = OUTPUT,
    department: DepartmentOption = None,
) -> None:
    """Draw all topics with an arrow to each from what it rests on, as SVG and PDF.

    With --years each topic stands in the term in which a scheme of work of your department
    first teaches it.

    \b
    Examples:
      itembank map
      itembank map --years --department banks/larkhythe
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.planning.department.department import find_department
    from itembank.text.in_words import plural
    from itembank.work.topics.map_files import write_topic_map

    home = find_department(department) if years or department is not None else None
    made = write_topic_map(output, home)
    arrows = plural(made.arrows, "arrow", "arrows")
    typer.echo(f"{made.topics} topics and {made.arrows} {arrows} between them:")
    typer.echo(f"  {made.svg}\n  {made.pdf}")
