"""``itembank bank new``: an empty bank."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from itembank.cli.words.wrapped import say
from itembank.text.paths_shown import quoted_path


def new(
    folder: Annotated[
        Path, typer.Argument(metavar="FOLDER", help="The bank's folder, which is made if need be.")
    ],
    name: Annotated[
        str | None,
        typer.Option(
            metavar="NAME", help="A short name for addresses, as in larkhythe; the folder's."
        ),
    ] = None,
    title: Annotated[
        str | None, typer.Option(metavar="TEXT", help="What people call it; the name.")
    ] = None,
    licence: Annotated[
        str | None,
        typer.Option(metavar="TEXT", help="The licence of its questions, such as CC-BY-4.0."),
    ] = None,
    licensor: Annotated[
        str | None,
        typer.Option(metavar="TEXT", help="Who grants the licence, such as the school."),
    ] = None,
    author: Annotated[
        list[str] | None,
        typer.Option(
            metavar="CODE=ROLE", help="A code for who writes or checks; give it again for more."
        ),
    ] = None,
) -> None:
    """Start a bank: a folder that will hold one file a topic.

    People stand in it under codes such as HT or T9, each with a role, and never by name.

    \b
    Examples:
      itembank bank new questions
      itembank bank new questions --name larkhythe --title "Our own questions" \\
          --author HT="head of mathematics" --author T9="teacher of 9S"
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.cli.bank.writing.item_typed import pair
    from itembank.work.bank.starting import start_bank

    authors = dict(pair(typed, "--author CODE=ROLE") for typed in author or ())
    started = start_bank(folder, name, title, licence, licensor, authors)
    say(f"Started the bank {started.name} in {folder}.")
    if not authors:
        say(
            "Add codes for its authors and reviewers under [authors] in bank.toml, such as "
            'HT = "head of mathematics".'
        )
    say(f"Next: itembank bank add --bank {quoted_path(folder)}")
