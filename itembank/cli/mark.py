"""``itembank mark``: the verdict on one typed answer."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer


def mark(
    address: Annotated[
        str,
        typer.Argument(
            metavar="ADDRESS",
            help="Which question: topic/tier/number or BANK:ID, as teacher notes list it.",
        ),
    ],
    answer: Annotated[str, typer.Argument(metavar="ANSWER", help="The answer as it was typed.")],
    bank: Annotated[
        list[Path] | None,
        typer.Option(metavar="DIR", help="Folder of the bank; those near here are known."),
    ] = None,
) -> None:
    """Mark one typed answer, and say what to ask where it shows a known mistake.

    Put two dashes before an answer that begins with a minus.

    \b
    Examples:
      itembank mark ratio.share/support/228 "£48 and £42"
      itembank mark equations.two-step/core/7 -- "-3"
      itembank mark fernhill:garden-12 "1 1/2" --bank questions
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.cli.find import find_address
    from itembank.cli.text import say
    from itembank.marking import mark as verdict_on
    from itembank.notation.line import line

    item = find_address(address, tuple(bank or ()))
    marked = verdict_on(item, answer)
    said = marked.verdict.value.capitalize()
    if marked.misconception is not None:
        say(f"{said}: {marked.misconception.name}. Ask: {marked.says}")
    elif marked.says:
        say(f"{said}. {marked.says}")
    else:
        say(f"{said}.")
    say(f"The key is {line(item.key)}.")
