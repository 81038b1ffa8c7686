"""``itembank bank new``: an empty bank."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Annotated

import typer

from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError
from itembank.text.paths_shown import as_typed


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
    from itembank.bank.write.edit import create_bank
    from itembank.cli.bank.item_typed import pair

    authors = dict(pair(one, "--author CODE=ROLE") for one in author or ())
    short = name or plain_name(folder.resolve().name)
    create_bank(folder, short, title or short, licence=licence, licensor=licensor, authors=authors)
    say(f"Started the bank {short} in {folder}.")
    if not authors:
        say(
            "Add codes for its authors and reviewers under [authors] in bank.toml, such as "
            'HT = "head of mathematics".'
        )
    say(f"Next: itembank bank add --bank {as_typed(folder)}")


def plain_name(folder: str) -> str:
    """Return a bank's name from that of its folder.

    Raises:
        ItembankError: the folder's name has no letters or digits to use.

    >>> plain_name("Year 8 questions")
    'year-8-questions'
    """
    name = "-".join(re.findall(r"[a-z0-9]+", folder.lower()))
    if not name:
        raise ItembankError("Give the bank a short name with --name, such as --name larkhythe.")
    return name
